package io.github.firstoff.intake;

import java.io.IOException;

/** Carries a fault found while text is decoded through the libraries that pull the text. */
final class TextRefused extends IOException {
    private static final long serialVersionUID = 1L;

    private final transient Fault fault;

    TextRefused(Fault fault) {
        super(fault.line());
        this.fault = fault;
    }

    Fault fault() {
        return fault;
    }
}
