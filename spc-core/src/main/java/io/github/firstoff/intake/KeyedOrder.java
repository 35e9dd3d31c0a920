package io.github.firstoff.intake;

import java.util.Locale;
import java.util.Optional;

/** In which order a guided session asks. */
public enum KeyedOrder {
    /** Every characteristic of one piece, then the next piece. */
    PIECE("piece"),
    /** One characteristic on every piece, then the next characteristic: one gauge in the hand, one setting. */
    CHARACTERISTIC("characteristic");

    private final String word;

    KeyedOrder(String word) {
        this.word = word;
    }

    /** The word on the command line and in journals. */
    public String word() {
        return word;
    }

    /** The order that a word means, whatever its letter case; empty if none. */
    public static Optional<KeyedOrder> parse(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        for (KeyedOrder order : values()) {
            if (order.word.equals(wanted)) {
                return Optional.of(order);
            }
        }
        return Optional.empty();
    }
}
