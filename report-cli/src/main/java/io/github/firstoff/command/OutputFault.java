package io.github.firstoff.command;

/** The result could not be written; what was there before is untouched. */
final class OutputFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OutputFault(String message) {
        super(message);
    }

    OutputFault(String message, Throwable cause) {
        super(message, cause);
    }
}
