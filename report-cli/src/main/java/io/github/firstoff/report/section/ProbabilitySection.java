package io.github.firstoff.report.section;

import io.github.firstoff.report.figure.ProbabilityFigure;
import io.github.firstoff.report.figure.ProbabilityFigure.Place;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.PlottingPosition;
import io.github.firstoff.stats.ProbabilityPlot;
import io.github.firstoff.study.capability.DistributionCandidate;
import io.github.firstoff.study.capability.DistributionChoice;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The probability plot of the readings against the distribution by which performance is stated, where that is another than the
 * normal, was fixed by the plan, or is refuted: there a reader wants to see how far it holds.
 */
final class ProbabilitySection {
    private static final double HEIGHT = 58;
    /** The line is drawn through so many places, evenly spaced in scores to either side. */
    private static final int PLACES = 60;

    private static final double REACH = 4;
    /** Of more readings only both ends are drawn one by one. */
    private static final int MOST = 300;

    private static final int END = 30;
    private static final double SURE = 0.001;

    private final Finding finding;
    private final Summary summary;
    private final DistributionChoice choice;
    private final double significance;

    ProbabilitySection(Finding finding, ProcessStudy.Indices indices) {
        this.finding = finding;
        this.summary = finding.summary().orElseThrow();
        this.choice = indices.capability().distribution();
        this.significance = indices.capability().settings().distribution().significance();
    }

    /** The picture with its note; empty where it would show nothing that the histogram does not. */
    List<Block> blocks() {
        boolean wanted = !choice.method().isNormal() || choice.fixed() || isRefuted();
        Optional<ProbabilityPlot> plot =
                wanted ? choice.probabilityPlot(summary.sample(), PlottingPosition.FILLIBEN) : Optional.empty();
        if (plot.isEmpty()) {
            return List.of();
        }
        ProbabilityFigure figure = figure(plot.get());
        String alternative = Labels.text("probability-plot.alternative", summary.count(), family(), evidence());
        return List.of(
                new Block.FigureBlock(figure, HEIGHT, alternative),
                new Block.Note(Text.of(Labels.text("probability-plot.note", family(), evidence())
                        + (isThinned()
                                ? " " + Labels.text("probability-plot.thinned", summary.count(), END, every())
                                : ""))));
    }

    private boolean isRefuted() {
        return choice.chosen()
                .map(candidate -> candidate.isRefuted(significance))
                .orElse(false);
    }

    private String family() {
        return Wording.distribution(choice);
    }

    /** What the test of Anderson and Darling says, with its figures. */
    String evidence() {
        Optional<DistributionCandidate> chosen = choice.chosen();
        if (chosen.isEmpty() || chosen.get().andersonDarling().isEmpty()) {
            return "";
        }
        String statistic =
                "A² " + Figures.rounded(chosen.get().andersonDarling().getAsDouble(), 2);
        if (chosen.get().p().isEmpty()) {
            return Labels.text("evidence.no-p", statistic, chosen.get().source());
        }
        double p = chosen.get().p().getAsDouble();
        String figure = p < SURE ? Labels.text("evidence.below", "0.001") : Figures.rounded(p, 3);
        return Labels.text(
                isRefuted() ? "evidence.refuted" : "evidence.not-refuted",
                statistic,
                figure,
                chosen.get().source());
    }

    private boolean isThinned() {
        return summary.count() > MOST;
    }

    private int every() {
        return Math.max(1, summary.count() / MOST + 1);
    }

    private ProbabilityFigure figure(ProbabilityPlot plot) {
        double origin = Places.of(choice.origin());
        List<Place> points = new ArrayList<>();
        int count = plot.points().size();
        for (int i = 0; i < count; i++) {
            if (!isThinned() || i < END || i >= count - END || i % every() == 0) {
                ProbabilityPlot.Point point = plot.points().get(i);
                points.add(new Place(origin + point.value(), point.score()));
            }
        }
        FittedDistribution fitted = choice.fitted().orElseThrow();
        List<Place> line = new ArrayList<>();
        for (int i = -PLACES; i <= PLACES; i++) {
            double score = REACH * i / PLACES;
            double value = fitted.quantile(Distributions.normal(score));
            if (Double.isFinite(value)) {
                line.add(new Place(origin + value, score));
            }
        }
        return new ProbabilityFigure(
                Labels.text("figure.readings", summary.count()),
                summary.sample().unit().symbol(),
                points,
                line,
                family(),
                HistogramSection.specification(finding.result()).stream()
                        .filter(each -> !isFar(each.at()))
                        .toList());
    }

    /** Limits many times as far apart as the readings would press them together. */
    private boolean isFar(double limit) {
        double low = Places.of(summary.minimum());
        double high = Places.of(summary.maximum());
        double width = high - low;
        return limit < low - 3 * width || limit > high + 3 * width;
    }
}
