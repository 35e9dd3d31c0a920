package io.github.firstoff.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.ReferenceFile;
import io.github.firstoff.stats.Distributions;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintyBudgetTest {
    private static final String FILE = "uncertainty/budgets.json";

    /** The computed figures of the reference file have ten significant digits. */
    private static final BigDecimal AS_COMPUTED = new BigDecimal("1e-9");

    /** The t table has nine places; the quantile itself is good to about 1e-12 relative. */
    private static final double NINE_PLACES = 0.51e-9;

    @Test
    void evaluate_endGaugeOfGumH1_isThePublishedResult() {
        JsonNode reference = reference("GUM-H1");
        JsonNode expected = reference.path("expected");
        UncertaintyBudget.Result result = endGauge(reference.path("input")).evaluate();
        close(result.standardUncertainty(), expected, "u_c_nm");
        close(result.effectiveDegreesOfFreedom().orElseThrow(), expected, "nu_eff");
        assertThat(result.degreesOfFreedom())
                .contains(new BigInteger(expected.path("nu_eff_truncated").asText()));
        close(result.coverageFactor(), expected, "t99");
        close(result.expanded(), expected, "U99_nm");
        close(result.lines().get(4).contribution(), expected, "contribution_delta_alpha_nm");
        close(result.lines().get(5).contribution(), expected, "contribution_delta_theta_nm");
        // JCGM 100:2008, H.1.6 and table H.1 as printed: u_c = 32 nm, 16 degrees of freedom, t = 2.92, U = 93 nm.
        assertThat(result.standardUncertainty().setScale(0, RoundingMode.HALF_UP))
                .isEqualByComparingTo("32");
        assertThat(result.coverageFactor().setScale(2, RoundingMode.HALF_UP)).isEqualByComparingTo("2.92");
        assertThat(result.rounded().toPlainString()).isEqualTo("93");
        assertThat(result.uncertainty().at(new BigDecimal("50"))).isEqualByComparingTo("93");
    }

    @Test
    void evaluate_endGaugeWithTheGuidesRoundedSteps_isWithinTheLastPlace() {
        // The guide combines the rounded 9.7 nm with its 25.6 degrees of freedom, 2.9 and 16.6 nm (table H.1).
        UncertaintyBudget.Result result = new UncertaintyBudget(
                        Unit.NONE,
                        List.of(
                                standard("standard", "25", "18"),
                                standard("comparison", "9.7", "25.6"),
                                standard("expansions", "2.9", "50"),
                                standard("temperatures", "16.6", "2")),
                        new Coverage.Probability(new BigDecimal("0.99")))
                .evaluate();
        assertThat(result.degreesOfFreedom()).contains(BigInteger.valueOf(16));
        assertThat(result.rounded()).isEqualByComparingTo("93");
    }

    @Test
    void evaluate_secondOrderTermsAsFurtherSources_giveTheGuides34() {
        JsonNode reference = reference("GUM-H1");
        JsonNode expected = reference.path("expected");
        UncertaintyBudget first = endGauge(reference.path("input"));
        List<UncertaintySource> sources = new ArrayList<>(first.sources());
        sources.add(UncertaintySource.standard("second order, expansion", decimal(expected, "second_order_1_nm")));
        sources.add(UncertaintySource.standard("second order, temperature", decimal(expected, "second_order_2_nm")));
        BigDecimal combined =
                UncertaintyBudget.of(Unit.NONE, sources).evaluate().standardUncertainty();
        close(combined, expected, "u_c_with_second_order_nm");
        assertThat(combined.setScale(0, RoundingMode.HALF_UP)).isEqualByComparingTo("34");
    }

    @Test
    void evaluate_gumG4_relativeUncertainties() {
        JsonNode reference = reference("GUM-G4");
        JsonNode input = reference.path("input");
        JsonNode expected = reference.path("expected");
        List<UncertaintySource> sources = new ArrayList<>();
        for (int i = 0; i < input.path("relative_u_percent").size(); i++) {
            BigDecimal degrees = decimal(input.path("observations").get(i)).subtract(BigDecimal.ONE);
            sources.add(UncertaintySource.standard(
                            "mean of group " + i,
                            decimal(input.path("relative_u_percent").get(i)))
                    .withDegreesOfFreedom(degrees));
        }
        UncertaintyBudget.Result result =
                new UncertaintyBudget(Unit.NONE, sources, new Coverage.Probability(new BigDecimal("0.95"))).evaluate();
        close(result.standardUncertainty(), expected, "u_c_percent");
        close(result.effectiveDegreesOfFreedom().orElseThrow(), expected, "nu_eff");
        // The guide rounds 18.9987 to 19.0; cut to a whole number as its note recommends, 18 are used and k is a little
        // greater.
        assertThat(result.degreesOfFreedom()).contains(BigInteger.valueOf(18));
        assertThat(StudentFactors.factor(Optional.of(BigInteger.valueOf(19)), new BigDecimal("0.95")))
                .isCloseTo(decimal(expected, "t95_at_19"), Offset.offset(AS_COMPUTED));
        assertThat(result.coverageFactor()).isGreaterThan(decimal(expected, "t95_at_19"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"WS-1", "WS-2"})
    void evaluate_welchSatterthwaite(String id) {
        JsonNode input = reference(id).path("input");
        JsonNode expected = reference(id).path("expected");
        List<UncertaintySource> sources = new ArrayList<>();
        for (int i = 0; i < input.path("u").size(); i++) {
            UncertaintySource source = UncertaintySource.standard(
                    "source " + i, decimal(input.path("u").get(i)));
            String degrees = input.path("nu").get(i).asText();
            sources.add(degrees.equals("infinite") ? source : source.withDegreesOfFreedom(new BigDecimal(degrees)));
        }
        UncertaintyBudget.Result result =
                new UncertaintyBudget(Unit.NONE, sources, new Coverage.Probability(decimal(input, "level"))).evaluate();
        close(result.standardUncertainty(), expected, "u_c");
        close(result.effectiveDegreesOfFreedom().orElseThrow(), expected, "nu_eff");
        assertThat(result.degreesOfFreedom())
                .contains(new BigInteger(expected.path("nu_truncated").asText()));
        close(result.coverageFactor(), expected, "k_truncated");
        close(result.expanded(), expected, "U_truncated");
    }

    @Test
    void standardUncertainty_ofEachSpread() {
        BigDecimal a = new BigDecimal("0.003");
        close(UncertaintySource.rectangular("a", a), "TB-rectangular");
        close(UncertaintySource.triangular("a", a), "TB-triangular");
        close(UncertaintySource.expanded("U", new BigDecimal("0.004"), new BigDecimal("2")), "TB-normal_k2");
        close(UncertaintySource.resolution("step", new BigDecimal("0.001")), "TB-resolution_digit_0.001");
        JsonNode rules = reference("GUM-BUDGET-RULES");
        BigDecimal half = decimal(rules.path("inputs"), "half_width");
        close(UncertaintySource.rectangular("a", half).standardUncertainty(), rules.path("expected"), "rectangular");
        close(UncertaintySource.triangular("a", half).standardUncertainty(), rules.path("expected"), "triangular");
        close(UncertaintySource.uShaped("a", half).standardUncertainty(), rules.path("expected"), "arcsine");
    }

    @Test
    void trapezoidal_endsAtTriangleAndRectangle() {
        // JCGM 100:2008, 4.3.9, equations 9a and 9b.
        BigDecimal a = new BigDecimal("0.7");
        assertThat(UncertaintySource.trapezoidal("a", a, BigDecimal.ZERO).standardUncertainty())
                .isEqualTo(UncertaintySource.triangular("a", a).standardUncertainty());
        assertThat(UncertaintySource.trapezoidal("a", a, BigDecimal.ONE).standardUncertainty())
                .isEqualByComparingTo(UncertaintySource.rectangular("a", a).standardUncertainty());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UncertaintySource.trapezoidal("a", a, new BigDecimal("1.1")))
                .withMessageContaining("1.1");
    }

    static List<Map<String, String>> tableG2() {
        return ReferenceFile.rows("uncertainty/table-g2.csv");
    }

    @ParameterizedTest
    @MethodSource("tableG2")
    void factor_tableG2_toThePrintedPlaces(Map<String, String> row) {
        String degrees = row.get("degrees");
        Optional<BigInteger> nu = degrees.equals("infinite") ? Optional.empty() : Optional.of(new BigInteger(degrees));
        for (BigDecimal p : StudentFactors.probabilities()) {
            BigDecimal printed = new BigDecimal(row.get(p.toPlainString()));
            // The two cells that the head of the file explains.
            boolean slip = degrees.equals("35") && p.compareTo(new BigDecimal("0.90")) == 0;
            boolean threeSigma = degrees.equals("1") && p.compareTo(new BigDecimal("0.9973")) == 0;
            BigDecimal ours = StudentFactors.factor(nu, p);
            if (slip || threeSigma) {
                BigDecimal away = slip ? new BigDecimal("0.011") : new BigDecimal("0.017");
                assertThat(printed.subtract(ours)).isBetween(BigDecimal.ZERO, away);
            } else {
                assertThat(ours.setScale(printed.scale(), RoundingMode.HALF_UP))
                        .as("p = %s", p)
                        .isEqualTo(printed);
            }
        }
    }

    @Test
    void factor_everyRow_isTheQuantileToNinePlaces() {
        for (BigDecimal p : StudentFactors.probabilities()) {
            double upper = (1 + p.doubleValue()) / 2;
            for (int nu = 1; nu <= 200; nu++) {
                double quantile = Distributions.studentTQuantile(upper, nu);
                double ours = StudentFactors.factor(Optional.of(BigInteger.valueOf(nu)), p)
                        .doubleValue();
                assertThat(ours)
                        .as("ν = %s, p = %s", nu, p)
                        .isCloseTo(quantile, Offset.offset(NINE_PLACES + 1e-11 * quantile));
            }
        }
    }

    @Test
    void factor_betweenRows_takesTheGreater() {
        BigDecimal p = new BigDecimal("0.95");
        assertThat(StudentFactors.factor(Optional.of(BigInteger.valueOf(249)), p))
                .isEqualTo(StudentFactors.factor(Optional.of(BigInteger.valueOf(200)), p));
        assertThat(StudentFactors.factor(Optional.of(BigInteger.TWO.pow(80)), p))
                .isEqualTo(StudentFactors.factor(Optional.of(BigInteger.valueOf(1000)), p))
                .isGreaterThan(StudentFactors.factor(Optional.empty(), p));
    }

    @ParameterizedTest
    @ValueSource(strings = {"GUM-G-5-0.95", "GUM-G-16-0.99", "GUM-G-50-0.9545"})
    void factor_computedCases(String id) {
        JsonNode inputs = reference(id).path("inputs");
        BigDecimal factor = StudentFactors.factor(
                Optional.of(new BigInteger(inputs.path("dof").asText())), decimal(inputs, "p"));
        close(factor, reference(id).path("expected"), "t");
    }

    @Test
    void effectiveDegreesOfFreedom_exactlyWhole_areNotCutBelow() {
        // Equal rectangular thirds are no finite decimals; n equal sources with ν each have exactly n·ν degrees of
        // freedom.
        for (int n = 1; n <= 12; n++) {
            List<UncertaintySource> sources = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                sources.add(UncertaintySource.rectangular("source " + i, new BigDecimal("0.7"))
                        .times(new BigDecimal("-1.3"))
                        .withDegreesOfFreedom(new BigDecimal("7")));
            }
            assertThat(UncertaintyBudget.of(Unit.MILLIMETRE, sources).evaluate().degreesOfFreedom())
                    .contains(BigInteger.valueOf(7L * n));
        }
    }

    @Test
    void evaluate_lawsOfRandomBudgets() {
        SplittableRandom random = new SplittableRandom(1008);
        for (int i = 0; i < 500; i++) {
            List<UncertaintySource> sources = new ArrayList<>();
            BigDecimal least = new BigDecimal("1000");
            for (int k = 0; k <= random.nextInt(6); k++) {
                BigDecimal degrees = BigDecimal.valueOf(random.nextInt(10, 400), 1);
                least = least.min(degrees);
                sources.add(UncertaintySource.rectangular("s" + k, BigDecimal.valueOf(random.nextInt(1, 5000), 6))
                        .times(BigDecimal.valueOf(random.nextInt(-300, 300) * 2L + 1, 2))
                        .withDegreesOfFreedom(degrees));
            }
            UncertaintyBudget.Result result = new UncertaintyBudget(
                            Unit.MILLIMETRE, sources, new Coverage.Probability(new BigDecimal("0.95")))
                    .evaluate();
            // ν_eff is never below the least ν, nor above their sum (G.4.1); to the last digits of the quotient.
            BigDecimal nu = result.effectiveDegreesOfFreedom().orElseThrow().add(new BigDecimal("1e-25"));
            BigDecimal sum = sources.stream()
                    .map(source -> source.degreesOfFreedom().orElseThrow())
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            assertThat(nu).isBetween(least, sum.add(new BigDecimal("1e-24")));
            // Rounded up, by less than one unit of the second digit.
            assertThat(result.rounded()).isGreaterThanOrEqualTo(result.expanded());
            assertThat(result.rounded().precision()).isEqualTo(2);
            assertThat(result.rounded().subtract(result.expanded()))
                    .isLessThan(result.rounded().ulp());
            BigDecimal shares =
                    result.lines().stream().map(UncertaintyBudget.Line::share).reduce(BigDecimal.ZERO, BigDecimal::add);
            assertThat(shares).isCloseTo(BigDecimal.ONE, Offset.offset(new BigDecimal("1e-32")));
        }
    }

    @Test
    void rounded_whatHasTwoDigitsAlready_stays() {
        assertThat(rounded("0.0008")).isEqualTo("0.0016");
        assertThat(rounded("0.0005")).isEqualTo("0.0010");
        assertThat(rounded("0.00050000001")).isEqualTo("0.0011");
        assertThat(rounded("0.0000499999")).isEqualTo("0.00010");
        assertThat(rounded("600")).isEqualTo("1200");
    }

    @Test
    void rounded_infiniteDegreesAtTwoSigma_isTwiceTheStandardUncertainty() {
        UncertaintyBudget.Result result = new UncertaintyBudget(
                        Unit.MILLIMETRE,
                        List.of(UncertaintySource.standard("u", new BigDecimal("0.0005"))),
                        new Coverage.Probability(new BigDecimal("0.9545")))
                .evaluate();
        assertThat(result.effectiveDegreesOfFreedom()).isEmpty();
        assertThat(result.rounded().toPlainString()).isEqualTo("0.0010");
    }

    @Test
    void badInput_isRefusedInWords() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UncertaintyBudget.of(Unit.MILLIMETRE, List.of()))
                .withMessageContaining("contributes something");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UncertaintySource.rectangular("scale", new BigDecimal("-0.1")))
                .withMessageContaining("scale")
                .withMessageContaining("-0.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> standard("scale", "1", "0.5"))
                .withMessageContaining("0.5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Coverage.Probability(new BigDecimal("0.96")))
                .withMessageContaining("0.95, 0.9545");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Coverage.Factor(BigDecimal.ZERO))
                .withMessageContaining("positive");
    }

    private static String rounded(String standard) {
        return UncertaintyBudget.of(Unit.MILLIMETRE, List.of(UncertaintySource.standard("u", new BigDecimal(standard))))
                .evaluate()
                .rounded()
                .toPlainString();
    }

    private static UncertaintyBudget endGauge(JsonNode in) {
        BigDecimal length = decimal(in, "ls_nm");
        return new UncertaintyBudget(
                Unit.NONE,
                List.of(
                        standard("standard", in, "u_ls_nm", "nu_ls"),
                        standard("repeated observations", in, "u_repeat_nm", "nu_repeat"),
                        standard("comparator, random", in, "u_comparator_random_nm", "nu_comparator_random"),
                        standard(
                                "comparator, systematic", in, "u_comparator_systematic_nm", "nu_comparator_systematic"),
                        UncertaintySource.rectangular(
                                        "difference of expansions", decimal(in, "delta_alpha_rect_half_width"))
                                .times(length.multiply(decimal(in, "theta_mean_k")))
                                .withDegreesOfFreedom(decimal(in, "nu_delta_alpha")),
                        UncertaintySource.rectangular(
                                        "difference of temperatures", decimal(in, "delta_theta_rect_half_width_k"))
                                .times(length.multiply(decimal(in, "alpha_s_per_k")))
                                .withDegreesOfFreedom(decimal(in, "nu_delta_theta"))),
                new Coverage.Probability(new BigDecimal("0.99")));
    }

    private static UncertaintySource standard(String name, JsonNode in, String value, String degrees) {
        return UncertaintySource.standard(name, decimal(in, value)).withDegreesOfFreedom(decimal(in, degrees));
    }

    private static UncertaintySource standard(String name, String value, String degrees) {
        return UncertaintySource.standard(name, new BigDecimal(value)).withDegreesOfFreedom(new BigDecimal(degrees));
    }

    private static void close(UncertaintySource source, String id) {
        close(source.standardUncertainty(), reference(id).path("expected"), "standard_uncertainty");
    }

    private static void close(BigDecimal ours, JsonNode expected, String name) {
        BigDecimal wanted = decimal(expected, name);
        assertThat(ours.divide(wanted, MathContext.DECIMAL128))
                .as("%s: %s, expected %s", name, ours, wanted)
                .isCloseTo(BigDecimal.ONE, Offset.offset(AS_COMPUTED));
    }

    private static JsonNode reference(String id) {
        return io.github.firstoff.reference.ReferenceFile.reference(FILE, id);
    }

    private static BigDecimal decimal(JsonNode node, String name) {
        return decimal(node.path(name));
    }

    private static BigDecimal decimal(JsonNode node) {
        return new BigDecimal(node.asText());
    }
}
