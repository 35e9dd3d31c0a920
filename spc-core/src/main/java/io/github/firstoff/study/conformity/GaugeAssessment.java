package io.github.firstoff.study.conformity;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Whether a gauge is fine enough for a characteristic.
 *
 * @param characteristic the number of the characteristic
 * @param gauge the number of the gauge
 * @param grade how the uncertainty stands to the tolerance
 * @param ratio T/(2U), to 34 digits; empty without two bounds or without a stated uncertainty
 * @param capabilityIndex C_m = T/(4u) (JCGM 106:2012, 7.6.3), to 34 digits; equal to the ratio where k = 2
 * @param statement the ratio and what it rests on, in one sentence; empty where there is no ratio
 * @param remarks what an inspector should know, in sentences without their full stop; empty if nothing
 */
public record GaugeAssessment(
        String characteristic,
        String gauge,
        Grade grade,
        Optional<BigDecimal> ratio,
        Optional<BigDecimal> capabilityIndex,
        Optional<String> statement,
        List<Remark> remarks) {

    /** Copies the list. */
    public GaugeAssessment {
        remarks = List.copyOf(remarks);
    }

    /** What an inspector should know, in English. */
    public List<String> cautions() {
        return Remark.english(remarks);
    }

    /** How an uncertainty stands to a tolerance. */
    public enum Grade {
        /** Small enough for any decision rule. */
        ADEQUATE("adequate"),
        /** So large that readings near a limit decide little. */
        COARSE("coarse"),
        /** Too large for the tolerance. */
        TOO_COARSE("too coarse"),
        /** There is no width of tolerance or no stated uncertainty to compare. */
        NOT_COMPARED("not compared");

        private final String word;

        Grade(String word) {
            this.word = word;
        }

        /** The word on sheets and in results. */
        public String word() {
            return word;
        }
    }
}
