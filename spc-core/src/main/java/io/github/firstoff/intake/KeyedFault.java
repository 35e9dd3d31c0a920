package io.github.firstoff.intake;

import java.io.IOException;

/** Keyed readings cannot be kept, for the reason that the message gives. What was confirmed before is on the disk. */
public final class KeyedFault extends IOException {
    private static final long serialVersionUID = 1L;

    KeyedFault(String message) {
        super(message);
    }

    KeyedFault(String message, Throwable cause) {
        super(message, cause);
    }
}
