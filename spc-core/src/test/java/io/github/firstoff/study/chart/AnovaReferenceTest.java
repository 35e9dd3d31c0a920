package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * NIST Statistical Reference Datasets, one-way analysis of variance: what a chart with subgroups takes for the spread within them
 * (pooled s) and among all readings (overall s), and with these the whole table. Readings enter as decimals, so that the thirteen constant
 * leading digits of the hardest sets cost nothing.
 */
class AnovaReferenceTest {
    /** Of 15 certified; c4, with which pooled s is divided and multiplied again here, has about as many. */
    private static final double DIGITS = 13.5;

    static Stream<JsonNode> sets() {
        return StreamSupport.stream(
                ReferenceFile.file("strd/anova.json").path("cases").spliterator(), false);
    }

    private static double digits(double found, double certified) {
        return found == certified ? 15 : Math.min(15, -Math.log10(Math.abs(found / certified - 1)));
    }

    @ParameterizedTest
    @MethodSource("sets")
    void certifiedTable(JsonNode c) {
        List<Map<String, String>> rows = io.github.firstoff.ReferenceFile.rows(
                "strd/" + c.path("id").asText().substring("STRD-A-".length()) + ".csv");
        List<BigDecimal> values =
                rows.stream().map(row -> new BigDecimal(row.get("y"))).toList();
        Subgroups data = Sample.of(values, Unit.NONE)
                .inSubgroups(rows.stream().map(row -> row.get("treatment")).toList());
        Basis basis = Basis.of(data, Baseline.ALL);
        JsonNode e = c.path("expected");
        int within = e.path("df_within").asInt();
        int between = e.path("df_between").asInt();
        assertThat(data.count()).isEqualTo(between + 1);
        double pooled = data.sample()
                        .scale()
                        .length(SpreadEstimators.POOLED_STANDARD_DEVIATION
                                .estimate(basis)
                                .orElseThrow()
                                .sigma())
                * ChartConstants.c4OfDegrees(within);
        assertThat(digits(pooled, e.path("residual_sd").asDouble()))
                .as("residual s")
                .isGreaterThan(DIGITS);
        double overall = data.sample()
                .scale()
                .length(SpreadEstimators.named("overall-standard-deviation")
                        .orElseThrow()
                        .estimate(basis)
                        .orElseThrow()
                        .sigma());
        double total = overall * overall * (within + between);
        double betweenSquares = total - pooled * pooled * within;
        // the difference of two sums loses what they have in common: a digit
        assertThat(digits(betweenSquares, e.path("ss_between").asDouble()))
                .as("between")
                .isGreaterThan(DIGITS - 1);
        assertThat(digits(
                        betweenSquares / between / (pooled * pooled),
                        e.path("F").asDouble()))
                .as("F")
                .isGreaterThan(DIGITS - 1);
        assertThat(digits(betweenSquares / total, e.path("r_squared").asDouble()))
                .as("R²")
                .isGreaterThan(DIGITS - 1);
    }
}
