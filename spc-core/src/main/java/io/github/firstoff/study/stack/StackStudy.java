package io.github.firstoff.study.stack;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.assembly.DimensionLoop.Distribution;
import io.github.firstoff.assembly.DimensionLoop.Member;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.stats.BinomialInterval;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.Moments;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * The gap that a loop of dimensions leaves: gap = Σ cᵢxᵢ with direction times sensitivity cᵢ.
 *
 * <p>Worst case: Σ cᵢ·(limit that makes the gap least, or greatest), in exact decimals. Root sum square: middle of all zones ±
 * √Σ(cᵢTᵢ/2)². By distributions: mean Σ cᵢµᵢ, variance Σ cᵢ²σᵢ², each member's share of it cᵢ²σᵢ²/Σ. A simulation with a fixed
 * seed draws every member from its own distribution, measured ones from their readings, and counts gaps outside what is asked.
 *
 * <p>Source: textbooks of tolerancing (linear stacks); unequal deviations are first re-centred on the middle of the zone. Assumes: the gap is
 * linear in the members over their tolerances, members vary independently, and the process of each is centred and as capable as its
 * distribution says. The simulation knows no reading beyond the measured ones. Not for loops whose geometry tilts as sizes change.
 */
public final class StackStudy {
    /** Assemblies drawn. */
    static final int DRAWS = 200_000;

    private static final long SEED = 20261125L;
    private static final double TAIL = 0.00135;
    private static final int BINS = 40;

    private StackStudy() {}

    /** Studies a loop. */
    public static StackResult of(DimensionLoop loop) {
        List<Part> parts = loop.members().stream().map(Part::new).toList();
        double mean =
                parts.stream().mapToDouble(part -> part.coefficient * part.mean).sum();
        double variance = parts.stream().mapToDouble(Part::varianceOfGap).sum();
        double deviation = Math.sqrt(variance);
        boolean limited =
                loop.members().stream().allMatch(member -> member.limits().isPresent());
        Optional<StackResult.Exact> worst = limited ? Optional.of(worst(loop)) : Optional.empty();
        OptionalDouble width = worst.map(
                        range -> OptionalDouble.of(number(range.maximum().subtract(range.minimum()))))
                .orElse(OptionalDouble.empty());
        List<StackResult.Contribution> contributions = new ArrayList<>();
        for (Part part : parts) {
            contributions.add(new StackResult.Contribution(
                    part.member,
                    part.mean,
                    part.deviation,
                    variance > 0 ? part.varianceOfGap() / variance : 0,
                    width.isPresent() && width.getAsDouble() > 0
                            ? OptionalDouble.of(part.widthOfGap() / width.getAsDouble())
                            : OptionalDouble.empty()));
        }
        return new StackResult(
                loop,
                nominal(loop),
                worst,
                limited ? Optional.of(rootSumSquare(loop, parts)) : Optional.empty(),
                mean,
                deviation,
                drawn(loop, parts),
                loop.gap().isOpen() ? Optional.empty() : Optional.of(normal(loop.gap(), mean, deviation)),
                contributions);
    }

    private static double number(BigDecimal value) {
        return Ratio.of(value, BigDecimal.ONE);
    }

    private static Optional<BigDecimal> nominal(DimensionLoop loop) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Member member : loop.members()) {
            if (member.nominal().isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(member.coefficient().multiply(member.nominal().get()));
        }
        return Optional.of(sum);
    }

    private static StackResult.Exact worst(DimensionLoop loop) {
        BigDecimal least = BigDecimal.ZERO;
        BigDecimal greatest = BigDecimal.ZERO;
        for (Member member : loop.members()) {
            Limits limits = member.limits().orElseThrow();
            BigDecimal one = member.coefficient().multiply(limits.lower().orElseThrow());
            BigDecimal other = member.coefficient().multiply(limits.upper().orElseThrow());
            least = least.add(one.min(other));
            greatest = greatest.add(one.max(other));
        }
        return new StackResult.Exact(least, greatest);
    }

    private static StackResult.Around rootSumSquare(DimensionLoop loop, List<Part> parts) {
        BigDecimal twice = BigDecimal.ZERO;
        for (Member member : loop.members()) {
            Limits limits = member.limits().orElseThrow();
            twice = twice.add(member.coefficient()
                    .multiply(limits.lower().orElseThrow().add(limits.upper().orElseThrow())));
        }
        double squares = parts.stream()
                .mapToDouble(part -> part.widthOfGap() * part.widthOfGap() / 4)
                .sum();
        return new StackResult.Around(number(twice) / 2, Math.sqrt(squares));
    }

    private static StackResult.Outside normal(Limits gap, double mean, double deviation) {
        double below = gap.lower()
                .map(limit -> deviation > 0
                        ? Distributions.normal((number(limit) - mean) / deviation)
                        : mean < number(limit) ? 1 : 0)
                .orElse(0.0);
        double above = gap.upper()
                .map(limit -> deviation > 0
                        ? Distributions.normalAbove((number(limit) - mean) / deviation)
                        : mean > number(limit) ? 1 : 0)
                .orElse(0.0);
        return new StackResult.Outside(below, above);
    }

    private static StackResult.Drawn drawn(DimensionLoop loop, List<Part> parts) {
        SplittableRandom random = new SplittableRandom(SEED);
        double[] gaps = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            double gap = 0;
            for (Part part : parts) {
                gap += part.coefficient * part.draw(random);
            }
            gaps[i] = gap;
        }
        Moments moments = Moments.of(gaps);
        Arrays.sort(gaps);
        Optional<StackResult.Outside> outside = Optional.empty();
        OptionalDouble upper = OptionalDouble.empty();
        if (!loop.gap().isOpen()) {
            long below = loop.gap()
                    .lower()
                    .map(limit -> countBelow(gaps, number(limit)))
                    .orElse(0L);
            long above = loop.gap()
                    .upper()
                    .map(limit -> DRAWS - countBelow(gaps, Math.nextUp(number(limit))))
                    .orElse(0L);
            outside = Optional.of(new StackResult.Outside((double) below / DRAWS, (double) above / DRAWS));
            upper = OptionalDouble.of(BinomialInterval.upper(below + above, DRAWS, 0.05));
        }
        double width = (gaps[DRAWS - 1] - gaps[0]) / BINS;
        List<Long> bins = new ArrayList<>();
        for (int bin = 0; width > 0 && bin < BINS; bin++) {
            long to = bin == BINS - 1 ? DRAWS : countBelow(gaps, gaps[0] + (bin + 1) * width);
            bins.add(to - countBelow(gaps, gaps[0] + bin * width));
        }
        return new StackResult.Drawn(
                DRAWS,
                SEED,
                moments.mean(),
                moments.standardDeviation(),
                quantile(gaps, TAIL),
                quantile(gaps, 0.5),
                quantile(gaps, 1 - TAIL),
                outside,
                upper,
                bins,
                gaps[0],
                width);
    }

    private static double quantile(double[] sorted, double share) {
        double at = share * (sorted.length - 1);
        int low = (int) at;
        int high = Math.min(low + 1, sorted.length - 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }

    private static long countBelow(double[] sorted, double bound) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < bound) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** A member as numbers. */
    private static final class Part {
        private final Member member;
        private final double coefficient;
        private final double mean;
        private final double deviation;
        private final double half;
        private final double[] readings;

        Part(Member member) {
            this.member = member;
            coefficient = number(member.coefficient());
            double middle = member.limits()
                    .map(limits -> number(limits.lower()
                                    .orElseThrow()
                                    .add(limits.upper().orElseThrow()))
                            / 2)
                    .orElse(0.0);
            half = member.limits()
                            .flatMap(Limits::width)
                            .map(StackStudy::number)
                            .orElse(0.0)
                    / 2;
            Distribution distribution = member.distribution();
            double[] values = {};
            if (distribution instanceof DimensionLoop.WithinLimits within) {
                mean = middle;
                deviation = half / number(within.sigmas());
            } else if (distribution instanceof DimensionLoop.Stated stated) {
                mean = number(stated.mean());
                deviation = number(stated.standardDeviation());
            } else if (distribution instanceof DimensionLoop.Measured measured) {
                values = measured.readings().stream()
                        .mapToDouble(StackStudy::number)
                        .toArray();
                Moments moments = Moments.of(values);
                mean = moments.mean();
                deviation = moments.standardDeviation();
            } else {
                mean = middle;
                deviation = half / Math.sqrt(3);
            }
            readings = values;
        }

        double varianceOfGap() {
            return coefficient * coefficient * deviation * deviation;
        }

        double widthOfGap() {
            return Math.abs(coefficient) * 2 * half;
        }

        double draw(SplittableRandom random) {
            if (readings.length > 0) {
                return readings[random.nextInt(readings.length)];
            }
            if (member.distribution() instanceof DimensionLoop.Uniform) {
                return mean + half * (2 * random.nextDouble() - 1);
            }
            return mean + deviation * random.nextGaussian();
        }
    }
}
