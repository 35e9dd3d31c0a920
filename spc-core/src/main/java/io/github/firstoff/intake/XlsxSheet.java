package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.SheetCell.Kind;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One sheet of an Office Open XML workbook (ECMA-376-1:2016, 18.3), row by row. */
final class XlsxSheet {
    static final int MOST_COLUMNS = 16_384;
    static final long MOST_ROWS = 1_048_576;
    static final int LONGEST_TEXT = 32_767;
    private static final int MOST_RANGES = 1000;
    private static final int RANGES_KEPT = 10_000;

    private final String file;
    private final String name;
    private final SheetXml xml;
    private final SharedTexts texts;
    private final XlsxStyles styles;
    private final boolean from1904;
    private final List<SheetTaker.Range> hidden = new ArrayList<>();
    private final List<SheetTaker.Range> merged = new ArrayList<>();
    private long mergedCount;
    private boolean hiddenByDefault;
    private long row;
    private int column;

    XlsxSheet(String file, String name, SheetXml xml, SharedTexts texts, XlsxStyles styles, boolean from1904) {
        this.file = file;
        this.name = name;
        this.xml = xml;
        this.texts = texts;
        this.styles = styles;
        this.from1904 = from1904;
    }

    private Where here() {
        return new Where(file, name, row, column, "");
    }

    private TextRefused damaged(String why) {
        return new TextRefused(Fault.of(
                FaultKind.SYNTAX,
                here(),
                "the workbook is damaged: " + why + "; the rest was not read",
                "",
                "a workbook that a spreadsheet saved"));
    }

    void read(SheetTaker taker) throws IOException {
        boolean wanted = true;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH) {
            if (event == SheetXml.Event.START) {
                switch (xml.name()) {
                    case "sheetFormatPr" -> hiddenByDefault = xml.says("zeroHeight");
                    case "col" -> columns();
                    case "row" -> wanted = row(taker);
                    case "mergeCell" -> merge();
                    default -> {
                        // sheetData and what lies around it
                    }
                }
            }
            if (!wanted) {
                return;
            }
            event = xml.next();
        }
        taker.end(new SheetTaker.Layout(hidden, merged, mergedCount));
    }

    private void columns() {
        if (xml.says("hidden") && hidden.size() < MOST_RANGES) {
            Optional<Integer> from = number(xml.maybe("min").orElse(""), MOST_COLUMNS);
            Optional<Integer> to = number(xml.maybe("max").orElse(""), MOST_COLUMNS);
            if (from.isPresent() && to.isPresent()) {
                hidden.add(new SheetTaker.Range(from.get(), 0, to.get(), 0));
            }
        }
    }

    private void merge() {
        String[] ends = xml.maybe("ref").orElse("").split(":", 2);
        Optional<Address> from = Address.parse(ends[0]);
        Optional<Address> to = ends.length < 2 ? Optional.empty() : Address.parse(ends[1]);
        if (from.isPresent() && to.isPresent()) {
            mergedCount++;
            if (merged.size() < RANGES_KEPT) {
                merged.add(new SheetTaker.Range(
                        from.get().column(),
                        from.get().row(),
                        to.get().column(),
                        to.get().row()));
            }
        }
    }

    private boolean row(SheetTaker taker) throws IOException {
        column = 0;
        Optional<String> stated = xml.maybe("r");
        long next = row + 1;
        if (stated.isPresent()) {
            next = number(stated.get(), (int) MOST_ROWS)
                    .orElseThrow(() -> damaged("a row has the number " + Echo.quoted(stated.get())));
        }
        if (next <= row || next > MOST_ROWS) {
            throw damaged("row " + next + " comes after row " + row);
        }
        row = next;
        xml.at(here());
        boolean isHidden = xml.says("hidden") || (hiddenByDefault && xml.attribute("hidden") == null);
        List<SheetCell> cells = new ArrayList<>();
        int inside = xml.depth();
        while (xml.next() != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (xml.depth() == inside + 1 && isStart("c")) {
                SheetCell cell = cell();
                if (!cell.isBlank()) {
                    cells.add(cell);
                }
            }
        }
        column = 0;
        return cells.isEmpty() || taker.row(new SheetRow(row, isHidden, cells));
    }

    /** Whether the last event was the start of this element; end tags lie one level higher. */
    private boolean isStart(String element) {
        return xml.isAtStart() && xml.name().equals(element);
    }

    private SheetCell cell() throws IOException {
        Optional<String> reference = xml.maybe("r");
        int next = column + 1;
        if (reference.isPresent()) {
            Address address = Address.parse(reference.get())
                    .filter(found -> found.row() == row)
                    .orElseThrow(
                            () -> damaged("a cell of row " + row + " says that it is " + Echo.quoted(reference.get())));
            next = address.column();
        }
        if (next > MOST_COLUMNS) {
            throw damaged("row " + row + " has more than " + MOST_COLUMNS + " columns");
        }
        if (next <= column) {
            throw damaged("the cells of row " + row + " are not in order");
        }
        column = next;
        String type = xml.maybe("t").orElse("n");
        int style = number(xml.maybe("s").orElse(""), Integer.MAX_VALUE).orElse(-1);
        boolean formula = false;
        String value = null;
        String inline = "";
        int inside = xml.depth();
        while (xml.next() != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (xml.depth() != inside + 1 || !xml.isAtStart()) {
                continue;
            }
            switch (xml.name()) {
                case "f" -> formula = true;
                case "v" -> value = plainText();
                case "is" -> inline = Blanks.strip(richText(xml, here()));
                default -> {
                    // what extensions add says nothing of the value
                }
            }
        }
        if (type.equals("inlineStr")) {
            return new SheetCell(column, Kind.TEXT, inline, formula, false);
        }
        if (value == null || (value.isEmpty() && !type.equals("str"))) {
            return new SheetCell(column, formula ? Kind.UNCALCULATED : Kind.TEXT, "", formula, false);
        }
        return cell(type, style, value, formula);
    }

    private SheetCell cell(String type, int style, String value, boolean formula) throws TextRefused {
        return switch (type) {
            case "s" -> new SheetCell(column, Kind.TEXT, shared(value), formula, false);
            case "str" -> new SheetCell(column, Kind.TEXT, Blanks.strip(unescaped(value)), formula, false);
            case "b" -> new SheetCell(column, Kind.TRUTH, value.equals("1") ? "TRUE" : "FALSE", formula, false);
            case "e" -> new SheetCell(column, Kind.ERROR, value, formula, false);
            case "d" -> new SheetCell(column, Kind.TIME, value, formula, false);
            case "n" -> number(style, value, formula);
            default -> throw damaged("a cell is of the unknown type " + Echo.quoted(type));
        };
    }

    private SheetCell number(int style, String value, boolean formula) {
        XlsxStyles.Shows shows = styles.of(style);
        if (shows == XlsxStyles.Shows.DATE || shows == XlsxStyles.Shows.DATE_AND_TIME) {
            Optional<String> time = SheetNumber.time(value, from1904, shows == XlsxStyles.Shows.DATE_AND_TIME);
            if (time.isPresent()) {
                return new SheetCell(column, Kind.TIME, time.get(), formula, false);
            }
        }
        if (shows != XlsxStyles.Shows.NUMBER) {
            return new SheetCell(column, Kind.DURATION, value, formula, false);
        }
        return SheetNumber.cell(column, value, formula);
    }

    private String shared(String index) throws TextRefused {
        int at = number(index, Integer.MAX_VALUE).orElse(-1);
        if (at < 0 || at >= texts.count()) {
            throw damaged("a cell refers to the text " + Echo.quoted(index) + ", which is not there");
        }
        return Blanks.strip(texts.get(at));
    }

    private String plainText() throws IOException {
        StringBuilder text = new StringBuilder();
        int inside = xml.depth();
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (event == SheetXml.Event.TEXT) {
                append(text, xml.text(), here());
            }
            event = xml.next();
        }
        return Blanks.strip(text.toString());
    }

    /** A text that may be set in several styles; how it is pronounced is left out. The start tag around it was read. */
    static String richText(SheetXml xml, Where where) throws IOException {
        StringBuilder text = new StringBuilder();
        int inside = xml.depth();
        boolean letters = false;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH && xml.depth() >= inside) {
            if (event == SheetXml.Event.START && xml.name().equals("rPh")) {
                xml.skip();
            } else if (event == SheetXml.Event.START) {
                letters = xml.name().equals("t");
            } else if (event == SheetXml.Event.END) {
                letters = false;
            } else if (letters) {
                append(text, xml.text(), where);
            }
            event = xml.next();
        }
        return unescaped(text.toString());
    }

    private static void append(StringBuilder text, String more, Where where) throws TextRefused {
        text.append(more);
        if (text.length() > LONGEST_TEXT) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where,
                    "",
                    "a cell with more than " + LONGEST_TEXT + " characters",
                    "short texts, as spreadsheets store them"));
        }
    }

    /** Characters that XML does not allow stand as {@code _x000D_} (22.4.2.4). */
    private static String unescaped(String text) {
        int at = text.indexOf("_x");
        if (at < 0) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length());
        int done = 0;
        while (at >= 0) {
            boolean escape = at + 7 <= text.length()
                    && text.charAt(at + 6) == '_'
                    && text.substring(at + 2, at + 6).chars().allMatch(c -> Character.digit(c, 16) >= 0 && c < 128);
            if (escape) {
                out.append(text, done, at).append((char) Integer.parseInt(text.substring(at + 2, at + 6), 16));
                done = at + 7;
            }
            at = text.indexOf("_x", escape ? done : at + 2);
        }
        return out.append(text, done, text.length()).toString();
    }

    private static Optional<Integer> number(String text, int most) {
        if (text.isEmpty() || text.length() > 10 || !text.chars().allMatch(c -> c >= '0' && c <= '9')) {
            return Optional.empty();
        }
        long number = Long.parseLong(text);
        return number <= most ? Optional.of((int) number) : Optional.empty();
    }

    /** The address of a cell, such as C7. */
    record Address(int column, long row) {
        static Optional<Address> parse(String text) {
            String upper = text.toUpperCase(Locale.ROOT);
            int at = 0;
            int column = 0;
            while (at < upper.length() && at < 4 && upper.charAt(at) >= 'A' && upper.charAt(at) <= 'Z') {
                column = column * 26 + upper.charAt(at) - 'A' + 1;
                at++;
            }
            Optional<Integer> row = number(upper.substring(at), (int) MOST_ROWS);
            boolean sound = at > 0 && column <= MOST_COLUMNS && row.isPresent() && row.get() > 0;
            return sound ? Optional.of(new Address(column, row.get())) : Optional.empty();
        }
    }
}
