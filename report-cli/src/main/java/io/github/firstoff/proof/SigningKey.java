package io.github.firstoff.proof;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECKey;
import java.security.interfaces.RSAKey;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.x500.RDN;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x500.style.IETFUtils;

/**
 * A private key with its certificates, from a PKCS#12 file (RFC 7292).
 *
 * <p>RSA of 2048 bits or more and ECDSA on the curves P-256, P-384 and P-521 are accepted, with SHA-256, SHA-384 and SHA-512 by the
 * strength of the key. RSA signatures (PKCS #1 v1.5) and ECDSA signatures (RFC 6979) are made without chance: the same sheet, key and time
 * give the same bytes.
 */
public final class SigningKey {
    private static final int LEAST_RSA = 2048;
    private static final Set<Integer> CURVES = Set.of(256, 384, 521);
    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final PrivateKey key;
    private final List<X509Certificate> chain;

    private SigningKey(PrivateKey key, List<X509Certificate> chain) {
        this.key = key;
        this.chain = List.copyOf(chain);
    }

    /**
     * Opens a PKCS#12 file.
     *
     * @param name by which messages call the file
     * @param file its bytes
     * @param password its password
     * @param now the time of the signature: the certificate must be valid then
     * @throws ProofRefused if the password does not open it, it does not hold exactly one private key with its certificate, the
     *     certificate is not valid at that time or not meant for signing, or the key is of another kind
     */
    public static SigningKey open(String name, byte[] file, char[] password, Instant now) {
        KeyStore store;
        try {
            store = KeyStore.getInstance("PKCS12");
            store.load(new ByteArrayInputStream(file), password);
        } catch (IOException fault) {
            if (fault.getCause() instanceof UnrecoverableKeyException) {
                throw new ProofRefused("the password does not open the key " + name, fault);
            }
            throw new ProofRefused(name + " is not a PKCS#12 file (.p12 or .pfx)", fault);
        } catch (GeneralSecurityException fault) {
            throw new ProofRefused(name + " is protected by a method that this Java does not have", fault);
        }
        try {
            List<String> keys = new ArrayList<>();
            for (String alias : Collections.list(store.aliases())) {
                if (store.isKeyEntry(alias)) {
                    keys.add(alias);
                }
            }
            if (keys.isEmpty()) {
                throw new ProofRefused(name + " holds no private key; export the key together with its certificate");
            }
            if (keys.size() > 1) {
                throw new ProofRefused(name + " holds " + keys.size() + " private keys (" + String.join(", ", keys)
                        + "); make a file with the one that shall sign");
            }
            if (!(store.getKey(keys.get(0), password) instanceof PrivateKey key)) {
                throw new ProofRefused(name + " holds no private key");
            }
            List<X509Certificate> chain = new ArrayList<>();
            Certificate[] certificates = store.getCertificateChain(keys.get(0));
            for (Certificate each : certificates == null ? new Certificate[0] : certificates) {
                if (each instanceof X509Certificate x509) {
                    chain.add(x509);
                }
            }
            if (chain.isEmpty()) {
                throw new ProofRefused(name + " holds a private key without a certificate");
            }
            SigningKey found = new SigningKey(key, chain);
            found.check(name, now);
            return found;
        } catch (UnrecoverableKeyException fault) {
            throw new ProofRefused("the password does not open the key in " + name, fault);
        } catch (GeneralSecurityException fault) {
            throw new ProofRefused(name + " cannot be used: " + fault.getMessage(), fault);
        }
    }

    private void check(String name, Instant now) {
        X509Certificate certificate = certificate();
        if (now.isBefore(certificate.getNotBefore().toInstant())) {
            throw new ProofRefused("the certificate in " + name + " is not valid before "
                    + MOMENT.format(certificate.getNotBefore().toInstant()));
        }
        if (now.isAfter(certificate.getNotAfter().toInstant())) {
            throw new ProofRefused("the certificate in " + name + " expired on "
                    + MOMENT.format(certificate.getNotAfter().toInstant()));
        }
        boolean[] usage = certificate.getKeyUsage();
        int digitalSignature = 0;
        int nonRepudiation = 1;
        if (usage != null && !usage[digitalSignature] && !usage[nonRepudiation]) {
            throw new ProofRefused("the certificate in " + name + " is not meant for signing");
        }
        if (key instanceof RSAKey rsa) {
            if (rsa.getModulus().bitLength() < LEAST_RSA) {
                throw new ProofRefused("the RSA key in " + name + " has "
                        + rsa.getModulus().bitLength() + " bits; " + LEAST_RSA + " are the least that is safe");
            }
        } else if (!(key instanceof ECKey ec)
                || !CURVES.contains(ec.getParams().getCurve().getField().getFieldSize())) {
            throw new ProofRefused("the key in " + name + " is of the kind " + key.getAlgorithm()
                    + "; RSA and ECDSA on P-256, P-384 or P-521 can sign");
        }
    }

    PrivateKey key() {
        return key;
    }

    X509Certificate certificate() {
        return chain.get(0);
    }

    List<X509Certificate> chain() {
        return chain;
    }

    /** Whose key it is: the common name of its certificate. */
    public String holder() {
        return holder(certificate());
    }

    /** The position of its holder, where the certificate states one (the attribute title). */
    public Optional<String> position() {
        return attribute(certificate(), BCStyle.T);
    }

    /** The common name of a certificate, or the whole name of its subject where it has none. */
    static String holder(X509Certificate certificate) {
        return attribute(certificate, BCStyle.CN)
                .orElseGet(() -> certificate.getSubjectX500Principal().getName());
    }

    static String issuer(X509Certificate certificate) {
        X500Name name =
                X500Name.getInstance(certificate.getIssuerX500Principal().getEncoded());
        return first(name, BCStyle.CN)
                .orElseGet(() -> certificate.getIssuerX500Principal().getName());
    }

    private static Optional<String> attribute(X509Certificate certificate, ASN1ObjectIdentifier kind) {
        return first(X500Name.getInstance(certificate.getSubjectX500Principal().getEncoded()), kind);
    }

    private static Optional<String> first(X500Name name, ASN1ObjectIdentifier kind) {
        RDN[] found = name.getRDNs(kind);
        return found.length == 0
                ? Optional.empty()
                : Optional.of(IETFUtils.valueToString(found[0].getFirst().getValue()));
    }
}
