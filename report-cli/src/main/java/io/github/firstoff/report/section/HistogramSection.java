package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.HistogramFigure.Bin;
import io.github.firstoff.report.figure.HistogramFigure.Curve;
import io.github.firstoff.report.figure.HistogramFigure.CurvePoint;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.study.capability.DistributionChoice;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The readings as a histogram against their limits, with the curve of the distribution by which performance is stated.
 *
 * <p>Bins are whole multiples of the step in which the readings come, with their edges half a step off, so that no reading lies on an
 * edge and no bin holds more steps than its neighbour: a gauge that reads in halves would else draw a comb.
 */
final class HistogramSection {
    private static final int MOST_BINS = 20;
    private static final int LEAST_BINS = 5;
    /** The curve is drawn between these percentiles. */
    private static final double TAIL = 3e-5;

    private static final int CURVE_POINTS = 96;

    /** Limits this many times as far apart as the readings stay outside the picture. */
    private static final double LOST = 12;

    /** Fewer readings than this have no shape to fit. */
    private static final int LEAST_FOR_CURVE = 8;

    private final Finding finding;
    private final Summary summary;

    HistogramSection(Finding finding) {
        this.finding = finding;
        this.summary = finding.summary().orElseThrow();
    }

    /** The picture; empty without at least two readings. */
    Optional<HistogramFigure> figure() {
        Sample sample = summary.sample();
        if (sample.size() < 2) {
            return Optional.empty();
        }
        List<Bin> bins = bins();
        double width = bins.get(0).to() - bins.get(0).from();
        return Optional.of(new HistogramFigure(
                Labels.text("figure.readings", sample.size()),
                sample.unit().symbol(),
                bins,
                isLost(bins) ? List.of() : specification(finding.result()),
                curve(width),
                Optional.empty()));
    }

    private List<Bin> bins() {
        Sample sample = summary.sample();
        Cells cells = Cells.of(sample.deviations());
        double step = sample.scale().length(1);
        double start = Places.of(sample.scale().exactValue(cells.first)) - cells.step * step / 2;
        double width = cells.width * step;
        List<Bin> bins = new ArrayList<>();
        for (int i = 0; i < cells.counts.length; i++) {
            bins.add(new Bin(start + i * width, start + (i + 1) * width, cells.counts[i]));
        }
        return bins;
    }

    /** Whether the readings would be a mere stroke between limits that are far away. */
    private boolean isLost(List<Bin> bins) {
        if (summary.standardDeviation().orElse(0) == 0) {
            // Readings that are all alike are a stroke on any scale; between its limits it says something.
            return false;
        }
        double low = bins.get(0).from();
        double high = bins.get(bins.size() - 1).to();
        double width = high - low;
        for (LevelLine line : specification(finding.result())) {
            low = Math.min(low, line.at());
            high = Math.max(high, line.at());
        }
        return high - low > LOST * width;
    }

    /** Limits and target of the drawing as lines; a natural bound is none. */
    static List<LevelLine> specification(CharacteristicResult result) {
        Limits limits = result.characteristic().limits();
        List<LevelLine> lines = new ArrayList<>();
        if (!result.characteristic().zone().isFixed()) {
            return lines;
        }
        int places = Figures.places(limits);
        if (!limits.naturalLower()) {
            limits.lower()
                    .ifPresent(limit -> lines.add(
                            line(LevelLine.Kind.SPECIFICATION_LIMIT, Labels.text("line.lower-limit"), limit, places)));
        }
        result.characteristic()
                .characteristic()
                .options()
                .target()
                .ifPresent(
                        target -> lines.add(line(LevelLine.Kind.TARGET, Labels.text("line.target"), target, places)));
        limits.upper()
                .ifPresent(limit -> lines.add(
                        line(LevelLine.Kind.SPECIFICATION_LIMIT, Labels.text("line.upper-limit"), limit, places)));
        return lines;
    }

    private static LevelLine line(LevelLine.Kind kind, String name, BigDecimal value, int places) {
        return new LevelLine(kind, name, Figures.of(value, places), Places.of(value));
    }

    /** The distribution by which performance is stated, as expected counts per bin; none for readings too few or all alike. */
    private Optional<Curve> curve(double width) {
        Optional<FittedDistribution> fitted = fitted();
        if (fitted.isEmpty()) {
            return Optional.empty();
        }
        double origin = Places.of(choice().orElseThrow().origin());
        double low = fitted.get().quantile(TAIL);
        double high = fitted.get().quantile(1 - TAIL);
        if (!Double.isFinite(low) || !Double.isFinite(high) || !(low < high)) {
            return Optional.empty();
        }
        List<CurvePoint> points = new ArrayList<>();
        for (int i = 0; i <= CURVE_POINTS; i++) {
            double distance = low + (high - low) * i / CURVE_POINTS;
            double density = Math.exp(fitted.get().logDensity(distance));
            if (Double.isFinite(density)) {
                points.add(new CurvePoint(origin + distance, summary.count() * width * density));
            }
        }
        return Optional.of(new Curve(Labels.text("histogram.curve", family()), points));
    }

    private Optional<DistributionChoice> choice() {
        return finding.study().map(study -> study.capability().distribution());
    }

    private Optional<FittedDistribution> fitted() {
        boolean spreads = summary.standardDeviation().orElse(0) > 0 && summary.count() >= LEAST_FOR_CURVE;
        return spreads ? choice().flatMap(DistributionChoice::fitted) : Optional.empty();
    }

    private String family() {
        return Wording.distribution(choice().orElseThrow());
    }

    /** What the curve is, for the note under the picture. */
    String note() {
        List<String> sentences = new ArrayList<>();
        if (summary.count() > 1 && isLost(bins())) {
            sentences.add(Labels.text(
                    "histogram.limits-outside",
                    Figures.limitsInWords(finding.result().characteristic().limits())));
        }
        if (fitted().isPresent()) {
            boolean normal = choice().orElseThrow().method().isNormal();
            String parameters = normal
                    ? Labels.text(
                            "histogram.parameters",
                            SummaryTable.meanWithUnit(summary, new Readings(finding.result())),
                            Figures.amount(
                                    summary.standardDeviation().orElseThrow(),
                                    summary.sample().unit()))
                    : "";
            sentences.add(Labels.text(
                    "histogram.fitted",
                    Wording.capital(family()),
                    summary.count(),
                    parameters,
                    choice().orElseThrow().why()));
        }
        return String.join(" ", sentences);
    }

    /** Counts per bin, in whole steps. */
    private static final class Cells {
        private final long first;
        private final long step;
        private final long width;
        private final long[] counts;

        private Cells(long first, long step, long width, long[] counts) {
            this.first = first;
            this.step = step;
            this.width = width;
            this.counts = counts;
        }

        static Cells of(long[] deviations) {
            long least = Arrays.stream(deviations).min().orElseThrow();
            long greatest = Arrays.stream(deviations).max().orElseThrow();
            long step = commonStep(deviations, least);
            long steps = (greatest - least) / step + 1;
            long wanted = Math.max(LEAST_BINS, Math.min(MOST_BINS, Math.round(Math.sqrt(deviations.length))));
            long perBin = Math.max(1, (steps + wanted - 1) / wanted);
            int bins = (int) ((steps + perBin - 1) / perBin);
            // What the last bin has too many is shared between both ends, in whole steps.
            long first = least - (bins * perBin - steps) / 2 * step;
            long[] counts = new long[bins];
            for (long deviation : deviations) {
                counts[(int) ((deviation - first) / (perBin * step))]++;
            }
            return new Cells(first, step, perBin * step, counts);
        }

        /** The greatest step in which all readings come. */
        private static long commonStep(long[] deviations, long least) {
            BigInteger step = BigInteger.ZERO;
            for (long deviation : deviations) {
                step = step.gcd(BigInteger.valueOf(deviation - least));
            }
            return Math.max(1, step.longValueExact());
        }
    }
}
