package io.github.firstoff.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A file that is either wholly written or not touched: the content goes to a temporary file in the same folder, which is moved
 * into place when it is complete.
 */
final class OutputFile {
    /** Something that writes. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private OutputFile() {}

    /**
     * Writes the file, making its folder if that is missing.
     *
     * @throws OutputFault if it cannot be written; an older file of that name is then still as it was
     */
    static void write(Path target, Content content) {
        Path absolute = target.toAbsolutePath().normalize();
        Path folder = absolute.getParent();
        if (folder == null) {
            throw new OutputFault(target + " names no file");
        }
        if (Files.isDirectory(absolute)) {
            throw new OutputFault(target + " is a folder; name a file");
        }
        try {
            Files.createDirectories(folder);
            if (Files.exists(absolute) && !Files.isWritable(absolute)) {
                throw new OutputFault(target + " is write-protected");
            }
            Path temporary = folder.resolve(
                    "." + absolute.getFileName() + "." + ProcessHandle.current().pid() + ".part");
            try {
                try (OutputStream out = Files.newOutputStream(
                        temporary,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.TRUNCATE_EXISTING,
                        StandardOpenOption.WRITE)) {
                    content.writeTo(out);
                }
                move(temporary, absolute);
            } finally {
                Files.deleteIfExists(temporary);
            }
        } catch (IOException fault) {
            throw new OutputFault(target + " cannot be written: " + Faults.reason(fault), fault);
        }
    }

    /**
     * Writes a table and what belongs to it, one within the other: where either cannot be written, neither is new.
     *
     * @param table where the table goes; without it only what belongs to it is written
     * @param text the table
     * @param withIt writes what belongs to it
     * @throws OutputFault if the table cannot be written
     */
    static void writeTogether(@Nullable Path table, Supplier<String> text, Runnable withIt) {
        if (table == null) {
            withIt.run();
            return;
        }
        byte[] bytes = text.get().getBytes(StandardCharsets.UTF_8);
        write(table, stream -> {
            stream.write(bytes);
            withIt.run();
        });
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException fault) {
            // Some network folders cannot replace atomically; a plain move in one folder is the best they offer.
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
