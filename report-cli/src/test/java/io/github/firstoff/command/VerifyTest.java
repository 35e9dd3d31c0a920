package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.proof.Keys;
import io.github.firstoff.proof.Samples;
import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.proof.Signer;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.pdf.PdfRenderer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code firstoff verify}: what is sound holds, and whatever is changed is found and named. */
class VerifyTest {
    @TempDir
    private static Path folder;

    private static byte[] unsigned;
    private static byte[] batch;
    private static byte[] signed;
    private static byte[] countersigned;

    @BeforeAll
    static void makeSheets() throws GeneralSecurityException, IOException {
        batch = made(Samples.batch());
        unsigned = made(new Samples.Sample("first-article", "hq-310-p", "first-article-rejected"));
        signed = Signer.sign(
                unsigned, Keys.selfSigned("RSA", 2048, "CN=A. Quill").opened(), Optional.of("inspector"), Keys.DAY);
        countersigned =
                Signer.sign(signed, Keys.selfSigned("EC", 256, "CN=B. Marrow").opened(), Optional.empty(), Keys.DAY);
    }

    private static byte[] made(Samples.Made sample) throws IOException {
        Path pdf = folder.resolve("made.pdf");
        sample.make(pdf);
        return Files.readAllBytes(pdf);
    }

    private static Samples.Run verify(byte[] file, String... more) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(
                "verify", Files.write(folder.resolve("checked.pdf"), file).toString()));
        arguments.addAll(List.of(more));
        Samples.Run run = Samples.run(arguments.toArray(String[]::new));
        assertThat(run.err()).doesNotContain("Exception").doesNotContain("fault in the program");
        return run;
    }

    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#everyKind")
    void verify_everySample_holds(Samples.Made sample) throws IOException {
        Path pdf = Files.createTempDirectory(folder, "sample").resolve("sheet.pdf");
        sample.make(pdf);
        if (!Files.exists(pdf)) {
            return; // a refused certificate makes no sheet
        }
        Samples.Run run = verify(Files.readAllBytes(pdf));
        assertThat(run.out()).contains("Everything that was checked holds").contains("It is not signed");
        assertThat(run.code()).isZero();
    }

    @Test
    void verify_signedAndCountersigned_holdsAndSaysWhatWasNotChecked() throws IOException {
        Samples.Run run = verify(countersigned);
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out())
                .contains("A. Quill")
                .contains("B. Marrow")
                .contains("It covers the whole file")
                .contains("self-signed")
                .contains("Whether to trust it was not checked");
    }

    @Test
    void verify_asJson_saysTheSame() throws IOException {
        JsonNode json =
                new ObjectMapper().readTree(verify(countersigned, "--json").out());
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("..", "docs", "schemas", "verify.schema.json")))
                        .validate(json.toString(), InputFormat.JSON))
                .isEmpty();
        assertThat(json.get("holds").asBoolean()).isTrue();
        assertThat(json.get("signatures")).hasSize(2);
        assertThat(json.get("signatures").get(1).get("signer").asText()).isEqualTo("B. Marrow");
        assertThat(json.findValuesAsText("holds"))
                .contains("holds", "not checked")
                .doesNotContain("does not hold");
    }

    // ------------------------------------------------------------------ one changed byte

    /** The regions of a sheet's file, each found by a mark that stands in it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "%PDF-1.",
                "/Type/Catalog",
                "/EmbeddedFile",
                "/FontFile2",
                "/ActualText",
                "/Contents",
                "<pdfaid:part>",
                "/ToUnicode",
                "firstoff-seal-1 length",
                "/CreationDate",
                "/Outlines",
                "xref",
                "trailer",
                "startxref",
                "%%EOF"
            })
    void verify_oneByteChangedBesideAMark_isFound(String mark) throws IOException {
        int place = new String(unsigned, StandardCharsets.ISO_8859_1).lastIndexOf(mark);
        if (place < 0) {
            // Marks inside packed streams do not show; what is there is reached by the streams below.
            assertThat(mark).isIn("/ActualText");
            return;
        }
        found(unsigned, place + mark.length() / 2);
        found(unsigned, Math.min(place + mark.length() + 3, unsigned.length - 1));
    }

    /** Every packed stream of the file: drawing, typefaces, pictures, carried files. */
    @Test
    void verify_oneByteChangedInEachStream_isFound() throws IOException {
        String text = new String(unsigned, StandardCharsets.ISO_8859_1);
        int count = 0;
        for (int at = text.indexOf("stream\n"); at >= 0; at = text.indexOf("stream\n", at + 1)) {
            if (!text.startsWith("end", at - 3)) {
                int end = text.indexOf("endstream", at);
                found(unsigned, (at + end) / 2);
                count++;
            }
        }
        assertThat(count).isGreaterThan(10);
    }

    /** Places by chance (seed 20261125), and every kind of change at the same place in the signed parts. */
    @Test
    void verify_oneByteChangedSomewhereInASignedSheet_isFound() throws IOException {
        Random random = new Random(20261125);
        for (int i = 0; i < 12; i++) {
            found(countersigned, random.nextInt(countersigned.length));
        }
        for (int i = 0; i < 6; i++) {
            found(countersigned, unsigned.length + random.nextInt(countersigned.length - unsigned.length));
        }
    }

    /** Every byte of both signatures, the zeros behind them, and the brackets around them. */
    @Test
    void verify_oneByteChangedInASignature_isFound() throws IOException {
        TreeSet<Integer> places = new TreeSet<>();
        try (PDDocument document = Loader.loadPDF(countersigned)) {
            for (PDSignature signature : document.getSignatureDictionaries()) {
                int[] range = signature.getByteRange();
                for (int at = range[1]; at < range[1] + 3400; at += 211) {
                    places.add(at);
                }
                places.add(range[2] - 1);
                places.add(range[2] - 40);
            }
        }
        for (int place : places) {
            found(countersigned, place);
        }
    }

    @Test
    void verify_bytesAppended_areFound() throws IOException {
        for (byte[] file : List.of(unsigned, signed, countersigned)) {
            byte[] longer = Arrays.copyOf(file, file.length + 1);
            longer[file.length] = '\n';
            Samples.Run run = verify(longer);
            assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
            assertThat(run.out()).contains("1 bytes were appended after");
        }
    }

    @Test
    void verify_bytesCutOff_isFound() throws IOException {
        for (byte[] file : List.of(unsigned, countersigned)) {
            Samples.Run run = verify(Arrays.copyOf(file, file.length - 100));
            assertThat(run.code()).isIn(ExitCodes.NOT_ACCEPTED, ExitCodes.INPUT);
        }
    }

    private static void found(byte[] file, int place) throws IOException {
        byte[] changed = file.clone();
        changed[place] ^= 0x01;
        Samples.Run run = verify(changed);
        assertThat(run.code())
                .as("byte " + place + " of " + file.length + ": " + run.out())
                .isIn(ExitCodes.NOT_ACCEPTED, ExitCodes.INPUT);
    }

    // ------------------------------------------------------------------ a sheet that was made to lie

    /** A whole sheet, its bytes sealed, that carries and prints what a forger wants. */
    private static byte[] forged(
            byte[] file, String attachment, UnaryOperator<String> change, UnaryOperator<ReportModel> printed)
            throws IOException {
        SheetFile sheet = SheetFile.read("sheet.pdf", file);
        CarriedShelf shelf = new CarriedShelf(sheet);
        MadeSheet again = SheetRecipes.of(sheet.manifest().command())
                .orElseThrow()
                .make(Ingredients.of(sheet.manifest()), shelf, sheet.manifest().madeAt());
        List<Attachment> attachments = new ArrayList<>();
        boolean changed = false;
        for (Attachment each :
                new SheetPress(again, shelf.kept(), sheet.manifest().options()).attachments()) {
            if (each.name().startsWith(attachment)) {
                String before = new String(each.bytes(), StandardCharsets.UTF_8);
                String after = change.apply(before);
                changed |= !after.equals(before);
                attachments.add(new Attachment(
                        each.name(),
                        each.mediaType(),
                        each.description(),
                        each.relationship(),
                        after.getBytes(StandardCharsets.UTF_8)));
            } else {
                attachments.add(each);
            }
        }
        ReportModel model = again.pages(Stationery.PLAIN);
        ReportModel shown = printed.apply(model);
        assertThat(changed || !shown.equals(model)).as("something was forged").isTrue();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PdfRenderer().render(shown, attachments, out);
        return out.toByteArray();
    }

    private static byte[] forged(byte[] file, String attachment, UnaryOperator<String> change) throws IOException {
        return forged(file, attachment, change, model -> model);
    }

    @Test
    void verify_oneReadingChangedInside_namesCharacteristicPieceAndFigures() throws IOException {
        String csv = Files.readString(Samples.FOLDER.resolve("batch-2207.csv"));
        String[] rows = csv.split("\n", -1);
        String[] heading = rows[0].strip().split(",", -1);
        int value = Arrays.asList(heading).indexOf("value");
        String[] row = rows[40].strip().split(",", -1);
        String part = row[Arrays.asList(heading).indexOf("part")];
        String characteristic = row[Arrays.asList(heading).indexOf("characteristic")];
        String wrong = row[value].substring(0, row[value].length() - 1) + (row[value].endsWith("1") ? "2" : "1");
        String[] changed = row.clone();
        changed[value] = wrong;
        Samples.Run run = verify(
                forged(batch, "readings-01", text -> text.replace(String.join(",", row), String.join(",", changed))));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("readings-01-batch-2207.csv is not the file that was read")
                .contains(
                        "The sheet was made on characteristic " + characteristic + ", part " + part + ": " + row[value])
                .contains("what it carries says characteristic " + characteristic + ", part " + part + ": " + wrong);
    }

    @Test
    void verify_oneBoreChangedInsideAPressFit_namesThePieceAndItsSizes() throws IOException {
        List<String> rows = Files.readAllLines(Samples.FOLDER.resolve("pawl-bush-p.bores.csv"));
        List<String> heading = List.of(rows.get(0).split(",", -1));
        String[] row = rows.get(7).split(",", -1);
        String piece = row[heading.indexOf("part")];
        String size = row[heading.indexOf("value")];
        String wrong = size.substring(0, size.length() - 1) + (size.endsWith("1") ? "2" : "1");
        String[] changed = row.clone();
        changed[heading.indexOf("value")] = wrong;
        byte[] fit = made(Samples.pawlBush());
        assertThat(verify(fit).code()).isZero();
        Samples.Run run = verify(
                forged(fit, "readings-bores", text -> text.replace(String.join(",", row), String.join(",", changed))));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("readings-bores-pawl-bush-p.bores.csv is not the file that was read")
                .contains("The sheet was made on measured bore, piece " + piece + ": " + size + " mm")
                .contains("what it carries says measured bore, piece " + piece + ": " + wrong + " mm")
                .contains("Interference, mean is");
    }

    @Test
    void verify_oneReadingOfAMemberChangedInsideALoop_isNamed() throws IOException {
        byte[] stack = made(Samples.studies()
                .filter(each -> each.command().equals("stack"))
                .findFirst()
                .orElseThrow());
        Samples.Run run = verify(forged(stack, "stack-", text -> text.replaceFirst("\"9\\.598\"", "\"9.589\"")));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("stack-drum-play.stack.json is not the file that was read")
                .containsPattern("The sheet was made on member [a-z, ]+, reading \\d+: 9.598 mm; what it carries says")
                .contains("9.589 mm");
    }

    /** What the pages of studies say, and what their results say, is held against what their inputs come to. */
    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#studies")
    void verify_aStudyThatWasMadeToLie_isFound(Samples.Made sample) throws IOException {
        byte[] study = made(sample);
        Samples.Run result = verify(forged(
                study,
                "result.json",
                text -> text.replaceFirst("\"verdict\" : \"[a-z-]+\"", "\"verdict\" : \"forged\"")));
        assertThat(result.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(result.out()).contains("Verdict is");
        Samples.Run page = verify(forged(study, "none", text -> text, model -> {
            List<Block> blocks = new ArrayList<>(model.blocks());
            blocks.set(0, new Block.Headline(Text.of("All is well."), Tone.GOOD));
            return model.with(blocks);
        }));
        assertThat(page.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(page.out()).contains("Page 1 prints");
    }

    /** Studies of another version are checked by the figures that they print as they are. */
    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#studies")
    void verify_aStudyOfAnotherVersion_isCheckedByItsFigures(Samples.Made sample) throws IOException {
        UnaryOperator<String> older = text ->
                text.replace("\"program\" : \"" + ProgramVersion.text() + "\"", "\"program\" : \"firstoff 0.0.9\"");
        byte[] study = made(sample);
        Samples.Run run = verify(forged(study, "manifest.json", older));
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out()).containsPattern("All [1-9]\\d* figures of its result that it prints as they are");
        Samples.Run found = verify(forged(study, "manifest.json", older, model -> {
            return model.with(model.blocks().stream()
                    .filter(Block.SignOff.class::isInstance)
                    .toList());
        }));
        assertThat(found.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(found.out()).contains("was not found on its pages");
    }

    @Test
    void verify_aStudyOnAFirmsPaper_isMadeAgainOnIt() throws IOException {
        Path pdf = folder.resolve("letter.pdf");
        Samples.pawlBush()
                .make(
                        pdf,
                        "--paper",
                        "letter",
                        "--house",
                        Samples.FOLDER.resolve("hollin-quay.house.json").toString());
        Samples.Run run = verify(Files.readAllBytes(pdf));
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out()).contains("the same file to the last byte");
    }

    @Test
    void verify_oneVerdictChangedInTheResult_isNamed() throws IOException {
        Samples.Run run = verify(forged(
                unsigned,
                "result.json",
                text -> text.replaceFirst("\"verdict\" : \"rejected\"", "\"verdict\" : \"accepted\"")));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("Verdict is \u201Caccepted\u201D on the sheet and \u201Crejected\u201D when reckoned again");
    }

    @Test
    void verify_oneFigureChangedInTheResult_isNamed() throws IOException {
        Samples.Run run = verify(forged(
                batch, "result.json", text -> text.replaceFirst("\"upper\" : \"51.979\"", "\"upper\" : \"51.989\"")));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains(
                        "Characteristic 1, upper is \u201C51.989\u201D on the sheet and \u201C51.979\u201D when reckoned again");
    }

    @Test
    void verify_anotherVerdictPrintedThanTheDataSay_isNamed() throws IOException {
        byte[] lying = forged(unsigned, "none", text -> text, model -> {
            List<Block> blocks = new ArrayList<>(model.blocks());
            blocks.set(0, new Block.Headline(Text.of("Accepted: all characteristics conform."), Tone.GOOD));
            return new ReportModel(
                    model.paper(), model.kind(), model.number(), model.head(), model.foot(), model.document(), blocks);
        });
        Samples.Run run = verify(lying);
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("Page 1 prints \u201CAccepted: all characteristics conform.\u201D where its data say");
    }

    /** A true signature, and behind it a page that was drawn over: what a reader sees is not what was signed. */
    @Test
    void verify_aPageDrawnOverAfterSigning_isFound() throws IOException {
        byte[] over;
        try (PDDocument document = Loader.loadPDF(signed)) {
            try (PDPageContentStream ink = new PDPageContentStream(
                    document, document.getPage(0), PDPageContentStream.AppendMode.APPEND, true)) {
                ink.addRect(100, 600, 200, 40);
                ink.fill();
            }
            document.getPage(0).getCOSObject().setNeedToBeUpdated(true);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.saveIncremental(out);
            over = out.toByteArray();
        }
        Samples.Run run = verify(over);
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("bytes were appended after the last signature and are signed by nobody")
                .contains("Something else than signatures was changed after the sheet was made: the drawing of page 1");
    }

    @Test
    void verify_writtenAnewByAnotherProgram_isFound() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PDDocument document = Loader.loadPDF(unsigned)) {
            document.getDocumentInformation().setTitle("Another title");
            document.save(out);
        }
        Samples.Run run = verify(out.toByteArray());
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).containsAnyOf("The file has no seal", "are not those that were written");
        assertThat(run.out()).contains("the properties of the document");
    }

    /** A sheet of another version is checked by its figures, and the version is said. */
    @Test
    void verify_aSheetOfAnotherVersion_isCheckedByItsFigures() throws IOException {
        UnaryOperator<String> older = text ->
                text.replace("\"program\" : \"" + ProgramVersion.text() + "\"", "\"program\" : \"firstoff 0.0.9\"");
        Samples.Run run = verify(forged(batch, "manifest.json", older));
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out())
                .contains("The sheet was made by firstoff 0.0.9; this is " + ProgramVersion.text())
                .contains("come out the same")
                .contains("of its result that it prints as they are stand on its pages");
        byte[] wrong = forged(unsigned, "", text -> older.apply(text), model -> {
            List<Block> blocks = new ArrayList<>(model.blocks());
            blocks.removeIf(block -> block instanceof Block.Table);
            return new ReportModel(
                    model.paper(), model.kind(), model.number(), model.head(), model.foot(), model.document(), blocks);
        });
        Samples.Run found = verify(wrong);
        assertThat(found.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(found.out()).contains("was not found on its pages");
    }

    @Test
    void verify_whatIsNoSheet_isUnreadable() throws IOException {
        Samples.Run text = verify("no sheet".getBytes(StandardCharsets.UTF_8));
        assertThat(text.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(text.err()).contains("cannot be read as a sheet: it is no PDF file; expected a sheet");
        Samples.Run none = Samples.run("verify", folder.resolve("absent.pdf").toString());
        assertThat(none.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(none.err()).contains("there is no such file").doesNotContain("Exception");
    }

    // ------------------------------------------------------------------ the commands that sign

    @Test
    void sign_withoutAPassword_saysWhereItIsLookedFor() throws GeneralSecurityException, IOException {
        Path key = Files.write(folder.resolve("key.p12"), Keys.p12(Keys.selfSigned("EC", 256, "CN=A. Quill")));
        Path out = folder.resolve("not-signed.pdf");
        Samples.Run run = Samples.batch().make(out, "--sign", key.toString());
        if (System.getenv(SigningOptions.PASSWORD) == null) {
            assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
            assertThat(run.err()).contains(SigningOptions.PASSWORD);
        } else {
            assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
            assertThat(run.err()).contains("the password does not open the key");
        }
        assertThat(out).doesNotExist();
    }

    @Test
    void sign_withoutAPlaceToWriteTo_isAUsageError() {
        List<String> arguments = new ArrayList<>(Samples.batch().arguments());
        arguments.addAll(List.of("--sign", "key.p12"));
        Samples.Run run = Samples.run(arguments.toArray(String[]::new));
        assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
        assertThat(run.err().toLowerCase(Locale.ROOT)).contains("--out");
    }

    @Test
    void sign_overTheKey_isAUsageError() throws IOException {
        Path key = Files.write(folder.resolve("precious.p12"), new byte[] {1, 2, 3});
        Samples.Run run = Samples.batch().make(key, "--sign", key.toString());
        assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
        assertThat(run.err()).contains("would overwrite the key");
        assertThat(Files.readAllBytes(key)).containsExactly(1, 2, 3);
    }

    @Test
    void countersign_aChangedSheet_isRefused() throws IOException {
        byte[] changed = signed.clone();
        changed[unsigned.length / 2] ^= 0x01;
        Path sheet = Files.write(folder.resolve("changed.pdf"), changed);
        Path out = folder.resolve("countersigned.pdf");
        Samples.Run run = Samples.run("countersign", sheet.toString(), "--sign", "key.p12", "--out", out.toString());
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("was not signed").doesNotContain("Exception");
        assertThat(out).doesNotExist();
    }
}
