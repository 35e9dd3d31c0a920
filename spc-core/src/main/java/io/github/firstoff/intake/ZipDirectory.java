package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * The list of contents of a zip file (PKWARE's application note, 4.3.12 and 4.3.16), read before anything else reads the file: a list that
 * is long, that lies about its length or that names a thing twice is refused here, so that libraries never see it.
 *
 * @param names the names in the list, in its order
 */
record ZipDirectory(Set<String> names) {
    private static final int MOST_ENTRIES = 2000;
    private static final int LONGEST_NAME = 300;
    private static final int END_LENGTH = 22;
    private static final int ENTRY_LENGTH = 46;
    private static final int LONGEST_COMMENT = 0xFFFF;
    private static final int END_MARK = 0x06054B50;
    private static final int ENTRY_MARK = 0x02014B50;
    private static final int STORED = 0;
    private static final int DEFLATED = 8;

    ZipDirectory {
        names = Set.copyOf(names);
    }

    /** Reads the list. */
    static ZipDirectory of(String file, Path zip) throws IOException {
        try (RandomAccessFile bytes = new RandomAccessFile(zip.toFile(), "r")) {
            return read(file, bytes);
        }
    }

    private static ZipDirectory read(String file, RandomAccessFile bytes) throws IOException {
        long length = bytes.length();
        int tail = (int) Math.min(length, END_LENGTH + LONGEST_COMMENT);
        ByteBuffer end = at(bytes, length - tail, tail);
        int mark = tail - END_LENGTH;
        while (mark >= 0 && (end.getInt(mark) != END_MARK || mark + END_LENGTH + unsigned(end, mark + 20) != tail)) {
            mark--;
        }
        if (mark < 0) {
            throw broken(file, "the list of its contents is missing at the end");
        }
        int count = unsigned(end, mark + 10);
        long size = end.getInt(mark + 12) & 0xFFFFFFFFL;
        long offset = end.getInt(mark + 16) & 0xFFFFFFFFL;
        if (count > MOST_ENTRIES) {
            throw refused(
                    file,
                    FaultKind.TOO_LARGE,
                    "a zip archive of more than " + MOST_ENTRIES + " things",
                    "a workbook, which has a few dozen");
        }
        long most = (long) MOST_ENTRIES * (ENTRY_LENGTH + LONGEST_NAME + 2000);
        if (size > most || offset + size != length - tail + mark) {
            throw broken(file, "the list of its contents does not stand where the end of the file says");
        }
        ByteBuffer list = at(bytes, offset, (int) size);
        Set<String> names = new LinkedHashSet<>();
        for (int i = 0; i < count; i++) {
            names.add(entry(file, list, names));
        }
        if (list.hasRemaining()) {
            throw broken(file, "the list of its contents is longer than it says");
        }
        return new ZipDirectory(names);
    }

    private static String entry(String file, ByteBuffer list, Set<String> before) throws TextRefused {
        int from = list.position();
        if (list.remaining() < ENTRY_LENGTH || list.getInt(from) != ENTRY_MARK) {
            throw broken(file, "the list of its contents breaks off");
        }
        int flags = unsigned(list, from + 8);
        int method = unsigned(list, from + 10);
        int nameLength = unsigned(list, from + 28);
        int next = from + ENTRY_LENGTH + nameLength + unsigned(list, from + 30) + unsigned(list, from + 32);
        if (next > list.limit() || nameLength > LONGEST_NAME) {
            throw broken(file, "the list of its contents breaks off");
        }
        byte[] name = new byte[nameLength];
        list.position(from + ENTRY_LENGTH);
        list.get(name);
        list.position(next);
        String text = new String(name, StandardCharsets.UTF_8);
        if ((flags & 1) != 0) {
            throw refused(
                    file,
                    FaultKind.WRONG_FORMAT,
                    "a zip archive with a password",
                    "a workbook without one; save it again without a password");
        }
        if (method != STORED && method != DEFLATED) {
            throw broken(file, "it is packed in a way that workbooks are not");
        }
        if (before.contains(text)) {
            throw broken(file, Echo.quoted(text) + " stands in it twice");
        }
        return text;
    }

    private static ByteBuffer at(RandomAccessFile bytes, long offset, int length) throws IOException {
        byte[] read = new byte[length];
        bytes.seek(offset);
        bytes.readFully(read);
        return ByteBuffer.wrap(read).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static int unsigned(ByteBuffer bytes, int at) {
        return bytes.getShort(at) & 0xFFFF;
    }

    private static TextRefused refused(String file, FaultKind kind, String found, String expected) {
        return new TextRefused(Fault.of(kind, Where.inFile(file), "", found, expected));
    }

    private static TextRefused broken(String file, String why) {
        return new TextRefused(Fault.of(
                FaultKind.SYNTAX,
                Where.inFile(file),
                "the workbook is damaged: " + why,
                "",
                "the whole file; it was perhaps cut short"));
    }
}
