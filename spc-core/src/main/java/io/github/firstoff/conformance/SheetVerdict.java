package io.github.firstoff.conformance;

/** What can be said of a whole inspection. */
public enum SheetVerdict {
    /** Everything required was measured and conforms. */
    ACCEPTED("accepted"),
    /** Something does not conform. */
    REJECTED("rejected"),
    /** Nothing is nonconforming, but something is not proven. */
    INCONCLUSIVE("inconclusive"),
    /** Nothing is nonconforming, but something was not measured. */
    INCOMPLETE("incomplete");

    private final String word;

    SheetVerdict(String word) {
        this.word = word;
    }

    /** The word in JSON results. */
    public String word() {
        return word;
    }

    /** The verdict on an inspection whose worst characteristic has this one. */
    static SheetVerdict ofWorst(Verdict worst) {
        return switch (worst) {
            case CONFORMING -> ACCEPTED;
            case INCONCLUSIVE -> INCONCLUSIVE;
            case NOT_MEASURED -> INCOMPLETE;
            case NONCONFORMING -> REJECTED;
        };
    }
}
