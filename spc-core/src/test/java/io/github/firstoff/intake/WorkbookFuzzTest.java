package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;

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
    private static final String BUDGET = "2m";
    private static final String SHEET = "<worksheet><sheetData><row r=\"1\"><c t=\"inlineStr\"><is><t>part</t></is></c>"
            + "<c t=\"s\"><v>0</v></c></row><row r=\"2\">";

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

    @FuzzTest(maxDuration = BUDGET)
    void sheetOfXlsx(byte[] data) {
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

    @FuzzTest(maxDuration = BUDGET)
    void contentOfOds(byte[] data) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        parts.put("mimetype", OdsWorkbook.TYPE.getBytes(StandardCharsets.US_ASCII));
        parts.put(
                "content.xml",
                joined(
                        "<d><spreadsheet><table name=\"A\"><table-row><table-cell><p>part</p></table-cell>"
                                + "<table-cell><p>2</p></table-cell></table-row>",
                        data));
        read(XlsxWriter.zip(parts), IntakeSettings.USUAL);
        parts.put("content.xml", data);
        read(XlsxWriter.zip(parts), IntakeSettings.USUAL);
    }

    @FuzzTest(maxDuration = BUDGET)
    void linesOfAMachine(byte[] data) {
        read(data, IntakeSettings.USUAL.withMapping(MAPPING));
        try {
            MappingDraft draft = MappingDraft.of(input(data), PLAN);
            assertThat(draft.text()).isNotEmpty();
        } catch (InputRefused refused) {
            assertHarmless(refused.lines());
        }
    }

    @FuzzTest(maxDuration = BUDGET)
    void mapping(byte[] data) {
        try {
            Mapping mapping =
                    Mapping.read(input(joined("{ \"schema\": \"firstoff-mapping-1\", \"layout\": \"labels\",", data)));
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
        assertHarmless(intake.refused().lines());
        assertHarmless(intake.notices().stream().map(Notice::line).toList());
        assertThat(intake.rows().read())
                .isEqualTo(intake.rows().used()
                        + intake.rows().refused()
                        + intake.rows().explained());
        if (intake.refused().isEmpty()) {
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
