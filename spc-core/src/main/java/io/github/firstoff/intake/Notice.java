package io.github.firstoff.intake;

/**
 * Something about an input that does not hinder but should be known: a key that was not understood and not used, a gauge without
 * particulars.
 *
 * @param where where it is
 * @param message what there is to know
 */
public record Notice(Fault.Where where, String message) {

    /** One line, for example {@code plan.json:14:7, characteristic 3: "colour" is not understood and was not used}. */
    public String line() {
        return where + ": " + message;
    }

    @Override
    public String toString() {
        return line();
    }
}
