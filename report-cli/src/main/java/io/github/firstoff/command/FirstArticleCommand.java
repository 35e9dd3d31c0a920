package io.github.firstoff.command;

import io.github.firstoff.sheet.SheetKind;
import picocli.CommandLine.Command;

/** {@code firstoff first-article}. */
@Command(
        name = "first-article",
        description = "Holds the first pieces against every characteristic of the plan, ready to sign.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class FirstArticleCommand extends SheetCommand {
    FirstArticleCommand(Console console) {
        super(SheetKind.FIRST_ARTICLE, console);
    }
}
