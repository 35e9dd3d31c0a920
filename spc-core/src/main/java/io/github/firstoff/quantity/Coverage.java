package io.github.firstoff.quantity;

import java.math.BigDecimal;

/** How a combined standard uncertainty is to be expanded (JCGM 100:2008, clause 6). */
public sealed interface Coverage permits Coverage.Factor, Coverage.Probability {

    /** By the usual factor 2. */
    Coverage USUAL = new Factor(new BigDecimal("2"));

    /**
     * By a stated factor, whatever the degrees of freedom (6.3.3).
     *
     * @param k positive
     */
    record Factor(BigDecimal k) implements Coverage {
        /**
         * Checks the range.
         *
         * @throws IllegalArgumentException if the factor is not positive
         */
        public Factor {
            if (k.signum() <= 0) {
                throw new IllegalArgumentException("a coverage factor is positive, not " + k.toPlainString());
            }
        }
    }

    /**
     * By the factor that gives a stated probability for the effective degrees of freedom (6.3.2 and annex G).
     *
     * @param p one of {@link StudentFactors#probabilities()}
     */
    record Probability(BigDecimal p) implements Coverage {
        /**
         * Checks the range.
         *
         * @throws IllegalArgumentException if there is no table for the probability
         */
        public Probability {
            if (!StudentFactors.has(p)) {
                throw new IllegalArgumentException(
                        "a coverage probability is one of " + StudentFactors.inWords() + ", not " + p.toPlainString());
            }
        }
    }
}
