package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Signatures hold in the eyes of others: a CMS library fed by hand, the archive validator, and pdfsig where it is installed. */
class SignedSheetTest {
    @TempDir
    private static Path folder;

    private static Keys.Made quill;
    private static Keys.Made marrow;
    private static byte[] unsigned;
    private static byte[] signed;
    private static byte[] countersigned;

    @BeforeAll
    static void makeSheets() throws GeneralSecurityException, IOException {
        quill = Keys.selfSigned("RSA", 2048, "CN=A. Quill,O=Hollin Quay Deck Gear");
        marrow = Keys.issued("CN=B. Marrow,T=quality manager,O=Hollin Quay Deck Gear", "CN=Hollin Quay authority");
        Path pdf = folder.resolve("unsigned.pdf");
        Samples.batch().make(pdf);
        unsigned = Files.readAllBytes(pdf);
        signed = Signer.sign(unsigned, quill.opened(), Optional.of("inspector"), Keys.DAY);
        countersigned = Signer.sign(signed, marrow.opened(), marrow.opened().position(), Keys.DAY.plusSeconds(60));
    }

    private static List<SignatureReport> reports(byte[] file, TrustedCertificates trusted) {
        return SignatureCheck.of(SheetFile.read("sheet.pdf", file), trusted);
    }

    @Test
    void sign_appends_andLeavesWhatWasThere() {
        assertThat(Arrays.copyOf(signed, unsigned.length)).isEqualTo(unsigned);
        assertThat(Arrays.copyOf(countersigned, signed.length)).isEqualTo(signed);
    }

    @ParameterizedTest
    @ValueSource(strings = {"RSA 2048", "RSA 3072", "RSA 4096", "EC 256", "EC 384", "EC 521"})
    void sign_twice_givesTheSameBytes(String kind) throws GeneralSecurityException, IOException {
        String[] words = kind.split(" ", 2);
        SigningKey key = Keys.selfSigned(words[0], Integer.parseInt(words[1]), "CN=A. Quill")
                .opened();
        byte[] once = Signer.sign(unsigned, key, Optional.empty(), Keys.DAY);
        assertThat(Signer.sign(unsigned, key, Optional.empty(), Keys.DAY)).isEqualTo(once);
        assertThat(reports(once, TrustedCertificates.notGiven()))
                .singleElement()
                .matches(SignatureReport::holds);
    }

    /** ISO 19005-3, level A, of a sample of each kind, signed and countersigned. */
    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#oneOfEachKind")
    void sign_oneOfEachKind_staysAnArchive(Samples.Made sample) throws GeneralSecurityException, IOException {
        assertThat(staysAnArchive(sample)).isTrue();
    }

    /** ISO 19005-3, level A, of every sample, signed and countersigned. */
    @Tag("slow")
    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#everyKind")
    void sign_everySample_staysAnArchive(Samples.Made sample) throws GeneralSecurityException, IOException {
        staysAnArchive(sample);
    }

    /**
     * Makes the sheet, signs it twice and checks it each time.
     *
     * @return whether there is a sheet: a certificate may be refused; that it was refused is tested with what sheets carry
     */
    private static boolean staysAnArchive(Samples.Made sample) throws GeneralSecurityException, IOException {
        Path pdf = Files.createTempFile(folder, "sheet", ".pdf");
        Files.delete(pdf);
        sample.make(pdf);
        if (!Files.exists(pdf)) {
            return false;
        }
        byte[] once = Signer.sign(Files.readAllBytes(pdf), quill.opened(), Optional.of("inspector"), Keys.DAY);
        assertThat(ArchiveFormat.departures(once, PDFAFlavour.PDFA_3_A)).isEmpty();
        byte[] twice = Signer.sign(once, marrow.opened(), Optional.empty(), Keys.DAY);
        assertThat(ArchiveFormat.departures(twice, PDFAFlavour.PDFA_3_A)).isEmpty();
        assertThat(reports(twice, TrustedCertificates.notGiven())).hasSize(2).allMatch(SignatureReport::holds);
        assertThat(Arrays.copyOf(twice, once.length)).isEqualTo(once);
        SigningKey third = marrow.opened();
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> Signer.sign(twice, third, Optional.empty(), Keys.DAY))
                .withMessageContaining("every line to sign on is signed");
        return true;
    }

    /** RFC 5652 and ETSI EN 319 142-1, 6.3, with nothing of our own between the bytes and the CMS library. */
    @Test
    void signature_fedByHandToTheCmsLibrary_isAPadesBaselineSignature() throws Exception {
        List<PDSignature> signatures;
        try (PDDocument document = Loader.loadPDF(countersigned)) {
            signatures = document.getSignatureDictionaries();
        }
        assertThat(signatures).hasSize(2);
        for (PDSignature signature : signatures) {
            int[] range = signature.getByteRange();
            ByteArrayOutputStream content = new ByteArrayOutputStream();
            content.write(countersigned, range[0], range[1]);
            content.write(countersigned, range[2], range[3]);
            CMSSignedData cms = new CMSSignedData(
                    new CMSProcessableByteArray(content.toByteArray()),
                    ASN1Primitive.fromByteArray(trimmed(signature.getContents()))
                            .getEncoded());
            SignerInformation signer =
                    cms.getSignerInfos().getSigners().iterator().next();
            X509CertificateHolder certificate = cms.getCertificates().getMatches(null).stream()
                    .filter(each -> signer.getSID().match(each))
                    .findFirst()
                    .orElseThrow();
            assertThat(signer.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate)))
                    .isTrue();
            AttributeTable attributes = signer.getSignedAttributes();
            assertThat(attributes.get(CMSAttributes.signingTime)).isNull();
            assertThat(attributes.get(CMSAttributes.contentType)).isNotNull();
            assertThat(attributes.get(CMSAttributes.messageDigest)).isNotNull();
            SigningCertificateV2 bound =
                    SigningCertificateV2.getInstance(attributes.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2)
                            .getAttributeValues()[0]);
            assertThat(bound.getCerts()[0].getCertHash())
                    .isEqualTo(MessageDigest.getInstance("SHA-256").digest(certificate.getEncoded()));
            assertThat(signature.getSubFilter()).isEqualTo("ETSI.CAdES.detached");
            assertThat(signature.getSignDate()).isNotNull();
            assertThat(signature.getCOSObject().containsKey("Cert")).isFalse();
        }
    }

    /** The DER object alone, without the zeros behind it. */
    private static byte[] trimmed(byte[] contents) throws IOException {
        try (org.bouncycastle.asn1.ASN1InputStream in = new org.bouncycastle.asn1.ASN1InputStream(contents)) {
            return in.readObject().getEncoded();
        }
    }

    @Test
    void check_bothSignatures_tellsWhoWhenAndWhatEachCovers() throws GeneralSecurityException, IOException {
        List<SignatureReport> reports = reports(countersigned, TrustedCertificates.notGiven());
        assertThat(reports).extracting(SignatureReport::role).containsExactly("Inspected by", "Approved by");
        assertThat(reports)
                .flatExtracting(report -> report.signer().stream().toList())
                .containsExactly("A. Quill", "B. Marrow");
        assertThat(reports).extracting(SignatureReport::wholeFile).containsExactly(false, true);
        assertThat(reports).allMatch(SignatureReport::holds);
        assertThat(reports.get(0).claimedTime()).contains(Keys.DAY);
    }

    @Test
    void check_withTrustedCertificates_tellsTheirChainFromOthers() throws GeneralSecurityException, IOException {
        TrustedCertificates authority = new TrustedCertificates(List.of(marrow.chain[1]));
        List<SignatureReport> reports = reports(countersigned, authority);
        assertThat(reports.get(0).trusted()).contains(false);
        assertThat(reports.get(0).holds()).isFalse();
        assertThat(reports.get(1).trusted()).contains(true);
        assertThat(reports.get(1).holds()).isTrue();
        TrustedCertificates both = new TrustedCertificates(List.of(marrow.chain[1], quill.chain[0]));
        assertThat(reports(countersigned, both)).allMatch(SignatureReport::holds);
    }

    @Test
    void sign_anEncryptedFileOrOneThatIsNoSheet_isRefused() throws GeneralSecurityException, IOException {
        SigningKey key = quill.opened();
        byte[] encrypted;
        byte[] blank;
        try (PDDocument document = Loader.loadPDF(unsigned)) {
            document.protect(new StandardProtectionPolicy("owner", "", new AccessPermission()));
            encrypted = saved(document);
        }
        try (PDDocument document = new PDDocument()) {
            document.addPage(new org.apache.pdfbox.pdmodel.PDPage());
            blank = saved(document);
        }
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> Signer.sign(encrypted, key, Optional.empty(), Keys.DAY))
                .withMessageContaining("encrypted");
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> SheetFile.read("other.pdf", encrypted))
                .withMessageContaining("encrypted");
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> Signer.sign(blank, key, Optional.empty(), Keys.DAY))
                .withMessageContaining("no line to sign on");
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> SheetFile.read("other.pdf", blank))
                .withMessageContaining("carries no result of this program");
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> SheetFile.read("text.pdf", "no sheet".getBytes(StandardCharsets.UTF_8)))
                .withMessageContaining("cannot be read as a sheet");
    }

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    /** Every digit of a signature, of the zeros behind it as many again. */
    @Tag("slow")
    @Test
    void check_anyDigitOfASignatureChanged_isFound() throws IOException {
        int[] range;
        try (PDDocument document = Loader.loadPDF(signed)) {
            range = document.getSignatureDictionaries().get(0).getByteRange();
        }
        List<Integer> unfound = new ArrayList<>();
        for (int place = range[1]; place < range[1] + 5000; place++) {
            byte[] changed = signed.clone();
            changed[place] ^= 0x01;
            try {
                List<SignatureReport> reports = reports(changed, TrustedCertificates.notGiven());
                if (!reports.isEmpty() && reports.stream().allMatch(SignatureReport::holds)) {
                    unfound.add(place - range[1]);
                }
            } catch (ProofRefused refused) {
                assertThat(refused.getMessage()).isNotBlank();
            }
        }
        assertThat(unfound).isEmpty();
    }

    /** Poppler's pdfsig as an independent reader; where it is not installed, this says so by being skipped. */
    @Test
    void pdfsig_whereInstalled_agrees() throws IOException, InterruptedException {
        String said = said("pdfsig", "-nocert", written("countersigned.pdf").toString());
        assertThat(said).containsSubsequence("Signature is Valid", "Total document signed", "Signature is Valid");
        assertThat(said).contains("ETSI.CAdES.detached").contains("A. Quill").contains("B. Marrow");
    }

    /** qpdf as an independent reader of the file's structure; skipped where it is not installed. */
    @Test
    void qpdf_whereInstalled_findsNoFault() throws IOException, InterruptedException {
        assertThat(said("qpdf", "--check", written("countersigned.pdf").toString()))
                .contains("No syntax or stream encoding errors found");
    }

    private static Path written(String name) throws IOException {
        return Files.write(folder.resolve(name), countersigned);
    }

    private static String said(String... command) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder(new ArrayList<>(List.of(command)))
                    .redirectErrorStream(true)
                    .start();
        } catch (IOException absent) {
            Assumptions.abort(command[0] + " is not installed");
            throw absent;
        }
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return said;
    }
}
