package io.github.firstoff.intake;

import java.io.IOException;

/**
 * One format in which readings arrive: one class that implements this, and one line in {@link ReadingFormat}.
 *
 * <p>A source keeps nothing that grows with the file. Each row goes to the check as soon as it was read, in the order of the file,
 * between {@link Rows#begin} and {@link Rows#end}; what is refused between the two concerns that row, and what is refused outside
 * concerns the file as a whole.
 */
interface ReadingSource {

    /** Whether an input that begins like this has the format. */
    boolean recognises(Beginning beginning);

    /** Whether every reading stands in a line of text, so that a file that is still being written can be read up to its last whole line. */
    default boolean isOfLines() {
        return false;
    }

    /**
     * Hands on every row of an input. Whatever cannot be used is refused, and reading goes on after it where the format allows.
     *
     * @param bytes the input, from its first byte; text comes from it through {@link TextReader#of}, and the source need not read it to
     *     its end
     * @param check holds each row against the plan
     * @throws IOException if the input cannot be read any further; a {@link TextRefused} carries the reason
     */
    void read(InputBytes bytes, RowCheck check) throws IOException;
}
