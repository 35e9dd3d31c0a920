package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * The bytes of an input while it is read: the first ones can be looked at beforehand, all are counted and digested, and a file that
 * changes while it is read is refused. Keeps no more than the first bytes.
 */
final class InputBytes extends BlockwiseStream {
    private final Input input;
    private final InputStream stream;
    private final MessageDigest digest = newDigest();
    private final Beginning beginning;
    private final long most;
    private int handedOn;
    private long read;
    private boolean atEnd;

    /**
     * Opens the input and reads its first bytes.
     *
     * @param most how many bytes it may have
     */
    InputBytes(Input input, long most) throws TextRefused {
        this.input = input;
        this.most = most;
        this.stream = input.open();
        byte[] first = new byte[Beginning.MOST];
        int count = 0;
        try {
            // A pipe hands on what there is; the beginning of a file is looked at whole.
            int more = 0;
            while (more >= 0 && count < first.length) {
                more = pull(first, count, first.length - count);
                count += Math.max(0, more);
            }
        } catch (TextRefused refused) {
            close();
            throw refused;
        }
        this.beginning = Beginning.of(Arrays.copyOf(first, count), atEnd);
    }

    /** The SHA-256 of a text's bytes in hexadecimal. */
    static String sha256Of(String text) {
        return HexFormat.of().formatHex(newDigest().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }

    /** The input that these are the bytes of. */
    Input input() {
        return input;
    }

    /** The first bytes; they are still to be read. */
    Beginning beginning() {
        return beginning;
    }

    private int pull(byte[] buffer, int offset, int length) throws TextRefused {
        if (atEnd) {
            // Who writes to a pipe may close it behind its last byte; the end is not looked for a second time.
            return -1;
        }
        int count;
        try {
            count = stream.read(buffer, offset, length);
        } catch (IOException failure) {
            throw new TextRefused(input.unreadable(failure));
        }
        if (count < 0) {
            atEnd = true;
            input.requireUnchanged(read);
            return -1;
        }
        digest.update(buffer, offset, count);
        read += count;
        input.requireNoMoreThan(read);
        if (read > most) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(input.name()),
                    "",
                    "a file of more than " + (most >= 1 << 20 ? (most >> 20) + " MiB" : (most >> 10) + " KiB"),
                    "at most that; this is perhaps another file"));
        }
        return count;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws TextRefused {
        if (length == 0) {
            return 0;
        }
        int first = Math.min(length, beginning.bytes().length - handedOn);
        if (first > 0) {
            System.arraycopy(beginning.bytes(), handedOn, buffer, offset, first);
            handedOn += first;
            return first;
        }
        return pull(buffer, offset, length);
    }

    /** Leaves out bytes of the beginning of which nothing was read yet, such as a mark of the encoding. */
    void passOver(int count) {
        handedOn = Math.min(handedOn + count, beginning.bytes().length);
    }

    /** Reads what is left, so that the digest is that of all bytes. */
    void skipToEnd() throws TextRefused {
        byte[] unused = new byte[8192];
        int count = 0;
        while (count >= 0) {
            count = read(unused, 0, unused.length);
        }
    }

    /** The SHA-256 of all bytes in hexadecimal; only when they were read to their end. */
    String sha256() {
        return HexFormat.of().formatHex(digest.digest());
    }

    @Override
    public void close() {
        try {
            stream.close();
        } catch (IOException failure) {
            // Everything that was wanted has been read; a failure to close says nothing about it.
        }
    }
}
