package io.github.firstoff.study.capability;

import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.BinomialInterval;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The share of readings outside the required limits.
 *
 * @param count how many lie outside; empty without limits or readings
 * @param observed in parts per million
 */
record Outside(OptionalInt count, Index observed) {
    static final String OBSERVED = "observed nonconforming";
    static final String EXPECTED = "expected nonconforming";
    static final String BELOW = "expected below";
    static final String ABOVE = "expected above";

    static Outside observed(Sample sample, Bounds bounds, double level) {
        Optional<BigDecimal> lower = bounds.requiredLower();
        Optional<BigDecimal> upper = bounds.upper();
        if (lower.isEmpty() && upper.isEmpty()) {
            return new Outside(OptionalInt.empty(), Index.none(OBSERVED, NormalIndices.oneSided(bounds)));
        }
        int n = sample.size();
        if (n == 0) {
            return new Outside(OptionalInt.empty(), Index.none(OBSERVED, NormalIndices.NO_READINGS));
        }
        // whole steps: a reading is below L if its deviation is below L's, rounded up; exact, and nothing allocated per
        // reading
        long least = lower.map(limit -> steps(sample.scale(), limit, RoundingMode.CEILING))
                .orElse(Long.MIN_VALUE);
        long greatest = upper.map(limit -> steps(sample.scale(), limit, RoundingMode.FLOOR))
                .orElse(Long.MAX_VALUE);
        int outside = 0;
        for (int i = 0; i < n; i++) {
            long deviation = sample.deviation(i);
            if (deviation < least || deviation > greatest) {
                outside++;
            }
        }
        BinomialInterval share = BinomialInterval.clopperPearson(outside, n, level);
        return new Outside(
                OptionalInt.of(outside),
                Index.of(OBSERVED, Scores.MILLION * outside / n)
                        .with(new Interval(
                                Scores.MILLION * share.lower(),
                                Scores.MILLION * share.upper(),
                                level,
                                "Clopper–Pearson")));
    }

    private static long steps(Scale scale, BigDecimal limit, RoundingMode rounding) {
        BigInteger steps = limit.subtract(scale.reference())
                .movePointRight(scale.places())
                .setScale(0, rounding)
                .toBigInteger();
        if (steps.bitLength() > 62) {
            // farther than any reading can lie
            return steps.signum() > 0 ? Long.MAX_VALUE : Long.MIN_VALUE;
        }
        return steps.longValue();
    }

    Nonconforming with(Performance performance) {
        return new Nonconforming(count, observed, performance.expected(), performance.below(), performance.above());
    }

    /** An expected share from its normal score; a greater score is a smaller share. */
    static Index expected(String name, double score, Optional<double[]> scores, double level, String method) {
        Index index = Index.of(name, Scores.partsPerMillion(score));
        return scores.map(ends -> index.with(
                        new Interval(Scores.partsPerMillion(ends[1]), Scores.partsPerMillion(ends[0]), level, method)))
                .orElse(index);
    }
}
