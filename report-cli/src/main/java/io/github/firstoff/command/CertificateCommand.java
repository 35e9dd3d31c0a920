package io.github.firstoff.command;

import io.github.firstoff.sheet.SheetKind;
import picocli.CommandLine.Command;

/** {@code firstoff certificate}. */
@Command(
        name = "certificate",
        description =
                "The declaration of conformity for the customer; refused with its reasons where it cannot be given.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class CertificateCommand extends SheetCommand {
    CertificateCommand(Console console) {
        super(SheetKind.CERTIFICATE, console);
    }
}
