package io.github.firstoff.tolerance;

import java.util.Optional;

/** Why a requirement cannot be read or resolved: in words for the person who wrote the plan. */
public final class RequirementFault extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String text;
    private final int position;
    private final String expected;

    /**
     * A fault at one place of the text.
     *
     * @param text the requirement as written
     * @param position the zero-based place of the fault in the text; -1 if it is not in the text
     * @param message what is wrong
     * @param expected what would be understood; empty if there is nothing to suggest
     */
    public RequirementFault(String text, int position, String message, String expected) {
        super(message);
        this.text = text;
        this.position = position;
        this.expected = expected;
    }

    /** The requirement as written. */
    public String text() {
        return text;
    }

    /** The zero-based place of the fault in the text; empty if it lies elsewhere. */
    public Optional<Integer> position() {
        return position < 0 ? Optional.empty() : Optional.of(position);
    }

    /** What would be understood; may be empty. */
    public String expected() {
        return expected;
    }
}
