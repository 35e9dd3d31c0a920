package io.github.firstoff.command;

import io.github.firstoff.intake.SafeText;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;

/** Where results and messages go: the only way a command speaks. Nothing that it prints can move a terminal, whatever a file holds. */
final class Console {
    private final InputStream in;
    private final PrintWriter out;
    private final PrintWriter err;

    Console(InputStream in, PrintStream out, PrintStream err) {
        this.in = in;
        this.out = new PrintWriter(out, false, java.nio.charset.StandardCharsets.UTF_8);
        this.err = new PrintWriter(err, true, java.nio.charset.StandardCharsets.UTF_8);
    }

    /** What comes in from a keyboard or a pipe. */
    InputStream in() {
        return in;
    }

    PrintWriter outWriter() {
        return out;
    }

    PrintWriter errWriter() {
        return err;
    }

    /** A line of the result. */
    void result(String line) {
        out.println(SafeText.line(line));
    }

    /** A line for the person at the terminal. */
    void message(String line) {
        err.println(SafeText.line(line));
        err.flush();
    }

    /** A line that shows how far long work has come, on a terminal only. */
    Progress progress() {
        return new Progress(
                text -> {
                    err.print(text);
                    err.flush();
                },
                isTerminal(),
                System::nanoTime);
    }

    @SuppressWarnings("SystemConsoleNull") // up to Java 21 it is there only at a terminal, and that is what is asked
    private static boolean isTerminal() {
        String term = System.getenv("TERM");
        return System.console() != null && term != null && !term.equals("dumb");
    }

    void flush() {
        out.flush();
        err.flush();
    }

    /** Whether standard output did not take all of the result: a full disk, or a reader that is gone. */
    boolean isResultLost() {
        return out.checkError();
    }
}
