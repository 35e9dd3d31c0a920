package io.github.firstoff.command;

import io.github.firstoff.sheet.SheetKind;
import picocli.CommandLine.Command;

/** {@code firstoff batch}. */
@Command(
        name = "batch",
        description = "Verdicts on a batch, and control charts of the characteristics under study.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class BatchCommand extends SheetCommand {
    BatchCommand(Console console) {
        super(SheetKind.BATCH, console);
    }
}
