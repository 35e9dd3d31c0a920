package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans made from tables and from QIF read back and resolve as those written by hand. */
class PlanDraftTest {
    private static final Path SAMPLES = Path.of("../sample-measurements");

    private static PlanDraft table(String text) {
        return PlanDraft.of(Input.text("ring.csv", text), List.of(), Map.of());
    }

    private static ResolvedPlan byHand() {
        return PlanFile.read(SAMPLES.resolve("hq-310-p.plan.json")).resolve();
    }

    private static PlanDraft made(String name) {
        return PlanDraft.of(Input.file(SAMPLES.resolve(name)), List.of(), Map.of());
    }

    private static void assertSameLimits(ResolvedPlan made, ResolvedPlan byHand) {
        assertThat(made.characteristics().stream().map(ResolvedCharacteristic::number))
                .containsExactlyElementsOf(byHand.characteristics().stream()
                        .map(ResolvedCharacteristic::number)
                        .toList());
        for (ResolvedCharacteristic expected : byHand.characteristics()) {
            ResolvedCharacteristic found = made.find(expected.number()).orElseThrow();
            assertThat(words(found.limits())).as(expected.number()).isEqualTo(words(expected.limits()));
            assertThat(found.isAttribute()).as(expected.number()).isEqualTo(expected.isAttribute());
            assertThat(found.isJudged()).as(expected.number()).isEqualTo(expected.isJudged());
            assertThat(found.characteristic().importance())
                    .as(expected.number())
                    .isEqualTo(expected.characteristic().importance());
            assertThat(found.characteristic().gauge())
                    .as(expected.number())
                    .isEqualTo(expected.characteristic().gauge());
            assertThat(found.characteristic().options().sizeFeature())
                    .as(expected.number())
                    .isEqualTo(expected.characteristic().options().sizeFeature());
        }
    }

    private static String words(Limits limits) {
        return limits.lower().map(BigDecimal::stripTrailingZeros).map(BigDecimal::toPlainString) + " "
                + limits.upper().map(BigDecimal::stripTrailingZeros).map(BigDecimal::toPlainString) + " "
                + limits.unit();
    }

    @Test
    void qif_resolvesToTheLimitsOfThePlanWrittenByHand() {
        PlanDraft draft = made("hq-310-p.plan.qif");

        assertSameLimits(draft.plan(), byHand());
        assertThat(draft.source()).isEqualTo("qif");
        assertThat(draft.plan().part().number()).isEqualTo("HQ-310-P");
        assertThat(draft.plan().part().revision()).isEqualTo("C");
    }

    @Test
    void aTable_resolvesToTheLimitsOfThePlanWrittenByHand_andKeepsItsStudies() {
        PlanDraft draft = made("hq-310-p.table.txt");

        assertSameLimits(draft.plan(), byHand());
        assertThat(draft.plan().plan().generalTolerance().orElseThrow().text()).isEqualTo("ISO 2768-mK");
        assertThat(draft.plan().part().hand().orElseThrow().word()).isEqualTo("port");
        assertThat(draft.plan().find("1").orElseThrow().characteristic().study())
                .isEqualTo(byHand().find("1").orElseThrow().characteristic().study());
        assertThat(draft.place("4").orElseThrow().line()).isEqualTo(10);
    }

    @Test
    void theText_readsBackToTheSameLimits() {
        PlanDraft draft = made("hq-310-p.plan.qif");

        assertSameLimits(PlanFile.read(Input.text("plan.json", draft.text())).resolve(), draft.plan());
    }

    @Test
    void whatIsNotStated_isAssumedAndSaid() {
        PlanDraft draft = table("number,feature,requirement\n1,bore,52 P7\n");

        assertThat(draft.plan().part().number()).isEqualTo("ring");
        assertThat(draft.notices().stream().map(Notice::line))
                .anySatisfy(line -> assertThat(line).contains("no part number is stated", "--part"))
                .anySatisfy(line -> assertThat(line).contains("no revision is stated", "--revision"))
                .anySatisfy(line -> assertThat(line).contains("no unit is stated", "--unit"));
    }

    @Test
    void whatTheUserStates_goesFirst_andTheDifferenceIsSaid() {
        PlanDraft draft = PlanDraft.of(
                Input.text("ring.csv", "Part number,HQ-900\nnumber,feature,requirement\n1,bore,2.0472 +0.0005/0\n"),
                List.of(),
                Map.of(PlanFact.PART, "HQ-901", PlanFact.UNIT, "inch", PlanFact.REVISION, "B"));

        assertThat(draft.plan().part().number()).isEqualTo("HQ-901");
        assertThat(words(draft.plan().find("1").orElseThrow().limits())).contains("2.0472", "INCH");
        assertThat(draft.notices())
                .extracting(Notice::line)
                .containsExactly(
                        "ring.csv: taken from above the heading: part number \"HQ-900\" (line 1)",
                        "ring.csv:1, part number: the part number is \"HQ-900\" here and \"HQ-901\" by --part, which was taken");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "number,feature,requirement|,",
                "Balloon;Description;Specification|;",
                "No.,Feature description,Dimension|,",
                "#;feature;drawing requirement|;",
                "Char No;DESIGNATION;Requirement|;",
            })
    void headings_areFoundByCommonNames(String heading, String separator) {
        PlanDraft draft = table(heading + "\n" + String.join(separator, "1", "bore", "52 P7") + "\n");

        assertThat(words(draft.plan().find("1").orElseThrow().limits()))
                .isEqualTo("Optional[51.949] Optional[51.979] MILLIMETRE");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "xbar-r 5|xbar-r|5",
                "xbar-r (5)|xbar-r|5",
                "xbar-s, n=4|xbar-s|4",
                "individuals|individuals|",
            })
    void studies_areReadInShort(String text, String chart, String subgroup) {
        PlanDraft draft = table("number;feature;requirement;study\n1;bore;52 P7;" + text + "\n");

        var study =
                draft.plan().find("1").orElseThrow().characteristic().study().orElseThrow();
        assertThat(study.chart()).isEqualTo(chart);
        assertThat(draft.text().contains("\"subgroup\": " + subgroup)).isEqualTo(subgroup != null);
    }

    @Test
    void textThatWouldBreakJson_isWrittenSafely() {
        PlanDraft draft = table("number,feature,requirement\n1,\"bore \"\"A\"\" \\ end\",52 P7\n");

        assertThat(draft.plan().find("1").orElseThrow().characteristic().feature())
                .isEqualTo("bore \"A\" \\ end");
    }

    @Test
    void severalFaults_areToldTogether_inTheOrderOfTheTable() {
        assertThatThrownBy(() -> table("number,feature,requirement\n1,bore,about 52\n2,,12.5 ±0.05\n2,face,40\n"))
                .isInstanceOfSatisfying(
                        InputRefused.class,
                        refused -> assertThat(refused.lines().get(0)).contains("ring.csv:3", "column feature"));
    }

    @Test
    void inchesOfAQifDocument_makeAPlanInInches() {
        String text = QifWriter.head(QifWriter.PLAN_ID) + QifWriter.units("inch")
                + QifWriter.characteristics()
                        .replaceAll(
                                "(?s)<CharacteristicDefinitions.*</CharacteristicDefinitions>",
                                "<CharacteristicDefinitions n=\"1\"><DiameterCharacteristicDefinition id=\"101\"><Tolerance>"
                                        + "<MaxValue>0.002</MaxValue><MinValue>-0.002</MinValue><DefinedAsLimit>false</DefinedAsLimit>"
                                        + "</Tolerance></DiameterCharacteristicDefinition></CharacteristicDefinitions>")
                        .replaceAll(
                                "(?s)<CharacteristicNominals.*</CharacteristicNominals>",
                                "<CharacteristicNominals n=\"1\"><DiameterCharacteristicNominal id=\"201\">"
                                        + "<CharacteristicDefinitionId>101</CharacteristicDefinitionId><TargetValue>0.5</TargetValue>"
                                        + "</DiameterCharacteristicNominal></CharacteristicNominals>")
                        .replaceAll("(?s)<CharacteristicItems.*</CharacteristicItems>", "")
                        .replace("<CharacteristicDefinitionId>101</", "<CharacteristicDefinitionId>101</")
                        .replace("<TargetValue>0.5</TargetValue>", "<Name>1</Name><TargetValue>0.5</TargetValue>")
                + "</QIFDocument>\n";

        PlanDraft draft = PlanDraft.of(Input.text("screw.qif", text), List.of(), Map.of());

        assertThat(words(draft.plan().find("1").orElseThrow().limits()))
                .isEqualTo("Optional[0.498] Optional[0.502] INCH");
    }
}
