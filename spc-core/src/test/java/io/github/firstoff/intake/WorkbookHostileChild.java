package io.github.firstoff.intake;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Reads hostile workbooks and machine texts in a small heap and says what came of each; run by {@link WorkbookHostileTest}. */
public final class WorkbookHostileChild {
    private static final long GIGABYTES = 3_000_000_000L;
    private static final long MEGABYTES = 100_000_000L;
    private static final String SHEET = "xl/worksheets/sheet1.xml";
    private static final String HEAD = "<worksheet><sheetData><row><c t=\"inlineStr\"><is><t>part</t></is></c>"
            + "<c t=\"inlineStr\"><is><t>2</t></is></c></row>";
    private static final String ODS_HEAD = "<office:document-content"
            + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
            + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
            + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"><office:spreadsheet>"
            + "<table:table table:name=\"A\">"
            + OdsWriter.row(OdsWriter.text("part"), OdsWriter.text("2"));

    private static final String ODS_END = "</table:table></office:spreadsheet></office:document-content>";

    private WorkbookHostileChild() {}

    /** A part: a head, and then a piece over and over; # in it is the number of the piece. */
    private record Part(String name, String head, String piece, long pieces, String tail) {
        static Part of(String name, String head, String piece, long bytes, String tail) {
            return new Part(name, head, piece, bytes / piece.length(), tail);
        }

        void write(OutputStream out) throws IOException {
            out.write(head.getBytes(StandardCharsets.UTF_8));
            boolean numbered = piece.indexOf('#') >= 0;
            int together = numbered ? 1 : Math.max(1, 8192 / piece.length());
            byte[] bytes = piece.repeat(together).getBytes(StandardCharsets.UTF_8);
            for (long i = 0; i < pieces; i += together) {
                out.write(numbered ? piece.replace("#", Long.toString(i)).getBytes(StandardCharsets.UTF_8) : bytes);
            }
            out.write(tail.getBytes(StandardCharsets.UTF_8));
        }
    }

    private static Map<String, Part> xlsx() {
        Map<String, Part> all = new LinkedHashMap<>();
        all.put("blanks without end", Part.of(SHEET, HEAD, " ", GIGABYTES, ""));
        all.put("cells without end", Part.of(SHEET, HEAD + "<row>", "<c/>", GIGABYTES, ""));
        all.put("empty rows without end", Part.of(SHEET, HEAD, "<row/>", GIGABYTES, ""));
        all.put("a text without end", Part.of(SHEET, HEAD + "<row><c t=\"inlineStr\"><is><t>", "x", GIGABYTES, ""));
        all.put("an attribute without end", Part.of(SHEET, HEAD + "<row a=\"", "x", GIGABYTES, ""));
        all.put("a comment without end", Part.of(SHEET, HEAD + "<!--", "x", GIGABYTES, ""));
        all.put("elements without end", Part.of(SHEET, HEAD, "<a>", MEGABYTES, ""));
        all.put("attributes without end", Part.of(SHEET, HEAD + "<row", " a#=\"\"", MEGABYTES, ""));
        all.put(
                "merged cells without end",
                Part.of(
                        SHEET,
                        HEAD + "<row><c t=\"inlineStr\"><is><t>S1</t></is></c><c><v>12.5</v></c></row></sheetData>",
                        "<mergeCell ref=\"A1:B2\"/>",
                        MEGABYTES,
                        "</worksheet>"));
        all.put(
                "hidden columns without end",
                Part.of(
                        SHEET,
                        "<worksheet><cols>",
                        "<col min=\"1\" max=\"1\" hidden=\"1\"/>",
                        MEGABYTES,
                        "</cols>" + HEAD.substring(11)));
        all.put(
                "shared texts without end",
                Part.of("xl/sharedStrings.xml", "<sst>", "<si><t>text #</t></si>", MEGABYTES, ""));
        all.put("empty shared texts without end", Part.of("xl/sharedStrings.xml", "<sst>", "<si/>", MEGABYTES, ""));
        all.put(
                "styles without end",
                Part.of(
                        "xl/styles.xml",
                        "<styleSheet><cellXfs>",
                        "<xf numFmtId=\"14\"/>",
                        MEGABYTES,
                        "</cellXfs></styleSheet>"));
        all.put(
                "types without end",
                Part.of(
                        "[Content_Types].xml",
                        "<Types>",
                        "<Default Extension=\"a\" ContentType=\"b\"/>",
                        MEGABYTES,
                        ""));
        all.put(
                "references without end",
                Part.of("xl/_rels/workbook.xml.rels", "<Relationships>", "<Relationship/>", MEGABYTES, ""));
        all.put(
                "sheets without end",
                Part.of(
                        "xl/workbook.xml",
                        "<workbook xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets>",
                        "<sheet name=\"A#\" r:id=\"rId1\"/>",
                        MEGABYTES,
                        ""));
        all.put(
                "many rows",
                new Part(
                        SHEET,
                        HEAD,
                        "<row><c t=\"inlineStr\"><is><t>S#</t></is></c><c><v>12.5</v></c></row>",
                        400_000,
                        "</sheetData></worksheet>"));
        return all;
    }

    private static Map<String, Part> ods() {
        Map<String, Part> all = new LinkedHashMap<>();
        all.put("blanks without end", Part.of("content.xml", ODS_HEAD, " ", GIGABYTES, ""));
        all.put(
                "a text without end",
                Part.of("content.xml", ODS_HEAD + "<table:table-row><table:table-cell><text:p>", "x", GIGABYTES, ""));
        all.put(
                "blanks in a text by number",
                Part.of(
                        "content.xml",
                        ODS_HEAD + "<table:table-row><table:table-cell><text:p>",
                        "<text:s text:c=\"30000\"/>",
                        MEGABYTES,
                        ""));
        all.put(
                "a row over and over",
                new Part(
                        "content.xml",
                        ODS_HEAD,
                        "<table:table-row table:number-rows-repeated=\"1048570\"><table:table-cell table:number-columns-repeated=\"16000\" office:value-type=\"float\" office:value=\"1\"/></table:table-row>",
                        1,
                        ODS_END));
        all.put(
                "rows over and over",
                new Part(
                        "content.xml",
                        ODS_HEAD,
                        "<table:table-row table:number-rows-repeated=\"900000\"><table:table-cell office:value-type=\"string\"><text:p>S1</text:p></table:table-cell></table:table-row>",
                        3,
                        ODS_END));
        all.put(
                "empty rows over and over",
                Part.of(
                        "content.xml",
                        ODS_HEAD,
                        "<table:table-row table:number-rows-repeated=\"999999999\"/>",
                        MEGABYTES,
                        ODS_END));
        all.put(
                "many rows",
                new Part(
                        "content.xml",
                        ODS_HEAD,
                        "<table:table-row><table:table-cell office:value-type=\"string\"><text:p>S#</text:p></table:table-cell><table:table-cell office:value-type=\"float\" office:value=\"12.5\"/></table:table-row>",
                        400_000,
                        ODS_END));
        return all;
    }

    private static Map<String, Part> texts() {
        String head = "Piece: S1\n";
        Map<String, Part> all = new LinkedHashMap<>();
        all.put("a line without end", Part.of("", head, "x", MEGABYTES, ""));
        all.put("labels without end", Part.of("", "", "Piece: ", MEGABYTES, ""));
        all.put("lines of labels", Part.of("", "", "Piece: S#\n", MEGABYTES / 4, ""));
        all.put("unknown names by the hundred thousand", new Part("", head, "N#;12.5\n", 300_000, ""));
        all.put("other names by the hundred thousand", new Part("", head, "DATUM;#\n", 300_000, ""));
        all.put("blank lines", Part.of("", head, "\n", MEGABYTES, ""));
        all.put("columns without end", Part.of("", head + "FLANGE", ";", 1_000_000, "\n"));
        all.put("many rows", new Part("", "", "Piece: S#\nFLANGE;12.5\n", 300_000, ""));
        return all;
    }

    private static Path xlsxFile(Path folder, Part part) throws IOException {
        Map<String, byte[]> others = unzipped(new XlsxWriter()
                .sheet("A", List.of(XlsxWriter.row(1, XlsxWriter.text("A1", "part"), XlsxWriter.text("B1", "2"))))
                .bytes());
        return zip(folder, others, part);
    }

    private static Path odsFile(Path folder, Part part) throws IOException {
        Map<String, byte[]> others = new LinkedHashMap<>();
        others.put("mimetype", OdsWorkbook.TYPE.getBytes(StandardCharsets.US_ASCII));
        return zip(folder, others, part);
    }

    private static Map<String, byte[]> unzipped(byte[] zip) throws IOException {
        Map<String, byte[]> all = new LinkedHashMap<>();
        try (java.util.zip.ZipInputStream in =
                new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                all.put(entry.getName(), in.readAllBytes());
            }
        }
        return all;
    }

    private static Path zip(Path folder, Map<String, byte[]> others, Part part) throws IOException {
        Path file = Files.createTempFile(folder, "hostile", ".zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            // What is not packed much is not refused for how much comes of how little, but for what it is.
            out.setLevel(part.pieces() * part.piece().length() > MEGABYTES ? 1 : 0);
            for (Map.Entry<String, byte[]> each : others.entrySet()) {
                if (!each.getKey().equals(part.name())) {
                    out.putNextEntry(new ZipEntry(each.getKey()));
                    out.write(each.getValue());
                    out.closeEntry();
                }
            }
            out.putNextEntry(new ZipEntry(part.name()));
            part.write(out);
            out.closeEntry();
        }
        return file;
    }

    /** A zip file with very many things in it, and one whose list says that a part is short. */
    private static Path manyEntries(Path folder) throws IOException {
        Path file = Files.createTempFile(folder, "hostile", ".zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < 60_000; i++) {
                out.putNextEntry(new ZipEntry("xl/" + i));
                out.closeEntry();
            }
        }
        return file;
    }

    private static Path lyingSize(Path folder) throws IOException {
        Path file = xlsxFile(folder, Part.of(SHEET, HEAD, " ", GIGABYTES, ""));
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 0; i + 46 < bytes.length; i++) {
            if (bytes[i] == 'P' && bytes[i + 1] == 'K' && bytes[i + 2] == 1 && bytes[i + 3] == 2) {
                java.util.Arrays.fill(bytes, i + 24, i + 28, (byte) 0);
                bytes[i + 24] = 100;
            }
        }
        return Files.write(file, bytes);
    }

    /** Prints a line per input: its name, the seconds that reading took, and the first line of what was said of it. */
    public static void main(String[] arguments) throws IOException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        Path folder = Path.of(arguments[0]);
        ResolvedPlan plan =
                PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
        for (Map.Entry<String, Part> each : xlsx().entrySet()) {
            say(out, "xlsx, " + each.getKey(), plan, IntakeSettings.USUAL, xlsxFile(folder, each.getValue()));
        }
        say(out, "xlsx, very many parts", plan, IntakeSettings.USUAL, manyEntries(folder));
        say(out, "xlsx, sizes that are not true", plan, IntakeSettings.USUAL, lyingSize(folder));
        for (Map.Entry<String, Part> each : ods().entrySet()) {
            say(out, "ods, " + each.getKey(), plan, IntakeSettings.USUAL, odsFile(folder, each.getValue()));
        }
        IntakeSettings mapped = IntakeSettings.USUAL.withMapping(Mapping.read(Input.text(
                "m",
                "{ \"schema\": \"firstoff-mapping-1\", \"layout\": \"delimited\", \"delimiter\": \"semicolon\","
                        + " \"part\": { \"label\": \"Piece\" }, \"rows\": { \"name\": 1, \"actual\": 2 },"
                        + " \"names\": { \"FLANGE\": 2 }, \"notInPlan\": [\"DATUM\"] }")));
        for (Map.Entry<String, Part> each : texts().entrySet()) {
            Path file = Files.createTempFile(folder, "hostile", ".txt");
            try (OutputStream text = new java.io.BufferedOutputStream(Files.newOutputStream(file))) {
                each.getValue().write(text);
            }
            say(out, "text, " + each.getKey(), plan, mapped, file);
        }
    }

    private static void say(PrintStream out, String name, ResolvedPlan plan, IntakeSettings settings, Path file)
            throws IOException {
        long from = System.nanoTime();
        Intake intake = ReadingFiles.readBlocks(plan, List.of(Input.file("r", file)), settings, block -> {});
        long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - from);
        List<String> lines = intake.refused().lines();
        out.println(name + "|" + seconds + "|" + (lines.isEmpty() ? intake.rows() : lines.get(0)));
        Files.delete(file);
    }
}
