package io.github.firstoff.proof;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.DERBMPString;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.crypto.engines.DESedeEngine;
import org.bouncycastle.crypto.engines.RC2Engine;
import org.bouncycastle.crypto.modes.CBCBlockCipher;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.pkcs.PKCS12PfxPduBuilder;
import org.bouncycastle.pkcs.PKCS12SafeBag;
import org.bouncycastle.pkcs.PKCS12SafeBagBuilder;
import org.bouncycastle.pkcs.PKCSException;
import org.bouncycastle.pkcs.bc.BcPKCS12MacCalculatorBuilder;
import org.bouncycastle.pkcs.bc.BcPKCS12PBEOutputEncryptorBuilder;
import org.bouncycastle.pkcs.jcajce.JcaPKCS12SafeBagBuilder;

/** Keys made for a test; none is kept. */
public final class Keys {
    public static final String PASSWORD = "a-password-of-tests";
    static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");
    static final Instant TO = Instant.parse("2036-01-01T00:00:00Z");

    /** A day on which all ordinary keys of the tests are valid. */
    public static final Instant DAY = Instant.parse("2026-11-20T10:00:00Z");

    private Keys() {}

    /** A key with its certificate. */
    public static final class Made {
        final PrivateKey key;
        final X509Certificate[] chain;

        Made(PrivateKey key, X509Certificate... chain) {
            this.key = key;
            this.chain = chain;
        }

        public SigningKey opened() throws GeneralSecurityException, IOException {
            return SigningKey.open("key.p12", p12(this), PASSWORD.toCharArray(), DAY);
        }
    }

    public static Made selfSigned(String kind, int size, String name) throws GeneralSecurityException, IOException {
        return selfSigned(kind, size, name, FROM, TO);
    }

    static Made selfSigned(String kind, int size, String name, Instant from, Instant to)
            throws GeneralSecurityException, IOException {
        KeyPair pair = pair(kind, size);
        return new Made(pair.getPrivate(), certificate(name, name, pair, pair.getPrivate(), from, to, false));
    }

    /** A key whose certificate an authority issued. */
    static Made issued(String name, String authority) throws GeneralSecurityException, IOException {
        KeyPair root = pair("RSA", 2048);
        KeyPair own = pair("RSA", 2048);
        return new Made(
                own.getPrivate(),
                certificate(name, authority, own, root.getPrivate(), FROM, TO, false),
                certificate(authority, authority, root, root.getPrivate(), FROM, TO, true));
    }

    /** A key whose certificate was issued by an authority that another issued, which vouches for itself. */
    static Made issuedInTwoSteps(String name) throws GeneralSecurityException, IOException {
        String top = "CN=Hollin Quay root authority";
        String middle = "CN=Hollin Quay issuing authority";
        KeyPair root = pair("EC", 384);
        KeyPair issuing = pair("EC", 256);
        KeyPair own = pair("EC", 256);
        return new Made(
                own.getPrivate(),
                certificate(name, middle, own, issuing.getPrivate(), FROM, TO, false),
                certificate(middle, top, issuing, root.getPrivate(), FROM, TO, true),
                certificate(top, top, root, root.getPrivate(), FROM, TO, true));
    }

    /** A key whose certificate says that it is for something else than signing documents. */
    static Made notForSigning(String name) throws GeneralSecurityException, IOException {
        KeyPair own = pair("EC", 256);
        return new Made(own.getPrivate(), certificate(name, name, own, own.getPrivate(), FROM, TO, true));
    }

    /** A PKCS#12 file as older programs write it: the key under triple DES, the certificate under RC2 with 40 bits, SHA-1 for the whole. */
    static byte[] p12OfOldPrograms(Made key) throws GeneralSecurityException, IOException {
        try {
            PKCS12SafeBagBuilder ownKey = new JcaPKCS12SafeBagBuilder(
                    key.key,
                    new BcPKCS12PBEOutputEncryptorBuilder(
                                    PKCSObjectIdentifiers.pbeWithSHAAnd3_KeyTripleDES_CBC,
                                    CBCBlockCipher.newInstance(new DESedeEngine()))
                            .build(PASSWORD.toCharArray()));
            PKCS12SafeBagBuilder certificate = new JcaPKCS12SafeBagBuilder(key.chain[0]);
            DEROctetString same = new DEROctetString(new byte[] {1, 2, 3, 4});
            ownKey.addBagAttribute(PKCS12SafeBag.localKeyIdAttribute, same);
            ownKey.addBagAttribute(PKCS12SafeBag.friendlyNameAttribute, new DERBMPString("old"));
            certificate.addBagAttribute(PKCS12SafeBag.localKeyIdAttribute, same);
            PKCS12PfxPduBuilder file = new PKCS12PfxPduBuilder();
            file.addData(ownKey.build());
            file.addEncryptedData(
                    new BcPKCS12PBEOutputEncryptorBuilder(
                                    PKCSObjectIdentifiers.pbeWithSHAAnd40BitRC2_CBC,
                                    CBCBlockCipher.newInstance(new RC2Engine()))
                            .build(PASSWORD.toCharArray()),
                    new PKCS12SafeBag[] {certificate.build()});
            return file.build(new BcPKCS12MacCalculatorBuilder(), PASSWORD.toCharArray())
                    .getEncoded();
        } catch (PKCSException fault) {
            throw new GeneralSecurityException(fault);
        }
    }

    private static KeyPair pair(String kind, int size) throws GeneralSecurityException {
        KeyPairGenerator generator = KeyPairGenerator.getInstance(kind);
        generator.initialize(size);
        return generator.generateKeyPair();
    }

    private static X509Certificate certificate(
            String name, String issuer, KeyPair own, PrivateKey issuerKey, Instant from, Instant to, boolean authority)
            throws GeneralSecurityException, IOException {
        JcaX509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                new X500Name(issuer),
                BigInteger.valueOf(name.hashCode() & 0xffff).add(BigInteger.TWO),
                Date.from(from),
                Date.from(to),
                new X500Name(name),
                own.getPublic());
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(authority));
        builder.addExtension(
                Extension.keyUsage,
                true,
                new KeyUsage(authority ? KeyUsage.keyCertSign : KeyUsage.digitalSignature | KeyUsage.nonRepudiation));
        try {
            String algorithm = issuerKey.getAlgorithm().equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
            return new JcaX509CertificateConverter()
                    .getCertificate(builder.build(new JcaContentSignerBuilder(algorithm).build(issuerKey)));
        } catch (OperatorCreationException fault) {
            throw new GeneralSecurityException(fault);
        }
    }

    /** A PKCS#12 file with these keys, called key1, key2 and so on. */
    public static byte[] p12(Made... keys) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        for (int i = 0; i < keys.length; i++) {
            store.setKeyEntry("key" + (i + 1), keys[i].key, PASSWORD.toCharArray(), keys[i].chain);
        }
        return bytes(store);
    }

    /** A PKCS#12 file with a certificate and no key. */
    static byte[] certificateOnly(Made key) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setCertificateEntry("only", key.chain[0]);
        return bytes(store);
    }

    private static byte[] bytes(KeyStore store) throws GeneralSecurityException, IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        store.store(out, PASSWORD.toCharArray());
        return out.toByteArray();
    }
}
