package io.github.firstoff.stats;

/**
 * An estimate of a standard deviation, with what it rests on.
 *
 * @param sigma the estimate, not below 0, in whatever unit its data had
 * @param estimator how it was made, as a sheet prints it, for example {@code R̄/d2}
 * @param degreesOfFreedom the (effective) degrees of freedom; not necessarily whole
 */
public record SigmaEstimate(double sigma, String estimator, double degreesOfFreedom) {
    /** Checks ranges. */
    public SigmaEstimate {
        if (!(sigma >= 0) || Double.isInfinite(sigma)) {
            throw new IllegalArgumentException("a standard deviation is finite and not below 0, not " + sigma);
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degrees of freedom are above 0, not " + degreesOfFreedom);
        }
    }

    /** The same estimate in another unit: sigma times {@code factor}. */
    public SigmaEstimate times(double factor) {
        return new SigmaEstimate(sigma * factor, estimator, degreesOfFreedom);
    }

    /** The same estimate with another number for sigma, for a change of unit that is rounded elsewhere. */
    public SigmaEstimate withSigma(double other) {
        return new SigmaEstimate(other, estimator, degreesOfFreedom);
    }
}
