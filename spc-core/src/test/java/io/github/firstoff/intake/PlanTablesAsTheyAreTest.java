package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.plan.ResolvedCharacteristic;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tables of requirements as people keep them. Expected limits are the sums of the decimals that stand in the table, worked by hand; those of
 * a bore of 52 P7 are of ISO 286-2:2010, Table 10 (from memory: -21 and -51 µm).
 */
class PlanTablesAsTheyAreTest {

    private static PlanDraft text(String... lines) {
        return PlanDraft.of(Input.text("HQ-310-P.csv", String.join("\n", lines) + "\n"), List.of(), Map.of());
    }

    /** A sheet of rows as {@link XlsxWriter#typed} takes them, with what else stands in it. */
    private static byte[] xlsx(String after, String... rows) {
        return new XlsxWriter()
                .sheet(
                        "Plan",
                        "visible",
                        "<sheetData>" + String.join("", XlsxWriter.typed(rows)) + "</sheetData>" + after)
                .bytes();
    }

    private static PlanDraft sheet(String after, String... rows) {
        return PlanDraft.of(
                Input.bytes("HQ-310-P.xlsx", xlsx(after, rows), relative -> Optional.empty()), List.of(), Map.of());
    }

    private static List<String> refused(Runnable making) {
        return catchThrowableOfType(InputRefused.class, making::run).lines();
    }

    private static List<String> notices(PlanDraft draft) {
        return draft.notices().stream().map(Notice::line).toList();
    }

    private static String shown(PlanDraft draft, String number) {
        ResolvedCharacteristic found = draft.plan().find(number).orElseThrow();
        return found.characteristic().printed() + ": "
                + found.limits().lower().map(BigDecimal::toPlainString).orElse("open") + " to "
                + found.limits().upper().map(BigDecimal::toPlainString).orElse("open") + " "
                + found.limits().unit().word();
    }

    private static String importance(PlanDraft draft, String number) {
        return draft.plan()
                .find(number)
                .orElseThrow()
                .characteristic()
                .importance()
                .word();
    }

    @Test
    void germanHeadings_areUnderstood_andItIsToldHow() {
        PlanDraft draft = text(
                "Hollin Quay Deck Gear;Prüfplan",
                "Teil: HQ-310-P;Zeichnung: HQ-310;Rev.: C",
                "Nr.;Merkmal;Forderung;Klasse;Prüfmittel",
                "1;Lagersitz;Ø52 P7;kritisch;BG-1",
                "2;Tiefe;15,1 +0,06/0;Hauptmerkmal;DM-2",
                ";;;;",
                "Bemerkung: alle Maße in mm;;;;",
                "Geprüft: A. Marsh");

        assertThat(shown(draft, "1")).isEqualTo("Ø52 P7: 51.949 to 51.979 mm");
        assertThat(shown(draft, "2")).isEqualTo("15.1 +0.06/0: 15.1 to 15.16 mm");
        assertThat(importance(draft, "2")).isEqualTo("major");
        assertThat(draft.plan().part().revision()).isEqualTo("C");
        assertThat(notices(draft))
                .contains(
                        "HQ-310-P.csv:3: the columns were understood so: \"Nr.\" as number, \"Merkmal\" as feature,"
                                + " \"Forderung\" as requirement, \"Klasse\" as class, \"Prüfmittel\" as gauge",
                        "HQ-310-P.csv: before the heading was not used: line 1 \"Hollin Quay Deck Gear;Prüfplan\"",
                        "HQ-310-P.csv: taken from above the heading: part number \"HQ-310-P\" (line 2), revision \"C\" (line 2),"
                                + " drawing \"HQ-310\" (line 2)",
                        "HQ-310-P.csv: no characteristic, and not used: line 7 \"Bemerkung: alle Maße in mm\", line 8 \"Geprüft: A. Marsh\"",
                        "HQ-310-P.csv:5, column Forderung: the figures have decimal commas, as in \"15,1 +0,06/0\", read as"
                                + " 15.1 +0.06/0");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "No.;Characteristic;Requirement",
                "Item;Feature;Specification",
                "Merkmal-Nr.;Merkmal;Anforderung",
                "Lfd. Nr.;Bezeichnung;Forderung",
                "Balloon;Item;Spec.",
                "Char. no.;Description;Drawing requirement",
                "Pos.;Benennung;Zeichnungsangabe"
            })
    void headings_areFoundByCommonNames(String heading) {
        assertThat(shown(text(heading, "1;bore;52 P7"), "1")).isEqualTo("52 P7: 51.949 to 51.979 mm");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Nominal;Upper tolerance;Lower tolerance|15.1;0.06;0|15.1 +0.06/0: 15.1 to 15.16 mm",
                "Nennmaß;oberes Abmaß;unteres Abmaß|15,1;+0,06;-0,02|15.1 +0.06/-0.02: 15.08 to 15.16 mm",
                "Nominal [mm];Tol. +;Tol. -|12.5;0.02;0.01|12.5 +0.02/-0.01: 12.49 to 12.52 mm",
                "Nominal;Tol +;Tol −|12.5;0.02;−0.01|12.5 +0.02/-0.01: 12.49 to 12.52 mm",
                "Nominal;Tolerance (+/-);Unit|12.5;0.05;mm|12.5 ±0.05: 12.45 to 12.55 mm",
                "Nominal;Tolerance;Unit|12.5;±0.05;mm|12.5 ±0.05: 12.45 to 12.55 mm",
                "Nominal;Tolerance;Unit|52;P7;mm|52 P7: 51.949 to 51.979 mm",
                "Nominal;Tolerance;Unit|15.1;+0.06/0;mm|15.1 +0.06/0: 15.1 to 15.16 mm",
                "Nominal;Upper tolerance;Lower tolerance|⌀52;-0.021;-0.051|⌀52 -0.021/-0.051: 51.949 to 51.979 mm",
                "Nominal;Lower limit;Upper limit|15.1;15.1;15.16|15.1 +0.06/0: 15.1 to 15.16 mm",
                "Unit;Lower limit;Upper limit|mm;51.95;52.05|51.95..52.05: 51.95 to 52.05 mm",
                "Einheit;Mindestmaß;Höchstmaß|µm;;0,8|0.8 µm max: open to 0.8 µm",
                "Unit;LSL;USL|mm;12;-|12 min: 12 to open mm",
                "Nominal;Tolerance ±;Unit|45;0.5;deg|45° ±0.5°: 44.5 to 45.5 degree",
                "Nominal;Tolerance ±;Unit|0.5;0.005;in|0.5 ±0.005: 0.495 to 0.505 inch",
                "Requirement;Upper tolerance;Lower tolerance|15.1 +0.06/0;+0.06;0|15.1 +0.06/0: 15.1 to 15.16 mm",
                "Requirement;Upper tolerance;Lower tolerance|Ø52 P7;-0.021;-0.051|Ø52 P7: 51.949 to 51.979 mm",
                "Requirement;Lower limit;Upper limit|12 min;12;-|12 min: 12 to open mm",
                "Requirement;Upper tolerance;Lower tolerance|15.1;+0.06;0|15.1 +0.06/0: 15.1 to 15.16 mm",
                "Nominal;Upper tolerance;Lower tolerance|dia 40;0.1;0|dia 40 +0.1/0: 40 to 40.1 mm"
            })
    void requirementsInParts_arePutTogetherAsADrawingPrintsThem(String columns, String fields, String shown) {
        assertThat(shown(text("No.;Feature;" + columns, "1;bore;" + fields), "1"))
                .isEqualTo(shown);
    }

    @Test
    void aRowOfUnits_andAUnitBehindAHeading_stateTheUnitOfThePlan() {
        PlanDraft rows = text("No.;Feature;Nominal;Tolerance ±", ";;in;in", "1;bore;0.5;0.005");
        assertThat(rows.plan().plan().unit().word()).isEqualTo("inch");
        assertThat(notices(rows)).contains("HQ-310-P.csv:2: the row holds units and no characteristic");
        assertThat(text("No.;Feature;Nominal [inch];Tolerance ±", "1;bore;0.5;0.005")
                        .plan()
                        .plan()
                        .unit()
                        .word())
                .isEqualTo("inch");
    }

    @Test
    void whatStandsAboveTheHeading_isUsedOnlyWhereItIsUnmistakable() {
        PlanDraft labels = text(
                "Part;Drawing;Revision",
                "HQ-311-P;HQ-311;D",
                "Part: Winch drum carrier",
                "number;feature;requirement",
                "1;bore;52 P7");
        assertThat(labels.plan().part().revision()).isEqualTo("-");
        assertThat(labels.plan().part().number()).isEqualTo("HQ-310-P");
        assertThat(notices(labels))
                .contains("HQ-310-P.csv: before the heading was not used: line 1 \"Part;Drawing;Revision\", line 2"
                        + " \"HQ-311-P;HQ-311;D\", line 3 \"Part: Winch drum carrier\"");
        assertThat(text("Part: HQ-311-P Rev D", "number;feature;requirement", "1;bore;52 P7")
                        .plan()
                        .part()
                        .number())
                .isEqualTo("HQ-310-P");
    }

    @Test
    void numbersOfASpreadsheet_areTakenAsTheyAreShown_andTextsInTheSameColumnHaveTheirMark() {
        PlanDraft draft = sheet(
                "",
                "Nr.|Merkmal|Nennmaß|oberes Abmaß|unteres Abmaß",
                "1|Tiefe|15.1|0.06|0",
                "10|Bund|12.5|'+0,02|'-0,01",
                "Datum:|@46000|||");
        assertThat(shown(draft, "1")).isEqualTo("15.1 +0.06/0: 15.1 to 15.16 mm");
        assertThat(shown(draft, "10")).isEqualTo("12.5 +0.02/-0.01: 12.49 to 12.52 mm");
        assertThat(notices(draft))
                .contains("HQ-310-P.xlsx, sheet \"Plan\": no characteristic, and not used: row 4 \"Datum:\"");
    }

    @Test
    void anOpenDocument_isReadAlike() {
        String rows = OdsWriter.row(
                        OdsWriter.text("No."),
                        OdsWriter.text("Item"),
                        OdsWriter.text("Nominal"),
                        OdsWriter.text("Tol. (+/-)"))
                + OdsWriter.row(
                        OdsWriter.number("1"),
                        OdsWriter.text("flange"),
                        OdsWriter.number("12.5"),
                        OdsWriter.number("0.05"));
        PlanDraft draft = PlanDraft.of(
                Input.bytes("p.ods", new OdsWriter().sheet("Plan", rows).bytes(), relative -> Optional.empty()),
                List.of(),
                Map.of());
        assertThat(shown(draft, "1")).isEqualTo("12.5 ±0.05: 12.45 to 12.55 mm");
    }

    @Test
    void aMergedNumber_aDateAndADoubledNumber_areRefusedByCell() {
        List<String> lines = refused(() -> sheet(
                "<mergeCells><mergeCell ref=\"A2:A3\"/></mergeCells>",
                "No.|Feature|Requirement",
                "1|bore|'52 P7",
                "|depth|'15.1 +0.06/0",
                "3|flange|@46000",
                "10.1|face|'12.5 ±0.05",
                "10.1|face|'12.5 ±0.05"));
        assertThat(lines)
                .containsExactly(
                        "HQ-310-P.xlsx, sheet \"Plan\", cell A3, column No.: the cells A2:A3 are merged, and only the first of them holds"
                                + " anything; found nothing; expected the number of the characteristic; each has its own",
                        "HQ-310-P.xlsx, sheet \"Plan\", cell C4: the cell holds a date; the spreadsheet has perhaps made one of what was"
                                + " typed; found \"2025-12-09\"; expected text, in a cell that is formatted as text",
                        "HQ-310-P.xlsx, sheet \"Plan\", cell A6, column No.: two characteristics have the number 10.1 (the first in cell A5);"
                                + " expected a number of its own for each characteristic, in a cell that is formatted as text; a spreadsheet"
                                + " stores the number 10.10 as 10.1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2026-01-02;bore;52 P7|column number: this is a date",
                "02-Jan;bore;52 P7|column number: this is a date",
                "1E+01;bore;52 P7|column number: a spreadsheet has perhaps made a power of ten",
                "1;bore;2026-10-12|column requirement: this is a date",
                "1;bore;12-Oct|column requirement: this is a date",
                "1;bore;12. Okt|column requirement: this is a date",
                "1;bore;12.10.2026|column requirement: this is a date"
            })
    void whatASpreadsheetMadeOfSomethingElse_isRefused(String row, String message) {
        assertThat(refused(() -> text("number;feature;requirement", row)))
                .singleElement()
                .asString()
                .startsWith("HQ-310-P.csv:2, " + message);
    }

    @Test
    void aHeadingOfTwoRows_andAColumnWithoutAName_areRefused() {
        assertThat(refused(() -> sheet(
                        "<mergeCells><mergeCell ref=\"D1:E1\"/></mergeCells>",
                        "Nr.|Merkmal|Nennmaß|Toleranz|",
                        "|||oben|unten",
                        "1|Tiefe|15.1|'+0.06|0")))
                .first()
                .asString()
                .isEqualTo(
                        "HQ-310-P.xlsx, sheet \"Plan\", row 2: the heading goes on in a second row; found \"oben, unten\"; expected one row"
                                + " of names, such as upper tolerance and lower tolerance, each in a cell of its own");
        assertThat(refused(() -> text("number;feature;;requirement", "1;bore;2 off;52 P7")))
                .containsExactly(
                        "HQ-310-P.csv:2, column 3: the column has no name; found \"2 off\"; expected a name in the heading, or"
                                + " nothing in the column");
    }

    @Test
    void hiddenRowsAndColumns_areRead_andTold() {
        byte[] bytes = new XlsxWriter()
                .sheet(
                        "Plan",
                        "visible",
                        "<cols><col min=\"3\" max=\"3\" hidden=\"1\"/></cols><sheetData>"
                                + String.join("", XlsxWriter.typed("No.|Item|Spec", "1|bore|52 P7"))
                                        .replace("<row r=\"2\"", "<row r=\"2\" hidden=\"1\"")
                                + "</sheetData>")
                .bytes();
        PlanDraft draft = PlanDraft.of(Input.bytes("p.xlsx", bytes, relative -> Optional.empty()), List.of(), Map.of());
        assertThat(shown(draft, "1")).isEqualTo("52 P7: 51.949 to 51.979 mm");
        assertThat(notices(draft))
                .contains(
                        "p.xlsx, sheet \"Plan\": 1 row is hidden; it was read all the same (2)",
                        "p.xlsx, sheet \"Plan\": column C is hidden; it was read all the same");
    }

    @Test
    void aSheetOfReadingsBesideThePlan_isNotTakenForIt() {
        byte[] bytes = new XlsxWriter()
                .sheet("Readings", XlsxWriter.typed("part|characteristic|value|unit|gauge"))
                .sheet("Limits", XlsxWriter.typed("No.|Item|Min|Max", "1|bore|51.95|52.05"))
                .bytes();
        PlanDraft draft = PlanDraft.of(Input.bytes("p.xlsx", bytes, relative -> Optional.empty()), List.of(), Map.of());
        assertThat(shown(draft, "1")).isEqualTo("51.95..52.05: 51.95 to 52.05 mm");
    }

    @Test
    void balloonsOfThreeParts_areNoDates() {
        assertThat(text("number;feature;requirement", "1.2.10;bore;52 P7")
                        .plan()
                        .find("1.2.10"))
                .isPresent();
    }

    @Test
    void numbersThatAllEndInAZero_areTakenAndTold() {
        PlanDraft draft = text("number;feature;requirement", "1.0;bore;52 P7", "2.0;flange;12.5 ±0.05");
        assertThat(draft.plan().find("1.0")).isPresent();
        assertThat(notices(draft)).anySatisfy(line -> assertThat(line).contains("all numbers end in a zero"));
    }

    @Test
    void aKeyCharacteristic_isCritical_andTold() {
        PlanDraft draft = text("number;feature;requirement;key", "1;bore;52 P7;x", "2;flange;12.5 ±0.05;");
        assertThat(importance(draft, "1")).isEqualTo("critical");
        assertThat(importance(draft, "2")).isEqualTo("minor");
        assertThat(notices(draft)).contains("HQ-310-P.csv:2, column key: the key characteristic was taken as critical");
    }

    /** The names of ISO 7870-2:2013 in words. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mean and range of 5|xbar-r|5",
                "Mean and range, n = 5|xbar-r|5",
                "average and standard deviation (4)|xbar-s|4",
                "x\u0304-R 5|xbar-r|5",
                "X-bar S subgroups of 4|xbar-s|4",
                "I-MR|individuals|",
                "Individuals chart|individuals|",
                "Einzelwerte|individuals|",
                "Mittelwert und Spannweite 5|xbar-r|5",
                "median and range 5|median-r|5",
                "ewma|ewma|"
            })
    void studies_areReadInWords(String said, String chart, String subgroup) {
        PlanDraft draft = text("number;feature;requirement;Chart", "1;bore;52 P7;" + said);
        assertThat(draft.plan()
                        .find("1")
                        .orElseThrow()
                        .characteristic()
                        .study()
                        .orElseThrow()
                        .chart())
                .isEqualTo(chart);
        assertThat(draft.text().contains("\"subgroup\": " + subgroup)).isEqualTo(subgroup != null);
    }

    @Test
    void aPartCellThatIsMerged_isNamedInReadings() {
        byte[] bytes = xlsx(
                "<mergeCells><mergeCell ref=\"A2:A3\"/></mergeCells>",
                "part|characteristic|value",
                "S1|'1|51.96",
                "|'2|12.5");
        Intake intake = ReadingFiles.readInputs(
                PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve(),
                List.of(Input.bytes("lot.xlsx", bytes, relative -> Optional.empty())));
        assertThat(intake.refused().lines())
                .containsExactly(
                        "lot.xlsx, sheet \"Plan\", cell A3, column part: the cells A2:A3 are merged, and only the first of them"
                                + " holds anything; found nothing; expected what holds for the row in a cell of its own; take the merge apart"
                                + " and fill each cell");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"comment\":\"one\",\"note\":\"two\"",
                "\"note\":\"two\",\"comment\":\"one\"",
                "\"remark\":\"one\",\"Note\":\"two\""
            })
    void aNoteBesideACommentInJson_isTheNote_andTheOtherIsTold(String members) {
        Intake intake = ReadingFiles.readInputs(
                PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve(),
                List.of(Input.text(
                        "r.json", "[{\"part\":\"S1\",\"characteristic\":\"2\",\"value\":12.5," + members + "}]")));
        assertThat(FirstReading.context(intake, "2").note()).contains("two");
        assertThat(intake.notices())
                .anySatisfy(notice -> assertThat(notice.line()).contains("is not understood and was not used"));
    }

    /** Sums of the decimals themselves, so that no composition can move a limit by the last digit. */
    @Test
    void anyNominalWithDeviations_comesToTheExactSums() {
        Random random = new Random(20261125);
        List<String> lines = new ArrayList<>(List.of("number;feature;nominal;upper tolerance;lower tolerance"));
        List<BigDecimal> limits = new ArrayList<>();
        for (int i = 1; i <= 400; i++) {
            BigDecimal nominal = BigDecimal.valueOf(10 + random.nextInt(90_000), random.nextInt(4));
            BigDecimal lower = BigDecimal.valueOf(random.nextInt(4000) - 2000L, 4 + random.nextInt(3));
            BigDecimal upper = lower.add(BigDecimal.valueOf(1 + random.nextInt(999), 4));
            limits.add(nominal.add(lower));
            limits.add(nominal.add(upper));
            lines.add((i + ";bore;" + nominal.toPlainString() + ";" + signed(upper) + ";" + signed(lower))
                    .replace('.', ','));
        }

        PlanDraft draft = PlanDraft.of(
                Input.text("many.csv", String.join("\n", lines)),
                List.of(),
                Map.of(),
                Optional.empty(),
                Optional.of(DecimalMark.COMMA));

        for (int i = 1; i <= 400; i++) {
            ResolvedCharacteristic each = draft.plan().find(Integer.toString(i)).orElseThrow();
            assertThat(each.limits().lower().orElseThrow()).isEqualByComparingTo(limits.get(2 * i - 2));
            assertThat(each.limits().upper().orElseThrow()).isEqualByComparingTo(limits.get(2 * i - 1));
        }
    }

    private static String signed(BigDecimal deviation) {
        return (deviation.signum() > 0 ? "+" : "") + deviation.toPlainString();
    }

    @Test
    void whateverStandsInATable_isAPlanOrARefusalWithAPlace() {
        String[] words = {
            "",
            "1",
            "1.0",
            "-",
            "\u2013",
            "\u00B1",
            "+/-0.05",
            "0,05",
            "1,250",
            "1.250,5",
            "1e9",
            "x",
            "Total",
            "Note: a",
            "mm",
            "[\u00B5m]",
            "\u00B0",
            "R",
            "\u00D852 P7",
            "12 min",
            "45\u00B0",
            "2026-10-12",
            "NaN",
            "(40)",
            "[40]",
            "+",
            "-0",
            "0",
            "9".repeat(50),
            "Part",
            "Rev: C",
            "xbar-r 5",
            "mean and range of",
            "visual: no burrs",
            "in",
            "15.1 +0.06/0",
            "+0.06/0",
            "H7",
            ":",
            "\"",
            ";",
            "kritisch"
        };
        String[] names = {
            "No.",
            "Nr.",
            "Item",
            "Merkmal",
            "Feature",
            "Requirement",
            "Nominal",
            "Nominal [mm]",
            "Tol",
            "Tol +",
            "Tol -",
            "\u00B1",
            "Lower tolerance",
            "Upper tolerance",
            "min",
            "max",
            "Unit",
            "Key",
            "Class",
            "Chart",
            "Target",
            "Max [\u00B5m]",
            ""
        };
        Random random = new Random(7);
        int plans = 0;
        for (int i = 0; i < 4000; i++) {
            int columns = 3 + random.nextInt(5);
            StringBuilder text = new StringBuilder();
            if (random.nextInt(4) == 0) {
                text.append(words[random.nextInt(words.length)])
                        .append(';')
                        .append(words[random.nextInt(words.length)])
                        .append('\n');
            }
            List<String> heading =
                    new ArrayList<>(random.nextBoolean() ? List.of("No.", "Feature", "Nominal") : List.of());
            while (heading.size() < columns) {
                heading.add(names[random.nextInt(names.length)]);
            }
            text.append(String.join(";", heading)).append('\n');
            for (int row = 1; row < 4; row++) {
                List<String> fields = new ArrayList<>(List.of(Integer.toString(row), "bore", "12.5"));
                while (fields.size() < columns) {
                    fields.add(words[random.nextInt(words.length)]);
                }
                if (random.nextInt(3) == 0) {
                    fields.set(random.nextInt(columns), words[random.nextInt(words.length)]);
                }
                text.append(String.join(";", fields)).append('\n');
            }
            try {
                PlanDraft.of(
                        Input.text("t.csv", text.toString()),
                        List.of(),
                        Map.of(PlanFact.GENERAL_TOLERANCE, "ISO 2768-m"));
                plans++;
            } catch (InputRefused refused) {
                assertThat(refused.lines())
                        .as(text.toString())
                        .isNotEmpty()
                        .allSatisfy(line -> assertThat(line).doesNotContain("Exception"));
                assertThat(refused.lines().get(0)).startsWith("t.csv");
            }
        }
        assertThat(plans).isBetween(50, 3900);
    }
}
