package io.github.firstoff.plan;

import java.util.Locale;
import java.util.Optional;

/** How much hangs on a characteristic, in the trade's words. */
public enum Importance {
    /** Its failure can hurt someone or stop the product from working. */
    CRITICAL,
    /** Its failure is likely to impair function. */
    MAJOR,
    /** Everything else. */
    MINOR;

    /** The word in files and on sheets. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The class a word means, whatever its letter case; empty if none. */
    public static Optional<Importance> parse(String text) {
        String wanted = text.strip().toUpperCase(Locale.ROOT);
        for (Importance importance : values()) {
            if (importance.name().equals(wanted)) {
                return Optional.of(importance);
            }
        }
        return Optional.empty();
    }
}
