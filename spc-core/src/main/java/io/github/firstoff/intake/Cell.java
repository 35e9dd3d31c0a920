package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.math.BigDecimal;

/**
 * A value as a file states it.
 *
 * @param text the text, without surrounding space
 * @param form text, number or something else
 * @param where where it stands
 * @param marks which decimal mark a number in it has
 */
record Cell(String text, Form form, Where where, Marks marks) {
    /** A value of a format whose numbers have a decimal point. */
    Cell(String text, Form form, Where where) {
        this(text, form, where, Marks.FORMAT_POINT);
    }

    /** How a format states values. */
    enum Form {
        /** As text. */
        TEXT,
        /** As a JSON number. */
        NUMBER,
        /** As true, false or anything else that is neither text nor number. */
        OTHER
    }

    /** The number that it states, exactly. */
    BigDecimal number() throws NumberRefused {
        return form == Form.NUMBER ? ExactNumber.literal(text) : marks.number(text);
    }
}
