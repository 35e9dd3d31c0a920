package io.github.firstoff.study.chart;

import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;

/**
 * Whether counts spread as the binomial or Poisson distribution says.
 *
 * <p>With zᵢ the standardised counts, σz = mean moving range of z / 1.128 (Laney 2002, Quality Engineering 14, 531–537). For
 * counts that follow their distribution σz is 1 but for chance; the check calls them over- or under-dispersed when σz lies
 * outside the 99 % range √(χ²/ν) with the effective degrees of freedom ν of a mean moving range (Cryer and Ryan 1990). Moving ranges
 * are used because a single shift or outlier, which the chart is there to find, hardly moves them. The index of dispersion
 * χ² = Σzᵢ² with k − 1 degrees of freedom (Fisher; Cochran 1954, Biometrics 10) is reported beside it and decides nothing.
 *
 * @param sigmaZ σz; the factor by which limits are widened where they are
 * @param lower the lower end of the range of σz by chance
 * @param upper its upper end
 * @param chiSquared the index of dispersion
 * @param degreesOfFreedom its degrees of freedom
 * @param p the probability of so large an index or a larger one, by chance
 * @param applied whether the limits were widened or narrowed by σz
 */
public record DispersionCheck(
        double sigmaZ,
        double lower,
        double upper,
        double chiSquared,
        double degreesOfFreedom,
        double p,
        boolean applied) {
    private static final double TAIL = 0.005;

    static DispersionCheck of(
            double meanMovingRange, int ranges, double chiSquared, int points, DispersionPolicy policy) {
        SigmaEstimate sigma = SigmaEstimators.meanMovingRange(meanMovingRange, ranges + 1L);
        double nu = sigma.degreesOfFreedom();
        DispersionCheck found = new DispersionCheck(
                sigma.sigma(),
                Math.sqrt(Distributions.chiSquaredQuantile(TAIL, nu) / nu),
                Math.sqrt(Distributions.chiSquaredQuantile(1 - TAIL, nu) / nu),
                chiSquared,
                points - 1,
                points > 1 ? 1 - Distributions.chiSquared(chiSquared, points - 1) : 1,
                false);
        boolean apply = policy == DispersionPolicy.OBSERVED
                || (policy == DispersionPolicy.CHECK && (found.isOver() || found.isUnder()));
        return new DispersionCheck(
                found.sigmaZ,
                found.lower,
                found.upper,
                found.chiSquared,
                found.degreesOfFreedom,
                found.p,
                apply && found.sigmaZ > 0);
    }

    /** Whether counts spread more than their distribution says. */
    public boolean isOver() {
        return sigmaZ > upper;
    }

    /** Whether counts spread less than their distribution says. */
    public boolean isUnder() {
        return sigmaZ < lower;
    }
}
