package io.github.firstoff.command;

import io.github.firstoff.intake.Input;
import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.Evidence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Files as inputs. One that keeps reads every file once, and gives these very bytes to the reader and to the sheet that carries them, so
 * that no change of the file in between can part the two.
 */
final class FileShelf implements Inputs.Shelf {
    private final boolean keeps;
    private final InputStream standardInput;
    private final List<Evidence.Kept> kept = new ArrayList<>();
    private final List<Path> opened = new ArrayList<>();
    private long room = Evidence.MOST_READINGS;

    /**
     * A shelf.
     *
     * @param keeps whether the bytes are wanted afterwards
     * @param standardInput what {@code -} stands for
     */
    FileShelf(boolean keeps, InputStream standardInput) {
        this.keeps = keeps;
        this.standardInput = standardInput;
    }

    @Override
    public Input open(Role role, int place, String name) {
        if (name.equals(Inputs.STANDARD_INPUT) && role == Role.READINGS) {
            return standardInput(role, place);
        }
        Path path = Path.of(name);
        opened.add(path);
        if (!keeps || (Files.exists(path) && !Files.isRegularFile(path))) {
            // Whoever reads it says in its own words what is wrong with a folder, a device or a pipe: they may have no
            // end.
            return Input.file(path);
        }
        byte[] bytes;
        try {
            long size = Files.size(path);
            if (size > room) {
                // Too large to carry, and too large to hold in memory without need: read as a stream, and named by its
                // digest.
                kept.add(new Evidence.Kept(
                        new CarriedFile(role, Inputs.nameOf(name), size, digestOf(path), Optional.empty()),
                        new byte[0]));
                return Input.file(path);
            }
            bytes = Files.readAllBytes(path);
        } catch (IOException unreadable) {
            // Whoever reads it says in its own words what is wrong with it.
            return Input.file(path);
        }
        keep(role, place, name, bytes);
        return Input.bytes(
                name,
                bytes,
                relative -> Input.sibling(path, relative)
                        .map(other -> open(role == Role.HOUSE ? Role.LOGO : Role.COUNTERPART, 1, other.toString())));
    }

    private Input standardInput(Role role, int place) {
        String name = Inputs.STANDARD_INPUT_NAME;
        if (!keeps) {
            return Input.stream(name, standardInput);
        }
        try {
            return once(role, place, name, standardInput);
        } catch (IOException fault) {
            throw new OutputFault("standard input cannot be read: " + Faults.reason(fault), fault);
        }
    }

    /** What can be read only once is read whole, up to the most that is carried. */
    private Input once(Role role, int place, String name, InputStream stream) throws IOException {
        byte[] bytes = stream.readNBytes((int) Math.min(room, Integer.MAX_VALUE - 8));
        if (bytes.length == room) {
            throw new OutputFault(name + " is too long to be carried in a sheet; save it as a file");
        }
        keep(role, place, name, bytes);
        return Input.bytes(name, bytes, relative -> Optional.empty());
    }

    private void keep(Role role, int place, String name, byte[] bytes) {
        room = Math.max(0, room - bytes.length);
        String own = Inputs.nameOf(name);
        kept.add(new Evidence.Kept(
                new CarriedFile(
                        role,
                        own,
                        bytes.length,
                        HexFormat.of().formatHex(sha256().digest(bytes)),
                        Optional.of(CarriedFile.attachmentName(role, place, own))),
                bytes));
    }

    /**
     * Bytes that were read already, in place of those of a file.
     *
     * @param bytes the bytes; not copied, so leave them as they are
     */
    Input open(Role role, int place, String name, byte[] bytes) {
        opened.add(Path.of(name));
        if (keeps) {
            if (bytes.length > room) {
                throw new OutputFault(name + " is too long to be carried in a sheet");
            }
            keep(role, place, name, bytes);
        }
        return Input.bytes(name, bytes, relative -> Optional.empty());
    }

    @Override
    public void wasRead(Role role, int place, String sha256) {
        List<Evidence.Kept> files =
                kept.stream().filter(each -> each.file().role() == role).toList();
        if (place <= files.size() && !files.get(place - 1).file().sha256().equals(sha256)) {
            throw new OutputFault(files.get(place - 1).file().name() + " was changed while it was read");
        }
    }

    /** The files that were opened, also those that others name, such as the logo of a house. */
    List<Path> opened() {
        return List.copyOf(opened);
    }

    /** What was opened, in that order. */
    List<Evidence.Kept> kept() {
        return List.copyOf(kept);
    }

    private static String digestOf(Path path) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(path), digest)) {
            in.transferTo(java.io.OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException fault) {
            throw new IllegalStateException("every Java has SHA-256", fault);
        }
    }
}
