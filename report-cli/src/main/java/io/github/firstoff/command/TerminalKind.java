package io.github.firstoff.command;

import io.github.firstoff.keyed.Screen;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the program is connected to: a terminal or pipes, in which characters, with colours or without. */
final class TerminalKind {
    /** Where Linux names what the streams of this process are; a result that goes to a file does not hide the terminal there. */
    private static final Path STREAMS = Path.of("/proc/self/fd");

    private static final Pattern ROWS_AND_COLUMNS = Pattern.compile("\\d{1,5} ([1-9]\\d{0,4})");

    private TerminalKind() {}

    /** What can be shown to whoever keys into that stream. */
    static Screen.Abilities abilities(InputStream in) {
        return abilities(in, 2);
    }

    /** The same for standard output, where the result goes at the end. */
    static Screen.Abilities abilitiesOfOutput(InputStream in) {
        return abilities(in, 1);
    }

    private static Screen.Abilities abilities(InputStream in, int stream) {
        boolean typed = isTerminal(in);
        // A test or an embedder reads from elsewhere, and what this process is connected to says nothing there.
        boolean seen = in == System.in && isTerminal(stream);
        boolean colour = typed && seen && System.getenv("NO_COLOR") == null && !"dumb".equals(System.getenv("TERM"));
        return new Screen.Abilities(
                typed, !seen || speaksUtf8(), colour, typed && seen ? TerminalKind::columns : () -> Integer.MAX_VALUE);
    }

    /** How wide the terminal is that is keyed into; {@link Integer#MAX_VALUE} where it does not tell. */
    private static int columns() {
        if (!Files.isDirectory(STREAMS)) {
            return Integer.MAX_VALUE;
        }
        try {
            Process asking = new ProcessBuilder("stty", "size")
                    .redirectInput(ProcessBuilder.Redirect.INHERIT)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String size = new String(asking.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
            // Rows and columns; a terminal that does not know says 0.
            Matcher columns = ROWS_AND_COLUMNS.matcher(size);
            return columns.matches() ? Integer.parseInt(columns.group(1)) : Integer.MAX_VALUE;
        } catch (IOException withoutStty) {
            return Integer.MAX_VALUE;
        }
    }

    /** In which characters is keyed: those of the terminal's language settings, and UTF-8 through pipes and where these name none. */
    static Charset charset(InputStream in) {
        if (!isTerminal(in)) {
            return StandardCharsets.UTF_8;
        }
        Charset own = Charset.forName(nativeEncoding());
        return own.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : own;
    }

    /** The launcher fixes {@code file.encoding}, so only this tells what the terminal was set up for. */
    private static String nativeEncoding() {
        String name = System.getProperty("native.encoding", "UTF-8");
        return Charset.isSupported(name) ? name : "UTF-8";
    }

    private static boolean speaksUtf8() {
        return nativeEncoding().toUpperCase(Locale.ROOT).startsWith("UTF");
    }

    private static boolean isTerminal(InputStream in) {
        return in == System.in && isTerminal(0);
    }

    /** Whether standard input (0) or standard error (2) is a terminal. */
    private static boolean isTerminal(int stream) {
        if (!Files.isDirectory(STREAMS)) {
            return hasConsole();
        }
        try {
            String real = STREAMS.resolve(String.valueOf(stream)).toRealPath().toString();
            return real.startsWith("/dev/pts/") || real.startsWith("/dev/tty") || real.equals("/dev/console");
        } catch (IOException noPath) {
            // A pipe has none.
            return false;
        }
    }

    /** Elsewhere than on Linux only this can be asked; from Java 22 on it takes every stream for a terminal, which costs an echo. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean hasConsole() {
        return System.console() != null;
    }
}
