package io.github.firstoff.command;

import io.github.firstoff.proof.Finding;
import io.github.firstoff.proof.ProofRefused;
import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.proof.SignatureCheck;
import io.github.firstoff.proof.SignatureReport;
import io.github.firstoff.proof.TrustedCertificates;
import io.github.firstoff.proof.Verification;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code firstoff countersign}. */
@Command(
        name = "countersign",
        description = "Signs a sheet on its next free line, behind the signatures that it has, which stay as they are.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class CountersignCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(paramLabel = "SHEET.pdf", description = "The sheet to sign.")
    private @Nullable Path file;

    @Option(names = "--out", required = true, paramLabel = "FILE.pdf", description = "Where the signed sheet goes.")
    private @Nullable Path out;

    @Mixin
    private final SigningOptions signing = new SigningOptions();

    CountersignCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        CommandSpec command = Objects.requireNonNull(spec);
        Path path = Objects.requireNonNull(file);
        Path target = Objects.requireNonNull(out);
        if (!signing.isAsked()) {
            throw new ParameterException(
                    command.commandLine(), "--sign KEY.p12 is missing: a sheet is signed with a key");
        }
        signing.refuseToOverwriteKey(command.commandLine(), target);
        byte[] bytes = VerifyCommand.bytes(path);
        SheetFile sheet = SheetFile.read(path.toString(), bytes);
        List<SignatureReport> before = SignatureCheck.of(sheet, TrustedCertificates.notGiven());
        Optional<Finding> wrong = Verification.beforeSigning(sheet, before).stream()
                .filter(each -> each.holds() == Finding.Holds.NO)
                .findFirst();
        if (wrong.isPresent()) {
            throw new ProofRefused(path + " was not signed, because it does not hold: "
                    + wrong.get().says() + " Try \"firstoff verify " + path + "\".");
        }
        SigningOptions.Pen pen = signing.pen(command.commandLine(), Clock.now(command.commandLine()));
        byte[] signed = pen.sign(bytes, Optional.empty());
        OutputFile.write(target, stream -> stream.write(signed));
        console.result("Signed by " + pen.holder() + ": " + target);
        console.flush();
        return ExitCodes.ACCEPTED;
    }
}
