package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** What a person does with a table of refused rows, format by format; see {@link ReadingFormatLaws} for rows with one reading each. */
class RefusedRowsAgainTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    private static Input file(String name, String text) {
        return Input.bytes(name, text.getBytes(StandardCharsets.UTF_8), relative -> Optional.empty());
    }

    private static Intake read(IntakeSettings settings, Input... inputs) {
        return ReadingFiles.readInputs(PLAN, List.of(inputs), settings);
    }

    private static Intake read(Input... inputs) {
        return read(IntakeSettings.USUAL, inputs);
    }

    /** The table of the rows that are refused of an input. */
    private static String refused(IntakeSettings settings, Input input) {
        try (RefusedTable table = new RefusedTable()) {
            read(
                    settings.withRefusedRows(row -> {
                        try {
                            table.add(row);
                        } catch (IOException fault) {
                            throw new UncheckedIOException(fault);
                        }
                    }),
                    input);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            table.write(bytes);
            return bytes.toString(StandardCharsets.UTF_8);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static List<String> said(Intake intake) {
        List<String> all = new ArrayList<>();
        for (PartRecord part : intake.parts()) {
            part.readings()
                    .values()
                    .forEach(list -> list.forEach(reading -> all.add(part.serial() + " "
                            + reading.characteristic() + " "
                            + (reading instanceof Reading.Measured measured
                                    ? measured.value() + " " + measured.unit().word()
                                    : ((Reading.Observed) reading).pass() ? "pass" : "fail"))));
        }
        return all.stream().sorted().toList();
    }

    /** Random faults in files with a row for each piece, and the same table with every value as it was meant. */
    @RepeatedTest(60)
    void piecesInRows_putRight_areThoseOfTheCleanFile(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        boolean comma = random.nextBoolean();
        boolean json = random.nextInt(3) == 0;
        List<List<String>> clean = new ArrayList<>();
        List<List<String>> dirty = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(10); i++) {
            List<String> row = new ArrayList<>(List.of(
                    "S" + i,
                    "51." + (9500 + random.nextInt(300)),
                    "12." + (10 + random.nextInt(80)) + "7" + random.nextInt(9),
                    random.nextBoolean() ? "pass" : "n.i.O."));
            clean.add(row);
            List<String> written = new ArrayList<>(row);
            if (random.nextInt(3) == 0 || i == 0) {
                int at = random.nextInt(4);
                written.set(at, at == 0 ? "x".repeat(201) : at == 3 ? "perhaps" : "1o.5");
            }
            dirty.add(written);
        }
        UnaryOperator<String> mark = text -> comma && !json && text.matches("[\\d.]+") ? text.replace('.', ',') : text;

        Input bad = file("lot", text(dirty, mark, comma, json));
        String table = refused(IntakeSettings.USUAL, bad);
        String separator = table.lines().findFirst().orElseThrow().contains(";") ? ";" : ",";
        List<String> lines = table.lines().toList();
        StringBuilder mended = new StringBuilder(lines.get(0)).append("\r\n");
        int next = 1;
        for (int i = 0; i < clean.size(); i++) {
            if (!dirty.get(i).equals(clean.get(i))) {
                String rest = lines.get(next++).split(separator, 5)[4];
                List<String> row = clean.get(i).stream()
                        .map(mark)
                        .map(field -> '"' + field + '"')
                        .toList();
                if (comma && !json && !separator.equals(";")) {
                    // Nothing refused has a number by which the mark is known, so commas part the columns.
                    row = row.stream().map(field -> field.replace(',', '.')).toList();
                }
                mended.append(String.join(separator, row) + separator + rest).append("\r\n");
            }
        }
        assertThat(next).isEqualTo(lines.size());

        Intake again = read(bad, file("lot.refused.csv", mended.toString()));

        assertThat(again.refused().lines()).isEmpty();
        assertThat(said(again)).isEqualTo(said(read(file("clean", text(clean, mark, comma, json)))));
        assertThat(again.rows()).isEqualTo(new RowCounts(clean.size() + next - 1, clean.size(), 0, next - 1));
        Intake unchanged = read(bad, file("lot.refused.csv", table));
        assertThat(unchanged.rows())
                .isEqualTo(new RowCounts(clean.size() + next - 1, clean.size() - next + 1, next - 1, next - 1));
    }

    private static String text(List<List<String>> rows, UnaryOperator<String> mark, boolean comma, boolean json) {
        if (json) {
            List<String> objects = rows.stream()
                    .map(row ->
                            "{\"part\": \"%s\", \"1\": \"%s\", \"2\": \"%s\", \"9\": \"%s\"}".formatted(row.toArray()))
                    .toList();
            return "[" + String.join(",\n", objects) + "]";
        }
        StringBuilder text = new StringBuilder(String.join(comma ? ";" : ",", "part", "1", "2", "9")).append('\n');
        rows.forEach(row -> text.append(
                        String.join(comma ? ";" : ",", row.stream().map(mark).toList()))
                .append('\n'));
        return text.toString();
    }

    private static final Mapping LIMITS = Mapping.read(Input.text("m.json", """
            { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "semicolon", "decimalMark": "comma",
              "rows": { "part": 1, "name": 2, "nominal": 3, "actual": 4 }, "prefix": "K" }
            """));

    @Test
    void aFaultThatDoesNotShowInTheColumns_isRefusedAgain_untilThePersonSaysThatTheRowIsRight() {
        IntakeSettings settings = IntakeSettings.USUAL.withMapping(LIMITS);
        Input lot = file("lot.txt", "S1;K2;12,5;12,512\nS2;K2;12,6;12,51\n");
        String table = refused(settings, lot);
        assertThat(table.lines())
                .first()
                .isEqualTo("part;characteristic;value;refused in (numbers with a decimal comma);refused because;"
                        + "refused as it stood");
        assertThat(table.lines().skip(1))
                .singleElement()
                .asString()
                .startsWith("S2;2;\"12,51\";\"lot.txt, line 2 [")
                .endsWith(";\"S2;K2;12,6;12,51\"");

        Intake again = read(settings, lot, file("lot.refused.csv", table));
        assertThat(again.rows()).isEqualTo(new RowCounts(3, 1, 1, 1));
        assertThat(again.refused().lines())
                .singleElement()
                .asString()
                .contains(
                        "lot.refused.csv:2, column refused because: the row was refused before and says the same still");

        String signedOff = table.replaceFirst("];?\";\"nominal[^\"]*\";", "]\";;");
        assertThat(signedOff).isNotEqualTo(table);
        Intake right = read(settings, lot, file("lot.refused.csv", signedOff));
        assertThat(right.refused().lines()).isEmpty();
        assertThat(said(right)).containsExactly("S1 2 12.512 mm", "S2 2 12.51 mm");

        Intake changed = read(settings, lot, file("lot.refused.csv", table.replaceFirst("12,51", "12,52")));
        assertThat(said(changed)).containsExactly("S1 2 12.512 mm", "S2 2 12.52 mm");
    }

    @Test
    void aRowTakenOutOfTheTable_staysRefusedWhereItStood() {
        Input lot = file("lot.csv", "part,2\nS1,12.5\nS2,forty\nS3,fifty\n");
        String table = refused(IntakeSettings.USUAL, lot);
        String one = table.replaceFirst("S2,forty[^\n]*\n", "").replaceFirst("fifty", "12.49");

        Intake again = read(lot, file("lot.refused.csv", one));

        assertThat(again.rows()).isEqualTo(new RowCounts(4, 2, 1, 1));
        assertThat(again.refused().lines())
                .singleElement()
                .asString()
                .startsWith("lot.csv:3, column 2: found \"forty\"");
    }

    @Test
    void aRowPutRightInBothPlaces_isNotCountedTwice() {
        Input lot = file("lot.csv", "part,2\nS1,12.5\nS2,forty\n");
        String table = refused(IntakeSettings.USUAL, lot).replaceFirst("forty", "12.49");

        Intake again = read(file("lot.csv", "part,2\nS1,12.5\nS2,12.48\n"), file("lot.refused.csv", table));

        assertThat(again.rows()).isEqualTo(new RowCounts(3, 2, 1, 0));
        assertThat(again.refused().lines()).singleElement().asString().contains("was already read in lot.csv:3");
    }

    @Test
    void aFurtherField_anOddPart_andANoteLikeAFormula_comeBackAsTheyWere() {
        Input lot = file("lot.csv", "part,characteristic,value,note\n@S1,2,forty,'=2+3\n@S1,1,51,962,ok\n");
        String table = refused(IntakeSettings.USUAL, lot);
        assertThat(table).contains("'@S1,2,forty,''=2+3");
        assertThat(read(lot, file("lot.refused.csv", table)).rows())
                .as("51 would pass for a reading of the bore")
                .isEqualTo(new RowCounts(4, 0, 2, 2));

        Intake again =
                read(lot, file("lot.refused.csv", table.replace("forty", "12.5").replace("1,51,962", "1,51.962,ok")));

        assertThat(again.refused().lines()).isEmpty();
        assertThat(said(again)).containsExactly("@S1 1 51.962 mm", "@S1 2 12.5 mm");
        assertThat(again.parts().get(0).of("2").get(0).context().note()).contains("'=2+3");
    }

    @Test
    void aValueThatIsOnlyTakenAway_isNoPieceWithoutReadings() {
        Input lot = file("lot.csv", "part,2\nS1,12.5\nS2,forty\n");
        Intake again =
                read(lot, file("r.csv", refused(IntakeSettings.USUAL, lot).replaceFirst("forty", "")));
        assertThat(again.refused().lines())
                .singleElement()
                .asString()
                .contains("the row was refused before and holds no value");
    }

    @Test
    void numbersOfAWorkbook_besideTextsWithDecimalCommas_keepTheirPlaces() {
        byte[] bytes = new XlsxWriter()
                .sheet("Lot", XlsxWriter.typed("part|'1|'2", "S1|51.962|12,51", "S2|51.963|forty"))
                .bytes();
        Input lot = Input.bytes("lot.xlsx", bytes, relative -> Optional.empty());
        String table = refused(IntakeSettings.USUAL, lot);
        assertThat(table).contains("S2;\"51,963\";forty;\"lot.xlsx, sheet \"\"Lot\"\", row 3 [");

        Intake again = read(lot, file("lot.refused.csv", table.replace("forty", "12,49")));

        assertThat(again.refused().lines()).isEmpty();
        assertThat(said(again)).containsExactly("S1 1 51.962 mm", "S1 2 12.51 mm", "S2 1 51.963 mm", "S2 2 12.49 mm");
    }

    @Test
    void measurementsOfQif_putRight_areReadAgain_andRadiansAreNoDegrees() {
        List<QifWriter.Measurement> clean = List.of(
                QifWriter.Measurement.of("S1", "1", "51.962"),
                QifWriter.Measurement.of("S1", "2", "12.5"),
                QifWriter.Measurement.of("S1", "9", "pass"));
        List<QifWriter.Measurement> dirty = new ArrayList<>(clean);
        dirty.set(
                0,
                new QifWriter.Measurement(
                        "S1", "1", clean.get(0).inside().replace("<Value>", "<Value linearUnit=\"cubit\">")));
        dirty.set(1, new QifWriter.Measurement("S1", "2", clean.get(1).inside().replace("12.5", "12,5")));
        dirty.set(2, new QifWriter.Measurement("S1", "9", clean.get(2).inside().replace("PASS", "PERHAPS")));
        Input lot = file("lot.qif", QifWriter.together(dirty));
        String table = refused(IntakeSettings.USUAL, lot);
        assertThat(table.lines()).first().asString().contains("refused in (numbers with a decimal point)");
        assertThat(read(lot, file("r.csv", table)).rows()).isEqualTo(new RowCounts(6, 0, 3, 3));

        List<String> lines = table.lines().toList();
        assertThat(lines).hasSize(4);
        List<String> names = Arrays.asList(lines.get(0).split(","));
        List<String> right = new ArrayList<>(List.of(lines.get(0)));
        for (int i = 1; i < lines.size(); i++) {
            String rest = lines.get(i).substring(lines.get(i).indexOf("\"lot.qif"));
            String[] row = new String[names.indexOf("refused in (numbers with a decimal point)")];
            Arrays.fill(row, "");
            row[names.indexOf("part")] = "S1";
            row[names.indexOf("characteristic")] = List.of("1", "2", "9").get(i - 1);
            row[names.indexOf("value")] = List.of("51.962", "12.5", "pass").get(i - 1);
            right.add(String.join(",", row) + "," + rest);
        }
        assertThat(read(lot, file("r.csv", String.join("\r\n", right)))
                        .refused()
                        .lines())
                .as("in which unit the first value is, nobody has said")
                .singleElement()
                .asString()
                .contains("r.csv:2, column refused because");
        right.set(1, right.get(1).replaceFirst("]\",.*", "]\",,"));
        Intake again = read(lot, file("r.csv", String.join("\r\n", right)));
        assertThat(again.refused().lines()).isEmpty();
        assertThat(said(again)).isEqualTo(said(read(file("clean.qif", QifWriter.together(clean)))));
    }

    @Test
    void whatTheUserSaysOfDecimalMarks_isNotMeantForATableThatStatesItsOwn() {
        Input lot = file("lot.csv", "part;1;2\nS1;51.962;1x\nS2;51.96;12.5\n");
        IntakeSettings point = IntakeSettings.USUAL.withDecimalMark(DecimalMark.POINT);
        String table = refused(point, lot).replace("1x", "12.512");

        Intake again = read(IntakeSettings.USUAL.withDecimalMark(DecimalMark.COMMA), file("lot.refused.csv", table));

        assertThat(said(again)).containsExactly("S1 1 51.962 mm", "S1 2 12.512 mm");
    }
}
