package io.github.firstoff.intake;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A small file whose changes are on the disk when {@link #force()} has returned, and perhaps not before: an interface so that a test
 * can cut the power between any two steps.
 */
interface DurableFile extends Closeable {

    /** All bytes. */
    byte[] read() throws IOException;

    /** How many bytes there are. */
    long size() throws IOException;

    /** Whether the file is still what its name stands for, and was not removed or replaced by another. */
    boolean isInPlace() throws IOException;

    /** Puts bytes there, over what stands there or behind the end. */
    void write(long at, byte[] bytes) throws IOException;

    /** Cuts the file to that length; a shorter one stays as it is. */
    void truncate(long size) throws IOException;

    /** Returns when everything before it is on the disk, the file's length included. */
    void force() throws IOException;

    /** A file on a disk. */
    final class OnDisk implements DurableFile {
        /** A session's whole text is held in memory; a file beyond this was not made by one. */
        private static final long LARGEST = 64L * 1024 * 1024;

        /** Windows keeps other programs from reading what is locked; a lock out here keeps only other sessions out. */
        private static final long BEYOND_ANY_FILE = Long.MAX_VALUE - 1;

        private final Path path;
        private final @Nullable Object key;
        private final FileChannel channel;
        private final FileLock lock;

        private OnDisk(Path path, FileChannel channel, FileLock lock) throws IOException {
            this.path = path;
            this.key = key(path);
            this.channel = channel;
            this.lock = lock;
        }

        /** Opens a file, or makes it, and keeps every other session out of it until it is closed. */
        static OnDisk locked(Path path) throws IOException {
            return locked(path, 0);
        }

        /** The same, but so that other programs can read the file meanwhile also where a lock shuts them out. */
        static OnDisk lockedForWriting(Path path) throws IOException {
            return locked(path, BEYOND_ANY_FILE);
        }

        private static OnDisk locked(Path path, long from) throws IOException {
            FileChannel channel = channel(path);
            try {
                FileLock lock = channel.tryLock(from, Long.MAX_VALUE - from, false);
                if (lock != null) {
                    return new OnDisk(path, channel, lock);
                }
            } catch (OverlappingFileLockException heldByThisProgram) {
                channel.close();
                throw new KeyedFault(inUse(path), heldByThisProgram);
            } catch (IOException failure) {
                channel.close();
                throw failure;
            }
            channel.close();
            throw new KeyedFault(inUse(path));
        }

        private static String inUse(Path path) {
            return path + " is in use by another session; two cannot write one file";
        }

        private static FileChannel channel(Path path) throws IOException {
            boolean isNew = !Files.exists(path);
            FileChannel channel = FileChannel.open(
                    path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            if (isNew) {
                try {
                    forceFolderOf(path);
                } catch (IOException failure) {
                    channel.close();
                    throw failure;
                }
            }
            return channel;
        }

        /** A file's name is kept by its folder, which must be on the disk too. Windows has no such call and needs none. */
        static void forceFolderOf(Path path) throws IOException {
            Path folder = path.toAbsolutePath().getParent();
            if (folder == null || path.getFileSystem().getSeparator().equals("\\")) {
                return;
            }
            try (FileChannel opened = FileChannel.open(folder, StandardOpenOption.READ)) {
                opened.force(true);
            }
        }

        @Override
        public byte[] read() throws IOException {
            long size = channel.size();
            if (size > LARGEST) {
                throw new KeyedFault(
                        path + " has " + size + " bytes; no session of measuring makes a file over " + LARGEST);
            }
            ByteBuffer bytes = ByteBuffer.allocate((int) size);
            while (bytes.hasRemaining()) {
                if (channel.read(bytes, bytes.position()) < 0) {
                    break;
                }
            }
            byte[] read = new byte[bytes.position()];
            bytes.flip().get(read);
            return read;
        }

        @Override
        public long size() throws IOException {
            return channel.size();
        }

        @Override
        public boolean isInPlace() throws IOException {
            try {
                return Objects.equals(key, key(path));
            } catch (NoSuchFileException removed) {
                return false;
            }
        }

        /** What tells a file from another of the same name; null on Windows, which lets nobody replace a file that is open. */
        private static @Nullable Object key(Path path) throws IOException {
            return Files.readAttributes(path, BasicFileAttributes.class).fileKey();
        }

        @Override
        public void write(long at, byte[] bytes) throws IOException {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                channel.write(left, at + left.position());
            }
        }

        @Override
        public void truncate(long size) throws IOException {
            channel.truncate(size);
        }

        @Override
        public void force() throws IOException {
            channel.force(true);
        }

        @Override
        public void close() throws IOException {
            try (channel) {
                lock.release();
            }
        }
    }
}
