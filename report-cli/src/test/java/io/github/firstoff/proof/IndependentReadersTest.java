package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.bouncycastle.asn1.ASN1InputStream;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/**
 * Programs that know nothing of this one read its sheets: poppler's pdfsig, qpdf, OpenSSL, veraPDF. A program that is not installed makes its
 * check be skipped, and the skipped check says which.
 */
class IndependentReadersTest {
    @TempDir
    private static Path folder;

    /** A sample in a language. */
    record Spoken(Samples.Made sample, String language) {}

    static Stream<Spoken> inBothLanguages() {
        return Samples.everyKind()
                .flatMap(sample -> Stream.of("en", "de").map(language -> new Spoken(sample, language)));
    }

    static Stream<Spoken> oneOfEachKind() {
        Set<String> kinds = new HashSet<>();
        return Samples.everyKind()
                .filter(sample -> !sample.toString().contains("2207")
                        && !sample.toString().contains("2208"))
                .filter(sample -> kinds.add(sample.command()))
                .map(sample -> new Spoken(sample, kinds.size() % 2 == 0 ? "de" : "en"));
    }

    private static Optional<byte[]> made(Spoken sheet) throws IOException {
        Path pdf = folder.resolve("made.pdf");
        Files.deleteIfExists(pdf);
        sheet.sample().make(pdf, "--language", sheet.language());
        return Files.exists(pdf) ? Optional.of(Files.readAllBytes(pdf)) : Optional.empty();
    }

    /** What a program says of a file and how it ends; skips the test where it is not installed. */
    private static String said(int code, String... command) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder(command).redirectErrorStream(true).start();
        } catch (IOException absent) {
            Assumptions.abort("not checked, because " + command[0] + " is not installed");
            throw absent;
        }
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isEqualTo(code);
        return said;
    }

    @ParameterizedTest
    @MethodSource("oneOfEachKind")
    void oneSheetOfEachKind_holdsInOtherPrograms(Spoken sheet) throws Exception {
        holdsInOtherPrograms(sheet, "EC", 256);
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("inBothLanguages")
    void everySheet_holdsInOtherPrograms(Spoken sheet) throws Exception {
        holdsInOtherPrograms(sheet, "RSA", 2048);
        holdsInOtherPrograms(sheet, "EC", 384);
    }

    private static void holdsInOtherPrograms(Spoken sheet, String kind, int size) throws Exception {
        Optional<byte[]> made = made(sheet);
        if (made.isEmpty()) {
            assertThat(sheet.sample().command()).isEqualTo("certificate");
            return;
        }
        assertThat(ArchiveFormat.departures(made.get(), PDFAFlavour.PDFA_3_A)).isEmpty();
        assertThat(ArchiveFormat.departures(made.get(), PDFAFlavour.PDFUA_1)).isEmpty();
        Keys.Made quill = Keys.selfSigned(kind, size, "CN=A. Quill,O=Hollin Quay Deck Gear");
        Keys.Made marrow = Keys.issuedInTwoSteps("CN=B. Marrow,O=Hollin Quay Deck Gear");
        byte[] once = Signer.sign(made.get(), quill.opened(), Optional.of("inspector"), Keys.DAY);
        byte[] twice = Signer.sign(once, marrow.opened(), Optional.empty(), Keys.DAY.plusSeconds(60));
        assertThat(ArchiveFormat.departures(twice, PDFAFlavour.PDFA_3_A)).isEmpty();
        isBaseline(twice);

        Path unsigned = Files.write(folder.resolve("unsigned.pdf"), made.get());
        Path signed = Files.write(folder.resolve("signed.pdf"), twice);
        said(0, "qpdf", "--check", unsigned.toString());
        assertThat(said(0, "qpdf", "--check", signed.toString())).contains("No syntax or stream encoding errors found");
        String said = said(0, "pdfsig", "-nocert", signed.toString());
        assertThat(said)
                .containsSubsequence(
                        "A. Quill", "Signature is Valid", "B. Marrow", "Total document signed", "Signature is Valid")
                .doesNotContain("Invalid");
        openssl(twice, List.of(quill.chain[0].getEncoded(), marrow.chain[2].getEncoded()));
    }

    /** OpenSSL over the bytes and the signature as they are cut out of the file, with the certificates that are trusted. */
    private static void openssl(byte[] file, List<byte[]> trusted)
            throws IOException, InterruptedException, GeneralSecurityException {
        StringBuilder pem = new StringBuilder();
        for (byte[] each : trusted) {
            pem.append("-----BEGIN CERTIFICATE-----\n")
                    .append(Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(each))
                    .append("\n-----END CERTIFICATE-----\n");
        }
        Path anchors = Files.writeString(folder.resolve("trusted.pem"), pem);
        for (PDSignature signature : signatures(file)) {
            Path content = Files.write(folder.resolve("content"), signature.getSignedContent(file));
            Path cms = Files.write(folder.resolve("cms.der"), der(signature));
            assertThat(opensslVerify(
                            0,
                            cms,
                            content,
                            "-CAfile",
                            anchors.toString(),
                            "-purpose",
                            "any",
                            "-cades",
                            "-attime",
                            Long.toString(Keys.DAY.getEpochSecond())))
                    .containsIgnoringCase("verification successful");
            byte[] wrong = Files.readAllBytes(content);
            wrong[wrong.length / 2] ^= 1;
            Files.write(content, wrong);
            // The same check finds one changed bit: it is no check that cannot fail.
            assertThat(opensslVerify(4, cms, content, "-noverify")).containsIgnoringCase("verification failure");
        }
    }

    private static String opensslVerify(int code, Path cms, Path content, String... how)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                "openssl",
                "cms",
                "-verify",
                "-binary",
                "-inform",
                "DER",
                "-in",
                cms.toString(),
                "-content",
                content.toString()));
        command.addAll(List.of(how));
        command.addAll(List.of("-out", folder.resolve("out").toString()));
        return said(code, command.toArray(String[]::new));
    }

    private static List<PDSignature> signatures(byte[] file) throws IOException {
        try (PDDocument document = Loader.loadPDF(file)) {
            return document.getSignatureDictionaries();
        }
    }

    private static byte[] der(PDSignature signature) throws IOException {
        try (ASN1InputStream in = new ASN1InputStream(signature.getContents())) {
            return in.readObject().getEncoded();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"RSA 2048", "RSA 4096", "EC 256", "EC 384", "EC 521"})
    void signature_ofEveryKindOfKey_isABaselineSignature(String kind) throws Exception {
        String[] words = kind.split(" ", 2);
        byte[] sheet = made(new Spoken(new Samples.Sample("first-article", "hq-045", "first-article-hq-045"), "en"))
                .orElseThrow();
        Keys.Made key = Keys.selfSigned(words[0], Integer.parseInt(words[1]), "CN=A. Quill");
        byte[] signed = Signer.sign(sheet, key.opened(), Optional.empty(), Keys.DAY);
        isBaseline(signed);
        openssl(signed, List.of(key.chain[0].getEncoded()));
    }

    /**
     * ETSI EN 319 142-1, 6.3, table 1 (from memory), level B-B: content-type is id-data, message-digest and signing-certificate-v2 are there, each attribute has
     * one value, signing-time is not there, the digest of the signed attributes is that of the signature, the sub-filter is ETSI.CAdES.detached,
     * Cert is not used, M states the time, and the byte range covers everything but Contents.
     */
    private static void isBaseline(byte[] file) throws Exception {
        for (PDSignature signature : signatures(file)) {
            int[] range = signature.getByteRange();
            assertThat(range).hasSize(4);
            assertThat(range[0]).isZero();
            assertThat((char) file[range[1]]).isEqualTo('<');
            assertThat((char) file[range[2] - 1]).isEqualTo('>');
            assertThat(new String(file, range[1] + 1, range[2] - range[1] - 2, StandardCharsets.US_ASCII))
                    .matches("[0-9A-F]+");
            int end = range[2] + range[3];
            assertThat(new String(file, end - 6, 6, StandardCharsets.US_ASCII)).contains("%%EOF");
            assertThat(signature.getSubFilter()).isEqualTo("ETSI.CAdES.detached");
            assertThat(signature.getFilter()).isEqualTo("Adobe.PPKLite");
            assertThat(signature.getCOSObject().containsKey("Cert")).isFalse();
            assertThat(signature.getSignDate()).isNotNull();
            CMSSignedData cms = new CMSSignedData(der(signature));
            assertThat(cms.isDetachedSignature()).isTrue();
            assertThat(cms.getSignerInfos().size()).isEqualTo(1);
            SignerInformation signer =
                    cms.getSignerInfos().getSigners().iterator().next();
            List<ASN1ObjectIdentifier> kinds = new ArrayList<>();
            for (Attribute attribute :
                    signer.getSignedAttributes().toASN1Structure().getAttributes()) {
                kinds.add(attribute.getAttrType());
                assertThat(attribute.getAttrValues().size()).isEqualTo(1);
            }
            assertThat(kinds)
                    .doesNotHaveDuplicates()
                    .contains(
                            CMSAttributes.contentType,
                            CMSAttributes.messageDigest,
                            PKCSObjectIdentifiers.id_aa_signingCertificateV2)
                    .doesNotContain(CMSAttributes.signingTime, PKCSObjectIdentifiers.id_aa_signingCertificate);
            assertThat(signer.getSignedAttributes()
                            .get(CMSAttributes.contentType)
                            .getAttributeValues()[0])
                    .isEqualTo(CMSObjectIdentifiers.data);
            assertThat(signer.getUnsignedAttributes()).isNull();
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            all.write(signature.getSignedContent(file));
            assertThat(all.size()).isEqualTo(end - (range[2] - range[1]));
        }
    }
}
