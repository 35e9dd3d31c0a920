package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** What is to be known of a sheet that was read: formulas, hidden rows and columns, merged cells, numbers of too many digits. */
final class SheetRemarks {
    private static final int PLACES_NAMED = 5;

    private final Where sheet;
    private final BiConsumer<Where, Remark> notices;
    private final Places formulas = new Places();
    private final Places rounded = new Places();
    private final Places hiddenRows = new Places();
    private final List<Remark> others = new ArrayList<>();

    /** A count and the first few places. */
    private static final class Places {
        private final List<String> first = new ArrayList<>();
        private long count;

        void add(String place) {
            count++;
            if (first.size() < PLACES_NAMED) {
                first.add(place);
            }
        }

        String listed() {
            return String.join(", ", first) + (count > first.size() ? ", …" : "");
        }
    }

    SheetRemarks(String file, SheetChoice choice, BiConsumer<Where, Remark> notices) {
        this.sheet = new Where(file, choice.name(), 0, 0, "");
        this.notices = notices;
        if (choice.hidden()) {
            others.add(Remark.of("notice.sheet-hidden", "the sheet is hidden; it was read all the same"));
        }
        if (!choice.unused().isEmpty()) {
            List<String> names = choice.unused();
            others.add(Remark.of(
                    "notice.sheets-unused",
                    "the {0|sheet|sheets} {1} of the workbook {0|was|were} not used",
                    names.size(),
                    names.stream().limit(PLACES_NAMED).map(Echo::quoted).collect(Collectors.joining(", "))
                            + (names.size() > PLACES_NAMED ? ", …" : "")));
        }
    }

    void used(SheetCell cell, Where where) {
        if (cell.formula()) {
            formulas.add(cellOf(where));
        }
        if (cell.rounded()) {
            rounded.add(cellOf(where));
        }
    }

    private static String cellOf(Where where) {
        return where.spot().replaceFirst("^cell ", "");
    }

    void hiddenRow(long number) {
        hiddenRows.add(Long.toString(number));
    }

    void oddHeading(long row, SheetCell cell) {
        notices.accept(
                new Where(sheet.file(), sheet.sheet(), row, cell.column(), ""),
                Remark.of(
                        "notice.heading-no-text",
                        "the name of the column is no text; it was read as {0}",
                        Echo.quoted(cell.text())));
    }

    void layout(SheetTaker.Layout layout, int firstColumn, int columnsOfHeading) {
        int last = firstColumn + columnsOfHeading - 1;
        List<SheetTaker.Range> columns = layout.hidden().stream()
                .filter(range -> range.toColumn() >= firstColumn && range.fromColumn() <= last)
                .map(range -> new SheetTaker.Range(
                        Math.max(range.fromColumn(), firstColumn), 0, Math.min(range.toColumn(), last), 0))
                .toList();
        if (!columns.isEmpty()) {
            boolean one = columns.size() == 1
                    && columns.get(0).fromColumn() == columns.get(0).toColumn();
            others.add(Remark.of(
                    "notice.columns-hidden",
                    "{0|column|columns} {1} {0|is hidden; it was|are hidden; they were} read all the same",
                    one,
                    columns.stream()
                            .limit(PLACES_NAMED)
                            .map(SheetTaker.Range::toString)
                            .collect(Collectors.joining(", "))));
        }
        if (layout.mergedCount() > 0) {
            others.add(Remark.of(
                    "notice.cells-merged",
                    "{0|cells|{0} ranges of cells} are merged ({1}); only the first cell of {0|them|each} holds anything",
                    layout.mergedCount(),
                    layout.merged().stream()
                                    .limit(PLACES_NAMED)
                                    .map(SheetTaker.Range::toString)
                                    .collect(Collectors.joining(", "))
                            + (layout.mergedCount() > PLACES_NAMED ? ", …" : "")));
        }
    }

    /** Says all of it. */
    void say() {
        if (formulas.count > 0) {
            notices.accept(
                    sheet,
                    Remark.of(
                            "notice.formulas",
                            "{0} {0|cell is a formula|cells are formulas}; what is stored as result was read ({1})",
                            formulas.count,
                            formulas.listed()));
        }
        if (rounded.count > 0) {
            notices.accept(
                    sheet,
                    Remark.of(
                            "notice.digits",
                            "{0} {0|number has|numbers have} more than the 15 digits that a spreadsheet keeps; taken to 15 digits ({1})",
                            rounded.count,
                            rounded.listed()));
        }
        if (hiddenRows.count > 0) {
            notices.accept(
                    sheet,
                    Remark.of(
                            "notice.rows-hidden",
                            "{0} {0|row is hidden; it was|rows are hidden; they were} read all the same ({1})",
                            hiddenRows.count,
                            hiddenRows.listed()));
        }
        others.forEach(remark -> notices.accept(sheet, remark));
    }
}
