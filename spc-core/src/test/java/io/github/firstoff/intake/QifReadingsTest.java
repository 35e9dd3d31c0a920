package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.QifWriter.Measurement;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What QIF results come to. The rules are those of the schema of QIF 3.0 (ISO 23952:2020) and its documentation. */
class QifReadingsTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    private static Intake read(String... documents) {
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < documents.length; i++) {
            inputs.add(Input.text("d" + (i + 1) + ".qif", documents[i]));
        }
        return ReadingFiles.readInputs(PLAN, inputs);
    }

    private static List<Reading> readings(Intake intake) {
        assertThat(intake.refused().lines()).isEmpty();
        return intake.parts().stream()
                .flatMap(part -> part.readings().values().stream())
                .flatMap(List::stream)
                .toList();
    }

    private static Reading.Measured only(Intake intake) {
        List<Reading> readings = readings(intake);
        assertThat(readings).hasSize(1);
        return (Reading.Measured) readings.get(0);
    }

    private static String notices(Intake intake) {
        return String.join("\n", intake.notices().stream().map(Notice::line).toList());
    }

    private static String one(String inside) {
        return QifWriter.together(List.of(new Measurement("S1", "2", inside)));
    }

    private static String status(String word) {
        return "<Status><CharacteristicStatusEnum>" + word + "</CharacteristicStatusEnum></Status>{item}";
    }

    @Test
    void piecesAreCalledByTheirSerialNumbers_inTheOrderOfTheFile() {
        Intake intake = read(QifWriter.together(List.of(
                Measurement.of("S2", "2", "12.51"),
                Measurement.of("S2", "9", "fail"),
                Measurement.of("S1", "2", "12.52"))));

        assertThat(readings(intake)).hasSize(3);
        assertThat(intake.parts().stream().map(part -> part.serial())).containsExactly("S2", "S1");
        assertThat(intake.files().get(0).format()).isEqualTo(ReadingFormat.QIF);
        assertThat(intake.rows()).isEqualTo(new RowCounts(3, 3, 0, 0));
    }

    @Test
    void splitDocuments_inEitherOrder_sayTheSameAsOne() {
        List<Measurement> all = List.of(Measurement.of("S1", "2", "12.510"), Measurement.of("S1", "9", "pass"));
        List<String> split = QifWriter.split(all);
        List<String> other = new ArrayList<>(split);
        Collections.reverse(other);

        List<String> values = values(read(QifWriter.together(all)));

        assertThat(values(read(split.toArray(new String[0])))).isEqualTo(values);
        assertThat(values(read(other.toArray(new String[0])))).isEqualTo(values);
        assertThat(notices(read(split.toArray(new String[0])))).contains("holds no results");
    }

    private static List<String> values(Intake intake) {
        return readings(intake).stream()
                .map(reading -> reading instanceof Reading.Measured measured
                        ? reading.characteristic() + "=" + measured.value() + measured.unit()
                        : reading.characteristic() + "=" + ((Reading.Observed) reading).pass())
                .toList();
    }

    @Test
    void aDocumentToWhichAnotherRefers_isNeverFetched() {
        Intake intake = read(
                QifWriter.split(List.of(Measurement.of("S1", "2", "12.51"))).get(1));

        assertThat(intake.refused().lines().get(0)).contains("not among the given files", "file:///nowhere/plan.qif");
        assertThat(intake.rows()).isEqualTo(new RowCounts(1, 0, 1, 0));
    }

    @Test
    void twoDocumentsOfTheIdentificationReferredTo_areOneTooMany() {
        List<String> split = QifWriter.split(List.of(Measurement.of("S1", "2", "12.51")));

        Intake intake = read(split.get(0), split.get(0), split.get(1));

        assertThat(intake.refused().lines().get(0)).contains("d1.qif and d2.qif have the same identification");
    }

    @Test
    void aDecimalComma_isRefusedWithoutAnOptionThatQifDoesNotHave() {
        String text = QifWriter.together(List.of(Measurement.of("S1", "2", "12.51")));
        assertThat(read(text.replace(">12.51<", ">12,51<")).refused().lines().get(0))
                .endsWith("the number has a comma, and here every decimal mark is a point; found \"12,51\"; "
                        + "expected a number such as 12.5");
    }

    @Test
    void aDocumentWithoutResults_alone_isRefused() {
        assertThat(read(QifWriter.split(List.of()).get(0)).refused().count()).isEqualTo(1);
    }

    @Test
    void aStream_isReadToo() {
        String text = QifWriter.together(List.of(Measurement.of("S1", "2", "12.51")));
        Input stream = Input.stream("-", new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));

        assertThat(readings(ReadingFiles.readInputs(PLAN, List.of(stream)))).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({
        "mm, 12.510, 12.510, MILLIMETRE",
        "millimeter, 12.51, 12.51, MILLIMETRE",
        "inch, 0.4925, 0.4925, INCH",
        "m, 0.012510, 12.510, MILLIMETRE",
        "cm, 1.2510, 12.510, MILLIMETRE",
        "ft, 0.041, 0.492, INCH",
    })
    void declaredUnits(String unit, String written, String value, Unit expected) {
        String text = one(status("PASS") + "<Value>" + written + "</Value>").replace(">mm<", ">" + unit + "<");

        Reading.Measured reading = only(read(text));

        assertThat(reading.value()).isEqualByComparingTo(value);
        assertThat(reading.unit()).isEqualTo(expected);
    }

    /** A unit of the shop's own, by its factor to the metre. */
    @Test
    void aUnitKnownOnlyByItsFactor_isConvertedExactly() {
        String text = one(status("PASS") + "<Value>125.1</Value>")
                .replace(
                        "<UnitName>mm</UnitName>",
                        "<UnitName>tenth</UnitName><UnitConversion><Factor>0.0001</Factor></UnitConversion>");

        assertThat(only(read(text)).value()).isEqualByComparingTo("12.51");
    }

    @Test
    void aValueMayNameItsOwnUnit_andThePmiUnitGoesFirst() {
        String own = one(status("PASS") + "<Value linearUnit=\"inch\">0.4925</Value>")
                .replace(
                        "</PrimaryUnits>",
                        "</PrimaryUnits><OtherUnits n=\"1\"><LinearUnit><UnitName>inch</UnitName></LinearUnit></OtherUnits>");
        String pmi = one(status("PASS") + "<Value>0.4925</Value>")
                .replace("</PrimaryUnits>", "<PMILinearUnit><UnitName>inch</UnitName></PMILinearUnit></PrimaryUnits>");

        assertThat(only(read(own)).unit()).isEqualTo(Unit.INCH);
        assertThat(only(read(pmi)).unit()).isEqualTo(Unit.INCH);
    }

    @Test
    void withoutADeclaredUnit_millimetresAreTaken_andSaid() {
        Intake intake = read(one(status("PASS") + "<Value>12.51</Value>").replaceAll("<FileUnits>.*</FileUnits>", ""));

        assertThat(only(intake).unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(notices(intake)).contains("declares no unit of lengths", "metre", "millimetres were taken");
    }

    @Test
    void roughness_isReadInItsOwnUnit() {
        Reading.Measured reading = only(read(QifWriter.together(List.of(Measurement.of("S1", "7", "0.00050")))));

        assertThat(reading.value()).isEqualTo(new BigDecimal("0.50"));
        assertThat(reading.unit()).isEqualTo(Unit.MICROMETRE);
    }

    @ParameterizedTest
    @CsvSource({"NOT_ANALYZED", "INDETERMINATE", "SYSERROR", "UNDEFINED", "BASIC_OR_TED"})
    void aStatusThatFindsNothingOut_isExplained_notLost(String word) {
        Intake intake = read(QifWriter.together(
                List.of(Measurement.of("S1", "1", "51.964"), new Measurement("S1", "2", status(word)))));

        assertThat(readings(intake)).hasSize(1);
        assertThat(intake.rows()).isEqualTo(new RowCounts(2, 1, 0, 1));
        assertThat(notices(intake)).contains("1 measurement has no value and the status " + word);
    }

    @ParameterizedTest
    @CsvSource({"PASS, true", "FAIL, false", "REWORK, false"})
    void anAttribute_isReadFromItsStatus(String word, boolean pass) {
        Intake intake = read(QifWriter.together(List.of(new Measurement("S1", "9", status(word)))));

        assertThat(readings(intake))
                .singleElement()
                .isInstanceOfSatisfying(
                        Reading.Observed.class,
                        reading -> assertThat(reading.pass()).isEqualTo(pass));
    }

    @Test
    void aStatusInTheWriterOwnWords_isReadWhereItSaysPassOrFail() {
        Intake intake = read(QifWriter.together(List.of(new Measurement(
                "S1", "9", "<Status><OtherCharacteristicStatus>n.i.O.</OtherCharacteristicStatus></Status>{item}"))));

        assertThat(readings(intake))
                .singleElement()
                .isInstanceOfSatisfying(
                        Reading.Observed.class,
                        reading -> assertThat(reading.pass()).isFalse());
    }

    @ParameterizedTest
    @CsvSource({
        "PASS, 12.56, the file says PASS of 12.56",
        "FAIL, 12.55, the file says FAIL of 12.55",
        "REWORK, 12.50, the file says REWORK of 12.50",
    })
    void aStatusAgainstTheValue_isNoticed_andTheValueIsTaken(String word, String value, String notice) {
        Intake intake = read(one(status(word) + "<Value>" + value + "</Value>"));

        assertThat(only(intake).value()).isEqualByComparingTo(value);
        assertThat(notices(intake)).contains(notice, "judged by the plan");
    }

    @ParameterizedTest
    @CsvSource({"PASS, 12.55", "FAIL, 12.5501", "NOT_ANALYZED, 12.56", "INDETERMINATE, 12.55"})
    void aStatusThatAgrees_orSaysNothing_isNotNoticed(String word, String value) {
        assertThat(notices(read(one(status(word) + "<Value>" + value + "</Value>"))))
                .doesNotContain("the file says");
    }

    /** A position beyond its stated tolerance may conform by its bonus, so PASS there is no contradiction. */
    @Test
    void aPassBeyondAToleranceThatCanGrow_isNoContradiction() {
        Intake intake =
                read(QifWriter.together(List.of(new Measurement("S1", "3", status("PASS") + "<Value>0.15</Value>"))));

        assertThat(notices(intake)).doesNotContain("the file says");
    }

    @Test
    void theVerdictOnTheRun_isHeldAgainstItsValues() {
        String text = one(status("NOT_ANALYZED") + "<Value>12.56</Value>").replace(">NOT_CALCULATED<", ">PASS<");
        String other = one(status("NOT_ANALYZED") + "<Value>12.55</Value>").replace(">NOT_CALCULATED<", ">FAIL<");

        assertThat(notices(read(text))).contains("the file says PASS of a piece");
        assertThat(notices(read(other))).contains("the file says FAIL of a piece");
    }

    @Test
    void extremesBeyondTheLimits_areNoticed() {
        Intake intake =
                read(one(status("PASS") + "<Value>12.54</Value><MaxValue>12.57</MaxValue><MinValue>12.5</MinValue>"));

        assertThat(notices(intake))
                .contains("MaxValue 12.57", "only Value is judged")
                .doesNotContain("MinValue");
    }

    @Test
    void limitsOfTheFileThatDifferFromThePlan_areNoticed() {
        String definition = "<ThicknessCharacteristicDefinition id=\"102\"/>";
        String text = one(status("PASS") + "<Value>12.51</Value>");

        assertThat(text).contains(definition);
        assertThat(notices(read(text.replace(definition, thickness("12.6", "12.4", true)))))
                .contains("the file states the limits 12.4 to 12.6 mm, and the plan 12.45 to 12.55 mm");
        assertThat(notices(read(text.replace(definition, thickness("12.55", "12.45", true)))))
                .isEmpty();
        assertThat(
                        notices(
                                read(
                                        text.replace(definition, thickness("0.05", "-0.05", false))
                                                .replace(
                                                        "<CharacteristicDefinitionId>102</CharacteristicDefinitionId>",
                                                        "<CharacteristicDefinitionId>102</CharacteristicDefinitionId><TargetValue>12.5</TargetValue>"))))
                .isEmpty();
    }

    private static String thickness(String most, String least, boolean limits) {
        return "<ThicknessCharacteristicDefinition id=\"102\"><Tolerance><MaxValue>" + most + "</MaxValue><MinValue>"
                + least
                + "</MinValue><DefinedAsLimit>" + limits
                + "</DefinedAsLimit></Tolerance></ThicknessCharacteristicDefinition>";
    }

    @Test
    void anItemIsTiedToThePlan_byDesignator_identification_orName() {
        String text = one(status("PASS") + "<Value>12.51</Value>");
        String designator = "<CharacteristicDesignator><Designator>2</Designator></CharacteristicDesignator>";

        Stream.of(
                        "<Name>2</Name>",
                        "<Name>flange</Name><CharacteristicDesignator><Designator>2</Designator></CharacteristicDesignator>",
                        "<CharacteristicDesignator><Designator>K7</Designator><UUID>2</UUID></CharacteristicDesignator>")
                .forEach(names -> assertThat(
                                only(read(text.replace(designator, names))).characteristic())
                        .isEqualTo("2"));
    }

    @Test
    void aPieceWithoutASerialNumber_isCalledByItsResults() {
        String text = one(status("PASS") + "<Value>12.51</Value>").replaceAll("<SerialNumber>.*?</SerialNumber>", "");

        Intake intake = read(text);

        assertThat(intake.parts().get(0).serial()).isEqualTo("d1.qif results 1000");
        assertThat(notices(intake)).contains("no serial number");
    }

    @Test
    void time_operator_andSample_areRead() {
        String text = one(status("PASS") + "<TimeStamp>2026-11-09T09:00:00+01:00</TimeStamp><Value>12.51</Value>")
                .replace(
                        "<MeasuredCharacteristics>",
                        "<InspectionTraceability><InspectionOperator><Name>A. Quill</Name></InspectionOperator>"
                                + "</InspectionTraceability><MeasuredCharacteristics>");

        Reading.Context context = only(read(text)).context();

        assertThat(context.operator()).contains("A. Quill");
        assertThat(context.time().orElseThrow()).isEqualTo("2026-11-09T08:00:00");
    }

    @Test
    void utf16_isRead_andElementsOfOtherNamespacesAreNot() {
        String text = one(status("PASS") + "<Value>12.51</Value>").replace("encoding=\"UTF-8\"", "encoding=\"UTF-16\"");
        Input input = Input.stream(
                "wide.qif", new ByteArrayInputStream(("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE)));
        String foreign = one(status("PASS") + "<Value>12.51</Value>")
                .replace("<Value>", "<v:Value xmlns:v=\"http://hollinquay.example/own\">99</v:Value><Value>");

        assertThat(readings(ReadingFiles.readInputs(PLAN, List.of(input)))).hasSize(1);
        assertThat(only(read(foreign)).value()).isEqualByComparingTo("12.51");
    }

    /** A token that never ends must not be gathered in memory. */
    @Test
    void aTagOfManyMegabytes_isRefused() {
        String text = one(status("PASS") + "<Value>12.51</Value>")
                .replace("<Results>", "<Results note=\"" + "x".repeat(6_000_000) + "\">");

        assertThat(read(text).refused().lines().get(0)).contains("million characters");
    }

    @Test
    void manyPieces_areReadInBoundedTime() {
        List<Measurement> many = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            many.add(Measurement.of("S" + i, "2", "12.51"));
        }

        assertThat(read(QifWriter.together(many)).rows()).isEqualTo(new RowCounts(20_000, 20_000, 0, 0));
    }
}
