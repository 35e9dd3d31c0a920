package io.github.firstoff.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes workbooks of Office Open XML part by part (ECMA-376-1:2016), so that a test can write what no spreadsheet would. The same calls give
 * the same bytes.
 */
final class XlsxWriter {
    private static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /** Style numbers of cells. */
    static final int PLAIN = 0;

    static final int DATE = 1;
    static final int DATE_AND_TIME = 2;
    static final int TIME_OF_DAY = 3;
    static final int THREE_DECIMALS = 4;

    private final Map<String, byte[]> parts = new LinkedHashMap<>();
    private final List<String> names = new ArrayList<>();
    private final List<String> states = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();
    private String workbookProperties = "";

    /** Adds a sheet with these rows, each a {@code <row>} element; for others parts of the sheet see {@link #sheet(String, String, String)}. */
    XlsxWriter sheet(String name, List<String> rows) {
        return sheet(name, "visible", "<sheetData>" + String.join("", rows) + "</sheetData>");
    }

    XlsxWriter sheet(String name, String state, String inside) {
        names.add(name);
        states.add(state);
        part(
                "xl/worksheets/sheet" + names.size() + ".xml",
                HEAD + "<worksheet xmlns=\"" + MAIN + "\">" + inside + "</worksheet>");
        return this;
    }

    XlsxWriter workbookProperties(String xml) {
        workbookProperties = xml;
        return this;
    }

    /** Adds a part, or sets another in its place. */
    XlsxWriter part(String name, String text) {
        return part(name, text.getBytes(StandardCharsets.UTF_8));
    }

    XlsxWriter part(String name, byte[] bytes) {
        parts.put(name, bytes);
        return this;
    }

    /** A text that is kept among the shared ones. */
    String shared(String text) {
        int at = texts.indexOf(text);
        if (at < 0) {
            at = texts.size();
            texts.add(text);
        }
        return Integer.toString(at);
    }

    static String row(long number, String... cells) {
        return "<row r=\"" + number + "\">" + String.join("", cells) + "</row>";
    }

    static String text(String at, String text) {
        return "<c r=\"" + at + "\" t=\"inlineStr\"><is><t xml:space=\"preserve\">" + xml(text) + "</t></is></c>";
    }

    String sharedText(String at, String text) {
        return "<c r=\"" + at + "\" t=\"s\"><v>" + shared(text) + "</v></c>";
    }

    static String number(String at, String text) {
        return number(at, text, PLAIN);
    }

    static String number(String at, String text, int style) {
        return "<c r=\"" + at + "\" s=\"" + style + "\"><v>" + text + "</v></c>";
    }

    static String xml(String text) {
        StringBuilder out = new StringBuilder();
        text.chars().forEach(c -> {
            switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                default -> {
                    boolean allowed = c >= ' ' || c == '\n' || c == '\t';
                    out.append(allowed ? String.valueOf((char) c) : String.format("_x%04X_", c));
                }
            }
        });
        return out.toString();
    }

    byte[] bytes() {
        Map<String, byte[]> all = new LinkedHashMap<>();
        StringBuilder types = new StringBuilder();
        StringBuilder relations = new StringBuilder();
        StringBuilder sheets = new StringBuilder();
        for (int i = 1; i <= names.size(); i++) {
            types.append(
                    "<Override PartName=\"/xl/worksheets/sheet" + i
                            + ".xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>");
            relations.append("<Relationship Id=\"rId" + i + "\" Type=\"" + RELATIONS
                    + "/worksheet\" Target=\"worksheets/sheet" + i + ".xml\"/>");
            sheets.append("<sheet name=\"" + xml(names.get(i - 1)) + "\" sheetId=\"" + i + "\" state=\""
                    + states.get(i - 1) + "\" r:id=\"rId" + i + "\"/>");
        }
        put(
                all,
                "[Content_Types].xml",
                "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                        + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                        + "<Default Extension=\"xml\" ContentType=\"application/xml\"/>"
                        + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
                        + types
                        + "<Override PartName=\"/xl/sharedStrings.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml\"/>"
                        + "<Override PartName=\"/xl/styles.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml\"/>"
                        + "</Types>");
        put(
                all,
                "_rels/.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                        + "<Relationship Id=\"rId1\" Type=\"" + RELATIONS
                        + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
        put(
                all,
                "xl/_rels/workbook.xml.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">" + relations
                        + "<Relationship Id=\"rIdT\" Type=\"" + RELATIONS
                        + "/sharedStrings\" Target=\"sharedStrings.xml\"/>"
                        + "<Relationship Id=\"rIdS\" Type=\"" + RELATIONS
                        + "/styles\" Target=\"styles.xml\"/></Relationships>");
        put(
                all,
                "xl/workbook.xml",
                "<workbook xmlns=\"" + MAIN + "\" xmlns:r=\"" + RELATIONS + "\">" + workbookProperties + "<sheets>"
                        + sheets + "</sheets></workbook>");
        put(
                all,
                "xl/styles.xml",
                "<styleSheet xmlns=\"" + MAIN + "\"><numFmts count=\"2\">"
                        + "<numFmt numFmtId=\"164\" formatCode=\"yyyy\\-mm\\-dd\\ hh:mm:ss\"/>"
                        + "<numFmt numFmtId=\"165\" formatCode=\"0.000&quot; mm&quot;\"/></numFmts>"
                        + "<cellStyleXfs><xf numFmtId=\"14\"/></cellStyleXfs><cellXfs>"
                        + "<xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"164\"/><xf numFmtId=\"20\"/><xf numFmtId=\"165\"/>"
                        + "</cellXfs></styleSheet>");
        StringBuilder strings = new StringBuilder();
        texts.forEach(text -> strings.append("<si><t xml:space=\"preserve\">" + xml(text) + "</t></si>"));
        put(all, "xl/sharedStrings.xml", "<sst xmlns=\"" + MAIN + "\">" + strings + "</sst>");
        all.putAll(parts);
        return zip(all);
    }

    private static void put(Map<String, byte[]> all, String name, String xml) {
        all.put(name, (HEAD + xml).getBytes(StandardCharsets.UTF_8));
    }

    static byte[] zip(Map<String, byte[]> entries) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> each : entries.entrySet()) {
                ZipEntry entry = new ZipEntry(each.getKey());
                entry.setTimeLocal(LocalDateTime.of(2026, 11, 25, 0, 0));
                if (each.getKey().equals("mimetype")) {
                    entry.setMethod(ZipEntry.STORED);
                    entry.setSize(each.getValue().length);
                    java.util.zip.CRC32 sum = new java.util.zip.CRC32();
                    sum.update(each.getValue());
                    entry.setCrc(sum.getValue());
                }
                out.putNextEntry(entry);
                out.write(each.getValue());
                out.closeEntry();
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    /**
     * Rows as a person types them, their fields parted by bars: a field that looks like a number is one, behind an {@code @} stands the day
     * number of a date, and an apostrophe in front makes a text of anything. Empty fields are no cells.
     */
    static List<String> typed(String... rows) {
        List<String> written = new ArrayList<>();
        for (int i = 0; i < rows.length; i++) {
            List<String> cells = new ArrayList<>();
            String[] fields = rows[i].split("\\|", -1);
            for (int j = 0; j < fields.length; j++) {
                String at = Fault.Where.letters(j + 1) + (i + 1);
                String field = fields[j];
                if (field.matches("-?\\d+(\\.\\d+)?")) {
                    cells.add(number(at, field));
                } else if (field.startsWith("@")) {
                    cells.add(number(at, field.substring(1), DATE));
                } else if (!field.isEmpty()) {
                    cells.add(text(at, field.startsWith("'") ? field.substring(1) : field));
                }
            }
            written.add(row(i + 1L, cells.toArray(String[]::new)));
        }
        return written;
    }

    /** A table of texts and numbers as rows; what is a plain number is stored as one where the test says so. */
    List<String> table(List<List<String>> lines, boolean numbers) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            List<String> cells = new ArrayList<>();
            for (int j = 0; j < lines.get(i).size(); j++) {
                String text = lines.get(i).get(j);
                String at = Fault.Where.letters(j + 1) + (i + 1);
                if (text.isEmpty()) {
                    continue;
                }
                boolean number = numbers && i > 0 && j == 2 && text.matches("-?\\d+(\\.\\d+)?");
                cells.add(number ? number(at, text) : i % 2 == 0 ? sharedText(at, text) : text(at, text));
            }
            rows.add(row(i + 1L, cells.toArray(String[]::new)));
        }
        return rows;
    }
}
