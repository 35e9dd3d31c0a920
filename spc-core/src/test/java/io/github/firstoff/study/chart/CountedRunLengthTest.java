package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.stats.CountProbabilities;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Run lengths of attributes against linear equations solved in base R, {@code counted-run-lengths.R}. */
class CountedRunLengthTest {
    /** In per cent: 15 digits of a linear system in double. */
    private static final double COMPUTED = 1e-7;

    private static final RuleSet LIMITS = new RuleSet(List.of(WesternElectricRule.BEYOND_LIMIT));

    static Stream<Map<String, String>> rows() {
        return ReferenceFile.rows("chart/counted-run-lengths.csv").stream();
    }

    private static ControlChart chart(String kind, double rate, long... countsOfSize) {
        int size = (int) countsOfSize[0];
        Counts counts = Counts.of(new long[] {countsOfSize[1], countsOfSize[2]}, size);
        return ChartCatalogue.counted(kind, ChartSettings.USUAL)
                .orElseThrow()
                .withLimits(counts, new FrozenLimits(kind, rate, 1, "stated", 100, Unit.NONE));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void exactFigureOfCounts(Map<String, String> row) {
        boolean binomial = row.get("kind").equals("np");
        int size = Integer.parseInt(row.get("size"));
        double rate = Double.parseDouble(row.get("rate"));
        double limits = Double.parseDouble(row.get("limits"));
        double both = Double.parseDouble(row.get("limitsAndRun"));
        // the share and the count are one chart on two scales
        for (String kind : binomial ? List.of("np", "p") : List.of("c", "u")) {
            ControlChart chart = chart(kind, rate, size, 1, 2);
            ChartRequest request = ChartRequest.of(kind);
            FalseSignals found = ChartCatalogue.counted(kind, ChartSettings.USUAL)
                    .orElseThrow()
                    .falseSignals(LIMITS, chart);
            assertThat(found.average()).as(kind).isCloseTo(limits, withinPercentage(COMPUTED));
            assertThat(found.exact()).isTrue();
            assertThat(found.sentence())
                    .contains(binomial ? "binomial" : "Poisson")
                    .doesNotContain("sizes mixed");
            // tests 2 and 3 do not judge counts
            assertThat(request.falseSignals(chart).average()).isCloseTo(both, withinPercentage(COMPUTED));
        }
    }

    @Test
    void sizesAreMixedAsCharted() {
        // one false signal in x points on one size, one in y on the other: half of each
        Counts counts = Counts.of(new long[] {4, 9}, List.of(new BigDecimal("100"), new BigDecimal("200")));
        ControlChart chart =
                new NonconformingShare().withLimits(counts, new FrozenLimits("p", 0.05, 1, "stated", 100, Unit.NONE));
        NonconformingShare method = new NonconformingShare();
        double small = method.falseSignals(LIMITS, chart("p", 0.05, 100, 1, 2)).average();
        double large = method.falseSignals(LIMITS, chart("p", 0.05, 200, 1, 2)).average();
        FalseSignals mixed = method.falseSignals(LIMITS, chart);
        assertThat(mixed.average()).isCloseTo(2 / (1 / small + 1 / large), withinPercentage(1e-9));
        assertThat(mixed.sentence()).contains("sizes mixed as on this chart");
        // areas of opportunity need not be whole
        Counts areas = Counts.of(new long[] {4, 9}, List.of(new BigDecimal("2.5"), new BigDecimal("2.50")));
        ControlChart perUnit =
                new NonconformitiesPerUnit().withLimits(areas, new FrozenLimits("u", 1.6, 1, "stated", 100, Unit.NONE));
        assertThat(new NonconformitiesPerUnit().falseSignals(LIMITS, perUnit).average())
                .isCloseTo(352.1416756035844, withinPercentage(COMPUTED));
    }

    @Test
    void whatIsNotInTheFigureIsSaid() {
        ControlChart chart = chart("c", 16, 1, 12, 17);
        ChartMethod<Counts> method = new Nonconformities();
        FalseSignals nelson = method.falseSignals(new RuleSet(NelsonRule.all()), chart);
        assertThat(nelson.exact()).isFalse();
        assertThat(nelson.sentence()).contains("not counting nelson-3 and nelson-4; with them it is more often");
        // limits that were widened belong to no distribution: the figure of normal points, which says so
        Counts counts = Counts.of(new long[] {12, 17}, 1);
        ControlChart widened = method.withLimits(counts, new FrozenLimits("c", 16, 1.4, "Poisson × σz", 9, Unit.NONE));
        FalseSignals normal = method.falseSignals(LIMITS, widened);
        assertThat(normal.exact()).isFalse();
        assertThat(normal.average()).isCloseTo(370.4, within(0.01));
        assertThat(normal.sentence()).contains("normal points");
        // nothing to count
        ControlChart none = method.fromData(Counts.of(new long[0], 1));
        assertThat(method.falseSignals(LIMITS, none).exact()).isFalse();
        assertThat(method.falseSignals(new RuleSet(List.of(WesternElectricRule.TWO_OF_THREE)), chart))
                .extracting(FalseSignals::average, FalseSignals::sentence)
                .containsExactly(
                        Double.POSITIVE_INFINITY,
                        "A process in control, with counts by the Poisson distribution of the centre line, gives no false"
                                + " signal.");
        // measured values keep their own figure
        assertThat(ChartRequest.of("individuals").falseSignals(chart).average()).isCloseTo(91.75, within(0.005));
    }

    @Test
    void probabilitiesOfCountsSumToOne() {
        for (Optional<CountProbabilities> found : List.of(
                CountProbabilities.binomial(1, 0.3),
                CountProbabilities.binomial(5000, 0.9),
                CountProbabilities.binomial(3, 0),
                CountProbabilities.poisson(0.01),
                CountProbabilities.poisson(123_456))) {
            CountProbabilities counts = found.orElseThrow();
            double sum = 0;
            for (int k = counts.least(); k <= counts.most(); k++) {
                sum += counts.of(k);
            }
            assertThat(sum).isCloseTo(1, within(1e-9));
        }
        assertThat(CountProbabilities.poisson(2).orElseThrow().of(3)).isCloseTo(8 / 6.0 * Math.exp(-2), within(1e-15));
        assertThat(CountProbabilities.binomial(4, 0.5).orElseThrow().of(1)).isCloseTo(0.25, within(1e-15));
        assertThat(CountProbabilities.binomial(4, 0.5).orElseThrow().most()).isEqualTo(4);
        assertThat(CountProbabilities.poisson(1e30)).isEmpty();
        assertThat(CountProbabilities.binomial(Integer.MAX_VALUE, 0.5)).isPresent();
        assertThatThrownBy(() -> CountProbabilities.poisson(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountProbabilities.poisson(Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountProbabilities.binomial(0, 0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountProbabilities.binomial(2, 1.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CountProbabilities.binomial(2, -0.1)).isInstanceOf(IllegalArgumentException.class);
    }
}
