package io.github.firstoff.keyed;

import java.io.IOException;

/**
 * Something to be confirmed before it happens.
 *
 * @param words what is asked, a sentence
 * @param onConfirm what is done then
 */
record Question(String words, Step onConfirm) {

    /** Something that is done once it is confirmed. */
    interface Step {
        /** Does it; a decision is on the disk when this returns. */
        void take() throws IOException;
    }
}
