package io.github.firstoff.plan;

import io.github.firstoff.quantity.SourcedTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * What a table knows of materials, by every name that it gives them.
 *
 * <p>A row's first cell is the name on sheets, its second the other names, divided by upright strokes. Names are compared without spaces,
 * hyphens, dots, commas, plus signs and parentheses and whatever their letter case; a leading EN does not matter.
 *
 * @param <T> what is known of a material
 */
public final class MaterialTable<T> {
    private static final Pattern SEPARATORS = Pattern.compile("[\\s\\-_.+,()]");
    private static final int NAME = 0;
    private static final int OTHER_NAMES = 1;

    private final List<T> all;
    private final Map<String, T> byName;

    private MaterialTable(List<T> all, Map<String, T> byName) {
        this.all = List.copyOf(all);
        this.byName = Map.copyOf(byName);
    }

    /**
     * The materials of a table.
     *
     * @param <T> what is known of a material
     * @param table a table whose first two columns are names
     * @param material what a row's cells say
     * @throws IllegalStateException if one name stands for two materials, which is a fault of the program's packaging
     */
    public static <T> MaterialTable<T> of(SourcedTable table, Function<List<String>, T> material) {
        List<T> all = new ArrayList<>();
        Map<String, T> byName = new LinkedHashMap<>();
        for (List<String> row : table.rows()) {
            T known = material.apply(row);
            all.add(known);
            List<String> names = new ArrayList<>(List.of(row.get(OTHER_NAMES).split("\\|", -1)));
            names.add(row.get(NAME));
            for (String name : names) {
                T twin = name.isBlank() ? null : byName.put(plain(name), known);
                if (twin != null && !twin.equals(known)) {
                    throw table.damaged(name.strip() + " is named twice");
                }
            }
        }
        return new MaterialTable<>(all, byName);
    }

    /** Every material of the table, in its order. */
    public List<T> all() {
        return all;
    }

    /** The material of that name; empty if the table has none. */
    public Optional<T> named(String name) {
        return Optional.ofNullable(byName.get(plain(name)));
    }

    /**
     * The material with the longest name that the text begins with.
     *
     * @param rest what may stand behind the name, as names are compared
     * @return empty if there is none, and for an empty text
     */
    Optional<T> begunBy(String text, Pattern rest) {
        String wanted = plain(text);
        Optional<Map.Entry<String, T>> best = Optional.empty();
        for (Map.Entry<String, T> each : byName.entrySet()) {
            int length = each.getKey().length();
            boolean begins = wanted.startsWith(each.getKey())
                    && rest.matcher(wanted.substring(length)).matches();
            if (begins && (best.isEmpty() || length > best.get().getKey().length())) {
                best = Optional.of(each);
            }
        }
        return best.map(Map.Entry::getValue);
    }

    private static String plain(String text) {
        String joined = SEPARATORS.matcher(text.toUpperCase(Locale.ROOT)).replaceAll("");
        return joined.startsWith("EN") ? joined.substring("EN".length()) : joined;
    }
}
