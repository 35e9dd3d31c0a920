package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.FittedLine;
import io.github.firstoff.stats.LagTally;
import io.github.firstoff.stats.LineBreaks;
import io.github.firstoff.stats.LineTally;
import io.github.firstoff.stats.ParallelLines;
import io.github.firstoff.stats.RunsTest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Cuts readings into stretches and lays a line through each. */
final class Segments {
    /** Residuals are rounded to this part of a step where they are told apart exactly. */
    private static final double FINE = 1e6;

    private final DriftData data;
    private final DriftSettings settings;
    private final Scale scale;
    private final List<LineTally> tallies = new ArrayList<>();
    private final List<Drift.Segment> segments = new ArrayList<>();
    private final Double[] residuals;

    Segments(DriftData data, DriftSettings settings, List<Remark> notes) {
        this.data = data;
        this.settings = settings;
        scale = data.sample().scale();
        residuals = new Double[data.sample().size()];
        Arrays.fill(residuals, Double.NaN);
        List<Start> starts = starts(notes);
        for (int i = 0; i < starts.size(); i++) {
            int to = i + 1 < starts.size()
                    ? starts.get(i + 1).reading()
                    : data.sample().size();
            add(starts.get(i), to);
        }
    }

    List<Double> residuals() {
        return List.of(residuals);
    }

    LineTally last() {
        return tallies.get(tallies.size() - 1);
    }

    /** One slope through all stretches with a line of their own. */
    Optional<ParallelLines> parallel() {
        List<LineTally> defined = tallies.stream().filter(Segments::hasLine).toList();
        return defined.isEmpty() ? Optional.empty() : Optional.of(ParallelLines.of(defined));
    }

    private static boolean hasLine(LineTally tally) {
        return tally.count() >= 3 && tally.isDefined();
    }

    /** What is stated, and in batches that state nothing what the readings show. */
    private List<Start> starts(List<Remark> notes) {
        if (!data.detects()) {
            return data.starts();
        }
        List<Start> all = new ArrayList<>();
        long[] deviations = data.sample().deviations();
        long[] pieces = data.pieces();
        int number = 0;
        for (int i = 0; i < data.starts().size(); i++) {
            Start start = data.starts().get(i);
            int from = start.reading();
            int to = i + 1 < data.starts().size() ? data.starts().get(i + 1).reading() : deviations.length;
            all.add(start);
            if (to - from > LineBreaks.LONGEST) {
                notes.add(Remark.of(
                        "drift.no-search",
                        "No change points were looked for among {0} readings: at most {1} can be searched."
                                + " A column tool, phase or offset says where they are.",
                        to - from,
                        LineBreaks.LONGEST));
                continue;
            }
            for (LineBreaks.Change change : settings.detection()
                    .find(Arrays.copyOfRange(pieces, from, to), Arrays.copyOfRange(deviations, from, to))) {
                number++;
                all.add(new Start(
                        from + change.at(),
                        Start.Cause.DETECTED,
                        Remark.of("drift.change", "change {0}", number),
                        Remark.of("drift.leave-the-line", "the readings leave the line they followed"),
                        Optional.of(
                                new LineBreaks.Change(from + change.at(), change.statistic(), change.significance()))));
            }
        }
        return all;
    }

    private void add(Start start, int to) {
        int from = start.reading();
        LineTally tally = LineTally.EMPTY;
        for (int i = from; i < to; i++) {
            tally = tally.plus(data.piece(i), data.sample().deviation(i));
        }
        Optional<Drift.Trend> trend = hasLine(tally) ? Optional.of(trend(tally, from, to)) : Optional.empty();
        Optional<Drift.Trend> before = segments.isEmpty()
                ? Optional.empty()
                : segments.get(segments.size() - 1).trend();
        Optional<Drift.Jump> jump = trend.isPresent() && before.isPresent()
                ? jump(before.get().line(), trend.get().line(), (double) data.piece(from))
                : Optional.empty();
        tallies.add(tally);
        segments.add(new Drift.Segment(start, from, to, data.piece(from), data.piece(to - 1), trend, jump));
    }

    private Drift.Trend trend(LineTally tally, int from, int to) {
        FittedLine line = FittedLine.of(tally);
        double[] own = new double[to - from];
        long[] fine = new long[to - from];
        for (int i = from; i < to; i++) {
            // one rounding each: neither the line nor the reading is a large number here
            double residual = data.sample().deviation(i) - tally.at(data.piece(i));
            residuals[i] = residual;
            own[i - from] = residual;
            fine[i - from] = Math.round(residual * FINE);
        }
        LagTally lag = LagTally.of(fine);
        return new Drift.Trend(
                line,
                scale.length(line.slope()),
                length(line.slopeInterval(settings.level())),
                line.significance(),
                scale.length(line.deviation()),
                RunsTest.of(own),
                lag.isDefined() ? OptionalDouble.of(lag.lagOneAutocorrelation()) : OptionalDouble.empty());
    }

    ConfidenceInterval length(ConfidenceInterval steps) {
        return new ConfidenceInterval(scale.length(steps.lower()), scale.length(steps.upper()));
    }

    /** The difference of two lines at the first piece of the second, with the spread about both. */
    private Optional<Drift.Jump> jump(FittedLine before, FittedLine after, double piece) {
        double df = before.degreesOfFreedom() + after.degreesOfFreedom();
        double variance = (before.degreesOfFreedom() * before.deviation() * before.deviation()
                        + after.degreesOfFreedom() * after.deviation() * after.deviation())
                / df;
        double error = Math.sqrt(variance * (before.leverage(piece) + after.leverage(piece)));
        double amount = after.at(piece) - before.at(piece);
        if (error == 0) {
            return Optional.empty();
        }
        double half = Distributions.studentTQuantile((1 + settings.level()) / 2, df) * error;
        return Optional.of(new Drift.Jump(
                scale.length(amount),
                length(new ConfidenceInterval(amount - half, amount + half)),
                2 * Distributions.studentT(-Math.abs(amount) / error, df)));
    }

    /** All stretches, none of which can change any more. */
    List<Drift.Segment> done() {
        return Collections.unmodifiableList(segments);
    }
}
