package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A plan from a table of text: one row for each characteristic under a heading that names the columns, and above the heading, if
 * anything, lines that say of the part and the drawing what no column does.
 */
final class CsvPlan implements PlanSource {
    private static final char[] SEPARATORS = {',', ';', '\t', '|'};
    private static final int LINES_LOOKED_AT = 100;
    private static final int LONGEST_HEADING = 20_000;
    private static final int LINES_QUOTED = 5;

    @Override
    public String word() {
        return "csv";
    }

    @Override
    public boolean recognises(Beginning beginning) {
        return true;
    }

    @Override
    public PlanTable read(InputBytes bytes, QifLibrary library, FaultCollector faults) throws IOException {
        TextReader reader = TextReader.of(bytes);
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[8192];
        int count = reader.read(buffer, 0, buffer.length);
        while (count >= 0) {
            text.append(buffer, 0, count);
            count = reader.read(buffer, 0, buffer.length);
        }
        reader.notice().ifPresent(notice -> faults.notice(notice.where(), notice.message()));
        return new Pass(bytes.input().name(), text.toString(), faults).table();
    }

    /** A line that could be the heading. */
    private record Heading(int line, char separator, int names) {}

    private static final class Pass {
        private final String file;
        private final List<String> lines;
        private final FaultCollector faults;
        private final Map<PlanFact, PlanTable.Text> facts = new EnumMap<>(PlanFact.class);
        private final List<PlanTable.Row> rows = new ArrayList<>();

        Pass(String file, String text, FaultCollector faults) {
            this.file = file;
            this.lines = text.lines().toList();
            this.faults = faults;
        }

        PlanTable table() {
            Optional<Heading> heading = heading();
            if (heading.isEmpty()) {
                boolean blank = lines.stream().allMatch(String::isBlank);
                boolean json = lines.stream()
                        .filter(line -> !line.isBlank())
                        .findFirst()
                        .filter(line -> line.strip().startsWith("{"))
                        .isPresent();
                if (json) {
                    faults.refuse(Fault.of(
                            FaultKind.WRONG_FORMAT,
                            Where.inFile(file),
                            "",
                            "a JSON document, which is perhaps a plan already",
                            "a table of text, or QIF"));
                    return new PlanTable(facts, rows);
                }
                faults.refuse(Fault.of(
                        blank ? FaultKind.EMPTY : FaultKind.MISSING,
                        Where.inFile(file),
                        blank ? "" : "no line names the columns of a plan",
                        blank ? "an empty file" : "",
                        "a heading such as number,feature,requirement,class,gauge,study"));
                return new PlanTable(facts, rows);
            }
            preamble(heading.get());
            body(heading.get());
            return new PlanTable(facts, rows);
        }

        /** The line that names most columns, the first of several; one column alone makes no heading. */
        private Optional<Heading> heading() {
            Heading best = null;
            for (int i = 0; i < Math.min(lines.size(), LINES_LOOKED_AT); i++) {
                String line = lines.get(i);
                if (line.length() > LONGEST_HEADING) {
                    continue;
                }
                for (char separator : SEPARATORS) {
                    List<String> fields = CsvDialect.split(line, separator);
                    int names = (int) fields.stream()
                            .map(PlanColumn::named)
                            .flatMap(Optional::stream)
                            .distinct()
                            .count();
                    if (names > 1 && (best == null || names > best.names())) {
                        best = new Heading(i, separator, names);
                    }
                }
            }
            return Optional.ofNullable(best);
        }

        private void preamble(Heading heading) {
            List<String> unused = new ArrayList<>();
            for (int i = 0; i < heading.line(); i++) {
                String line = lines.get(i);
                if (!line.isBlank() && !says(line, i + 1, heading.separator())) {
                    unused.add("line " + (i + 1) + " " + Echo.quoted(line.strip()));
                }
            }
            if (!unused.isEmpty()) {
                faults.notice(
                        Where.inFile(file),
                        "before the heading was not used: "
                                + String.join(", ", unused.subList(0, Math.min(LINES_QUOTED, unused.size())))
                                + (unused.size() > LINES_QUOTED ? ", …" : ""));
            }
        }

        /** Takes what a line above the heading says, label before value; whether it says anything. */
        private boolean says(String line, int number, char separator) {
            List<String> fields = new ArrayList<>();
            for (String field : CsvDialect.split(line, separator)) {
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
                    Where where = new Where(file, number, 0, fact.get().word());
                    PlanTable.Text twin = facts.putIfAbsent(fact.get(), new PlanTable.Text(fields.get(i + 1), where));
                    if (twin != null && !twin.text().equals(fields.get(i + 1))) {
                        faults.refuse(Fault.of(
                                FaultKind.CONTRADICTION,
                                where,
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

        private void body(Heading heading) {
            String rest = String.join("\n", lines.subList(heading.line(), lines.size()));
            try (CsvReader<CsvRecord> reader = CsvReader.builder()
                    .fieldSeparator(heading.separator())
                    .allowExtraFields(true)
                    .allowMissingFields(true)
                    .skipEmptyLines(true)
                    .ofCsvRecord(new StringReader(rest))) {
                Optional<Columns> columns = Optional.empty();
                for (CsvRecord record : reader) {
                    long line = heading.line() + record.getStartingLineNumber();
                    if (columns.isEmpty()) {
                        columns = Optional.of(new Columns(record, line));
                        if (!columns.get().sound) {
                            return;
                        }
                    } else {
                        row(columns.get(), record, line);
                    }
                }
            } catch (CsvParseException fault) {
                faults.refuse(Fault.of(
                        FaultKind.SYNTAX,
                        Where.inFile(file),
                        "the table cannot be parted into fields; a quotation mark is perhaps missing",
                        "",
                        "quotation marks in pairs, and doubled within quotation marks"));
            } catch (IOException impossible) {
                throw new IllegalStateException("a text in memory cannot fail to be read", impossible);
            }
            if (rows.isEmpty() && faults.isEmpty()) {
                faults.refuse(
                        Fault.of(FaultKind.EMPTY, Where.inFile(file), "", "a heading and no rows", "rows under it"));
            }
        }

        private void row(Columns columns, CsvRecord record, long line) {
            if (record.getFields().stream().allMatch(String::isBlank)) {
                return;
            }
            if (record.getFields().stream().anyMatch(field -> field.indexOf('\n') >= 0)) {
                faults.refuse(Fault.of(
                        FaultKind.SYNTAX,
                        new Where(file, line, 0, ""),
                        "a quotation mark that is opened here closes in another line or never",
                        "",
                        "quotation marks in pairs, and doubled within quotation marks"));
                return;
            }
            if (record.getFieldCount() != columns.size) {
                faults.refuse(Fault.of(
                        FaultKind.WRONG_FIELD_COUNT,
                        new Where(file, line, 0, ""),
                        record.getFieldCount() > columns.size
                                ? "a requirement that holds the separator stands in quotation marks"
                                : "",
                        record.getFieldCount() + (record.getFieldCount() == 1 ? " field" : " fields"),
                        columns.size + " as in the heading"));
                return;
            }
            Map<PlanColumn, PlanTable.Text> texts = new EnumMap<>(PlanColumn.class);
            columns.places.forEach((column, index) -> {
                String text = record.getField(index).strip();
                Where where = new Where(file, line, 0, "column " + columns.names.get(column));
                int harmful = Echo.firstHarmful(text);
                if (harmful >= 0) {
                    faults.refuse(Fault.of(
                            FaultKind.UNREADABLE_TEXT,
                            where,
                            "",
                            Echo.character(text.charAt(harmful)) + " in " + Echo.quoted(text),
                            "one line of text without control characters"));
                }
                texts.put(column, new PlanTable.Text(text, where));
            });
            rows.add(new PlanTable.Row(new Where(file, line, 0, ""), texts));
        }

        /** What the columns of the table are. */
        private final class Columns {
            private final Map<PlanColumn, Integer> places = new EnumMap<>(PlanColumn.class);
            private final Map<PlanColumn, String> names = new EnumMap<>(PlanColumn.class);
            private final Set<String> misspelt = new HashSet<>();
            private final int size;
            private final boolean sound;

            Columns(CsvRecord record, long line) {
                long before = faults.count();
                size = record.getFieldCount();
                for (int i = 0; i < size; i++) {
                    String name = record.getField(i).strip();
                    Optional<PlanColumn> known = PlanColumn.named(name);
                    Where where = new Where(file, line, 0, "column " + (i + 1));
                    if (known.isPresent()) {
                        known(known.get(), i, name, where);
                    } else if (!name.isEmpty()) {
                        unknown(name, where);
                    }
                }
                for (PlanColumn needed : List.of(PlanColumn.NUMBER, PlanColumn.FEATURE, PlanColumn.REQUIREMENT)) {
                    if (!places.containsKey(needed) && !misspelt.contains(needed.word())) {
                        faults.refuse(Fault.of(
                                FaultKind.MISSING,
                                new Where(file, line, 0, ""),
                                "the column " + needed.word() + " is missing",
                                "the columns " + Echo.quoted(String.join(",", record.getFields())),
                                "a column named " + needed.word()));
                    }
                }
                sound = faults.count() == before;
            }

            private void known(PlanColumn column, int index, String name, Where where) {
                Integer twin = places.putIfAbsent(column, index);
                names.putIfAbsent(column, Echo.plain(name));
                if (twin != null) {
                    faults.refuse(Fault.of(
                            FaultKind.DOUBLED_NAME,
                            where,
                            "the columns " + (twin + 1) + " and " + (index + 1) + " mean the same",
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
                    faults.notice(where, Echo.quoted(name) + " is not understood and was not used");
                }
            }
        }
    }
}
