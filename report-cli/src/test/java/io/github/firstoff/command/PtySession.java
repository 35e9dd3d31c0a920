package io.github.firstoff.command;

import com.pty4j.PtyProcess;
import com.pty4j.PtyProcessBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The real program in a process of its own behind a pseudo-terminal: what a person sees and types. */
final class PtySession implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final Pattern COLOURS = Pattern.compile("\u001B\\[[0-9;]*m");

    private final PtyProcess process;
    private final OutputStream keyboard;
    private final StringBuilder seen = new StringBuilder();
    private final Thread watcher;
    private int read;

    private PtySession(PtyProcess process) {
        this.process = process;
        this.keyboard = process.getOutputStream();
        this.watcher = new Thread(this::watch, "pty");
        watcher.setDaemon(true);
        watcher.start();
    }

    /**
     * Starts the program.
     *
     * @param program the class path
     * @param archive a class data archive that shortens the start, used if it is there
     * @param columns how wide the terminal is
     * @param environment what differs from this process's environment
     */
    static PtySession start(
            String program, Path archive, int columns, Map<String, String> environment, List<String> arguments)
            throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xshare:auto",
                "-XX:SharedArchiveFile=" + archive,
                "-Xlog:disable",
                "-Xlog:all=off",
                "-Djava.awt.headless=true",
                "-cp",
                program,
                "io.github.firstoff.command.Firstoff"));
        command.addAll(arguments);
        Map<String, String> all = new HashMap<>(System.getenv());
        all.remove("NO_COLOR");
        all.put("TERM", "xterm");
        all.put("LC_ALL", "C.UTF-8");
        all.putAll(environment);
        return new PtySession(new PtyProcessBuilder(command.toArray(String[]::new))
                .setEnvironment(all)
                .setInitialColumns(columns)
                .setInitialRows(50)
                .start());
    }

    private void watch() {
        byte[] buffer = new byte[4096];
        try (InputStream screen = process.getInputStream()) {
            int count = screen.read(buffer);
            while (count >= 0) {
                synchronized (seen) {
                    seen.append(new String(buffer, 0, count, StandardCharsets.UTF_8));
                    seen.notifyAll();
                }
                count = screen.read(buffer);
            }
        } catch (IOException closed) {
            // A terminal whose process has ended says so by a failure to read.
        } finally {
            synchronized (seen) {
                seen.append('\0');
                seen.notifyAll();
            }
        }
    }

    /** Everything that stood on the screen so far, as it came. */
    String raw() {
        synchronized (seen) {
            return seen.toString();
        }
    }

    /** The same without colours and carriage returns. */
    String text() {
        return COLOURS.matcher(raw()).replaceAll("").replace("\r", "");
    }

    /** Waits until something that matches stands behind what was waited for before. */
    Matcher await(Pattern wanted) throws InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        synchronized (seen) {
            while (true) {
                Matcher matcher = wanted.matcher(seen);
                if (matcher.find(read)) {
                    read = matcher.end();
                    return matcher;
                }
                long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                boolean ended = seen.indexOf("\0") >= 0;
                if (left <= 0 || ended) {
                    throw new AssertionError("waited for " + wanted + (ended ? ", and the program ended" : "")
                            + "; on the screen: " + seen.substring(read));
                }
                seen.wait(Math.max(1, left));
            }
        }
    }

    /** Whether something that matches stands behind what was waited for last. */
    boolean saidSince(Pattern wanted) {
        synchronized (seen) {
            return wanted.matcher(seen).find(read);
        }
    }

    /** Types characters as they are, without Enter. */
    void press(String keys) throws IOException {
        for (byte key : keys.getBytes(StandardCharsets.UTF_8)) {
            keyboard.write(key);
            keyboard.flush();
        }
    }

    /** Types a line and Enter. */
    void type(String line) throws IOException {
        keyboard.write((line + "\r").getBytes(StandardCharsets.UTF_8));
        keyboard.flush();
    }

    /** Ends the process at once, as a power cut would (SIGKILL). */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor();
        watcher.join(TimeUnit.SECONDS.toMillis(10));
    }

    /** Waits for its end. */
    int exitCode() throws InterruptedException {
        int code = process.waitFor();
        watcher.join(TimeUnit.SECONDS.toMillis(10));
        return code;
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
