package io.github.firstoff.inspection;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.PositionDeviation;
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
     * @param value the value as read, trailing zeros kept: they state the resolution; of a position from coordinates, the diameter
     *     rounded for display
     * @param unit its unit
     * @param offsets the deviations along the axes from which a position follows; empty for a value as read
     * @param context when, by whom, with what
     */
    record Measured(String characteristic, BigDecimal value, Unit unit, Optional<Offsets> offsets, Context context)
            implements Reading {
        /** A value as read. */
        public Measured(String characteristic, BigDecimal value, Unit unit, Context context) {
            this(characteristic, value, unit, Optional.empty(), context);
        }
    }

    /**
     * How far a feature lies from where it should be, along the axes, in the unit of the reading.
     *
     * @param x along the first axis
     * @param y along the second
     * @param z along the third, for a spherical zone
     */
    record Offsets(BigDecimal x, BigDecimal y, Optional<BigDecimal> z) {
        /** The position they come to, exactly. */
        public PositionDeviation position() {
            return z.map(third -> PositionDeviation.of(x, y, third)).orElseGet(() -> PositionDeviation.of(x, y));
        }
    }

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
     * @param temperature the temperature of the piece, in degrees Celsius, if it was not 20
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
            Optional<BigDecimal> temperature,
            Optional<String> setting,
            Optional<String> note,
            Production production,
            Origin origin) {

        /** The same at another setting. */
        public Context at(String otherSetting) {
            return new Context(
                    time,
                    subgroup,
                    operator,
                    gauge,
                    machine,
                    temperature,
                    Optional.of(otherSetting),
                    note,
                    production,
                    origin);
        }

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
                    Optional.empty(),
                    Production.NOT_STATED,
                    origin);
        }
    }

    /**
     * What a file says of the making of the piece, for studies of drift and of phases, and of how much of it was inspected.
     *
     * @param tool the tool that cut the piece
     * @param phase the phase of a study, for example before and after a change
     * @param offset the tool offset entered before the piece, as the file states it, in the unit of the plan
     * @param size on how much a count of nonconformities was found, above 0, in any one unit; 1 where it is not stated
     */
    record Production(
            Optional<String> tool, Optional<String> phase, Optional<BigDecimal> offset, Optional<BigDecimal> size) {
        /** Nothing stated. */
        public static final Production NOT_STATED =
                new Production(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        /** Of the making only. */
        public Production(Optional<String> tool, Optional<String> phase, Optional<BigDecimal> offset) {
            this(tool, phase, offset, Optional.empty());
        }
    }

    /**
     * Where a reading stands.
     *
     * @param source the file's name as the user gave it
     * @param line its line or row, counted from 1; 0 where there are no lines
     */
    record Origin(String source, long line) {}
}
