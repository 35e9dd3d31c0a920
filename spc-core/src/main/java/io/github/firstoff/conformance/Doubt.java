package io.github.firstoff.conformance;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Why a reading far outside its limits may be a slip and not the part. It changes nothing: the reading is kept and its verdict stands.
 *
 * @param explanations what would explain it, the likeliest first; empty if nothing does and the reading is merely very far out
 * @param remark all of it in one sentence
 */
public record Doubt(List<Explanation> explanations, Remark remark) {

    /** Copies the list. */
    public Doubt {
        explanations = List.copyOf(explanations);
    }

    /** All of it in one sentence, in English. */
    public String sentence() {
        return remark.english();
    }

    /**
     * One explanation.
     *
     * @param kind what kind of slip
     * @param words in words that follow "it", for example {@code looks like 51.953 instead of 5.1953}
     * @param meant the value that was probably meant, in the unit of the reading; empty where the value itself is right
     * @param characteristic the number of the characteristic that the value belongs to; empty where it belongs to its own
     */
    public record Explanation(Kind kind, Remark words, Optional<BigDecimal> meant, Optional<String> characteristic) {}

    /** The slips that are looked for. */
    public enum Kind {
        /** Two values of one piece exchanged. */
        SWAPPED("swapped"),
        /** The decimal point one to three places off. */
        DECIMAL_POINT("decimal-point"),
        /** A value in another unit. */
        UNIT("unit"),
        /** A minus too many or too few. */
        SIGN("sign"),
        /** Two neighbouring digits exchanged. */
        DIGITS("digits"),
        /** A value that fits another characteristic. */
        CHARACTERISTIC("characteristic");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The word in results. */
        public String word() {
            return word;
        }
    }
}
