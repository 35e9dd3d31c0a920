package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every example of docs/inputs.md is read as it stands there, and every kind of fault is explained there. */
class InputsGuideTest {
    private static final Pattern BLOCK = Pattern.compile("```([a-z ]+)\n(.*?)```", Pattern.DOTALL);

    private String guide = "";
    private ResolvedPlan plan = emptyPlan();

    private static ResolvedPlan emptyPlan() {
        return PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    }

    @BeforeEach
    void readGuide() throws IOException {
        guide = Files.readString(Path.of("../docs/inputs.md"));
        plan = PlanFile.read(Input.text("plan.json", blocks("json plan").get(0)))
                .resolve();
    }

    private List<String> blocks(String kind) {
        List<String> found = new ArrayList<>();
        Matcher matcher = BLOCK.matcher(guide);
        while (matcher.find()) {
            if (matcher.group(1).equals(kind)) {
                found.add(matcher.group(2));
            }
        }
        assertThat(found).as(kind).isNotEmpty();
        return found;
    }

    @Test
    void thePlanOfTheGuide_isUnderstoodWhole() {
        PlanFile file =
                PlanFile.read(Input.text("plan.json", blocks("json plan").get(0)));

        assertThat(file.notices()).isEmpty();
        // ISO 286-2: P7 at 52 is -21 and -51 micrometres.
        assertThat(file.resolve().find("1").orElseThrow().limits().lower().orElseThrow())
                .isEqualByComparingTo("51.949");
        assertThat(file.resolve().find("1").orElseThrow().limits().upper().orElseThrow())
                .isEqualByComparingTo("51.979");
    }

    @Test
    void theReadingsOfTheGuide_areUnderstoodWhole() {
        List<String> texts = new ArrayList<>(blocks("csv"));
        texts.addAll(blocks("json readings"));
        assertThat(texts).hasSize(3);
        for (String text : texts) {
            Intake intake = ReadingFiles.readInputs(plan, List.of(Input.text("readings", text)));
            assertThat(intake.refused().lines()).isEmpty();
            assertThat(intake.notices()).isEmpty();
        }
    }

    @Test
    void theKeysOfTheGuide_areUnderstoodWhole() {
        PlanFile file = PlanFile.read(Input.text("plan.json", """
                { "schema": "firstoff-plan-1", "part": { "number": "HQ-900-P", "revision": "A" }, "unit": "mm", %s,
                  "gauges": [ { "id": "CMM-1", %s } ],
                  "characteristics": [ { "number": "1", "feature": "face", "requirement": "12 ±0.1", "gauge": "CMM-1" } ] }
                """.formatted(
                String.join(",", blocks("json keys")), blocks("json budget").get(0))));

        assertThat(file.notices()).isEmpty();
        assertThat(file.plan().demands()).hasSize(2);
        assertThat(file.plan().thermal()).isPresent();
        assertThat(file.plan().gauge("CMM-1").orElseThrow().uncertainty()).isPresent();
        file.resolve();
    }

    @Test
    void theStudiesOfTheGuide_areUnderstoodWhole() {
        assertThat(blocks("json study")).hasSize(2);
        for (String study : blocks("json study")) {
            PlanFile file = PlanFile.read(Input.text("plan.json", """
                    { "schema": "firstoff-plan-1", "part": { "number": "HQ-900-P", "revision": "A" }, "unit": "mm",
                      "characteristics": [ { "number": "1", "feature": "face", "requirement": "12.5 ±0.05", "study": %s } ] }
                    """.formatted(study)));
            assertThat(file.notices()).isEmpty();
            file.resolve();
        }
    }

    @Test
    void thePlacesAndSettingsOfTheGuide_areUnderstoodWhole() {
        ResolvedPlan places =
                PlanFile.read(Path.of("src/test/resources/intake/places.json")).resolve();
        Intake intake = ReadingFiles.readInputs(
                places, List.of(Input.text("readings", blocks("csv places").get(0))));

        assertThat(intake.refused().lines()).isEmpty();
        assertThat(intake.notices()).isEmpty();
    }

    @Test
    void theMirrorImageOfTheGuide_isUnderstoodWhole(@TempDir Path folder) throws IOException {
        Files.copy(Path.of("src/test/resources/intake-mirror/port.plan.json"), folder.resolve("hq-320-p.plan.json"));
        Path mirror = Files.writeString(
                folder.resolve("s.json"), blocks("json mirror").get(0));

        PlanFile file = PlanFile.read(mirror);

        assertThat(file.notices()).isEmpty();
        assertThat(file.resolve().part().number()).isEqualTo("HQ-320-S");
    }

    @Test
    void theJobOfTheGuide_isUnderstoodWhole() {
        assertThat(JobFile.read(Input.text("job.json", blocks("json job").get(0)))
                        .notices())
                .isEmpty();
    }

    @Test
    void theMessagesOfTheGuide_areThoseThatArePrinted() {
        Intake intake = ReadingFiles.readInputs(
                plan, List.of(Input.text("readings.csv", blocks("csv refused").get(0))));

        assertThat(String.join("\n", intake.refused().lines()) + "\n")
                .isEqualTo(blocks("text").get(0));
    }

    @Test
    void everyKindOfFault_isExplained() {
        for (FaultKind kind : FaultKind.values()) {
            String word = kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
            assertThat(guide).contains("\n| " + word + " | ");
        }
    }
}
