package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.OptionalDouble;

/** Statistics as numbers of the JSON result; what is missing or not finite is {@code null}. */
final class Figures {
    private Figures() {}

    static void write(JsonGenerator out, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            out.writeNumberField(name, value);
        } else {
            out.writeNullField(name);
        }
    }

    static void write(JsonGenerator out, String name, OptionalDouble value) throws IOException {
        write(out, name, value.orElse(Double.NaN));
    }
}
