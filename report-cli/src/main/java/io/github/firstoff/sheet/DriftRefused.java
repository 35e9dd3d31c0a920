package io.github.firstoff.sheet;

/** Readings that nothing can be followed through. */
public final class DriftRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** The reason, with its place. */
    public DriftRefused(String reason) {
        super(reason);
    }

    /** What is wrong and where. */
    public String reason() {
        return String.valueOf(getMessage());
    }
}
