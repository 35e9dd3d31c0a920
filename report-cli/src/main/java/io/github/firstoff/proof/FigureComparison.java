package io.github.firstoff.proof;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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

    private final List<String> differences = new ArrayList<>();
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
     */
    record Outcome(long compared, List<String> differences) {}

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
        return new Outcome(comparison.compared, List.copyOf(comparison.differences));
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
            if (!same(carried, again)) {
                differences.add(
                        where + " is " + shown(carried) + " on the sheet and " + shown(again) + " when reckoned again");
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
        String text = value.toString();
        int most = 80;
        String shortened = text.length() > most ? text.substring(0, most) + "\u2026" : text;
        return value instanceof String ? "\u201C" + shortened + "\u201D" : shortened;
    }
}
