package io.github.firstoff.intake;

/** One element of a QIF document cannot be used; the rest can. */
final class QifFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Fault fault;

    QifFault(Fault fault) {
        super(fault.line());
        this.fault = fault;
    }

    Fault fault() {
        return fault;
    }
}
