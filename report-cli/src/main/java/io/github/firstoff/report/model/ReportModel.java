package io.github.firstoff.report.model;

import java.util.List;

/**
 * One sheet, of any number of pages: everything that will be printed, and nothing that is not.
 *
 * <p>Equal models give the same file to the last byte.
 *
 * @param paper    paper to lay out for
 * @param kind     what kind of sheet this is, such as "First article inspection"
 * @param number   the number of the sheet, or empty
 * @param head     part, revision, batch and hand
 * @param foot     decision rule, program and data hash
 * @param document properties of the file
 * @param blocks   what the sheet says, in order
 */
public record ReportModel(
        PaperSize paper,
        String kind,
        String number,
        SheetHead head,
        SheetFoot foot,
        DocumentInfo document,
        List<Block> blocks) {
    /** Copies the list; refuses a sheet without a kind or without content. */
    public ReportModel {
        blocks = List.copyOf(blocks);
        if (kind.isBlank()) {
            throw new IllegalArgumentException("a sheet says what kind of sheet it is");
        }
        if (blocks.isEmpty()) {
            throw new IllegalArgumentException("a sheet has at least one block");
        }
    }

    /** The same sheet with other content. */
    public ReportModel with(List<Block> others) {
        return new ReportModel(paper, kind, number, head, foot, document, others);
    }
}
