package io.github.firstoff.proof;

/** A sheet, a key or a certificate that cannot be used; the message says why, for the person who gave it. */
public final class ProofRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** A refusal with its reason. */
    public ProofRefused(String message) {
        super(message);
    }

    /** A refusal with its reason and what brought it to light. */
    public ProofRefused(String message, Throwable cause) {
        super(message, cause);
    }
}
