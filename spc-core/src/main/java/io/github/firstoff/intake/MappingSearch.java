package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.Mapping.Item;
import io.github.firstoff.intake.Mapping.Layout;
import io.github.firstoff.plan.ResolvedPlan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Looks for a mapping that makes readings of the lines of an example. Several ways of parting the lines are tried, and the one under which
 * most rows are understood is taken: columns by characters that part them, columns by the places that are blank in all rows, and lines
 * with labels.
 */
final class MappingSearch {
    private static final char[] DELIMITERS = {';', '\t', '|', ','};
    private static final Map<Character, String> DELIMITER_WORDS =
            Map.of(';', "semicolon", '\t', "tab", '|', "bar", ',', "comma");
    private static final List<String> TIME_FORMS = List.of(
            "dd.MM.yyyy HH:mm:ss",
            "dd.MM.yyyy HH:mm",
            "d.M.yyyy HH:mm:ss",
            "d.M.yyyy HH:mm",
            "yyyy/MM/dd HH:mm:ss",
            "yyyy/MM/dd HH:mm",
            "dd.MM.yyyy",
            "yyyy/MM/dd");
    private static final int LONGEST_BEGINNING = 12;
    private static final int LEAST_LETTERS = 4;
    private static final int MOST_LINES = 50_000;

    private final List<String> lines;
    private final ResolvedPlan plan;
    private final MappingRoles roles;
    private final ExampleTable table;
    private final Map<ReadingColumn, String> heads = new LinkedHashMap<>();
    private Optional<String> timeForm = Optional.empty();

    MappingSearch(String file, List<String> lines, ResolvedPlan plan) {
        this.lines = lines.subList(0, Math.min(MOST_LINES, lines.size())).stream()
                .map(line -> line.replace('\f', ' '))
                .toList();
        this.plan = plan;
        MappingRoles best = null;
        for (ExampleTable each : ways()) {
            MappingRoles found = MappingRoles.of(each, plan);
            if (best == null || found.score() > best.score()) {
                best = found;
            }
        }
        if (best == null || best.score() == 0) {
            throw InputRefused.because(Fault.of(
                    FaultKind.MISSING,
                    Where.inFile(file),
                    "no line holds a value near one that the plan requires, beside a name",
                    "",
                    "an export with readings of this part; a mapping can also be written by hand"));
        }
        this.roles = best;
        this.table = best.table();
        leaveOut();
        heads();
    }

    private List<ExampleTable> ways() {
        List<ExampleTable> ways = new ArrayList<>();
        for (char delimiter : DELIMITERS) {
            ways.add(ExampleTable.delimited(lines, delimiter));
        }
        ways.add(ExampleTable.labels(lines));
        ways.add(ExampleTable.columns(lines));
        return ways;
    }

    /** What the example calls the characteristic whose row stands, or begins, in a line. */
    String nameAt(long line) {
        return roles.nameAt(line);
    }

    /** How a name was matched. */
    String matchedBy(String name) {
        return roles.matchedBy(name);
    }

    /** Whether the example was found to say which piece a row is of. */
    boolean saysPiece() {
        return heads.containsKey(ReadingColumn.PART) || roles.items().containsKey(Item.PART);
    }

    /** Names of rows for which no characteristic was found. */
    List<String> unmatchedNames() {
        return roles.unmatchedNames();
    }

    /** Looks for part, time and so on in the lines that are no rows. */
    private void heads() {
        for (int i = 0; i < lines.size(); i++) {
            if (table.isRow(i + 1)) {
                continue;
            }
            labelled(lines.get(i)).forEach(this::head);
        }
        // What every row says itself is not said of all rows below a line.
        roles.items().keySet().forEach(item -> item.column().ifPresent(heads::remove));
    }

    private List<LabelledText> labelled(String line) {
        return table.layout() == Layout.DELIMITED ? LabelledText.in(line, table.delimiter()) : LabelledText.in(line);
    }

    /** Labels of lines that come with every row and tell nothing that a mapping takes are no parts of rows. */
    private void leaveOut() {
        if (table.layout() == Layout.LABELS) {
            for (int i = 0; i < table.columns(); i++) {
                int column = i;
                if (roles.items().values().stream().noneMatch(columns -> columns.contains(column))) {
                    table.leaveOut(table.place(i));
                }
            }
        }
    }

    private void head(LabelledText found) {
        String folded = ReadingColumn.folded(found.label());
        boolean counterpart =
                plan.part().counterpart().filter(found.text()::equals).isPresent();
        if (counterpart || found.text().equals(plan.part().number())) {
            heads.putIfAbsent(ReadingColumn.PART_NUMBER, found.label());
        } else if ((folded.startsWith("rev") || folded.equals("index"))
                && found.text().equals(plan.part().revision())) {
            heads.putIfAbsent(ReadingColumn.REVISION, found.label());
        } else if (HeadWords.PART.contains(folded) || folded.equals("id")) {
            heads.putIfAbsent(ReadingColumn.PART, found.label());
        } else if (HeadWords.OPERATOR.contains(folded)) {
            heads.putIfAbsent(ReadingColumn.OPERATOR, found.label());
        } else if (!heads.containsKey(ReadingColumn.TIME)) {
            time(found);
        }
    }

    private void time(LabelledText found) {
        if (Timestamp.parse(found.text()).isPresent()) {
            heads.put(ReadingColumn.TIME, found.label());
            return;
        }
        for (String pattern : TIME_FORMS) {
            if (TimeForm.of(pattern).flatMap(form -> form.iso(found.text())).isPresent()) {
                heads.put(ReadingColumn.TIME, found.label());
                timeForm = Optional.of(pattern);
                return;
            }
        }
    }

    /** The mapping as a file. */
    String proposal() {
        StringBuilder out = new StringBuilder("{\n");
        member(out, "schema", Mapping.SCHEMA);
        member(out, "layout", table.layout().word());
        if (table.layout() == Layout.DELIMITED) {
            member(out, "delimiter", DELIMITER_WORDS.get(table.delimiter()));
        }
        member(out, "decimalMark", roles.decimalMark().word());
        heads.forEach((column, label) -> out.append("  ")
                .append(JsonValue.quoted(keyOf(column)))
                .append(": { \"label\": ")
                .append(JsonValue.quoted(label))
                .append(
                        column == ReadingColumn.TIME && timeForm.isPresent()
                                ? ", \"form\": " + JsonValue.quoted(timeForm.get())
                                : "")
                .append(" },\n"));
        out.append("  \"rows\": {\n");
        List<String> places = new ArrayList<>();
        for (Map.Entry<Item, List<Integer>> each : roles.items().entrySet()) {
            List<String> texts = each.getValue().stream()
                    .map(index -> JsonValue.quoted(table.place(index)))
                    .toList();
            places.add("    " + JsonValue.quoted(each.getKey().key()) + ": "
                    + (texts.size() == 1 ? texts.get(0) : "[" + String.join(", ", texts) + "]"));
        }
        out.append(String.join(",\n", places)).append("\n  },\n");
        out.append("  \"names\": {");
        List<String> names = new ArrayList<>();
        roles.names()
                .forEach(
                        (name, number) -> names.add("    " + JsonValue.quoted(name) + ": " + JsonValue.quoted(number)));
        out.append(names.isEmpty() ? "" : "\n" + String.join(",\n", names) + "\n  ")
                .append("},\n");
        out.append("  \"notInPlan\": [],\n");
        out.append("  \"skip\": [");
        List<String> skips = skips().stream()
                .map(begins -> "    { \"begins\": " + JsonValue.quoted(begins) + " }")
                .toList();
        out.append(skips.isEmpty() ? "" : "\n" + String.join(",\n", skips) + "\n  ")
                .append("]\n}\n");
        return out.toString();
    }

    private static String keyOf(ReadingColumn column) {
        return column == ReadingColumn.PART_NUMBER
                ? "partNumber"
                : column.name().toLowerCase(Locale.ROOT);
    }

    private static void member(StringBuilder out, String key, String text) {
        out.append("  ")
                .append(JsonValue.quoted(key))
                .append(": ")
                .append(JsonValue.quoted(text))
                .append(",\n");
    }

    /** The beginnings of lines that are neither rows nor say anything that was found. */
    private Set<String> skips() {
        Set<String> skips = new LinkedHashSet<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || table.isRow(i + 1) || isHead(line)) {
                continue;
            }
            boolean known = skips.stream().anyMatch(line::startsWith);
            if (!known) {
                skips.add(beginning(line));
            }
        }
        return skips;
    }

    private boolean hasLabel(String line, String label) {
        return labelled(line).stream().anyMatch(each -> each.label().equals(label));
    }

    /** A mapping holds no control characters, and a tab is one. */
    private static String untilControl(String text) {
        int end = 0;
        while (end < text.length() && !Character.isISOControl(text.charAt(end))) {
            end++;
        }
        return text.substring(0, end);
    }

    /** So much of a line as tells it from rows: its first word or two, or the first few marks of a ruled line. */
    private String beginning(String line) {
        int end = Math.min(line.length(), LONGEST_BEGINNING);
        while (end < line.length()
                && Character.isLetterOrDigit(line.charAt(end))
                && Character.isLetterOrDigit(line.charAt(end - 1))) {
            end++;
        }
        int mark = line.indexOf(':') > 0 ? line.indexOf(':') : line.indexOf('=');
        if (table.layout() == Layout.LABELS && mark > 0) {
            // Behind a label something else stands in every piece.
            end = mark + 1;
        }
        List<String> beginnings = new ArrayList<>();
        String shorter = untilControl(line.substring(0, end)).strip();
        // Figures are those of this piece, this day or this page.
        String words = shorter.replaceFirst("[^\\p{L}]*[0-9].*", "");
        if (words.chars().filter(Character::isLetter).count() >= LEAST_LETTERS) {
            beginnings.add(words);
        }
        beginnings.add(shorter);
        String whole = untilControl(line);
        return beginnings.stream()
                .filter(each -> !beginsOther(each))
                .findFirst()
                .orElse(whole);
    }

    /** Whether a row, or a line that says something of rows, begins like that. */
    private boolean beginsOther(String beginning) {
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.startsWith(beginning) && (table.isRow(i + 1) || isHead(line))) {
                return true;
            }
        }
        return false;
    }

    private boolean isHead(String line) {
        return heads.values().stream().anyMatch(label -> hasLabel(line, label));
    }
}
