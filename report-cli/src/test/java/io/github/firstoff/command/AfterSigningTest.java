package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Keys;
import io.github.firstoff.proof.Samples;
import io.github.firstoff.proof.Signer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is appended to a signed sheet (an incremental update, ISO 32000-1, 7.5.6) leaves every signature genuine, and is found and named all the same. */
class AfterSigningTest {
    @TempDir
    private static Path folder;

    private static byte[] unsigned;
    private static byte[] signed;

    @BeforeAll
    static void makeSheets() throws GeneralSecurityException, IOException {
        Path pdf = folder.resolve("made.pdf");
        new Samples.Sample("first-article", "hq-310-p", "first-article-rejected").make(pdf);
        unsigned = Files.readAllBytes(pdf);
        signed = Signer.sign(
                unsigned, Keys.selfSigned("EC", 256, "CN=A. Quill").opened(), Optional.of("inspector"), Keys.DAY);
    }

    /** A change that someone appends. */
    interface Change {
        void of(PDDocument document) throws IOException;
    }

    static Stream<Arguments> changes() {
        return Stream.of(
                change("the drawing of page 1", AfterSigningTest::pageDrawnAnew),
                change("a field or link on page 1", AfterSigningTest::patchOverAFigure),
                change("a file that the sheet carries", AfterSigningTest::carriedFileReplaced),
                change("a field or link on page 1", AfterSigningTest::emptyLineDrawnAsIfSigned),
                change("a field or link on page 1", AfterSigningTest::signatureMovedElsewhere),
                change("the number of pages", document -> document.addPage(new PDPage(PDRectangle.A4))),
                change("the properties of the document", document -> {
                    document.getDocumentInformation().setTitle("Accepted");
                    document.getDocumentInformation().getCOSObject().setNeedToBeUpdated(true);
                }),
                change("page 1 (Rotate)", document -> {
                    document.getPage(0).setRotation(180);
                    document.getPage(0).getCOSObject().setNeedToBeUpdated(true);
                }),
                change("the file's object Root/OpenAction", document -> {
                    COSDictionary script = new COSDictionary();
                    script.setName(COSName.S, "JavaScript");
                    script.setString(COSName.JS, "app.alert(1)");
                    document.getDocumentCatalog().getCOSObject().setItem(COSName.OPEN_ACTION, script);
                    document.getDocumentCatalog().getCOSObject().setNeedToBeUpdated(true);
                }));
    }

    private static Arguments change(String named, Change change) {
        return Arguments.of(named, change);
    }

    private static void pageDrawnAnew(PDDocument document) throws IOException {
        COSStream drawing = document.getDocument().createCOSStream();
        try (OutputStream out = drawing.createOutputStream(COSName.FLATE_DECODE)) {
            out.write("0 0 100 100 re f".getBytes(StandardCharsets.US_ASCII));
        }
        document.getPage(0).getCOSObject().setItem(COSName.CONTENTS, drawing);
        document.getPage(0).getCOSObject().setNeedToBeUpdated(true);
    }

    /** A white patch with another figure on it, as any program for comments makes it. */
    private static void patchOverAFigure(PDDocument document) {
        COSDictionary patch = new COSDictionary();
        patch.setItem(COSName.TYPE, COSName.ANNOT);
        patch.setName(COSName.SUBTYPE, "FreeText");
        patch.setItem(COSName.RECT, new PDRectangle(100, 400, 80, 12).getCOSArray());
        patch.setString(COSName.CONTENTS, "63.985");
        patch.setString(COSName.DA, "0 g /Helv 8 Tf");
        COSArray annotations = new COSArray();
        COSArray before = document.getPage(0).getCOSObject().getCOSArray(COSName.ANNOTS);
        for (int i = 0; before != null && i < before.size(); i++) {
            annotations.add(before.get(i));
        }
        annotations.add(patch);
        document.getPage(0).getCOSObject().setItem(COSName.ANNOTS, annotations);
        document.getPage(0).getCOSObject().setNeedToBeUpdated(true);
    }

    private static void carriedFileReplaced(PDDocument document) throws IOException {
        var files = document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
        var readings = files.entrySet().stream()
                .filter(each -> each.getKey().startsWith("readings-01"))
                .findFirst()
                .orElseThrow()
                .getValue();
        COSStream stream = readings.getEmbeddedFile().getCOSObject();
        String text = new String(readings.getEmbeddedFile().toByteArray(), StandardCharsets.UTF_8);
        try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
            out.write(text.replace("63.994", "63.985").getBytes(StandardCharsets.UTF_8));
        }
        stream.setNeedToBeUpdated(true);
    }

    private static PDSignatureField field(PDDocument document, int place) {
        return (PDSignatureField)
                document.getDocumentCatalog().getAcroForm(null).getFields().get(place);
    }

    /** Ink in the picture of a field that nobody signed. */
    private static void emptyLineDrawnAsIfSigned(PDDocument document) throws IOException {
        PDAnnotationWidget widget = field(document, 1).getWidgets().get(0);
        PDAppearanceStream shown = new PDAppearanceStream(document);
        shown.setBBox(new PDRectangle(100, 20));
        try (OutputStream out = shown.getCOSObject().createOutputStream()) {
            out.write("0 0 1 rg 5 5 50 8 re f".getBytes(StandardCharsets.US_ASCII));
        }
        PDAppearanceDictionary appearance = new PDAppearanceDictionary();
        appearance.setNormalAppearance(shown);
        widget.setAppearance(appearance);
        widget.getCOSObject().setNeedToBeUpdated(true);
    }

    private static void signatureMovedElsewhere(PDDocument document) {
        PDAnnotationWidget widget = field(document, 0).getWidgets().get(0);
        widget.setRectangle(new PDRectangle(50, 50, 400, 100));
        widget.getCOSObject().setNeedToBeUpdated(true);
    }

    private static byte[] appended(byte[] file, Change change) throws IOException {
        try (PDDocument document = Loader.loadPDF(file)) {
            change.of(document);
            document.getDocumentCatalog().getCOSObject().setNeedToBeUpdated(true);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.saveIncremental(out);
            return out.toByteArray();
        }
    }

    private static Samples.Run run(String... arguments) {
        Samples.Run run = Samples.run(arguments);
        assertThat(run.err()).doesNotContain("Exception").doesNotContain("fault in the program");
        return run;
    }

    /** What is said of a sheet that must not be accepted. */
    private static String notAccepted(Path sheet) {
        Samples.Run run = run("verify", sheet.toString());
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        return run.out();
    }

    @ParameterizedTest
    @MethodSource("changes")
    void verify_somethingAppendedToASignedSheet_isNamed(String named, Change change) throws IOException {
        Path sheet = Files.write(folder.resolve("after.pdf"), appended(signed, change));
        assertThat(notAccepted(sheet))
                .contains("Something else than signatures was changed after the sheet was made")
                .contains(named)
                .contains("were appended after the last signature and are signed by nobody");
        Path out = folder.resolve("countersigned.pdf");
        Samples.Run countersigned = run("countersign", sheet.toString(), "--sign", "key.p12", "--out", out.toString());
        assertThat(countersigned.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(countersigned.err()).contains("was not signed, because it does not hold");
        assertThat(out).doesNotExist();
    }

    @ParameterizedTest
    @MethodSource("changes")
    void verify_somethingAppendedToAnUnsignedSheet_isNamed(String named, Change change) throws IOException {
        Path sheet = Files.write(folder.resolve("after.pdf"), appended(unsigned, change));
        assertThat(notAccepted(sheet)).contains("appended after the sheet was made");
    }

    /** Whoever covers his own change with a true signature of his own is found out by what the change is. */
    @ParameterizedTest
    @MethodSource("changes")
    void verify_aChangeThatIsSignedOver_isNamed(String named, Change change)
            throws GeneralSecurityException, IOException {
        byte[] over = Signer.sign(
                appended(signed, change),
                Keys.selfSigned("EC", 256, "CN=C. Forger").opened(),
                Optional.empty(),
                Keys.DAY);
        Samples.Run run =
                run("verify", Files.write(folder.resolve("over.pdf"), over).toString());
        if (run.code() == ExitCodes.ACCEPTED) {
            // The forged ink in the empty line is gone: the forger's own name stands there now.
            assertThat(run.out()).contains("C. Forger").contains("Its visible block shows the name");
            assertThat(named).isEqualTo("a field or link on page 1");
            return;
        }
        assertThat(run.out())
                .contains("Something else than signatures was changed after the sheet was made")
                .contains(named);
    }

    /** One byte in each region of the file; the place is told in words. */
    @Test
    void verify_oneByteInEachRegion_isToldInWords() throws IOException {
        String text = new String(unsigned, StandardCharsets.ISO_8859_1);
        for (List<String> region : List.of(
                List.of("%PDF-1.7\n%", "in the head of the file"),
                List.of("/CreationDate(D:2", "in object"),
                List.of("/EmbeddedFile", "a file that the sheet carries"),
                List.of("/FontFile2 ", "in object"),
                List.of("/Outlines ", "in object"),
                List.of("\nxref\n0 ", "in the table of objects"),
                List.of("startxref\n", "in the trailer"))) {
            int place = text.lastIndexOf(region.get(0)) + region.get(0).length() - 1;
            assertThat(place).as(region.get(0)).isGreaterThan(0);
            byte[] changed = unsigned.clone();
            changed[place] ^= 0x01;
            Samples.Run run = run(
                    "verify", Files.write(folder.resolve("byte.pdf"), changed).toString());
            assertThat(run.code()).as(region.get(0)).isIn(ExitCodes.NOT_ACCEPTED, ExitCodes.INPUT);
            if (run.code() == ExitCodes.NOT_ACCEPTED) {
                assertThat(run.out()).as(region.get(0)).contains(region.get(1));
            } else {
                assertThat(run.err()).contains("its bytes are not those that were written when the sheet was made");
            }
        }
    }
}
