package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plan that is the mirror image of its counterpart's. */
class MirrorPlanTest {
    private static final Path FOLDER = Path.of("src/test/resources/intake-mirror");
    private static final Path PORT = FOLDER.resolve("port.plan.json");
    private static final Path STARBOARD = FOLDER.resolve("starboard.plan.json");

    private static Characteristic characteristic(InspectionPlan plan, String number) {
        return plan.characteristics().stream()
                .filter(each -> each.number().equals(number))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theMirrorImage_isTheOtherPartWithTheSameRequirements() {
        PlanFile port = PlanFile.read(PORT);
        PlanFile starboard = PlanFile.read(STARBOARD);

        assertThat(starboard.plan().part().number()).isEqualTo("HQ-320-S");
        assertThat(starboard.plan().part().name()).contains("Pawl carrier, starboard");
        assertThat(starboard.plan().part().hand()).contains(Hand.STARBOARD);
        assertThat(starboard.plan().part().counterpart()).contains("HQ-320-P");
        assertThat(starboard.plan().part().drawing()).contains("HQ-320");
        assertThat(starboard.plan().part().revision()).isEqualTo("A");
        assertThat(starboard.plan().part().material()).contains("EN AW-6061 T6");
        assertThat(characteristic(starboard.plan(), "1")).isEqualTo(characteristic(port.plan(), "1"));
        assertThat(characteristic(starboard.plan(), "3")).isEqualTo(characteristic(port.plan(), "3"));
        assertThat(starboard.notices()).isEmpty();
        assertThat(starboard.counterpart()).contains(PORT.toString());
        assertThat(port.counterpart()).isEmpty();
    }

    @Test
    void coordinatesAlongTheAxis_changeTheirSignAndTheirLimitsChangePlaces() {
        ResolvedPlan plan = PlanFile.read(STARBOARD).resolve();

        assertThat(plan.find("2").orElseThrow().characteristic().printed()).isEqualTo("-31.5 0/-0.1");
        assertThat(plan.find("2").orElseThrow().limits().lower()).contains(new BigDecimal("-31.6"));
        assertThat(plan.find("2").orElseThrow().limits().upper()).contains(new BigDecimal("-31.5"));
        assertThat(plan.find("2").orElseThrow().characteristic().options().target())
                .contains(new BigDecimal("-31.54"));
        assertThat(plan.find("5").orElseThrow().limits().lower()).contains(new BigDecimal("-40"));
        assertThat(plan.find("5").orElseThrow().limits().upper()).isEmpty();
        assertThat(plan.find("4")
                        .orElseThrow()
                        .characteristic()
                        .options()
                        .coordinates()
                        .orElseThrow()
                        .x())
                .isEqualByComparingTo("-12.5");
        assertThat(plan.find("4")
                        .orElseThrow()
                        .characteristic()
                        .options()
                        .coordinates()
                        .orElseThrow()
                        .y())
                .isEqualByComparingTo("-30");
    }

    @Test
    void readingsOfTheMirrorImage_areJudgedInItsOwnCoordinates() {
        ResolvedPlan plan = PlanFile.read(STARBOARD).resolve();
        Intake intake = ReadingFiles.readInputs(
                plan,
                List.of(Input.text(
                        "s.csv", "part number,hand,part,characteristic,x,y\nHQ-320-S,starboard,S1,4,-12.53,-29.96")));

        assertThat(intake.refused().lines()).isEmpty();
        // 2·√(0.03² + 0.04²) = 0.1
        assertThat(intake.parts().get(0).of("4").get(0))
                .isInstanceOfSatisfying(
                        io.github.firstoff.inspection.Reading.Measured.class,
                        measured -> assertThat(measured.value()).isEqualByComparingTo("0.1"));
    }

    @Test
    void readingsOfTheOtherHand_areRefused() {
        ResolvedPlan plan = PlanFile.read(STARBOARD).resolve();

        Intake intake = ReadingFiles.readInputs(
                plan,
                List.of(Input.text("p.csv", "part number,hand,part,characteristic,value\nHQ-320-P,port,P1,1,12.005")));

        assertThat(intake.refused().lines())
                .containsExactly(
                        "p.csv:2, column part number: the readings are of the part of the other hand; found \"HQ-320-P\"; expected"
                                + " \"HQ-320-S\"",
                        "p.csv:2, column hand: the readings are of the other hand than the plan; found \"port\"; expected starboard");
    }

    @Test
    void aJobAboutTheOtherHand_isRefused() {
        ResolvedPlan plan = PlanFile.read(STARBOARD).resolve();
        JobFile job = JobFile.read(Input.text("j.json", "{\"schema\": \"firstoff-job-1\", \"part\": \"HQ-320-P\"}"));

        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> job.requireFor(plan));

        assertThat(refused.lines())
                .containsExactly("j.json:1:38, part: the job is about the part of the other hand; found \"HQ-320-P\";"
                        + " expected \"HQ-320-S\"");
        JobFile.read(Input.text("j.json", "{\"schema\": \"firstoff-job-1\", \"part\": \"HQ-320-S\"}"))
                .requireFor(plan);
    }

    /** What {@code sha256sum starboard.plan.json port.plan.json | cut -c1-64 | sha256sum} prints. */
    @Test
    void theDigest_coversBothFiles() throws IOException, NoSuchAlgorithmException {
        String lines = sha256(Files.readAllBytes(STARBOARD)) + "\n" + sha256(Files.readAllBytes(PORT)) + "\n";

        assertThat(PlanFile.read(STARBOARD).sha256()).isEqualTo(sha256(lines.getBytes(StandardCharsets.US_ASCII)));
        assertThat(PlanFile.read(PORT).sha256()).isEqualTo(sha256(Files.readAllBytes(PORT)));
    }

    private static String sha256(byte[] bytes) throws NoSuchAlgorithmException {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    private static List<String> refusal(Path folder, String port, String starboard) throws IOException {
        Files.writeString(folder.resolve("port.plan.json"), port);
        Path file = Files.writeString(folder.resolve("s.json"), starboard);
        InputRefused refused = catchThrowableOfType(
                InputRefused.class, () -> PlanFile.read(file).resolve());
        assertThat(refused).as("refused").isNotNull();
        return refused.lines().stream()
                .map(line -> line.replace(folder + "/", ""))
                .toList();
    }

    private static String mirror(String part) {
        return "{\"schema\": \"firstoff-plan-1\", \"mirrorOf\": \"port.plan.json\", \"mirrorAxis\": \"x\",\n\"part\": {"
                + part + "}}";
    }

    private static final String GOOD_PART =
            "\"number\": \"HQ-320-S\", \"hand\": \"starboard\", \"counterpart\": \"HQ-320-P\"";

    @Test
    void aPartThatDoesNotFitTheCounterpart_isRefusedWithEveryReason(@TempDir Path folder) throws IOException {
        assertThat(refusal(
                        folder,
                        Files.readString(PORT),
                        mirror("\"number\": \"HQ-321-S\", \"revision\": \"B\", \"hand\": \"port\","
                                + " \"counterpart\": \"HQ-321-P\", \"material\": \"brass\"")))
                .containsExactly(
                        "s.json:2:20, part, number: the plan of HQ-320-P names another counterpart; found \"HQ-321-S\"; expected"
                                + " \"HQ-320-S\"",
                        "s.json:2:44, part, revision: the plan of HQ-320-P is of another revision of the same drawing; found \"B\";"
                                + " expected \"A\", or nothing",
                        "s.json:2:57, part, hand: the plan of HQ-320-P is for port; found \"port\"; expected \"starboard\"",
                        "s.json:2:80, part, counterpart: the plan under \"mirrorOf\" is of another part; found \"HQ-321-P\"; expected"
                                + " \"HQ-320-P\"",
                        "s.json:2:104, part, material: the plan of HQ-320-P states another material; found \"brass\"; expected"
                                + " \"EN AW-6061 T6\", or nothing here");
    }

    @Test
    void aCounterpartWithoutAHand_hasNoMirrorImage(@TempDir Path folder) throws IOException {
        assertThat(refusal(folder, Files.readString(PORT).replace("\"hand\": \"port\", ", ""), mirror(GOOD_PART)))
                .containsExactly(
                        "s.json:2:40, part, hand: the plan of HQ-320-P states no hand, so it has no mirror image; found"
                                + " \"starboard\"; expected \"hand\": \"port\" in that plan");
    }

    @Test
    void aMirrorImageOfAMirrorImage_isRefused_andSoIsACircle(@TempDir Path folder) throws IOException {
        assertThat(refusal(folder, mirror(GOOD_PART).replace("port.plan.json", "s.json"), mirror(GOOD_PART)))
                .containsExactly(
                        "s.json:1:43, mirrorOf: that plan is itself the mirror image of another; found \"port.plan.json\"; expected a"
                                + " plan with characteristics of its own");
        assertThat(refusal(folder, "", mirror(GOOD_PART).replace("port.plan.json", "s.json")))
                .containsExactly(
                        "s.json:1:43, mirrorOf: that plan is itself the mirror image of another; found \"s.json\"; expected a"
                                + " plan with characteristics of its own");
    }

    @Test
    void aCounterpartThatIsNotThere_isRefusedAtItsPlace(@TempDir Path folder) throws IOException {
        assertThat(refusal(folder, "{}", mirror(GOOD_PART).replace("port.plan", "prt.plan")))
                .containsExactly(
                        "s.json:1:43, mirrorOf: there is no such file; found \"prt.plan.json\"; expected the counterpart's plan"
                                + " file");
        assertThat(refusal(folder, "{}", mirror(GOOD_PART).replace("port.plan.json", "/etc/port.json")))
                .hasSize(1)
                .first()
                .asString()
                .contains("mirrorOf: it is looked for in the folder of this plan");
    }

    @Test
    void faultsOfTheCounterpart_areNamedInItsFile(@TempDir Path folder) throws IOException {
        assertThat(refusal(
                        folder,
                        Files.readString(PORT)
                                .replace("Ø12 H7", "Ø12 H")
                                .replace("\"18.2..18.4\", \"axis\": \"y\"", "\"flatness 0.1\", \"axis\": \"y\""),
                        mirror(GOOD_PART)))
                .satisfies(lines -> {
                    assertThat(lines.get(0)).startsWith("port.plan.json:7:").contains("characteristic 1, requirement");
                    assertThat(lines)
                            .last()
                            .asString()
                            .startsWith("port.plan.json:9:")
                            .contains("characteristic 3, axis: \"flatness 0.1\" is no coordinate");
                });
    }

    @Test
    void contradictionsOfTheCounterpart_areFoundWhenTheMirrorImageIsResolved(@TempDir Path folder) throws IOException {
        assertThat(refusal(folder, Files.readString(PORT).replace("\"40 max\"", "\"40\""), mirror(GOOD_PART)))
                .first()
                .asString()
                .startsWith("port.plan.json:11:");
    }
}
