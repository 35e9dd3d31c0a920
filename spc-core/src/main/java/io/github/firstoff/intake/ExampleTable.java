package io.github.firstoff.intake;

import io.github.firstoff.intake.Mapping.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** The lines of an example, parted in one way: which are rows, and what stands in their columns. */
final class ExampleTable {
    private static final int WIDEST = 2000;
    private static final int MOST_COLUMNS = 100;

    /** A heading stands so many lines above the first row at most: a ruled line and a line of units may lie between. */
    private static final int HEADING_WITHIN = 3;

    private final Layout layout;
    private final char delimiter;
    private final List<String> places;
    private final List<Entry> records = new ArrayList<>();
    private final Set<Long> rowLines = new LinkedHashSet<>();
    private final Map<String, List<Long>> labelLines = new HashMap<>();
    private List<String> heading = List.of();

    /**
     * A row, or the lines that together make one.
     *
     * @param line its first line, counted from 1
     * @param fields what stands in its columns; empty texts where nothing does
     */
    record Entry(long line, List<String> fields) {
        String field(int index) {
            return index < fields.size() ? fields.get(index) : "";
        }
    }

    private ExampleTable(Layout layout, char delimiter, List<String> places) {
        this.layout = layout;
        this.delimiter = delimiter;
        this.places = places;
    }

    Layout layout() {
        return layout;
    }

    char delimiter() {
        return delimiter;
    }

    List<Entry> records() {
        return records;
    }

    int columns() {
        return places.size();
    }

    /** A column as a mapping writes it. */
    String place(int index) {
        return places.get(index);
    }

    /** Whether a line is a row or a part of one. */
    boolean isRow(long line) {
        return rowLines.contains(line);
    }

    /** Takes the lines that say nothing but one label from those that are parts of rows. */
    void leaveOut(String label) {
        labelLines.getOrDefault(label, List.of()).forEach(rowLines::remove);
    }

    /** What stands over each column: the nearest line above the first row that has words in at least two columns and no number. */
    List<String> heading() {
        return heading;
    }

    private void findHeading(List<String> lines, Function<String, List<String>> parted) {
        if (records.isEmpty()) {
            return;
        }
        int first = Math.toIntExact(records.get(0).line()) - 1;
        for (int i = first - 1; i >= Math.max(0, first - HEADING_WITHIN); i--) {
            List<String> fields = lines.get(i).length() <= WIDEST ? parted.apply(lines.get(i)) : List.of();
            long words = fields.stream().filter(ExampleTable::hasWord).count();
            if (words > 1 && fields.stream().noneMatch(ExampleTable::isNumber)) {
                heading = List.copyOf(fields);
                return;
            }
        }
    }

    /** Whether a text looks like a number, with either mark. */
    static boolean isNumber(String text) {
        return !text.isEmpty() && text.length() < 30 && text.matches("[+\\-\u2212]?\\d*[.,]?\\d+");
    }

    private static boolean isResult(String text) {
        return isNumber(text) || PassOrFail.parse(text).isPresent();
    }

    private static boolean hasWord(String text) {
        return text.chars().anyMatch(Character::isLetter);
    }

    private void add(long line, List<String> fields) {
        records.add(new Entry(line, List.copyOf(fields)));
        rowLines.add(line);
    }

    /** Columns that a character parts. */
    static ExampleTable delimited(List<String> lines, char delimiter) {

        Map<Integer, Integer> counts = new LinkedHashMap<>();
        for (String line : lines) {
            List<String> fields = split(line, delimiter);
            if (fields.size() > 1 && fields.stream().anyMatch(ExampleTable::isNumber)) {
                MappingDraft.count(counts, fields.size());
            }
        }
        int columns = Math.min(MOST_COLUMNS, MappingDraft.most(counts).orElse(0));
        List<String> places = new ArrayList<>();
        for (int i = 1; i <= columns; i++) {
            places.add(Integer.toString(i));
        }
        ExampleTable table = new ExampleTable(Layout.DELIMITED, delimiter, places);
        for (int i = 0; i < lines.size(); i++) {
            List<String> fields = split(lines.get(i), delimiter);
            boolean row = fields.size() == columns && fields.stream().skip(1).anyMatch(ExampleTable::isResult);
            if (columns > 1 && row) {
                table.add(i + 1L, fields);
            }
        }
        table.findHeading(lines, line -> split(line, delimiter));
        return table;
    }

    private static List<String> split(String line, char delimiter) {
        List<String> fields = new ArrayList<>();
        if (line.length() <= WIDEST) {
            for (String field : line.split(java.util.regex.Pattern.quote(String.valueOf(delimiter)), -1)) {
                fields.add(field.strip());
            }
        }
        return fields;
    }

    /** A stretch of a line without two blanks in a row, unless numbers stand beside each other. */
    private record Token(int from, int to, String text) {}

    private static List<Token> tokens(String line) {
        List<Token> tokens = new ArrayList<>();
        int at = 0;
        while (at < line.length()) {
            if (line.charAt(at) == ' ' || line.charAt(at) == '\t') {
                at++;
                continue;
            }
            int end = at;
            while (end < line.length() && line.charAt(end) != ' ' && line.charAt(end) != '\t') {
                end++;
            }
            String text = line.substring(at, end);
            Token last = tokens.isEmpty() ? null : tokens.get(tokens.size() - 1);
            boolean joins = last != null && at - last.to() == 1 && !isResult(text) && !isResult(last.text());
            if (last != null && joins) {
                tokens.set(tokens.size() - 1, new Token(last.from(), end, line.substring(last.from(), end)));
            } else {
                tokens.add(new Token(at, end, text));
            }
            at = end;
        }
        return tokens;
    }

    /** A row begins with a name, perhaps behind a number of its own, and behind the name results stand. */
    private static boolean isRow(List<Token> tokens) {
        boolean named = tokens.size() > 1
                && (hasWord(tokens.get(0).text()) || isNumber(tokens.get(0).text()));
        boolean numbered = tokens.size() > 2
                && isNumber(tokens.get(0).text())
                && hasWord(tokens.get(1).text())
                && isResult(tokens.get(2).text());
        return named
                && tokens.stream()
                        .skip(numbered ? 2 : 1)
                        .allMatch(token -> isResult(token.text()) || isShort(token.text()));
    }

    private static boolean isShort(String text) {
        return text.length() <= 4 || text.chars().noneMatch(Character::isLetterOrDigit);
    }

    /** Columns by the places that are blank in all rows with as many numbers as most have. */
    static ExampleTable columns(List<String> lines) {
        Map<Integer, Integer> counts = new LinkedHashMap<>();
        List<List<Token>> tokens = new ArrayList<>();
        for (String line : lines) {
            List<Token> found = line.length() <= WIDEST && line.indexOf('\t') < 0 ? tokens(line) : List.of();
            tokens.add(found);
            long numbers = found.stream()
                    .skip(1)
                    .filter(token -> isNumber(token.text()))
                    .count();
            if (numbers > 0 && isRow(found)) {
                MappingDraft.count(counts, (int) numbers);
            }
        }
        int usual = MappingDraft.most(counts).orElse(0);
        boolean[] filled = new boolean[WIDEST + 1];
        int width = 0;
        for (List<Token> found : tokens) {
            long numbers = found.stream()
                    .skip(1)
                    .filter(token -> isNumber(token.text()))
                    .count();
            if (usual > 0 && numbers == usual && isRow(found)) {
                for (Token token : found) {
                    java.util.Arrays.fill(filled, token.from(), token.to(), true);
                    width = Math.max(width, token.to());
                }
            }
        }
        List<int[]> spans = spans(filled, width, tokens, usual);
        List<String> places =
                spans.stream().map(span -> (span[0] + 1) + "-" + span[1]).toList();
        ExampleTable table = new ExampleTable(Layout.COLUMNS, ' ', places);
        for (int i = 0; i < lines.size(); i++) {
            if (usual > 0 && isRow(tokens.get(i))) {
                String line = lines.get(i);
                List<String> fields = cut(line, spans);
                boolean whole = String.join("", fields).replace(" ", "").equals(line.replace(" ", ""));
                if (whole && fields.stream().skip(1).anyMatch(ExampleTable::isResult)) {
                    table.add(i + 1L, fields);
                }
            }
        }
        table.findHeading(lines, line -> cut(line, spans));
        return table;
    }

    private static List<String> cut(String line, List<int[]> spans) {
        List<String> fields = new ArrayList<>();
        for (int[] span : spans) {
            int from = Math.min(span[0], line.length());
            fields.add(line.substring(from, Math.max(from, Math.min(span[1], line.length())))
                    .strip());
        }
        return fields;
    }

    /** The filled stretches; gaps between them are shared, and those of a name that its own blanks part are joined. */
    private static List<int[]> spans(boolean[] filled, int width, List<List<Token>> tokens, int usual) {
        List<int[]> spans = new ArrayList<>();
        int at = 0;
        while (at < width) {
            if (!filled[at]) {
                at++;
                continue;
            }
            int end = at;
            while (end < width && filled[end]) {
                end++;
            }
            spans.add(new int[] {at, end});
            at = end;
        }
        for (List<Token> found : tokens) {
            long numbers = found.stream()
                    .skip(1)
                    .filter(token -> isNumber(token.text()))
                    .count();
            if (numbers != usual || !isRow(found)) {
                continue;
            }
            for (Token token : found) {
                spans.removeIf(span -> span[0] > token.from() && span[1] <= token.to() && joined(spans, span, token));
            }
        }
        for (int i = 0; i + 1 < spans.size(); i++) {
            int middle = (spans.get(i)[1] + spans.get(i + 1)[0] + 1) / 2;
            spans.get(i)[1] = middle;
            spans.get(i + 1)[0] = middle;
        }
        if (!spans.isEmpty()) {
            spans.get(0)[0] = 0;
            spans.get(spans.size() - 1)[1] += 8;
        }
        return spans;
    }

    /** Lets the stretch in which a name begins reach to the end of the stretch that is taken away. */
    private static boolean joined(List<int[]> spans, int[] part, Token token) {
        for (int[] span : spans) {
            if (span != part && span[0] <= token.from() && span[1] > token.from() && span[1] <= part[0]) {
                span[1] = part[1];
                return true;
            }
        }
        return false;
    }

    /** Lines with labels: a label that comes again begins another row. */
    static ExampleTable labels(List<String> lines) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        Map<String, Integer> numbers = new LinkedHashMap<>();
        List<List<LabelledText>> found = new ArrayList<>();
        for (String line : lines) {
            List<LabelledText> labelled = line.length() <= WIDEST ? LabelledText.in(line) : List.of();
            found.add(labelled);
            for (LabelledText each : labelled) {
                MappingDraft.count(counts, each.label());
                if (isNumber(each.text())) {
                    MappingDraft.count(numbers, each.label());
                }
            }
        }
        // The label with most numbers belongs to rows; so does every label that comes at least half as often.
        int most = numbers.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        List<String> labels = counts.entrySet().stream()
                .filter(each -> most > 1 && each.getValue() * 2 > most)
                .map(Map.Entry::getKey)
                .limit(MOST_COLUMNS)
                .toList();
        ExampleTable table = new ExampleTable(Layout.LABELS, ' ', labels);
        Map<String, String> record = new LinkedHashMap<>();
        long first = 0;
        String opening = "";
        for (int i = 0; i < lines.size(); i++) {
            for (LabelledText each : found.get(i)) {
                if (!labels.contains(each.label())) {
                    continue;
                }
                if (opening.isEmpty()) {
                    opening = each.label();
                }
                if (each.label().equals(opening)) {
                    table.record(first, record, labels);
                    record.clear();
                    first = i + 1L;
                }
                record.put(each.label(), each.text());
                table.rowLines.add(i + 1L);
                if (found.get(i).size() == 1) {
                    table.labelLines
                            .computeIfAbsent(each.label(), key -> new ArrayList<>())
                            .add(i + 1L);
                }
            }
        }
        table.record(first, record, labels);
        return table;
    }

    private void record(long line, Map<String, String> record, List<String> labels) {
        if (!record.isEmpty()) {
            records.add(new Entry(
                    line,
                    labels.stream().map(label -> record.getOrDefault(label, "")).toList()));
        }
    }
}
