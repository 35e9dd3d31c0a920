package io.github.firstoff.intake;

import static io.github.firstoff.intake.XlsxWriter.DATE;
import static io.github.firstoff.intake.XlsxWriter.DATE_AND_TIME;
import static io.github.firstoff.intake.XlsxWriter.TIME_OF_DAY;
import static io.github.firstoff.intake.XlsxWriter.number;
import static io.github.firstoff.intake.XlsxWriter.row;
import static io.github.firstoff.intake.XlsxWriter.text;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes the malformed workbooks under {@code resources/intake}; run it to make them anew, and look at what changes in their words. */
final class WorkbookCorpus {
    private static final String HEAD = row(1, text("A1", "part"), text("B1", "characteristic"), text("C1", "value"));
    private static final String GOOD = row(2, text("A2", "S001"), text("B2", "2"), number("C2", "12.51"));

    private WorkbookCorpus() {}

    /** Writes every file into a folder. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        for (Map.Entry<String, byte[]> each : files().entrySet()) {
            Files.write(folder.resolve(each.getKey()), each.getValue());
        }
    }

    private static byte[] rows(String... rows) {
        return new XlsxWriter().sheet("Readings", Arrays.asList(rows)).bytes();
    }

    private static byte[] value(String cell) {
        return rows(HEAD, row(2, text("A2", "S001"), text("B2", "2"), cell));
    }

    private static byte[] part(String name, String xml) {
        return new XlsxWriter()
                .sheet("Readings", List.of(HEAD, GOOD))
                .part(name, xml)
                .bytes();
    }

    private static byte[] inside(String xml) {
        return new XlsxWriter().sheet("Readings", "visible", xml).bytes();
    }

    private static byte[] ods(String... rows) {
        return new OdsWriter().sheet("Readings", String.join("", rows)).bytes();
    }

    private static byte[] odsValue(String cell) {
        return ods(ODS_HEAD, OdsWriter.row(OdsWriter.text("S001"), OdsWriter.text("2"), cell));
    }

    private static final String ODS_HEAD =
            OdsWriter.row(OdsWriter.text("part"), OdsWriter.text("characteristic"), OdsWriter.text("value"));
    private static final String ODS_GOOD =
            OdsWriter.row(OdsWriter.text("S001"), OdsWriter.text("2"), OdsWriter.number("12.51"));

    static Map<String, byte[]> files() {
        Map<String, byte[]> all = new LinkedHashMap<>();
        xlsx(all);
        ods(all);
        plans(all);
        return all;
    }

    private static void xlsx(Map<String, byte[]> all) {
        byte[] good = rows(HEAD, GOOD);
        String name = "readings-invalid-xlsx-";
        all.put(name + "cut-short.xlsx", Arrays.copyOf(good, good.length / 2));
        all.put(name + "without-its-last-byte.xlsx", Arrays.copyOf(good, good.length - 1));
        all.put(name + "bytes-behind.xlsx", joined(good, "more text\n".getBytes(StandardCharsets.UTF_8)));
        all.put(name + "empty-zip.xlsx", XlsxWriter.zip(Map.of()));
        all.put(name + "only-types.xlsx", XlsxWriter.zip(Map.of("[Content_Types].xml", new byte[0])));
        all.put(
                name + "a-zip-of-text.xlsx",
                XlsxWriter.zip(Map.of("readings.csv", "part,2\nS1,12.5\n".getBytes(StandardCharsets.UTF_8))));
        all.put(name + "encrypted-entry.xlsx", withEncryptionBit(good));
        all.put(name + "list-says-more.xlsx", withCount(good, 1));
        all.put(name + "changed-sheet.xlsx", withOtherSum(good, "xl/worksheets/sheet1.xml"));
        all.put(name + "changed-types.xlsx", withOtherSum(good, "[Content_Types].xml"));
        all.put("readings-invalid-ods-changed-content.ods", withOtherSum(ods(ODS_HEAD, ODS_GOOD), "content.xml"));
        all.put(
                name + "two-sheets-of-one-name-fit.xlsx",
                new XlsxWriter()
                        .sheet("Lot 7", List.of(HEAD, GOOD))
                        .sheet("Lot 7", List.of(HEAD, GOOD))
                        .bytes());
        all.put(name + "list-says-less.xlsx", withCount(good, -1));
        all.put(name + "no-cells.xlsx", inside("<sheetData/>"));
        all.put(name + "heading-alone.xlsx", rows(HEAD));
        all.put(
                name + "no-heading.xlsx",
                rows(row(1, text("A1", "a list of tools"), text("B1", "drill")), row(2, text("A2", "6.6"))));
        all.put(
                name + "no-sheet-fits.xlsx",
                new XlsxWriter()
                        .sheet("Tools", List.of(row(1, text("A1", "drill"))))
                        .sheet("Notes", List.of(row(1, text("A1", "none"))))
                        .bytes());
        all.put(
                name + "two-sheets-fit.xlsx",
                new XlsxWriter()
                        .sheet("Lot 7", List.of(HEAD, GOOD))
                        .sheet("Lot 8", "hidden", "<sheetData>" + HEAD + GOOD + "</sheetData>")
                        .bytes());
        all.put(name + "error-value.xlsx", value("<c r=\"C2\" t=\"e\"><f>A1/0</f><v>#DIV/0!</v></c>"));
        all.put(
                name + "error-part.xlsx",
                rows(HEAD, row(2, "<c r=\"A2\" t=\"e\"><v>#N/A</v></c>", text("B2", "2"), number("C2", "12.51"))));
        all.put(name + "formula-not-calculated.xlsx", value("<c r=\"C2\"><f>A1+B1</f></c>"));
        all.put(name + "true-for-a-value.xlsx", value("<c r=\"C2\" t=\"b\"><v>1</v></c>"));
        all.put(
                name + "true-for-an-attribute.xlsx",
                rows(HEAD, row(2, text("A2", "S001"), text("B2", "9"), "<c r=\"C2\" t=\"b\"><v>0</v></c>")));
        all.put(name + "date-for-a-value.xlsx", value(number("C2", "46154", DATE)));
        all.put(
                name + "date-for-a-part.xlsx",
                rows(HEAD, row(2, number("A2", "46154", DATE), text("B2", "2"), number("C2", "12.51"))));
        all.put(name + "time-of-day-for-a-value.xlsx", value(number("C2", "0.5", TIME_OF_DAY)));
        all.put(
                name + "time-without-a-date.xlsx",
                rows(
                        row(1, text("A1", "part"), text("B1", "2"), text("C1", "time")),
                        row(2, text("A2", "S001"), number("B2", "12.5"), number("C2", "0.34", TIME_OF_DAY))));
        all.put(
                name + "time-a-bare-number.xlsx",
                rows(
                        row(1, text("A1", "part"), text("B1", "2"), text("C1", "time")),
                        row(2, text("A2", "S001"), number("B2", "12.5"), number("C2", "46346.34"))));
        all.put(
                name + "day-zero.xlsx",
                rows(
                        row(1, text("A1", "part"), text("B1", "2"), text("C1", "time")),
                        row(2, text("A2", "S001"), number("B2", "12.5"), number("C2", "0", DATE_AND_TIME))));
        all.put(name + "word-for-a-value.xlsx", value(text("C2", "forty")));
        all.put(name + "open-comma.xlsx", value(text("C2", "12,510")));
        all.put(
                name + "unknown-characteristic.xlsx",
                rows(HEAD, row(2, text("A2", "S001"), number("B2", "99"), number("C2", "12.51"))));
        all.put(name + "number-out-of-range.xlsx", value(number("C2", "1E+300")));
        all.put(name + "ten-thousand-digits.xlsx", value(number("C2", "7".repeat(10_000))));
        all.put(name + "no-number.xlsx", value(number("C2", "12..5")));
        all.put(
                name + "merged-parts.xlsx",
                inside("<sheetData>" + HEAD + GOOD + row(3, text("B3", "9"), text("C3", "pass"))
                        + "</sheetData><mergeCells count=\"1\"><mergeCell ref=\"A2:A3\"/></mergeCells>"));
        all.put(
                name + "beside-the-heading.xlsx",
                rows(HEAD, row(2, text("A2", "S001"), text("B2", "2"), number("C2", "12.51"), text("E2", "see note"))));
        all.put(
                name + "misspelt-column.xlsx",
                rows(row(1, text("A1", "part"), text("B1", "caracteristic"), text("C1", "value")), GOOD));
        all.put(
                name + "column-twice.xlsx",
                rows(
                        row(1, text("B1", "part"), text("C1", "2"), text("D1", "2")),
                        row(2, text("B2", "S1"), number("C2", "12.5"))));
        all.put(
                name + "duplicate.xlsx",
                rows(HEAD, GOOD, row(3, text("A3", "S001"), text("B3", "2"), number("C3", "12.52"))));
        all.put(
                name + "other-hand-above.xlsx",
                rows(
                        row(1, text("A1", "Part number"), text("B1", "HQ-310-S")),
                        row(3, text("A3", "part"), text("B3", "characteristic"), text("C3", "value")),
                        row(4, text("A4", "S001"), text("B4", "2"), number("C4", "12.51"))));
        all.put(name + "rows-out-of-order.xlsx", rows(HEAD, row(3, text("A3", "S1")), row(2, text("A2", "S2"))));
        all.put(name + "row-number-too-large.xlsx", rows(HEAD, row(1_048_577, text("A1048577", "S1"))));
        all.put(name + "cells-out-of-order.xlsx", rows(HEAD, row(2, text("B2", "2"), text("A2", "S1"))));
        all.put(name + "cell-of-another-row.xlsx", rows(HEAD, row(2, text("A7", "S1"))));
        all.put(name + "shared-text-missing.xlsx", value("<c r=\"C2\" t=\"s\"><v>12</v></c>"));
        all.put(name + "cell-of-unknown-type.xlsx", value("<c r=\"C2\" t=\"zz\"><v>12</v></c>"));
        all.put(name + "text-too-long.xlsx", value(text("C2", "x".repeat(40_000))));
        all.put(
                name + "entity.xlsx",
                part(
                        "xl/worksheets/sheet1.xml",
                        "<!DOCTYPE w [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><worksheet><sheetData><row><c t=\"inlineStr\"><is><t>&e;</t></is></c></row></sheetData></worksheet>"));
        all.put(
                name + "entities-that-swell.xlsx",
                part(
                        "xl/sharedStrings.xml",
                        "<!DOCTYPE s [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;\">]><sst><si><t>&b;</t></si></sst>"));
        all.put(
                name + "entity-in-the-list-of-types.xlsx",
                part(
                        "[Content_Types].xml",
                        "<!DOCTYPE t [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><Types>&e;</Types>"));
        all.put(name + "undeclared-entity.xlsx", part("xl/worksheets/sheet1.xml", "<worksheet>&what;</worksheet>"));
        all.put(name + "sheet-no-xml.xlsx", part("xl/worksheets/sheet1.xml", "part,2\nS1,12.5\n"));
        all.put(
                name + "tags-crossed.xlsx",
                part("xl/worksheets/sheet1.xml", "<worksheet><sheetData></worksheet></sheetData>"));
        all.put(name + "deep.xlsx", part("xl/worksheets/sheet1.xml", "<worksheet>" + "<a>".repeat(5000)));
        all.put(
                name + "sheet-missing.xlsx",
                part(
                        "xl/_rels/workbook.xml.rels",
                        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"/>"));
        all.put(
                name + "sheet-elsewhere.xlsx",
                part(
                        "xl/_rels/workbook.xml.rels",
                        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                                + "<Relationship Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\""
                                + " TargetMode=\"External\" Target=\"file:///etc/hostname\"/></Relationships>"));
        all.put(
                name + "a-letter.xlsx",
                part(
                        "[Content_Types].xml",
                        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                                + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                                + "<Default Extension=\"xml\" ContentType=\"application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml\"/></Types>"));
        all.put(
                name + "binary-workbook.xlsx",
                part(
                        "[Content_Types].xml",
                        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                                + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                                + "<Default Extension=\"xml\" ContentType=\"application/vnd.ms-excel.sheet.binary.macroEnabled.main\"/></Types>"));
        all.put(
                name + "many-references.xlsx",
                part(
                        "_rels/.rels",
                        "<Relationships>" + "<Relationship Id=\"x\" Target=\"y\" Type=\"z\"/>".repeat(30_000)
                                + "</Relationships>"));
        all.put(
                name + "control-character.xlsx",
                rows(HEAD, row(2, text("A2", "S\u0007001"), text("B2", "2"), number("C2", "12.51"))));
        all.put(name + "old-kind.xls", oldKind("Workbook"));
        all.put(name + "password.xlsx", oldKind("EncryptedPackage"));
    }

    private static void ods(Map<String, byte[]> all) {
        byte[] good = ods(ODS_HEAD, ODS_GOOD);
        String name = "readings-invalid-ods-";
        all.put(name + "cut-short.ods", Arrays.copyOf(good, good.length / 2));
        all.put(
                name + "no-content.ods",
                XlsxWriter.zip(Map.of("mimetype", OdsWorkbook.TYPE.getBytes(StandardCharsets.US_ASCII))));
        all.put(
                name + "a-letter.ods",
                new OdsWriter()
                        .part("content.xml", "<document-content><body><text/></body></document-content>")
                        .bytes());
        all.put(
                name + "password.ods",
                new OdsWriter()
                        .sheet("Readings", ODS_HEAD + ODS_GOOD)
                        .part(
                                "META-INF/manifest.xml",
                                "<manifest><file-entry><encryption-data/></file-entry></manifest>")
                        .bytes());
        all.put(
                name + "entity.ods",
                new OdsWriter()
                        .part(
                                "content.xml",
                                "<!DOCTYPE d [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><document-content>&e;</document-content>")
                        .bytes());
        all.put(
                name + "content-no-xml.ods",
                new OdsWriter().part("content.xml", "part,2\n").bytes());
        all.put(
                name + "two-sheets-fit.ods",
                new OdsWriter()
                        .sheet("Lot 7", ODS_HEAD + ODS_GOOD)
                        .sheet("Lot 8", ODS_HEAD + ODS_GOOD)
                        .bytes());
        all.put(
                name + "error-value.ods",
                odsValue(
                        "<table:table-cell table:formula=\"of:=1/0\" office:value-type=\"string\" office:string-value=\"\" calcext:value-type=\"error\"><text:p>#DIV/0!</text:p></table:table-cell>"));
        all.put(
                name + "error-number.ods",
                odsValue(
                        "<table:table-cell table:formula=\"of:=1/0\" office:value-type=\"float\" office:value=\"0\"><text:p>Err:502</text:p></table:table-cell>"));
        all.put(
                name + "true-for-a-value.ods",
                odsValue(
                        "<table:table-cell office:value-type=\"boolean\" office:boolean-value=\"true\"><text:p>TRUE</text:p></table:table-cell>"));
        all.put(name + "date-for-a-value.ods", odsValue(OdsWriter.time("2026-05-12")));
        all.put(
                name + "duration-for-a-value.ods",
                odsValue(
                        "<table:table-cell office:value-type=\"time\" office:time-value=\"PT12H05M00S\"><text:p>12:05</text:p></table:table-cell>"));
        all.put(name + "not-calculated.ods", odsValue("<table:table-cell table:formula=\"of:=[.A1]\"/>"));
        all.put(name + "no-number.ods", odsValue(OdsWriter.number("12,5")));
        all.put(
                name + "repeated-row.ods",
                ods(
                        ODS_HEAD,
                        ODS_GOOD.replace("<table:table-row>", "<table:table-row table:number-rows-repeated=\"3\">")));
        all.put(
                name + "repeated-without-end.ods",
                ods(
                        ODS_HEAD,
                        ODS_GOOD.replace(
                                "<table:table-cell ",
                                "<table:table-cell table:number-columns-repeated=\"999999999\" ")));
        all.put(
                name + "repeated-no-number.ods",
                ods(
                        ODS_HEAD,
                        ODS_GOOD.replace("<table:table-row>", "<table:table-row table:number-rows-repeated=\"-3\">")));
        all.put(
                name + "merged-parts.ods",
                ods(
                        ODS_HEAD,
                        OdsWriter.row(
                                OdsWriter.text("S001")
                                        .replace(
                                                "<table:table-cell ",
                                                "<table:table-cell table:number-rows-spanned=\"2\" "),
                                OdsWriter.text("2"),
                                OdsWriter.number("12.51")),
                        OdsWriter.row("<table:covered-table-cell/>", OdsWriter.text("9"), OdsWriter.text("pass"))));
        all.put(
                name + "two-lines-in-a-part.ods",
                ods(
                        ODS_HEAD,
                        OdsWriter.row(
                                "<table:table-cell office:value-type=\"string\"><text:p>S001</text:p><text:p>again</text:p></table:table-cell>",
                                OdsWriter.text("2"),
                                OdsWriter.number("12.51"))));
    }

    private static void plans(Map<String, byte[]> all) {
        String head = row(1, text("A1", "number"), text("B1", "feature"), text("C1", "requirement"));
        all.put(
                "table-invalid-xlsx-date-for-a-number.xlsx",
                rows(head, row(2, number("A2", "46154", DATE), text("B2", "bore"), text("C2", "12.5 ±0.05"))));
        all.put(
                "table-invalid-xlsx-requirement-missing.xlsx",
                rows(head, row(2, number("A2", "1"), text("B2", "bore"))));
        all.put(
                "table-invalid-xlsx-requirement-unknown.xlsx",
                rows(head, row(2, number("A2", "1"), text("B2", "bore"), text("C2", "about 12"))));
        all.put("table-invalid-xlsx-no-heading.xlsx", rows(row(1, text("A1", "drill"), text("B1", "6.6"))));
        all.put(
                "table-invalid-xlsx-two-sheets-fit.xlsx",
                new XlsxWriter()
                        .sheet(
                                "C",
                                List.of(head, row(2, number("A2", "1"), text("B2", "bore"), text("C2", "12.5 ±0.05"))))
                        .sheet(
                                "D",
                                List.of(head, row(2, number("A2", "1"), text("B2", "bore"), text("C2", "12.5 ±0.06"))))
                        .bytes());
        all.put(
                "table-invalid-ods-error-in-a-requirement.ods",
                new OdsWriter()
                        .sheet(
                                "Plan",
                                OdsWriter.row(
                                                OdsWriter.text("number"),
                                                OdsWriter.text("feature"),
                                                OdsWriter.text("requirement"))
                                        + OdsWriter.row(
                                                OdsWriter.number("1"),
                                                OdsWriter.text("bore"),
                                                "<table:table-cell table:formula=\"of:=x\" office:value-type=\"string\" calcext:value-type=\"error\"><text:p>#REF!</text:p></table:table-cell>"))
                        .bytes());
    }

    private static byte[] joined(byte[] first, byte[] second) {
        byte[] out = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, out, first.length, second.length);
        return out;
    }

    /** The bit that says that an entry has a password, in the list of contents. */
    private static byte[] withEncryptionBit(byte[] zip) {
        byte[] out = zip.clone();
        for (int i = 0; i + 4 < out.length; i++) {
            if (out[i] == 'P' && out[i + 1] == 'K' && out[i + 2] == 1 && out[i + 3] == 2) {
                out[i + 8] |= 1;
                return out;
            }
        }
        throw new IllegalStateException("no list of contents");
    }

    /** As if a digit had changed after the part was packed: its check sum in the list of contents is another. */
    private static byte[] withOtherSum(byte[] zip, String name) {
        byte[] out = zip.clone();
        String text = new String(zip, StandardCharsets.ISO_8859_1);
        int entry = text.lastIndexOf(name) - 46;
        if (!text.startsWith("PK\u0001\u0002", entry)) {
            throw new IllegalStateException("no such part in the list of contents");
        }
        out[entry + 16] ^= 1;
        return out;
    }

    private static byte[] withCount(byte[] zip, int more) {
        byte[] out = zip.clone();
        out[out.length - 12] += (byte) more;
        return out;
    }

    /** As much of a compound file as shows what it is: its mark, and the name of a stream in UTF-16. */
    private static byte[] oldKind(String stream) {
        byte[] out = new byte[2048];
        byte[] mark = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1};
        System.arraycopy(mark, 0, out, 0, mark.length);
        byte[] name = stream.getBytes(StandardCharsets.UTF_16LE);
        System.arraycopy(name, 0, out, 1024, name.length);
        return out;
    }
}
