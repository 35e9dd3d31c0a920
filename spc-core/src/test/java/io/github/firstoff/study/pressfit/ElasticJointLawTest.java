package io.github.firstoff.study.pressfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.assembly.Criterion;
import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Laws of the mechanics on joints drawn at random with a fixed seed, and the equation of equilibrium solved by finite differences. */
class ElasticJointLawTest {
    private static final long SEED = 71;
    private static final int JOINTS = 300;
    private static final Percentage ROUNDING = Percentage.withPercentage(1e-9);

    private static ElasticJoint random(SplittableRandom random, double scale, Criterion criterion) {
        double d = 5 + 200 * random.nextDouble();
        ElasticJoint.Body outer = new ElasticJoint.Body(
                scale * d * (1.05 + 2 * random.nextDouble()),
                50000 + 160000 * random.nextDouble(),
                0.2 + 0.15 * random.nextDouble(),
                (8 + 16 * random.nextDouble()) * 1e-6,
                100 + 900 * random.nextDouble());
        boolean solid = random.nextInt(4) == 0;
        double inside = d * 0.95 * random.nextDouble();
        ElasticJoint.Body inner = new ElasticJoint.Body(
                solid ? 0 : scale * inside,
                50000 + 160000 * random.nextDouble(),
                0.2 + 0.15 * random.nextDouble(),
                (8 + 16 * random.nextDouble()) * 1e-6,
                100 + 900 * random.nextDouble());
        return new ElasticJoint(scale * d, scale * (3 + 50 * random.nextDouble()), outer, inner, criterion);
    }

    /** What the bore opens and the shaft closes by is the interference; pressures add up; stresses scale. */
    @Test
    void interferenceIsSharedByBothParts_andEffectsAddUp() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < JOINTS; i++) {
            ElasticJoint joint = random(random, 1, Criterion.VON_MISES);
            double one = 0.1 * random.nextDouble();
            double two = 0.1 * random.nextDouble();
            double p = joint.pressure(one);
            assertThat(joint.boreGrowth(p) + joint.seatShrinkage(p)).isCloseTo(one, ROUNDING);
            assertThat(joint.pressure(one) + joint.pressure(two)).isCloseTo(joint.pressure(one + two), ROUNDING);
            assertThat(joint.interferenceFor(p)).isCloseTo(one, ROUNDING);
            assertThat(joint.outerEquivalent(2 * p)).isCloseTo(2 * joint.outerEquivalent(p), ROUNDING);
            assertThat(joint.innerHoop(joint.diameter() / 2, p) + joint.innerHoop(joint.diameter() / 2, 3 * p))
                    .isCloseTo(joint.innerHoop(joint.diameter() / 2, 4 * p), ROUNDING);
            assertThat(joint.pressure(-one)).isZero();
            assertThat(joint.pressureToHold(joint.axialForce(p, 0.1), 0, 0.1)).isCloseTo(p, ROUNDING);
            assertThat(joint.pressureToHold(0, joint.torque(p, 0.1), 0.1)).isCloseTo(p, ROUNDING);
        }
    }

    /** A joint in inches (or drawn ten times as large) has the same stresses, and forces as the square of the scale. */
    @Test
    void unitsOfLengthDoNotMatter() {
        for (double scale : new double[] {10, 1 / 25.4}) {
            SplittableRandom first = new SplittableRandom(SEED);
            SplittableRandom second = new SplittableRandom(SEED);
            for (int i = 0; i < JOINTS; i++) {
                ElasticJoint joint = random(first, 1, Criterion.TRESCA);
                ElasticJoint scaled = random(second, scale, Criterion.TRESCA);
                double p = joint.pressure(0.03);
                double q = scaled.pressure(0.03 * scale);
                assertThat(q).isCloseTo(p, ROUNDING);
                assertThat(scaled.innerEquivalent(q)).isCloseTo(joint.innerEquivalent(p), ROUNDING);
                assertThat(scaled.axialForce(q, 0.12)).isCloseTo(scale * scale * joint.axialForce(p, 0.12), ROUNDING);
                assertThat(scaled.thermalInterference(80)).isCloseTo(scale * joint.thermalInterference(80), ROUNDING);
            }
        }
    }

    /** Equal materials and a solid shaft: p = Eδ/(2d)·(1 − d²/D²), Poisson's ratio drops out. */
    @Test
    void equalMaterialsAndSolidShaft_reduceToTheTextbook() {
        for (double ratio : new double[] {1.1, 1.5, 2, 5, 50}) {
            for (double nu : new double[] {0, 0.21, 0.3, 0.45}) {
                ElasticJoint.Body hub = new ElasticJoint.Body(40 * ratio, 207000, nu, 12e-6, 300);
                ElasticJoint.Body shaft = new ElasticJoint.Body(0, 207000, nu, 12e-6, 300);
                ElasticJoint joint = new ElasticJoint(40, 30, hub, shaft, Criterion.TRESCA);
                assertThat(joint.pressure(0.02)).isCloseTo(207000 * 0.02 / 80 * (1 - 1 / (ratio * ratio)), ROUNDING);
                assertThat(joint.thermalInterference(150)).isZero();
            }
        }
    }

    /** A thin hub is a band under tension: σ = pd/2t, to the first order in its thickness. */
    @Test
    void aThinHub_isABand() {
        ElasticJoint.Body hub = new ElasticJoint.Body(100.02, 210000, 0.3, 12e-6, 300);
        ElasticJoint joint =
                new ElasticJoint(100, 10, hub, new ElasticJoint.Body(0, 210000, 0.3, 12e-6, 300), Criterion.TRESCA);

        assertThat(joint.outerHoop(50, 1)).isCloseTo(100 / (2 * 0.01), Percentage.withPercentage(0.02));
    }

    /** Von Mises never exceeds Tresca, and reaches at least √3/2 of it, which DIN 7190 takes. */
    @Test
    void criteria_keepTheirOrder() {
        SplittableRandom[] random = {new SplittableRandom(3), new SplittableRandom(3), new SplittableRandom(3)};
        for (int i = 0; i < JOINTS; i++) {
            ElasticJoint mises = random(random[0], 1, Criterion.VON_MISES);
            ElasticJoint tresca = random(random[1], 1, Criterion.TRESCA);
            ElasticJoint din = random(random[2], 1, Criterion.DIN_7190);
            assertThat(mises.outerEquivalent(1)).isLessThanOrEqualTo(tresca.outerEquivalent(1) * (1 + 1e-12));
            assertThat(mises.outerEquivalent(1)).isGreaterThanOrEqualTo(din.outerEquivalent(1) * (1 - 1e-12));
            assertThat(mises.innerEquivalent(1)).isLessThanOrEqualTo(tresca.innerEquivalent(1) * (1 + 1e-12));
            assertThat(mises.innerEquivalent(1)).isGreaterThanOrEqualTo(din.innerEquivalent(1) * (1 - 1e-12));
        }
    }

    /**
     * An independent check of the stresses: the displacement u(r) of a ring in plane stress obeys u″ + u′/r − u/r² = 0. It is solved here
     * by central differences with the pressures as boundary conditions, and stresses follow from Hooke's law. The error falls as the square
     * of the step; with 2000 steps it lies below 1e-4 of the pressure.
     */
    @Test
    void finiteDifferences_giveTheSameStresses() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 25; i++) {
            ElasticJoint joint = random(random, 1, Criterion.VON_MISES);
            double p = 10 + 100 * random.nextDouble();
            Ring hub =
                    new Ring(joint.outer(), joint.diameter() / 2, joint.outer().farDiameter() / 2, p, 0);
            hub.agrees(joint::outerRadial, joint::outerHoop, p);
            assertThat(2 * hub.displacement[0]).isCloseTo(joint.boreGrowth(p), Percentage.withPercentage(0.01));
            assertThat(2 * hub.displacement[Ring.STEPS])
                    .isCloseTo(joint.outsideGrowth(p), Percentage.withPercentage(0.01));
            if (joint.inner().farDiameter() > joint.diameter() / 20) {
                Ring shaft = new Ring(joint.inner(), joint.inner().farDiameter() / 2, joint.diameter() / 2, 0, p);
                shaft.agrees(joint::innerRadial, joint::innerHoop, p);
                assertThat(-2 * shaft.displacement[0])
                        .isCloseTo(joint.insideShrinkage(p), Percentage.withPercentage(0.1));
                assertThat(-2 * shaft.displacement[Ring.STEPS])
                        .isCloseTo(joint.seatShrinkage(p), Percentage.withPercentage(0.1));
            }
        }
    }

    private interface Stress {
        double at(double radius, double pressure);
    }

    /** A ring under pressure inside and outside, by finite differences on a grid with one ghost point at either end. */
    private static final class Ring {
        private static final int STEPS = 2000;
        private final double young;
        private final double poisson;
        private final double from;
        private final double step;
        private final double[] displacement = new double[STEPS + 1];

        Ring(ElasticJoint.Body body, double from, double to, double inside, double outside) {
            this.young = body.youngsModulus();
            this.poisson = body.poissonsRatio();
            this.from = from;
            this.step = (to - from) / STEPS;
            double[] lower = new double[STEPS + 1];
            double[] middle = new double[STEPS + 1];
            double[] upper = new double[STEPS + 1];
            double[] right = new double[STEPS + 1];
            for (int i = 0; i <= STEPS; i++) {
                double r = from + i * step;
                lower[i] = 1 / (step * step) - 1 / (2 * r * step);
                middle[i] = -2 / (step * step) - 1 / (r * r);
                upper[i] = 1 / (step * step) + 1 / (2 * r * step);
            }
            // u′ at an end from σr = −pressure: u′ = −pressure(1 − ν²)/E − νu/r, put into the ghost point beyond it.
            double slopeInside = -inside * (1 - poisson * poisson) / young;
            upper[0] += lower[0];
            middle[0] += lower[0] * 2 * step * poisson / from;
            right[0] = lower[0] * 2 * step * slopeInside;
            double slopeOutside = -outside * (1 - poisson * poisson) / young;
            lower[STEPS] += upper[STEPS];
            middle[STEPS] -= upper[STEPS] * 2 * step * poisson / to;
            right[STEPS] = -upper[STEPS] * 2 * step * slopeOutside;
            for (int i = 1; i <= STEPS; i++) {
                double factor = lower[i] / middle[i - 1];
                middle[i] -= factor * upper[i - 1];
                right[i] -= factor * right[i - 1];
            }
            displacement[STEPS] = right[STEPS] / middle[STEPS];
            for (int i = STEPS - 1; i >= 0; i--) {
                displacement[i] = (right[i] - upper[i] * displacement[i + 1]) / middle[i];
            }
        }

        void agrees(Stress radial, Stress hoop, double pressure) {
            for (int i = 1; i < STEPS; i += 97) {
                double r = from + i * step;
                double stretch = (displacement[i + 1] - displacement[i - 1]) / (2 * step);
                double around = displacement[i] / r;
                double factor = young / (1 - poisson * poisson);
                double scale = Math.max(pressure, Math.abs(hoop.at(r, pressure)));
                assertThat(factor * (stretch + poisson * around))
                        .isCloseTo(radial.at(r, pressure), within(1e-3 * scale));
                assertThat(factor * (around + poisson * stretch)).isCloseTo(hoop.at(r, pressure), within(1e-3 * scale));
            }
        }
    }

    @Test
    void diametersOutOfOrder_areRefused() {
        ElasticJoint.Body ring = new ElasticJoint.Body(40, 210000, 0.3, 12e-6, 300);
        ElasticJoint.Body solid = new ElasticJoint.Body(0, 210000, 0.3, 12e-6, 300);

        assertThatIllegalArgumentException().isThrownBy(() -> new ElasticJoint(40, 10, ring, solid, Criterion.TRESCA));
        assertThatIllegalArgumentException().isThrownBy(() -> new ElasticJoint(30, 10, ring, ring, Criterion.TRESCA));
        assertThatIllegalArgumentException().isThrownBy(() -> new ElasticJoint(30, 0, ring, solid, Criterion.TRESCA));
    }
}
