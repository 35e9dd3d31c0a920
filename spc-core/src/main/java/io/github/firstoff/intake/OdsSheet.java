package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.SheetCell.Kind;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * One sheet of an OpenDocument workbook (ISO/IEC 26300-1:2015, 9.1), row by row. Cells and rows that say that they stand several times are
 * given so many times, within the bounds of a sheet; empty ones are only counted.
 */
final class OdsSheet {
    private static final int MOST_RANGES = 1000;
    private static final int RANGES_KEPT = 10_000;
    private static final long MOST_CELLS = 50_000_000;

    private final String file;
    private final String name;
    private final SheetXml xml;
    private final List<SheetTaker.Range> hidden = new ArrayList<>();
    private final List<SheetTaker.Range> merged = new ArrayList<>();
    private long mergedCount;
    private long row;
    private int column;
    private int columns;
    private long given;

    OdsSheet(String file, String name, SheetXml xml) {
        this.file = file;
        this.name = name;
        this.xml = xml;
    }

    private Where here() {
        return new Where(file, name, row, column, "");
    }

    /** Reads to the end tag of the sheet, whose start tag was read. */
    void read(SheetTaker taker) throws IOException {
        int inside = xml.depth();
        boolean wanted = true;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (event == SheetXml.Event.START) {
                switch (xml.name()) {
                    case "table-column" -> column();
                    case "table-row" -> {
                        if (wanted) {
                            wanted = row(taker);
                        } else {
                            xml.skip();
                        }
                    }
                    case "table-header-columns",
                            "table-columns",
                            "table-column-group",
                            "table-header-rows",
                            "table-rows",
                            "table-row-group" -> {
                        // only groups what counts
                    }
                    default -> xml.skip();
                }
            }
            event = xml.next();
        }
        if (wanted) {
            taker.end(new SheetTaker.Layout(hidden, merged, mergedCount));
        }
    }

    private void column() throws TextRefused {
        int count = repeated("number-columns-repeated", XlsxSheet.MOST_COLUMNS);
        if (isHidden() && hidden.size() < MOST_RANGES) {
            hidden.add(new SheetTaker.Range(columns + 1, 0, columns + count, 0));
        }
        columns = Math.min(columns + count, XlsxSheet.MOST_COLUMNS);
    }

    private boolean isHidden() {
        return xml.maybe("visibility")
                .filter(seen -> seen.equals("collapse") || seen.equals("filter"))
                .isPresent();
    }

    private int repeated(String attribute, long most) throws TextRefused {
        String text = xml.attribute(attribute);
        if (text == null) {
            return 1;
        }
        boolean number = !text.isEmpty()
                && text.length() <= 9
                && text.chars().allMatch(c -> c >= '0' && c <= '9')
                && !text.matches("0+");
        if (!number) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    here(),
                    "the workbook is damaged: how often this stands here is no number; the rest was not read",
                    Echo.quoted(text),
                    "a whole number above 0"));
        }
        return (int) Math.min(Integer.parseInt(text), most);
    }

    private boolean row(SheetTaker taker) throws IOException {
        int times = repeated("number-rows-repeated", XlsxSheet.MOST_ROWS);
        boolean isHidden = isHidden();
        row++;
        column = 0;
        xml.at(here());
        List<SheetCell> cells = new ArrayList<>();
        int inside = xml.depth();
        while (xml.next() != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (xml.isAtStart()
                    && (xml.name().equals("table-cell") || xml.name().equals("covered-table-cell"))) {
                cell(cells);
            }
        }
        column = 0;
        if (cells.isEmpty()) {
            row += times - 1L;
            return true;
        }
        boolean wanted = true;
        for (int i = 0; i < times && wanted; i++) {
            if (i > 0) {
                row++;
            }
            if (row > XlsxSheet.MOST_ROWS) {
                throw new TextRefused(Fault.of(
                        FaultKind.TOO_LARGE,
                        Where.inFile(file),
                        "",
                        "a sheet of more than " + XlsxSheet.MOST_ROWS + " rows",
                        "a workbook of readings"));
            }
            given += cells.size();
            if (given > MOST_CELLS) {
                throw new TextRefused(Fault.of(
                        FaultKind.TOO_LARGE,
                        here(),
                        "",
                        "a sheet of more than " + MOST_CELLS / 1_000_000 + " million cells with something in them",
                        "a workbook of readings"));
            }
            wanted = taker.row(new SheetRow(row, isHidden, cells));
        }
        return wanted;
    }

    private void cell(List<SheetCell> cells) throws IOException {
        int times = repeated("number-columns-repeated", Integer.MAX_VALUE);
        int first = column + 1;
        column = first;
        merge(first);
        SheetCell cell = content(first);
        if (!cell.isBlank()) {
            if ((long) first + times - 1 > XlsxSheet.MOST_COLUMNS) {
                throw new TextRefused(Fault.of(
                        FaultKind.TOO_LARGE,
                        Where.inFile(file),
                        "",
                        "a sheet of more than " + XlsxSheet.MOST_COLUMNS + " columns",
                        "a workbook of readings"));
            }
            for (int i = 0; i < times; i++) {
                cells.add(cell.at(first + i));
            }
        }
        column = (int) Math.min((long) first + times - 1, Integer.MAX_VALUE - 1);
    }

    private void merge(int first) throws TextRefused {
        int wide = repeated("number-columns-spanned", XlsxSheet.MOST_COLUMNS);
        int high = repeated("number-rows-spanned", XlsxSheet.MOST_ROWS);
        if (wide > 1 || high > 1) {
            mergedCount++;
            if (merged.size() < RANGES_KEPT) {
                merged.add(new SheetTaker.Range(first, row, first + wide - 1, row + high - 1));
            }
        }
    }

    private SheetCell content(int at) throws IOException {
        boolean formula = xml.attribute("formula") != null;
        String type = "";
        boolean error = false;
        String value = null;
        // LibreOffice says the same once more in a namespace of its own, where it knows of errors.
        for (SheetXml.Attribute each : xml.attributes()) {
            switch (each.name()) {
                case "value-type" -> {
                    error |= each.value().equals("error");
                    type = each.value().equals("error") ? type : each.value();
                }
                case "value", "date-value", "time-value", "boolean-value", "string-value" -> value = each.value();
                default -> {
                    // how it looks, and its formula
                }
            }
        }
        String shown = shown();
        if (error || (formula && (shown.startsWith("#") || shown.startsWith("Err:")))) {
            return new SheetCell(at, Kind.ERROR, shown, formula, false);
        }
        return switch (type) {
            case "float", "percentage", "currency" ->
                value == null
                        ? new SheetCell(at, Kind.UNCALCULATED, "", formula, false)
                        : SheetNumber.cell(at, value.strip(), formula);
            case "date" -> new SheetCell(at, Kind.TIME, value == null ? "" : value.strip(), formula, false);
            case "time" ->
                new SheetCell(at, Kind.DURATION, shown.isEmpty() && value != null ? value : shown, formula, false);
            case "boolean" -> new SheetCell(at, Kind.TRUTH, "true".equals(value) ? "TRUE" : "FALSE", formula, false);
            default ->
                new SheetCell(
                        at,
                        formula && type.isEmpty() && shown.isEmpty() ? Kind.UNCALCULATED : Kind.TEXT,
                        value == null ? shown : Blanks.strip(bounded(value)),
                        formula,
                        false);
        };
    }

    private <T extends CharSequence> T bounded(T text) throws TextRefused {
        if (text.length() > XlsxSheet.LONGEST_TEXT) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    here(),
                    "",
                    "a cell with more than " + XlsxSheet.LONGEST_TEXT + " characters",
                    "short texts, as spreadsheets store them"));
        }
        return text;
    }

    /** The paragraphs of a cell; its remarks and pictures are left out. The start tag of the cell was read. */
    private String shown() throws IOException {
        StringBuilder text = new StringBuilder();
        int inside = xml.depth();
        int paragraphs = 0;
        boolean letters = false;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (event == SheetXml.Event.START) {
                switch (xml.name()) {
                    case "p" -> {
                        if (paragraphs++ > 0) {
                            text.append('\n');
                        }
                        letters = true;
                    }
                    case "s" -> text.append(" ".repeat(repeated("c", XlsxSheet.LONGEST_TEXT)));
                    case "tab" -> text.append('\t');
                    case "line-break" -> text.append('\n');
                    case "span", "a" -> {
                        // the same text, set otherwise
                    }
                    default -> xml.skip();
                }
            } else if (event == SheetXml.Event.END) {
                letters &= !xml.name().equals("p");
            } else if (letters) {
                text.append(xml.text());
            }
            bounded(text);
            event = xml.next();
        }
        return Blanks.strip(text.toString());
    }
}
