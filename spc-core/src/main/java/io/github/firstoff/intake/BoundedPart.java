package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;

/**
 * What is unpacked from a part of a workbook, counted as it comes: what the list of contents says of its size is not believed. Ends with a
 * fault where more comes than a part can sensibly hold, or where one tag or text alone would fill the memory.
 */
final class BoundedPart extends BlockwiseStream {
    private static final long LONGEST_TOKEN = 1L << 20;
    private static final long NO_SUM = -1;

    private final String file;
    private final InputStream unpacked;
    private final long most;
    private final long expectedSum;
    private final CRC32 sum = new CRC32();
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
        this(file, unpacked, most, NO_SUM);
    }

    private BoundedPart(String file, InputStream unpacked, long most, long expectedSum) {
        this.unpacked = unpacked;
        this.file = file;
        this.most = most;
        this.expectedSum = expectedSum;
    }

    /**
     * A part whose bytes must have the check sum that the list of contents states (CRC-32, PKWARE's application note, 4.4.7): a digit that
     * changed on a disk or on the way would otherwise be read as it came. The platform's own reader does not look.
     *
     * @param file the workbook
     * @param unpacked its bytes as they are unpacked
     * @param most how many there may be
     * @param entry the part in the list of contents
     */
    static BoundedPart checked(String file, InputStream unpacked, long most, ZipEntry entry) {
        return new BoundedPart(file, unpacked, most, entry.getCrc());
    }

    /** Says that a tag or a text was read: only what comes between two such is limited. */
    void tokenRead() {
        sinceToken = 0;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count;
        try {
            count = unpacked.read(buffer, offset, length);
        } catch (ZipException | EOFException damaged) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    Where.inFile(file),
                    "the workbook is damaged: what is packed in it cannot be unpacked",
                    "",
                    "the whole file; it was perhaps cut short"));
        }
        if (count > 0 && expectedSum != NO_SUM) {
            sum.update(buffer, offset, count);
        } else if (count < 0 && expectedSum != NO_SUM && sum.getValue() != expectedSum) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    Where.inFile(file),
                    "the workbook is damaged: what is packed in it is not what was packed, by its check sum",
                    "",
                    "the file as the spreadsheet saved it; copy it anew"));
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

    @Override
    public void close() throws IOException {
        unpacked.close();
    }
}
