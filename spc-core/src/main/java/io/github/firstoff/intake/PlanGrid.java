package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A table of characteristics while it is read: what stands above its heading, what its columns are, and its rows. Whatever kind of file the
 * table is in, its fields come here with their places.
 */
final class PlanGrid {
    private final FaultCollector faults;
    private final Map<PlanFact, PlanTable.Text> facts = new EnumMap<>(PlanFact.class);
    private final List<PlanTable.Row> rows = new ArrayList<>();
    private final Map<PlanColumn, Integer> places = new EnumMap<>(PlanColumn.class);
    private final Map<PlanColumn, String> names = new EnumMap<>(PlanColumn.class);
    private final Set<String> misspelt = new HashSet<>();
    private int size;

    PlanGrid(FaultCollector faults) {
        this.faults = faults;
    }

    /** How many different columns of a plan the fields name. */
    static int namesIn(List<String> fields) {
        return (int) fields.stream()
                .map(PlanColumn::named)
                .flatMap(Optional::stream)
                .distinct()
                .count();
    }

    PlanTable table() {
        return new PlanTable(facts, rows);
    }

    boolean hasRows() {
        return !rows.isEmpty();
    }

    /** How many fields the heading has. */
    int size() {
        return size;
    }

    /**
     * Takes what a line above the heading says, label before value; whether it says anything.
     *
     * @param line its fields
     * @param where where it stands
     */
    boolean says(List<String> line, Where where) {
        List<String> fields = new ArrayList<>();
        for (String field : line) {
            int colon = field.indexOf(':');
            boolean labelled = colon > 0
                    && colon < field.length() - 1
                    && PlanFact.named(field.substring(0, colon)).isPresent();
            if (labelled) {
                fields.add(field.substring(0, colon));
                fields.add(field.substring(colon + 1).strip());
            } else if (!field.isEmpty()) {
                fields.add(field);
            }
        }
        boolean any = false;
        for (int i = 0; i + 1 < fields.size(); i++) {
            Optional<PlanFact> fact = PlanFact.named(fields.get(i));
            if (fact.isPresent()) {
                any = true;
                Where place = new Where(
                        where.file(), where.sheet(), where.line(), 0, fact.get().word());
                PlanTable.Text twin = facts.putIfAbsent(fact.get(), new PlanTable.Text(fields.get(i + 1), place));
                if (twin != null && !twin.text().equals(fields.get(i + 1))) {
                    faults.refuse(Fault.of(
                            FaultKind.CONTRADICTION,
                            place,
                            "the " + fact.get().word() + " is stated twice (first in "
                                    + twin.where().spot() + ")",
                            Echo.quoted(fields.get(i + 1)),
                            Echo.quoted(twin.text())));
                }
                i++;
            }
        }
        return any;
    }

    /** Takes the heading; whether rows can be read under it. */
    boolean heading(List<String> fields, CsvHeading.Places where) {
        long before = faults.count();
        size = fields.size();
        for (int i = 0; i < size; i++) {
            String name = Blanks.strip(fields.get(i));
            Optional<PlanColumn> known = PlanColumn.named(name);
            if (known.isPresent()) {
                known(known.get(), i, name, where);
            } else if (!name.isEmpty()) {
                unknown(name, where.column(i));
            }
        }
        for (PlanColumn needed : List.of(PlanColumn.NUMBER, PlanColumn.FEATURE, PlanColumn.REQUIREMENT)) {
            if (!places.containsKey(needed) && !misspelt.contains(needed.word())) {
                faults.refuse(Fault.of(
                        FaultKind.MISSING,
                        where.whole(),
                        "the column " + needed.word() + " is missing",
                        "the columns " + Echo.quoted(String.join(",", fields)),
                        "a column named " + needed.word()));
            }
        }
        return faults.count() == before;
    }

    private void known(PlanColumn column, int index, String name, CsvHeading.Places where) {
        Integer twin = places.putIfAbsent(column, index);
        names.putIfAbsent(column, Echo.plain(name));
        if (twin != null) {
            faults.refuse(Fault.of(
                    FaultKind.DOUBLED_NAME,
                    where.column(index),
                    "the columns " + where.nameOf(twin) + " and " + where.nameOf(index) + " mean the same",
                    Echo.quoted(name),
                    "each column once"));
        }
    }

    private void unknown(String name, Where where) {
        Optional<String> near = Nearest.to(name, PlanColumn.allWords());
        if (near.isPresent()) {
            misspelt.add(near.get());
            faults.refuse(Fault.of(FaultKind.MISSPELT, where, "", Echo.quoted(name), Echo.quoted(near.get())));
        } else {
            faults.noticeOfDraft(where, Echo.quoted(name) + " is not understood and was not used");
        }
    }

    /**
     * Takes a row under the heading.
     *
     * @param fields its fields, as many as the heading has
     */
    void row(List<String> fields, CsvHeading.Places where) {
        Map<PlanColumn, PlanTable.Text> texts = new EnumMap<>(PlanColumn.class);
        places.forEach((column, index) -> {
            String text = Blanks.strip(fields.get(index));
            Where place = where.column(index, "column " + names.get(column));
            int harmful = Echo.firstHarmful(text);
            if (harmful >= 0) {
                faults.refuse(Fault.of(
                        FaultKind.UNREADABLE_TEXT,
                        place,
                        "",
                        Echo.character(text.charAt(harmful)) + " in " + Echo.quoted(text),
                        "one line of text without control characters"));
            }
            texts.put(column, new PlanTable.Text(text, place));
        });
        rows.add(new PlanTable.Row(where.whole(), texts));
    }

    /** Whether a column of the heading means something. */
    boolean isUsed(int index) {
        return places.containsValue(index);
    }

    /** Says which lines above the heading were not used. */
    void unused(Where where, List<String> lines, int most) {
        if (!lines.isEmpty()) {
            faults.noticeOfDraft(
                    where,
                    "before the heading was not used: "
                            + String.join(", ", lines.subList(0, Math.min(most, lines.size())))
                            + (lines.size() > most ? ", …" : ""));
        }
    }
}
