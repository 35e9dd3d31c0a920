package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Optional;

/**
 * Readings as comma-separated values (RFC 4180), long with one reading in a row, or wide with one piece in a row and a column per
 * characteristic. Columns are found by their names.
 *
 * <p>Strict: a row has as many fields as the heading, a quotation mark that is opened is closed, and no field runs over a line end,
 * because a lost quotation mark would otherwise swallow rows without a word.
 */
final class CsvReadings implements ReadingSource {
    private static final int LONGEST_FIELD = 1 << 20;

    @Override
    public void read(String file, Reader text, RowCheck check) throws IOException {
        CsvReader.CsvReaderBuilder builder = CsvReader.builder()
                .fieldSeparator(',')
                .allowExtraFields(true)
                .allowMissingFields(true)
                .skipEmptyLines(true)
                .maxBufferSize(LONGEST_FIELD);
        try (CsvReader<CsvRecord> reader = builder.ofCsvRecord(new EndMarked(text))) {
            new Pass(file, check).read(reader.iterator());
        } catch (UncheckedIOException wrapped) {
            throw wrapped.getCause();
        }
    }

    /** One reading of one file. */
    private static final class Pass {
        private final String name;
        private final ReadingSink sink;
        private final RowCheck check;
        private long reached = 1;
        private boolean cutShort;

        Pass(String name, RowCheck check) {
            this.name = name;
            this.sink = check.sink();
            this.check = check;
        }

        void read(Iterator<CsvRecord> records) {
            try {
                Optional<CsvRecord> heading = next(records);
                if (heading.isEmpty()) {
                    sink.refuse(Fault.of(
                            FaultKind.EMPTY,
                            Where.inFile(name),
                            "",
                            "an empty file",
                            "a heading such as part,characteristic,value and rows under it"));
                    return;
                }
                Optional<CsvHeading> columns = CsvHeading.of(name, heading.get(), check);
                if (columns.isPresent()) {
                    readRows(columns.get(), records);
                }
            } catch (CsvParseException fault) {
                sink.refuse(syntax(fault));
            }
        }

        private void readRows(CsvHeading heading, Iterator<CsvRecord> records) {
            CsvRow row = new CsvRow(name, heading);
            boolean none = true;
            Optional<CsvRecord> record = next(records);
            while (record.isPresent()) {
                none = false;
                row.set(record.get());
                if (!row.isBlank() && hasRightCount(row, heading) && hasNamesForAll(row, heading)) {
                    if (heading.isWide()) {
                        wide(row, heading);
                    } else {
                        readLong(row);
                    }
                }
                record = next(records);
            }
            if (none && !cutShort) {
                sink.refuse(
                        Fault.of(FaultKind.EMPTY, Where.inFile(name), "", "a heading and no rows", "rows under it"));
            }
        }

        /** The next record; empty at the end of the text. */
        private Optional<CsvRecord> next(Iterator<CsvRecord> records) {
            CsvRecord record = records.next();
            reached = record.getStartingLineNumber();
            int last = record.getFieldCount() - 1;
            String field = record.getField(last);
            if (!EndMarked.isIn(field)) {
                return Optional.of(record);
            }
            if (last > 0 || field.length() > 1) {
                cutShort = true;
                sink.refuse(Fault.of(
                        FaultKind.SYNTAX,
                        new Where(name, reached, 0, ""),
                        "a quotation mark is opened in this row and never closed; the rest of the file was not read",
                        "",
                        "a closing quotation mark"));
            }
            return Optional.empty();
        }

        private boolean hasRightCount(CsvRow row, CsvHeading heading) {
            int fields = row.fieldCount();
            if (fields == heading.size()) {
                return true;
            }
            String message = "";
            if (fields == heading.size() + 1 && row.holdsDecimalComma()) {
                message = "a comma between digits parts two fields; the decimal mark is the point";
            }
            sink.refuse(Fault.of(
                    FaultKind.WRONG_FIELD_COUNT,
                    new Where(name, row.line(), 0, ""),
                    message,
                    fields + (fields == 1 ? " field" : " fields"),
                    heading.size() + " as in the heading"));
            return false;
        }

        private boolean hasNamesForAll(CsvRow row, CsvHeading heading) {
            for (int index : heading.nameless()) {
                if (!row.text(index).isEmpty()) {
                    sink.refuse(Fault.of(
                            FaultKind.BLANK,
                            new Where(name, row.line(), 0, "column " + (index + 1)),
                            "the column has no name",
                            Echo.quoted(row.text(index)),
                            "a name in the heading, or nothing in the column"));
                    return false;
                }
            }
            return true;
        }

        private void readLong(CsvRow row) {
            Optional<RowCheck.Head> head = check.head(row);
            Optional<ResolvedCharacteristic> characteristic = check.characteristic(
                    row.text(ReadingColumn.CHARACTERISTIC), row.where(ReadingColumn.CHARACTERISTIC));
            if (check.values().hasOneReading(row) && head.isPresent() && characteristic.isPresent()) {
                check.values().ofRow(head.get(), characteristic.get(), row);
            }
        }

        private void wide(CsvRow row, CsvHeading heading) {
            Optional<RowCheck.Head> head = check.head(row);
            if (head.isEmpty()) {
                return;
            }
            for (CsvHeading.Characteristic column : heading.characteristics()) {
                String value = row.text(column.index());
                if (!value.isEmpty()) {
                    Where where = new Where(name, row.line(), 0, column.label());
                    check.values()
                            .wideValue(head.get(), column.characteristic(), new Cell(value, Cell.Form.TEXT, where));
                }
            }
        }

        private Fault syntax(CsvParseException fault) {
            Throwable cause = fault.getCause() == null ? fault : fault.getCause();
            String said = cause.getMessage() == null ? "" : cause.getMessage();
            Where where = new Where(name, lineOf(fault), 0, "");
            if (said.contains("after closing quote")) {
                return Fault.of(
                        FaultKind.SYNTAX,
                        where,
                        "there is text after a closing quotation mark; the rest of the file was not read",
                        "",
                        "a comma after it, and a quotation mark within quotation marks doubled");
            }
            if (said.contains("buffer size")) {
                return Fault.of(
                        FaultKind.SYNTAX,
                        where,
                        "a field is longer than a million characters; a quotation mark is perhaps missing",
                        "",
                        "short fields");
            }
            return Fault.of(FaultKind.SYNTAX, where, "this is no CSV (" + Echo.plain(said) + ")", "", "");
        }

        /** The parser names the line of the record in its message; failing that, the line after the last good record. */
        private long lineOf(CsvParseException fault) {
            String said = fault.getMessage() == null ? "" : fault.getMessage();
            int at = said.lastIndexOf("line ");
            if (at >= 0 && said.substring(at + 5).matches("\\d{1,18}")) {
                return Long.parseLong(said.substring(at + 5));
            }
            return reached + 1;
        }
    }
}
