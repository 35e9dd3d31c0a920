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

    void flush() {
        out.flush();
        err.flush();
    }
}
