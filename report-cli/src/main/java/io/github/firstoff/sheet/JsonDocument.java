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
public final class JsonDocument {
    private static final JsonFactory FACTORY =
            JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

    private final JsonGenerator out;

    private JsonDocument(JsonGenerator out) {
        this.out = out;
    }

    /** What stands in an object or a list. */
    @FunctionalInterface
    public interface Content {
        /** Writes it. */
        void write() throws IOException;
    }

    /** What makes the document. */
    @FunctionalInterface
    public interface Author {
        /**
         * Writes what stands in the document.
         *
         * @param document takes it
         */
        void write(JsonDocument document) throws IOException;
    }

    /**
     * Writes a document and a line end.
     *
     * @param target takes them; it stays open
     * @param author writes what stands in the document
     */
    public static void write(Writer target, Author author) {
        generate(target, generator -> {
            generator.writeStartObject();
            author.write(new JsonDocument(generator));
            generator.writeEndObject();
        });
    }

    /** What makes the document with a generator of its own. */
    interface Generation {
        void write(JsonGenerator out) throws IOException;
    }

    /** Writes a document and a line end as every document of the program is set; the writer stays open. */
    static void generate(Writer target, Generation generation) {
        try (JsonGenerator generator = FACTORY.createGenerator(target)) {
            DefaultIndenter lines = new DefaultIndenter("  ", "\n");
            generator.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            generation.write(generator);
            generator.flush();
            target.write('\n');
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /**
     * An object.
     *
     * @param name its name
     * @param content writes what stands in it
     * @throws IOException if the writer does not take it
     */
    public void object(String name, Content content) throws IOException {
        out.writeObjectFieldStart(name);
        content.write();
        out.writeEndObject();
    }

    /**
     * A list of what the content writes as items.
     *
     * @param name its name
     * @param content writes what stands in it
     * @throws IOException if the writer does not take it
     */
    public void array(String name, Content content) throws IOException {
        out.writeArrayFieldStart(name);
        content.write();
        out.writeEndArray();
    }

    /**
     * An object in a list.
     *
     * @param content writes what stands in it
     * @throws IOException if the writer does not take it
     */
    public void item(Content content) throws IOException {
        out.writeStartObject();
        content.write();
        out.writeEndObject();
    }

    /**
     * A text.
     *
     * @param name its name
     * @param value its value
     * @throws IOException if the writer does not take it
     */
    public void text(String name, String value) throws IOException {
        out.writeStringField(name, value);
    }

    /**
     * A text; {@code null} where there is none.
     *
     * @param name its name
     * @param value its value
     * @throws IOException if the writer does not take it
     */
    public void text(String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(name, value.get());
        } else {
            out.writeNullField(name);
        }
    }

    void decimal(String name, BigDecimal value) throws IOException {
        out.writeStringField(name, value.toPlainString());
    }

    /**
     * An exact decimal as text; {@code null} where there is none.
     *
     * @param name its name
     * @param value its value
     * @throws IOException if the writer does not take it
     */
    public void decimal(String name, Optional<BigDecimal> value) throws IOException {
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

    /**
     * A whole number.
     *
     * @param name its name
     * @param value its value
     * @throws IOException if the writer does not take it
     */
    public void whole(String name, long value) throws IOException {
        out.writeNumberField(name, value);
    }

    /**
     * True or false.
     *
     * @param name its name
     * @param value its value
     * @throws IOException if the writer does not take it
     */
    public void flag(String name, boolean value) throws IOException {
        out.writeBooleanField(name, value);
    }

    /**
     * What has no value.
     *
     * @param name its name
     * @throws IOException if the writer does not take it
     */
    public void nothing(String name) throws IOException {
        out.writeNullField(name);
    }

    /**
     * A list of texts.
     *
     * @param name its name
     * @param values the texts
     * @throws IOException if the writer does not take it
     */
    public void texts(String name, List<String> values) throws IOException {
        out.writeArrayFieldStart(name);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }

    /**
     * A value that is a document already.
     *
     * @param name its name
     * @param json the value in JSON, set as it is
     * @throws IOException if the writer does not take it
     */
    public void raw(String name, String json) throws IOException {
        out.writeFieldName(name);
        out.writeRawValue(json);
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
