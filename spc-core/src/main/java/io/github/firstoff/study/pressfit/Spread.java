package io.github.firstoff.study.pressfit;

import io.github.firstoff.stats.Distributions;
import java.util.SplittableRandom;

/**
 * How the interference of pairs taken at random is spread: a normal part, from measured sizes, and up to two uniform parts, from limits.
 *
 * <p>With a normal part N(µ, σ) and a uniform one of half-width h: P(U ≤ x) = σ/2h·(G((x − µ + h)/σ) − G((x − µ − h)/σ)) with
 * G(z) = zΦ(z) + φ(z), the integral of Φ; of two uniform parts alone the sum has a trapezoidal density. Both in closed form.
 *
 * @param mean of the interference
 * @param sigma of the normal part; 0 if there is none
 * @param first half-width of the first uniform part; 0 if there is none
 * @param second half-width of the second; 0 if there is none, and only where there is no normal part
 */
record Spread(double mean, double sigma, double first, double second) {
    Spread {
        if (sigma > 0 && second > 0) {
            throw new IllegalArgumentException("one of two sizes is measured or both are known by limits");
        }
    }

    /** P(U ≤ x). */
    double atMost(double x) {
        double z = x - mean;
        if (sigma > 0 && first > 0) {
            double share = sigma / (2 * first) * (integral((z + first) / sigma) - integral((z - first) / sigma));
            return Math.max(0, Math.min(1, share));
        }
        if (sigma > 0) {
            return Distributions.normal(z / sigma);
        }
        double wide = Math.max(first, second);
        double narrow = Math.min(first, second);
        if (wide == 0) {
            return z >= 0 ? 1 : 0;
        }
        if (narrow == 0) {
            return Math.max(0, Math.min(1, (z + wide) / (2 * wide)));
        }
        if (Math.abs(z) >= wide + narrow) {
            // beyond the ends the ramps cancel only to rounding
            return z > 0 ? 1 : 0;
        }
        return (ramp(z + wide + narrow) - ramp(z + wide - narrow) - ramp(z - wide + narrow) + ramp(z - wide - narrow))
                / (4 * wide * narrow);
    }

    /** P(U &gt; x). */
    double above(double x) {
        return sigma > 0 && first == 0 ? Distributions.normalAbove((x - mean) / sigma) : 1 - atMost(x);
    }

    /** Standard deviation of the whole. */
    double deviation() {
        return Math.sqrt(sigma * sigma + (first * first + second * second) / 3);
    }

    /** The density, for pictures. */
    double density(double x) {
        double step = Math.max(deviation(), 1e-12) * 1e-3;
        return (atMost(x + step) - atMost(x - step)) / (2 * step);
    }

    double draw(SplittableRandom random) {
        double value = mean;
        if (sigma > 0) {
            value += sigma * random.nextGaussian();
        }
        if (first > 0) {
            value += first * (2 * random.nextDouble() - 1);
        }
        if (second > 0) {
            value += second * (2 * random.nextDouble() - 1);
        }
        return value;
    }

    /** The interference below which a share of pairs lies, by bisection to the last bits. */
    double quantile(double share) {
        double low = mean - first - second - 12 * sigma;
        double high = mean + first + second + 12 * sigma;
        for (int i = 0; i < 200 && low < high; i++) {
            double middle = (low + high) / 2;
            if (middle == low || middle == high) {
                break;
            }
            if (atMost(middle) < share) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private static double ramp(double x) {
        return x > 0 ? x * x / 2 : 0;
    }

    private static double integral(double z) {
        // far out both terms are 0 or z to the last bit
        if (z < -38) {
            return 0;
        }
        return z * Distributions.normal(z) + Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    }
}
