package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.SheetCell.Kind;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One reading of the sheet that was chosen. */
final class SheetPass implements SheetTaker {
    private static final List<ReadingColumn> NEEDED =
            List.of(ReadingColumn.PART, ReadingColumn.CHARACTERISTIC, ReadingColumn.VALUE);

    private final String file;
    private final Workbook workbook;
    private final SheetChoice choice;
    private final RowCheck check;
    private final Rows sink;
    private final SheetRemarks remarks;
    private final List<Preamble.Line> before = new ArrayList<>();
    private @Nullable Under under;
    private @Nullable MergedRanges merged;
    private int place;
    private boolean anyRow;

    /**
     * A reading of a sheet.
     *
     * @param workbook the workbook, to look for merged cells where a cell that is needed is blank
     */
    SheetPass(String file, Workbook workbook, SheetChoice choice, RowCheck check) {
        this.workbook = workbook;
        this.file = file;
        this.choice = choice;
        this.check = check;
        this.sink = check.sink();
        this.remarks = new SheetRemarks(file, choice, check.sink()::notice);
    }

    /** What is known once the heading was read. */
    private record Under(
            CsvHeading heading, int firstColumn, SheetTableRow row, TableRows rows, MarkWatch<SheetRow> watch) {}

    @Override
    public boolean begin(String name, boolean hidden) {
        return place++ == choice.place();
    }

    @Override
    public boolean row(SheetRow row) {
        Where where = new Where(file, choice.name(), row.number(), 0, "");
        if (row.number() < choice.headingRow()) {
            before.add(new Preamble.Line(where, String.join(", ", row.stated())));
            return true;
        }
        if (row.number() == choice.headingRow()) {
            return heading(row);
        }
        Under known = under;
        if (known == null) {
            throw new IllegalStateException("a row comes before its heading");
        }
        anyRow = true;
        if (row.hidden()) {
            remarks.hiddenRow(row.number());
        }
        known.watch().take(row);
        return true;
    }

    private boolean heading(SheetRow row) {
        Preamble.check(true, new Where(file, choice.name(), 0, 0, ""), before, check.plan(), sink);
        int first = row.cells().get(0).column();
        List<String> names =
                new ArrayList<>(row.texts().subList(first - 1, row.texts().size()));
        Optional<CsvHeading> heading =
                CsvHeading.of(names, new InSheet(file, choice.name(), row.number(), first), ", ", check);
        if (heading.isEmpty()) {
            return false;
        }
        for (SheetCell cell : row.cells()) {
            Where where = new Where(file, choice.name(), row.number(), cell.column(), "");
            if (heading.get().isWide() && !isPlainNumber(cell, where)) {
                return false;
            }
        }
        SheetTableRow table = new SheetTableRow(file, choice.name(), heading.get(), first);
        TableRows rows = new TableRows(check, heading.get());
        under = new Under(
                heading.get(),
                first,
                table,
                rows,
                new MarkWatch<>(
                        true,
                        true,
                        heading.get().marksOr(sink.settings().decimalMark()),
                        sink,
                        heading.get().numbers(),
                        new Texts(first),
                        (each, marks) -> {
                            table.set(each, marks);
                            judge(each);
                        }));
        for (SheetCell cell : row.cells()) {
            if (cell.kind() == Kind.ERROR || cell.kind() == Kind.UNCALCULATED || cell.kind() == Kind.TIME) {
                // A column whose name is no text was perhaps meant for something; its cells are held against it.
                remarks.oddHeading(row.number(), cell);
            }
        }
        return true;
    }

    /** The places of a heading in a sheet: columns have letters. */
    record InSheet(String file, String sheet, long row, int first) implements CsvHeading.Places {
        @Override
        public Where whole() {
            return new Where(file, sheet, row, 0, "");
        }

        @Override
        public Where column(int index) {
            return column(index, "");
        }

        @Override
        public Where column(int index, String label) {
            return new Where(file, sheet, row, index + first, label);
        }

        @Override
        public String nameOf(int index) {
            return Where.letters(index + first);
        }
    }

    /** The texts of a row whose decimal mark is watched for; numbers show none and need none. */
    private final class Texts implements MarkWatch.Rows<SheetRow> {
        private final int first;

        Texts(int first) {
            this.first = first;
        }

        @Override
        public int size(SheetRow row) {
            return Integer.MAX_VALUE;
        }

        @Override
        public String text(SheetRow row, int index) {
            for (SheetCell cell : row.cells()) {
                if (cell.column() == index + first) {
                    return cell.kind() == Kind.TEXT ? cell.text() : "";
                }
            }
            return "";
        }

        @Override
        public int characters(SheetRow row) {
            return row.cells().stream()
                    .mapToInt(cell -> cell.text().length() + 16)
                    .sum();
        }

        @Override
        public Where where(SheetRow row) {
            return new Where(file, choice.name(), row.number(), 0, "");
        }
    }

    private void judge(SheetRow row) {
        Under known = under;
        if (known == null) {
            throw new IllegalStateException("a row comes before its heading");
        }
        sink.begin(known.row());
        if (outside(known, row) && cells(known) && isWhole(known)) {
            known.rows().read(known.row());
        }
        sink.end();
    }

    /** Refuses what stands beside the columns that have names; true if nothing does. */
    private boolean outside(Under known, SheetRow row) {
        for (SheetCell cell : row.cells()) {
            int index = cell.column() - known.firstColumn();
            if (index < 0 || index >= known.heading().size()) {
                sink.refuse(Fault.of(
                        FaultKind.BLANK,
                        known.row().at(cell.column(), ""),
                        "the column has no name",
                        Echo.quoted(cell.text()),
                        "a name in the heading, or nothing in the column"));
                return false;
            }
        }
        return true;
    }

    /** Refuses cells that hold what cannot be meant; true if all are as they may be. */
    private boolean cells(Under known) {
        boolean sound = true;
        CsvHeading heading = known.heading();
        for (ReadingColumn column : ReadingColumn.values()) {
            int index = heading.indexOf(column);
            SheetCell cell = known.row().sheetCell(index);
            if (cell != null) {
                boolean value = ReadingColumn.OF_LONG_ROWS.contains(column) && column != ReadingColumn.CHARACTERISTIC;
                sound &= isSound(
                        cell,
                        known.row().where(column),
                        column == ReadingColumn.TIME,
                        value,
                        column == ReadingColumn.NOTE);
                if (sound && column == ReadingColumn.CHARACTERISTIC) {
                    sound = isPlainNumber(cell, known.row().where(column));
                }
                remarks.used(cell, known.row().where(column));
            }
        }
        for (CsvHeading.Characteristic column : heading.characteristics()) {
            SheetCell cell = known.row().sheetCell(column.index());
            if (cell != null) {
                Where where = known.row().where(column.index(), column.label());
                sound &= isSound(cell, where, false, true, false);
                remarks.used(cell, where);
            }
        }
        return sound;
    }

    /** Refuses a row in which something that is needed is blank because its cell is merged with one above or beside it. */
    private boolean isWhole(Under known) {
        if (known.row().isBlank()) {
            return true;
        }
        for (ReadingColumn column : NEEDED) {
            int index = known.heading().indexOf(column);
            if (index >= 0 && known.row().sheetCell(index) == null) {
                Where where = known.row().where(column);
                String why = merged().why(where);
                if (!why.isEmpty()) {
                    sink.refuse(Fault.of(
                            FaultKind.BLANK,
                            where,
                            why,
                            "nothing",
                            "what holds for the row in a cell of its own; take the merge apart and fill each cell"));
                    return false;
                }
            }
        }
        return true;
    }

    /** The merged cells of the sheet. A workbook states them behind its rows, so they are only looked for where a cell is blank. */
    private MergedRanges merged() {
        MergedRanges known = merged;
        if (known == null) {
            MergedCells cells = new MergedCells(choice.place());
            try {
                workbook.walk(cells);
            } catch (IOException fault) {
                // What ends the sheet ends the reading of its rows too, and is told there.
            }
            known = new MergedRanges(cells.ranges());
            merged = known;
        }
        return known;
    }

    /** Only the merged cells of one sheet. */
    private static final class MergedCells implements SheetTaker {
        private final int wanted;
        private final List<Range> ranges = new ArrayList<>();
        private int place;

        MergedCells(int wanted) {
            this.wanted = wanted;
        }

        List<Range> ranges() {
            return ranges;
        }

        @Override
        public boolean begin(String name, boolean hidden) {
            return place++ == wanted;
        }

        @Override
        public boolean row(SheetRow row) {
            return true;
        }

        @Override
        public void end(Layout layout) {
            ranges.addAll(layout.merged());
        }
    }

    private boolean isSound(SheetCell cell, Where where, boolean time, boolean value, boolean note) {
        return switch (cell.kind()) {
            case TEXT -> true;
            case ERROR ->
                refuse(
                        FaultKind.NOT_A_NUMBER,
                        where,
                        "the cell shows an error of the spreadsheet",
                        cell,
                        "what was measured, or an empty cell");
            case UNCALCULATED ->
                refuse(
                        FaultKind.BLANK,
                        where,
                        "the cell is a formula whose result is not stored",
                        cell,
                        "a workbook that was calculated; open it in a spreadsheet and save it");
            case TRUTH ->
                note
                        || refuse(
                                FaultKind.WRONG_READING,
                                where,
                                "what the tick or the TRUE or FALSE of the cell answers is not known",
                                cell,
                                value ? PassOrFail.EXPECTED + ", or a number" : "text or a number");
            case TIME ->
                time
                        || note
                        || refuse(
                                FaultKind.WRONG_TYPE,
                                where,
                                "the cell holds a date; the spreadsheet has perhaps made one of what was typed",
                                cell,
                                value ? "the value as a number" : "text, in a cell that is formatted as text");
            case DURATION ->
                note
                        || refuse(
                                FaultKind.WRONG_TYPE,
                                where,
                                "the cell holds a time of day or a duration without a date",
                                cell,
                                time ? "a date and a time together" : "the value as a number");
            case NUMBER ->
                !time
                        || refuse(
                                FaultKind.NOT_A_DATE,
                                where,
                                "the cell holds a number that is not formatted as a date",
                                cell,
                                "a date and a time, or text as ISO 8601 writes it");
        };
    }

    private boolean refuse(FaultKind kind, Where where, String message, SheetCell cell, String expected) {
        String found = cell.text().isEmpty() ? "" : Echo.quoted(cell.text());
        sink.refuse(Fault.of(kind, where, message, found, expected));
        return false;
    }

    /** A characteristic 10.10 that is typed as a number is stored as 10.1, and 007 as 7: such a number must mean one alone. */
    private boolean isPlainNumber(SheetCell cell, Where where) {
        if (cell.kind() != Kind.NUMBER) {
            return true;
        }
        List<String> meant = check.plan().characteristics().stream()
                .map(ResolvedCharacteristic::number)
                .filter(number -> SheetNumber.isSameNumber(number, cell.text()))
                .toList();
        if (meant.isEmpty() || (meant.size() == 1 && meant.get(0).equals(cell.text()))) {
            return true;
        }
        sink.refuse(Fault.of(
                FaultKind.AMBIGUOUS_NUMBER,
                where,
                "a spreadsheet stores a number without zeros at its ends, so which characteristic this is cannot be told",
                Echo.quoted(cell.text()),
                Words.oneOf(meant) + ", in a cell that is formatted as text"));
        return false;
    }

    @Override
    public void end(Layout layout) {
        Under known = under;
        if (known == null) {
            return;
        }
        remarks.layout(layout, known.firstColumn(), known.heading().size());
    }

    /** Hands on what still waits, and says what is to be known; also after a fault that ended the file. */
    void finish() {
        Under known = under;
        if (known == null) {
            return;
        }
        known.watch().finish();
        remarks.say();
    }

    /** Refuses a sheet with a heading and nothing under it. */
    void requireRows() {
        if (under != null && !anyRow) {
            sink.refuse(Fault.of(
                    FaultKind.EMPTY,
                    new Where(file, choice.name(), 0, 0, ""),
                    "",
                    "a heading and no rows",
                    "rows under it"));
        }
    }
}
