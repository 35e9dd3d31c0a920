package io.github.firstoff.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Reads the data files of the NIST Statistical Reference Datasets; refuses one without a source header. */
public final class StrdFile {
    private StrdFile() {}

    public static List<BigDecimal> values(String name) {
        String path = "/reference/strd/" + name + ".csv";
        try (InputStream in = StrdFile.class.getResourceAsStream(path)) {
            List<String> lines = new String(Objects.requireNonNull(in, path).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            if (!lines.get(0).startsWith("# source:")) {
                throw new IllegalStateException(path + " does not state its source");
            }
            return lines.stream()
                    .filter(line -> !line.startsWith("#") && !line.equals("y"))
                    .map(BigDecimal::new)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
