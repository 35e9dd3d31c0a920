package io.github.firstoff.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Small workbooks of a table, with numbers as numbers and names of columns as texts. */
final class Workbooks {
    private static final String RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";

    private Workbooks() {}

    private static boolean isNumber(String text) {
        return text.matches("\\d+(\\.\\d+)?");
    }

    static byte[] xlsx(List<String> heading, List<List<String>> rows) {
        StringBuilder sheet = new StringBuilder("<worksheet><sheetData><row>");
        heading.forEach(name -> sheet.append("<c t=\"inlineStr\"><is><t>" + name + "</t></is></c>"));
        sheet.append("</row>");
        for (List<String> row : rows) {
            sheet.append("<row>");
            row.forEach(text -> sheet.append(
                    isNumber(text)
                            ? "<c><v>" + text + "</v></c>"
                            : "<c t=\"inlineStr\"><is><t>" + text + "</t></is></c>"));
            sheet.append("</row>");
        }
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put(
                "[Content_Types].xml",
                "<Types xmlns=\"" + PACKAGE + "content-types\"><Default Extension=\"rels\" ContentType=\""
                        + "application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" "
                        + "ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/></Types>");
        parts.put(
                "_rels/.rels",
                "<Relationships xmlns=\"" + PACKAGE + "relationships\"><Relationship Id=\"a\" Type=\"" + RELATIONS
                        + "/officeDocument\" Target=\"workbook.xml\"/></Relationships>");
        parts.put(
                "_rels/workbook.xml.rels",
                "<Relationships xmlns=\"" + PACKAGE + "relationships\"><Relationship Id=\"a\" Type=\"" + RELATIONS
                        + "/worksheet\" Target=\"sheet.xml\"/></Relationships>");
        parts.put(
                "workbook.xml",
                "<workbook xmlns:r=\"" + RELATIONS + "\"><sheets><sheet name=\"Lot\" r:id=\"a\"/></sheets></workbook>");
        parts.put("sheet.xml", sheet.append("</sheetData></worksheet>").toString());
        return zip(parts);
    }

    static byte[] ods(List<String> heading, List<List<String>> rows) {
        StringBuilder sheet = new StringBuilder(
                "<document xmlns:o=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\"><spreadsheet><table name=\"Lot\">"
                        + "<table-row>");
        heading.forEach(name -> sheet.append("<table-cell o:value-type=\"string\"><p>" + name + "</p></table-cell>"));
        sheet.append("</table-row>");
        for (List<String> row : rows) {
            sheet.append("<table-row>");
            row.forEach(text -> sheet.append(
                    isNumber(text)
                            ? "<table-cell o:value-type=\"float\" o:value=\"" + text + "\"/>"
                            : "<table-cell o:value-type=\"string\"><p>" + text + "</p></table-cell>"));
            sheet.append("</table-row>");
        }
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("mimetype", "application/vnd.oasis.opendocument.spreadsheet");
        parts.put(
                "content.xml", sheet.append("</table></spreadsheet></document>").toString());
        return zip(parts);
    }

    private static byte[] zip(Map<String, String> parts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            out.setLevel(0);
            for (Map.Entry<String, String> each : parts.entrySet()) {
                byte[] content = each.getValue().getBytes(StandardCharsets.UTF_8);
                ZipEntry entry = new ZipEntry(each.getKey());
                if (each.getKey().equals("mimetype")) {
                    // Must be stored as it is (ISO/IEC 26300-3, 3.3), so that the file can be told by its first bytes.
                    entry.setMethod(ZipEntry.STORED);
                    entry.setSize(content.length);
                    CRC32 sum = new CRC32();
                    sum.update(content);
                    entry.setCrc(sum.getValue());
                }
                out.putNextEntry(entry);
                out.write(content);
                out.closeEntry();
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }
}
