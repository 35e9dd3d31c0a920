package io.github.firstoff.intake;

/**
 * What a keyed reading is of.
 *
 * @param part the piece
 * @param characteristic the number
 * @param setting the setting; empty text for none
 */
record KeyedSubject(String part, String characteristic, String setting) {}
