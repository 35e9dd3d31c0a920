package io.github.firstoff.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.ReferenceFile;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DecisionRuleTest {
    private static final Unit MM = Unit.MILLIMETRE;

    static List<Map<String, String>> zones() {
        return ReferenceFile.rows("conformity/iso-14253-1-zones.csv");
    }

    @ParameterizedTest
    @MethodSource("zones")
    void guarded_publishedZones(Map<String, String> row) {
        Limits limits = new Limits(decimal(row.get("lower")), decimal(row.get("upper")), false, MM);
        Verdict verdict = DecisionRule.guarded()
                .decide(limits, Found.of(new BigDecimal(row.get("value")), MM), decimal(row.get("U")));
        assertThat(verdict).isEqualTo(Verdict.valueOf(row.get("verdict")));
    }

    @Test
    void guarded_exactlyOnTheOuterEdgeOfTheUncertaintyRange_provesNothing() {
        // JCGM 106:2012, 3.3.9 and 3.3.10 with the nonconformity zone open: only beyond it is nonconformance proven.
        Limits limits = Limits.between(new BigDecimal("9.985"), new BigDecimal("10.015"), MM);
        Optional<BigDecimal> u = Optional.of(new BigDecimal("0.004"));
        assertThat(DecisionRule.guarded().decide(limits, Found.of(new BigDecimal("10.0190"), MM), u))
                .isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(DecisionRule.guarded().decide(limits, Found.of(new BigDecimal("10.01900001"), MM), u))
                .isEqualTo(Verdict.NONCONFORMING);
    }

    @Test
    void guarded_uncertaintyWiderThanHalfTheTolerance_canNeverAccept() {
        Limits limits = Limits.between(new BigDecimal("9.99"), new BigDecimal("10.01"), MM);
        assertThat(DecisionRule.guarded()
                        .decide(limits, Found.of(BigDecimal.TEN, MM), Optional.of(new BigDecimal("0.011"))))
                .isEqualTo(Verdict.INCONCLUSIVE);
    }

    @Test
    void guarded_withoutUncertainty_provesNothing() {
        Limits limits = Limits.between(BigDecimal.ZERO, BigDecimal.TEN, MM);
        assertThat(DecisionRule.guarded().decide(limits, Found.of(BigDecimal.ONE, MM), Optional.empty()))
                .isEqualTo(Verdict.INCONCLUSIVE);
    }

    @Test
    void guarded_naturalBound_isNotNarrowed() {
        Limits flatness = Limits.fromZeroTo(new BigDecimal("0.02"), MM);
        Optional<BigDecimal> u = Optional.of(new BigDecimal("0.003"));
        assertThat(DecisionRule.guarded().decide(flatness, Found.of(new BigDecimal("0.001"), MM), u))
                .isEqualTo(Verdict.CONFORMING);
        assertThat(DecisionRule.guarded().decide(flatness, Found.of(new BigDecimal("0.0171"), MM), u))
                .isEqualTo(Verdict.INCONCLUSIVE);
    }

    @Test
    void simple_readingOnALimit_conformsWhateverItsTrailingZeros() {
        SplittableRandom random = new SplittableRandom(51979);
        for (int i = 0; i < 5_000; i++) {
            BigDecimal nominal = BigDecimal.valueOf(random.nextLong(1, 3_000_000), 3);
            BigDecimal tolerance = BigDecimal.valueOf(random.nextLong(1, 500), 3);
            Limits limits = Limits.between(nominal.subtract(tolerance), nominal.add(tolerance), MM);
            int zeros = random.nextInt(0, 6);
            for (BigDecimal limit :
                    List.of(limits.lower().orElseThrow(), limits.upper().orElseThrow())) {
                BigDecimal reading = limit.setScale(limit.scale() + zeros);
                assertThat(DecisionRule.simple().decide(limits, Found.of(reading, MM), Optional.empty()))
                        .as("%s against %s", reading, limits)
                        .isEqualTo(Verdict.CONFORMING);
                BigDecimal hair = new BigDecimal("1e-12");
                BigDecimal outside =
                        limit.compareTo(limits.lower().orElseThrow()) == 0 ? reading.subtract(hair) : reading.add(hair);
                assertThat(DecisionRule.simple().decide(limits, Found.of(outside, MM), Optional.empty()))
                        .isEqualTo(Verdict.NONCONFORMING);
            }
        }
    }

    @Test
    void simple_valuesThatBinaryFloatingPointGetsWrong_areRight() {
        // 3.175 + 0.005 and 1.15 + 0.003 are not representable in binary; a double comparison rejects both readings.
        assertThat(judge("3.175", "0.005", "3.180")).isEqualTo(Verdict.CONFORMING);
        assertThat(judge("1.15", "0.003", "1.153")).isEqualTo(Verdict.CONFORMING);
        assertThat(judge("51.964", "0.015", "51.9790")).isEqualTo(Verdict.CONFORMING);
    }

    @Test
    void simple_inchReadingAgainstMillimetreLimits_comparesExactly() {
        Limits limits = Limits.between(new BigDecimal("25.4"), new BigDecimal("25.4127"), MM);
        assertThat(DecisionRule.simple()
                        .decide(limits, Found.of(new BigDecimal("1.0005"), Unit.INCH), Optional.empty()))
                .isEqualTo(Verdict.CONFORMING);
        assertThat(DecisionRule.simple()
                        .decide(limits, Found.of(new BigDecimal("1.00050001"), Unit.INCH), Optional.empty()))
                .isEqualTo(Verdict.NONCONFORMING);
    }

    private static Verdict judge(String nominal, String tolerance, String reading) {
        BigDecimal middle = new BigDecimal(nominal);
        BigDecimal half = new BigDecimal(tolerance);
        return DecisionRule.simple()
                .decide(
                        Limits.between(middle.subtract(half), middle.add(half), MM),
                        Found.of(new BigDecimal(reading), MM),
                        Optional.empty());
    }

    private static Optional<BigDecimal> decimal(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(text));
    }
}
