package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.Reader;

/** Text whose lines have a greatest length, so that whoever reads line by line needs no more memory than that. */
final class LimitedLines extends Reader {
    /** The longest line in characters: far more than any row of readings. */
    static final int LONGEST = 1 << 20;

    private final String file;
    private final Reader text;
    private long line = 1;
    private int length;
    private boolean afterReturn;

    LimitedLines(String file, Reader text) {
        this.file = file;
        this.text = text;
    }

    /** The line that the next character stands in, counted from 1. */
    long line() {
        return line;
    }

    /** The rest of the line, without its end. */
    String readLine() throws IOException {
        StringBuilder rest = new StringBuilder();
        int next = read();
        while (next >= 0 && next != '\n' && next != '\r') {
            rest.append((char) next);
            next = read();
        }
        return rest.toString();
    }

    @Override
    public int read(char[] buffer, int offset, int count) throws IOException {
        int got = text.read(buffer, offset, count);
        for (int i = offset; i < offset + got; i++) {
            follow(buffer[i]);
        }
        return got;
    }

    private void follow(char c) throws TextRefused {
        if (c == '\n' || c == '\r') {
            if (c == '\r' || !afterReturn) {
                line++;
            }
            length = 0;
        } else if (++length > LONGEST) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    new Where(file, line, 0, ""),
                    "",
                    "a line of more than a million characters",
                    "short lines; this is perhaps another file"));
        }
        afterReturn = c == '\r';
    }

    /** Leaves the text open: whoever opened it closes it. */
    @Override
    public void close() {}
}
