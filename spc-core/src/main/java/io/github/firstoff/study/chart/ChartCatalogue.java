package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Subgroups;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The kinds of chart, by the names that plans use. A new kind is one line here. */
public final class ChartCatalogue {
    private static final Map<String, Function<ChartSettings, ChartMethod<Subgroups>>> MEASURED = new LinkedHashMap<>();
    private static final Map<String, Function<ChartSettings, ChartMethod<Counts>>> COUNTED = new LinkedHashMap<>();
    private static final Map<String, Function<ChartSettings, ChartMethod<Family>>> FAMILIES = new LinkedHashMap<>();

    static {
        MEASURED.put("individuals", s -> s.spread().map(Individuals::new).orElseGet(Individuals::new));
        MEASURED.put("xbar-r", s -> s.spread().map(XbarRange::new).orElseGet(XbarRange::new));
        MEASURED.put("xbar-s", s -> s.spread().map(XbarStandardDeviation::new).orElseGet(XbarStandardDeviation::new));
        MEASURED.put("median-r", s -> s.spread().map(MedianRange::new).orElseGet(MedianRange::new));
        MEASURED.put("between-within", s -> s.spread().map(BetweenWithin::new).orElseGet(BetweenWithin::new));
        MEASURED.put(
                "ewma",
                s -> new Ewma(
                        s.lambda().orElse(Ewma.USUAL_WEIGHT),
                        s.width().orElse(Ewma.USUAL_WIDTH),
                        s.spread(),
                        s.target()));
        MEASURED.put(
                "cusum",
                s -> new Cusum(
                        s.reference().orElse(Cusum.USUAL_REFERENCE),
                        s.interval().orElse(Cusum.USUAL_INTERVAL),
                        s.headStart().orElse(0),
                        s.spread(),
                        s.target()));
        MEASURED.put("deviation", s -> new Deviation(s.spread()));
        COUNTED.put("p", s -> new NonconformingShare(s.dispersion()));
        COUNTED.put("np", s -> new NonconformingCount(s.dispersion()));
        COUNTED.put("c", s -> new Nonconformities(s.dispersion()));
        COUNTED.put("u", s -> new NonconformitiesPerUnit(s.dispersion()));
        FAMILIES.put("standardised-deviation", s -> new StandardisedDeviation(s.spread()));
    }

    private ChartCatalogue() {}

    /** The kinds for measured values, with usual settings. */
    public static List<ChartMethod<Subgroups>> measured() {
        return MEASURED.values().stream()
                .<ChartMethod<Subgroups>>map(kind -> kind.apply(ChartSettings.USUAL))
                .toList();
    }

    /** The kind for measured values of that name, with usual settings; empty if there is none. */
    public static Optional<ChartMethod<Subgroups>> measured(String kind) {
        return measured(kind, ChartSettings.USUAL);
    }

    /**
     * The kind for measured values of that name; empty if there is none.
     *
     * @throws IllegalArgumentException if a setting is out of range
     */
    public static Optional<ChartMethod<Subgroups>> measured(String kind, ChartSettings settings) {
        return Optional.ofNullable(MEASURED.get(kind)).map(made -> made.apply(settings));
    }

    /** The kinds for attributes, with usual settings. */
    public static List<ChartMethod<Counts>> counted() {
        return COUNTED.values().stream()
                .<ChartMethod<Counts>>map(kind -> kind.apply(ChartSettings.USUAL))
                .toList();
    }

    /** The kind for attributes of that name; empty if there is none. */
    public static Optional<ChartMethod<Counts>> counted(String kind, ChartSettings settings) {
        return Optional.ofNullable(COUNTED.get(kind)).map(made -> made.apply(settings));
    }

    /** The kinds for families of part numbers, with usual settings; {@code deviation} takes their deviations. */
    public static List<ChartMethod<Family>> families() {
        return FAMILIES.values().stream()
                .<ChartMethod<Family>>map(kind -> kind.apply(ChartSettings.USUAL))
                .toList();
    }

    /** The kind for families of part numbers of that name; empty if there is none. */
    public static Optional<ChartMethod<Family>> families(String kind, ChartSettings settings) {
        return Optional.ofNullable(FAMILIES.get(kind)).map(made -> made.apply(settings));
    }
}
