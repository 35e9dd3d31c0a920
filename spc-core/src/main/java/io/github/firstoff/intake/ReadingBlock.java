package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import java.util.List;

/**
 * Readings that follow each other in a file. Files of any size are handed on in such blocks, so that whoever only counts or copies
 * needs no more memory for a large file than for a small one.
 *
 * @param file the file's name as the user gave it
 * @param readings the readings of whole rows, in the order of the file
 */
public record ReadingBlock(String file, List<OfPart> readings) {
    /** Copies the list. */
    public ReadingBlock {
        readings = List.copyOf(readings);
    }

    /**
     * A reading on a piece.
     *
     * @param part the piece
     * @param reading what was read
     */
    public record OfPart(String part, Reading reading) {}
}
