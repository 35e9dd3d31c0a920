package io.github.firstoff.conformance;

/** What can be said of a reading or a characteristic, from best to worst: the verdict on several is the worst of them. */
public enum Verdict {
    /** It conforms under the decision rule. */
    CONFORMING("conforming"),
    /** Neither conformance nor nonconformance is proven. */
    INCONCLUSIVE("inconclusive"),
    /** Nothing was measured, so nothing is claimed. */
    NOT_MEASURED("not-measured"),
    /** It does not conform. */
    NONCONFORMING("nonconforming");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    /** The word in JSON results. */
    public String word() {
        return word;
    }

    /** The worse of two. */
    public Verdict worse(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
