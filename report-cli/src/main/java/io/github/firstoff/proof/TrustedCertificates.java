package io.github.firstoff.proof;

import java.io.ByteArrayInputStream;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;

/**
 * The certificates that a reader trusts: of authorities, or of single signers.
 *
 * @param certificates the certificates
 */
public record TrustedCertificates(List<X509Certificate> certificates) {
    /** Copies the list. */
    public TrustedCertificates {
        certificates = List.copyOf(certificates);
    }

    /** Nothing is trusted and nothing is distrusted. */
    public static TrustedCertificates notGiven() {
        return new TrustedCertificates(List.of());
    }

    /**
     * Reads a file of certificates, PEM (RFC 7468) one after the other, or DER.
     *
     * @param name by which messages call the file
     * @param file its bytes
     * @throws ProofRefused if it holds no certificate
     */
    public static TrustedCertificates read(String name, byte[] file) {
        try {
            List<X509Certificate> found = new ArrayList<>();
            for (Certificate each :
                    CertificateFactory.getInstance("X.509").generateCertificates(new ByteArrayInputStream(file))) {
                if (each instanceof X509Certificate x509) {
                    found.add(x509);
                }
            }
            if (found.isEmpty()) {
                throw new ProofRefused(name + " holds no certificate");
            }
            return new TrustedCertificates(found);
        } catch (CertificateException fault) {
            throw new ProofRefused(name + " is not a file of certificates (PEM or DER)", fault);
        }
    }
}
