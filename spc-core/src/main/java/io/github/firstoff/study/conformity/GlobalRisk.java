package io.github.firstoff.study.conformity;

import io.github.firstoff.sample.Ratio;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Arrays;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * What a decision rule costs in the long run, for parts of a known process (JCGM 106:2012, 9.5).
 *
 * <p>True values η are normal with the process's mean and standard deviation; a reading is η with a normal error of standard uncertainty
 * u. Consumer's risk: ∫ over η outside the tolerance of g(η)·P(reading accepted | η). Producer's risk: ∫ over η inside of
 * g(η)·P(reading rejected | η). Both are joint probabilities, of all parts made, not of those accepted or rejected. Integrated by Gauss
 * and Legendre on panels that end at every limit.
 *
 * <p>Accuracy: absolute 1e-11. Only for a process in control: its mean and spread must stand for the parts to come.
 *
 * @param consumersRisk the fraction of parts that do not conform and are accepted
 * @param producersRisk the fraction of parts that conform and are not accepted
 * @param accepted the fraction of parts accepted
 * @param conforming the fraction of parts that conform
 */
public record GlobalRisk(double consumersRisk, double producersRisk, double accepted, double conforming) {
    private static final int PANELS = 16;
    private static final int NODES = 20;

    /** Beyond so many standard deviations less than 1e-18 of the parts lie. */
    private static final double REACH = 9;

    /**
     * The values between two bounds.
     *
     * @param lower the lower bound; negative infinity for none
     * @param upper the upper bound, not below the lower; infinity for none
     */
    public record Range(double lower, double upper) {
        /**
         * Checks the order.
         *
         * @throws IllegalArgumentException if a bound is no number or the upper is below the lower
         */
        public Range {
            if (!(lower <= upper)) {
                throw new IllegalArgumentException("a range from " + lower + " to " + upper + " is none");
            }
        }

        /** The range between two limits; a natural lower bound is none, as no part can be below it. */
        public static Range of(Limits limits) {
            double lower = limits.naturalLower()
                    ? Double.NEGATIVE_INFINITY
                    : limits.lower()
                            .map(limit -> Ratio.of(limit, BigDecimal.ONE))
                            .orElse(Double.NEGATIVE_INFINITY);
            return new Range(
                    lower,
                    limits.upper().map(limit -> Ratio.of(limit, BigDecimal.ONE)).orElse(Double.POSITIVE_INFINITY));
        }

        /** The range less a guard band at each bound (negative: widened). */
        public Range narrowedBy(double guard) {
            return new Range(lower + guard, upper - guard);
        }

        private double probability(double mean, double deviation) {
            double low = (lower - mean) / deviation;
            double high = (upper - mean) / deviation;
            // each from the tail that is small, so that nothing cancels
            return low > 0
                    ? above(low) - above(high)
                    : high < 0 ? below(high) - below(low) : Math.max(0, 1 - below(low) - above(high));
        }

        private static double below(double z) {
            return z == Double.NEGATIVE_INFINITY ? 0 : z == Double.POSITIVE_INFINITY ? 1 : Distributions.normal(z);
        }

        private static double above(double z) {
            return below(-z);
        }
    }

    /**
     * The true values of a process in control.
     *
     * @param mean finite
     * @param deviation its standard deviation, finite and above 0
     */
    public record TrueValues(double mean, double deviation) {
        /**
         * Checks the ranges.
         *
         * @throws IllegalArgumentException if one of the two is not finite or the deviation not above 0
         */
        public TrueValues {
            if (!Double.isFinite(mean) || !Double.isFinite(deviation) || deviation <= 0) {
                throw new IllegalArgumentException(
                        "a process has a mean and a standard deviation above 0, not " + mean + " and " + deviation);
            }
        }
    }

    /**
     * The risks, everything in one unit.
     *
     * @param tolerance what conforms
     * @param acceptance which readings are accepted
     * @param process how the true values are spread
     * @param standardUncertainty u of a reading; finite and above 0
     * @throws IllegalArgumentException if u is not
     */
    public static GlobalRisk of(Range tolerance, Range acceptance, TrueValues process, double standardUncertainty) {
        if (!Double.isFinite(standardUncertainty) || standardUncertainty <= 0) {
            throw new IllegalArgumentException("a standard uncertainty is above 0, not " + standardUncertainty);
        }
        double u = standardUncertainty;
        double[] cuts = {
            process.mean() - REACH * process.deviation(),
            tolerance.lower(),
            tolerance.upper(),
            acceptance.lower() - REACH * u,
            acceptance.lower() + REACH * u,
            acceptance.upper() - REACH * u,
            acceptance.upper() + REACH * u,
            process.mean() + REACH * process.deviation()
        };
        double first = cuts[0];
        double last = cuts[cuts.length - 1];
        Arrays.sort(cuts);
        double consumers = 0;
        double producers = 0;
        for (int i = 1; i < cuts.length; i++) {
            double from = Math.max(first, cuts[i - 1]);
            double to = Math.min(last, cuts[i]);
            if (from < to) {
                double middle = from + (to - from) / 2;
                boolean conforms = tolerance.lower() <= middle && middle <= tolerance.upper();
                if (conforms) {
                    producers += integral(from, to, process, u, acceptance, false);
                } else {
                    consumers += integral(from, to, process, u, acceptance, true);
                }
            }
        }
        double spread = Math.hypot(process.deviation(), u);
        return new GlobalRisk(
                consumers,
                producers,
                acceptance.probability(process.mean(), spread),
                tolerance.probability(process.mean(), process.deviation()));
    }

    private static double integral(
            double from, double to, TrueValues process, double u, Range acceptance, boolean whereAccepted) {
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES);
        double width = (to - from) / PANELS;
        double sum = 0;
        for (int panel = 0; panel < PANELS; panel++) {
            for (int k = 0; k < NODES; k++) {
                double eta = from + width * (panel + (1 + rule.getPoint(k)) / 2);
                double z = (eta - process.mean()) / process.deviation();
                double density = Math.exp(-z * z / 2) / (process.deviation() * Math.sqrt(2 * Math.PI));
                double accepted = acceptance.probability(eta, u);
                sum += rule.getWeight(k) * density * (whereAccepted ? accepted : 1 - accepted);
            }
        }
        return sum * width / 2;
    }

    /** Of the parts accepted, the fraction that does not conform; 0 if none is accepted. */
    public double nonconformingAmongAccepted() {
        return accepted == 0 ? 0 : consumersRisk / accepted;
    }
}
