package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Keys;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The question for a key's password, asked by the real program behind a pseudo-terminal: what is typed is not shown. */
class SignInATerminalTest {
    private static final Pattern ASKED = Pattern.compile("Password of .*key\\.p12: ");

    @TempDir
    private Path folder;

    private PtySession signing(Path sheet) throws GeneralSecurityException, IOException {
        Assumptions.assumeTrue(
                System.getenv(SigningOptions.PASSWORD) == null, "a password is set, so the program would not ask");
        Path key = Files.write(folder.resolve("key.p12"), Keys.p12(Keys.selfSigned("EC", 256, "CN=A. Quill")));
        List<String> arguments =
                new ArrayList<>(new Samples.Sample("first-article", "hq-045", "first-article-hq-045").arguments());
        arguments.addAll(List.of("--sign", key.toString(), "--out", sheet.toString()));
        return PtySession.start(
                System.getProperty("java.class.path"), folder.resolve("none.jsa"), 200, Map.of(), arguments);
    }

    @Test
    void thePasswordIsAskedFor_andNotShown() throws Exception {
        Path sheet = folder.resolve("sheet.pdf");
        try (PtySession session = signing(sheet)) {
            session.await(ASKED);
            session.type(Keys.PASSWORD);
            assertThat(session.exitCode()).as(session.raw()).isZero();
            assertThat(session.raw()).contains("Written: ").doesNotContain(Keys.PASSWORD);
        }
        assertThat(Samples.run("verify", sheet.toString()).out()).contains("A. Quill");
    }

    @Test
    void aWrongPassword_isRefusedWithoutShowingIt() throws Exception {
        Path sheet = folder.resolve("sheet.pdf");
        try (PtySession session = signing(sheet)) {
            session.await(ASKED);
            session.type("not-the-password");
            assertThat(session.exitCode()).isEqualTo(ExitCodes.INPUT);
            assertThat(session.raw())
                    .contains("the password does not open the key")
                    .doesNotContain("not-the-password");
        }
        assertThat(sheet).doesNotExist();
    }
}
