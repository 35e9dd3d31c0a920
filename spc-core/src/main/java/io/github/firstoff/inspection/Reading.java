package io.github.firstoff.inspection;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.Optional;

/** What was found for one characteristic of one piece. */
public sealed interface Reading permits Reading.Measured, Reading.Observed {

    /** The number of the characteristic. */
    String characteristic();

    /** When, by whom, with what. */
    Context context();

    /**
     * A value.
     *
     * @param characteristic the number of the characteristic
     * @param value the value as read, trailing zeros kept: they state the resolution
     * @param unit its unit
     * @param context when, by whom, with what
     */
    record Measured(String characteristic, BigDecimal value, Unit unit, Context context) implements Reading {}

    /**
     * A pass or a fail.
     *
     * @param characteristic the number of the characteristic
     * @param pass whether it passed
     * @param context when, by whom, with what
     */
    record Observed(String characteristic, boolean pass, Context context) implements Reading {}

    /**
     * When, by whom and with what a reading was taken, and where it stands in its file.
     *
     * @param time when; in UTC where the file states an offset, as written where it does not
     * @param subgroup the label of the subgroup, where the file groups readings itself
     * @param operator by whom
     * @param gauge with which gauge, if the file says so; otherwise the plan's
     * @param machine on which machine the piece was made
     * @param setting at which setting a functional check was made
     * @param note a remark
     * @param production what is known of the making of the piece
     * @param origin where it stands
     */
    record Context(
            Optional<LocalDateTime> time,
            Optional<String> subgroup,
            Optional<String> operator,
            Optional<String> gauge,
            Optional<String> machine,
            Optional<String> setting,
            Optional<String> note,
            Production production,
            Origin origin) {

        /** Nothing known but where it stands. */
        public static Context at(Origin origin) {
            return new Context(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Production.NOT_STATED,
                    origin);
        }
    }

    /**
     * What a file says of the making of the piece, for studies of drift and of phases.
     *
     * @param tool the tool that cut the piece
     * @param phase the phase of a study, for example before and after a change
     * @param offset the tool offset entered before the piece, as the file states it, in the unit of the plan
     */
    record Production(Optional<String> tool, Optional<String> phase, Optional<BigDecimal> offset) {
        /** Nothing stated. */
        public static final Production NOT_STATED =
                new Production(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * Where a reading stands.
     *
     * @param source the file's name as the user gave it
     * @param line its line or row, counted from 1; 0 where there are no lines
     */
    record Origin(String source, long line) {}
}
