package io.github.firstoff.intake;

import java.io.IOException;
import java.util.Optional;

/**
 * One kind of file from which a plan can be made: one class that implements this, and one line in {@link PlanSources}. It only says
 * what stands where; whether that makes a plan is asked elsewhere, in the same way for all.
 */
interface PlanSource {

    /** The word for it, for example {@code csv}. */
    String word();

    /** Whether people typed it, so that commas may be decimal marks and figures may stand in columns of their own. */
    default boolean isTable() {
        return true;
    }

    /** Whether an input that begins like this is of the kind. */
    boolean recognises(Beginning beginning);

    /**
     * What the input says, row by row.
     *
     * @param bytes the input, from its first byte
     * @param library the QIF documents among all inputs of the run
     * @param sheet which sheet of a workbook to read, where the user says it
     * @param faults takes what cannot be understood, with its place, and what is to be known
     * @throws IOException if the input cannot be read any further; a {@link TextRefused} carries the reason
     */
    PlanTable read(InputBytes bytes, QifLibrary library, Optional<String> sheet, FaultCollector faults)
            throws IOException;
}
