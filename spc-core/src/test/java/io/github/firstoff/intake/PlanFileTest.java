package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Drawing;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plan file and a job file come to when nothing is wrong with them; what is wrong is tested file by file elsewhere. */
class PlanFileTest {
    private static final Path FOLDER = Path.of("src/test/resources/intake");

    private static String planWith(String characteristic) {
        return """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A"}, "unit": "mm",
                 "characteristics": [%s]}
                """.formatted(characteristic);
    }

    @Test
    void everyFieldOfAPlan_isRead() {
        InspectionPlan plan = PlanFile.read(FOLDER.resolve("plan-full.json")).plan();

        assertThat(plan.part().number()).isEqualTo("HQ-310-P");
        assertThat(plan.part().revision()).isEqualTo("C");
        assertThat(plan.part().hand()).contains(Hand.PORT);
        assertThat(plan.part().counterpart()).contains("HQ-310-S");
        assertThat(plan.part().material()).contains("EN AW-6061 T6");
        assertThat(plan.unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(plan.generalTolerance().orElseThrow().text()).isEqualTo("ISO 2768-mK");
        assertThat(plan.decision().rule()).isEqualTo(DecisionChoice.RuleChoice.SIMPLE);

        Gauge gauge = plan.gauge("BG-3").orElseThrow();
        assertThat(gauge.kind()).contains("bore gauge");
        assertThat(gauge.resolution()).contains(new BigDecimal("0.0005"));
        assertThat(gauge.calibrationDue()).contains(LocalDate.of(2027, 3, 31));
        assertThat(gauge.certificate()).contains("K-20881");
        assertThat(gauge.uncertainty().orElseThrow().constant()).isEqualTo(new BigDecimal("0.0016"));
        assertThat(gauge.uncertainty().orElseThrow().coverageFactor()).isEqualTo(new BigDecimal("2.1"));
        assertThat(gauge.uncertainty().orElseThrow().perLength()).isEqualTo(new BigDecimal("0.000003"));
        assertThat(plan.gauge("PRO-1").orElseThrow().unit()).isEqualTo(Unit.DEGREE);

        Characteristic bore = plan.characteristics().get(0);
        assertThat(bore.number()).isEqualTo("1");
        assertThat(bore.feature()).isEqualTo("bearing bore");
        assertThat(bore.printed()).isEqualTo("Ø52 -0.021/-0.051");
        assertThat(bore.importance()).isEqualTo(Importance.CRITICAL);
        assertThat(bore.gauge()).contains("BG-3");
        assertThat(bore.study()).contains(new Study("xbar-r", OptionalInt.of(5), OptionalInt.of(20)));
        assertThat(bore.options().form()).contains(Drawing.Form.HOLE);
        assertThat(bore.options().target()).contains(new BigDecimal("51.9640"));
        assertThat(bore.options().decision().rule()).contains(DecisionChoice.RuleChoice.GUARDED);
        assertThat(bore.options().repeated()).isTrue();
        assertThat(plan.characteristics().get(1).options()).isEqualTo(Characteristic.Options.NONE);
        assertThat(plan.characteristics().get(1).importance()).isEqualTo(Importance.MINOR);
        assertThat(plan.characteristics().get(2).options().sizeFeature()).contains("1");
        assertThat(plan.characteristics().get(2).options().extent()).isEqualTo(Characteristic.Extent.SAMPLE);
    }

    @Test
    void aFullPlan_resolves() {
        ResolvedPlan plan = PlanFile.read(FOLDER.resolve("plan-full.json")).resolve();

        assertThat(plan.find("1").orElseThrow().limits().lower()).contains(new BigDecimal("51.949"));
        assertThat(plan.find("1").orElseThrow().limits().upper()).contains(new BigDecimal("51.979"));
    }

    @Test
    void anUnknownKeyThatIsNoNearMiss_isANotice() {
        PlanFile plan = PlanFile.read(Input.text(
                "p.json",
                planWith("{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\", \"colour\": \"red\"}")));

        assertThat(plan.notices())
                .extracting(Notice::line)
                .containsExactly("p.json:2:81, characteristic 1: \"colour\" is not understood and was not used");
        assertThat(plan.plan().characteristics().get(0).number()).isEqualTo("1");
    }

    @Test
    void numbersThatJudge_keepTheirDigitsWhetherTextOrNumber() {
        String gauges = planWith(
                "{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±0.1\", \"target\": 12.0500000000000000001}");

        Optional<BigDecimal> target = PlanFile.read(Input.text("p.json", gauges))
                .plan()
                .characteristics()
                .get(0)
                .options()
                .target();

        assertThat(target).contains(new BigDecimal("12.0500000000000000001"));
    }

    @Test
    void byteOrderMarkAndCarriageReturns_doNotMoveThePlaces(@TempDir Path folder) throws IOException {
        String plan = planWith("{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±\"}");
        Path file = Files.writeString(folder.resolve("p.json"), "\uFEFF" + plan.replace("\n", "\r\n"));

        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> PlanFile.read(file));

        assertThat(refused.faults()).hasSize(1);
        Fault.Where where = refused.faults().get(0).where();
        assertThat(where.file()).isEqualTo(file.toString());
        assertThat(where.line()).isEqualTo(2);
        // The number should stand where the text ends, before its quotation mark.
        int before =
                " \"characteristics\": [{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±".length();
        assertThat(where.column()).isEqualTo(before + 1);
    }

    @Test
    void theExcerptShowsThePlaceUnderTheLine() {
        InputRefused refused = catchThrowableOfType(
                InputRefused.class,
                () -> PlanFile.read(Input.text(
                        "p.json",
                        planWith("\n{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±\"}\n"))));

        assertThat(refused.lines().subList(1, 3))
                .containsExactly(
                        "    {\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±\"}",
                        "    "
                                + " "
                                        .repeat("{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±"
                                                .length())
                                + "^");
    }

    @Test
    void faultsOfFormAndOfSubstance_areFoundInOneRun() {
        InputRefused refused = catchThrowableOfType(
                InputRefused.class,
                () -> PlanFile.read(Input.text(
                        "p.json",
                        planWith("{\"number\": \"1\", \"feature\": \"\", \"requirement\": \"12 ±0.1\"},\n"
                                + "{\"number\": \"2\", \"feature\": \"face\", \"requirement\": \"12\"}"))));

        assertThat(refused.faults()).extracting(Fault::kind).containsExactly(FaultKind.BLANK, FaultKind.REQUIREMENT);
        assertThat(refused.faults()).extracting(fault -> fault.where().line()).containsExactly(2L, 3L);
    }

    @Test
    void aFeatureOfSizeThatWasRefused_bringsNoSecondFault() {
        InputRefused refused = catchThrowableOfType(
                InputRefused.class,
                () -> PlanFile.read(Input.text(
                        "p.json",
                        planWith(
                                "{\"number\": \"1\", \"feature\": \"\", \"requirement\": \"12 ±0.1\", \"form\": \"hole\"},\n"
                                        + "{\"number\": \"2\", \"feature\": \"face\", \"requirement\": \"position Ø0.1 (M) A\", "
                                        + "\"sizeFeature\": \"1\"}"))));

        assertThat(refused.faults()).extracting(Fault::kind).containsExactly(FaultKind.BLANK);
    }

    @Test
    void filesThatCannotBeRead_areFaultsToo(@TempDir Path folder) {
        Path missing = folder.resolve("none.json");
        assertThat(catchThrowableOfType(InputRefused.class, () -> PlanFile.read(missing))
                        .lines())
                .containsExactly(missing + ": there is no such file; expected a file that can be read");
        assertThat(catchThrowableOfType(InputRefused.class, () -> JobFile.read(folder))
                        .lines())
                .containsExactly(folder + ": found a directory; expected a file with text in it");
    }

    @Test
    void aPlanOfAbsurdSize_isRefusedUnread(@TempDir Path folder) throws IOException {
        Path large = Files.writeString(folder.resolve("large.json"), " ".repeat((int) PlanFile.LARGEST + 1));

        assertThat(catchThrowableOfType(InputRefused.class, () -> PlanFile.read(large))
                        .lines())
                .containsExactly(large
                        + ": found a file of more than 8 MiB; expected at most that; this is perhaps another file");
    }

    @Test
    void everyFieldOfAJob_isRead() {
        Job job = JobFile.read(FOLDER.resolve("job.json")).job();

        assertThat(job.issuer()).contains(new Job.Firm("Hollin Quay Deck Gear", Optional.of("2 Quay Road\nHollin")));
        assertThat(job.customer()).contains(new Job.Firm("Marrow Bay Yachts", Optional.of("1 Slip Lane")));
        assertThat(job.job()).contains("J-1182");
        assertThat(job.batch()).contains("B-2207");
        assertThat(job.order()).contains("PO 7781");
        assertThat(job.quantity()).hasValue(125);
        assertThat(job.materials())
                .containsExactly(new Job.Material("EN AW-6061 T6", Optional.of("H55213"), Optional.of("MC-90122")));
        assertThat(job.machine()).contains("lathe 2");
        assertThat(job.program()).contains("HQ310P-C-07");
        assertThat(job.inspector()).contains(new Job.Person("A. Quill", Optional.of("inspector")));
        assertThat(job.date()).contains(LocalDate.of(2026, 11, 20));
        assertThat(job.firstArticle())
                .contains(new Job.FirstArticleReason(
                        Job.Kind.DELTA,
                        Optional.of("new part"),
                        Optional.of("J-1150"),
                        Optional.of("seat P7 was N7"),
                        List.of("1", "2")));
        assertThat(job.inspectionDocument()).contains(Job.InspectionDocument.TYPE_3_1);
        assertThat(job.processes())
                .containsExactly(new Job.SpecialProcess(
                        "anodised",
                        Optional.of("ISO 7599"),
                        Optional.of("Hollin Quay Deck Gear"),
                        Optional.of("A-771")));
        assertThat(job.certificateNumber()).contains("C-0419");
    }

    @Test
    void aJobThatSaysNothing_isNotStated() {
        JobFile file = JobFile.read(
                Input.text("j.json", "{\"schema\": \"firstoff-job-1\", \"order\": null, \"machine\": \"\"}"));

        assertThat(file.job()).isEqualTo(Job.NOT_STATED);
        assertThat(file.notices()).isEmpty();
    }
}
