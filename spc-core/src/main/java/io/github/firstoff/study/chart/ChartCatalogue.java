package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import java.util.List;
import java.util.Optional;

/** The kinds of chart, by the names that plans use. A new kind is one line here. */
public final class ChartCatalogue {
    private static final List<ChartMethod<Subgroups>> MEASURED =
            List.of(new Individuals(), new XbarRange(), new XbarStandardDeviation());

    private ChartCatalogue() {}

    /** The kinds for measured values. */
    public static List<ChartMethod<Subgroups>> measured() {
        return MEASURED;
    }

    /** The kind for measured values of that name; empty if there is none. */
    public static Optional<ChartMethod<Subgroups>> measured(String kind) {
        return MEASURED.stream().filter(method -> method.kind().equals(kind)).findFirst();
    }
}
