package io.github.firstoff.report.section;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.DocumentInfo;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.SheetFoot;
import io.github.firstoff.report.model.SheetHead;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.words.Labels;
import java.util.List;
import java.util.Optional;

/** What stands around the content of a sheet about an assembly: head, foot, the hand at the edge. */
public final class StudyFrame {
    private static final int HASH_DIGITS = 12;

    private final String kind;
    private final String part;
    private final String name;
    private final Optional<Hand> hand;
    private final Provenance provenance;
    private final String revision;
    private final String batch;
    private final String title;

    /**
     * A frame.
     *
     * @param kind what kind of sheet it is
     * @param part the part number; may be empty
     * @param name what the assembly is called
     */
    public StudyFrame(String kind, String part, String name, Optional<Hand> hand, Provenance provenance) {
        this(kind, part, name, hand, provenance, "", "", kind + ", " + name);
    }

    private StudyFrame(
            String kind,
            String part,
            String name,
            Optional<Hand> hand,
            Provenance provenance,
            String revision,
            String batch,
            String title) {
        this.revision = revision;
        this.batch = batch;
        this.title = title;
        this.kind = kind;
        this.part = part;
        this.name = name;
        this.hand = hand;
        this.provenance = provenance;
    }

    /**
     * The same for a part at a revision.
     *
     * @param newRevision the revision of its drawing
     * @param newBatch the batch or batches that the sheet is about
     * @param newTitle what the file calls itself
     */
    public StudyFrame about(String newRevision, String newBatch, String newTitle) {
        return new StudyFrame(kind, part, name, hand, provenance, newRevision, newBatch, newTitle);
    }

    /** The whole sheet around these blocks. */
    public ReportModel around(PaperSize paper, String rule, String subject, List<Block> blocks) {
        String hash = provenance.shortHash();
        return new ReportModel(
                paper,
                kind,
                "",
                new SheetHead(
                        part.isEmpty() ? name : part,
                        part.isEmpty() ? "" : name,
                        revision,
                        batch,
                        hand.map(StudyFrame::edge).orElse(io.github.firstoff.report.model.Hand.NONE)),
                new SheetFoot(rule, provenance.program(), hash.length() == HASH_DIGITS ? hash : ""),
                new DocumentInfo(title, "", subject, Labels.spoken(), provenance.madeAt()),
                blocks);
    }

    private static io.github.firstoff.report.model.Hand edge(Hand hand) {
        return switch (hand) {
            case PORT -> io.github.firstoff.report.model.Hand.PORT;
            case STARBOARD -> io.github.firstoff.report.model.Hand.STARBOARD;
            case LEFT -> io.github.firstoff.report.model.Hand.LEFT;
            case RIGHT -> io.github.firstoff.report.model.Hand.RIGHT;
        };
    }
}
