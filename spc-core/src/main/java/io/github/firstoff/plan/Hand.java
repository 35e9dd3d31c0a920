package io.github.firstoff.plan;

import java.util.Locale;
import java.util.Optional;

/** The hand of a part that exists as a mirrored pair. */
public enum Hand {
    /** Port: the left one. */
    PORT("port", true),
    /** Starboard: the right one. */
    STARBOARD("starboard", false),
    /** Left. */
    LEFT("left", true),
    /** Right. */
    RIGHT("right", false);

    private final String word;
    private final boolean left;

    Hand(String word, boolean left) {
        this.word = word;
        this.left = left;
    }

    /** The word in files and on sheets. */
    public String word() {
        return word;
    }

    /** Whether the part is the left one of its pair; its sheets carry their bar on the left edge. */
    public boolean isLeft() {
        return left;
    }

    /** The hand of the counterpart, in the same vocabulary. */
    public Hand opposite() {
        return switch (this) {
            case PORT -> STARBOARD;
            case STARBOARD -> PORT;
            case LEFT -> RIGHT;
            case RIGHT -> LEFT;
        };
    }

    /** The hand a word means, whatever its letter case; empty if none. */
    public static Optional<Hand> parse(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        for (Hand hand : values()) {
            if (hand.word.equals(wanted)) {
                return Optional.of(hand);
            }
        }
        return Optional.empty();
    }
}
