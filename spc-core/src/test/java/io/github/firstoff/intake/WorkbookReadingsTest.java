package io.github.firstoff.intake;

import static io.github.firstoff.intake.XlsxWriter.DATE_AND_TIME;
import static io.github.firstoff.intake.XlsxWriter.THREE_DECIMALS;
import static io.github.firstoff.intake.XlsxWriter.number;
import static io.github.firstoff.intake.XlsxWriter.row;
import static io.github.firstoff.intake.XlsxWriter.text;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What workbooks say, cell by cell. */
class WorkbookReadingsTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final String HEAD = row(1, text("A1", "part"), text("B1", "2"), text("C1", "time"));

    private static Intake read(byte[] bytes, IntakeSettings settings) {
        return ReadingFiles.readInputs(
                PLAN, List.of(Input.bytes("r.xlsx", bytes, relative -> Optional.empty())), settings);
    }

    private static Intake read(byte[] bytes) {
        return read(bytes, IntakeSettings.USUAL);
    }

    private static byte[] rows(String... rows) {
        return new XlsxWriter().sheet("Readings", Arrays.asList(rows)).bytes();
    }

    private static List<String> notices(Intake intake) {
        return intake.notices().stream().map(Notice::line).toList();
    }

    private static List<String> values(Intake intake) {
        List<String> values = new ArrayList<>();
        for (PartRecord part : intake.recordOrRefuse().parts()) {
            part.readings()
                    .values()
                    .forEach(list -> list.forEach(reading -> values.add(part.serial() + " "
                            + (reading instanceof Reading.Measured measured
                                    ? measured.value().toPlainString()
                                    : ((Reading.Observed) reading).pass() ? "pass" : "fail"))));
        }
        return values;
    }

    /**
     * What spreadsheets store for what was typed: the shortest decimal that gives the same binary number, or 17 digits of it. The long forms
     * are those of IEEE 754 binary64, by Python 3.11's {@code format(x, '.17g')}.
     */
    @ParameterizedTest
    @CsvSource({
        "51.963, 51.963, false",
        "51.963000000000001, 51.963, true",
        "12.550000000000001, 12.55, true",
        "12.549999999999999, 12.55, true",
        "0.10000000000000001, 0.1, true",
        "51.96, 51.96, false",
        "1E-3, 0.001, false",
        "1.2500000000000001E-2, 0.0125, true",
        "12, 12, false",
        "-0.0050000000000000001, -0.005, true",
        "51.9633333333333, 51.9633333333333, false",
        "51.963333333333331, 51.9633333333333, true",
        "1.5E1, 15, false"
    })
    void aNumber_isTheDecimalOfTheFile_toFifteenDigits(String stored, String value, boolean told) {
        Intake intake = read(rows(HEAD, row(2, text("A2", "S1"), number("B2", stored, THREE_DECIMALS))));
        if (stored.startsWith("-")) {
            assertThat(SheetNumber.cell(1, stored, false).text()).isEqualTo(value);
            return;
        }
        assertThat(values(intake)).containsExactly("S1 " + value);
        assertThat(notices(intake).toString().contains("more than the 15 digits"))
                .isEqualTo(told);
    }

    /** Day numbers of Apache POI's and every spreadsheet's calendar: 46346 is 2026-11-20 (days since 1899-12-30). */
    @Test
    void times_areReadFromDayNumbers_inBothCalendars() {
        String day = row(2, text("A2", "S1"), number("B2", "12.5"), number("C2", "46346.34409722222", DATE_AND_TIME));
        Intake intake = read(rows(HEAD, day));
        assertThat(time(intake)).isEqualTo(LocalDateTime.of(2026, 11, 20, 8, 15, 30));
        byte[] other = new XlsxWriter()
                .sheet("Readings", List.of(HEAD, day.replace("46346", "44884")))
                .workbookProperties("<workbookPr date1904=\"1\"/>")
                .bytes();
        assertThat(time(read(other))).isEqualTo(LocalDateTime.of(2026, 11, 20, 8, 15, 30));
    }

    private static LocalDateTime time(Intake intake) {
        return FirstReading.context(intake, "2").time().orElseThrow();
    }

    @Test
    void formulas_hiddenThings_mergedCells_macrosAndOtherSheets_areTold() {
        byte[] bytes = new XlsxWriter()
                .sheet(
                        "Readings",
                        "hidden",
                        "<cols><col min=\"2\" max=\"2\" hidden=\"1\"/></cols><sheetData>" + HEAD
                                + row(2, text("A2", "S1"), "<c r=\"B2\"><f>A1+1</f><v>12.5</v></c>")
                                + row(3, text("A3", "S2"), "<c r=\"B3\"><f>A1+2</f><v>12.51</v></c>")
                                        .replace("<row ", "<row hidden=\"1\" ")
                                + "</sheetData><mergeCells><mergeCell ref=\"A8:C8\"/></mergeCells>")
                .sheet("Notes", List.of(row(1, text("A1", "none"))))
                .bytes();

        Intake intake = read(bytes);

        assertThat(values(intake)).containsExactly("S1 12.5", "S2 12.51");
        assertThat(notices(intake))
                .containsExactly(
                        "r.xlsx, sheet \"Readings\": 2 cells are formulas; what is stored as result was read (B2, B3)",
                        "r.xlsx, sheet \"Readings\": 1 row is hidden; it was read all the same (3)",
                        "r.xlsx, sheet \"Readings\": the sheet is hidden; it was read all the same",
                        "r.xlsx, sheet \"Readings\": the sheet \"Notes\" of the workbook was not used",
                        "r.xlsx, sheet \"Readings\": column B is hidden; it was read all the same",
                        "r.xlsx, sheet \"Readings\": cells are merged (A8:C8); only the first cell of them holds anything");
    }

    @Test
    void ofSeveralSheets_theUserSaysWhich() {
        byte[] bytes = new XlsxWriter()
                .sheet("Lot 7", List.of(HEAD, row(2, text("A2", "S1"), number("B2", "12.5"))))
                .sheet("Lot 8", List.of(HEAD, row(2, text("A2", "S2"), number("B2", "12.6"))))
                .bytes();
        assertThat(read(bytes).refused().lines())
                .containsExactly(
                        "r.xlsx: several sheets have a heading that fits; found the sheets \"Lot 7\", \"Lot 8\"; "
                                + "expected --sheet NAME to say which");
        assertThat(values(read(bytes, IntakeSettings.USUAL.withSheet("Lot 8")))).containsExactly("S2 12.6");
        assertThat(read(bytes, IntakeSettings.USUAL.withSheet("Lot 9"))
                        .refused()
                        .lines())
                .containsExactly("r.xlsx: the workbook has no such sheet; found --sheet \"Lot 9\"; expected one of the "
                        + "sheets \"Lot 7\", \"Lot 8\"");
    }

    @Test
    void ofTwoSheetsOfOneName_theOneWithTheHeadingIsRead_andANameAloneSaysNothing() {
        byte[] bytes = new XlsxWriter()
                .sheet("Lot 7", List.of(row(1, text("A1", "notes")), row(9, text("A9", "none"))))
                .sheet(
                        "Lot 7",
                        List.of(
                                row(5, text("A5", "part"), text("B5", "2")),
                                row(6, text("A6", "S1"), number("B6", "12.5"))))
                .bytes();
        assertThat(values(read(bytes))).containsExactly("S1 12.5");
        assertThat(read(bytes, IntakeSettings.USUAL.withSheet("Lot 7"))
                        .refused()
                        .lines())
                .containsExactly("r.xlsx: several sheets have that name; found --sheet \"Lot 7\"; "
                        + "expected sheets with a name each");
    }

    /** A digit that changed after the workbook was saved, in a part that is packed as it is: only the check sum tells (CRC-32). */
    @Test
    void aDigitThatChangedOnTheWay_isNotRead() {
        byte[] sound = rows(HEAD, row(2, text("A2", "S1"), number("B2", "12.5")));
        byte[] stored = stored(sound);
        assertThat(values(read(stored))).containsExactly("S1 12.5");
        String text = new String(stored, StandardCharsets.ISO_8859_1);
        stored[text.indexOf("<v>12.5</v>") + 4] = '3';
        assertThat(read(stored).refused().lines())
                .containsExactly("r.xlsx: the workbook is damaged: what is packed in it is not what was packed, by its "
                        + "check sum; expected the file as the spreadsheet saved it; copy it anew");
    }

    private static byte[] stored(byte[] zip) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                byte[] content = in.readAllBytes();
                CRC32 sum = new CRC32();
                sum.update(content);
                ZipEntry plain = new ZipEntry(entry.getName());
                plain.setMethod(ZipEntry.STORED);
                plain.setSize(content.length);
                plain.setCrc(sum.getValue());
                out.putNextEntry(plain);
                out.write(content);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    @Test
    void textsWithADecimalComma_areReadAsInCsv_besideNumbers() {
        Intake intake = read(rows(
                HEAD,
                row(2, text("A2", "S1"), text("B2", "12,510")),
                row(3, text("A3", "S2"), text("B3", "12,5")),
                row(4, text("A4", "S3"), number("B4", "12.515"))));
        assertThat(values(intake)).containsExactly("S1 12.510", "S2 12.5", "S3 12.515");
        assertThat(notices(intake))
                .containsExactly(
                        "r.xlsx, sheet \"Readings\", row 3: numbers are read with a decimal comma, as \"12,5\" shows");
    }

    @Test
    void aTableThatBeginsBesideTheEdge_andRowsAbove_areUnderstood() {
        Intake intake = read(rows(
                row(2, text("C2", "Part number"), text("D2", "HQ-310-P")),
                row(4, text("C4", "part"), text("D4", "characteristic"), text("E4", "value")),
                row(6, text("C6", "S1"), number("D6", "2"), number("E6", "12.5")),
                row(9, text("C9", "S1"), number("D9", "9"), text("E9", "i.O."))));
        assertThat(values(intake)).containsExactly("S1 12.5", "S1 pass");
        assertThat(notices(intake))
                .containsExactly("r.xlsx, sheet \"Readings\": row 2 stands before the heading and was not used: "
                        + "\"Part number, HQ-310-P\"");
    }

    @Test
    void aCharacteristicTypedAsANumber_mustMeanOneAlone() {
        ResolvedPlan plan = PlanFile.read(Input.text("p", """
                        {"schema": "firstoff-plan-1", "part": {"number": "HQ-1", "revision": "A"}, "unit": "mm",
                         "characteristics": [
                          {"number": "10.1", "feature": "a", "requirement": "12.5 ±0.05"},
                          {"number": "10.10", "feature": "b", "requirement": "12.5 ±0.05"}]}
                        """)).resolve();
        byte[] bytes = rows(
                row(1, text("A1", "part"), text("B1", "characteristic"), text("C1", "value")),
                row(2, text("A2", "S1"), number("B2", "10.1"), number("C2", "12.5")));
        assertThat(ReadingFiles.readInputs(plan, List.of(Input.bytes("r.xlsx", bytes, relative -> Optional.empty())))
                        .refused()
                        .lines())
                .containsExactly("r.xlsx, sheet \"Readings\", cell B2, column characteristic: a spreadsheet stores a "
                        + "number without zeros at its ends, so which characteristic this is cannot be told; found "
                        + "\"10.1\"; expected 10.1 or 10.10, in a cell that is formatted as text");
    }

    @Test
    void openDocument_isReadWithRepeatedAndHiddenThings_andRemarksLeftOut() {
        String head = OdsWriter.row(OdsWriter.text("part"), OdsWriter.text("2"), OdsWriter.text("note"));
        byte[] bytes = new OdsWriter()
                .hidingStyle("gone")
                .sheet(
                        "Readings",
                        "gone",
                        "<table:table-column table:number-columns-repeated=\"2\"/>"
                                + "<table:table-column table:visibility=\"collapse\"/>" + head
                                + "<table:table-row table:number-rows-repeated=\"3\"><table:table-cell/></table:table-row>"
                                + "<table:table-row table:visibility=\"filter\">"
                                + "<table:table-cell office:value-type=\"string\"><office:annotation><text:p>check</text:p>"
                                + "</office:annotation><text:p>S<text:span>1</text:span></text:p></table:table-cell>"
                                + OdsWriter.number("12.500") + OdsWriter.text("burr  left")
                                + "<table:table-cell table:number-columns-repeated=\"16381\"/></table:table-row>"
                                + "<table:table-row table:number-rows-repeated=\"1048571\">"
                                + "<table:table-cell table:number-columns-repeated=\"16384\"/></table:table-row>")
                .bytes();
        Intake intake = read(bytes);
        assertThat(values(intake)).containsExactly("S1 12.500");
        assertThat(intake.rows()).isEqualTo(new RowCounts(1, 1, 0, 0));
        assertThat(FirstReading.context(intake, "2").note()).contains("burr  left");
        assertThat(notices(intake))
                .containsExactly(
                        "r.xlsx, sheet \"Readings\": 1 row is hidden; it was read all the same (5)",
                        "r.xlsx, sheet \"Readings\": the sheet is hidden; it was read all the same",
                        "r.xlsx, sheet \"Readings\": column C is hidden; it was read all the same");
    }

    @Test
    void aPlan_isMadeFromASheet() {
        byte[] bytes = new XlsxWriter()
                .sheet("Notes", List.of(row(1, text("A1", "none"))))
                .sheet(
                        "Plan",
                        List.of(
                                row(1, text("A1", "Part number:"), text("B1", "HQ-310-P")),
                                row(2, text("A2", "Revision: C")),
                                row(
                                        4,
                                        text("A4", "No."),
                                        text("B4", "feature"),
                                        text("C4", "requirement"),
                                        text("D4", "study")),
                                row(
                                        5,
                                        number("A5", "1"),
                                        text("B5", "bearing bore"),
                                        text("C5", "Ø52 P7"),
                                        text("D5", "xbar-r 5")),
                                row(6, number("A6", "2"), text("B6", "flange"), text("C6", "12.5 ±0.05"))))
                .bytes();
        PlanDraft draft = PlanDraft.of(Input.bytes("p.xlsx", bytes, relative -> Optional.empty()), List.of(), Map.of());
        assertThat(draft.source()).isEqualTo("xlsx");
        assertThat(draft.plan().part().number()).isEqualTo("HQ-310-P");
        assertThat(draft.plan().part().revision()).isEqualTo("C");
        assertThat(draft.plan().characteristics())
                .extracting(each -> each.number())
                .containsExactly("1", "2");
        assertThat(draft.place("2").orElseThrow()).hasToString("p.xlsx, sheet \"Plan\", cell A6, column No.");
    }

    @Test
    void everyMalformedWorkbook_isThereWithItsWords() {
        Path folder = Path.of("src/test/resources/intake");
        assertThat(WorkbookCorpus.files().keySet()).hasSizeGreaterThan(40).allSatisfy(name -> {
            assertThat(folder.resolve(name)).exists();
            assertThat(folder.resolve(name + ".expected")).exists();
        });
    }

    @ParameterizedTest
    @CsvSource({
        "UTF-8, UTF-8, ''",
        "UTF-8, UTF-8, \uFEFF",
        "UTF-16, UTF-16LE, \uFEFF",
        "UTF-16, UTF-16BE, ''",
        "UTF-16, UTF-16LE, ''"
    })
    void parts_areInUtf8OrUtf16(String declared, String written, String mark) {
        byte[] bytes = new XlsxWriter()
                .sheet("Readings", List.of())
                .part(
                        "xl/worksheets/sheet1.xml",
                        (mark + "<?xml version=\"1.0\" encoding=\"" + declared + "\"?><worksheet><sheetData>" + HEAD
                                        + row(2, text("A2", "S\u00e91"), number("B2", "12.5"))
                                        + "</sheetData></worksheet>")
                                .getBytes(Charset.forName(written)))
                .bytes();
        assertThat(values(read(bytes))).containsExactly("S\u00e91 12.5");
    }

    @Test
    void aPartInAnotherEncoding_isRefused_andNothingElseSpeaks() {
        byte[] bytes = new XlsxWriter()
                .sheet("Readings", List.of())
                .part("xl/worksheets/sheet1.xml", "<worksheet>\u00e9</worksheet>".getBytes(StandardCharsets.ISO_8859_1))
                .bytes();
        PrintStream before = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
        try {
            assertThat(read(bytes).refused().lines())
                    .containsExactly("r.xlsx, sheet \"Readings\": the workbook is damaged: this part of it is no "
                            + "well-formed XML; the rest was not read; expected a workbook that a spreadsheet saved");
        } finally {
            System.setErr(before);
        }
        assertThat(said.toString(StandardCharsets.UTF_8)).isEmpty();
    }

    @Test
    void noTemporaryFile_isLeftBehind() throws IOException {
        long before = aside();
        read(rows(HEAD, row(2, text("A2", "S1"), number("B2", "12.5"))));
        read(Arrays.copyOf(rows(HEAD), 300));
        assertThat(aside()).isEqualTo(before);
    }

    private static long aside() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith(WorkbookFile.asideOfThisRun()))
                    .count();
        }
    }
}
