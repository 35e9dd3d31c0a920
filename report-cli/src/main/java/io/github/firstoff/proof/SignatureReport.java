package io.github.firstoff.proof;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one signature.
 *
 * @param field the name of its field
 * @param role what the line is for, such as {@code Inspected by}
 * @param signer the common name in the signer's certificate; empty where no certificate could be read
 * @param issuer who issued the certificate
 * @param claimedTime when it says that it was made; nobody else vouches for that time
 * @param wholeFile whether it covers every byte of the file
 * @param trusted whether a chain to a certificate that the reader trusts was found; empty where none was given
 * @param findings what was checked
 */
public record SignatureReport(
        String field,
        String role,
        Optional<String> signer,
        Optional<String> issuer,
        Optional<Instant> claimedTime,
        boolean wholeFile,
        Optional<Boolean> trusted,
        List<Finding> findings) {
    /** Copies the list. */
    public SignatureReport {
        findings = List.copyOf(findings);
    }

    /** Whether everything that was checked holds. */
    public boolean holds() {
        return findings.stream().noneMatch(each -> each.holds() == Finding.Holds.NO);
    }
}
