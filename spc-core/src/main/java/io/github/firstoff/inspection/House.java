package io.github.firstoff.inspection;

import java.util.Optional;

/**
 * The house that issues sheets, as its sheets show it: who it is, its mark, and on what paper and in what language it prints. Nothing here
 * can change a verdict.
 *
 * @param firm its name and address
 * @param approvals what it is approved to, such as its quality system, in its own words
 * @param signOff a sentence of its own that stands where its sheets are signed
 * @param logo its mark
 * @param paper the paper that its printers hold
 * @param language the language of the labels, as a tag such as {@code de} (BCP 47)
 */
public record House(
        Job.Firm firm,
        Optional<String> approvals,
        Optional<String> signOff,
        Optional<Logo> logo,
        Optional<Paper> paper,
        Optional<String> language) {

    /** Sheets of paper that sheets can be laid out for. */
    public enum Paper {
        /** ISO 216 A4. */
        A4("a4"),
        /** US Letter, 8.5 inch by 11 inch. */
        LETTER("letter");

        private final String word;

        Paper(String word) {
            this.word = word;
        }

        /** The word in files and on the command line. */
        public String word() {
            return word;
        }
    }

    /** A mark, already held to what a sheet may contain: nothing in it runs, and nothing in it is fetched from elsewhere. */
    public static final class Logo {
        private final boolean vector;
        private final byte[] bytes;

        /**
         * A mark.
         *
         * @param vector whether it is drawn (SVG) or made of dots (PNG)
         * @param bytes the picture; copied
         */
        public Logo(boolean vector, byte[] bytes) {
            this.vector = vector;
            this.bytes = bytes.clone();
        }

        /** Whether it is drawn (SVG); else it is made of dots (PNG). */
        public boolean isVector() {
            return vector;
        }

        /** The picture, a copy. */
        public byte[] bytes() {
            return bytes.clone();
        }
    }
}
