package io.github.firstoff.report.pdf;

import java.util.List;

/**
 * What came of setting a sheet.
 *
 * @param pages    number of pages written
 * @param messages what somebody should know: characters that the typeface lacks and that are printed as a box, a name
 *                 shortened, a table narrowed. Empty when all is well.
 */
public record RenderedSheet(int pages, List<String> messages) {
    /** Copies the list. */
    public RenderedSheet {
        messages = List.copyOf(messages);
    }
}
