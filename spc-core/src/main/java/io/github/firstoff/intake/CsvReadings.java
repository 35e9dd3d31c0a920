package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Readings as delimited text (RFC 4180, parted by commas, semicolons, tabs or vertical bars), long with one reading in a row, or wide
 * with one piece in a row and a column per characteristic. Columns are found by their names.
 *
 * <p>Strict: a row has as many fields as the heading, a quotation mark that is opened is closed, and no field runs over a line end,
 * because a lost quotation mark would otherwise swallow rows without a word.
 */
final class CsvReadings implements ReadingSource {
    private static final int MOST_FIELDS = 20_000;
    private static final Pattern LINE = Pattern.compile("\\bline (\\d{1,18})");

    /** Anything that is none of the other formats. */
    @Override
    public boolean recognises(Beginning beginning) {
        return true;
    }

    @Override
    public boolean isOfLines() {
        return true;
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        String file = bytes.input().name();
        TextReader text = TextReader.of(bytes);
        CsvDialect dialect = CsvDialect.of(bytes.beginning().text(), check.plan());
        LimitedLines lines = new LimitedLines(file, text);
        for (int i = 0; i < dialect.preamble().size(); i++) {
            skipLine(lines);
        }
        Preamble.check(file, dialect.preamble(), check.plan(), check.sink());
        if (dialect.separator() != ',') {
            check.sink()
                    .notice(
                            Where.inFile(file),
                            Remark.of(
                                    "notice.separator",
                                    "the columns are parted by {0}",
                                    Remark.word("separator", dialect.separatorWord())));
        }
        CsvReader.CsvReaderBuilder builder = CsvReader.builder()
                .fieldSeparator(dialect.separator())
                .allowExtraFields(true)
                .allowMissingFields(true)
                .skipEmptyLines(true)
                .maxBufferSize(2 * LimitedLines.LONGEST);
        CsvRecordHandler records = CsvRecordHandler.builder()
                .maxFields(MOST_FIELDS)
                .maxFieldSize(LimitedLines.LONGEST)
                .maxRecordSize(LimitedLines.LONGEST)
                .build();
        try (CsvReader<CsvRecord> reader = builder.build(records, new EndMarked(lines))) {
            new Pass(file, check, dialect).read(reader.iterator());
        } catch (UncheckedIOException wrapped) {
            throw wrapped.getCause();
        }
        text.notice().ifPresent(notice -> check.sink().notice(notice.where(), notice.remark()));
    }

    /** A line ends with a line feed, a carriage return or both. */
    private static void skipLine(LimitedLines lines) throws IOException {
        int next = lines.read();
        while (next >= 0 && next != '\n' && next != '\r') {
            next = lines.read();
        }
    }

    /** One reading of one file. */
    private static final class Pass {
        private final String name;
        private final Rows sink;
        private final RowCheck check;
        private final CsvDialect dialect;
        private long reached = 1;
        private boolean cutShort;

        Pass(String name, RowCheck check, CsvDialect dialect) {
            this.name = name;
            this.sink = check.sink();
            this.check = check;
            this.dialect = dialect;
        }

        private long lineOf(CsvRecord record) {
            return record.getStartingLineNumber() + dialect.preamble().size();
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
                Optional<CsvHeading> columns = CsvHeading.of(
                        heading.get().getFields(),
                        new CsvHeading.InText(name, lineOf(heading.get())),
                        String.valueOf(dialect.separator()),
                        check);
                if (columns.isPresent()) {
                    readRows(columns.get(), records);
                }
            } catch (CsvParseException fault) {
                sink.refuse(syntax(fault));
            }
        }

        private void readRows(CsvHeading heading, Iterator<CsvRecord> records) {
            CsvRow row = new CsvRow(name, heading, dialect.preamble().size());
            TableRows rows = new TableRows(check, heading);
            MarkWatch<CsvRecord> watch = new MarkWatch<>(
                    dialect.separator() != ';',
                    dialect.separator() != ',',
                    heading.marksOr(sink.settings().decimalMark()),
                    sink,
                    heading.numbers(),
                    new Records(),
                    (record, marks) -> {
                        row.set(record);
                        row.read(marks);
                        row(row, heading, rows);
                    });
            boolean none = true;
            try {
                Optional<CsvRecord> record = next(records);
                while (record.isPresent()) {
                    none = false;
                    watch.take(record.get());
                    record = next(records);
                }
            } finally {
                // Rows before a fault that ends the file are read all the same, so that all their faults are named.
                watch.finish();
            }
            if (none && !cutShort) {
                sink.refuse(
                        Fault.of(FaultKind.EMPTY, Where.inFile(name), "", "a heading and no rows", "rows under it"));
            }
        }

        private void row(CsvRow row, CsvHeading heading, TableRows rows) {
            sink.begin(row);
            if (!row.isBlank() && hasRightCount(row, heading)) {
                rows.read(row);
            }
            sink.end();
        }

        /** Records as rows whose decimal mark is watched for. */
        private final class Records implements MarkWatch.Rows<CsvRecord> {
            @Override
            public int size(CsvRecord record) {
                return record.getFieldCount();
            }

            @Override
            public String text(CsvRecord record, int index) {
                return Blanks.strip(record.getField(index));
            }

            @Override
            public int characters(CsvRecord record) {
                return record.getFields().stream().mapToInt(String::length).sum();
            }

            @Override
            public Where where(CsvRecord record) {
                return new Where(name, lineOf(record), 0, "");
            }
        }

        /** The next record; empty at the end of the text. */
        private Optional<CsvRecord> next(Iterator<CsvRecord> records) {
            CsvRecord record = records.next();
            reached = lineOf(record);
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
            if (dialect.separator() == ',' && fields == heading.size() + 1 && row.holdsDecimalComma()) {
                message =
                        "a comma between digits parts two fields; with a decimal comma, something else must part the columns";
            }
            sink.refuse(Fault.of(
                    FaultKind.WRONG_FIELD_COUNT,
                    new Where(name, row.line(), 0, ""),
                    message,
                    fields + (fields == 1 ? " field" : " fields"),
                    heading.size() + " as in the heading"));
            return false;
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
                        dialect.oneSeparator() + " after it, and a quotation mark within quotation marks doubled");
            }
            if (said.matches("(?s).*maximum limit of \\d+ fields.*")) {
                return Fault.of(
                        FaultKind.TOO_LARGE,
                        where,
                        "",
                        "a row of more than " + MOST_FIELDS + " fields",
                        "a row for a piece or for a reading");
            }
            if (said.contains("buffer size") || said.contains("exceeds the max")) {
                return Fault.of(
                        FaultKind.TOO_LARGE,
                        where,
                        "a row is longer than a million characters; a quotation mark is perhaps missing",
                        "",
                        "short rows");
            }
            return Fault.of(FaultKind.SYNTAX, where, "this is no CSV (" + Echo.plain(said) + ")", "", "");
        }

        /** The parser names the line of the record in its messages; failing that, the line after the last good record. */
        private long lineOf(CsvParseException fault) {
            for (Throwable each = fault; each != null; each = each.getCause()) {
                Matcher line = LINE.matcher(each.getMessage() == null ? "" : each.getMessage());
                if (line.find()) {
                    return Long.parseLong(line.group(1)) + dialect.preamble().size();
                }
            }
            return reached + 1;
        }
    }
}
