package io.github.firstoff.proof;

/**
 * One thing that a check found.
 *
 * @param holds whether it holds, does not, or was not or could not be checked
 * @param area what it is about, in a word for programs: {@code bytes}, {@code signature}, {@code inputs}, {@code result}, {@code pages}
 * @param says the finding in a sentence
 */
public record Finding(Holds holds, Area area, String says) {
    /** Whether something holds. */
    public enum Holds {
        /** It was checked and holds. */
        YES("holds"),
        /** It was checked and does not hold. */
        NO("does not hold"),
        /** It was not checked, and why. */
        NOT_CHECKED("not checked");

        private final String words;

        Holds(String words) {
            this.words = words;
        }

        /** In words. */
        public String words() {
            return words;
        }
    }

    /** What a finding is about. */
    public enum Area {
        /** The bytes of the file. */
        BYTES("bytes"),
        /** Signatures and certificates. */
        SIGNATURE("signature"),
        /** The files that the sheet carries. */
        INPUTS("inputs"),
        /** The figures and verdicts. */
        RESULT("result"),
        /** What is printed. */
        PAGES("pages");

        private final String word;

        Area(String word) {
            this.word = word;
        }

        /** The word for programs. */
        public String word() {
            return word;
        }
    }

    static Finding yes(Area area, String says) {
        return new Finding(Holds.YES, area, says);
    }

    static Finding no(Area area, String says) {
        return new Finding(Holds.NO, area, says);
    }

    static Finding open(Area area, String says) {
        return new Finding(Holds.NOT_CHECKED, area, says);
    }
}
