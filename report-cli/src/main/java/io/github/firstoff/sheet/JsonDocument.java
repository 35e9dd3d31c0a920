package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes one JSON document: exact decimals as text, statistics as numbers, what has no value as null. */
final class JsonDocument {
    private static final JsonFactory FACTORY =
            JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

    private final JsonGenerator out;

    private JsonDocument(JsonGenerator out) {
        this.out = out;
    }

    /** What stands in an object. */
    @FunctionalInterface
    interface Content {
        void write() throws IOException;
    }

    /** What makes the document. */
    @FunctionalInterface
    interface Author {
        void write(JsonDocument document) throws IOException;
    }

    /** Writes a document and a line end; the writer stays open. */
    static void write(Writer target, Author author) {
        try (JsonGenerator generator = FACTORY.createGenerator(target)) {
            DefaultIndenter lines = new DefaultIndenter("  ", "\n");
            generator.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            generator.writeStartObject();
            author.write(new JsonDocument(generator));
            generator.writeEndObject();
            generator.flush();
            target.write('\n');
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    void object(String name, Content content) throws IOException {
        out.writeObjectFieldStart(name);
        content.write();
        out.writeEndObject();
    }

    void array(String name, Content content) throws IOException {
        out.writeArrayFieldStart(name);
        content.write();
        out.writeEndArray();
    }

    void item(Content content) throws IOException {
        out.writeStartObject();
        content.write();
        out.writeEndObject();
    }

    void text(String name, String value) throws IOException {
        out.writeStringField(name, value);
    }

    void text(String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(name, value.get());
        } else {
            out.writeNullField(name);
        }
    }

    void decimal(String name, BigDecimal value) throws IOException {
        out.writeStringField(name, value.toPlainString());
    }

    void decimal(String name, Optional<BigDecimal> value) throws IOException {
        text(name, value.map(BigDecimal::toPlainString));
    }

    void number(String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            out.writeNumberField(name, value);
        } else {
            out.writeNullField(name);
        }
    }

    void number(String name, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            number(name, value.getAsDouble());
        } else {
            out.writeNullField(name);
        }
    }

    /** A decimal as a number: a computed figure that is exact because it was rounded. */
    void figure(String name, Optional<BigDecimal> value) throws IOException {
        if (value.isPresent()) {
            out.writeNumberField(name, value.get());
        } else {
            out.writeNullField(name);
        }
    }

    /** Two numbers, each {@code null} where it is not finite. */
    void numbers(String name, double first, double second) throws IOException {
        out.writeArrayFieldStart(name);
        for (double value : new double[] {first, second}) {
            if (Double.isFinite(value)) {
                out.writeNumber(value);
            } else {
                out.writeNull();
            }
        }
        out.writeEndArray();
    }

    void whole(String name, long value) throws IOException {
        out.writeNumberField(name, value);
    }

    void flag(String name, boolean value) throws IOException {
        out.writeBooleanField(name, value);
    }

    void nothing(String name) throws IOException {
        out.writeNullField(name);
    }

    void texts(String name, List<String> values) throws IOException {
        out.writeArrayFieldStart(name);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }

    void provenance(Provenance from) throws IOException {
        object("madeFrom", () -> {
            text("program", from.program());
            text("sha256", from.dataHash());
            texts("files", from.files());
            whole("rows", from.rows().read());
        });
    }
}
