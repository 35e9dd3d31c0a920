package io.github.firstoff.intake;

import io.github.firstoff.plan.ResolvedPlan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How a text of rows is written: what parts its columns, and how many lines stand before its heading.
 *
 * @param separator what parts the columns
 * @param preamble the lines before the heading
 */
record CsvDialect(char separator, List<String> preamble) {
    static final char[] SEPARATORS = {',', ';', '\t', '|'};
    /** Headers of exports are short; what comes later is no heading. */
    static final int LINES_LOOKED_AT = 100;

    private static final int LONGEST_HEADING = 100_000;

    CsvDialect {
        preamble = List.copyOf(preamble);
    }

    /** The separator as messages call it. */
    String separatorWord() {
        return switch (separator) {
            case ',' -> "commas";
            case ';' -> "semicolons";
            case '\t' -> "tabs";
            default -> "vertical bars";
        };
    }

    /** What separates two columns, in a sentence about one of them. */
    String oneSeparator() {
        return switch (separator) {
            case ',' -> "a comma";
            case ';' -> "a semicolon";
            case '\t' -> "a tab";
            default -> "a vertical bar";
        };
    }

    /**
     * The dialect that the beginning of a text shows. The heading is the first line that names the column part and one that holds
     * values; where no line does, the first with columns of values; failing that, the first that is not blank.
     */
    static CsvDialect of(String beginning, ResolvedPlan plan) {
        List<String> lines = new ArrayList<>();
        beginning.lines().limit(LINES_LOOKED_AT).forEach(lines::add);
        Set<String> numbers = numbersOf(plan);
        return heading(lines, numbers, true)
                .or(() -> heading(lines, numbers, false))
                .orElseGet(() -> fallback(lines));
    }

    /** The numbers of all characteristics, whatever their letter case. */
    static Set<String> numbersOf(ResolvedPlan plan) {
        Set<String> numbers = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        plan.characteristics().forEach(each -> numbers.add(each.number()));
        return numbers;
    }

    private static Optional<CsvDialect> heading(List<String> lines, Set<String> numbers, boolean withPart) {
        for (int i = 0; i < lines.size(); i++) {
            int best = 0;
            char bestSeparator = ',';
            for (char separator : SEPARATORS) {
                int names = namesIn(split(lines.get(i), separator), numbers, withPart);
                if (names > best) {
                    best = names;
                    bestSeparator = separator;
                }
            }
            if (best > 1) {
                return Optional.of(new CsvDialect(bestSeparator, lines.subList(0, i)));
            }
        }
        return Optional.empty();
    }

    private static CsvDialect fallback(List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) {
                char bestSeparator = ',';
                int most = 1;
                for (char separator : SEPARATORS) {
                    int fields = split(lines.get(i), separator).size();
                    if (fields > most) {
                        most = fields;
                        bestSeparator = separator;
                    }
                }
                return new CsvDialect(bestSeparator, List.of());
            }
        }
        return new CsvDialect(',', List.of());
    }

    /** How many of the fields name a column; none if they make no heading. */
    static int namesIn(List<String> fields, Set<String> characteristics, boolean withPart) {
        boolean part = false;
        boolean values = false;
        int names = 0;
        for (String field : fields) {
            Optional<ReadingColumn> column = ReadingColumn.named(field);
            boolean number = column.isEmpty() && characteristics.contains(field);
            if (column.isPresent() || number) {
                names++;
                part |= column.filter(each -> each == ReadingColumn.PART).isPresent();
                values |= number
                        || column.filter(ReadingColumn.OF_LONG_ROWS::contains).isPresent();
            }
        }
        boolean heading = withPart ? part && values : values && fields.size() > 2 && names > 1 && !isRow(fields);
        return heading ? names : 0;
    }

    /** Whether a line is rather a row of numbers than a heading. */
    private static boolean isRow(List<String> fields) {
        return fields.stream().noneMatch(field -> ReadingColumn.named(field).isPresent());
    }

    /** The fields of a line, without the niceties of quotation marks. */
    static List<String> split(String line, char separator) {
        List<String> fields = new ArrayList<>();
        if (line.length() > LONGEST_HEADING) {
            return fields;
        }
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == separator && !quoted) {
                fields.add(Blanks.strip(field.toString()));
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(Blanks.strip(field.toString()));
        return fields;
    }
}
