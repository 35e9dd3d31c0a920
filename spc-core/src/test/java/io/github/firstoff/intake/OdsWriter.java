package io.github.firstoff.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes workbooks of OpenDocument (ISO/IEC 26300-1:2015), with whatever a test wants in them. The same calls give the same bytes. */
final class OdsWriter {
    private final StringBuilder sheets = new StringBuilder();
    private final StringBuilder styles = new StringBuilder();
    private final Map<String, byte[]> parts = new LinkedHashMap<>();

    OdsWriter sheet(String name, String inside) {
        return sheet(name, "plain", inside);
    }

    OdsWriter sheet(String name, String style, String inside) {
        sheets.append("<table:table table:name=\"" + XlsxWriter.xml(name) + "\" table:style-name=\"" + style + "\">"
                + inside + "</table:table>");
        return this;
    }

    /** A style under which a sheet is not shown. */
    OdsWriter hidingStyle(String name) {
        styles.append("<style:style style:name=\"" + name
                + "\" style:family=\"table\"><style:table-properties table:display=\"false\"/></style:style>");
        return this;
    }

    OdsWriter part(String name, String text) {
        parts.put(name, text.getBytes(StandardCharsets.UTF_8));
        return this;
    }

    static String row(String... cells) {
        return "<table:table-row>" + String.join("", cells) + "</table:table-row>";
    }

    static String text(String text) {
        return text.isEmpty()
                ? "<table:table-cell/>"
                : "<table:table-cell office:value-type=\"string\"><text:p>" + spaces(text)
                        + "</text:p></table:table-cell>";
    }

    private static String spaces(String text) {
        return XlsxWriter.xml(text).replace("  ", " <text:s/>").replace("_x007F_", "\u007f");
    }

    static String number(String value) {
        return "<table:table-cell office:value-type=\"float\" office:value=\"" + value + "\"><text:p>" + value
                + "</text:p></table:table-cell>";
    }

    static String time(String value) {
        return "<table:table-cell office:value-type=\"date\" office:date-value=\"" + value
                + "\"><text:p>some day</text:p></table:table-cell>";
    }

    static String table(List<List<String>> lines, boolean numbers) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            List<String> cells = new ArrayList<>();
            for (int j = 0; j < lines.get(i).size(); j++) {
                String text = lines.get(i).get(j);
                boolean number = numbers && i > 0 && j == 2 && text.matches("-?\\d+(\\.\\d+)?");
                boolean time = numbers && i > 0 && j == 4 && text.matches("\\d{4}-\\d\\d-\\d\\dT[\\d:]+");
                cells.add(number ? number(text) : time ? time(text) : text(text));
            }
            rows.append(row(cells.toArray(String[]::new)));
        }
        return rows.toString();
    }

    byte[] bytes() {
        Map<String, byte[]> all = new LinkedHashMap<>();
        all.put("mimetype", OdsWorkbook.TYPE.getBytes(StandardCharsets.US_ASCII));
        all.put(
                "content.xml",
                ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<office:document-content"
                                + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                                + " xmlns:style=\"urn:oasis:names:tc:opendocument:xmlns:style:1.0\""
                                + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                                + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\""
                                + " xmlns:calcext=\"urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0\""
                                + " office:version=\"1.3\"><office:automatic-styles>" + styles
                                + "</office:automatic-styles><office:body><office:spreadsheet>" + sheets
                                + "</office:spreadsheet></office:body></office:document-content>")
                        .getBytes(StandardCharsets.UTF_8));
        all.put(
                "META-INF/manifest.xml",
                ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<manifest:manifest"
                                + " xmlns:manifest=\"urn:oasis:names:tc:opendocument:xmlns:manifest:1.0\"/>")
                        .getBytes(StandardCharsets.UTF_8));
        all.putAll(parts);
        return XlsxWriter.zip(all);
    }
}
