package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.stats.BinomialInterval;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How many pieces failed what passes or fails, and what that says of the share in the long run.
 *
 * @param failed pieces of which at least one result fails
 * @param pieces all pieces that have a result
 * @param interval of the share, from 0 to 1 (Clopper and Pearson 1934)
 * @param level the confidence level of {@code interval}
 */
public record ObservedShare(int failed, int pieces, BinomialInterval interval, double level) {
    /** The method by its name in results and on sheets. */
    public static final String METHOD = "Clopper–Pearson";

    private static final double USUAL_LEVEL = 0.95;
    private static final double MILLION = 1e6;

    /** The share of a characteristic that passes or fails; empty for any other, and where no piece has a result. */
    public static Optional<ObservedShare> of(CharacteristicResult characteristic) {
        if (!characteristic.characteristic().isAttribute()
                || characteristic.judgements().isEmpty()) {
            return Optional.empty();
        }
        Map<String, Boolean> failed = new LinkedHashMap<>();
        for (Judgement judgement : characteristic.judgements()) {
            failed.merge(judgement.part(), judgement.verdict() == Verdict.NONCONFORMING, Boolean::logicalOr);
        }
        int found = (int) failed.values().stream().filter(each -> each).count();
        return Optional.of(new ObservedShare(
                found, failed.size(), BinomialInterval.clopperPearson(found, failed.size(), USUAL_LEVEL), USUAL_LEVEL));
    }

    /** The share, in parts per million. */
    public double perMillion() {
        return MILLION * failed / pieces;
    }

    /** The lower end of the interval, in parts per million. */
    public double lowerPerMillion() {
        return MILLION * interval.lower();
    }

    /** The upper end of the interval, in parts per million. */
    public double upperPerMillion() {
        return MILLION * interval.upper();
    }
}
