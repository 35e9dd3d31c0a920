package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.OutlierTests;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a reader must know of the readings before believing any figure made of them. Nothing here removes or changes a reading.
 *
 * @param discreteness how coarse the readings are; empty for fewer than two readings or readings that do not spread
 * @param ties how often readings repeat; empty of none
 * @param autocorrelation how neighbours resemble each other; empty for fewer than two readings or readings that do not spread
 * @param outliers which readings lie far from the rest; empty where no test can be made
 * @param trend the straight line through the readings in their order; empty for fewer than three readings or readings that do
 *     not spread
 * @param findings the findings that matter, in sentences; empty if there is nothing to say
 */
public record DataChecks(
        Optional<Discreteness> discreteness,
        Optional<Ties> ties,
        Optional<Autocorrelation> autocorrelation,
        Optional<Outliers> outliers,
        Optional<Trend> trend,
        List<Remark> findings) {
    /** Copies the findings. */
    public DataChecks {
        findings = List.copyOf(findings);
    }

    /** The findings in English. */
    public List<String> remarks() {
        return Remark.english(findings);
    }

    /**
     * Resolution against spread.
     *
     * @param step the resolution: that of the gauge if it was given and is coarser, else the greatest step of which all
     *     differences of readings are multiples, in the unit, exact
     * @param stepOverSigma the step over the standard deviation (within subgroups if there is one, else overall)
     * @param stepOverTolerance the step over the distance of the limits; empty for one-sided requirements
     * @param distinctValues how many different readings there are
     * @param distinctRanges how many different moving ranges (of two) there are, 0 counted
     * @param possibleRanges how many values a moving range can take from 0 to its upper control limit
     * @param isCoarse whether the readings are too coarse to describe the process: the step exceeds the standard deviation, or a
     *     moving range can take fewer than four values below its limit (Wheeler and Lyday 1989, Evaluating the Measurement Process,
     *     from memory)
     */
    public record Discreteness(
            BigDecimal step,
            double stepOverSigma,
            OptionalDouble stepOverTolerance,
            int distinctValues,
            int distinctRanges,
            long possibleRanges,
            boolean isCoarse) {}

    /**
     * Repeated readings.
     *
     * @param tied how many readings share their value with another
     * @param most how often the most frequent value occurs
     */
    public record Ties(int tied, int most) {}

    /**
     * Lag-1 autocorrelation (NIST/SEMATECH e-Handbook 1.3.5.12).
     *
     * @param lagOne r₁
     * @param limit z/√n: beyond ± this, r₁ differs from 0
     */
    public record Autocorrelation(double lagOne, double limit) {
        /** Whether r₁ lies beyond its limits. */
        public boolean isBeyond() {
            return Math.abs(lagOne) > limit;
        }
    }

    /**
     * Outliers by the generalised extreme Studentised deviate (Rosner 1983); the first step is the test of Grubbs 1969.
     *
     * @param test the steps
     * @param values the readings that are outliers, the most extreme first, exact
     */
    public record Outliers(OutlierTests.Result test, List<BigDecimal> values) {
        /** Copies the values. */
        public Outliers {
            values = List.copyOf(values);
        }

        /** Which readings (from 0, in their order) are outliers. */
        public List<Integer> readings() {
            return test.outlierIndices();
        }
    }

    /**
     * The straight line through the readings by least squares, in production order.
     *
     * @param slope change per reading, in the unit
     * @param slopeError its standard error
     * @param p the two-sided p-value of slope 0, by Student's t with n − 2 degrees of freedom
     * @param residual the standard deviation about the line, in the unit
     */
    public record Trend(double slope, double slopeError, double p, double residual) {}
}
