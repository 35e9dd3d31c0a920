package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Everything that was refused of one or several inputs.
 *
 * @param faults the faults in the order in which they were found; where there are very many, only the first ones
 * @param groups the same faults, those of one kind at one place of a file together
 * @param count how many there were, including those that are not listed
 */
public record Refusals(List<Fault> faults, List<Group> groups, long count) {
    private static final int GROUPS_PRINTED = 20;
    private static final int PLACES_NAMED = 5;
    private static final int MOST_GROUPS = 1000;

    /** Copies the lists. */
    public Refusals {
        faults = List.copyOf(faults);
        groups = List.copyOf(groups);
    }

    /** Nothing was refused. */
    public static final Refusals NONE = new Refusals(List.of(), List.of(), 0);

    /** Whether nothing was refused. */
    public boolean isEmpty() {
        return count == 0;
    }

    /**
     * Faults of one kind at one place, for example all the values of a file that are no numbers.
     *
     * @param first the first of them
     * @param count how many there are
     * @param furtherPlaces the places of the first few others
     */
    public record Group(Fault first, long count, List<Fault.Where> furtherPlaces) {
        /** Copies the list. */
        public Group {
            furtherPlaces = List.copyOf(furtherPlaces);
        }
    }

    /** What to print: a line per group, with an excerpt under it where one helps; 20 groups at most, then how many are left. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (Group group : groups.subList(0, Math.min(groups.size(), GROUPS_PRINTED))) {
            lines.add(group.first().line() + more(group));
            group.first().excerpt().ifPresent(excerpt -> {
                lines.add("    " + excerpt.line());
                lines.add("    " + " ".repeat(excerpt.caret()) + "^");
            });
        }
        if (groups.size() > GROUPS_PRINTED) {
            long left = count
                    - groups.subList(0, GROUPS_PRINTED).stream()
                            .mapToLong(Group::count)
                            .sum();
            lines.add("and " + left + (left == 1 ? " more fault" : " more faults"));
        }
        return lines;
    }

    private static String more(Group group) {
        if (group.count() == 1) {
            return "";
        }
        long others = group.count() - 1;
        StringBuilder text = new StringBuilder(" (and ").append(others).append(" more like it");
        String word = "";
        for (Fault.Where place : group.furtherPlaces()) {
            String[] spot = place.spot().split(" ", 2);
            if (spot.length < 2) {
                continue;
            }
            text.append(", ");
            if (!spot[0].equals(word)) {
                word = spot[0];
                text.append(word).append(others > 1 ? "s " : " ");
            }
            text.append(spot[1]);
        }
        return text.append(
                        others > group.furtherPlaces().size()
                                        && !group.furtherPlaces().isEmpty()
                                ? ", …)"
                                : ")")
                .toString();
    }

    /** Gathers faults into groups while a file is read; keeps memory within bounds however many there are. */
    static final class Groups {
        private final Map<Key, Counted> byKey = new LinkedHashMap<>();

        /** The same wrong word again is the same fault; another wrong word is another. */
        private static final Set<FaultKind> TOLD_APART_BY_WHAT_WAS_FOUND = Set.of(
                FaultKind.UNKNOWN_CHARACTERISTIC,
                FaultKind.UNKNOWN_GAUGE,
                FaultKind.UNKNOWN_SETTING,
                FaultKind.UNKNOWN_WORD,
                FaultKind.WRONG_UNIT,
                FaultKind.OTHER_PART);

        /** Their messages name the characteristic. */
        private static final Set<FaultKind> TOLD_APART_BY_THE_MESSAGE =
                Set.of(FaultKind.WRONG_READING, FaultKind.NUMBER_OUT_OF_RANGE);

        private record Key(FaultKind kind, String file, String sheet, String field, String expected, String apart) {
            static Key of(Fault fault) {
                String apart = "";
                if (TOLD_APART_BY_WHAT_WAS_FOUND.contains(fault.kind())) {
                    apart = fault.found();
                } else if (TOLD_APART_BY_THE_MESSAGE.contains(fault.kind())) {
                    apart = fault.message();
                }
                return new Key(
                        fault.kind(),
                        fault.where().file(),
                        fault.where().sheet(),
                        fault.where().field(),
                        fault.expected(),
                        apart);
            }
        }

        private static final class Counted {
            private final Fault first;
            private final List<Fault.Where> furtherPlaces = new ArrayList<>();
            private long count = 1;

            Counted(Fault first) {
                this.first = first;
            }
        }

        /** Whether the fault is the first of its group. */
        boolean add(Fault fault) {
            Key key = Key.of(fault);
            Counted known = byKey.get(key);
            if (known == null && byKey.size() >= MOST_GROUPS) {
                // Counted by whoever counts all; so many kinds of fault are a wrong file, not a list to work off.
                return false;
            }
            if (known == null) {
                byKey.put(key, new Counted(fault));
                return true;
            }
            known.count++;
            boolean named = known.first.where().equals(fault.where()) || known.furtherPlaces.contains(fault.where());
            if (!named && known.furtherPlaces.size() < PLACES_NAMED) {
                known.furtherPlaces.add(fault.where());
            }
            return false;
        }

        List<Group> list() {
            return byKey.values().stream()
                    .map(each -> new Group(each.first, each.count, each.furtherPlaces))
                    .toList();
        }
    }
}
