package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.Index;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Indices and their intervals in the JSON result. */
final class IndicesJson {
    private IndicesJson() {}

    static void write(JsonGenerator out, Capability capability) throws IOException {
        out.writeObjectFieldStart("indices");
        for (Index index : capability.indices()) {
            String name = jsonName(index);
            if (index.value().isPresent() && Double.isFinite(index.value().getAsDouble())) {
                out.writeNumberField(name, index.value().getAsDouble());
            } else {
                out.writeNullField(name);
            }
        }
        out.writeEndObject();
        out.writeObjectFieldStart("intervals");
        out.writeNumberField("level", capability.level());
        for (Index index : capability.indices()) {
            interval(out, index);
        }
        out.writeEndObject();
    }

    /** The distribution that the evidence chose, and the performance indices by its percentiles; equal to the others if normal. */
    static void writeFitted(JsonGenerator out, Capability chosen) throws IOException {
        out.writeObjectFieldStart("fitted");
        out.writeStringField(
                "distribution", chosen.distribution().method().family().name());
        out.writeStringField("reason", chosen.distribution().reason());
        for (Index index : chosen.indices()) {
            if (index.name().startsWith("P")
                    && index.value().isPresent()
                    && Double.isFinite(index.value().getAsDouble())) {
                out.writeNumberField(jsonName(index), index.value().getAsDouble());
            }
        }
        out.writeEndObject();
    }

    /** The reasons of the indices that have no value, by JSON name. */
    static List<Index> missing(Capability capability) {
        return capability.indices().stream()
                .filter(index -> index.value().isEmpty())
                .toList();
    }

    static String jsonName(Index index) {
        return index.name().toLowerCase(Locale.ROOT);
    }

    private static void interval(JsonGenerator out, Index index) throws IOException {
        if (index.interval().isEmpty()) {
            out.writeNullField(jsonName(index));
            return;
        }
        out.writeArrayFieldStart(jsonName(index));
        end(out, index.interval().get().lower());
        end(out, index.interval().get().upper());
        out.writeEndArray();
    }

    private static void end(JsonGenerator out, double value) throws IOException {
        if (Double.isFinite(value)) {
            out.writeNumber(value);
        } else {
            out.writeNull();
        }
    }
}
