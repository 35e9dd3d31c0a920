package io.github.firstoff.command;

import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * One line on a terminal that says how far a long piece of work has come. It shows nothing before the work has lasted a moment, renews itself a
 * few times a second at most, and leaves nothing behind.
 */
final class Progress {
    private static final long PATIENCE_NANOS = 700_000_000L;
    private static final long PAUSE_NANOS = 150_000_000L;
    private static final String CLEARED = "\r\u001B[K";

    private final Consumer<String> terminal;
    private final boolean shown;
    private final LongSupplier nanoTime;
    private final long start;
    private long last;
    private boolean dirty;

    /**
     * A line.
     *
     * @param terminal writes to standard error as it is, without a line end
     * @param shown whether standard error is a terminal; without one nothing is ever written
     * @param nanoTime a clock that only runs forwards
     */
    Progress(Consumer<String> terminal, boolean shown, LongSupplier nanoTime) {
        this.terminal = terminal;
        this.shown = shown;
        this.nanoTime = nanoTime;
        this.start = nanoTime.getAsLong();
        this.last = start;
    }

    /** So much is done of one kind of work. */
    void at(String what, int done, int all) {
        long now = nanoTime.getAsLong();
        if (!shown || now - start < PATIENCE_NANOS || (dirty && done < all && now - last < PAUSE_NANOS)) {
            return;
        }
        last = now;
        dirty = true;
        terminal.accept(CLEARED + what + (all > 0 ? " " + done + " of " + all : " …"));
    }

    /** Takes the line away, so that results and messages stand on lines of their own. */
    void end() {
        if (dirty) {
            terminal.accept(CLEARED);
            dirty = false;
        }
    }
}
