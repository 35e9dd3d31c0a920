package io.github.firstoff.plan;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * How readings are decided.
 *
 * @param rule which rule
 * @param guardFraction the guard band as a fraction of the expanded uncertainty, for the guarded rule: 1 for ISO 14253-1 up to 2013;
 *     0.825 with k = 2 is the 1.65 u of ISO 14253-1:2017; above 0, at most 10
 * @param comparison whether readings are compared as they are or rounded to the last place of the limit
 */
public record DecisionChoice(RuleChoice rule, BigDecimal guardFraction, Comparison comparison) {
    private static final BigDecimal GREATEST_FRACTION = BigDecimal.TEN;

    /** Simple acceptance of readings as they are. */
    public static final DecisionChoice SIMPLE =
            new DecisionChoice(RuleChoice.SIMPLE, BigDecimal.ONE, Comparison.ABSOLUTE);

    /**
     * Checks the fraction.
     *
     * @throws IllegalArgumentException if it is not above 0 or is above 10
     */
    public DecisionChoice {
        if (guardFraction.signum() <= 0 || guardFraction.compareTo(GREATEST_FRACTION) > 0) {
            throw new IllegalArgumentException(
                    "a guard band is a fraction of the uncertainty above 0 and at most 10, not "
                            + guardFraction.toPlainString());
        }
    }

    /** Which rule decides. */
    public enum RuleChoice {
        /** Simple acceptance: a reading within the limits conforms. */
        SIMPLE("simple"),
        /** ISO 14253-1: proven only inside the limits narrowed by the guard band. */
        GUARDED("guarded");

        private final String word;

        RuleChoice(String word) {
            this.word = word;
        }

        /** The word in plan files. */
        public String word() {
            return word;
        }
    }

    /** How a reading meets a limit (ASTM E29, sections 5 and 6). */
    public enum Comparison {
        /** The reading as it is: the absolute method. */
        ABSOLUTE("absolute"),
        /** The reading rounded to the last place of the limit, halves to even: the rounding method. */
        ROUNDING("rounding");

        private final String word;

        Comparison(String word) {
            this.word = word;
        }

        /** The word in plan files. */
        public String word() {
            return word;
        }
    }

    /**
     * What one characteristic decides otherwise than its plan.
     *
     * @param rule another rule
     * @param guardFraction another fraction
     * @param comparison another comparison
     */
    public record Change(
            Optional<RuleChoice> rule, Optional<BigDecimal> guardFraction, Optional<Comparison> comparison) {
        /** Nothing. */
        public static final Change NONE = new Change(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** This choice with what a characteristic decides otherwise. */
    public DecisionChoice with(Change other) {
        return new DecisionChoice(
                other.rule().orElse(rule),
                other.guardFraction().orElse(guardFraction),
                other.comparison().orElse(comparison));
    }
}
