package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** What is to be known of a sheet that was read: formulas, hidden rows and columns, merged cells, numbers of too many digits. */
final class SheetRemarks {
    private static final int PLACES_NAMED = 5;

    private final Where sheet;
    private final BiConsumer<Where, String> notices;
    private final Places formulas = new Places();
    private final Places rounded = new Places();
    private final Places hiddenRows = new Places();
    private final List<String> others = new ArrayList<>();

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

    SheetRemarks(String file, SheetChoice choice, BiConsumer<Where, String> notices) {
        this.sheet = new Where(file, choice.name(), 0, 0, "");
        this.notices = notices;
        if (choice.hidden()) {
            others.add("the sheet is hidden; it was read all the same");
        }
        if (!choice.unused().isEmpty()) {
            List<String> names = choice.unused();
            others.add((names.size() == 1 ? "the sheet " : "the sheets ")
                    + names.stream().limit(PLACES_NAMED).map(Echo::quoted).collect(Collectors.joining(", "))
                    + (names.size() > PLACES_NAMED ? ", …" : "")
                    + (names.size() == 1 ? " of the workbook was not used" : " of the workbook were not used"));
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
                "the name of the column is no text; it was read as " + Echo.quoted(cell.text()));
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
            others.add((one ? "column " : "columns ")
                    + columns.stream()
                            .limit(PLACES_NAMED)
                            .map(SheetTaker.Range::toString)
                            .collect(Collectors.joining(", "))
                    + (one ? " is hidden; it was read all the same" : " are hidden; they were read all the same"));
        }
        if (layout.mergedCount() > 0) {
            boolean one = layout.mergedCount() == 1;
            others.add((one ? "cells are merged (" : layout.mergedCount() + " ranges of cells are merged (")
                    + layout.merged().stream().map(SheetTaker.Range::toString).collect(Collectors.joining(", "))
                    + (layout.mergedCount() > layout.merged().size() ? ", …" : "")
                    + "); only the first cell of " + (one ? "them" : "each") + " holds anything");
        }
    }

    /** Says all of it. */
    void say() {
        if (formulas.count > 0) {
            notices.accept(
                    sheet,
                    (formulas.count == 1 ? "1 cell is a formula" : formulas.count + " cells are formulas")
                            + "; what is stored as result was read (" + formulas.listed() + ")");
        }
        if (rounded.count > 0) {
            notices.accept(
                    sheet,
                    (rounded.count == 1 ? "1 number has" : rounded.count + " numbers have")
                            + " more than the 15 digits that a spreadsheet keeps; taken to 15 digits ("
                            + rounded.listed() + ")");
        }
        if (hiddenRows.count > 0) {
            notices.accept(
                    sheet,
                    (hiddenRows.count == 1
                                    ? "1 row is hidden; it was read all the same ("
                                    : hiddenRows.count + " rows are hidden; they were read all the same (")
                            + hiddenRows.listed() + ")");
        }
        others.forEach(text -> notices.accept(sheet, text));
    }
}
