package io.github.firstoff.proof;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.PrivateKey;
import java.security.interfaces.ECKey;
import java.security.interfaces.RSAKey;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateHolder;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedDataGenerator;
import org.bouncycastle.cms.DefaultSignedAttributeTableGenerator;
import org.bouncycastle.cms.SignerInfoGeneratorBuilder;
import org.bouncycastle.crypto.Digest;
import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.crypto.digests.SHA384Digest;
import org.bouncycastle.crypto.digests.SHA512Digest;
import org.bouncycastle.crypto.signers.DSADigestSigner;
import org.bouncycastle.crypto.signers.ECDSASigner;
import org.bouncycastle.crypto.signers.HMacDSAKCalculator;
import org.bouncycastle.crypto.util.PrivateKeyFactory;
import org.bouncycastle.operator.ContentSigner;
import org.bouncycastle.operator.DefaultSignatureAlgorithmIdentifierFinder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.bc.BcDigestCalculatorProvider;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * A signature over bytes as CMS SignedData without the content (RFC 5652), as PAdES asks at its baseline level B-B (ETSI EN 319 142-1,
 * 6): the signer's certificate and its chain are inside, the signed attributes hold content type, message digest and
 * signing-certificate-v2 (RFC 5035), and no signing-time, which stands in the signature's dictionary instead.
 */
final class CmsSignature {
    private CmsSignature() {}

    static byte[] sign(byte[] content, SigningKey key) {
        try {
            // SHA-256 is the default of ESSCertIDv2, so its identifier is left out (DER).
            byte[] certificate = MessageDigest.getInstance("SHA-256")
                    .digest(key.certificate().getEncoded());
            Attribute own = new Attribute(
                    PKCSObjectIdentifiers.id_aa_signingCertificateV2,
                    new DERSet(new SigningCertificateV2(new ESSCertIDv2(certificate))));
            DefaultSignedAttributeTableGenerator attributes =
                    new DefaultSignedAttributeTableGenerator(new AttributeTable(own));
            CMSSignedDataGenerator generator = new CMSSignedDataGenerator();
            generator.addSignerInfoGenerator(new SignerInfoGeneratorBuilder(new BcDigestCalculatorProvider())
                    .setSignedAttributeGenerator(
                            parameters -> attributes.getAttributes(parameters).remove(CMSAttributes.signingTime))
                    .build(signer(key.key()), new JcaX509CertificateHolder(key.certificate())));
            generator.addCertificates(new JcaCertStore(key.chain()));
            return generator
                    .generate(new CMSProcessableByteArray(content), false)
                    .toASN1Structure()
                    .getEncoded(ASN1Encoding.DER);
        } catch (GeneralSecurityException | OperatorCreationException | CMSException | IOException fault) {
            throw new ProofRefused("the key cannot sign: " + fault.getMessage(), fault);
        }
    }

    private static ContentSigner signer(PrivateKey key) throws OperatorCreationException, IOException {
        if (key instanceof RSAKey rsa) {
            int strong = 3072;
            int strongest = 7680;
            int bits = rsa.getModulus().bitLength();
            String digest = bits >= strongest ? "SHA512" : bits > strong ? "SHA384" : "SHA256";
            return new JcaContentSignerBuilder(digest + "withRSA").build(key);
        }
        if (key instanceof ECKey ec) {
            return switch (ec.getParams().getCurve().getField().getFieldSize()) {
                case 256 -> new Deterministic(key, "SHA256withECDSA", new SHA256Digest(), new SHA256Digest());
                case 384 -> new Deterministic(key, "SHA384withECDSA", new SHA384Digest(), new SHA384Digest());
                default -> new Deterministic(key, "SHA512withECDSA", new SHA512Digest(), new SHA512Digest());
            };
        }
        throw new IllegalArgumentException("no signature with a key of the kind " + key.getAlgorithm());
    }

    /** ECDSA whose one-time number comes from key and message (RFC 6979). */
    private static final class Deterministic implements ContentSigner {
        private final AlgorithmIdentifier algorithm;
        private final DSADigestSigner signer;
        private final ByteArrayOutputStream content = new ByteArrayOutputStream();

        Deterministic(PrivateKey key, String algorithm, Digest forNumber, Digest forContent) throws IOException {
            this.algorithm = new DefaultSignatureAlgorithmIdentifierFinder().find(algorithm);
            signer = new DSADigestSigner(new ECDSASigner(new HMacDSAKCalculator(forNumber)), forContent);
            signer.init(true, PrivateKeyFactory.createKey(key.getEncoded()));
        }

        @Override
        public AlgorithmIdentifier getAlgorithmIdentifier() {
            return algorithm;
        }

        @Override
        public OutputStream getOutputStream() {
            return content;
        }

        @Override
        public byte[] getSignature() {
            byte[] bytes = content.toByteArray();
            signer.update(bytes, 0, bytes.length);
            return signer.generateSignature();
        }
    }
}
