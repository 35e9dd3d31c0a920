package io.github.firstoff.intake;

/** Why a text is no number. Without a stack trace: it is thrown once per bad row and only its words matter. */
final class NumberRefused extends Exception {
    private static final long serialVersionUID = 1L;

    private final FaultKind kind;
    private final String expected;

    NumberRefused(FaultKind kind, String message, String expected) {
        super(message, null, false, false);
        this.kind = kind;
        this.expected = expected;
    }

    FaultKind kind() {
        return kind;
    }

    String message() {
        String message = getMessage();
        return message == null ? "" : message;
    }

    String expected() {
        return expected;
    }
}
