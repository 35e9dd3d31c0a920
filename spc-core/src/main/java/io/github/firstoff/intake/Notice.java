package io.github.firstoff.intake;

import io.github.firstoff.remark.Remark;

/**
 * Something about an input that does not hinder but should be known: a key that was not understood and not used, a gauge without
 * particulars.
 *
 * @param where where it is
 * @param remark what there is to know
 */
public record Notice(Fault.Where where, Remark remark) {

    /** What there is to know, in English. */
    public String message() {
        return remark.english();
    }

    /** One line, for example {@code plan.json:14:7, characteristic 3: "colour" is not understood and was not used}. */
    public String line() {
        return told().english();
    }

    /** The same, to be worded in the language of a sheet. */
    public Remark told() {
        return Remark.of("notice.at", "{0}: {1}", where.place(), remark);
    }

    @Override
    public String toString() {
        return line();
    }
}
