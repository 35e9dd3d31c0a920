package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rounding method of ASTM E29 by rule A of ISO 80000-1 annex B. The place to which a value is rounded is that of the limit; a place
 * above the units is written as a negative scale here, which no plan file can state.
 */
class RoundedFindingTest {
    private static final Unit ANY = Unit.NONE;

    static List<JsonNode> roundings() {
        List<JsonNode> cases = new ArrayList<>();
        for (JsonNode each : ReferenceFile.file("conformity/rounding.json").path("cases")) {
            boolean rounding = each.path("expected").has("half_even_rule_A")
                    || each.path("expected").has("rule_A_half_even");
            // Rounding to fives (0.05 or 0.5) is no rounding to a decimal place, and no limit can ask for it.
            if (rounding && unit(each).stripTrailingZeros().unscaledValue().intValueExact() == 1) {
                cases.add(each);
            }
        }
        return cases;
    }

    @Test
    void roundings_areAll() {
        assertThat(roundings()).hasSizeGreaterThanOrEqualTo(30);
    }

    @ParameterizedTest
    @MethodSource("roundings")
    void rounded_halvesToEven(JsonNode each) {
        JsonNode in = in(each);
        JsonNode out = each.path("expected");
        BigDecimal unit = unit(each);
        int scale = unit.stripTrailingZeros().scale();
        BigDecimal wanted = decimal(out, out.has("rule_A_half_even") ? "rule_A_half_even" : "half_even_rule_A")
                .setScale(scale);
        Found found = Found.rounded(decimal(in, "value"), ANY);
        assertThat(found.compareTo(wanted, ANY)).as("%s", each).isZero();
        assertThat(found.compareTo(wanted.add(unit.setScale(scale)), ANY)).isNegative();
        assertThat(found.compareTo(wanted.subtract(unit.setScale(scale)), ANY)).isPositive();
    }

    static List<JsonNode> conformances() {
        List<JsonNode> cases = new ArrayList<>();
        for (JsonNode each : ReferenceFile.file("conformity/rounding.json").path("cases")) {
            if (each.path("expected").has("rounding_method_conforms")) {
                cases.add(each);
            }
        }
        assertThat(cases).hasSize(6);
        return cases;
    }

    @ParameterizedTest
    @MethodSource("conformances")
    void rounded_againstOneLimit(JsonNode each) {
        JsonNode in = in(each);
        BigDecimal limit = decimal(in, "limit");
        Limits limits = in.path("side").asText().equals("max") ? Limits.atMost(limit, ANY) : Limits.atLeast(limit, ANY);
        JsonNode out = each.path("expected");
        BigDecimal observed = decimal(in, "observed");
        assertThat(limits.contains(Found.rounded(observed, ANY)))
                .isEqualTo(out.path("rounding_method_conforms").asBoolean());
        assertThat(limits.contains(Found.of(observed, ANY)))
                .isEqualTo(out.path("absolute_method_conforms").asBoolean());
    }

    static List<String> tables() {
        return List.of("E29-YIELD", "E29-NICKEL", "E29-CONDUCTIVITY");
    }

    @ParameterizedTest
    @MethodSource("tables")
    void rounded_examplesOfThePractice(String id) {
        JsonNode each = ReferenceFile.reference("conformity/rounding.json", id);
        JsonNode in = in(each);
        int scale = decimal(in, "rounding_unit").stripTrailingZeros().scale();
        BigDecimal limit = decimal(in, "limit").setScale(scale);
        Limits limits = in.path("kind").asText().equals("max") ? Limits.atMost(limit, ANY) : Limits.atLeast(limit, ANY);
        assertThat(each.path("expected").path("results")).hasSize(3);
        for (JsonNode row : each.path("expected").path("results")) {
            BigDecimal observed = decimal(row, "observed");
            assertThat(limits.contains(Found.rounded(observed, ANY)))
                    .as("%s", row)
                    .isEqualTo(row.path("conforms_rounding_method").asBoolean());
            assertThat(limits.contains(Found.of(observed, ANY)))
                    .isEqualTo(row.path("conforms_absolute_method").asBoolean());
        }
    }

    @Test
    void rounded_onceFromTheValueAsRead() {
        for (String id : List.of("ROUND-ONCE", "RND-twice")) {
            JsonNode each = ReferenceFile.reference("conformity/rounding.json", id);
            JsonNode out = each.path("expected");
            Found found = Found.rounded(decimal(in(each), "value"), ANY);
            assertThat(found.compareTo(decimal(out, out.has("once") ? "once" : "one_step"), ANY))
                    .isZero();
        }
    }

    @Test
    void rounded_inchAgainstMillimetres_roundsTheConvertedValue() {
        // 0.5003 in = 12.70762 mm: 12.708 at three places, 12.71 at two.
        Found found = Found.rounded(new BigDecimal("0.5003"), Unit.INCH);
        assertThat(found.compareTo(new BigDecimal("12.708"), Unit.MILLIMETRE)).isZero();
        assertThat(found.compareTo(new BigDecimal("12.71"), Unit.MILLIMETRE)).isZero();
    }

    private static JsonNode in(JsonNode each) {
        return each.has("input") ? each.path("input") : each.path("inputs");
    }

    private static BigDecimal unit(JsonNode each) {
        return decimal(in(each), in(each).has("range") ? "range" : "unit");
    }

    private static BigDecimal decimal(JsonNode node, String name) {
        return new BigDecimal(node.path(name).asText());
    }
}
