package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.report.pdf.Seal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Every sample sheet is an archive (ISO 19005-3, level A) that can be read aloud (ISO 14289-1, as far as a machine can tell) and carries what it was made from, byte for byte. */
class CarriedFilesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#oneOfEachKind")
    void sheet_oneOfEachKind_isAnArchiveAndCarriesItsInputs(Samples.Made sample) throws IOException {
        assertThat(isAnArchiveThatCarriesItsInputs(sample)).isTrue();
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#everyKind")
    void sheet_everySample_isAnArchiveAndCarriesItsInputs(Samples.Made sample) throws IOException {
        isAnArchiveThatCarriesItsInputs(sample);
    }

    /**
     * Makes the sheet and checks it.
     *
     * @return whether there is a sheet: a certificate may be refused, and says then why
     */
    private boolean isAnArchiveThatCarriesItsInputs(Samples.Made sample) throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        Samples.Run run = sample.make(pdf, "--json");
        if (!Files.exists(pdf)) {
            assertThat(sample.command()).as(run.err()).isEqualTo("certificate");
            assertThat(run.out()).contains("\"reasons\"");
            return false;
        }
        byte[] file = Files.readAllBytes(pdf);
        assertThat(ArchiveFormat.departures(file, PDFAFlavour.PDFA_3_A)).isEmpty();
        assertThat(ArchiveFormat.departures(file, PDFAFlavour.PDFUA_1)).isEmpty();
        assertThat(Seal.find(file).orElseThrow().isIntact(file)).isTrue();
        Map<String, byte[]> carried = new LinkedHashMap<>();
        try (PDDocument document = Loader.loadPDF(file)) {
            COSArray associated = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.getPDFName("AF"));
            for (COSBase each : associated) {
                PDComplexFileSpecification specification = new PDComplexFileSpecification(
                        (COSDictionary) ((org.apache.pdfbox.cos.COSObject) each).getObject());
                String name = specification.getFileUnicode();
                carried.put(name, specification.getEmbeddedFile().toByteArray());
                boolean input = sample.inputs().containsKey(name) || name.startsWith("plan-counterpart-");
                assertThat(specification.getCOSObject().getNameAsString("AFRelationship"))
                        .as(name)
                        .isEqualTo(input ? "Source" : name.equals("manifest.json") ? "Supplement" : "Data");
                assertThat(specification.getEmbeddedFile().getSubtype()).isIn("application/json", "text/csv");
                assertThat(specification.getEmbeddedFile().getModDate())
                        .isEqualTo(document.getDocumentInformation().getCreationDate());
            }
            assertThat(document.getDocumentCatalog()
                            .getNames()
                            .getEmbeddedFiles()
                            .getNames()
                            .keySet())
                    .containsExactlyInAnyOrderElementsOf(carried.keySet());
            assertThat(document.getDocumentCatalog().getDocumentOutline().hasChildren())
                    .isTrue();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-GB");
            assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle())
                    .isTrue();
        }
        assertThat(new String(carried.get("result.json"), StandardCharsets.UTF_8))
                .isEqualTo(run.out());
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("..", "docs", "schemas", "manifest.schema.json")))
                        .validate(new String(carried.get("manifest.json"), StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
        for (Map.Entry<String, Path> input : sample.inputs().entrySet()) {
            assertThat(carried).containsEntry(input.getKey(), Files.readAllBytes(input.getValue()));
        }
        return true;
    }

    @Test
    void sheet_ofAMirrorImage_carriesThePlanOfTheCounterpartToo() throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        new Samples.Sample("first-article", "hq-320-s", "first-article-hq-320-s").make(pdf);
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            assertThat(document.getDocumentCatalog()
                            .getNames()
                            .getEmbeddedFiles()
                            .getNames()
                            .get("plan-counterpart-hq-320-p.plan.json")
                            .getEmbeddedFile()
                            .toByteArray())
                    .isEqualTo(Files.readAllBytes(Samples.FOLDER.resolve("hq-320-p.plan.json")));
        }
    }
}
