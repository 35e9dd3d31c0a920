package io.github.firstoff.assembly;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A small table of materials that shops press into one another. It lies beside this class with its sources; every value there is typical
 * and from memory of standards and handbooks, and says so: what a certificate states goes before it.
 *
 * <p>Names are compared without spaces, hyphens, dots and plus signs and whatever their letter case; a leading EN does not matter. A name
 * that is not in the table is not guessed.
 */
public final class ElasticMaterials {
    private static final String TABLE = "elastic.csv";
    private static final List<String> HEADER = List.of("source", "edition", "clause", "units", "marks");
    private static final int COLUMNS = 7;
    private static final int MILLIONTHS = 6;
    private static final Pattern SEPARATORS = Pattern.compile("[\\s\\-_.+]");
    private static final ElasticMaterials LOADED = load();

    private final List<ElasticMaterial> all;
    private final Map<String, ElasticMaterial> byName;

    private ElasticMaterials(List<ElasticMaterial> all, Map<String, ElasticMaterial> byName) {
        this.all = List.copyOf(all);
        this.byName = Map.copyOf(byName);
    }

    /** Every material of the table, in its order. */
    public static List<ElasticMaterial> all() {
        return LOADED.all;
    }

    /** The material of that name; empty if the table has none. */
    public static Optional<ElasticMaterial> find(String name) {
        return Optional.ofNullable(LOADED.byName.get(plain(name)));
    }

    private static String plain(String text) {
        String joined = SEPARATORS.matcher(text.toUpperCase(Locale.ROOT)).replaceAll("");
        return joined.startsWith("EN") ? joined.substring("EN".length()) : joined;
    }

    private static ElasticMaterials load() {
        try (InputStream in = ElasticMaterials.class.getResourceAsStream(TABLE)) {
            if (in == null) {
                throw new IllegalStateException("the table " + TABLE + " is missing from the program");
            }
            return read(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException failed) {
            throw new UncheckedIOException("the table " + TABLE + " cannot be read", failed);
        }
    }

    private static ElasticMaterials read(BufferedReader in) throws IOException {
        StringBuilder header = new StringBuilder();
        List<ElasticMaterial> all = new ArrayList<>();
        Map<String, ElasticMaterial> byName = new LinkedHashMap<>();
        boolean headings = true;
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.startsWith("#")) {
                header.append(line).append('\n');
            } else if (headings) {
                headings = false;
            } else {
                String[] cells = line.split(";", -1);
                if (cells.length != COLUMNS) {
                    throw new IllegalStateException("the table " + TABLE + " is damaged at \"" + line + "\"");
                }
                ElasticMaterial material = material(cells);
                all.add(material);
                register(byName, cells[0], material);
                for (String other : cells[1].split("\\|", -1)) {
                    register(byName, other, material);
                }
            }
        }
        for (String key : HEADER) {
            if (header.indexOf("# " + key + ": ") < 0) {
                throw new IllegalStateException("the table " + TABLE + " does not state its " + key);
            }
        }
        return new ElasticMaterials(all, byName);
    }

    private static ElasticMaterial material(String[] cells) {
        String name = cells[0].strip();
        return new ElasticMaterial(
                name,
                value(cells[2]),
                value(cells[3]),
                value(cells[4]).movePointLeft(MILLIONTHS),
                value(cells[5]),
                "typical values from memory of handbooks (" + cells[6].strip() + ")");
    }

    private static BigDecimal value(String marked) {
        String text = marked.strip();
        return new BigDecimal(text.substring(0, text.length() - 1));
    }

    private static void register(Map<String, ElasticMaterial> byName, String name, ElasticMaterial material) {
        if (name.isBlank()) {
            return;
        }
        ElasticMaterial twin = byName.put(plain(name), material);
        if (twin != null && !twin.equals(material)) {
            throw new IllegalStateException("the table " + TABLE + " names " + name.strip() + " twice");
        }
    }
}
