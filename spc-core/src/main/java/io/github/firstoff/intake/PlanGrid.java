package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.quantity.Unit;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A table of characteristics while it is read: what stands above its heading, what its columns are, and its rows. Whatever kind of file the
 * table is in, its fields come here with their places.
 */
final class PlanGrid {
    /** A heading that would be understood, for messages. */
    static final String HEADING =
            "a heading such as number,feature,requirement,class,gauge,study, or with nominal, upper tolerance and lower"
                    + " tolerance in place of requirement; in German Nr.;Merkmal;Forderung;Klasse;Prüfmittel";

    private static final int FEET_NAMED = 5;
    private static final Set<String> SIDES =
            Set.of("+", "-", "\u2212", "upper", "lower", "plus", "minus", "oben", "unten", "obere", "untere");
    private static final Set<String> DASH = Set.of("-", "\u2013", "\u2014");

    /** How rows begin that stand under tables and are no part of them. */
    private static final Pattern FOOT = Pattern.compile(
            "(?iu)(?:(?:grand |sub)?totals?|sum|remarks?|notes?|comments?|checked|approved|prepared|drawn|inspected|inspector|signatures?|signed|date"
                    + "|summe|gesamt|bemerkung(?:en)?|anmerkung(?:en)?|hinweise?|geprüft|freigegeben|erstellt|prüfer|unterschrift|datum)"
                    + "(?: by| von)?\\s*(?::.*|[._]*)|(?:page|seite)\\s+\\d.*");

    private final FaultCollector faults;
    private final Map<PlanFact, PlanTable.Text> facts = new EnumMap<>(PlanFact.class);
    private final List<PlanTable.Row> rows = new ArrayList<>();
    private final Map<PlanColumn, Integer> places = new EnumMap<>(PlanColumn.class);
    private final Map<PlanColumn, String> names = new EnumMap<>(PlanColumn.class);
    private final Set<String> misspelt = new HashSet<>();
    private final List<String> feet = new ArrayList<>();
    private final List<SheetTaker.Range> merged = new ArrayList<>();
    private final Set<Integer> nameless = new HashSet<>();
    private boolean underHeading;
    private int size;

    PlanGrid(FaultCollector faults) {
        this.faults = faults;
    }

    /** How many different columns of a plan the fields name. */
    static int namesIn(List<String> fields) {
        return (int) fields.stream()
                .map(name -> PlanColumn.named(name)
                        .map(PlanColumn::word)
                        .or(() -> Optional.of("either").filter(either -> PlanColumn.isNumberOrFeature(name))))
                .flatMap(Optional::stream)
                .distinct()
                .count();
    }

    PlanTable table() {
        return new PlanTable(facts, rows, new MergedRanges(merged));
    }

    boolean hasRows() {
        return !rows.isEmpty();
    }

    /** How many fields the heading has. */
    int size() {
        return size;
    }

    /**
     * Takes what a line above the heading says, label before value; whether it says anything. What can be understood in another way is
     * left alone.
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
            } else if (!field.isBlank()) {
                fields.add(field.strip());
            }
        }
        boolean any = false;
        for (int i = 0; i + 1 < fields.size(); i++) {
            Optional<PlanFact> fact = PlanFact.named(fields.get(i));
            if (fact.isPresent() && fact.get().isUnmistakable(fields.get(i), fields.get(i + 1))) {
                any = true;
                fact(fact.get(), fields.get(i + 1), where);
                i++;
            }
        }
        return any;
    }

    private void fact(PlanFact fact, String text, Where where) {
        Where place = new Where(where.file(), where.sheet(), where.line(), 0, fact.word());
        String said = fact == PlanFact.UNIT ? unitWord(text) : text;
        PlanTable.Text twin = facts.putIfAbsent(fact, new PlanTable.Text(said, place));
        if (twin != null && !twin.text().equals(said)) {
            faults.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    place,
                    "the " + fact.word() + " is stated twice (first in "
                            + twin.where().spot() + ")",
                    Echo.quoted(text),
                    Echo.quoted(twin.text())));
        }
    }

    private static String unitWord(String text) {
        return PlanColumn.unit(text)
                .filter(unit -> unit == Unit.MILLIMETRE || unit == Unit.INCH || unit == Unit.DEGREE)
                .map(unit -> unit == Unit.MILLIMETRE ? "mm" : unit == Unit.INCH ? "inch" : "degree")
                .orElse(text);
    }

    /** Says what the lines above the heading were understood to say. */
    private void tellFacts(Where where) {
        if (!facts.isEmpty()) {
            List<String> said = facts.entrySet().stream()
                    .map(each -> each.getKey().word() + " "
                            + Echo.quoted(each.getValue().text()) + " ("
                            + each.getValue().where().spot() + ")")
                    .toList();
            faults.noticeOfDraft(
                    new Where(where.file(), where.sheet(), 0, 0, ""),
                    "taken from above the heading: " + String.join(", ", said));
        }
    }

    /** Takes the heading; whether rows can be read under it. */
    boolean heading(List<String> fields, CsvHeading.Places where) {
        long before = faults.count();
        tellFacts(where.whole());
        size = fields.size();
        List<Integer> either = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            String name = Blanks.strip(fields.get(i));
            Optional<PlanColumn> known = PlanColumn.named(name);
            if (known.isPresent()) {
                known(known.get(), i, name, where);
                PlanColumn.unitIn(name).ifPresent(unit -> unitOfFigures(known.get(), unit, name, where.whole()));
            } else if (PlanColumn.isNumberOrFeature(name)) {
                either.add(i);
            } else if (name.isEmpty()) {
                nameless.add(i);
            } else {
                unknown(name, where.column(i));
            }
        }
        either(either, fields, where);
        requireColumns(fields, where);
        tellColumns(where);
        return faults.count() == before;
    }

    /** A name that may mean the number or the feature means the one that no other column is. */
    private void either(List<Integer> indices, List<String> fields, CsvHeading.Places where) {
        boolean number = places.containsKey(PlanColumn.NUMBER);
        boolean feature = places.containsKey(PlanColumn.FEATURE);
        for (int index : indices) {
            String name = Blanks.strip(fields.get(index));
            if (number && feature) {
                faults.noticeOfDraft(
                        where.column(index),
                        Echo.quoted(name) + " was not used: number and feature are in "
                                + Echo.quoted(nameOf(PlanColumn.NUMBER)) + " and "
                                + Echo.quoted(nameOf(PlanColumn.FEATURE)));
            } else if (number || feature) {
                known(number ? PlanColumn.FEATURE : PlanColumn.NUMBER, index, name, where);
            } else {
                misspelt.add(PlanColumn.NUMBER.word());
                misspelt.add(PlanColumn.FEATURE.word());
                faults.refuse(Fault.of(
                        FaultKind.UNKNOWN_WORD,
                        where.column(index),
                        "this may be the number of a characteristic or what it is about",
                        Echo.quoted(name),
                        "a column number and a column feature (in German: Nr. and Merkmal)"));
            }
        }
    }

    private String nameOf(PlanColumn column) {
        return names.getOrDefault(column, column.word());
    }

    private void requireColumns(List<String> fields, CsvHeading.Places where) {
        for (PlanColumn needed : List.of(PlanColumn.NUMBER, PlanColumn.FEATURE, PlanColumn.REQUIREMENT)) {
            boolean inParts = needed == PlanColumn.REQUIREMENT
                    && (places.containsKey(PlanColumn.NOMINAL)
                            || places.containsKey(PlanColumn.LOWER_LIMIT)
                            || places.containsKey(PlanColumn.UPPER_LIMIT));
            if (!places.containsKey(needed) && !misspelt.contains(needed.word()) && !inParts) {
                faults.refuse(Fault.of(
                        FaultKind.MISSING,
                        where.whole(),
                        "the column " + needed.word() + " is missing",
                        "the columns " + Echo.quoted(String.join(",", fields)),
                        switch (needed) {
                            case NUMBER -> "a column named number (or No., balloon, Nr.)";
                            case FEATURE -> "a column named feature (or description, Merkmal, Bezeichnung)";
                            default ->
                                "a column named requirement (or specification, Forderung), or nominal with its tolerance";
                        }));
            }
        }
    }

    /** Says how the columns were understood, unless each has the name that a plan has for it. */
    private void tellColumns(CsvHeading.Places where) {
        boolean plain = names.entrySet().stream()
                .allMatch(each -> each.getValue().equalsIgnoreCase(each.getKey().word()));
        if (plain) {
            return;
        }
        List<String> said = places.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(each -> Echo.quoted(nameOf(each.getKey())) + " as "
                        + each.getKey().word())
                .toList();
        faults.noticeOfDraft(where.whole(), "the columns were understood so: " + String.join(", ", said));
    }

    /** A unit over a column of figures is the unit of the plan; one that cannot be is asked for in each row. */
    private void unitOfFigures(PlanColumn column, String unit, String name, Where where) {
        String word = unitWord(unit);
        if (!PlanColumn.OF_REQUIREMENTS.contains(column)) {
            return;
        }
        if (!word.equals("mm") && !word.equals("inch")) {
            faults.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    where,
                    "the unit over the column " + Echo.plain(name) + " cannot be that of the whole plan",
                    Echo.quoted(unit),
                    "mm or inch there, and a column unit where rows have others"));
        } else {
            fact(PlanFact.UNIT, word, where);
        }
    }

    /**
     * Takes a row that is no characteristic, if it is one: a total, a remark, a signature, or a row of units under the heading. One that
     * looks so and states a requirement all the same is refused.
     *
     * @param fields its fields, from the first column of the heading on
     * @param where where it stands
     * @return whether it is none
     */
    boolean isNoCharacteristic(List<String> fields, Where where) {
        boolean first = !underHeading;
        underHeading = true;
        String begins = fields.stream()
                .map(Blanks::strip)
                .filter(text -> !text.isEmpty())
                .findFirst()
                .orElse("");
        if (first && isRowOfUnits(fields)) {
            places.forEach((column, index) -> {
                String unit = index < fields.size() ? bare(fields.get(index)) : "";
                if (PlanColumn.isUnit(unit)) {
                    unitOfFigures(column, unit, nameOf(column), where);
                }
            });
            faults.noticeOfDraft(where, "the row holds units and no characteristic");
            return true;
        }
        if (first && isMoreOfTheHeading(fields)) {
            faults.refuse(Fault.of(
                    FaultKind.DOUBLED_NAME,
                    where,
                    "the heading goes on in a second row",
                    Echo.quoted(fields.stream()
                            .map(Blanks::strip)
                            .filter(text -> !text.isEmpty())
                            .collect(Collectors.joining(", "))),
                    "one row of names, such as upper tolerance and lower tolerance, each in a cell of its own"));
            return true;
        }
        if (!FOOT.matcher(begins).matches()) {
            return false;
        }
        boolean states = PlanColumn.OF_REQUIREMENTS.stream()
                .map(places::get)
                .anyMatch(index -> index != null
                        && index < fields.size()
                        && !Blanks.strip(fields.get(index)).isEmpty()
                        && !Blanks.strip(fields.get(index)).equals(begins));
        if (states && !begins.contains(":")) {
            faults.refuse(Fault.of(
                    FaultKind.WRONG_READING,
                    where,
                    "the row begins like a foot of the table and states a requirement",
                    Echo.quoted(begins),
                    "the number of a characteristic, or the row taken out"));
        } else {
            feet.add((where.sheet().isEmpty() ? "line " : "row ") + where.line() + " " + Echo.quoted(begins));
        }
        return true;
    }

    private static String bare(String text) {
        return text.replaceAll("[\\[\\]()]", "").strip();
    }

    /** Names and sides in every cell that is not blank, and neither number nor feature, as under a cell merged over several columns. */
    private boolean isMoreOfTheHeading(List<String> fields) {
        boolean any = false;
        for (int i = 0; i < fields.size(); i++) {
            String text = Blanks.strip(fields.get(i));
            boolean named = Integer.valueOf(i).equals(places.get(PlanColumn.NUMBER))
                    || Integer.valueOf(i).equals(places.get(PlanColumn.FEATURE));
            boolean part = PlanColumn.named(text).isPresent() || SIDES.contains(text.toLowerCase(Locale.ROOT));
            if (!text.isEmpty() && (named || !part)) {
                return false;
            }
            any |= part;
        }
        return any;
    }

    private boolean isRowOfUnits(List<String> fields) {
        boolean any = false;
        for (int i = 0; i < fields.size(); i++) {
            String text = bare(fields.get(i));
            boolean named = Integer.valueOf(i).equals(places.get(PlanColumn.NUMBER))
                    || Integer.valueOf(i).equals(places.get(PlanColumn.FEATURE));
            any |= PlanColumn.isUnit(text);
            if (!text.isEmpty() && (named || !(PlanColumn.isUnit(text) || DASH.contains(text)))) {
                return false;
            }
        }
        return any;
    }

    /** Takes the ranges of cells that are merged. */
    void merged(List<SheetTaker.Range> ranges) {
        merged.addAll(ranges);
    }

    /** Says which rows under the heading were left alone; to be called when all were taken. */
    void tellFeet(Where where) {
        if (!feet.isEmpty()) {
            faults.noticeOfDraft(
                    where,
                    "no characteristic, and not used: "
                            + String.join(", ", feet.subList(0, Math.min(FEET_NAMED, feet.size())))
                            + (feet.size() > FEET_NAMED ? ", …" : ""));
        }
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
        row(fields, new BitSet(), where);
    }

    /**
     * Takes a row under the heading.
     *
     * @param fields its fields, as many as the heading has
     * @param numbers which of them a spreadsheet holds as numbers
     */
    void row(List<String> fields, BitSet numbers, CsvHeading.Places where) {
        for (int index : nameless) {
            if (!Blanks.strip(fields.get(index)).isEmpty()) {
                faults.refuse(Fault.of(
                        FaultKind.BLANK,
                        where.column(index),
                        "the column has no name",
                        Echo.quoted(Blanks.strip(fields.get(index))),
                        "a name in the heading, or nothing in the column"));
            }
        }
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
            texts.put(column, new PlanTable.Text(text, place, numbers.get(index)));
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
