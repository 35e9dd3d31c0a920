package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.PanelNature;
import io.github.firstoff.study.chart.Side;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the points of a chart are called (subgroups with their labels, pieces with their serial numbers, samples of counts), and
 * what is plotted.
 */
final class ChartWords {
    /** So many separate points are named; more are given from first to last. */
    private static final int NAMED = 6;

    /** Between the number of a characteristic and the label of its subgroup, on charts of a family. */
    private static final String OF_FAMILY = ": ";

    private final ProcessStudy study;
    private final ControlChart chart;
    private final boolean single;

    ChartWords(ProcessStudy study) {
        this.study = study;
        this.chart = study.chart();
        boolean one = chart.data().count() > 0;
        for (int g = 0; g < chart.data().count(); g++) {
            one &= chart.data().size(g) == 1;
        }
        this.single = one && !study.isCounted();
    }

    /** Whether the chart plots readings as they are, so that limits of pieces have a place on it. */
    boolean isIndividuals() {
        return chart.kind().equals("individuals");
    }

    /** Whether every point rests on a reading of one piece. */
    boolean isSingle() {
        return single;
    }

    boolean isCusum() {
        return chart.kind().equals("cusum");
    }

    /** Whether the points share readings with their neighbours. */
    boolean addsUp() {
        return chart.location().nature() == PanelNature.DEPENDENT;
    }

    boolean isCounted() {
        return study.isCounted();
    }

    /** Whether points count in standard deviations. */
    boolean isStandardised() {
        return chart.kind().equals("standardised-deviation")
                || (isCusum() && !single && chart.data().commonSize().isEmpty());
    }

    /** {@code subgroup}, {@code piece} or {@code sample}. */
    String noun() {
        return Labels.text(isCounted() ? "noun.sample" : single ? "noun.piece" : "noun.subgroup");
    }

    /** {@code subgroups}, {@code pieces} or {@code samples}. */
    String nouns() {
        return Labels.text(isCounted() ? "nouns.sample" : single ? "nouns.piece" : "nouns.subgroup");
    }

    /** Which side of the centre line, in a word. */
    static String side(Side side) {
        return Labels.word("side", side.word());
    }

    private Panel panel(PanelKind kind) {
        return chart.panel(kind).orElseThrow();
    }

    /** {@code mean}, {@code range}, {@code individual value}. */
    String statistic(PanelKind kind) {
        String plotted = panel(kind).statistic();
        return Labels.word("statistic", plotted);
    }

    /** {@code means}, {@code ranges}, {@code moving ranges of means}. */
    String statistics(PanelKind kind) {
        String one = panel(kind).statistic();
        return Labels.word("statistics", one);
    }

    /** The same with its article where the language has one, at the start of a sentence's subject: {@code the mean}. */
    String theStatistic(PanelKind kind) {
        String one = panel(kind).statistic();
        return Labels.word("the-statistic", one);
    }

    /** {@code the means}, {@code the ranges}. */
    String theStatistics(PanelKind kind) {
        return Labels.text("statistics.the", statistics(kind));
    }

    /** The unit of the points: of counts none, of standardised points their sigma. */
    String unit() {
        if (isStandardised()) {
            return Labels.text(
                    chart.kind().equals("standardised-deviation") ? "unit.sigmas-of-part" : "unit.sigmas-of-mean");
        }
        return isCounted() ? "" : readingUnit().symbol();
    }

    /** The unit of the readings. */
    Unit readingUnit() {
        return chart.data().sample().unit();
    }

    /** A distance between points, with its unit and two digits. */
    String amount(double value) {
        if (isStandardised()) {
            return Labels.text("unit.sigma", Figures.twoDigits(Math.abs(value)));
        }
        return isCounted() ? Figures.twoDigits(Math.abs(value)) : Figures.amount(value, readingUnit());
    }

    /** The place of a point, from 0, among all that the chart has room for. */
    int index(int number) {
        return number - chart.data().number(0);
    }

    /**
     * {@code subgroup 14}; a piece by its serial number where that ends in its number, {@code piece 2208-061}, else by both,
     * {@code piece 61 }.
     */
    String point(int number) {
        return noun() + " " + name(number)
                + (single
                        ? ""
                        : family(number)
                                .map(part -> Labels.text("point.of-family", part))
                                .orElse(""));
    }

    private String name(int number) {
        if (!single) {
            return label(number);
        }
        String serial = study.pieces(index(number)).get(0);
        boolean tells = serial.matches("(?:.*\\D)?0*" + number);
        return tells ? serial : label(number) + " (" + serial + ")";
    }

    /** The label of the point with that number, counted from 1; of a family its number, since the label names the part. */
    String label(int number) {
        return family(number).isPresent()
                ? Integer.toString(number)
                : chart.data().label(index(number));
    }

    /** On charts of a family: which of its parts or characteristics the point is of. */
    Optional<String> family(int number) {
        boolean ofFamily = chart.kind().equals("deviation") || chart.kind().equals("standardised-deviation");
        String label = chart.data().label(index(number));
        int at = label.indexOf(OF_FAMILY);
        return ofFamily && at > 0 ? Optional.of(label.substring(0, at)) : Optional.empty();
    }

    /** Several points: {@code subgroups 12 and 14}, {@code subgroups 12 to 25}. */
    String points(List<Integer> numbers) {
        if (numbers.size() == 1) {
            return point(numbers.get(0));
        }
        int first = numbers.get(0);
        int last = numbers.get(numbers.size() - 1);
        if (numbers.size() > 2 && last - first == numbers.size() - 1) {
            return span(first, last);
        }
        if (numbers.size() > NAMED) {
            return Labels.text("points.many", numbers.size(), nouns(), name(first), name(last));
        }
        List<String> names = new ArrayList<>();
        numbers.forEach(number -> names.add(name(number)));
        return Labels.text(
                "points.few",
                nouns(),
                String.join(", ", names.subList(0, names.size() - 1)),
                names.get(names.size() - 1));
    }

    /** {@code subgroups 12 to 25}. */
    String span(int first, int last) {
        return Labels.text("points.span", nouns(), name(first), name(last));
    }

    /** The pieces of a point: {@code pieces 2207-066 to 2207-070}; empty for single pieces, who are named already. */
    String pieces(int number) {
        if (single) {
            return "";
        }
        List<String> pieces = study.pieces(index(number));
        return pieces.size() == 1
                ? Labels.text("pieces.piece", pieces.get(0))
                : Labels.text("points.pieces", pieces.get(0), pieces.get(pieces.size() - 1));
    }

    /** What the axis of points is called. */
    String axis() {
        if (!single) {
            return noun();
        }
        List<String> parts = study.parts();
        return parts.size() < 2 ? noun() : Labels.text("axis.pieces", parts.get(0), parts.get(parts.size() - 1));
    }
}
