package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
    public PlanTable read(InputBytes bytes, QifLibrary library, Optional<String> sheet, FaultCollector faults)
            throws IOException {
        TextReader reader = TextReader.of(bytes);
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[8192];
        int count = reader.read(buffer, 0, buffer.length);
        while (count >= 0) {
            text.append(buffer, 0, count);
            count = reader.read(buffer, 0, buffer.length);
        }
        reader.notice().ifPresent(notice -> faults.notice(notice.where(), notice.remark()));
        return new Pass(bytes.input().name(), text.toString(), faults).table();
    }

    /** A line that could be the heading. */
    private record Heading(int line, char separator, int names) {}

    private static final class Pass {
        private final String file;
        private final List<String> lines;
        private final FaultCollector faults;
        private final PlanGrid grid;

        Pass(String file, String text, FaultCollector faults) {
            this.file = file;
            this.lines = text.lines().toList();
            this.faults = faults;
            this.grid = new PlanGrid(faults);
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
                    return grid.table();
                }
                faults.refuse(Fault.of(
                        blank ? FaultKind.EMPTY : FaultKind.MISSING,
                        Where.inFile(file),
                        blank ? "" : "no line names the columns of a plan",
                        blank ? "an empty file" : "",
                        PlanGrid.HEADING));
                return grid.table();
            }
            preamble(heading.get());
            body(heading.get());
            return grid.table();
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
                    int names = PlanGrid.namesIn(fields);
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
                boolean says = grid.says(CsvDialect.split(line, heading.separator()), new Where(file, i + 1L, 0, ""));
                if (!line.isBlank() && !says) {
                    unused.add("line " + (i + 1) + " " + Echo.quoted(line.strip()));
                }
            }
            grid.unused(Where.inFile(file), unused, LINES_QUOTED);
        }

        private void body(Heading heading) {
            String rest = String.join("\n", lines.subList(heading.line(), lines.size()));
            try (CsvReader<CsvRecord> reader = CsvReader.builder()
                    .fieldSeparator(heading.separator())
                    .allowExtraFields(true)
                    .allowMissingFields(true)
                    .skipEmptyLines(true)
                    .ofCsvRecord(new StringReader(rest))) {
                boolean underHeading = false;
                for (CsvRecord record : reader) {
                    long line = heading.line() + record.getStartingLineNumber();
                    if (!underHeading) {
                        underHeading = true;
                        if (!grid.heading(record.getFields(), new CsvHeading.InText(file, line))) {
                            return;
                        }
                    } else {
                        row(record, line);
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
            grid.tellFeet(Where.inFile(file));
            if (!grid.hasRows() && faults.isEmpty()) {
                faults.refuse(
                        Fault.of(FaultKind.EMPTY, Where.inFile(file), "", "a heading and no rows", "rows under it"));
            }
        }

        private void row(CsvRecord record, long line) {
            if (record.getFields().stream().allMatch(String::isBlank)
                    || grid.isNoCharacteristic(record.getFields(), new Where(file, line, 0, ""))) {
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
            if (record.getFieldCount() != grid.size()) {
                faults.refuse(Fault.of(
                        FaultKind.WRONG_FIELD_COUNT,
                        new Where(file, line, 0, ""),
                        record.getFieldCount() > grid.size()
                                ? "a requirement that holds the separator stands in quotation marks"
                                : "",
                        record.getFieldCount() + (record.getFieldCount() == 1 ? " field" : " fields"),
                        grid.size() + " as in the heading"));
                return;
            }
            grid.row(record.getFields(), new CsvHeading.InText(file, line));
        }
    }
}
