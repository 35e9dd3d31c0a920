package io.github.firstoff.command;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import io.github.firstoff.intake.MappingDraft;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A proposed mapping and the table that it gives as JSON (docs/schemas/mapping-proposal.schema.json). */
final class MappingListing {
    private static final JsonFactory FACTORY =
            JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

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
        try {
            JsonGenerator out = FACTORY.createGenerator(writer);
            out.setPrettyPrinter(new DefaultPrettyPrinter()
                    .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                    .withArrayIndenter(new DefaultIndenter("  ", "\n")));
            out.writeStartObject();
            out.writeStringField("command", "mapping");
            out.writeBooleanField("complete", draft.isComplete());
            // The file as it would be written, so that whoever takes it out of here has the same bytes.
            out.writeFieldName("mapping");
            out.writeRawValue(draft.text().strip());
            out.writeObjectFieldStart("intake");
            out.writeNumberField("rowsRead", draft.intake().rows().read());
            out.writeNumberField("used", draft.intake().rows().used());
            out.writeNumberField("refused", draft.intake().rows().refused());
            out.writeNumberField("explained", draft.intake().rows().explained());
            out.writeEndObject();
            out.writeArrayFieldStart("readings");
            for (MappingDraft.Entry each : draft.entries()) {
                entry(out, each);
            }
            out.writeEndArray();
            texts(out, "unmatchedNames", draft.unmatchedNames());
            out.writeArrayFieldStart("notFound");
            for (ResolvedCharacteristic each : draft.notFound()) {
                out.writeStartObject();
                characteristic(out, each);
                out.writeEndObject();
            }
            out.writeEndArray();
            texts(out, "refused", draft.intake().refused().lines());
            texts(
                    out,
                    "notices",
                    draft.intake().notices().stream().map(Notice::line).toList());
            if (written != null) {
                out.writeStringField("written", written.toString());
            }
            out.writeEndObject();
            out.writeRaw('\n');
            out.flush();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static void entry(JsonGenerator out, MappingDraft.Entry each) throws IOException {
        out.writeStartObject();
        out.writeNumberField("line", each.line());
        out.writeStringField("part", each.part());
        out.writeStringField("name", each.name());
        characteristic(out, each.characteristic());
        out.writeStringField("value", each.value());
        out.writeStringField("matchedBy", each.matchedBy());
        out.writeEndObject();
    }

    private static void characteristic(JsonGenerator out, ResolvedCharacteristic each) throws IOException {
        out.writeStringField("characteristic", each.number());
        out.writeStringField("feature", each.characteristic().feature());
        out.writeStringField("requirement", each.characteristic().printed());
    }

    private static void texts(JsonGenerator out, String name, List<? extends String> texts) throws IOException {
        out.writeArrayFieldStart(name);
        for (String text : texts) {
            out.writeString(text);
        }
        out.writeEndArray();
    }
}
