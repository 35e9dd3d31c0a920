package io.github.firstoff.command;

import io.github.firstoff.sheet.SheetKind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code firstoff batch}. */
@Command(
        name = "batch",
        description = "Verdicts on a batch, and control charts of the characteristics under study.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class BatchCommand extends SheetCommand {
    private static final String NOT_THERE =
            " is not there any more; the sheet stays as it was until the folder is back";
    private static final long GLANCE_MILLIS = 500;

    @Option(
            names = "--follow",
            paramLabel = "FOLDER",
            description = {
                "Read every file of readings that comes into this folder, after READINGS, and renew the sheet each time.",
                "Ends with Ctrl-C, or see --until-idle."
            })
    private @Nullable Path folder;

    @Option(
            names = "--until-idle",
            paramLabel = "SECONDS",
            description = "With --follow: end when nothing has changed in the folder for so long.")
    private int idle;

    BatchCommand(Console console) {
        super(SheetKind.BATCH, console);
    }

    @Override
    Integer run(CommandSpec command) {
        Path followed = folder;
        if (followed == null) {
            if (idle != 0) {
                throw new ParameterException(command.commandLine(), "--until-idle needs --follow FOLDER");
            }
            return super.run(command);
        }
        if (!Files.isDirectory(followed)) {
            throw new ParameterException(command.commandLine(), "--follow " + followed + ": there is no such folder");
        }
        if (idle < 0) {
            throw new ParameterException(command.commandLine(), "--until-idle needs a number of seconds above 0");
        }
        if (readings().stream().anyMatch(Inputs::isStandardInput)) {
            throw new ParameterException(
                    command.commandLine(), "- can be read only once, and --follow reads again and again");
        }
        return follow(command, followed);
    }

    /** Ctrl-C ends the program only when the sheet that is being renewed is whole. */
    private Integer follow(CommandSpec command, Path followed) {
        if (makesPdf()) {
            SheetPress.prepare();
        }
        return UntilInterrupted.run(
                console(),
                "the last renewal was not finished; the sheet is the one before it",
                asked -> renew(command, new FollowedFolder(followed, others()), asked));
    }

    private Set<Path> others() {
        Set<Path> others = new HashSet<>(otherFiles());
        readings().forEach(path -> others.add(path.toAbsolutePath().normalize()));
        return others;
    }

    private int renew(CommandSpec command, FollowedFolder followed, CountDownLatch asked) {
        int code = ExitCodes.INPUT;
        boolean made = false;
        List<Path> shown = List.of();
        boolean missing = false;
        long lastChange = System.nanoTime();
        try {
            while (true) {
                if (followed.look()) {
                    lastChange = System.nanoTime();
                    List<Path> files = new ArrayList<>(readings());
                    files.addAll(followed.files());
                    sayWhatIsOtherwise(followed);
                    if (!files.isEmpty()) {
                        made = true;
                        code = sheetOf(command, files);
                        console().flush();
                        if (code == ExitCodes.INPUT) {
                            console().message(notRenewed(shown, files));
                        } else {
                            shown = List.copyOf(files);
                        }
                    } else if (!shown.isEmpty()) {
                        console().message("No file of readings is left; the sheet stays as it was.");
                    }
                }
                if (followed.isMissing() != missing) {
                    missing = followed.isMissing();
                    console().message(missing ? folder + NOT_THERE : folder + " is there again");
                }
                boolean wasIdle = idle > 0 && System.nanoTime() - lastChange > TimeUnit.SECONDS.toNanos(idle);
                if (wasIdle || asked.await(GLANCE_MILLIS, TimeUnit.MILLISECONDS)) {
                    if (!made) {
                        console().message("firstoff: no file of readings came");
                    }
                    return code;
                }
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return code;
        }
    }

    /** Readings that leave the sheet, or become others, are never passed over in silence. */
    private void sayWhatIsOtherwise(FollowedFolder followed) {
        followed.gone()
                .forEach(path -> console()
                        .message("note: " + path + " is not in the folder any more; its readings leave the sheet"));
        followed.changed().forEach(path -> console().message("note: " + path + " was changed and is read anew"));
    }

    /** That one file holds up all that came after it must be plain to whoever looks at the sheet. */
    private static String notRenewed(List<Path> shown, List<Path> files) {
        if (shown.isEmpty()) {
            return "No sheet was made. It will be when what is named above is put right or taken away;"
                    + " with --keep-going the good rows do not wait.";
        }
        long waiting = files.stream().filter(file -> !shown.contains(file)).count();
        return "The sheet was not renewed and still shows " + (shown.size() == 1 ? "1 file" : shown.size() + " files")
                + " as before" + (waiting == 0 ? "" : "; " + waiting + (waiting == 1 ? " waits" : " wait"))
                + ". It will be when what is named above is put right or taken away;"
                + " with --keep-going the good rows do not wait.";
    }
}
