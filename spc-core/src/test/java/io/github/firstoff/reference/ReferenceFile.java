package io.github.firstoff.reference;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Reads the reference files of charts, constants and indices; refuses a file that does not say where its values come from. */
public final class ReferenceFile {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    private ReferenceFile() {}

    public static JsonNode file(String path) {
        try (InputStream in = ReferenceFile.class.getResourceAsStream("/reference/" + path)) {
            JsonNode file = MAPPER.readTree(Objects.requireNonNull(in, path));
            for (String key : List.of("source", "edition", "made-by", "units", "tolerance")) {
                if (file.path(key).asText().isBlank()) {
                    throw new IllegalStateException(path + " does not state its " + key);
                }
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static JsonNode reference(String path, String id) {
        for (JsonNode c : file(path).path("cases")) {
            if (c.path("id").asText().equals(id)) {
                return c;
            }
        }
        throw new IllegalArgumentException("no case " + id + " in " + path);
    }

    /** All numbers of an array, or of an array of arrays in their order, as exact decimals. */
    public static List<BigDecimal> decimals(JsonNode array) {
        List<BigDecimal> values = new ArrayList<>();
        for (JsonNode node : array) {
            if (node.isArray()) {
                values.addAll(decimals(node));
            } else {
                values.add(node.decimalValue());
            }
        }
        return values;
    }

    public static double[] doubles(JsonNode array) {
        double[] result = new double[array.size()];
        for (int i = 0; i < result.length; i++) {
            result[i] = array.get(i).asDouble();
        }
        return result;
    }

    public static List<Integer> integers(JsonNode array) {
        List<Integer> result = new ArrayList<>();
        array.forEach(node -> result.add(node.asInt()));
        return result;
    }

    public static Sample sample(JsonNode array) {
        return Sample.of(decimals(array), Unit.MILLIMETRE);
    }

    /** The gear diameters, batch by batch of ten. */
    public static Sample gear() {
        try (InputStream in = ReferenceFile.class.getResourceAsStream("/reference/chart/gear.csv")) {
            List<BigDecimal> values = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("diameter"))
                    .map(line -> new BigDecimal(line.substring(0, line.indexOf(','))))
                    .toList();
            return Sample.of(values, new BigDecimal("1"), Unit.INCH);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
