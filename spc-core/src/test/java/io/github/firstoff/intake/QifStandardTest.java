package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import org.junit.jupiter.api.Test;
import org.xml.sax.ErrorHandler;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/**
 * Our own QIF documents against the schema of QIF 3.0 (ANSI/DMSC QIF 3.0, ISO 23952:2020), and the example that its consortium publishes
 * (a tooling ball, planned in one document and measured twice in two others) against the verdicts printed in it.
 *
 * <p>Schema and example are not part of this project. The tests look for a folder {@code shared/qif} beside a folder above this one, or
 * where the system property {@code firstoff.qif} says, and are skipped, in these words, where there is none.
 */
class QifStandardTest {
    private static final Path SAMPLES = Path.of("../sample-measurements");

    private static Path standard() {
        Optional<Path> found =
                Optional.ofNullable(System.getProperty("firstoff.qif")).map(Path::of);
        Path folder = Path.of("").toAbsolutePath();
        while (found.isEmpty() && folder != null) {
            found = Optional.of(folder.resolve("shared/qif")).filter(Files::isDirectory);
            folder = folder.getParent();
        }
        assumeTrue(
                found.isPresent(),
                "the schema and the example of QIF 3.0 are not here: put them into a folder and name it with -Dfirstoff.qif=FOLDER");
        return found.orElseThrow();
    }

    private static Schema schema() throws SAXException {
        // The schema lets lists be longer than the platform expects of anybody else's; nothing but local files is read.
        SchemaFactory factory = SchemaFactory.newDefaultInstance();
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "file");
        return factory.newSchema(
                standard().resolve("schema/QIFApplications/QIFDocument.xsd").toFile());
    }

    private static List<String> faults(Schema schema, Path document) throws SAXException, IOException {
        List<String> faults = new ArrayList<>();
        Validator validator = schema.newValidator();
        validator.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        validator.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
        validator.setErrorHandler(new ErrorHandler() {
            @Override
            public void warning(SAXParseException fault) {
                faults.add(fault.getLineNumber() + ": " + fault.getMessage());
            }

            @Override
            public void error(SAXParseException fault) {
                faults.add(fault.getLineNumber() + ": " + fault.getMessage());
            }

            @Override
            public void fatalError(SAXParseException fault) {
                faults.add(fault.getLineNumber() + ": " + fault.getMessage());
            }
        });
        validator.validate(new StreamSource(document.toFile()));
        return faults;
    }

    @Test
    void ourDocuments_areValid_andTheSchemaTellsWhenTheyAreNot() throws SAXException, IOException {
        Schema schema = schema();
        List<Path> own;
        try (Stream<Path> files = Files.list(SAMPLES)) {
            own = files.filter(file -> file.toString().endsWith(".qif"))
                    .sorted()
                    .toList();
        }

        assertThat(own).hasSizeGreaterThanOrEqualTo(3);
        for (Path document : own) {
            assertThat(faults(schema, document)).as(document.toString()).isEmpty();
        }
        Path broken = Files.createTempFile("broken", ".qif");
        Files.writeString(
                broken,
                Files.readString(own.get(0))
                        .replace("<CharacteristicStatusEnum>PASS<", "<CharacteristicStatusEnum>FINE<"));
        assertThat(faults(schema, broken)).isNotEmpty();
        Files.delete(broken);
    }

    @Test
    void theGoodDocumentOfTheMalformedOnes_isValid() throws SAXException, IOException {
        // The malformed files are this one with one fault each.
        assertThat(faults(schema(), Path.of("src/test/resources/intake/good.qif")))
                .isEmpty();
    }

    @Test
    void theDocumentOfTheGuide_isValid() throws SAXException, IOException {
        Path document = Files.createTempFile("guide", ".qif");
        Files.writeString(document, QifGuideTest.example("xml qif"));

        assertThat(faults(schema(), document)).isEmpty();
        Files.delete(document);
    }

    /** Both measured parts are marked FAIL in the example, and so is each of their characteristics. */
    @Test
    void theExampleOfTheStandard_comesToTheVerdictsPrintedInIt() {
        Path documents = standard().resolve("documents");
        Path plan = documents.resolve("Exploded_Plan.QIF");
        ResolvedPlan made = PlanDraft.of(Input.file(plan), List.of(), Map.of()).plan();

        Intake intake = ReadingFiles.read(
                made,
                List.of(documents.resolve("Exploded_Results1.QIF"), documents.resolve("Exploded_Results2.QIF"), plan));
        InspectionResult result = Judge.of(made).assess(intake.recordOrRefuse());

        assertThat(made.find("W1RFTM1").orElseThrow().limits().lower().orElseThrow())
                .isEqualByComparingTo("25.149999999999999");
        assertThat(made.find("W1RFTM1").orElseThrow().limits().upper().orElseThrow())
                .isEqualByComparingTo("25.649999999999999");
        assertThat(made.find("W1RFTM2").orElseThrow().limits().upper().orElseThrow())
                .isEqualByComparingTo("0.05");
        assertThat(intake.parts()).hasSize(2);
        assertThat(result.characteristics())
                .hasSize(2)
                .allSatisfy(each -> assertThat(each.judgements())
                        .hasSize(2)
                        .extracting(Judgement::verdict)
                        .containsOnly(Verdict.NONCONFORMING));
        assertThat(intake.notices().stream().map(Notice::line))
                .noneMatch(line -> line.contains("the file says"))
                .anyMatch(line -> line.contains("declares no unit of lengths"));
    }
}
