package io.github.firstoff.command;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.proof.Signer;
import io.github.firstoff.proof.SigningKey;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How a sheet is signed. */
final class SigningOptions {
    /** Where the password is looked for before it is asked for. */
    static final String PASSWORD = "FIRSTOFF_KEY_PASSWORD";

    @Option(
            names = "--sign",
            paramLabel = "KEY.p12",
            description = {
                "Sign the sheet with the key in this PKCS#12 file. Its password is taken from the environment variable",
                "FIRSTOFF_KEY_PASSWORD, or asked for; it is never given on the command line."
            })
    private @Nullable Path key;

    @Option(
            names = "--position",
            paramLabel = "TEXT",
            description = "The signer's position in the visible block, where the certificate does not state it.")
    private @Nullable String position;

    boolean isAsked() {
        return key != null;
    }

    /**
     * The key that signs a sheet, opened before the sheet is made: one that cannot sign is found out before the work is done, not after.
     *
     * @return empty if no signature is asked for
     */
    Optional<Pen> penFor(CommandLine line, @Nullable Path out, Instant now) {
        if ((key == null && position != null) || (isAsked() && out == null)) {
            throw new ParameterException(
                    line,
                    out == null
                            ? "--sign and --position need --out FILE.pdf: only a sheet can be signed"
                            : "--position needs --sign KEY.p12: it stands in the signature");
        }
        refuseToOverwriteKey(line, out);
        return isAsked() ? Optional.of(pen(line, now)) : Optional.empty();
    }

    /** A sheet must not be written over the key that signs it. */
    void refuseToOverwriteKey(CommandLine line, @Nullable Path out) {
        if (key != null
                && out != null
                && out.toAbsolutePath().normalize().equals(key.toAbsolutePath().normalize())) {
            throw new ParameterException(line, "--out " + out + " would overwrite the key");
        }
    }

    /** A key that was opened, ready to sign. */
    static final class Pen {
        private final SigningKey key;
        private final Optional<String> position;
        private final Instant now;

        private Pen(SigningKey key, Optional<String> position, Instant now) {
            this.key = key;
            this.position = position;
            this.now = now;
        }

        /** The same for a signature at a later time. */
        Pen at(Instant later) {
            return new Pen(key, position, later);
        }

        /** Whose key it is. */
        String holder() {
            return key.holder();
        }

        /**
         * The sheet with one more signature. The position is the one that was given, or that of the certificate, or that which the
         * job states of a person of the same name.
         */
        byte[] sign(byte[] sheet, Optional<Job.Person> named) {
            Optional<String> stated = position.or(key::position)
                    .or(() -> named.filter(person -> person.name().equals(key.holder()))
                            .flatMap(Job.Person::position));
            return Signer.sign(sheet, key, stated, now);
        }
    }

    /** Opens the key. */
    Pen pen(CommandLine line, Instant now) {
        Path file = Objects.requireNonNull(key);
        byte[] bytes = VerifyCommand.bytes(file);
        char[] password = password(line, file);
        try {
            return new Pen(
                    SigningKey.open(file.toString(), bytes, password, now),
                    Optional.ofNullable(position).map(String::strip).filter(text -> !text.isEmpty()),
                    now);
        } finally {
            Arrays.fill(password, '\0');
        }
    }

    @SuppressWarnings("SystemConsoleNull") // from Java 22 on it is there without a terminal, and then reads no line
    private static char[] password(CommandLine line, Path file) {
        String given = System.getenv(PASSWORD);
        if (given != null) {
            return given.toCharArray();
        }
        java.io.Console terminal = System.console();
        char[] typed = terminal == null ? null : terminal.readPassword("Password of %s: ", file);
        if (typed == null) {
            throw new ParameterException(
                    line,
                    "the password of " + file + " is missing: set " + PASSWORD + ", or run firstoff at a terminal");
        }
        return typed;
    }
}
