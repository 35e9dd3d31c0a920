package io.github.firstoff.command;

import io.github.firstoff.intake.SafeText;
import java.io.PrintStream;
import java.io.PrintWriter;

/** Where results and messages go: the only way a command speaks. Nothing that it prints can move a terminal, whatever a file holds. */
final class Console {
    private final PrintWriter out;
    private final PrintWriter err;

    Console(PrintStream out, PrintStream err) {
        this.out = new PrintWriter(out, false, java.nio.charset.StandardCharsets.UTF_8);
        this.err = new PrintWriter(err, true, java.nio.charset.StandardCharsets.UTF_8);
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

    void flush() {
        out.flush();
        err.flush();
    }
}
