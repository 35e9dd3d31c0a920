package io.github.firstoff.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.ToIntFunction;

/** Work that goes on until somebody asks for its end with Ctrl-C, and then finishes what it is about. */
final class UntilInterrupted {
    /** How long a program that was asked to end stays for what is unfinished. */
    private static final long LAST_WORDS_MILLIS = 20_000;

    private UntilInterrupted() {}

    /**
     * Does the work.
     *
     * @param console hears what could not be finished
     * @param unfinished what is said then
     * @param work gets the latch that opens when the end is asked for
     * @return what the work returns
     */
    static int run(Console console, String unfinished, ToIntFunction<CountDownLatch> work) {
        CountDownLatch asked = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        Thread hook = new Thread(() -> {
            asked.countDown();
            try {
                if (!ended.await(LAST_WORDS_MILLIS, TimeUnit.MILLISECONDS)) {
                    console.message("firstoff: " + unfinished);
                }
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
            }
        });
        Runtime.getRuntime().addShutdownHook(hook);
        try {
            return work.applyAsInt(asked);
        } finally {
            ended.countDown();
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException alreadyEnding) {
                // The program was asked to end; the hook has done its work.
                console.flush();
            }
        }
    }
}
