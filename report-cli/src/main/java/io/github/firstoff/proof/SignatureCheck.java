package io.github.firstoff.proof;

import io.github.firstoff.proof.Finding.Area;
import io.github.firstoff.words.Labels;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.InvalidAlgorithmParameterException;
import java.security.MessageDigest;
import java.security.cert.CertPathValidator;
import java.security.cert.CertPathValidatorException;
import java.security.cert.CertificateFactory;
import java.security.cert.PKIXParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1InputStream;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;

/** Checks every signature of a sheet: what it covers, whether it holds, whose it is, and what is not known of that. */
public final class SignatureCheck {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private static final Set<COSName> SUBFILTERS = Set.of(Signer.SUBFILTER, COSName.getPDFName("adbe.pkcs7.detached"));

    private final byte[] file;
    private final TrustedCertificates trusted;

    private SignatureCheck(byte[] file, TrustedCertificates trusted) {
        this.file = file;
        this.trusted = trusted;
    }

    /**
     * The signatures of a sheet, the first first.
     *
     * @param sheet the sheet
     * @param trusted whom the reader trusts
     */
    public static List<SignatureReport> of(SheetFile sheet, TrustedCertificates trusted) {
        SignatureCheck check = new SignatureCheck(sheet.bytes(), trusted);
        try (PDDocument document = Loader.loadPDF(sheet.bytes())) {
            List<Signed> signed = new ArrayList<>();
            PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
            if (form != null) {
                for (PDField field : form.getFieldTree()) {
                    if (field instanceof PDSignatureField place && place.getSignature() != null) {
                        signed.add(new Signed(place, place.getSignature()));
                    }
                }
            }
            signed.sort(Comparator.comparingLong(Signed::end));
            List<SignatureReport> reports = new ArrayList<>();
            for (int i = 0; i < signed.size(); i++) {
                long next = i + 1 < signed.size() ? signed.get(i + 1).end() : 0;
                reports.add(check.report(signed.get(i), next, Signer.language(document)));
            }
            return reports;
        } catch (IOException fault) {
            throw new ProofRefused("the signatures cannot be read: " + fault.getMessage(), fault);
        }
    }

    private record Signed(PDSignatureField field, PDSignature signature) {
        /** Behind the last byte that it covers. */
        long end() {
            int[] range = signature.getByteRange();
            return range == null || range.length != 4 ? 0 : (long) range[2] + range[3];
        }
    }

    private SignatureReport report(Signed signed, long next, Labels language) {
        List<Finding> findings = new ArrayList<>();
        String role = Signer.role(signed.field());
        Optional<Instant> time =
                Optional.ofNullable(signed.signature().getSignDate()).map(java.util.Calendar::toInstant);
        boolean whole = signed.end() == file.length;
        Optional<X509Certificate> signer = Optional.empty();
        Optional<Boolean> trust = Optional.empty();
        try {
            byte[] contents = container(signed.signature());
            Coverage coverage = coverage(signed.signature(), contents);
            CMSSignedData cms = parse(contents, coverage.content());
            SignerInformation information = onlySigner(cms);
            X509Certificate certificate = certificate(cms, information);
            signer = Optional.of(certificate);
            verify(information, certificate);
            findings.add(Finding.yes(
                    Area.SIGNATURE,
                    "The signature is that of " + SigningKey.holder(certificate) + "'s key over "
                            + coverage.content().length + " bytes."));
            findings.add(covered(coverage, whole, next));
            attributes(information, certificate, signed.signature(), findings);
            findings.addAll(validity(certificate, time));
            trust = trust(cms, certificate, time, findings);
            block(signed, certificate, time, language, findings);
        } catch (Broken broken) {
            findings.add(Finding.no(Area.SIGNATURE, broken.getMessage()));
        } catch (IllegalArgumentException | IllegalStateException | ClassCastException damaged) {
            // So the libraries answer parts of a structure that are not what they must be.
            findings.add(Finding.no(Area.SIGNATURE, "The signature cannot be read: it is damaged."));
        }
        return new SignatureReport(
                signed.field().getPartialName(),
                role,
                signer.map(SigningKey::holder),
                signer.map(SigningKey::issuer),
                time,
                whole,
                trust,
                findings);
    }

    /** Why a signature does not hold. */
    private static final class Broken extends Exception {
        private static final long serialVersionUID = 1L;

        Broken(String message) {
            super(message);
        }

        Broken(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** What a signature covers. */
    private static final class Coverage {
        private final byte[] content;
        private final long end;

        Coverage(byte[] content, long end) {
            this.content = content;
            this.end = end;
        }

        byte[] content() {
            return content;
        }
    }

    private static byte[] container(PDSignature signature) throws Broken {
        byte[] contents = signature.getContents();
        if (contents == null || contents.length == 0) {
            throw new Broken("The signature is empty.");
        }
        if (signature.getSubFilter() == null
                || SUBFILTERS.stream().noneMatch(each -> each.getName().equals(signature.getSubFilter()))) {
            throw new Broken(
                    "The signature is of the kind " + signature.getSubFilter() + ", which is not checked here.");
        }
        return contents;
    }

    /**
     * The bytes that are signed: all up to an end, but for the place of the signature itself, which holds nothing else: not a byte
     * may stand outside both.
     */
    private Coverage coverage(PDSignature signature, byte[] contents) throws Broken {
        int[] range = signature.getByteRange();
        if (range == null
                || range.length != 4
                || range[0] != 0
                || range[1] <= 0
                || range[2] <= range[1]
                || range[3] < 0) {
            throw new Broken("What the signature covers is not told as it should be.");
        }
        long end = (long) range[2] + range[3];
        if (end > file.length) {
            throw new Broken("The signature covers " + end + " bytes, but the file has only " + file.length + ".");
        }
        String hole = new String(file, range[1], range[2] - range[1], StandardCharsets.ISO_8859_1);
        String digits = HexFormat.of().withUpperCase().formatHex(contents);
        if (!hole.equals("<" + digits + ">") && !hole.equals("<" + digits.toLowerCase(Locale.ROOT) + ">")) {
            throw new Broken("Between the bytes that the signature covers stands something else than the signature.");
        }
        byte[] content = Arrays.copyOf(file, range[1] + range[3]);
        System.arraycopy(file, range[2], content, range[1], range[3]);
        return new Coverage(content, end);
    }

    private static CMSSignedData parse(byte[] contents, byte[] content) throws Broken {
        try (ASN1InputStream in = new ASN1InputStream(contents)) {
            ASN1Primitive object = in.readObject();
            byte[] encoded = object.getEncoded(ASN1Encoding.DER);
            byte[] padded = Arrays.copyOf(encoded, contents.length);
            if (encoded.length > contents.length || !Arrays.equals(padded, contents)) {
                throw new Broken("The signature is not written as it should be (DER), or something stands behind it.");
            }
            CMSSignedData cms = new CMSSignedData(new CMSProcessableByteArray(content), encoded);
            if (!CMSObjectIdentifiers.signedData.equals(cms.toASN1Structure().getContentType())) {
                throw new Broken("The signature is not CMS SignedData, or its name for that was changed.");
            }
            return cms;
        } catch (IOException | CMSException | RuntimeException fault) {
            throw new Broken("The signature cannot be read: it is damaged.", fault);
        }
    }

    private static SignerInformation onlySigner(CMSSignedData cms) throws Broken {
        Collection<SignerInformation> signers = cms.getSignerInfos().getSigners();
        if (signers.size() != 1) {
            throw new Broken("The signature has " + signers.size() + " signers instead of one.");
        }
        SignerInformation signer = signers.iterator().next();
        int byIssuer = 1;
        boolean plain = signer.getVersion() == byIssuer;
        Set<AlgorithmIdentifier> digests = cms.getDigestAlgorithmIDs();
        boolean sound = cms.getVersion() == (plain ? byIssuer : 3)
                && "1.2.840.113549.1.7.1".equals(cms.getSignedContentTypeOID())
                && digests.size() == 1
                && digests.contains(signer.getDigestAlgorithmID());
        if (!sound) {
            throw new Broken("The signature contradicts itself: it was damaged.");
        }
        return signer;
    }

    private static X509Certificate certificate(CMSSignedData cms, SignerInformation signer) throws Broken {
        Collection<X509CertificateHolder> found = cms.getCertificates().getMatches(null).stream()
                .filter(each -> signer.getSID().match(each))
                .toList();
        if (found.isEmpty()) {
            throw new Broken("The signature does not carry its signer's certificate.");
        }
        return java(found.iterator().next());
    }

    private static X509Certificate java(X509CertificateHolder holder) throws Broken {
        try {
            return new JcaX509CertificateConverter().getCertificate(holder);
        } catch (GeneralSecurityException fault) {
            throw new Broken("A certificate in the signature cannot be read.", fault);
        }
    }

    private void verify(SignerInformation signer, X509Certificate certificate) throws Broken {
        boolean genuine;
        try {
            genuine = signer.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate.getPublicKey()));
        } catch (CMSException | OperatorCreationException fault) {
            genuine = false;
        }
        if (!genuine) {
            throw new Broken("The bytes that the signature covers are not those that " + SigningKey.holder(certificate)
                    + " signed, or the signature itself was changed.");
        }
    }

    private Finding covered(Coverage coverage, boolean whole, long next) {
        if (whole) {
            return Finding.yes(Area.SIGNATURE, "It covers the whole file.");
        }
        if (next > coverage.end) {
            return Finding.yes(
                    Area.SIGNATURE,
                    "It covers the file as it was when it was signed, the first " + coverage.end
                            + " bytes; what follows is a later signature and is checked with it.");
        }
        return Finding.no(
                Area.SIGNATURE,
                "It covers the first " + coverage.end + " bytes; " + (file.length - coverage.end)
                        + " bytes were appended after the last signature and are signed by nobody.");
    }

    private static void attributes(
            SignerInformation signer, X509Certificate certificate, PDSignature signature, List<Finding> findings)
            throws Broken {
        AttributeTable table = signer.getSignedAttributes();
        Attribute own = table == null ? null : table.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
        if (own == null) {
            findings.add(
                    Finding.open(
                            Area.SIGNATURE,
                            "It does not bind the signer's certificate (signing-certificate-v2), so it is no PAdES signature."));
            return;
        }
        ASN1Encodable[] values = own.getAttributeValues();
        ESSCertIDv2[] identifiers = SigningCertificateV2.getInstance(values[0]).getCerts();
        if (!NISTObjectIdentifiers.id_sha256.equals(
                identifiers[0].getHashAlgorithm().getAlgorithm())) {
            findings.add(
                    Finding.open(Area.SIGNATURE, "The digest by which it binds its certificate is not checked here."));
            return;
        }
        if (!Arrays.equals(identifiers[0].getCertHash(), digest(certificate))) {
            throw new Broken("The signature was made for another certificate than the one it carries.");
        }
        boolean pades = Signer.SUBFILTER.getName().equals(signature.getSubFilter())
                && table.get(CMSAttributes.signingTime) == null
                && signature.getSignDate() != null;
        findings.add(
                pades
                        ? Finding.yes(
                                Area.SIGNATURE,
                                "It has the parts of a PAdES signature of the level B-B, and binds its certificate.")
                        : Finding.open(
                                Area.SIGNATURE,
                                "It binds its certificate, but is not a PAdES signature of the level B-B."));
    }

    private static byte[] digest(X509Certificate certificate) throws Broken {
        try {
            return MessageDigest.getInstance("SHA-256").digest(certificate.getEncoded());
        } catch (GeneralSecurityException fault) {
            throw new Broken("The signer's certificate cannot be read.", fault);
        }
    }

    private static List<Finding> validity(X509Certificate certificate, Optional<Instant> time) {
        List<Finding> findings = new ArrayList<>();
        if (time.isEmpty()) {
            findings.add(Finding.open(
                    Area.SIGNATURE, "It states no time, so whether its certificate was valid is not known."));
            return findings;
        }
        String period = "valid from " + WHEN.format(certificate.getNotBefore().toInstant()) + " to "
                + WHEN.format(certificate.getNotAfter().toInstant());
        boolean valid = !time.get().isBefore(certificate.getNotBefore().toInstant())
                && !time.get().isAfter(certificate.getNotAfter().toInstant());
        findings.add(
                valid
                        ? Finding.yes(Area.SIGNATURE, "Its certificate was " + period + ", and so when it was signed.")
                        : Finding.no(
                                Area.SIGNATURE,
                                "Its certificate was " + period + ", but it says that it was signed on "
                                        + WHEN.format(time.get()) + "."));
        findings.add(Finding.open(
                Area.SIGNATURE,
                "The time " + WHEN.format(time.get())
                        + " is what the signer's own clock said; no time stamp of another party vouches for it."));
        return findings;
    }

    /** The chain of certificates, and whether it ends with one that the reader trusts. */
    private Optional<Boolean> trust(
            CMSSignedData cms, X509Certificate signer, Optional<Instant> time, List<Finding> findings) throws Broken {
        List<X509Certificate> carried = new ArrayList<>();
        for (X509CertificateHolder each : cms.getCertificates().getMatches(null)) {
            carried.add(java(each));
        }
        List<X509Certificate> chain = chain(signer, carried);
        if (chain.size() != carried.size()) {
            throw new Broken(
                    "The signature carries a certificate that has no place in its signer's chain: it was damaged or added.");
        }
        String issued = selfSigned(signer)
                ? "The certificate is self-signed: it names " + SigningKey.holder(signer)
                        + ", but nobody else says that this is who it is."
                : "The certificate was issued by " + SigningKey.issuer(signer) + ".";
        if (trusted.certificates().isEmpty()) {
            findings.add(
                    Finding.open(
                            Area.SIGNATURE,
                            issued
                                    + " Whether to trust it was not checked, because no trusted certificates were given (--trust)."));
            return Optional.empty();
        }
        boolean found = reachesTrust(signer, chain, time);
        findings.add(
                found
                        ? Finding.yes(
                                Area.SIGNATURE,
                                issued + " It is among the trusted certificates, or its chain ends with one of them.")
                        : Finding.no(Area.SIGNATURE, issued + " No chain leads from it to a trusted certificate."));
        findings.add(Finding.open(Area.SIGNATURE, "Whether the certificate was revoked was not checked."));
        return Optional.of(found);
    }

    private static List<X509Certificate> chain(X509Certificate signer, List<X509Certificate> carried) {
        List<X509Certificate> chain = new ArrayList<>(List.of(signer));
        boolean longer = true;
        while (longer) {
            X509Certificate last = chain.get(chain.size() - 1);
            Optional<X509Certificate> issuer = selfSigned(last)
                    ? Optional.empty()
                    : carried.stream()
                            .filter(each -> !chain.contains(each) && signedBy(last, each))
                            .findFirst();
            issuer.ifPresent(chain::add);
            longer = issuer.isPresent();
        }
        // A self-signed certificate at the end must really be signed by itself, or a changed byte in it would go
        // unseen.
        X509Certificate last = chain.get(chain.size() - 1);
        return last.getSubjectX500Principal().equals(last.getIssuerX500Principal()) && !signedBy(last, last)
                ? List.of()
                : chain;
    }

    private static boolean selfSigned(X509Certificate certificate) {
        return certificate.getSubjectX500Principal().equals(certificate.getIssuerX500Principal())
                && signedBy(certificate, certificate);
    }

    private static boolean signedBy(X509Certificate certificate, X509Certificate issuer) {
        if (!certificate.getIssuerX500Principal().equals(issuer.getSubjectX500Principal())) {
            return false;
        }
        try {
            certificate.verify(issuer.getPublicKey());
            return true;
        } catch (GeneralSecurityException otherKey) {
            return false;
        }
    }

    private boolean reachesTrust(X509Certificate signer, List<X509Certificate> chain, Optional<Instant> time) {
        if (trusted.certificates().contains(signer)) {
            return true;
        }
        Set<TrustAnchor> anchors = trusted.certificates().stream()
                .map(each -> new TrustAnchor(each, null))
                .collect(Collectors.toSet());
        // Up to, and without, a certificate that is itself trusted.
        List<X509Certificate> path = chain.stream()
                .takeWhile(each -> !trusted.certificates().contains(each))
                .filter(each -> each.equals(signer) || !selfSigned(each))
                .toList();
        try {
            PKIXParameters parameters = new PKIXParameters(anchors);
            parameters.setRevocationEnabled(false);
            time.map(Date::from).ifPresent(parameters::setDate);
            CertPathValidator.getInstance("PKIX")
                    .validate(CertificateFactory.getInstance("X.509").generateCertPath(path), parameters);
            return true;
        } catch (CertPathValidatorException | InvalidAlgorithmParameterException noPath) {
            return false;
        } catch (GeneralSecurityException fault) {
            throw new IllegalStateException("every Java validates chains of certificates", fault);
        }
    }

    /** What the visible block shows must be what the signature says. */
    private static void block(
            Signed signed, X509Certificate certificate, Optional<Instant> time, Labels language, List<Finding> findings)
            throws Broken {
        String role = Signer.role(signed.field());
        String reason =
                signed.signature().getReason() == null ? "" : signed.signature().getReason();
        if (time.isEmpty() || !(reason.equals(role) || reason.startsWith(role + ", "))) {
            findings.add(Finding.open(
                    Area.SIGNATURE, "Its visible block was drawn by another program; what it shows was not compared."));
            return;
        }
        Optional<String> position =
                reason.equals(role) ? Optional.empty() : Optional.of(reason.substring(role.length() + 2));
        PDAppearanceDictionary appearance = signed.field().getWidgets().get(0).getAppearance();
        try {
            boolean same = appearance != null
                    && appearance.getCOSObject().keySet().equals(Set.of(COSName.N))
                    && appearance.getCOSObject().getDictionaryObject(COSName.N) instanceof COSStream shown
                    && (sameDrawing(shown, drawing(signed.field(), certificate, position, time.get(), language))
                            // So it was said on sheets of every language before the words had their translations.
                            || sameDrawing(
                                    shown, drawing(signed.field(), certificate, position, time.get(), Labels.ENGLISH)));
            if (!same) {
                throw new Broken("Its visible block shows something else than the signature says.");
            }
            findings.add(Finding.yes(
                    Area.SIGNATURE, "Its visible block shows the name, the position and the time that are signed."));
        } catch (IOException fault) {
            throw new Broken("Its visible block cannot be read.", fault);
        }
    }

    private static byte[] drawing(
            PDSignatureField field,
            X509Certificate certificate,
            Optional<String> position,
            Instant time,
            Labels language)
            throws IOException {
        String who = Signer.who(SigningKey.holder(certificate), position);
        try (PDDocument drawn = Loader.loadPDF(Signer.block(field, who, Signer.when(time, language)));
                java.io.InputStream in = drawn.getPage(0).getContents()) {
            return in.readAllBytes();
        }
    }

    private static boolean sameDrawing(COSStream shown, byte[] expected) throws IOException {
        ByteArrayOutputStream drawing = new ByteArrayOutputStream();
        try (java.io.InputStream in = shown.createInputStream()) {
            in.transferTo(drawing);
        }
        String one = drawing.toString(StandardCharsets.ISO_8859_1).strip();
        return one.equals(new String(expected, StandardCharsets.ISO_8859_1).strip());
    }
}
