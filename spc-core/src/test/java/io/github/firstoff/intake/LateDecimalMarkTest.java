package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However late a file shows its decimal mark, and even if it contradicts itself, no number is taken for another without a word. */
class LateDecimalMarkTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    /** One more than the rows that wait for a number that shows the mark. */
    private static final int MORE_THAN_WAIT = 10_001;

    private static Intake read(String text, IntakeSettings settings) {
        return ReadingFiles.readInputs(PLAN, List.of(Input.text("r.csv", text)), settings);
    }

    private static Intake read(String text) {
        return read(text, IntakeSettings.USUAL);
    }

    private static String file(String separator, List<String> values) {
        StringBuilder text = new StringBuilder("part" + separator + "2\n");
        for (int i = 0; i < values.size(); i++) {
            boolean quoted = values.get(i).contains(separator);
            text.append("S" + i + separator + (quoted ? '"' + values.get(i) + '"' : values.get(i)) + "\n");
        }
        return text.toString();
    }

    private static String manyAndThen(String separator, String many, String... then) {
        List<String> values = new ArrayList<>(
                IntStream.range(0, MORE_THAN_WAIT).mapToObj(i -> many).toList());
        values.addAll(List.of(then));
        return file(separator, values);
    }

    /** The values by piece, of the rows that were used. */
    private static Map<String, BigDecimal> used(Intake intake) {
        Map<String, BigDecimal> values = new LinkedHashMap<>();
        for (PartRecord part : intake.parts()) {
            Reading reading = part.readings().get("2").get(0);
            values.put(part.serial(), ((Reading.Measured) reading).value());
        }
        return values;
    }

    @Test
    void openNumbersForMoreRowsThanWait_areRefused_thoughTheMarkIsShownThen() {
        Intake intake = read(manyAndThen(";", "1,234", "12,5", "12,625"));
        assertThat(intake.rows()).isEqualTo(new RowCounts(MORE_THAN_WAIT + 2, 2, MORE_THAN_WAIT, 0));
        assertThat(used(intake))
                .containsOnly(
                        Map.entry("S10001", new BigDecimal("12.5")), Map.entry("S10002", new BigDecimal("12.625")));
        assertThat(intake.refused().lines())
                .singleElement()
                .asString()
                .startsWith(
                        "r.csv:2, column 2: this could mean 1234 or 1.234; found \"1,234\"; expected --decimal-mark point "
                                + "or --decimal-mark comma to say which it is (and 10000 more like it,");
        assertThat(intake.notices().stream().map(Notice::line))
                .contains("r.csv:10003: numbers are read with a decimal comma, as \"12,5\" shows");
    }

    @Test
    void behindTheRowsThatWait_noFileIsReadWithBothMarks() {
        Intake intake = read(manyAndThen(",", "1,234", "12,5", "12.5"));
        assertThat(intake.faultsOfFiles()).isEqualTo(1);
        assertThat(intake.refused().lines())
                .contains(
                        "r.csv:10004: the numbers do not agree on a decimal mark: \"12,5\" in line 10003 was read with a decimal "
                                + "comma, and this one has a decimal point; found \"12.5\"; expected --decimal-mark point or "
                                + "--decimal-mark comma to say which it is");
    }

    @Test
    void aDecimalCommaWhereCommasPartTheColumns_isBelievedOnlyIfNoNumberHasAPoint_howeverLate() {
        assertThat(read(manyAndThen(",", "12,5")).refused().isEmpty()).isTrue();
        Intake intake = read(manyAndThen(",", "12,5", "12.5"));
        assertThat(intake.faultsOfFiles()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\t", "|", ","})
    void aPointWithThreeDigits_isDoubtfulOnceAnotherNumberHasADecimalComma(String separator) {
        Intake intake = read(file(separator, List.of("1.234", "2.345", "12,5")));
        // The rows that were good by themselves may not be used either, whatever the user says.
        assertThat(intake.faultsOfFiles()).isEqualTo(1);
        assertThat(intake.refused().lines())
                .contains(
                        "r.csv:4: the numbers do not agree on a decimal mark: \"1.234\" in line 2 was read with a decimal point, "
                                + "and this one has a decimal comma; found \"12,5\"; expected --decimal-mark point or "
                                + "--decimal-mark comma to say which it is");
        // In whatever order they come.
        assertThat(read(file(separator, List.of("12,5", "1.234"))).refused().isEmpty())
                .isFalse();
        assertThat(read(manyAndThen(separator, "1.234", "12,5")).faultsOfFiles())
                .isEqualTo(1);
    }

    @Test
    void whereTheMarkIsPlain_aNumberWithTheOtherIsRefusedAlone() {
        for (List<String> values : List.of(
                List.of("51.962", "12.50", "12,5"),
                List.of("51.962", "12,5", "12.50"),
                List.of("12.50", "51.962", "12,5"))) {
            Intake intake = read(file("\t", values));
            assertThat(intake.faultsOfFiles()).isZero();
            assertThat(intake.rows()).isEqualTo(new RowCounts(3, 2, 1, 0));
        }
    }

    @Test
    void whatTheUserSays_isNotDoubted() {
        Intake intake =
                read(file("\t", List.of("1.234", "12,5")), IntakeSettings.USUAL.withDecimalMark(DecimalMark.COMMA));
        assertThat(used(intake))
                .containsOnly(Map.entry("S0", new BigDecimal("1234")), Map.entry("S1", new BigDecimal("12.5")));
    }

    @Test
    void textsInAWorkbook_areWatchedTheSameWay() {
        XlsxWriter writer = new XlsxWriter();
        List<List<String>> table = List.of(List.of("part", "2"), List.of("S1", "1.234"), List.of("S2", "12,5"));
        byte[] bytes = writer.sheet("Readings", writer.table(table, false)).bytes();
        Intake intake = ReadingFiles.readInputs(
                PLAN, List.of(Input.bytes("r.xlsx", bytes, relative -> Optional.empty())), IntakeSettings.USUAL);
        assertThat(intake.faultsOfFiles()).isEqualTo(1);
        assertThat(intake.refused().lines())
                .anySatisfy(line -> assertThat(line)
                        .contains("do not agree on a decimal mark: \"1.234\" in row 2 was read with a decimal point"));
    }

    private static String written(BigDecimal value, DecimalMark mark, boolean grouped) {
        String plain = value.toPlainString();
        int point = plain.indexOf('.');
        String whole = point < 0 ? plain : plain.substring(0, point);
        String decimals = point < 0 ? "" : mark.character() + plain.substring(point + 1);
        if (grouped) {
            whole = whole.replaceAll(
                    "(?<=\\d)(?=(\\d{3})+$)", String.valueOf(mark.other().character()));
        }
        return whole + decimals;
    }

    /**
     * A program writes all numbers of a file in one way, with either mark, perhaps with thousands parted off, and some of them show
     * the mark beyond doubt. Then whatever is used is what was meant, and the rest is refused. The seed of each round is its number.
     */
    @RepeatedTest(400)
    void whateverIsUsed_isWhatWasMeant(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        DecimalMark mark = random.nextBoolean() ? DecimalMark.POINT : DecimalMark.COMMA;
        boolean grouped = random.nextBoolean();
        String separator = List.of(";", "\t", "|", ",").get(random.nextInt(4));
        List<BigDecimal> meant = new ArrayList<>();
        int rows = 2 + random.nextInt(30);
        for (int i = 0; i < rows; i++) {
            int scale = random.nextInt(3) == 0 ? 0 : 3;
            meant.add(BigDecimal.valueOf(random.nextInt(4_000_000), scale));
        }
        // A number that is plain, at any place: two decimals.
        meant.set(random.nextInt(rows), BigDecimal.valueOf(random.nextInt(90_000), 2));
        String text = file(
                separator,
                meant.stream().map(value -> written(value, mark, grouped)).toList());

        Intake intake = read(text);

        if (intake.faultsOfFiles() == 0) {
            used(intake)
                    .forEach((part, value) -> assertThat(value)
                            .as("%s in %s", part, text)
                            .isEqualByComparingTo(meant.get(Integer.parseInt(part.substring(1)))));
        }
        assertThat(intake.rows().used() + intake.rows().refused()).isEqualTo(rows);
    }

    /** The test above would say nothing if everything were refused. */
    @Test
    void mostOfWhatIsMeant_isUsed() {
        String text = file(
                ";",
                IntStream.range(0, 500).mapToObj(i -> "1.0" + i % 10 + "0,25").collect(Collectors.toList()));
        assertThat(read(text).rows().used()).isEqualTo(500);
    }
}
