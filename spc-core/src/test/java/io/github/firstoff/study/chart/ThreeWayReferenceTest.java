package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Three machines' shaft diameters (NIST/SEMATECH e-Handbook 3.5.2) against base R, {@code three-way.R}. */
class ThreeWayReferenceTest {
    private static final String FILE = "chart/three-way.csv";
    /** In per cent; R integrates d2 and d3 adaptively. */
    private static final double COMPUTED = 1e-7;

    private static List<BigDecimal> diameters() {
        return ReferenceFile.rows("chart/machine.csv").stream()
                .map(row -> new BigDecimal(row.get("diameter")))
                .toList();
    }

    private static Subgroups machine() {
        return Sample.of(diameters(), new BigDecimal("0.1250"), Unit.INCH).inSubgroupsOf(10);
    }

    private static void is(double found, String what) {
        double expected = ReferenceFile.rows(FILE).stream()
                .filter(row -> row.get("what").equals(what))
                .mapToDouble(row -> Double.parseDouble(row.get("value")))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no " + what + " in " + FILE));
        assertThat(found).as(what).isCloseTo(expected, withinPercentage(COMPUTED));
    }

    @Test
    void betweenAndWithin() {
        ControlChart chart = new BetweenWithin().fromData(machine());
        Lines means = chart.location().commonLines().orElseThrow();
        is(means.centre(), "between-within centre");
        is(means.upper(), "between-within upper");
        is(means.lower(), "between-within lower");
        Lines between =
                chart.panel(PanelKind.BETWEEN).orElseThrow().commonLines().orElseThrow();
        is(between.centre(), "between-within moving range");
        is(between.upper(), "between-within moving range upper");
        Lines within = chart.dispersion().orElseThrow().commonLines().orElseThrow();
        is(within.centre(), "between-within range");
        is(within.upper(), "between-within range upper");
        is(chart.sigmaBetween().orElseThrow(), "between-within sigma between");
    }

    @Test
    void deviationsFromNominal() {
        ControlChart chart = new Deviation().fromData(machine());
        Lines lines = chart.location().commonLines().orElseThrow();
        is(lines.centre(), "deviation centre");
        is(lines.upper(), "deviation upper");
        is(chart.location().value(0), "deviation first");
    }

    @Test
    void standardisedDeviations() {
        List<Family.Piece> pieces = new ArrayList<>();
        for (Map<String, String> row : ReferenceFile.rows("chart/machine.csv")) {
            int machine = Integer.parseInt(row.get("machine"));
            String nominal = List.of("0.1250", "0.1240", "0.1260").get(machine - 1);
            pieces.add(new Family.Piece("HQ-" + machine, new BigDecimal(nominal), new BigDecimal(row.get("diameter"))));
        }
        ControlChart chart = new StandardisedDeviation().fromData(Family.of(pieces, 10, Unit.INCH));
        Panel means = chart.location();
        Panel ranges = chart.dispersion().orElseThrow();
        for (int i : new int[] {1, 7, 18}) {
            is(means.value(i - 1), "standardised-deviation point " + i);
            is(ranges.value(i - 1), "standardised-deviation range " + i);
        }
        is(means.commonLines().orElseThrow().upper(), "standardised-deviation upper");
        is(ranges.commonLines().orElseThrow().centre(), "standardised-deviation range centre");
        is(ranges.commonLines().orElseThrow().upper(), "standardised-deviation range upper");
        assertThat(means.statistic()).isEqualTo("standardised mean deviation");
        assertThat(chart.kind()).isEqualTo("standardised-deviation");
    }

    static Stream<SpreadEstimator> estimators() {
        return SpreadEstimators.all().stream();
    }

    /** Every estimator of the catalogue; those of moving ranges on the means of the subgroups. */
    @ParameterizedTest
    @MethodSource("estimators")
    void estimatesOfSpread(SpreadEstimator estimator) {
        Subgroups data = machine();
        if (estimator.name().contains("moving")) {
            // sums of ten are ten times the mean in whole steps
            long[] sums = new long[data.count()];
            for (int g = 0; g < sums.length; g++) {
                for (int m = 0; m < 10; m++) {
                    sums[g] += data.deviation(g, m);
                }
            }
            data = Sample.ofDeviations(sums, new io.github.firstoff.sample.Scale(BigDecimal.ZERO, 5, Unit.INCH))
                    .asIndividuals();
        }
        double steps =
                estimator.estimate(Basis.of(data, Baseline.ALL)).orElseThrow().sigma();
        is(data.sample().scale().length(steps), estimator.name());
    }
}
