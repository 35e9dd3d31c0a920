package io.github.firstoff.report.section;

import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import java.util.ArrayList;
import java.util.List;

/** What the points of a chart are called: subgroups with their labels, or pieces with their serial numbers. */
final class ChartWords {
    /** So many separate points are named; more are given from first to last. */
    private static final int NAMED = 6;

    private final ProcessStudy study;
    private final ControlChart chart;

    ChartWords(ProcessStudy study) {
        this.study = study;
        this.chart = study.assessment().chart();
    }

    boolean isIndividuals() {
        return chart.kind().equals("individuals");
    }

    /** {@code subgroup} or {@code piece}. */
    String noun() {
        return isIndividuals() ? "piece" : "subgroup";
    }

    /** {@code subgroups} or {@code pieces}. */
    String nouns() {
        return noun() + "s";
    }

    private Panel panel(PanelKind kind) {
        return kind == PanelKind.LOCATION
                ? chart.location()
                : chart.dispersion().orElseThrow();
    }

    /** {@code mean}, {@code range}, {@code individual value}. */
    String statistic(PanelKind kind) {
        return panel(kind).statistic();
    }

    /** {@code means}, {@code ranges}, {@code individual values}. */
    String statistics(PanelKind kind) {
        return statistic(kind) + "s";
    }

    /**
     * {@code subgroup 14}; a piece by its serial number where that ends in its number, {@code piece 2208-061}, else by both,
     * {@code piece 61 }.
     */
    String point(int number) {
        return noun() + " " + name(number);
    }

    private String name(int number) {
        if (!isIndividuals()) {
            return label(number);
        }
        String serial = study.parts().get(chart.data().reading(number - 1, 0));
        boolean tells = serial.matches("(?:.*\\D)?0*" + number);
        return tells ? serial : label(number) + " (" + serial + ")";
    }

    /** The label of the point with that number, counted from 1. */
    String label(int number) {
        return chart.data().label(number - 1);
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
            return numbers.size() + " " + nouns() + " from " + name(first) + " to " + name(last);
        }
        List<String> names = new ArrayList<>();
        numbers.forEach(number -> names.add(name(number)));
        return nouns() + " " + String.join(", ", names.subList(0, names.size() - 1)) + " and "
                + names.get(names.size() - 1);
    }

    /** {@code subgroups 12 to 25}. */
    String span(int first, int last) {
        return nouns() + " " + name(first) + " to " + name(last);
    }

    /** The pieces of a subgroup: {@code pieces 2207-066 to 2207-070}; empty for individuals, who are named already. */
    String pieces(int number) {
        if (isIndividuals()) {
            return "";
        }
        List<Integer> readings = chart.data().readings(number - 1);
        return "pieces " + study.parts().get(readings.get(0)) + " to "
                + study.parts().get(readings.get(readings.size() - 1));
    }
}
