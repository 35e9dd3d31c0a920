package io.github.firstoff.command;

import io.github.firstoff.intake.InputRefused;
import io.github.firstoff.proof.Finding;
import io.github.firstoff.proof.ProofRefused;
import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.proof.SignatureCheck;
import io.github.firstoff.proof.SignatureReport;
import io.github.firstoff.proof.TrustedCertificates;
import io.github.firstoff.proof.Verification;
import io.github.firstoff.sheet.DriftRefused;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code firstoff verify}. */
@Command(
        name = "verify",
        description = "Checks a sheet: its signatures, the data inside, every figure and verdict, what is printed.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:everything that was checked holds",
            "1:something does not hold; it is named",
            "2:the command line is wrong",
            "3:the file cannot be read, or is no sheet"
        })
final class VerifyCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(paramLabel = "SHEET.pdf", description = "The sheet to check.")
    private @Nullable Path file;

    @Option(
            names = "--trust",
            paramLabel = "CERTS.pem",
            description = "Certificates of those whose signatures you trust, or of the authorities that issued theirs.")
    private @Nullable Path trust;

    @Option(names = "--json", description = "Put what was found on standard output as one JSON document.")
    private boolean json;

    VerifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Path path = Objects.requireNonNull(file);
        TrustedCertificates trusted = trust == null
                ? TrustedCertificates.notGiven()
                : TrustedCertificates.read(trust.toString(), bytes(trust));
        SheetFile sheet = SheetFile.read(path.toString(), bytes(path));
        List<SignatureReport> signatures = SignatureCheck.of(sheet, trusted);
        List<String> refusal = new ArrayList<>();
        Optional<Verification.Again> again = again(sheet, refusal);
        List<Finding> findings = Verification.of(sheet, signatures, ProgramVersion.text(), again, refusal);
        VerifyReport report = new VerifyReport(path.toString(), sheet, signatures, findings);
        if (json) {
            report.write(console.outWriter());
        } else {
            report.lines().forEach(console::result);
        }
        console.flush();
        return report.holds() ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }

    /** The sheet as this program makes it from what the sheet carries; empty, with the reason, if it cannot. */
    private static Optional<Verification.Again> again(SheetFile file, List<String> refusal) {
        Optional<SheetRecipe> recipe = SheetRecipes.of(file.manifest().command());
        CarriedShelf shelf = new CarriedShelf(file);
        if (recipe.isEmpty()) {
            refusal.add("This program knows no sheet of the kind \u201C"
                    + file.manifest().command() + "\u201D.");
            return Optional.empty();
        }
        if (!shelf.isWhole()) {
            return Optional.empty();
        }
        Ingredients from = Ingredients.of(file.manifest());
        MadeSheet made;
        try {
            made = recipe.get().make(from, shelf, file.manifest().madeAt());
        } catch (InputRefused refused) {
            refused.lines().forEach(refusal::add);
            return Optional.empty();
        } catch (DriftRefused refused) {
            refusal.add(refused.reason());
            return Optional.empty();
        }
        SheetPress press = new SheetPress(made, shelf.kept(), from.options());
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        if (!made.refusals().isEmpty()) {
            refusal.add("No certificate can be given on what it carries: " + String.join(" ", made.refusals()));
            return Optional.of(new Verification.Again(made.claim(), press.attachments(), pdf.toByteArray()));
        }
        try {
            press.print(pdf);
        } catch (IOException fault) {
            throw new OutputFault("the sheet cannot be made again: " + Faults.reason(fault), fault);
        }
        return Optional.of(new Verification.Again(made.claim(), press.attachments(), pdf.toByteArray()));
    }

    static byte[] bytes(Path path) {
        try {
            return Files.readAllBytes(path);
        } catch (IOException fault) {
            throw new ProofRefused(path + " cannot be read: " + Faults.reason(fault), fault);
        }
    }
}
