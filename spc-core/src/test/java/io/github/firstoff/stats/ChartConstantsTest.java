package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.reference.ReferenceFile;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Factors against two independent computations and the printed tables. */
class ChartConstantsTest {
    private static final String FILE = "constants/factors.json";
    /** The first collection prints nine decimals, the second eleven significant. */
    private static final double NINE_DECIMALS = 2e-9;

    private static final double ELEVEN_DECIMALS = 1.5e-11;
    /** "Third-decimal differences between printed tables are normal": old tables were derived from rounded d2 and d3. */
    private static final double PRINTED = 1.001e-3;

    private static final Map<String, ToDoubleFunction<ChartConstants>> FACTORS = Map.ofEntries(
            Map.entry("d2", ChartConstants::d2),
            Map.entry("d3", ChartConstants::d3),
            Map.entry("c4", ChartConstants::c4),
            Map.entry("c5", ChartConstants::c5),
            Map.entry("A", ChartConstants::a),
            Map.entry("A2", ChartConstants::a2),
            Map.entry("A3", ChartConstants::a3),
            Map.entry("B3", ChartConstants::b3),
            Map.entry("B4", ChartConstants::b4),
            Map.entry("B5", ChartConstants::b5),
            Map.entry("B6", ChartConstants::b6),
            Map.entry("D1", ChartConstants::bigD1),
            Map.entry("D2", ChartConstants::bigD2),
            Map.entry("D3", ChartConstants::bigD3),
            Map.entry("D4", ChartConstants::bigD4),
            Map.entry("E2", ChartConstants::e2),
            Map.entry("E3", ChartConstants::e3));

    private static int check(int n, JsonNode expected, double tolerance) {
        ChartConstants c = ChartConstants.of(n);
        int checked = 0;
        for (var factor : expected.properties()) {
            assertThat(FACTORS.get(factor.getKey()).applyAsDouble(c))
                    .as("%s for n = %d", factor.getKey(), n)
                    .isCloseTo(factor.getValue().asDouble(), within(tolerance));
            checked++;
        }
        return checked;
    }

    @Test
    void bothCollectionsAndTheirPrintedTables() {
        int checked = 0;
        for (JsonNode c : ReferenceFile.file(FILE).path("cases")) {
            String id = c.path("id").asText();
            if (id.matches("CONST-\\d+")) {
                int n = c.path("inputs").path("n").asInt();
                checked += check(n, c.path("expected").path("computed"), NINE_DECIMALS);
                checked += check(n, c.path("expected").path("printed"), PRINTED);
            } else if (id.matches("constants-n\\d+")) {
                checked += check(c.path("input").path("n").asInt(), c.path("expected"), ELEVEN_DECIMALS);
            } else if (id.matches("constants-printed-n\\d+")) {
                checked += check(c.path("input").path("n").asInt(), c.path("expected"), PRINTED);
            }
        }
        assertThat(checked).isGreaterThan(500);
    }

    @Test
    void closedForms() {
        // d2(2) = 2/√π, d2(3) = 3/√π, d2(4) = (6/√π)(1 − … ) has no shorter form; d2(3)² + d3(3)² = 2 + √3·3/π (Harter
        // 1960)
        assertThat(ChartConstants.of(2).d2()).isEqualTo(2 / Math.sqrt(Math.PI));
        assertThat(ChartConstants.of(3).d2()).isCloseTo(3 / Math.sqrt(Math.PI), within(1e-14));
        assertThat(Math.pow(ChartConstants.of(3).d2(), 2)
                        + Math.pow(ChartConstants.of(3).d3(), 2))
                .isCloseTo(2 + 3 * Math.sqrt(3) / Math.PI, within(1e-13));
        // d2(5) = (5/√π)(1/2 + (3/π) asin(1/3))
        assertThat(ChartConstants.of(5).d2())
                .isCloseTo(5 / Math.sqrt(Math.PI) * (0.5 + 3 / Math.PI * Math.asin(1.0 / 3)), within(1e-13));
        assertThat(ChartConstants.of(2).c4()).isCloseTo(Math.sqrt(2 / Math.PI), within(1e-15));
        assertThat(ChartConstants.of(3).c4()).isCloseTo(Math.sqrt(Math.PI) / 2, within(1e-15));
    }

    /** d2 of many is twice the mean of the greatest: 5.0151873 for 100 and 6.4829 for 1000 (from memory). */
    @Test
    void largeSubgroups() {
        assertThat(ChartConstants.of(100).d2()).isCloseTo(5.01519, within(1e-5));
        assertThat(ChartConstants.of(1000).d2()).isCloseTo(6.48287, within(1e-4));
        assertThat(ChartConstants.of(1000).c4()).isCloseTo(1 - 1 / (4.0 * 999), within(1e-7));
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1, 1001})
    void sizesWithoutFactorsAreRefused(int n) {
        assertThatThrownBy(() -> ChartConstants.of(n))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("not " + n);
    }
}
