package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.stats.FittedLine;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When the process meets a limit if it goes on as it does, or why that cannot be said.
 *
 * @param limit the limit less the guard band, in the unit; empty where there is none in that direction, or no direction
 * @param side 1 if it is an upper limit, −1 if a lower one, 0 without one
 * @param piece the piece number at which the line, moved the chosen number of standard deviations towards the limit, meets it; not
 *     necessarily whole
 * @param interval its confidence interval; the later bound may be infinite
 * @param singlePiece the piece number from which the prediction interval of a single piece reaches the limit
 * @param line what was continued, in steps; empty if refused
 * @param pooled whether the slope is that of all stretches, because the last alone does not show one yet
 * @param lastPiece the number of the last piece measured
 * @param why why there is no forecast, a sentence; no remark with one
 * @param warnings what limits the forecast, in sentences
 */
public record Forecast(
        Optional<BigDecimal> limit,
        int side,
        OptionalDouble piece,
        Optional<ConfidenceInterval> interval,
        OptionalDouble singlePiece,
        Optional<FittedLine> line,
        boolean pooled,
        long lastPiece,
        Remark why,
        List<Remark> warnings) {
    /** Either a piece or a reason. */
    public Forecast {
        warnings = List.copyOf(warnings);
        if (piece.isPresent() != why.isEmpty()) {
            throw new IllegalArgumentException("a forecast needs either a piece or the reason why there is none");
        }
    }

    static Forecast refused(Optional<BigDecimal> limit, int side, long lastPiece, Remark why) {
        return new Forecast(
                limit,
                side,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                false,
                lastPiece,
                why,
                List.of());
    }

    /** Why there is no forecast, in English; empty text with one. */
    public String reason() {
        return why.english();
    }

    /** What limits the forecast, in English. */
    public List<String> cautions() {
        return Remark.english(warnings);
    }

    /** The last piece that is made before the process meets the limit: the piece number rounded down. */
    public long lastGoodPiece() {
        return (long) Math.floor(piece.orElseThrow());
    }

    /** How many pieces are left after the last one measured; 0 or less if the limit is met already. */
    public long remaining() {
        return lastGoodPiece() - lastPiece;
    }

    /** Whether the process meets the limit already. */
    public boolean isReached() {
        return piece.isPresent() && remaining() <= 0;
    }
}
