package io.github.firstoff.conformance;

import static io.github.firstoff.Shop.measured;
import static io.github.firstoff.Shop.mm;
import static io.github.firstoff.Shop.offsets;
import static io.github.firstoff.Shop.piece;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.Shop;
import io.github.firstoff.conformance.Doubt.Kind;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bounds are common practice; the values are slips made up for the drum carrier: 52 P7 is 51.949 to 51.979. */
class PlausibilityTest {
    private static final ResolvedPlan CARRIER = Shop.plan()
            .with("1", "52 P7")
            .with("2", "47 H7")
            .with("3", "flatness 0.02")
            .with("4", "12 max")
            .with("5", "5 min")
            .with("6", "1 ±0.2")
            .with("7", "Ra 1.6")
            .with("8", "0 ±0.1")
            .with("9", "-25 ±0.05")
            .with("10", "45° ±20'")
            .with("11", "position Ø0.1 A B")
            .resolved();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | 5.1953   | DECIMAL_POINT  | 5.1953 mm is far outside its limits; it looks like 51.953 instead of 5.1953",
                "1 | 519.53   | DECIMAL_POINT  | 519.53 mm is far outside its limits; it looks like 51.953 instead of 519.53",
                "1 | 51953    | DECIMAL_POINT  | 51953 mm is far outside its limits; it looks like 51.953 instead of 51953",
                // a nonconforming part mis-keyed
                "1 | 5.1990   | DECIMAL_POINT  | 5.1990 mm is far outside its limits; it looks like 51.990 instead of 5.1990",
                "1 | 2.0454   | UNIT           | 2.0454 mm is far outside its limits; it looks like 2.0454 in, which is 51.95316 mm",
                "1 | -51.953  | SIGN           | -51.953 mm is far outside its limits; it looks like 51.953 instead of -51.953",
                "9 | 25.01    | SIGN           | 25.01 mm is far outside its limits; it looks like -25.01 instead of 25.01",
                "1 | 51.593   | DIGITS         | 51.593 mm is far outside its limits; it looks like 51.953 instead of 51.593 (two digits exchanged)",
                "1 | 15.953   | DIGITS         | 15.953 mm is far outside its limits; it looks like 51.953 instead of 15.953 (two digits exchanged)",
                "1 | 47.012   | CHARACTERISTIC | 47.012 mm is far outside its limits; it fits characteristic 2 (47 H7)",
                "3 | 47.012   | CHARACTERISTIC | 47.012 mm is far outside its limits; it fits characteristic 2 (47 H7)",
                "3 | 12       | UNIT           | 12 mm is far outside its limits; it looks like 12 µm, which is 0.012 mm",
                "4 | 120      | DECIMAL_POINT  | 120 mm is far outside its limits; it looks like 12.0 instead of 120",
                "5 | 0.52     | DECIMAL_POINT  | 0.52 mm is far outside its limits; it looks like 5.2 instead of 0.52",
                "5 | 0.2      | UNIT           | 0.2 mm is far outside its limits; it looks like 0.2 in, which is 5.08 mm",
                "6 | 10.1     | DECIMAL_POINT  | 10.1 mm is far outside its limits; it looks like 1.01 instead of 10.1",
                "6 | -1.1     | SIGN           | -1.1 mm is far outside its limits; it looks like 1.1 instead of -1.1"
            })
    void doubt_slips_areNamed(String number, String value, Kind kind, String sentence) {
        Doubt doubt = doubt(CARRIER, mm(number, value)).orElseThrow();
        assertThat(doubt.sentence()).isEqualTo(sentence);
        assertThat(doubt.explanations().get(0).kind()).isEqualTo(kind);
    }

    @ParameterizedTest
    @CsvSource({
        // conforming, on the limit, a little outside, and as bad as a part gets: beyond a limit by 5 T = 0.150
        "1, 51.960",
        "1, 51.9790",
        "1, 51.985",
        "1, 52.129",
        "1, 51.799",
        // a flatness twenty times too great is a bad part, and so is a position
        "3, 0.05",
        "3, 0.42",
        "11, 1.8",
        "8, 4.1",
        // single and wide limits: up to five times
        "4, 14",
        "4, 60",
        "5, 4",
        "5, 1",
        "6, 0.25",
        "6, 6",
        // a bore made to the wrong size of drill, with nothing that would explain a slip: 0.8 mm
        "1, 51.2"
    })
    void doubt_badParts_areNotDoubted(String number, String value) {
        assertThat(doubt(CARRIER, mm(number, value))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1, 40.0", "1, 60.01", "1, 0", "5, 0", "3, 900"})
    void doubt_farBeyondAnyExplanation_asksForACheck(String number, String value) {
        Doubt doubt = doubt(CARRIER, mm(number, value)).orElseThrow();
        assertThat(doubt.explanations()).isEmpty();
        assertThat(doubt.sentence()).isEqualTo(value + " mm is very far outside its limits; check the reading");
    }

    @Test
    void doubt_swappedPair_isSeenFromBothSides() {
        Reading first = mm("1", "47.012");
        Reading second = mm("2", "51.953");
        PartRecord part = piece("3", first, second);
        assertThat(doubt(CARRIER, part, first).orElseThrow().sentence())
                .isEqualTo("47.012 mm and the 51.953 mm of characteristic 2 on the same piece look swapped:"
                        + " each fits the limits of the other");
        assertThat(doubt(CARRIER, part, second)
                        .orElseThrow()
                        .explanations()
                        .get(0)
                        .characteristic())
                .contains("1");
    }

    @Test
    void doubt_swappedNeighbours_areSeenFromOneWidthOn() {
        // 10 ±0.05 and 10.2 ±0.05 swapped lie 0.15 = 1.5 T out; 12 ±0.02 and 12.05 ±0.02 only 0.25 T, which parts do by
        // themselves.
        ResolvedPlan plan = Shop.plan()
                .with("1", "10 ±0.05")
                .with("2", "10.2 ±0.05")
                .with("3", "12 ±0.02")
                .with("4", "12.05 ±0.02")
                .resolved();
        Reading near = mm("1", "10.2");
        assertThat(doubt(plan, piece("1", near, mm("2", "10.0")), near)).isPresent();
        assertThat(doubt(plan, piece("1", near, mm("2", "10.2")), near)).isEmpty();
        Reading natural = mm("3", "12.04");
        assertThat(doubt(plan, piece("1", natural, mm("4", "12.01")), natural)).isEmpty();
    }

    @Test
    void doubt_inchPlan_seesMillimetres() {
        ResolvedPlan plan = Shop.plan().in(Unit.INCH).with("1", "0.500 ±0.001").resolved();
        assertThat(doubt(plan, measured("1", "12.69", Unit.INCH)).orElseThrow().sentence())
                .isEqualTo("12.69 in is far outside its limits; it looks like 12.69 mm, which is 0.499606 in");
        assertThat(doubt(plan, measured("1", "0.515", Unit.INCH))).isEmpty();
    }

    @Test
    void doubt_roughness_seesMicroinches() {
        assertThat(doubt(CARRIER, measured("7", "60", Unit.MICROMETRE))
                        .orElseThrow()
                        .sentence())
                .isEqualTo("60 µm is far outside its limits; it looks like 60 µin, which is 1.524 µm");
        assertThat(doubt(CARRIER, measured("7", "12.5", Unit.MICROMETRE))).isEmpty();
    }

    @Test
    void doubt_angle_seesTheDecimalPoint() {
        assertThat(doubt(CARRIER, measured("10", "4.51", Unit.DEGREE))
                        .orElseThrow()
                        .sentence())
                .isEqualTo("4.51° is far outside its limits; it looks like 45.1 instead of 4.51");
    }

    @Test
    void doubt_positionFromOffsets_isNotTakenForAShiftedPoint() {
        assertThat(doubt(CARRIER, offsets("11", "12", "5")).orElseThrow().explanations())
                .isEmpty();
    }

    @Test
    void doubt_twoExplanations_areBothGiven() {
        ResolvedPlan plan =
                Shop.plan().with("1", "52 ±0.1").with("2", "5.2 ±0.05").resolved();
        assertThat(doubt(plan, mm("1", "5.21")).orElseThrow().sentence())
                .isEqualTo("5.21 mm is far outside its limits; it looks like 52.1 instead of 5.21,"
                        + " or fits characteristic 2 (5.2 ±0.05)");
    }

    @Test
    void doubt_keepsTheVerdict() {
        Reading reading = mm("1", "5.1953");
        assertThat(judged(CARRIER, piece("1", reading), reading).verdict()).isEqualTo(Verdict.NONCONFORMING);
    }

    @Test
    void doubt_randomBadParts_rarelyFalse() {
        // Bad parts up to 20 T beyond a limit: what is doubted among them is a chance agreement, and must stay rare.
        SplittableRandom random = new SplittableRandom(51953);
        int doubted = 0;
        int parts = 20_000;
        for (int i = 0; i < parts; i++) {
            BigDecimal beyond = BigDecimal.valueOf(random.nextInt(1, 600), 3);
            BigDecimal value = random.nextBoolean()
                    ? new BigDecimal("51.979").add(beyond)
                    : new BigDecimal("51.949").subtract(beyond);
            Optional<Doubt> doubt = doubt(CARRIER, mm("1", value.toPlainString()));
            if (beyond.compareTo(new BigDecimal("0.150")) <= 0) {
                assertThat(doubt).as(value::toPlainString).isEmpty();
            }
            doubted += doubt.isPresent() ? 1 : 0;
        }
        assertThat(doubted).isLessThan(parts / 20);
    }

    private static Optional<Doubt> doubt(ResolvedPlan plan, Reading reading) {
        return doubt(plan, piece("1", reading), reading);
    }

    private static Optional<Doubt> doubt(ResolvedPlan plan, PartRecord part, Reading reading) {
        return Plausibility.of(plan).doubt(part, judged(plan, part, reading));
    }

    private static Judgement judged(ResolvedPlan plan, PartRecord part, Reading reading) {
        return Judge.of(plan).judge(plan.find(reading.characteristic()).orElseThrow(), part, reading);
    }
}
