package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Something to read, with the name by which messages call it. */
public final class Input {
    private final String name;
    private final Opener opener;
    private final Function<String, Optional<Input>> beside;
    private @Nullable Path path;
    private @Nullable State state;
    private boolean readAgain = true;

    private Input(String name, Opener opener, Function<String, Optional<Input>> beside) {
        this.name = name;
        this.opener = opener;
        this.beside = beside;
    }

    /** Opens the bytes of an input. */
    @FunctionalInterface
    private interface Opener {
        InputStream open() throws IOException;
    }

    /** What a file was like when it was opened. */
    private record State(long size, FileTime changed) {
        static State of(Path path) throws IOException {
            BasicFileAttributes attributes = Files.readAttributes(path, BasicFileAttributes.class);
            return new State(attributes.size(), attributes.lastModifiedTime());
        }
    }

    /** A file, called as its path is written. Anything but a regular file is refused when it is read: it may have no end. */
    public static Input file(Path path) {
        return file(path.toString(), path);
    }

    /** A file that messages call by another name than its path. */
    public static Input file(String name, Path path) {
        Opener opener = () -> {
            if (Files.isDirectory(path)) {
                throw new TextRefused(Fault.of(
                        FaultKind.UNREADABLE_FILE, Where.inFile(name), "", "a directory", "a file with text in it"));
            }
            if (Files.exists(path) && !Files.isRegularFile(path)) {
                throw new TextRefused(Fault.of(
                        FaultKind.UNREADABLE_FILE,
                        Where.inFile(name),
                        "",
                        "a device or a pipe",
                        "a file; readings from a pipe are read from standard input, which is called -"));
            }
            return Files.newInputStream(path);
        };
        Input input =
                new Input(name, opener, relative -> sibling(path, relative).map(Input::file));
        input.path = path;
        return input;
    }

    /** A stream, such as the standard input; read once, and not closed before it was read to its end. */
    public static Input stream(String name, InputStream stream) {
        Input input = new Input(name, () -> stream, relative -> Optional.empty());
        input.readAgain = false;
        return input;
    }

    /** A text that is already there. */
    public static Input text(String name, String text) {
        return bytes(name, text.getBytes(StandardCharsets.UTF_8), relative -> Optional.empty());
    }

    /**
     * Bytes that are already there.
     *
     * @param name by which messages call it
     * @param bytes the bytes; not copied, so leave them as they are
     * @param beside finds what a path names that begins at the folder of this input; empty where there is no such thing
     */
    public static Input bytes(String name, byte[] bytes, Function<String, Optional<Input>> beside) {
        return new Input(name, () -> new ByteArrayInputStream(bytes), beside);
    }

    /** Whether it can be opened more than once: a stream cannot. */
    boolean canBeReadAgain() {
        return readAgain;
    }

    /** The name by which messages call it. */
    public String name() {
        return name;
    }

    /** What a path names which begins at the folder of this one; empty if this has no folder or the path is not such a one. */
    Optional<Input> beside(String relative) {
        return beside.apply(relative);
    }

    /**
     * The file that a path names which begins at the folder of a file; empty if the path is not such a one.
     *
     * @param file the file
     * @param relative the path as it was written
     */
    public static Optional<Path> sibling(Path file, String relative) {
        try {
            Path other = Path.of(relative);
            return other.isAbsolute() ? Optional.empty() : Optional.of(file.resolveSibling(other));
        } catch (InvalidPathException unusable) {
            return Optional.empty();
        }
    }

    /** Opens it. */
    InputStream open() throws TextRefused {
        try {
            InputStream stream = opener.open();
            if (path != null) {
                state = State.of(path);
            }
            return stream;
        } catch (TextRefused refused) {
            throw refused;
        } catch (IOException failure) {
            throw new TextRefused(unreadable(failure));
        }
    }

    /** Refuses a file that has more bytes than when it was opened: somebody is still writing it, perhaps for ever. */
    void requireNoMoreThan(long read) throws TextRefused {
        if (state != null && read > state.size()) {
            throw new TextRefused(changed("the file grew while it was read"));
        }
    }

    /** Refuses a file that is no longer what it was when it was opened: its last row may be cut in two. */
    void requireUnchanged(long read) throws TextRefused {
        State before = state;
        if (before == null || path == null) {
            return;
        }
        try {
            if (read != before.size() || !before.equals(State.of(path))) {
                throw new TextRefused(changed("the file changed while it was read"));
            }
        } catch (TextRefused refused) {
            throw refused;
        } catch (IOException failure) {
            throw new TextRefused(unreadable(failure));
        }
    }

    private Fault changed(String message) {
        return Fault.of(
                FaultKind.UNREADABLE_FILE,
                Where.inFile(name),
                message,
                "",
                "a file that is complete; try again when it is no longer written to");
    }

    /** The fault that a failure to open or read comes to. */
    Fault unreadable(IOException failure) {
        boolean meant = failure instanceof NoSuchFileException && name.equals("-");
        return Fault.of(
                FaultKind.UNREADABLE_FILE,
                Where.inFile(name),
                reason(failure),
                "",
                meant
                        ? "the name of a file; standard input is read only where a command's help says so"
                        : "a file that can be read");
    }

    private static String reason(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (failure instanceof AccessDeniedException) {
            return "the file may not be read by this user";
        }
        String message = failure.getMessage();
        return "the file cannot be read" + (message == null ? "" : " (" + Echo.plain(message) + ")");
    }
}
