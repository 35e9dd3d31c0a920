package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.remark.Remark;

/** Takes what a readings file hands on, in the order of the file. */
interface ReadingSink {

    /**
     * A reading that could be read and fits the plan.
     *
     * @param part the piece
     * @param reading what was read on it
     * @param where where it stands
     */
    void reading(String part, Reading reading, Fault.Where where);

    /** Something that could not be used. */
    void refuse(Fault fault);

    /** Something to know. */
    void notice(Fault.Where where, Remark remark);
}
