package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Percentiles of Johnson's curves against base R, {@code johnson.R}. */
class JohnsonReferenceTest {
    static Stream<Map<String, String>> rows() {
        return ReferenceFile.rows("stats/johnson.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void percentiles(Map<String, String> row) {
        double[] parameters = Stream.of("curve", "gamma", "eta", "xi", "lambda")
                .mapToDouble(name -> Double.parseDouble(row.get(name)))
                .toArray();
        FittedDistribution curve = JohnsonFamily.INSTANCE.of(parameters);
        double p = Double.parseDouble(row.get("p"));
        double x = Double.parseDouble(row.get("x"));
        assertThat(curve.quantile(p)).isCloseTo(x, withinPercentage(1e-10));
        assertThat(curve.probability(x)).isCloseTo(p, within(1e-13));
        assertThat(curve.survival(x)).isCloseTo(1 - p, within(1e-13));
    }
}
