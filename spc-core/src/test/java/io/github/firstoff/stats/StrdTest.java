package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.reference.StrdFile;
import io.github.firstoff.sample.Sample;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * NIST Statistical Reference Datasets, univariate summary statistics: correct digits (log relative error, 15 at most) of mean
 * and standard deviation on each path.
 */
class StrdTest {
    /** Certified values have 15 digits; the exact path reaches all that a double of that certified text can show. */
    private static final double EXACT_PATH_DIGITS = 14.5;

    static Stream<JsonNode> datasets() {
        return StreamSupport.stream(
                ReferenceFile.file("strd/univariate.json").path("cases").spliterator(), false);
    }

    private static double correctDigits(double computed, BigDecimal certified) {
        BigDecimal error = new BigDecimal(computed).subtract(certified).abs();
        if (error.signum() == 0) {
            return 15;
        }
        double relative = Math.abs(Double.parseDouble(error.toString()) / Double.parseDouble(certified.toString()));
        return Math.min(15, -Math.log10(relative));
    }

    private static BigDecimal certified(JsonNode c, String what) {
        return new BigDecimal(
                c.path("expected").path("certified_text").path(what).asText());
    }

    private static String name(JsonNode c) {
        return c.path("id").asText().substring("STRD-U-".length());
    }

    @ParameterizedTest
    @MethodSource("datasets")
    void exactPath(JsonNode c) {
        Sample sample = Sample.of(StrdFile.values(name(c)), Unit.NONE);
        DeviationTally tally = DeviationTally.of(sample.deviations());
        double mean = sample.scale().mean(tally.sum(), tally.count());
        double sd = sample.scale().length(tally.standardDeviation());
        assertThat(correctDigits(mean, certified(c, "mean"))).as("mean").isGreaterThan(EXACT_PATH_DIGITS);
        assertThat(correctDigits(sd, certified(c, "sd"))).as("sd").isGreaterThan(EXACT_PATH_DIGITS);
    }

    /**
     * The path in double first rounds the readings: NumAcc3's 1000000.1 is stored with an error of 2e-11 of its spread, so no
     * algorithm on doubles gets more than about 9.5 digits of its standard deviation; NumAcc2 likewise about 14.
     */
    private static double doublePathDigits(String name) {
        return switch (name) {
            case "NumAcc3" -> 9.4;
            case "Mavro" -> 12.5;
            default -> 13.5;
        };
    }

    @ParameterizedTest
    @MethodSource("datasets")
    void doublePath(JsonNode c) {
        double[] x = StrdFile.values(name(c)).stream()
                .mapToDouble(v -> Double.parseDouble(v.toString()))
                .toArray();
        Moments m = Moments.of(x);
        assertThat(correctDigits(m.mean(), certified(c, "mean"))).as("mean").isGreaterThan(14.5);
        assertThat(correctDigits(m.standardDeviation(), certified(c, "sd")))
                .as("sd")
                .isGreaterThan(doublePathDigits(name(c)));
    }

    @Test
    void numAcc4OnTheExactPath() {
        // NumAcc4, higher difficulty: 10000000.2, then 10000000.1 and 10000000.3 in turn, 1001 values; certified mean
        // 10000000.2, standard deviation 0.1 (construction and certified values from memory)
        List<BigDecimal> values = new ArrayList<>();
        values.add(new BigDecimal("10000000.2"));
        for (int i = 0; i < 500; i++) {
            values.add(new BigDecimal("10000000.1"));
            values.add(new BigDecimal("10000000.3"));
        }
        Sample sample = Sample.of(values, Unit.NONE);
        DeviationTally tally = DeviationTally.of(sample.deviations());
        assertThat(sample.scale().mean(tally.sum(), tally.count())).isEqualTo(10000000.2);
        assertThat(sample.scale().length(tally.standardDeviation())).isEqualTo(0.1);
    }
}
