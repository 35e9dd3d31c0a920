package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.ZipException;

/**
 * What is unpacked from a part of a workbook, counted as it comes: what the list of contents says of its size is not believed. Ends with a
 * fault where more comes than a part can sensibly hold, or where one tag or text alone would fill the memory.
 */
final class BoundedPart extends FilterInputStream {
    private static final long LONGEST_TOKEN = 1L << 20;

    private final String file;
    private final long most;
    private long read;
    private long sinceToken;

    /**
     * A part.
     *
     * @param file the workbook
     * @param unpacked its bytes as they are unpacked
     * @param most how many there may be
     */
    BoundedPart(String file, InputStream unpacked, long most) {
        super(unpacked);
        this.file = file;
        this.most = most;
    }

    /** Says that a tag or a text was read: only what comes between two such is limited. */
    void tokenRead() {
        sinceToken = 0;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        int count = 0;
        while (count == 0) {
            count = read(one, 0, 1);
        }
        return count < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count;
        try {
            count = super.read(buffer, offset, length);
        } catch (ZipException | java.io.EOFException damaged) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    Where.inFile(file),
                    "the workbook is damaged: what is packed in it cannot be unpacked",
                    "",
                    "the whole file; it was perhaps cut short"));
        }
        read += Math.max(0, count);
        sinceToken += Math.max(0, count);
        if (read > most) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(file),
                    "what is packed in the workbook unpacks to more than " + most / (1 << 20) + " MiB",
                    "",
                    "a workbook of readings"));
        }
        if (sinceToken > LONGEST_TOKEN) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(file),
                    "",
                    "a tag or a text of more than a million characters in the workbook",
                    "short texts"));
        }
        return count;
    }
}
