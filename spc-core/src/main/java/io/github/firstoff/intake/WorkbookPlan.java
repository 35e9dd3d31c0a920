package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.SheetCell.Kind;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A plan from a sheet of a workbook: one row for each characteristic under a heading that names the columns, and above it what no column
 * says, as in {@link CsvPlan}.
 */
final class WorkbookPlan implements PlanSource {
    private static final int LINES_QUOTED = 5;
    private static final Set<PlanColumn> STATING =
            EnumSet.of(PlanColumn.REQUIREMENT, PlanColumn.NOMINAL, PlanColumn.LOWER_LIMIT, PlanColumn.UPPER_LIMIT);

    private final boolean openDocument;

    /**
     * Workbooks of one kind.
     *
     * @param openDocument whether those of OpenDocument, or all others
     */
    WorkbookPlan(boolean openDocument) {
        this.openDocument = openDocument;
    }

    @Override
    public String word() {
        return openDocument ? "ods" : "xlsx";
    }

    @Override
    public boolean recognises(Beginning beginning) {
        return WorkbookFile.recognises(beginning) && WorkbookFile.saysOpenDocument(beginning) == openDocument;
    }

    @Override
    public PlanTable read(InputBytes bytes, QifLibrary library, Optional<String> sheet, FaultCollector faults)
            throws IOException {
        String file = bytes.input().name();
        try (Workbook workbook = WorkbookFile.open(bytes)) {
            workbook.notices().forEach(notice -> faults.notice(Where.inFile(file), notice));
            SheetChoice choice = SheetChoice.of(
                    file, workbook, sheet, WorkbookPlan::score, "number,feature,requirement,class,gauge,study");
            Pass pass = new Pass(file, choice, faults);
            workbook.walk(pass);
            return pass.table();
        }
    }

    /** Of several rows that name columns, the one that names most is the heading. */
    private static int score(List<String> fields) {
        int names = PlanGrid.namesIn(fields);
        if (names < 2) {
            return 0;
        }
        List<PlanColumn> named =
                fields.stream().map(PlanColumn::named).flatMap(Optional::stream).toList();
        boolean number = named.contains(PlanColumn.NUMBER) || fields.stream().anyMatch(PlanColumn::isNumberOrFeature);
        boolean sure = number && named.stream().anyMatch(STATING::contains);
        return sure ? SheetChoice.SURE + names : names;
    }

    private static final class Pass implements SheetTaker {
        private final String file;
        private final SheetChoice choice;
        private final FaultCollector faults;
        private final PlanGrid grid;
        private final SheetRemarks remarks;
        private final List<String> unused = new ArrayList<>();
        private int first;
        private int place;

        Pass(String file, SheetChoice choice, FaultCollector faults) {
            this.file = file;
            this.choice = choice;
            this.faults = faults;
            this.grid = new PlanGrid(faults);
            this.remarks = new SheetRemarks(file, choice, faults::notice);
        }

        private Where sheet() {
            return new Where(file, choice.name(), 0, 0, "");
        }

        PlanTable table() {
            if (!grid.hasRows() && faults.isEmpty()) {
                faults.refuse(Fault.of(FaultKind.EMPTY, sheet(), "", "a heading and no rows", "rows under it"));
            }
            grid.tellFeet(sheet());
            remarks.say();
            return grid.table();
        }

        @Override
        public boolean begin(String name, boolean hidden) {
            return place++ == choice.place();
        }

        @Override
        public boolean row(SheetRow row) {
            if (row.number() < choice.headingRow()) {
                boolean says = grid.says(row.stated(), new Where(file, choice.name(), row.number(), 0, ""));
                if (!says) {
                    unused.add("row " + row.number() + " " + Echo.quoted(String.join(", ", row.stated())));
                }
                return true;
            }
            if (row.number() == choice.headingRow()) {
                grid.unused(sheet(), unused, LINES_QUOTED);
                first = row.cells().get(0).column();
                return grid.heading(row.texts().subList(first - 1, row.texts().size()), places(row.number()));
            }
            if (row.hidden()) {
                remarks.hiddenRow(row.number());
            }
            Where whole = new Where(file, choice.name(), row.number(), 0, "");
            List<String> texts = row.texts();
            if (grid.isNoCharacteristic(texts.subList(Math.min(first - 1, texts.size()), texts.size()), whole)) {
                return true;
            }
            List<String> fields = new ArrayList<>();
            BitSet numbers = new BitSet();
            for (int i = 0; i < grid.size(); i++) {
                fields.add("");
            }
            boolean sound = true;
            for (SheetCell cell : row.cells()) {
                int index = cell.column() - first;
                Where where = new Where(file, choice.name(), row.number(), cell.column(), "");
                if (index < 0 || index >= fields.size()) {
                    sound = false;
                    faults.refuse(Fault.of(
                            FaultKind.BLANK,
                            where,
                            "the column has no name",
                            Echo.quoted(cell.text()),
                            "a name in the heading, or nothing in the column"));
                } else {
                    fields.set(index, cell.text());
                    numbers.set(index, cell.kind() == Kind.NUMBER);
                    if (grid.isUsed(index)) {
                        remarks.used(cell, where);
                        sound &= isText(cell, where);
                    }
                }
            }
            if (sound) {
                grid.row(fields, numbers, places(row.number()));
            }
            return true;
        }

        private CsvHeading.Places places(long row) {
            return new SheetPass.InSheet(file, choice.name(), row, first);
        }

        /** A requirement such as 5-3 that became a date, or an error of the spreadsheet, says nothing that could be meant. */
        private boolean isText(SheetCell cell, Where where) {
            String message = switch (cell.kind()) {
                case TEXT, NUMBER -> "";
                case TIME, DURATION -> "the cell holds a date; the spreadsheet has perhaps made one of what was typed";
                case TRUTH -> "what the TRUE or FALSE of the cell means here is not known";
                case ERROR -> "the cell shows an error of the spreadsheet";
                case UNCALCULATED -> "the cell is a formula whose result is not stored";
            };
            if (message.isEmpty()) {
                return true;
            }
            faults.refuse(Fault.of(
                    cell.kind() == Kind.UNCALCULATED ? FaultKind.BLANK : FaultKind.WRONG_TYPE,
                    where,
                    message,
                    cell.text().isEmpty() ? "" : Echo.quoted(cell.text()),
                    "text, in a cell that is formatted as text"));
            return false;
        }

        @Override
        public void end(Layout layout) {
            grid.merged(layout.merged());
            remarks.layout(layout, first, grid.size());
        }
    }
}
