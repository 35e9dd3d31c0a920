package io.github.firstoff.conformance;

import static io.github.firstoff.Shop.mm;
import static io.github.firstoff.Shop.observed;
import static io.github.firstoff.Shop.offsets;
import static io.github.firstoff.Shop.piece;
import static io.github.firstoff.Shop.warm;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.Shop;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.DecisionChoice.Comparison;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.tolerance.ToleranceZone.Bonus;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JudgeTest {
    private static final BigDecimal TWO = new BigDecimal("2");
    private static final DecisionChoice OF_2017 =
            new DecisionChoice(RuleChoice.GUARDED, new BigDecimal("0.825"), Comparison.ABSOLUTE);

    /** 20 millionths per kelvin exactly, read against something kept at 20 °C. */
    private static final Thermal TWENTY_MILLIONTHS =
            new Thermal(new BigDecimal("0.00002"), BigDecimal.ZERO, BigDecimal.ZERO, BigDecimal.ZERO, "stated");

    @ParameterizedTest
    @ValueSource(strings = {"DR17-1", "DR17-2", "DR17-4"})
    void judge_guardBandOf2017_publishedForm(String id) {
        JsonNode in =
                ReferenceFile.reference("conformity/probabilities.json", id).path("input");
        BigDecimal lower = decimal(in, "lower");
        BigDecimal half = decimal(in, "upper").subtract(lower).divide(TWO);
        BigDecimal expanded = decimal(in, "u").multiply(TWO);
        ResolvedPlan plan = Shop.plan()
                .deciding(OF_2017)
                .gauge("MIC-1", "0.0001", expanded.toPlainString())
                .with("1", lower.add(half).toPlainString() + " ±" + half.toPlainString(), "MIC-1")
                .resolved();
        Judgement found = judged(plan, mm("1", in.path("y").asText()));
        boolean proven = ReferenceFile.reference("conformity/probabilities.json", id)
                .path("expected")
                .path("conformity_proven")
                .asBoolean();
        assertThat(found.verdict()).isEqualTo(proven ? Verdict.CONFORMING : Verdict.INCONCLUSIVE);
        // ISO 14253-1:2017 prints the factor 1.65 for 1.6448…
        assertThat(Judge.ruleOf(OF_2017).guardBand(Optional.of(expanded)))
                .isEqualByComparingTo(decimal(in, "u").multiply(new BigDecimal("1.65")));
    }

    @ParameterizedTest
    @CsvSource({
        // 10 ±0.015 with U = 0.004: 0.825·U = 0.0033; both edges of both guard bands by hand
        "10.0117, CONFORMING",
        "10.01170001, INCONCLUSIVE",
        "10.0183, INCONCLUSIVE",
        "10.01830001, NONCONFORMING",
        "9.9883, CONFORMING",
        "9.98829999, INCONCLUSIVE",
        "9.9817, INCONCLUSIVE",
        "9.98169999, NONCONFORMING"
    })
    void judge_fractionOfU_edges(String value, Verdict verdict) {
        ResolvedPlan plan = Shop.plan()
                .deciding(OF_2017)
                .gauge("MIC-1", "0.001", "0.004")
                .with("1", "10 ±0.015", "MIC-1")
                .resolved();
        assertThat(judged(plan, mm("1", value)).verdict()).isEqualTo(verdict);
    }

    @Test
    void judge_lengthDependentUncertainty_isTakenAtTheReading() {
        Uncertainty stated = new Uncertainty(new BigDecimal("0.002"), new BigDecimal("0.00001"), TWO, Unit.MILLIMETRE);
        ResolvedPlan plan = Shop.plan()
                .deciding(new DecisionChoice(RuleChoice.GUARDED, BigDecimal.ONE, Comparison.ABSOLUTE))
                .gauge("CMM", "0.0001", stated)
                .with("1", "200 ±0.01", "CMM")
                .resolved();
        Judgement found = judged(plan, mm("1", "200.006"));
        assertThat(found.uncertainty().orElseThrow()).isEqualByComparingTo("0.00400006");
        // 200.006 + 0.00400006 passes 200.010 by 0.06 nm
        assertThat(found.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(judged(plan, mm("1", "200.0059")).verdict()).isEqualTo(Verdict.CONFORMING);
    }

    @ParameterizedTest
    @CsvSource({
        // ASTM E29: rounded to the last place of the limit, halves to even
        "10.0154, CONFORMING, NONCONFORMING",
        "10.0155, NONCONFORMING, NONCONFORMING",
        "10.0145, CONFORMING, CONFORMING",
        "9.9845, NONCONFORMING, NONCONFORMING",
        "9.98451, CONFORMING, NONCONFORMING",
        "9.985, CONFORMING, CONFORMING"
    })
    void judge_roundingMethodOfThePlan(String value, Verdict rounded, Verdict absolute) {
        DecisionChoice rounding = new DecisionChoice(RuleChoice.SIMPLE, BigDecimal.ONE, Comparison.ROUNDING);
        Shop shop = Shop.plan().with("1", "9.985..10.015");
        assertThat(judged(shop.deciding(rounding).resolved(), mm("1", value)).verdict())
                .isEqualTo(rounded);
        assertThat(judged(shop.deciding(DecisionChoice.SIMPLE).resolved(), mm("1", value))
                        .verdict())
                .isEqualTo(absolute);
    }

    @Test
    void judge_warmReading_isDecidedAtTwentyDegreesExactly() {
        ResolvedPlan plan =
                Shop.plan().at20(TWENTY_MILLIONTHS).with("1", "100 ±0.01").resolved();
        // 100·(1 − 0.00002·5) = 99.99, exactly on the lower limit; a ten-thousandth of a kelvin more and it lies
        // outside.
        Judgement onLimit = judged(plan, warm("1", "100.000", "25"));
        assertThat(onLimit.verdict()).isEqualTo(Verdict.CONFORMING);
        assertThat(onLimit.correction().orElseThrow().corrected()).isEqualByComparingTo("99.99");
        assertThat(onLimit.inside().orElseThrow()).isEqualByComparingTo("0");
        Judgement beyond = judged(plan, warm("1", "100.000", "25.0001"));
        assertThat(beyond.verdict()).isEqualTo(Verdict.NONCONFORMING);
        assertThat(beyond.departure().orElseThrow()).isEqualByComparingTo("-0.0000002");
        // without a temperature nothing is corrected
        Judgement asRead = judged(plan, mm("1", "100.000"));
        assertThat(asRead.correction()).isEmpty();
        assertThat(asRead.inside().orElseThrow()).isEqualByComparingTo("0.01");
    }

    @Test
    void judge_coldReading_growsToTwentyDegrees() {
        ResolvedPlan plan =
                Shop.plan().at20(TWENTY_MILLIONTHS).with("1", "100 ±0.01").resolved();
        assertThat(judged(plan, warm("1", "100.000", "15")).verdict()).isEqualTo(Verdict.CONFORMING);
        assertThat(judged(plan, warm("1", "100.000", "14.9999")).verdict()).isEqualTo(Verdict.NONCONFORMING);
    }

    @Test
    void judge_warmReading_addsTheUncertaintyOfTheCorrection() {
        Thermal thermal = new Thermal(
                new BigDecimal("0.00002"), new BigDecimal("0.000001"), BigDecimal.ZERO, new BigDecimal("1"), "stated");
        ResolvedPlan plan = Shop.plan()
                .deciding(new DecisionChoice(RuleChoice.GUARDED, BigDecimal.ONE, Comparison.ABSOLUTE))
                .at20(thermal)
                .gauge("MIC-1", "0.001", "0.003")
                .with("1", "100 ±0.01", "MIC-1")
                .resolved();
        // u = 100.016·√((5·1e-6)² + (2e-5·1)²)/√3; U = 2√(0.0015² + u²) = 0.0038… (JCGM 100:2008, 4.3.7 and 5.1.2)
        BigDecimal ofCorrection = new BigDecimal("0.000005")
                .pow(2)
                .add(new BigDecimal("0.00002").pow(2))
                .multiply(new BigDecimal("100.016").pow(2));
        BigDecimal expected = ofCorrection
                .divide(new BigDecimal("3"), MathContext.DECIMAL128)
                .add(new BigDecimal("0.0015").pow(2))
                .sqrt(MathContext.DECIMAL128)
                .multiply(TWO);
        Judgement found = judged(plan, warm("1", "100.016", "25"));
        assertThat(found.uncertainty().orElseThrow()).isCloseTo(expected, Offset.offset(new BigDecimal("1e-14")));
        // 100.016·0.9999 = 100.0059984, and with 0.0038 it passes 100.010 by little: not the 0.003 that the gauge alone
        // has
        assertThat(found.verdict()).isEqualTo(Verdict.CONFORMING);
        Judgement further = judged(plan, warm("1", "100.0165", "25"));
        assertThat(further.correction().orElseThrow().corrected()).isEqualByComparingTo("100.00649835");
        assertThat(further.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
    }

    @ParameterizedTest
    @CsvSource({
        // 2√(x² + y²) against Ø0.1 (ASME Y14.5; 3-4-5 triangle), decided by squares
        "0.03, 0.04, CONFORMING",
        "-0.03, 0.040, CONFORMING",
        "0.05, 0, CONFORMING",
        "0.03, 0.0400000000001, NONCONFORMING",
        "0.0300000000001, -0.04, NONCONFORMING",
        // 2·0.035355339² = 0.0025 less 1e-12; one more in the last digit passes it
        "0.035355339, 0.035355339, CONFORMING",
        "0.035355340, 0.035355339, NONCONFORMING"
    })
    void judge_positionFromOffsets(String x, String y, Verdict verdict) {
        ResolvedPlan plan = Shop.plan().with("1", "position Ø0.1 A B").resolved();
        assertThat(judged(plan, offsets("1", x, y)).verdict()).isEqualTo(verdict);
    }

    @Test
    void judge_bonus_comesFromTheSizeAtTwentyDegrees() {
        ResolvedPlan plan = Shop.plan()
                .at20(TWENTY_MILLIONTHS)
                .with("1", "10 H7")
                .with("2", "position Ø0.1 (M) A B", Optional.empty(), Shop.sizeFrom("1"))
                .resolved();
        // ISO 2692: 10 H7 is 10.000 to 10.015; 10.010 earns 0.010. Read at 30 °C it is 10.010·0.9998 = 10.007998.
        assertThat(bonus(plan, mm("1", "10.010"))).isEqualByComparingTo("0.010");
        assertThat(bonus(plan, warm("1", "10.010", "30"))).isEqualByComparingTo("0.007998");
        assertThat(judged(plan, piece("1", mm("1", "10.010"), mm("2", "0.108")), "2")
                        .verdict())
                .isEqualTo(Verdict.CONFORMING);
        assertThat(judged(plan, piece("1", warm("1", "10.010", "30"), mm("2", "0.108")), "2")
                        .verdict())
                .isEqualTo(Verdict.NONCONFORMING);
        assertThat(judged(plan, piece("1", warm("1", "10.010", "30"), mm("2", "0.107998")), "2")
                        .verdict())
                .isEqualTo(Verdict.CONFORMING);
        // a hole that reads inside its limits warm and lies below them at 20 °C earns nothing
        assertThat(bonus(plan, warm("1", "10.001", "30"))).isEqualByComparingTo("0");
    }

    @Test
    void assess_settingMissingOnOnePiece_isNamedWithThePiece() {
        ResolvedPlan plan = Shop.plan()
                .with("1", "functional: pawl holds", Optional.empty(), Shop.at("slow", "middle", "fast"))
                .resolved();
        PartRecord whole =
                piece("1", observed("1", true, "slow"), observed("1", true, "middle"), observed("1", true, "fast"));
        PartRecord partly = piece("2", observed("1", true, "slow"), observed("1", true, "fast"));
        CharacteristicResult found = assessed(plan, whole, partly);
        assertThat(found.verdict()).isEqualTo(Verdict.NOT_MEASURED);
        assertThat(found.missing()).containsExactly("2 at middle");
        assertThat(assessed(plan, whole).verdict()).isEqualTo(Verdict.CONFORMING);
        PartRecord failed =
                piece("3", observed("1", true, "slow"), observed("1", false, "middle"), observed("1", true, "fast"));
        assertThat(assessed(plan, whole, failed).verdict()).isEqualTo(Verdict.NONCONFORMING);
    }

    @Test
    void assess_sampledWithSettings_pieceLeftOutLacksNothing() {
        ResolvedPlan plan = Shop.plan()
                .with("1", "functional: pawl holds", Optional.empty(), Shop.sampled("slow", "fast"))
                .resolved();
        PartRecord whole = piece("1", observed("1", true, "slow"), observed("1", true, "fast"));
        assertThat(assessed(plan, whole, piece("2")).verdict()).isEqualTo(Verdict.CONFORMING);
        assertThat(assessed(plan, whole, piece("2", observed("1", true, "slow")))
                        .missing())
                .containsExactly("2 at fast");
    }

    @Test
    void assess_classThatDemandsEveryPiece_overridesASample() {
        Shop shop = Shop.plan().with("1", "10 ±0.1", Optional.empty(), Shop.sampled());
        PartRecord read = piece("1", mm("1", "10.02"));
        PartRecord unread = piece("2");
        assertThat(assessed(shop.resolved(), read, unread).verdict()).isEqualTo(Verdict.CONFORMING);
        ResolvedPlan demanding = shop.demanding(Importance.MAJOR, new Demand(true, false, Map.of()))
                .resolved();
        CharacteristicResult found = assessed(demanding, read, unread);
        assertThat(found.verdict()).isEqualTo(Verdict.NOT_MEASURED);
        assertThat(found.missing()).containsExactly("2");
        assertThat(Judge.of(demanding)
                        .assess(new InspectionRecord(demanding, List.of(read, unread)))
                        .verdict())
                .isEqualTo(SheetVerdict.INCOMPLETE);
        // the demand of another class changes nothing
        ResolvedPlan other = Shop.plan()
                .with("1", "10 ±0.1", Optional.empty(), Shop.sampled())
                .demanding(Importance.CRITICAL, new Demand(true, false, Map.of()))
                .resolved();
        assertThat(assessed(other, read, unread).verdict()).isEqualTo(Verdict.CONFORMING);
    }

    private static BigDecimal bonus(ResolvedPlan plan, Reading size) {
        return judged(plan, piece("1", size, mm("2", "0.05")), "2")
                .allowed()
                .bonus()
                .map(Bonus::amount)
                .orElseThrow();
    }

    private static CharacteristicResult assessed(ResolvedPlan plan, PartRecord... parts) {
        return Judge.of(plan)
                .assess(new InspectionRecord(plan, List.of(parts)))
                .characteristics()
                .get(0);
    }

    private static Judgement judged(ResolvedPlan plan, Reading reading) {
        return judged(plan, piece("1", reading), reading.characteristic());
    }

    private static Judgement judged(ResolvedPlan plan, PartRecord part, String number) {
        return Judge.of(plan)
                .judge(plan.find(number).orElseThrow(), part, part.of(number).get(0));
    }

    private static BigDecimal decimal(JsonNode node, String name) {
        return new BigDecimal(node.path(name).asText());
    }
}
