package io.github.firstoff.command;

import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program: one command per job of the trade. */
@Command(
        name = "firstoff",
        description = {
            "From a drawing's requirements and the readings of the pieces to sheets that someone signs:",
            "first articles, batches under control charts, certificates."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        synopsisSubcommandLabel = "COMMAND",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done, and accepted",
            "1:done, and not accepted: nonconforming, inconclusive or incomplete",
            "2:the command line is wrong",
            "3:an input is unreadable or contradicts itself; no sheet was written",
            "4:the result could not be written; what was there before is untouched"
        },
        subcommands = {
            FirstArticleCommand.class,
            BatchCommand.class,
            DriftCommand.class,
            HistoryCommand.class,
            FitCommand.class,
            StackCommand.class,
            CertificateCommand.class,
            PlanCommand.class,
            MappingCommand.class,
            MeasureCommand.class,
            VerifyCommand.class,
            CountersignCommand.class
        })
public final class Firstoff implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before run
    private CommandSpec spec;

    /** Runs the program and ends the process with its exit code. */
    @SuppressWarnings("SystemExitOutsideMain") // this is main
    public static void main(String[] arguments) {
        PrintStream out = utf8(System.out);
        PrintStream err = utf8(System.err);
        int code = run(System.in, out, err, arguments);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /**
     * Runs the program without ending the process, for tests and for embedding.
     *
     * @param out where results go
     * @param err where messages go
     * @param arguments the command line
     * @return the exit code
     */
    public static int run(PrintStream out, PrintStream err, String... arguments) {
        return run(InputStream.nullInputStream(), out, err, arguments);
    }

    /**
     * The same with something to read.
     *
     * @param in what is keyed or piped in; read by commands that ask
     * @param out where results go
     * @param err where messages go
     * @param arguments the command line
     * @return the exit code
     */
    public static int run(InputStream in, PrintStream out, PrintStream err, String... arguments) {
        Console console = new Console(in, out, err);
        CommandLine line = new CommandLine(new Firstoff(), new CommandFactory(console));
        line.setOut(console.outWriter());
        line.setErr(console.errWriter());
        line.setParameterExceptionHandler((fault, given) -> usageFault(fault, console));
        line.setExecutionExceptionHandler((fault, command, parsed) -> Faults.report(fault, console));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        int code;
        try {
            code = line.execute(arguments);
        } catch (OutOfMemoryError | StackOverflowError fault) {
            // The parser of the command line hands on exceptions, but lets errors pass.
            code = Faults.report(fault, console);
        }
        console.flush();
        if (console.isResultLost() && (code == ExitCodes.ACCEPTED || code == ExitCodes.NOT_ACCEPTED)) {
            console.message("firstoff: standard output did not take the whole result.");
            return ExitCodes.OUTPUT;
        }
        return code;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "a command is missing");
    }

    private static int usageFault(ParameterException fault, Console console) {
        CommandLine line = fault.getCommandLine();
        console.message("firstoff: " + fault.getMessage());
        if (fault instanceof CommandLine.UnmatchedArgumentException unmatched
                && !unmatched.getSuggestions().isEmpty()
                && !unmatched.getUnmatched().isEmpty()) {
            console.message("Did you mean: " + String.join(" or ", unmatched.getSuggestions()) + "?");
        }
        console.message("Try \"" + line.getCommandSpec().qualifiedName() + " --help\".");
        return ExitCodes.USAGE;
    }

    private static PrintStream utf8(PrintStream stream) {
        return new PrintStream(stream, false, StandardCharsets.UTF_8);
    }
}
