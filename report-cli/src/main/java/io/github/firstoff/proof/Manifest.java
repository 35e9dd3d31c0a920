package io.github.firstoff.proof;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How a sheet can be made again: by what command, from which files in which order, at what time, with which choices. Carried by every
 * sheet as {@value #NAME}.
 *
 * @param command the command, such as {@code batch}
 * @param program the program with its version
 * @param madeAt the time of the sheet
 * @param options choices of the command line that change the sheet, by name
 * @param inputs the files, in the order in which they were read
 */
public record Manifest(
        String command, String program, Instant madeAt, Map<String, String> options, List<CarriedFile> inputs) {
    /** Its name among the attachments. */
    public static final String NAME = "manifest.json";

    /** The schema's name. */
    public static final String SCHEMA = "firstoff-manifest-1";

    /** Copies the collections. */
    public Manifest {
        options = Collections.unmodifiableMap(new LinkedHashMap<>(options));
        inputs = List.copyOf(inputs);
    }

    /** The document. */
    public byte[] json() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = new JsonFactory().createGenerator(bytes)) {
            DefaultIndenter lines = new DefaultIndenter("  ", "\n");
            out.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            out.writeStartObject();
            out.writeStringField("schema", SCHEMA);
            out.writeStringField("command", command);
            out.writeStringField("program", program);
            out.writeStringField("madeAt", madeAt.toString());
            out.writeObjectFieldStart("options");
            for (Map.Entry<String, String> option : options.entrySet()) {
                out.writeStringField(option.getKey(), option.getValue());
            }
            out.writeEndObject();
            out.writeArrayFieldStart("inputs");
            for (CarriedFile input : inputs) {
                out.writeStartObject();
                out.writeStringField("role", word(input.role()));
                out.writeStringField("name", input.name());
                out.writeNumberField("bytes", input.size());
                out.writeStringField("sha256", input.sha256());
                if (input.attachment().isPresent()) {
                    out.writeStringField("attachment", input.attachment().get());
                } else {
                    out.writeNullField("attachment");
                }
                out.writeEndObject();
            }
            out.writeEndArray();
            out.writeEndObject();
        } catch (IOException fault) {
            throw new UncheckedIOException("writing into memory failed", fault);
        }
        bytes.write('\n');
        return bytes.toByteArray();
    }

    /**
     * Reads the document.
     *
     * @throws IOException if it is none
     */
    static Manifest read(byte[] bytes) throws IOException {
        Object document = Json.parse(bytes);
        if (!Json.text(document, "schema").equals(Optional.of(SCHEMA))) {
            throw new IOException("it is not of the schema " + SCHEMA);
        }
        Map<String, String> options = new LinkedHashMap<>();
        if (Json.member(document, "options").orElse(Json.Nothing.NOTHING) instanceof Map<?, ?> given) {
            given.forEach((name, value) -> options.put(name.toString(), value.toString()));
        }
        List<CarriedFile> inputs = new ArrayList<>();
        for (Object input : Json.list(document, "inputs")) {
            inputs.add(new CarriedFile(
                    role(required(input, "role")),
                    required(input, "name"),
                    size(required(input, "bytes")),
                    required(input, "sha256"),
                    Json.text(input, "attachment")));
        }
        try {
            return new Manifest(
                    required(document, "command"),
                    required(document, "program"),
                    Instant.parse(required(document, "madeAt")),
                    options,
                    inputs);
        } catch (DateTimeException fault) {
            throw new IOException("its time cannot be read", fault);
        }
    }

    private static String required(Object object, String name) throws IOException {
        return Json.text(object, name).orElseThrow(() -> new IOException("it lacks \"" + name + "\""));
    }

    private static long size(String written) throws IOException {
        try {
            return Long.parseLong(written);
        } catch (NumberFormatException fault) {
            throw new IOException("a size in it is no number of bytes", fault);
        }
    }

    private static CarriedFile.Role role(String word) throws IOException {
        return Arrays.stream(CarriedFile.Role.values())
                .filter(role -> word(role).equals(word))
                .findFirst()
                .orElseThrow(() -> new IOException("it names a file with the unknown role \"" + word + "\""));
    }

    private static String word(CarriedFile.Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }
}
