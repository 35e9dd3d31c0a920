package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Strict UTF-8 text from bytes. A byte order mark is skipped; a byte that is no UTF-8 and a NUL end the text with a fault that names
 * the place, after everything before it was handed on. Keeps the SHA-256 of the bytes.
 */
final class Utf8Reader extends Reader {
    private static final int BYTES = 1 << 16;
    private static final String SAVE_AS = "text in UTF-8; save the file with that encoding";

    private final Input input;
    private final InputStream stream;
    private final MessageDigest digest;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private final ByteBuffer bytes = ByteBuffer.allocate(BYTES).flip();
    private final CharBuffer chars = CharBuffer.allocate(BYTES).flip();
    private final long most;
    private long read;
    private boolean atEnd;
    private boolean started;
    private long line = 1;
    private int column = 1;
    private boolean afterReturn;
    private @Nullable TextRefused pending;

    /**
     * Opens the input.
     *
     * @param most how many bytes it may have
     */
    Utf8Reader(Input input, long most) throws TextRefused {
        this.input = input;
        this.most = most;
        this.digest = newDigest();
        this.stream = input.open();
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

    @Override
    public int read(char[] buffer, int offset, int length) throws TextRefused {
        if (length == 0) {
            return 0;
        }
        while (!chars.hasRemaining()) {
            if (pending != null) {
                throw pending;
            }
            if (!decodeMore()) {
                return -1;
            }
        }
        int count = Math.min(length, chars.remaining());
        chars.get(buffer, offset, count);
        return count;
    }

    /** The first characters, which are still to be read; empty if there are none, or if the text begins with a fault. */
    CharSequence beginning() throws TextRefused {
        while (!chars.hasRemaining() && pending == null) {
            if (!decodeMore()) {
                return "";
            }
        }
        return chars.duplicate();
    }

    /** Fills {@link #chars}; false at the end of the text. */
    private boolean decodeMore() throws TextRefused {
        if (!bytes.hasRemaining()) {
            fill();
        }
        while (!started) {
            fill();
        }
        chars.clear();
        CoderResult result = decoder.decode(bytes, chars, atEnd);
        chars.flip();
        boolean wasEmpty = !chars.hasRemaining();
        int nul = follow();
        if (nul >= 0) {
            chars.limit(nul);
            pending = fault(
                    FaultKind.UNREADABLE_TEXT, "a NUL byte", "text; this is perhaps no text file, or one in UTF-16");
            return true;
        }
        if (result.isError()) {
            int bad = bytes.get(bytes.position()) & 0xFF;
            pending = fault(
                    FaultKind.UNREADABLE_TEXT,
                    String.format(Locale.ROOT, "the byte 0x%02X, which is no UTF-8 here", bad),
                    SAVE_AS);
            return true;
        }
        if (wasEmpty && result.isUnderflow()) {
            if (atEnd) {
                return false;
            }
            fill();
        }
        return true;
    }

    private void fill() throws TextRefused {
        bytes.compact();
        int before = bytes.position();
        try {
            // Who reads rows may close the stream behind its last byte; the end is not looked for a second time.
            int count = atEnd ? -1 : stream.read(bytes.array(), before, bytes.remaining());
            if (count < 0) {
                atEnd = true;
            } else {
                digest.update(bytes.array(), before, count);
                bytes.position(before + count);
                read += count;
            }
        } catch (IOException failure) {
            bytes.flip();
            throw new TextRefused(input.unreadable(failure));
        }
        bytes.flip();
        if (read > most) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(input.name()),
                    "",
                    "a file of more than " + most / (1024 * 1024) + " MiB",
                    "at most that; this is perhaps another file"));
        }
        if (!started && (atEnd || bytes.remaining() >= 4)) {
            started = true;
            checkStart();
        }
    }

    private void checkStart() throws TextRefused {
        int at = bytes.position();
        int first = unsigned(at);
        int second = unsigned(at + 1);
        boolean utf16 = (first == 0xFF && second == 0xFE) || (first == 0xFE && second == 0xFF);
        if (utf16) {
            throw wrongFormat("text in UTF-16", SAVE_AS);
        }
        if (first == 0xEF && second == 0xBB && unsigned(at + 2) == 0xBF) {
            bytes.position(at + 3);
        }
        if (first == 'P' && second == 'K' && unsigned(at + 2) < 10) {
            throw wrongFormat("a zip archive or a workbook", "text; save a workbook as CSV in UTF-8");
        }
        if (first == 0xD0 && second == 0xCF) {
            throw wrongFormat("a workbook of an older kind", "text; save it as CSV in UTF-8");
        }
        if (first == '%' && second == 'P' && unsigned(at + 2) == 'D') {
            throw wrongFormat("a PDF", "text");
        }
        if (first == 0x1F && second == 0x8B) {
            throw wrongFormat("a file compressed with gzip", "text; unpack it first");
        }
    }

    private int unsigned(int index) {
        return index < bytes.limit() ? bytes.get(index) & 0xFF : -1;
    }

    private TextRefused wrongFormat(String found, String expected) {
        return new TextRefused(Fault.of(FaultKind.WRONG_FORMAT, Where.inFile(input.name()), "", found, expected));
    }

    /** Counts lines and columns over what was decoded; the index of the first NUL, or -1. */
    private int follow() {
        for (int i = 0; i < chars.limit(); i++) {
            char c = chars.get(i);
            if (c == 0) {
                return i;
            }
            if (c == '\n' && afterReturn) {
                afterReturn = false;
                continue;
            }
            afterReturn = c == '\r';
            if (c == '\n' || c == '\r') {
                line++;
                column = 1;
            } else {
                column++;
            }
        }
        return -1;
    }

    private TextRefused fault(FaultKind kind, String found, String expected) {
        return new TextRefused(Fault.of(kind, new Where(input.name(), line, column, ""), "", found, expected));
    }

    /** Reads what is left, so that the digest is that of all bytes. */
    void skipToEnd() throws TextRefused {
        char[] unused = new char[8192];
        int count = 0;
        while (count >= 0) {
            count = read(unused, 0, unused.length);
        }
    }

    /** The SHA-256 of all bytes in hexadecimal; only when the text was read to its end. */
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
