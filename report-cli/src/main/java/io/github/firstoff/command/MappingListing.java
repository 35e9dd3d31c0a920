package io.github.firstoff.command;

import io.github.firstoff.intake.MappingDraft;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.sheet.JsonDocument;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A proposed mapping and the table that it gives as JSON (docs/schemas/mapping-proposal.schema.json). */
final class MappingListing {
    private final MappingDraft draft;
    private final @Nullable Path written;

    /**
     * A listing.
     *
     * @param written where the mapping was written; null if nowhere
     */
    MappingListing(MappingDraft draft, @Nullable Path written) {
        this.draft = draft;
        this.written = written;
    }

    /** Writes it as one document and a line end; the writer stays open. */
    void json(Writer writer) {
        JsonDocument.write(writer, out -> {
            out.text("command", "mapping");
            out.flag("complete", draft.isComplete());
            // The file as it would be written, so that whoever takes it out of here has the same bytes.
            out.raw("mapping", draft.text().strip());
            out.object("intake", () -> {
                out.whole("rowsRead", draft.intake().rows().read());
                out.whole("used", draft.intake().rows().used());
                out.whole("refused", draft.intake().rows().refused());
                out.whole("explained", draft.intake().rows().explained());
            });
            out.array("readings", () -> {
                for (MappingDraft.Entry each : draft.entries()) {
                    out.item(() -> entry(out, each));
                }
            });
            out.texts("unmatchedNames", List.copyOf(draft.unmatchedNames()));
            out.array("notFound", () -> {
                for (ResolvedCharacteristic each : draft.notFound()) {
                    out.item(() -> characteristic(out, each));
                }
            });
            out.texts("refused", draft.intake().refused().lines());
            out.texts(
                    "notices",
                    draft.intake().notices().stream().map(Notice::line).toList());
            if (written != null) {
                out.text("written", written.toString());
            }
        });
    }

    private static void entry(JsonDocument out, MappingDraft.Entry each) throws IOException {
        out.whole("line", each.line());
        out.text("part", each.part());
        out.text("name", each.name());
        characteristic(out, each.characteristic());
        out.text("value", each.value());
        out.text("matchedBy", each.matchedBy());
    }

    private static void characteristic(JsonDocument out, ResolvedCharacteristic each) throws IOException {
        out.text("characteristic", each.number());
        out.text("feature", each.characteristic().feature());
        out.text("requirement", each.characteristic().printed());
    }
}
