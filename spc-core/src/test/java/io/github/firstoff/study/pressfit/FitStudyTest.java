package io.github.firstoff.study.pressfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.assembly.Criterion;
import io.github.firstoff.assembly.ElasticMaterial;
import io.github.firstoff.assembly.Joint;
import io.github.firstoff.assembly.Piece;
import io.github.firstoff.assembly.Smoothing;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** The study of a joint: worst cases, distributions, heat, bearings. */
class FitStudyTest {
    private static final Percentage ROUNDING = Percentage.withPercentage(1e-7);

    /** Standard errors that a simulation may be off, over all draws of this test: 4.5 is exceeded once in 150,000. */
    private static final double STANDARD_ERRORS = 4.5;

    private static final ElasticMaterial STEEL = material("steel", "210000", "0.3", "0.000012", "700");
    private static final ElasticMaterial ALUMINIUM = material("aluminium", "70000", "0.33", "0.0000236", "240");

    private static ElasticMaterial material(String name, String young, String nu, String expansion, String yield) {
        return new ElasticMaterial(
                name,
                new BigDecimal(young),
                new BigDecimal(nu),
                new BigDecimal(expansion),
                new BigDecimal(yield),
                "test");
    }

    /** A joint that a test changes where it needs to. */
    private static final class Maker {
        private String nominal = "40";
        private String length = "40";
        private String friction = "0.12";
        private Smoothing smoothing = Smoothing.NONE;
        private String rough = "0";
        private ElasticMaterial hub = STEEL;
        private String outside = "80";
        private String inside = "0";
        private Optional<Limits> bore = Optional.empty();
        private Optional<Limits> shaft = Optional.empty();
        private Optional<Joint.Bearing> bearing = Optional.empty();
        private String cold = "20";
        private String hot = "20";
        private Optional<BigDecimal> force = Optional.empty();
        private Joint.Pairing pairs = Joint.Pairing.NONE;

        Maker bore(String low, String high) {
            bore = Optional.of(Limits.between(new BigDecimal(low), new BigDecimal(high), Unit.MILLIMETRE));
            return this;
        }

        Maker shaft(String low, String high) {
            shaft = Optional.of(Limits.between(new BigDecimal(low), new BigDecimal(high), Unit.MILLIMETRE));
            return this;
        }

        Joint joint() {
            return new Joint(
                    Optional.empty(),
                    Optional.empty(),
                    new BigDecimal(nominal),
                    new BigDecimal(length),
                    new Joint.Friction(new BigDecimal(friction), new BigDecimal(friction)),
                    smoothing,
                    Criterion.VON_MISES,
                    new Joint.Demand(force, Optional.empty(), Optional.empty(), BigDecimal.ZERO, Optional.empty()),
                    member(hub, outside, bore, Optional.empty()),
                    member(STEEL, inside, shaft, bearing),
                    new Joint.Temperatures(new BigDecimal("20"), new BigDecimal(cold), new BigDecimal(hot)),
                    new BigDecimal("0.04"),
                    pairs);
        }

        private Joint.Member member(
                ElasticMaterial material, String far, Optional<Limits> limits, Optional<Joint.Bearing> ofBearing) {
            return new Joint.Member(
                    Optional.empty(),
                    Optional.empty(),
                    material,
                    new BigDecimal(far),
                    limits,
                    Remark.none(),
                    ofBearing,
                    new BigDecimal(rough),
                    Optional.empty());
        }

        FitResult study() {
            return FitStudy.of(joint(), Optional.empty(), Optional.empty());
        }

        FitResult study(List<Piece> bores, List<Piece> rings) {
            return FitStudy.of(joint(), Optional.of(bores), Optional.of(rings));
        }
    }

    /** 40 H7/s6 of the reference collection: exact interferences, pressures and forces. */
    @Test
    void anIsoFit_isCarriedIntoAPressFit() {
        JsonNode out = ReferenceFile.reference("pressfit/press.json", "PRESS-FIT-H7s6-40")
                .path("expected");

        FitResult result =
                new Maker().bore("40", "40.025").shaft("40.043", "40.059").study();

        State state = result.at(State.Moment.ASSEMBLY);
        assertThat(result.least()).isEqualByComparingTo("0.018");
        assertThat(result.greatest()).isEqualByComparingTo("0.059");
        assertThat(state.interference().mean()).isCloseTo(0.0385, ROUNDING);
        assertThat(state.pressure().minimum()).isCloseTo(out.path("p_min_MPa").asDouble(), ROUNDING);
        assertThat(state.pressure().maximum()).isCloseTo(out.path("p_max_MPa").asDouble(), ROUNDING);
        assertThat(state.axial().minimum()).isCloseTo(out.path("force_min_N").asDouble(), ROUNDING);
        assertThat(state.axial().maximum()).isCloseTo(out.path("force_max_N").asDouble(), ROUNDING);
        assertThat(result.verdicts().accepted()).isTrue();
        assertThat(result.chances().reckoned().grip()).isEqualTo(1);
        assertThat(result.chances().reckoned().noOverstress()).isEqualTo(1);
    }

    /** In the style of DIN 7190: Rz 6.3 of both surfaces takes 10.08 µm by the 2001 edition and 5.04 µm by that of 2017. */
    @Test
    void smoothing_takesFromTheInterference() {
        Maker maker = new Maker().bore("40", "40").shaft("40.06", "40.06");
        maker.rough = "6.3";
        maker.smoothing = Smoothing.DIN_7190_2001;
        State before = maker.study().at(State.Moment.ASSEMBLY);
        maker.smoothing = Smoothing.DIN_7190_1_2017;
        State now = maker.study().at(State.Moment.ASSEMBLY);

        assertThat(before.interference().maximum()).isCloseTo(0.04992, ROUNDING);
        assertThat(now.interference().maximum()).isCloseTo(0.05496, ROUNDING);
        assertThat(now.pressure().mean() / before.pressure().mean()).isCloseTo(54.96 / 49.92, ROUNDING);
    }

    /** Aluminium around steel opens when hot: 40·(12 − 23.6)·10⁻⁶·60 K = −27.84 µm, and closes when cold. */
    @Test
    void heat_loosensAluminiumAroundSteel() {
        Maker maker = new Maker().bore("40", "40.010").shaft("40.040", "40.050");
        maker.hub = ALUMINIUM;
        maker.cold = "-10";
        maker.hot = "80";
        FitResult result = maker.study();

        assertThat(result.at(State.Moment.HOTTEST).interference().minimum()).isCloseTo(0.030 - 0.02784, ROUNDING);
        assertThat(result.at(State.Moment.COLDEST).interference().maximum()).isCloseTo(0.050 + 0.01392, ROUNDING);
        assertThat(result.weakest().moment()).isEqualTo(State.Moment.HOTTEST);
        assertThat(result.tightest().moment()).isEqualTo(State.Moment.COLDEST);
        assertThat(result.bounds().grip()).isCloseTo(0.02784, ROUNDING);
        assertThat(result.joining().heating()).isCloseTo(20 + (0.05 + 0.04) / (23.6e-6 * 40), ROUNDING);
        assertThat(result.joining().cooling().orElseThrow()).isCloseTo(20 - (0.05 + 0.04) / (12e-6 * 40), ROUNDING);
    }

    /** Two sizes spread evenly: their difference is trapezoidal; P(loose) is the area of a triangle, here 10²/(2·20·30). */
    @Test
    void looseShareOfLimits_isATriangle() {
        FitResult result =
                new Maker().bore("40", "40.020").shaft("40.010", "40.040").study();

        assertThat(result.chances().reckoned().grip()).isCloseTo(1 - 100.0 / 1200, ROUNDING);
        assertThat(result.verdicts().grip()).isFalse();
        assertThat(result.least()).isEqualByComparingTo("-0.010");
        assertThat(result.at(State.Moment.ASSEMBLY).pressure().minimum()).isZero();
    }

    private static List<Piece> pieces(SplittableRandom random, String name, int count, double mean, double sigma) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            BigDecimal size = BigDecimal.valueOf(Math.round((mean + sigma * random.nextGaussian()) * 10000), 4);
            pieces.add(new Piece(name + i, size));
        }
        return pieces;
    }

    @Test
    void measuredSizes_reckonedAndDrawnAgreeWithinTheirError() {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 6; trial++) {
            Maker maker = new Maker();
            maker.hub = ALUMINIUM;
            maker.outside = "60";
            maker.hot = Integer.toString(40 + 10 * trial);
            maker.cold = "-20";
            maker.inside = "20";
            maker.bearing = Optional.of(new Joint.Bearing(
                    "normal",
                    Optional.of(new BigDecimal("15")),
                    Optional.of("C3"),
                    Optional.of(Limits.between(new BigDecimal("11"), new BigDecimal("25"), Unit.MICROMETRE)),
                    BigDecimal.ZERO,
                    true));
            FitResult result =
                    maker.study(pieces(random, "B", 30, 40.000, 0.004), pieces(random, "R", 40, 40.030, 0.003));

            Chances.Shares reckoned = result.chances().reckoned();
            Chances.Drawn drawn = result.chances().drawn();
            near(drawn.shares().grip(), reckoned.grip(), drawn);
            near(drawn.shares().noOverstress(), reckoned.noOverstress(), drawn);
            near(drawn.shares().clearance().orElseThrow(), reckoned.clearance().orElseThrow(), drawn);
            assertThat(drawn.mean())
                    .isCloseTo(result.mean(), within(STANDARD_ERRORS * result.deviation() / Math.sqrt(drawn.draws())));
            assertThat(drawn.deviation())
                    .isCloseTo(
                            result.deviation(),
                            within(STANDARD_ERRORS * result.deviation() / Math.sqrt(2.0 * drawn.draws())));
            // allowing for few readings moves a share towards a half, never away from it
            assertThat(Math.abs(result.chances().nextPair().orElseThrow().grip() - 0.5))
                    .isLessThanOrEqualTo(Math.abs(reckoned.grip() - 0.5) + 1e-12);
        }
    }

    private static void near(double drawn, double reckoned, Chances.Drawn simulation) {
        assertThat(drawn).isCloseTo(reckoned, within(STANDARD_ERRORS * simulation.standardError(reckoned) + 1e-5));
    }

    @Test
    void measuredAndLimits_reckonedAndDrawnAgree() {
        SplittableRandom random = new SplittableRandom(12);
        Maker maker = new Maker().shaft("40.012", "40.025");
        FitResult result =
                FitStudy.of(maker.joint(), Optional.of(pieces(random, "B", 25, 40.010, 0.004)), Optional.empty());

        assertThat(result.basis()).isEqualTo(Basis.MIXED);
        near(
                result.chances().drawn().shares().grip(),
                result.chances().reckoned().grip(),
                result.chances().drawn());
        assertThat(result.chances().reckoned().grip()).isBetween(0.9, 0.99);
        assertThat(result.chances().nextPair()).isEmpty();
    }

    @Test
    void allPairs_areCountedOneByOne() {
        SplittableRandom random = new SplittableRandom(13);
        List<Piece> bores = pieces(random, "B", 17, 40.000, 0.006);
        List<Piece> rings = pieces(random, "R", 23, 40.012, 0.006);
        Maker maker = new Maker();
        maker.force = Optional.of(new BigDecimal("5000"));
        FitResult result = maker.study(bores, rings);

        ElasticJoint model = result.model();
        long holding = 0;
        for (Piece bore : bores) {
            for (Piece ring : rings) {
                double p = model.pressure(ring.size().subtract(bore.size()).doubleValue());
                holding += model.axialForce(p, 0.12) >= 5000 ? 1 : 0;
            }
        }
        Chances.Counted counted = result.chances().counted().orElseThrow();
        assertThat(counted.pairs()).isEqualTo(17 * 23);
        assertThat(counted.grip()).isEqualTo(holding).isBetween(50L, 350L);
    }

    @Test
    void pairsByName_andListedPairs_areTheSame() {
        List<Piece> bores = List.of(piece("1", "40.000"), piece("2", "40.004"), piece("3", "40.008"));
        List<Piece> rings = List.of(piece("2", "40.030"), piece("3", "40.036"), piece("1", "40.021"));
        Maker maker = new Maker();
        maker.pairs = new Joint.Pairing(true, List.of());
        FitResult byName = maker.study(bores, rings);
        maker.pairs = new Joint.Pairing(
                false, List.of(new Joint.Couple("1", "1"), new Joint.Couple("2", "2"), new Joint.Couple("3", "3")));
        FitResult listed = maker.study(bores, rings);

        assertThat(byName.basis()).isEqualTo(Basis.PAIRED);
        assertThat(byName.least()).isEqualByComparingTo("0.021");
        assertThat(byName.greatest()).isEqualByComparingTo("0.028");
        assertThat(byName.mean()).isCloseTo(0.025, ROUNDING);
        assertThat(byName.matching()).isEmpty();
        assertThat(listed.states()).isEqualTo(byName.states());
        maker.pairs = new Joint.Pairing(false, List.of(new Joint.Couple("1", "9"), new Joint.Couple("2", "2")));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> maker.study(bores, rings))
                .withMessageContaining("9");
    }

    private static Piece piece(String name, String size) {
        return new Piece(name, new BigDecimal(size));
    }

    @Test
    void matching_keepsEveryBoundAndSaysWhyPiecesStay() {
        List<Piece> bores =
                List.of(piece("a", "40.000"), piece("b", "40.006"), piece("c", "40.010"), piece("wide", "40.060"));
        List<Piece> rings =
                List.of(piece("1", "40.036"), piece("2", "40.025"), piece("3", "40.030"), piece("thick", "40.300"));
        Maker maker = new Maker();
        maker.force = Optional.of(new BigDecimal("10000"));
        Matching matching = maker.study(bores, rings).matching().orElseThrow();

        assertThat(matching.pairs())
                .extracting(pair -> pair.outer().name() + pair.inner().name())
                .containsExactly("a2", "b3", "c1");
        assertThat(matching.pairs()).allSatisfy(pair -> {
            assertThat(pair.interference().doubleValue()).isBetween(matching.least(), matching.greatest());
            assertThat(pair.holding()).isGreaterThanOrEqualTo(10000);
        });
        assertThat(matching.left())
                .extracting(left -> left.piece().name() + ": " + left.why())
                .containsExactly("wide: BETWEEN", "thick: TOO_TIGHT");
    }

    @Test
    void aBearing_losesWhatItsRacewayShrinksBy() {
        Maker maker = new Maker().bore("40", "40").shaft("40.02", "40.02");
        maker.inside = "34";
        maker.bearing = Optional.of(new Joint.Bearing(
                "normal",
                Optional.of(new BigDecimal("17")),
                Optional.of("CN"),
                Optional.of(Limits.between(new BigDecimal("3"), new BigDecimal("18"), Unit.MICROMETRE)),
                new BigDecimal("5"),
                true));
        FitResult result = maker.study();
        State pressed = result.at(State.Moment.ASSEMBLY);
        State running = result.at(State.Moment.HOTTEST);
        double loss = 1000 * result.model().insideShrinkage(pressed.pressure().mean());

        assertThat(pressed.clearanceLoss().mean()).isCloseTo(loss, ROUNDING);
        assertThat(pressed.clearanceLeft().orElseThrow().minimum()).isCloseTo(3 - loss, ROUNDING);
        // the inner ring 5 K warmer: 12·10⁻⁶·34 mm·5 K = 2.04 µm more
        assertThat(running.clearanceLoss().mean()).isCloseTo(loss + 2.04, ROUNDING);
        assertThat(running.clearanceLeft().orElseThrow().maximum()).isCloseTo(18 - loss - 2.04, ROUNDING);
        // clearance is even over the group, and one interference only: a share by proportion
        assertThat(result.chances().reckoned().clearance().orElseThrow())
                .isCloseTo((18 - loss - 2.04) / 15, within(1 / 400.0));
    }

    /** A taller interference never makes any of these smaller: what lets minimum and maximum be those of the interference. */
    @Test
    void everythingRisesWithTheInterference() {
        FitResult result =
                new Maker().bore("40", "40.025").shaft("40.043", "40.059").study();
        State state = result.at(State.Moment.ASSEMBLY);
        for (Range range : List.of(
                state.pressure(),
                state.outerStress(),
                state.innerStress(),
                state.axial(),
                state.torque(),
                state.boreGrowth(),
                state.seatShrinkage(),
                state.outsideGrowth())) {
            assertThat(range.minimum()).isLessThan(range.mean());
            assertThat(range.mean()).isLessThan(range.maximum());
        }
    }

    @Test
    void oneReading_isNoSample() {
        Maker maker = new Maker().shaft("40.043", "40.059");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> FitStudy.of(maker.joint(), Optional.of(List.of(piece("1", "40.01"))), Optional.empty()))
                .withMessageContaining("at least two");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FitStudy.of(maker.joint(), Optional.empty(), Optional.empty()))
                .withMessageContaining("bore");
    }

    @Test
    void anotherRun_isTheSameToTheLastBit() {
        SplittableRandom random = new SplittableRandom(14);
        List<Piece> bores = pieces(random, "B", 30, 40.000, 0.004);
        List<Piece> rings = pieces(random, "R", 30, 40.020, 0.004);

        assertThat(new Maker().study(bores, rings).chances())
                .isEqualTo(new Maker().study(bores, rings).chances());
    }
}
