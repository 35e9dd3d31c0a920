package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The examples of QIF and of plans from tables in {@code docs/intake.md} are read as the guide says. */
class QifGuideTest {
    private static final Path GUIDE = Path.of("../docs/intake.md");

    static String example(String label) throws IOException {
        Matcher matcher = Pattern.compile("(?s)```" + label + "\n(.*?)```").matcher(Files.readString(GUIDE));
        assertThat(matcher.find()).as(label).isTrue();
        return matcher.group(1);
    }

    @Test
    void theQifDocument_makesAPlan_andIsReadAgainstIt() throws IOException {
        Input document = Input.text("ring.qif", example("xml qif"));
        ResolvedPlan plan = PlanDraft.of(document, List.of(), Map.of()).plan();

        Intake intake = ReadingFiles.readInputs(plan, List.of(document));

        assertThat(plan.find("1").orElseThrow().characteristic().printed()).isEqualTo("Ø40 ±0.05");
        assertThat(intake.refused().lines()).isEmpty();
        assertThat(intake.notices()).isEmpty();
        assertThat(intake.parts()).singleElement().satisfies(part -> {
            assertThat(part.serial()).isEqualTo("S001");
            assertThat(part.readings().get("1"))
                    .singleElement()
                    .isInstanceOfSatisfying(
                            Reading.Measured.class,
                            reading -> assertThat(reading.value()).isEqualByComparingTo("40.012"));
        });
    }

    @Test
    void theTable_makesThePlanThatTheGuideTellsOf() throws IOException {
        PlanDraft draft = PlanDraft.of(Input.text("table.csv", example("csv table")), List.of(), Map.of());

        assertThat(draft.notices())
                .extracting(Notice::line)
                .containsExactly(
                        "table.csv: taken from above the heading: part number \"HQ-900-P\" (line 1), revision \"A\" (line 1),"
                                + " unit \"mm\" (line 2), general tolerance \"ISO 2768-m\" (line 2)",
                        "table.csv:3: the columns were understood so: \"No.\" as number, \"Feature\" as feature, \"Requirement\""
                                + " as requirement, \"Class\" as class, \"Gauge\" as gauge, \"Study\" as study");
        assertThat(draft.plan().part().number()).isEqualTo("HQ-900-P");
        assertThat(draft.plan().characteristics()).hasSize(4);
        assertThat(draft.plan().find("3").orElseThrow().limits().upper().orElseThrow())
                .isEqualByComparingTo("40.3");
    }

    @Test
    void theTableInParts_isUnderstoodAsTheGuideSays() throws IOException {
        PlanDraft draft = PlanDraft.of(Input.text("plan.csv", example("csv parts-table")), List.of(), Map.of());

        assertThat(String.join("\n", draft.notices().stream().map(Notice::line).toList()) + "\n")
                .isEqualTo(example("text parts-notices"));
        List<String> listed = example("text parts-listing").lines().skip(1).toList();
        assertThat(draft.plan().characteristics()).hasSameSizeAs(listed);
        for (int i = 0; i < listed.size(); i++) {
            ResolvedCharacteristic each = draft.plan().characteristics().get(i);
            assertThat(listed.get(i).split(" {2,}"))
                    .startsWith(
                            each.number(),
                            each.characteristic().feature(),
                            each.characteristic().printed(),
                            each.limits().lower().orElseThrow().toPlainString(),
                            each.limits().upper().orElseThrow().toPlainString(),
                            each.limits().unit().word(),
                            each.characteristic().importance().word());
        }
    }
}
