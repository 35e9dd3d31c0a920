package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.study.capability.TrendedCapability;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.drift.Drift;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;

/**
 * How one characteristic drifted through one batch.
 *
 * @param result the verdicts on all readings of the characteristic
 * @param batch what the batch is called: the name of its file of readings, or what the job calls it where there is one file only
 * @param judgements those on the readings followed, in their order
 * @param drift the study
 * @param indices within the trend and over whole tool lives, side by side
 * @param signals of the zone tests on the residuals; points count readings from 1
 * @param guard the guard band that was taken off the limits, in the unit; 0 where none is
 * @param remarks what a reader must know beside the notes of the study
 */
public record DriftFinding(
        CharacteristicResult result,
        String batch,
        List<Judgement> judgements,
        Drift drift,
        TrendedCapability indices,
        List<Signal> signals,
        BigDecimal guard,
        List<Remark> remarks) {
    /** What readings of all files followed as one are called. */
    public static final String ALL_FILES = "all files";

    /** Those that need attention first come first; then the plan's order, for a stable sort. */
    static final Comparator<DriftFinding> MOST_URGENT = Comparator.comparing(DriftFinding::attention)
            .thenComparingLong(each -> each.attention() == Attention.AHEAD
                    ? each.drift().forecast().remaining()
                    : 0);

    /** Copies the lists. */
    public DriftFinding {
        judgements = List.copyOf(judgements);
        signals = List.copyOf(signals);
        remarks = List.copyOf(remarks);
    }

    /** What a reader must know beside the notes of the study, in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /** How soon somebody must look at it, the most urgent first. */
    public enum Attention {
        /** A reading does not conform. */
        OUT("out"),
        /** The process meets the limit already. */
        REACHED("reached"),
        /** The process will meet the limit. */
        AHEAD("ahead"),
        /** A zone test on the residuals signals, or a reading is not proven to conform. */
        RESTLESS("restless"),
        /** Nothing of these. */
        QUIET("quiet");

        private final String word;

        Attention(String word) {
            this.word = word;
        }

        /** The word in JSON results. */
        public String word() {
            return word;
        }
    }

    /** The number of the characteristic. */
    public String number() {
        return result.number();
    }

    /** The unit of its limits and figures. */
    public Unit unit() {
        return result.characteristic().unit();
    }

    /** The worst verdict on the readings followed. */
    public Verdict verdict() {
        Verdict worst = Verdict.CONFORMING;
        for (Judgement judgement : judgements) {
            worst = worst.worse(judgement.verdict());
        }
        return worst;
    }

    /** How soon somebody must look at it. */
    public Attention attention() {
        if (verdict() == Verdict.NONCONFORMING) {
            return Attention.OUT;
        }
        if (drift.forecast().isReached()) {
            return Attention.REACHED;
        }
        if (drift.forecast().piece().isPresent()) {
            return Attention.AHEAD;
        }
        return signals.isEmpty() && verdict() == Verdict.CONFORMING ? Attention.QUIET : Attention.RESTLESS;
    }
}
