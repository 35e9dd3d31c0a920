package io.github.firstoff.words;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Every text that values hold, and what of it is neither of a language nor of the user. */
public final class Printed {
    private static final Pattern LETTERS = Pattern.compile("[\\p{L}\\p{M}]+(?:[’'-][\\p{L}\\p{M}]+)*");

    /** Units, symbols, and names that are the same in every language. */
    private static final Set<String> SYMBOLS = Set.of(
            "mm",
            "µm",
            "in",
            "µin",
            "°C",
            "C",
            "n",
            "s",
            "p",
            "k",
            "U",
            "T",
            "L",
            "A",
            "m",
            "M",
            "P",
            "S",
            "N",
            "Ra",
            "Rz",
            "R",
            "MR",
            "Cp",
            "Cpk",
            "Pp",
            "Ppk",
            "Cpm",
            "CPL",
            "CPU",
            "PPL",
            "PPU",
            "σ",
            "σz",
            "µ",
            "Δ",
            "d",
            "c",
            "x",
            "firstoff",
            "ISO",
            "UTF-8",
            "MPa",
            "kN",
            "Nm",
            "GPa",
            "K",
            "f",
            "r",
            "Ø",
            "RA");

    /** The first digits of a hash. */
    private static final Pattern HASH = Pattern.compile("\\b[0-9a-f]{12}\\b");

    /** What messages quote from a file. */
    private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"");

    private Printed() {}

    /**
     * The texts in values of these packages, in records, lists, maps and optionals.
     *
     * @param root where to begin
     * @param packages whose fields are looked into
     */
    public static List<String> texts(Object root, String... packages) {
        List<String> found = new ArrayList<>();
        collect(root, List.of(packages), Collections.newSetFromMap(new IdentityHashMap<>()), found);
        return found;
    }

    private static void collect(Object value, List<String> packages, Set<Object> seen, List<String> found) {
        if (value == null || value instanceof Enum<?> || value instanceof Class<?>) {
            return;
        }
        if (value instanceof String text) {
            found.add(text);
        } else if (!seen.add(value)) {
            return;
        } else if (value instanceof Iterable<?> many) {
            many.forEach(each -> collect(each, packages, seen, found));
        } else if (value instanceof Map<?, ?> map) {
            map.forEach((key, each) -> {
                collect(key, packages, seen, found);
                collect(each, packages, seen, found);
            });
        } else if (value instanceof Optional<?> optional) {
            optional.ifPresent(each -> collect(each, packages, seen, found));
        } else if (packages.stream().anyMatch(name -> value.getClass().getName().startsWith(name))) {
            for (Field field : value.getClass().getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers()) && !field.getType().isPrimitive()) {
                    collect(read(field, value), packages, seen, found);
                }
            }
        }
    }

    private static Object read(Field field, Object value) {
        try {
            field.setAccessible(true);
            return field.get(value);
        } catch (IllegalAccessException fault) {
            throw new IllegalStateException(fault);
        }
    }

    /**
     * Words that came from nowhere: not marked as of the pseudo language, not the user's, no symbol.
     *
     * @param texts what is printed
     * @param own what the user wrote, whole texts and parts of them that a sheet prints alone
     */
    public static Set<String> strangers(List<String> texts, Set<String> own) {
        List<String> longest = own.stream()
                .filter(each -> LETTERS.matcher(each).find())
                .sorted((a, b) -> b.length() - a.length())
                .toList();
        Set<String> strangers = new TreeSet<>();
        for (String text : texts) {
            String left = PseudoLanguage.WORD.matcher(text).replaceAll("·");
            left = QUOTED.matcher(HASH.matcher(left).replaceAll("·")).replaceAll("·");
            for (String each : longest) {
                if (left.contains(each)) {
                    left = left.replaceAll("(?<![\\p{L}\\p{M}])" + Pattern.quote(each) + "(?![\\p{L}\\p{M}])", "·");
                }
            }
            Matcher word = LETTERS.matcher(left);
            while (word.find()) {
                if (!SYMBOLS.contains(word.group())) {
                    strangers.add(word.group() + "  in: " + text);
                }
            }
        }
        return strangers;
    }
}
