package io.github.firstoff.plan;

import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.Requirement;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * One numbered characteristic of the drawing.
 *
 * @param number its balloon number: the key by which readings name it
 * @param feature what it is about, in words
 * @param requirement what the drawing requires
 * @param printed the requirement exactly as the plan wrote it
 * @param importance critical, major or minor
 * @param gauge the number of the gauge that the plan foresees
 * @param study how it is followed through a batch
 * @param options what else the plan says of it
 */
public record Characteristic(
        String number,
        String feature,
        Requirement requirement,
        String printed,
        Importance importance,
        Optional<String> gauge,
        Optional<Study> study,
        Options options) {

    /**
     * What few characteristics need.
     *
     * @param form hole or shaft, where the requirement does not tell
     * @param target where the process aims, if not at the middle
     * @param sizeFeature the number of the feature of size that gives a bonus
     * @param decisionRule the decision rule for this characteristic, if not the plan's
     * @param extent whether every piece or only a sample is inspected for it
     * @param repeated whether it may be measured several times on one piece
     */
    public record Options(
            Optional<Drawing.Form> form,
            Optional<BigDecimal> target,
            Optional<String> sizeFeature,
            Optional<RuleChoice> decisionRule,
            Extent extent,
            boolean repeated) {

        /** Nothing out of the ordinary. */
        public static final Options NONE = new Options(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Extent.EVERY_PIECE, false);
    }

    /** How many pieces are inspected for a characteristic. */
    public enum Extent {
        /** Every piece that readings name: one without a reading leaves the sheet incomplete. */
        EVERY_PIECE("every"),
        /** A sample: at least one piece; others may lack it. */
        SAMPLE("sample");

        private final String word;

        Extent(String word) {
            this.word = word;
        }

        /** The word in plan files. */
        public String word() {
            return word;
        }
    }

    /** Which rule decides. */
    public enum RuleChoice {
        /** Simple acceptance: a reading within the limits conforms. */
        SIMPLE("simple"),
        /** ISO 14253-1: proven only inside the limits narrowed by the expanded uncertainty. */
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
}
