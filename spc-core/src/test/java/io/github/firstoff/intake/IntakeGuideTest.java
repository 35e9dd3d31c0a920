package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Every example of docs/intake.md is read as it stands there, and every message is the one that is printed. */
class IntakeGuideTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    private String guide = "";

    @BeforeEach
    void readGuide() throws IOException {
        guide = Files.readString(Path.of("../docs/intake.md"));
    }

    private String block(String name) {
        Matcher matcher = Pattern.compile("```text " + name + "\n(.*?)```", Pattern.DOTALL)
                .matcher(guide);
        assertThat(matcher.find()).as(name).isTrue();
        return matcher.group(1);
    }

    private Intake read(String name) {
        return ReadingFiles.readInputs(PLAN, List.of(Input.text("readings.csv", block(name))));
    }

    @Test
    void semicolonsAndDecimalCommas_withTheNoticesOfTheGuide() {
        Intake intake = read("semicolons");

        assertThat(intake.recordOrRefuse().readingCount()).isEqualTo(3);
        assertThat(String.join("\n", intake.notices().stream().map(Notice::line).toList()) + "\n")
                .isEqualTo(block("notices"));
    }

    @Test
    void linesBeforeTheHeading_areNamed() {
        Intake intake = read("preamble");

        assertThat(intake.recordOrRefuse().readingCount()).isEqualTo(3);
        assertThat(intake.notices())
                .extracting(Notice::line)
                .containsExactly("readings.csv: lines 1 to 3 stand before the heading and were not used: "
                        + "\"Measuring machine 4, port cell\", \"Part number: HQ-310-P   Revision: C\"");
        Intake other = ReadingFiles.readInputs(
                PLAN, List.of(Input.text("readings.csv", block("preamble").replace("HQ-310-P", "HQ-310-S"))));
        assertThat(other.refused().isEmpty()).isFalse();
        assertThat(other.faultsOfFiles()).isEqualTo(1);
    }

    @Test
    void openNumbers_areRefusedInTheWordsOfTheGuide_untilTheMarkIsStated() {
        assertThat(String.join("\n", read("open").refused().lines()) + "\n").isEqualTo(block("refused"));
        Intake stated = ReadingFiles.readInputs(
                PLAN,
                List.of(Input.text("readings.csv", block("open"))),
                IntakeSettings.USUAL.withDecimalMark(DecimalMark.COMMA));
        assertThat(stated.recordOrRefuse().readingCount()).isEqualTo(2);
    }

    @Test
    void jsonLines_areRead() {
        Intake intake = read("lines");

        assertThat(intake.recordOrRefuse().readingCount()).isEqualTo(3);
        assertThat(intake.files().get(0).format()).isEqualTo(ReadingFormat.JSON_LINES);
    }

    private String json(String name) {
        Matcher matcher = Pattern.compile("```json " + name + "\n(.*?)```", Pattern.DOTALL)
                .matcher(guide);
        assertThat(matcher.find()).as(name).isTrue();
        return matcher.group(1);
    }

    private Intake mapped(String text, String mapping) {
        return ReadingFiles.readInputs(
                PLAN,
                List.of(Input.text("readings.txt", block(text))),
                IntakeSettings.USUAL.withMapping(Mapping.read(Input.text("mapping.json", json(mapping)))));
    }

    @Test
    void bothReportsOfMachines_areReadByTheirMappings() {
        Intake cell = mapped("cell", "cell-mapping");
        assertThat(cell.recordOrRefuse().readingCount()).isEqualTo(10);
        assertThat(cell.rows()).isEqualTo(new RowCounts(12, 10, 0, 2));
        assertThat(cell.parts()).extracting(part -> part.serial()).containsExactly("S001", "S002");

        Intake bench = mapped("bench", "bench-mapping");
        assertThat(bench.recordOrRefuse().readingCount()).isEqualTo(6);
        assertThat(bench.rows()).isEqualTo(new RowCounts(6, 6, 0, 0));
    }

    @Test
    void refusedRows_putRight_giveWhatTheGuideSays() throws IOException {
        Input lot = Input.text("lot.csv", block("refused-lot"));
        String table;
        try (RefusedTable refused = new RefusedTable()) {
            ReadingFiles.readInputs(PLAN, List.of(lot), IntakeSettings.USUAL.withRefusedRows(row -> {
                try {
                    refused.add(row);
                } catch (IOException fault) {
                    throw new UncheckedIOException(fault);
                }
            }));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            refused.write(bytes);
            table = bytes.toString(StandardCharsets.UTF_8);
        }
        assertThat(table.replace("\r\n", "\n")).isEqualTo(block("refused-table"));

        Intake both = ReadingFiles.readInputs(
                PLAN, List.of(lot, Input.text("lot.refused.csv", table.replaceFirst("12.5l", "12.51"))));

        assertThat(String.join("\n", both.notices().stream().map(Notice::line).toList()) + "\n")
                .isEqualTo(block("refused-notices"));
        assertThat(guide).contains("`" + both.rows() + "`");
        assertThat(both.recordOrRefuse().readingCount()).isEqualTo(3);
    }

    @Test
    void aQifDocumentInThePlaceOfAPlan_isCalledWhatItIs() throws IOException {
        Input qif =
                Input.text("hq-310-p.plan.qif", Files.readString(Path.of("../sample-measurements/hq-310-p.plan.qif")));
        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> PlanFile.read(qif));
        assertThat(String.join("\n", refused.lines()) + "\n").isEqualTo(block("other-file"));
    }
}
