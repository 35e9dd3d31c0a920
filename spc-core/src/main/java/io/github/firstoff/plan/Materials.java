package io.github.firstoff.plan;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The linear expansion of common materials by name or number, for the correction to 20 °C where a plan states none itself.
 *
 * <p>The table lies beside this class with its sources. Names are compared without spaces, hyphens and dots and whatever their letter case;
 * a leading EN and what follows a grade of temper or treatment (T6, T651, H111, +QT, +N) does not matter. A text with several names, as in
 * {@code 1.4301 (X5CrNi18-10)}, is found if all that are known mean the same material. What is not known for certain is not found: no name is
 * completed or corrected.
 */
public final class Materials {
    private static final String TABLE = "linear-expansion.csv";
    private static final List<String> HEADER = List.of("source", "edition", "clause", "units", "marks");
    private static final int COLUMNS = 4;
    private static final int MILLIONTHS = 6;

    /** What may follow a grade: tempers of aluminium (EN 515), treatments and deliveries of steel (EN 10027-1). */
    private static final Pattern CONDITION =
            Pattern.compile("(T\\d{1,5}|H\\d{1,3}|O|F|QT|N|NT|A|AT|C|AR|SH|U|S|R\\d{3}|HARDENED|ANNEALED|TEMPERED)*");

    private static final Pattern DIVIDED = Pattern.compile("[(),;/]");
    private static final Pattern SEPARATORS = Pattern.compile("[\\s\\-_.+,()]");
    private static final Materials LOADED = load();

    private final List<Material> all;
    private final Map<String, Material> byName;

    private Materials(List<Material> all, Map<String, Material> byName) {
        this.all = List.copyOf(all);
        this.byName = Map.copyOf(byName);
    }

    /** Every material of the table, in its order. */
    public static List<Material> all() {
        return LOADED.all;
    }

    /** The material that a drawing or a plan means by the text; empty if that is not certain. */
    public static Optional<Material> find(String text) {
        Optional<Material> whole = LOADED.named(text);
        if (whole.isPresent()) {
            return whole;
        }
        Set<Material> found = new LinkedHashSet<>();
        for (String piece : DIVIDED.split(text, -1)) {
            LOADED.named(piece).ifPresent(found::add);
        }
        return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
    }

    private Optional<Material> named(String text) {
        String wanted = plain(text);
        Optional<Material> exact = Optional.ofNullable(byName.get(wanted));
        if (exact.isPresent() || wanted.isEmpty()) {
            return exact;
        }
        // The longest name that the text begins with, so that CuSn12 is not taken for a CuSn1 in some condition.
        Optional<Map.Entry<String, Material>> best = Optional.empty();
        for (Map.Entry<String, Material> each : byName.entrySet()) {
            boolean begins = wanted.startsWith(each.getKey())
                    && CONDITION
                            .matcher(wanted.substring(each.getKey().length()))
                            .matches();
            if (begins
                    && (best.isEmpty()
                            || each.getKey().length() > best.get().getKey().length())) {
                best = Optional.of(each);
            }
        }
        return best.map(Map.Entry::getValue);
    }

    private static String plain(String text) {
        String joined = SEPARATORS.matcher(text.toUpperCase(Locale.ROOT)).replaceAll("");
        return joined.startsWith("EN") ? joined.substring("EN".length()) : joined;
    }

    private static Materials load() {
        try (InputStream in = Materials.class.getResourceAsStream(TABLE)) {
            if (in == null) {
                throw new IllegalStateException("the table " + TABLE + " is missing from the program");
            }
            return read(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException failed) {
            throw new UncheckedIOException("the table " + TABLE + " cannot be read", failed);
        }
    }

    private static Materials read(BufferedReader in) throws IOException {
        StringBuilder header = new StringBuilder();
        List<Material> all = new ArrayList<>();
        Map<String, Material> byName = new LinkedHashMap<>();
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
                Material material = material(cells);
                all.add(material);
                register(byName, cells[0], material);
                for (String other : cells[1].split("\\|", -1)) {
                    if (!other.isBlank()) {
                        register(byName, other, material);
                    }
                }
            }
        }
        for (String key : HEADER) {
            if (header.indexOf("# " + key + ": ") < 0) {
                throw new IllegalStateException("the table " + TABLE + " does not state its " + key);
            }
        }
        return new Materials(all, byName);
    }

    private static Material material(String[] cells) {
        String name = cells[0].strip();
        String marked = cells[2].strip();
        BigDecimal expansion = new BigDecimal(marked.substring(0, marked.length() - 1));
        BigDecimal halfWidth = new BigDecimal(cells[3].strip());
        return new Material(
                name,
                expansion.movePointLeft(MILLIONTHS),
                halfWidth.movePointLeft(MILLIONTHS),
                name + ": (" + expansion.toPlainString() + " ± " + halfWidth.toPlainString()
                        + ")·10⁻⁶ per kelvin, typical value of data sheets");
    }

    private static void register(Map<String, Material> byName, String name, Material material) {
        Material twin = byName.put(plain(name), material);
        if (twin != null && !twin.equals(material)) {
            throw new IllegalStateException("the table " + TABLE + " names " + name.strip() + " twice");
        }
    }
}
