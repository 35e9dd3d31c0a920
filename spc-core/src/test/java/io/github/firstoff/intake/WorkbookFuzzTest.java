package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Coverage-guided search for workbooks, machine texts and mappings that a reader does not get over; see {@link ReadersFuzzTest} for how to
 * run it. The bytes are set into an otherwise sound workbook, part by part, because no search would find a zip file by itself.
 */
@Tag("fuzz")
class WorkbookFuzzTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final Mapping MAPPING =
            Mapping.read(Input.file(Path.of("src/test/resources/intake/cell.mapping.json")));
    private static final String BUDGET = "5m";
    private static final String SHEET = "<worksheet><sheetData><row r=\"1\"><c t=\"inlineStr\"><is><t>part</t></is></c>"
            + "<c t=\"s\"><v>1</v></c></row><row r=\"2\">";

    private static final byte[] CELL = """
            Part HQ-310-P   Rev C   Piece S001   By A. Quill
            ---
            Bearing bore      52,000    -0,021    -0,051   51,9620   -0,0380  --*-----
            K2\t12.5\tmm
            item: K2
            is: 12.5

            """.getBytes(StandardCharsets.UTF_8);
    private static final String STYLES =
            "<styleSheet><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"22\"/></cellXfs></styleSheet>";
    private static final String CONTENT =
            "<d><spreadsheet><table name=\"A\"><table-row><table-cell><p>part</p></table-cell>"
                    + "<table-cell><p>2</p></table-cell></table-row>";
    private static final String NAME = "readings";

    /** How the sheets of one part are walked through. */
    private interface Walk {
        void walk(SheetXml xml, SheetTaker taker) throws IOException;
    }

    private static void walkXlsx(SheetXml xml, SheetTaker taker) throws IOException {
        if (taker.begin("A", false)) {
            SharedTexts texts = new SharedTexts(Fault.Where.inFile(NAME));
            for (String text : List.of("part", "2", "time", "9", "S1")) {
                texts.add(text);
            }
            BoundedPart styles = new BoundedPart(
                    NAME, new ByteArrayInputStream(STYLES.getBytes(StandardCharsets.UTF_8)), STYLES.length());
            try (SheetXml styled = new SheetXml(Fault.Where.inFile(NAME), styles)) {
                new XlsxSheet(NAME, "A", xml, texts, XlsxStyles.read(styled), false).read(taker);
            }
        }
    }

    /** Reads as {@link WorkbookReadings} does, a workbook of one part. */
    private static void readWalked(Walk walk, byte[] data) {
        Gathering gathering = new Gathering(PLAN);
        FaultCollector faults = new FaultCollector();
        Rows rows = new Rows(faults, IntakeSettings.USUAL, gathering, gathering);
        RowCheck check = new RowCheck(PLAN, rows, new QifLibrary(List.of()), Optional.empty());
        check.begin(NAME);
        rows.beginFile(NAME);
        Workbook workbook = new Workbook() {
            @Override
            public void walk(SheetTaker taker) throws IOException {
                BoundedPart part = new BoundedPart(NAME, new ByteArrayInputStream(data), 1L << 30);
                try (SheetXml xml = new SheetXml(Fault.Where.inFile(NAME), part)) {
                    walk.walk(xml, taker);
                }
            }

            @Override
            public List<Remark> notices() {
                return List.of();
            }

            @Override
            public void close() {
                // There is nothing to close.
            }
        };
        try {
            WorkbookReadings.read(NAME, workbook, check);
        } catch (TextRefused fault) {
            rows.refuseFile(fault.fault());
        } catch (IOException other) {
            throw new AssertionError("a fault without words", other);
        }
        rows.endFile();
        assertAccountedFor(gathering.intake(List.of(), faults, rows));
    }

    private static XlsxWriter sound() {
        XlsxWriter writer = new XlsxWriter();
        return writer.sheet(
                "A",
                List.of(
                        XlsxWriter.row(1, writer.sharedText("A1", "part"), writer.sharedText("B1", "2")),
                        XlsxWriter.row(2, XlsxWriter.text("A2", "S1"), XlsxWriter.number("B2", "12.5", 1))));
    }

    private static byte[] joined(String head, byte[] data) {
        byte[] first = head.getBytes(StandardCharsets.UTF_8);
        byte[] all = java.util.Arrays.copyOf(first, first.length + data.length);
        System.arraycopy(data, 0, all, first.length, data.length);
        return all;
    }

    /** The sheet alone, without the zip around it: ten times as many tries. */
    @FuzzTest(maxDuration = BUDGET)
    void sheetOfXlsx(byte[] data) {
        readWalked((xml, taker) -> walkXlsx(xml, taker), joined(SHEET, data));
        readWalked((xml, taker) -> walkXlsx(xml, taker), data);
    }

    /** The sheet within its workbook. */
    @FuzzTest(maxDuration = BUDGET)
    void wholeXlsx(byte[] data) {
        read(sound().part("xl/worksheets/sheet1.xml", joined(SHEET, data)).bytes(), IntakeSettings.USUAL);
        read(sound().part("xl/worksheets/sheet1.xml", data).bytes(), IntakeSettings.USUAL);
    }

    @FuzzTest(maxDuration = BUDGET)
    void otherPartsOfXlsx(byte[] data) {
        String[] parts = {
            "xl/sharedStrings.xml",
            "xl/styles.xml",
            "xl/workbook.xml",
            "_rels/.rels",
            "xl/_rels/workbook.xml.rels",
            "[Content_Types].xml"
        };
        int which = data.length == 0 ? 0 : (data[0] & 0xFF) % parts.length;
        byte[] rest = data.length == 0 ? data : java.util.Arrays.copyOfRange(data, 1, data.length);
        read(sound().part(parts[which], rest).bytes(), IntakeSettings.USUAL);
    }

    @FuzzTest(maxDuration = BUDGET)
    void bytesOfZip(byte[] data) {
        read(joined("PK\u0003\u0004", data), IntakeSettings.USUAL);
        // Damage in a sound file: where the first bytes say, the others are set.
        byte[] whole = sound().bytes();
        if (data.length > 2) {
            int at = ((data[0] & 0xFF) << 8 | (data[1] & 0xFF)) % whole.length;
            for (int i = 2; i < data.length && at + i - 2 < whole.length; i++) {
                whole[at + i - 2] = data[i];
            }
            read(whole, IntakeSettings.USUAL);
        }
    }

    /** The content alone, without the zip around it. */
    @FuzzTest(maxDuration = BUDGET)
    void contentOfOds(byte[] data) {
        readWalked((xml, taker) -> OdsWorkbook.walk(NAME, xml, taker), joined(CONTENT, data));
        readWalked((xml, taker) -> OdsWorkbook.walk(NAME, xml, taker), data);
    }

    /** The content within its workbook. */
    @FuzzTest(maxDuration = BUDGET)
    void wholeOds(byte[] data) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        parts.put("mimetype", OdsWorkbook.TYPE.getBytes(StandardCharsets.US_ASCII));
        parts.put("content.xml", joined(CONTENT, data));
        read(XlsxWriter.zip(parts), IntakeSettings.USUAL);
        parts.put("content.xml", data);
        read(XlsxWriter.zip(parts), IntakeSettings.USUAL);
    }

    static List<byte[]> machineTexts() throws IOException {
        return QifFuzzTest.filesOfTheCorpus("cell-");
    }

    @MethodSource("machineTexts")
    @FuzzTest(maxDuration = BUDGET)
    void linesOfAMachine(byte[] data) {
        read(data, IntakeSettings.USUAL.withMapping(MAPPING));
    }

    /** Apart from the reading, because a proposal tries many columns and takes twenty times as long. */
    @MethodSource("machineTexts")
    @FuzzTest(maxDuration = BUDGET)
    void proposalOfAMapping(byte[] data) {
        try {
            MappingDraft draft = MappingDraft.of(input(data), PLAN);
            assertThat(draft.text()).isNotEmpty();
        } catch (InputRefused refused) {
            assertHarmless(refused.lines());
        }
    }

    static List<byte[]> mappings() throws IOException {
        List<byte[]> all = new ArrayList<>(QifFuzzTest.filesOfTheCorpus("mapping-"));
        all.addAll(QifFuzzTest.filesOfTheCorpus("cell.mapping.json"));
        return all;
    }

    @MethodSource("mappings")
    @FuzzTest(maxDuration = BUDGET)
    void mapping(byte[] data) {
        tryMapping(data);
        tryMapping(joined("{ \"schema\": \"firstoff-mapping-1\", \"layout\": \"labels\",", data));
    }

    private static void tryMapping(byte[] data) {
        try {
            Mapping mapping = Mapping.read(input(data));
            read(CELL, IntakeSettings.USUAL.withMapping(mapping));
            read("item K2\nis 12.5\n".getBytes(StandardCharsets.UTF_8), IntakeSettings.USUAL.withMapping(mapping));
        } catch (InputRefused refused) {
            assertHarmless(refused.lines());
        }
    }

    private static Input input(byte[] data) {
        return Input.bytes("readings", data, relative -> Optional.empty());
    }

    private static void read(byte[] data, IntakeSettings settings) {
        Intake intake = ReadingFiles.readInputs(PLAN, List.of(input(data)), settings);
        assertThat(intake.refused().count() > 0 || intake.rows().used() > 0).isTrue();
        assertAccountedFor(intake);
    }

    private static void assertAccountedFor(Intake intake) {
        assertHarmless(intake.refused().lines());
        assertHarmless(intake.notices().stream().map(Notice::line).toList());
        assertThat(intake.rows().read())
                .isEqualTo(intake.rows().used()
                        + intake.rows().refused()
                        + intake.rows().explained());
        if (intake.refused().isEmpty() && intake.rows().used() > 0) {
            assertThat(intake.recordOrRefuse().readingCount()).isPositive();
        }
    }

    private static void assertHarmless(List<String> lines) {
        for (String line : lines) {
            assertThat(line.chars().filter(Character::isISOControl)).as(line).isEmpty();
            assertThat(line).doesNotContain("Exception").doesNotContain("\u202e");
        }
    }
}
