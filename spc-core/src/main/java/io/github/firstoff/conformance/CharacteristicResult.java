package io.github.firstoff.conformance;

import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.remark.Remark;
import java.util.List;

/**
 * What was found for one characteristic over all pieces.
 *
 * @param characteristic the characteristic with its limits
 * @param rule the rule that decided
 * @param judgements one per reading, in production order
 * @param absent the pieces that lack a reading they should have, in production order: the first {@value #MOST_NAMED} of them
 * @param missingCount how many such pieces (or pieces and settings) there are
 * @param verdict the worst of the judgements and, where something is missing, "not measured"
 */
public record CharacteristicResult(
        ResolvedCharacteristic characteristic,
        DecisionRule rule,
        List<Judgement> judgements,
        List<Missing> absent,
        long missingCount,
        Verdict verdict) {

    /** How many missing pieces are named; the rest is counted. */
    public static final int MOST_NAMED = 1000;

    /** Copies the lists. */
    public CharacteristicResult {
        judgements = List.copyOf(judgements);
        absent = List.copyOf(absent);
    }

    /** The pieces that lack a reading, and their settings, in English. */
    public List<String> missing() {
        return Remark.english(absent.stream().map(Missing::remark).toList());
    }

    /** How many readings have this verdict. */
    public int count(Verdict wanted) {
        return (int) judgements.stream()
                .filter(judgement -> judgement.verdict() == wanted)
                .count();
    }

    /** The balloon number. */
    public String number() {
        return characteristic.number();
    }
}
