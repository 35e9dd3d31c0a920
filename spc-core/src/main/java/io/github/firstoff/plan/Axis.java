package io.github.firstoff.plan;

import java.util.Locale;
import java.util.Optional;

/** An axis of the part's coordinate system. */
public enum Axis {
    /** The first. */
    X,
    /** The second. */
    Y,
    /** The third. */
    Z;

    /** The word in files and on sheets. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The axis a word means, whatever its letter case; empty if none. */
    public static Optional<Axis> parse(String text) {
        String wanted = text.strip().toUpperCase(Locale.ROOT);
        for (Axis axis : values()) {
            if (axis.name().equals(wanted)) {
                return Optional.of(axis);
            }
        }
        return Optional.empty();
    }
}
