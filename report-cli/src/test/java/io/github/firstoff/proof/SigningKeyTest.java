package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** A key that cannot sign is refused in words that help. */
class SigningKeyTest {
    private static final char[] PASSWORD = Keys.PASSWORD.toCharArray();

    private static void refused(byte[] file, char[] password, Instant now, String... says) {
        assertThatExceptionOfType(ProofRefused.class)
                .isThrownBy(() -> SigningKey.open("key.p12", file, password, now))
                .satisfies(refusal -> assertThat(refusal.getMessage()).contains(says));
    }

    @Test
    void open_aKeyWithItsCertificate_tellsItsHolderAndPosition() throws GeneralSecurityException, IOException {
        SigningKey key = Keys.selfSigned("RSA", 2048, "CN=A. Quill,T=inspector,O=Hollin Quay Deck Gear")
                .opened();
        assertThat(key.holder()).isEqualTo("A. Quill");
        assertThat(key.position()).contains("inspector");
    }

    @Test
    void open_aWrongPassword_saysSo() throws GeneralSecurityException, IOException {
        byte[] file = Keys.p12(Keys.selfSigned("RSA", 2048, "CN=A. Quill"));
        refused(file, "wrong".toCharArray(), Keys.DAY, "the password does not open the key");
    }

    @Test
    void open_somethingElse_saysSo() {
        refused("no key".getBytes(StandardCharsets.UTF_8), PASSWORD, Keys.DAY, "is not a PKCS#12 file");
    }

    @Test
    void open_severalKeys_namesThem() throws GeneralSecurityException, IOException {
        byte[] file = Keys.p12(Keys.selfSigned("EC", 256, "CN=A. Quill"), Keys.selfSigned("EC", 256, "CN=B. Marrow"));
        refused(file, PASSWORD, Keys.DAY, "2 private keys", "key1", "key2");
    }

    @Test
    void open_noPrivateKey_saysSo() throws GeneralSecurityException, IOException {
        refused(Keys.certificateOnly(Keys.selfSigned("EC", 256, "CN=A. Quill")), PASSWORD, Keys.DAY, "no private key");
    }

    @Test
    void open_outsideTheTimeOfItsCertificate_saysWhenItWas() throws GeneralSecurityException, IOException {
        byte[] file = Keys.p12(Keys.selfSigned("EC", 256, "CN=A. Quill"));
        refused(file, PASSWORD, Keys.TO.plus(Duration.ofDays(1)), "expired on 2036-01-01");
        refused(file, PASSWORD, Keys.FROM.minus(Duration.ofDays(1)), "not valid before 2026-01-01");
    }

    @Test
    void open_aCertificateThatIsNotForSigning_isRefused() throws GeneralSecurityException, IOException {
        refused(Keys.p12(Keys.notForSigning("CN=A. Quill")), PASSWORD, Keys.DAY, "is not meant for signing");
    }

    /** Files of older programs are under ciphers that new ones no longer write; they still hold keys that are sound. */
    @Test
    void open_aFileOfAnOlderProgram_isOpened() throws GeneralSecurityException, IOException {
        byte[] file = Keys.p12OfOldPrograms(Keys.selfSigned("RSA", 2048, "CN=A. Quill"));
        assertThat(SigningKey.open("old.p12", file, PASSWORD, Keys.DAY).holder())
                .isEqualTo("A. Quill");
        refused(file, "wrong".toCharArray(), Keys.DAY, "the password does not open the key");
    }

    @Test
    void open_aChainOfThree_bringsAllOfIt() throws GeneralSecurityException, IOException {
        assertThat(Keys.issuedInTwoSteps("CN=A. Quill").opened().chain()).hasSize(3);
    }

    /** 2048 bits: the least that NIST SP 800-131A Rev. 2, table 2, accepts for RSA signatures. */
    @Test
    void open_aWeakOrUnknownKey_isRefused() throws GeneralSecurityException, IOException {
        refused(Keys.p12(Keys.selfSigned("RSA", 1024, "CN=A. Quill")), PASSWORD, Keys.DAY, "1024 bits");
    }
}
