package io.github.firstoff.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/**
 * From the sources of uncertainty of a gauge to its expanded uncertainty (JCGM 100:2008).
 *
 * <ol>
 *   <li>Each source has a standard uncertainty u = value/divisor and contributes |c|·u (4.3, 5.1.3).
 *   <li>Combined: u_c = √Σ(c·u)² (5.1.2, equation 10). The sources are taken as independent; terms of higher order are left out (5.1.2,
 *       note), as the guide does in its example H.1 before it says what they would add.
 *   <li>Effective degrees of freedom: ν = u_c⁴/Σ((c·u)⁴/ν_i) (G.4.1, equation G.2b), cut to the next lower whole number (G.4.1, note 1).
 *   <li>Coverage factor k: stated, or t_p(ν) of Table G.2 (6.3, G.3.2).
 *   <li>U = k·u_c, rounded up to two significant digits (7.2.6: rather up than to the nearest).
 * </ol>
 *
 * <p>Decimals throughout: sums are exact but for quotients, which are kept to 60 digits; roots are taken to 34. Nothing is rounded
 * between steps. The guide's example H.1 does round between steps (it combines 9.7 nm with 25.6 degrees of freedom where the exact chain
 * has 9.68 and 25.45), so intermediate values may differ from it in the third digit; U is the same 93 nm.
 *
 * <p>Not for correlated sources or for results that are not nearly linear in them.
 *
 * @param unit the unit of the result
 * @param sources at least one with a contribution above 0
 * @param coverage how to expand
 */
public record UncertaintyBudget(Unit unit, List<UncertaintySource> sources, Coverage coverage) {
    /** For quotients between steps. */
    static final MathContext WORKING = new MathContext(60);

    /** Far finer than any degrees of freedom are known, and coarse enough that an exact whole number stays one. */
    private static final MathContext BEFORE_CUTTING = new MathContext(40);

    private static final int SIGNIFICANT = 2;

    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException if no source contributes anything
     */
    public UncertaintyBudget {
        sources = List.copyOf(sources);
        if (sources.stream().allMatch(source -> source.variance().signum() == 0)) {
            throw new IllegalArgumentException("an uncertainty budget needs a source that contributes something");
        }
    }

    /**
     * What a budget comes to, with every step for printing.
     *
     * @param lines one per source, in the budget's order
     * @param standardUncertainty the combined standard uncertainty u_c, to 34 digits
     * @param effectiveDegreesOfFreedom ν before it is cut to a whole number, to 34 digits; empty if infinite
     * @param degreesOfFreedom ν as used; empty if infinite
     * @param coverageFactor k
     * @param expanded U = k·u_c before it is rounded
     * @param rounded U rounded up to two significant digits
     * @param unit the unit of u_c and U
     */
    public record Result(
            List<Line> lines,
            BigDecimal standardUncertainty,
            Optional<BigDecimal> effectiveDegreesOfFreedom,
            Optional<BigInteger> degreesOfFreedom,
            BigDecimal coverageFactor,
            BigDecimal expanded,
            BigDecimal rounded,
            Unit unit) {
        /** Copies the list. */
        public Result {
            lines = List.copyOf(lines);
        }

        /** The expanded uncertainty as a gauge states it: rounded, independent of the length. */
        public Uncertainty uncertainty() {
            return new Uncertainty(rounded, BigDecimal.ZERO, coverageFactor, unit);
        }
    }

    /**
     * One source and its part in the whole.
     *
     * @param source the source
     * @param standardUncertainty u, in the source's own unit, to 34 digits
     * @param contribution |c|·u, in the unit of the budget, to 34 digits
     * @param share (c·u)²/u_c²: from 0 to 1, to 34 digits; the shares of all lines add up to 1 but for their last digits
     */
    public record Line(
            UncertaintySource source, BigDecimal standardUncertainty, BigDecimal contribution, BigDecimal share) {}

    /** A budget with the usual coverage factor 2. */
    public static UncertaintyBudget of(Unit unit, List<UncertaintySource> sources) {
        return new UncertaintyBudget(unit, sources, Coverage.USUAL);
    }

    /** The same budget, expanded otherwise. */
    public UncertaintyBudget with(Coverage other) {
        return new UncertaintyBudget(unit, sources, other);
    }

    /** What the budget comes to. */
    public Result evaluate() {
        BigDecimal variance =
                sources.stream().map(UncertaintySource::variance).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal combined = root(variance);
        Optional<BigDecimal> effective = effectiveDegreesOfFreedom(variance);
        Optional<BigInteger> used = effective.map(BigDecimal::toBigInteger);
        BigDecimal factor = factor(used);
        BigDecimal expanded = root(variance.multiply(factor).multiply(factor));
        return new Result(
                sources.stream().map(source -> line(source, variance)).toList(),
                combined,
                effective.map(degrees -> degrees.round(MathContext.DECIMAL128)),
                used,
                factor,
                expanded,
                roundedUp(expanded),
                unit);
    }

    private static Line line(UncertaintySource source, BigDecimal variance) {
        return new Line(
                source,
                source.standardUncertainty(),
                source.contribution(),
                source.variance().divide(variance, MathContext.DECIMAL128));
    }

    private BigDecimal factor(Optional<BigInteger> degrees) {
        if (coverage instanceof Coverage.Factor stated) {
            return stated.k();
        }
        return StudentFactors.factor(degrees, ((Coverage.Probability) coverage).p());
    }

    private Optional<BigDecimal> effectiveDegreesOfFreedom(BigDecimal variance) {
        BigDecimal sum = BigDecimal.ZERO;
        for (UncertaintySource source : sources) {
            if (source.degreesOfFreedom().isPresent()) {
                BigDecimal own = source.variance();
                sum = sum.add(own.multiply(own).divide(source.degreesOfFreedom().get(), WORKING));
            }
        }
        if (sum.signum() == 0) {
            return Optional.empty();
        }
        return Optional.of(variance.multiply(variance).divide(sum, BEFORE_CUTTING));
    }

    /** Up to two significant digits; what is already so short stays, and gets its second digit. */
    private static BigDecimal roundedUp(BigDecimal value) {
        BigDecimal rounded = value.round(new MathContext(SIGNIFICANT, RoundingMode.UP));
        return rounded.precision() < SIGNIFICANT
                ? rounded.setScale(rounded.scale() + SIGNIFICANT - rounded.precision())
                : rounded;
    }

    static BigDecimal root(BigDecimal square) {
        return square.signum() == 0 ? BigDecimal.ZERO : square.sqrt(MathContext.DECIMAL128);
    }
}
