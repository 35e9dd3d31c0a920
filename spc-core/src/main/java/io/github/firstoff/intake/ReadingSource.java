package io.github.firstoff.intake;

import java.io.IOException;
import java.io.Reader;

/**
 * One format in which readings arrive. Keeps nothing: whatever it reads it hands to the check at once, in the order of the file, and
 * the check hands it on.
 */
interface ReadingSource {

    /**
     * Hands on everything in a text. Whatever cannot be used is refused, and reading goes on after it where the format allows.
     *
     * @param file the file's name, for messages
     * @param text the text
     * @param check holds each row against the plan
     * @throws IOException if the text cannot be read any further; a {@link TextRefused} carries the reason
     */
    void read(String file, Reader text, RowCheck check) throws IOException;
}
