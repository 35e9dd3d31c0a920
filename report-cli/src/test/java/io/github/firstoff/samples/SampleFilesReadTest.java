package io.github.firstoff.samples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.CountedRequirement;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every committed sample is read without a complaint, and comes to the verdict that the folder's README states. */
class SampleFilesReadTest {

    private static final Path FOLDER = Path.of("..", "sample-measurements");

    /** A row of the README's table: readings, job, plan, and at its end the verdict and the exit code. */
    private static final Pattern ROW = Pattern.compile(
            "\\| `([^`]+\\.csv)` \\([a-z]+\\) \\| `([^`]+)` \\| `([^`]+)` \\|.*\\| ([a-z]+) \\| (\\d) \\|");

    private static final BigDecimal FOUR = BigDecimal.valueOf(4);

    private record Sample(String readings, String job, String plan, String verdict, String exit) {
        @Override
        public String toString() {
            return readings;
        }
    }

    static List<Sample> samples() throws IOException {
        return Files.readAllLines(FOLDER.resolve("README.md")).stream()
                .map(ROW::matcher)
                .filter(Matcher::matches)
                .map(row -> new Sample(row.group(1), row.group(2), row.group(3), row.group(4), row.group(5)))
                .toList();
    }

    static Stream<String> plans() {
        return SampleGenerator.files().keySet().stream().filter(name -> name.endsWith(".plan.json"));
    }

    @Test
    void everyFileOfReadingsHasItsRow() throws IOException {
        assertThat(samples().stream().map(Sample::readings))
                .containsExactlyInAnyOrderElementsOf(SampleGenerator.files().keySet().stream()
                        .filter(name -> name.endsWith(".csv"))
                        // sizes of assemblies, held against no plan
                        .filter(name -> !name.endsWith(".bores.csv") && !name.endsWith(".rings.csv"))
                        .toList());
    }

    @ParameterizedTest
    @MethodSource("samples")
    void comesToTheStatedVerdict(Sample sample) {
        InspectionResult result = assess(sample);

        assertThat(result.verdict().word()).isEqualTo(sample.verdict());
        assertThat(sample.exit()).isEqualTo(sample.verdict().equals("accepted") ? "0" : "1");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void jobAgreesWithItsReadings(Sample sample) {
        JobFile file = JobFile.read(FOLDER.resolve(sample.job()));
        Job job = file.job();
        List<PartRecord> parts = assess(sample).record().parts();
        LocalDate date = job.date().orElseThrow();

        assertThat(file.notices()).isEmpty();
        assertThat(job.quantity()).hasValue(parts.size());
        assertThat(parts)
                .allSatisfy(part ->
                        assertThat("B-" + part.serial()).startsWith(job.batch().orElseThrow()));
        assertThat(parts.stream()
                        .flatMap(part -> part.readings().values().stream().flatMap(List::stream)))
                .allSatisfy(reading -> assertThat(
                                reading.context().time().orElseThrow().toLocalDate())
                        .isBeforeOrEqualTo(date));
        assertThat(PlanFile.read(FOLDER.resolve(sample.plan())).plan().gauges())
                .noneMatch(gauge -> gauge.isOutOfCalibrationOn(date));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void noGaugeIsTooCoarseForItsTolerance(String name) {
        ResolvedPlan plan = PlanFile.read(FOLDER.resolve(name)).resolve();

        for (ResolvedCharacteristic each : plan.characteristics()) {
            boolean counted = each.characteristic().requirement() instanceof CountedRequirement;
            if (counted || each.limits().width().isEmpty()) {
                continue;
            }
            Gauge gauge = each.gauge().orElseThrow();
            Unit unit = each.limits().unit();
            BigDecimal uncertainty = gauge.uncertainty().orElseThrow().constant();
            BigDecimal width = each.limits().width().orElseThrow();
            // A quarter of the tolerance is the usual most (common practice).
            assertThat(Unit.compare(uncertainty.multiply(FOUR), gauge.unit(), width, unit))
                    .as("four times the uncertainty of %s against the tolerance of %s", gauge.id(), each.number())
                    .isNotPositive();
        }
    }

    @Test
    void theRejectedFirstArticleHasOneSpigotOverAndNoPerpendicularity() throws IOException {
        InspectionResult result = assess("first-article-rejected.csv");

        Judgement over = onlyOne(result, Verdict.NONCONFORMING);
        assertThat(over.reading().characteristic()).isEqualTo("4");
        assertThat(over.departure()).hasValue(new BigDecimal("0.004"));
        assertThat(notMeasured(result)).containsExactly("7");
    }

    @Test
    void theIncompleteFirstArticleLacksTheRoughnessOnly() throws IOException {
        assertThat(notMeasured(assess("first-article-incomplete.csv"))).containsExactly("3");
    }

    @Test
    void theGuardedFirstArticleHasOneSeatThatIsNotProven() throws IOException {
        Judgement open = onlyOne(assess("first-article-guarded.csv"), Verdict.INCONCLUSIVE);

        assertThat(open.reading().characteristic()).isEqualTo("1");
        assertThat(open.inside().orElseThrow()).isEqualByComparingTo("0.0015");
        assertThat(open.uncertainty().orElseThrow()).isEqualByComparingTo("0.0025");
    }

    @Test
    void aHoleOfThePortFirstArticleConformsByItsBonus() throws IOException {
        List<Judgement> beyondStated = result(assess("first-article-hq-310-p.csv"), "11").judgements().stream()
                .filter(judgement -> judgement.reading() instanceof Reading.Measured measured
                        && measured.value().compareTo(new BigDecimal("0.2")) > 0)
                .toList();

        assertThat(beyondStated).hasSize(1);
        assertThat(beyondStated.get(0).verdict()).isEqualTo(Verdict.CONFORMING);
        assertThat(beyondStated.get(0).allowed().bonus().orElseThrow().amount()).isPositive();
    }

    @Test
    void batch2208HasOneSeatOverAndOneFlangeNotMeasured() throws IOException {
        InspectionResult result = assess("batch-2208.csv");

        Judgement over = onlyOne(result, Verdict.NONCONFORMING);
        assertThat(over.reading().characteristic()).isEqualTo("1");
        assertThat(over.departure()).hasValue(new BigDecimal("0.004"));
        assertThat(over.reading().context().note()).isPresent();
        assertThat(notMeasured(result)).containsExactly("5");
        assertThat(result(result, "5").missing()).hasSize(1);
    }

    /** 160.036 + 160.036·(11.5 − 23.6)·10⁻⁶·(24.5 − 20) = 160.0272860398 (ISO 1; worked by hand). */
    @Test
    void aBaseOfThePawlCarrierConformsAtTwentyDegreesOnly() throws IOException {
        List<Judgement> bases =
                result(assess("first-article-hq-320-p.csv"), "4").judgements();

        assertThat(((Reading.Measured) bases.get(1).reading()).value()).isEqualByComparingTo("160.036");
        assertThat(bases.get(1).correction().orElseThrow().corrected()).isEqualByComparingTo("160.0272860398");
        assertThat(bases.get(1).verdict()).isEqualTo(Verdict.CONFORMING);
    }

    @Test
    void theStarboardPawlCarrierIsTheMirrorImageAndLacksOneSetting() throws IOException {
        InspectionResult result = assess("first-article-hq-320-s.csv");

        assertThat(result(result, "2").characteristic().characteristic().printed())
                .isEqualTo("-31.5 ±0.05");
        assertThat(notMeasured(result)).containsExactly("7");
        assertThat(result(result, "7").missing()).containsExactly("2212-1 at high");
        // 2·√(0.022² + 0.013²) = 0.0511…
        assertThat(((Reading.Measured) result(result, "3").judgements().get(0).reading()).value())
                .isEqualByComparingTo("0.0511");
    }

    private static InspectionResult assess(String readings) throws IOException {
        return assess(samples().stream()
                .filter(sample -> sample.readings().equals(readings))
                .findFirst()
                .orElseThrow());
    }

    private static InspectionResult assess(Sample sample) {
        PlanFile file = PlanFile.read(FOLDER.resolve(sample.plan()));
        ResolvedPlan plan = file.resolve();
        Intake intake = ReadingFiles.read(plan, List.of(FOLDER.resolve(sample.readings())));

        assertThat(file.notices()).isEmpty();
        assertThat(intake.notices()).isEmpty();
        return Judge.of(plan).assess(intake.recordOrRefuse());
    }

    private static CharacteristicResult result(InspectionResult result, String number) {
        return result.characteristics().stream()
                .filter(each -> each.number().equals(number))
                .findFirst()
                .orElseThrow();
    }

    private static Judgement onlyOne(InspectionResult result, Verdict verdict) {
        List<Judgement> found = result.characteristics().stream()
                .flatMap(each -> each.judgements().stream())
                .filter(judgement -> judgement.verdict() == verdict)
                .toList();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private static List<String> notMeasured(InspectionResult result) {
        return result.judged().stream()
                .filter(each -> !each.missing().isEmpty())
                .map(CharacteristicResult::number)
                .toList();
    }
}
