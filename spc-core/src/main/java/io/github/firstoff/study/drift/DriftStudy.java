package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.FittedLine;
import io.github.firstoff.stats.LineTally;
import io.github.firstoff.stats.ParallelLines;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Follows the level of a characteristic from piece to piece: a line by least squares through each stretch between two tool changes or
 * offsets, what it leaves unexplained, when the process meets a limit, and what to do.
 *
 * <p>The forecast continues the line of the last stretch if that has enough readings and its slope is distinguishable from none at the chosen
 * level; else the common slope of all stretches, if it is distinguishable and an F test at the same level does not tell the slopes apart,
 * through the middle of the last stretch; else it is refused, and says why. Formulas and sources stand with
 * {@link FittedLine} and {@link ParallelLines}.
 *
 * <p>Assumes that the spread about the lines stays as it is and that wear goes on along the line. Nothing here can know of an edge that chips.
 *
 * @param settings what is chosen
 */
public record DriftStudy(DriftSettings settings) {
    /** A forecast further ahead than this many times the length observed is told to be far. */
    private static final int FAR = 2;

    /** With the usual settings. */
    public static DriftStudy withDefaults() {
        return new DriftStudy(DriftSettings.withDefaults());
    }

    /**
     * Studies readings.
     *
     * @param data at least one reading
     * @throws IllegalArgumentException without a reading
     */
    public Drift analyse(DriftData data) {
        if (data.sample().size() == 0) {
            throw new IllegalArgumentException("there is no reading to follow");
        }
        List<Remark> notes = new ArrayList<>();
        Segments segments = new Segments(data, settings, notes);
        Scale scale = data.sample().scale();
        Optional<ParallelLines> parallel = segments.parallel();
        Optional<Drift.Pooled> pooled = parallel.map(lines -> pooled(lines, segments, scale));
        OptionalDouble spread = parallel.filter(lines -> lines.ownDegreesOfFreedom() >= 1)
                .map(lines -> OptionalDouble.of(scale.length(lines.ownDeviation())))
                .orElseGet(OptionalDouble::empty);
        List<Drift.Segment> all = segments.done();
        Drift.Segment current = all.get(all.size() - 1);
        Continued continued = continued(segments, current, pooled);
        Forecast forecast = forecast(data, current, continued);
        Advice advice = new Adviser(data, settings).advise(current, continued.line, continued.isSloping());
        return new Drift(data, settings, all, pooled, segments.residuals(), spread, forecast, advice, notes);
    }

    private Drift.Pooled pooled(ParallelLines lines, Segments segments, Scale scale) {
        FittedLine line = lines.through(segments.last());
        return new Drift.Pooled(
                lines,
                scale.length(lines.slope()),
                segments.length(line.slopeInterval(settings.level())),
                line.significance(),
                scale.length(lines.deviation()));
    }

    /** What can be continued: a line, or the reason why there is none. A line without a shown slope still says where the process is. */
    private record Continued(Optional<FittedLine> line, boolean pooled, Remark reason) {
        boolean isSloping() {
            return reason.isEmpty();
        }
    }

    private Continued continued(Segments segments, Drift.Segment current, Optional<Drift.Pooled> pooled) {
        Optional<Drift.Trend> own = current.trend();
        boolean enough = current.count() >= settings.least() && own.isPresent();
        if (enough && own.get().line().deviation() == 0) {
            return new Continued(
                    own.map(Drift.Trend::line),
                    false,
                    Remark.of(
                            "forecast.no-spread",
                            "The readings do not spread about their line at all, as readings of a fine enough gauge would;"
                                    + " there are no bounds without a spread."));
        }
        if (enough && isShown(own.get().significance())) {
            return new Continued(own.map(Drift.Trend::line), false, Remark.none());
        }
        LineTally last = segments.last();
        boolean others = pooled.isPresent()
                && pooled.get().lines().lines() > 1
                && pooled.get().lines().degreesOfFreedom() >= settings.least() - 2
                && pooled.get().residualStandardDeviation() > 0
                && last.count() >= 2;
        if (others
                && isShown(pooled.get().significance())
                && !isShown(pooled.get().lines().equality())) {
            return new Continued(Optional.of(pooled.get().lines().through(last)), true, Remark.none());
        }
        if (!enough) {
            return new Continued(
                    own.filter(trend -> trend.residualStandardDeviation() > 0).map(Drift.Trend::line),
                    false,
                    Remark.of(
                            "forecast.too-few",
                            "The last stretch has {0|one reading|{0} readings}; a forecast of its own needs at least"
                                    + " {1}{2|, and the stretches before do not agree on one slope|}.",
                            current.count(),
                            settings.least(),
                            others));
        }
        return new Continued(
                own.map(Drift.Trend::line),
                false,
                Remark.of(
                        "forecast.no-slope",
                        "The slope is not distinguishable from none (p = {0}); what does not drift meets no limit by drifting.",
                        String.format(Locale.ROOT, "%.2f", own.get().significance())));
    }

    private boolean isShown(double significance) {
        return significance < 1 - settings.level();
    }

    private Forecast forecast(DriftData data, Drift.Segment current, Continued continued) {
        if (!continued.isSloping()) {
            return Forecast.refused(Optional.empty(), 0, current.lastPiece(), continued.reason);
        }
        FittedLine line = continued.line.orElseThrow();
        int side = line.slope() > 0 ? 1 : -1;
        Bounds allowed = data.allowed();
        Optional<BigDecimal> limit = side > 0 ? allowed.upper() : allowed.requiredLower();
        if (limit.isEmpty()) {
            return Forecast.refused(
                    limit,
                    0,
                    current.lastPiece(),
                    Remark.of(
                            "forecast.no-limit",
                            "The level {0|rises, and there is no upper|falls, and there is no lower} limit to meet.",
                            side > 0));
        }
        double at = data.sample().scale().deviation(limit.get());
        FittedLine.Crossing crossing = line.crossing(at, side, settings.sigmas(), settings.level());
        double single = line.predictionReaches(at, side, settings.level(), current.lastPiece() + 1.0);
        return new Forecast(
                limit,
                side,
                OptionalDouble.of(crossing.at()),
                Optional.of(crossing.bounds()),
                OptionalDouble.of(single),
                Optional.of(line),
                continued.pooled,
                current.lastPiece(),
                Remark.none(),
                cautions(current, crossing, continued.pooled));
    }

    private List<Remark> cautions(Drift.Segment current, FittedLine.Crossing crossing, boolean pooled) {
        List<Remark> cautions = new ArrayList<>();
        long length = current.lastPiece() - current.firstPiece() + 1;
        if (crossing.at() > current.lastPiece() + (double) FAR * length) {
            cautions.add(Remark.of(
                    "forecast.far",
                    "The forecast reaches more than {0} times as far ahead as the stretch is long; take it as a hint and measure on.",
                    FAR));
        }
        if (pooled) {
            cautions.add(Remark.of(
                    "forecast.pooled",
                    "The last stretch alone does not show its slope yet; the slope is that of all stretches."));
        }
        current.trend().ifPresent(trend -> {
            if (isShown(trend.runs().significance())) {
                cautions.add(
                        trend.runs().isSlow()
                                ? Remark.of(
                                        "forecast.curved",
                                        "The residuals keep to one side for too long: the wear is not a straight line, and the"
                                                + " bounds are too narrow.")
                                : Remark.of(
                                        "forecast.mixed",
                                        "The residuals change sides too often: two streams are mixed, or the process is corrected"
                                                + " after every piece; the bounds do not allow for that."));
            }
        });
        return cautions;
    }
}
