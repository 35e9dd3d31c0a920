package io.github.firstoff.proof;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Holds one result against another, figure by figure. Texts, limits and readings must be equal to the last letter; statistics, which are
 * binary numbers, may differ by a billionth of themselves, because processors reckon transcendental functions a little differently.
 */
final class FigureComparison {
    /** Far below the digits that any sheet prints. */
    private static final BigDecimal RELATIVE = new BigDecimal("1e-9");

    /** What tells when and by what a result was made, not what it says. */
    private static final Set<String> NOT_COMPARED = Set.of("program");

    /** By what entries of a list are known, so that one that is missing does not shift all others. */
    private static final List<String> NAMES = List.of("number", "outer", "name", "moment", "part", "gauge", "test");

    private static final int MOST_SHOWN = 80;
    private static final Pattern FIGURE = Pattern.compile("-?\\d+(?:\\.\\d+)?");

    private final List<String> differences = new ArrayList<>();
    private final List<String> reworded = new ArrayList<>();
    private final boolean onlyCarried;
    private long compared;

    private FigureComparison(boolean onlyCarried) {
        this.onlyCarried = onlyCarried;
    }

    /**
     * What came of it.
     *
     * @param compared how many figures and texts were compared
     * @param differences what differs, in words
     * @param reworded where sentences of another version say the same figures in other words
     */
    record Outcome(long compared, List<String> differences, List<String> reworded) {}

    /**
     * Compares.
     *
     * @param carried the result that the sheet carries
     * @param again the result that was reckoned now
     * @param onlyCarried whether what only the new result has is left aside, because the sheet is older
     */
    static Outcome of(Object carried, Object again, boolean onlyCarried) {
        FigureComparison comparison = new FigureComparison(onlyCarried);
        comparison.compare("", carried, again);
        return new Outcome(comparison.compared, List.copyOf(comparison.differences), List.copyOf(comparison.reworded));
    }

    private void compare(String where, Object carried, Object again) {
        if (carried instanceof Map<?, ?> one && again instanceof Map<?, ?> other) {
            Set<String> names = new LinkedHashSet<>();
            one.keySet().forEach(name -> names.add(name.toString()));
            if (!onlyCarried) {
                other.keySet().forEach(name -> names.add(name.toString()));
            }
            for (String name : names) {
                if (!NOT_COMPARED.contains(name)) {
                    member(where, name, one, other);
                }
            }
        } else if (carried instanceof List<?> one && again instanceof List<?> other) {
            Map<String, Object> first = named(one);
            Map<String, Object> second = named(other);
            if (first.keySet().equals(second.keySet())) {
                first.forEach((name, value) -> compare(place(where, name), value, second.get(name)));
            } else {
                lists(where, first, second);
            }
        } else {
            compared++;
            if (onlyCarried && isReworded(carried, again)) {
                reworded.add(where);
            } else if (!same(carried, again)) {
                int from = carried instanceof String one && again instanceof String other ? parting(one, other) : 0;
                differences.add(where + " is " + shown(carried, from) + " on the sheet and " + shown(again, from)
                        + " when reckoned again");
            }
        }
    }

    private void member(String where, String name, Map<?, ?> one, Map<?, ?> other) {
        String place = place(where, name);
        if (!one.containsKey(name)) {
            differences.add(place + " is missing on the sheet");
        } else if (!other.containsKey(name)) {
            if (!onlyCarried) {
                differences.add(place + " stands on the sheet and does not come out when reckoned again");
            }
        } else {
            compare(place, one.get(name), other.get(name));
        }
    }

    private void lists(String where, Map<String, Object> first, Map<String, Object> second) {
        first.forEach((name, value) -> {
            if (second.containsKey(name)) {
                compare(place(where, name), value, second.get(name));
            } else {
                differences.add(place(where, name) + " (" + shown(value)
                        + ") stands on the sheet and does not come out when reckoned again");
            }
        });
        second.forEach((name, value) -> {
            if (!first.containsKey(name)) {
                differences.add(place(where, name) + " (" + shown(value) + ") is missing on the sheet");
            }
        });
    }

    /** The entries of a list under names that tell them apart. */
    private static Map<String, Object> named(List<?> list) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < list.size(); i++) {
            Object entry = list.get(i);
            String name = NAMES.stream()
                    .flatMap(key -> Json.text(entry, key).map(value -> key + " " + value).stream())
                    .findFirst()
                    .orElse("entry " + (i + 1));
            String unique = name;
            int again = 2;
            while (named.containsKey(unique)) {
                unique = name + ", number " + again + " of that name";
                again++;
            }
            named.put(unique, entry);
        }
        return named;
    }

    private static String place(String where, String name) {
        if (where.equals("characteristics") && name.startsWith("number ")) {
            return "characteristic " + name.substring("number ".length());
        }
        return where.isEmpty() ? name : where + ", " + name;
    }

    /** Whether another version says a sentence in other words, and with the same figures in it. Single words are codes, and no prose. */
    private static boolean isReworded(Object carried, Object again) {
        return carried instanceof String one
                && again instanceof String other
                && !one.equals(other)
                && one.strip().contains(" ")
                && other.strip().contains(" ")
                && figures(one).equals(figures(other));
    }

    private static List<String> figures(String sentence) {
        return FIGURE.matcher(sentence.replace('\u2212', '-'))
                .results()
                .map(MatchResult::group)
                .sorted()
                .toList();
    }

    private static boolean same(Object carried, Object again) {
        if (carried instanceof Json.Figure one && again instanceof Json.Figure other) {
            if (one.equals(other)) {
                return true;
            }
            BigDecimal first = new BigDecimal(one.written());
            BigDecimal second = new BigDecimal(other.written());
            BigDecimal apart = first.subtract(second).abs();
            boolean counts = first.scale() <= 0 && second.scale() <= 0;
            return counts
                    ? apart.signum() == 0
                    : apart.compareTo(first.abs().max(second.abs()).multiply(RELATIVE)) <= 0;
        }
        return carried.equals(again);
    }

    private static String shown(Object value) {
        if (value instanceof Map<?, ?> || value instanceof List<?>) {
            return Optional.of(value)
                    .flatMap(object -> Json.text(object, "value").or(() -> Json.text(object, "verdict")))
                    .orElse("an entry");
        }
        return shown(value, 0);
    }

    /** Where a long text is to be shown from, so that the letter in which it parts from another is among those shown. */
    private static int parting(String one, String other) {
        int common = 0;
        while (common < Math.min(one.length(), other.length()) && one.charAt(common) == other.charAt(common)) {
            common++;
        }
        return Math.max(one.length(), other.length()) <= MOST_SHOWN ? 0 : Math.max(0, common - MOST_SHOWN / 2);
    }

    private static String shown(Object value, int from) {
        if (value instanceof Map<?, ?> || value instanceof List<?>) {
            return shown(value);
        }
        String text = value.toString();
        int start = Math.min(from, text.length());
        int end = Math.min(text.length(), start + MOST_SHOWN);
        String shortened =
                (start > 0 ? "\u2026" : "") + text.substring(start, end) + (end < text.length() ? "\u2026" : "");
        return value instanceof String ? "\u201C" + shortened + "\u201D" : shortened;
    }
}
