package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Strict text from bytes. A byte order mark is skipped; bytes that are no text in the encoding of the file, and a NUL, end the text
 * with a fault that names the place, after everything before it was handed on.
 *
 * <p>A file that is ASCII up to its first byte above 127, and no UTF-8 there, is read on as Windows-1252 if it may be: both are the same
 * up to that byte.
 */
final class TextReader extends Reader {
    private static final int CHARS = 1 << 16;
    private static final String SAVE_AS = "text in UTF-8; save the file with that encoding";

    private final Input input;
    private final InputBytes stream;
    private final boolean utf8Only;
    private final ByteBuffer bytes = ByteBuffer.allocate(CHARS).flip();
    private final CharBuffer chars = CharBuffer.allocate(CHARS).flip();
    private TextEncoding encoding;
    private CharsetDecoder decoder;
    private boolean atEnd;
    private boolean mayBeWindows;
    private long line = 1;
    private int column = 1;
    private boolean afterReturn;
    private @Nullable Notice switched;
    private @Nullable TextRefused pending;

    private TextReader(InputBytes stream, boolean utf8Only) throws TextRefused {
        this.input = stream.input();
        this.stream = stream;
        this.utf8Only = utf8Only;
        Beginning beginning = stream.beginning();
        encoding = beginning.encoding();
        decoder = strict(encoding);
        refuseOtherFiles(beginning);
        int mark = encoding.markLength(beginning.bytes());
        mayBeWindows = !utf8Only && encoding == TextEncoding.UTF_8 && mark == 0;
        stream.passOver(mark);
    }

    /** Text in UTF-8 and in nothing else. */
    static TextReader utf8(InputBytes stream) throws TextRefused {
        return new TextReader(stream, true);
    }

    /** Text in the encoding that the bytes show. */
    static TextReader of(InputBytes stream) throws TextRefused {
        return new TextReader(stream, false);
    }

    private static CharsetDecoder strict(TextEncoding encoding) {
        return encoding.charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
    }

    /** What to know of the encoding, once the text was read; empty if it is UTF-8. */
    Optional<Notice> notice() {
        if (switched != null) {
            return Optional.of(switched);
        }
        return encoding == TextEncoding.UTF_8
                ? Optional.empty()
                : Optional.of(new Notice(
                        Where.inFile(input.name()),
                        Remark.of(
                                "notice.encoding",
                                "the text was read as {0}",
                                Remark.word("encoding", encoding.words()))));
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

    /** Fills {@link #chars}; false at the end of the text. */
    private boolean decodeMore() throws TextRefused {
        if (!bytes.hasRemaining()) {
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
            if (!readsOnAsWindows()) {
                pending = notInEncoding(result.length());
            }
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
            int count = stream.read(bytes.array(), before, bytes.remaining());
            if (count < 0) {
                atEnd = true;
            } else {
                bytes.position(before + count);
            }
        } finally {
            bytes.flip();
        }
    }

    private boolean readsOnAsWindows() {
        if (!mayBeWindows) {
            return false;
        }
        mayBeWindows = false;
        byte[] first = {bytes.get(bytes.position())};
        String character = new String(first, TextEncoding.WINDOWS_1252.charset());
        encoding = TextEncoding.WINDOWS_1252;
        decoder = strict(encoding);
        switched = new Notice(
                new Where(input.name(), line, column, ""),
                Remark.of(
                        "notice.no-utf-8",
                        "this is no UTF-8; the file was read as {0}, which makes this character {1}",
                        Remark.word("encoding", encoding.words()),
                        Echo.quoted(character)));
        return true;
    }

    private TextRefused notInEncoding(int length) {
        StringBuilder found = new StringBuilder(length == 1 ? "the byte" : "the bytes");
        for (int i = 0; i < Math.min(length, bytes.remaining()); i++) {
            found.append(String.format(Locale.ROOT, " 0x%02X", bytes.get(bytes.position() + i) & 0xFF));
        }
        String name =
                encoding == TextEncoding.UTF_8 || encoding == TextEncoding.WINDOWS_1252 ? encoding.words() : "UTF-16";
        return fault(
                FaultKind.UNREADABLE_TEXT,
                found + ", which " + (length == 1 ? "is" : "are") + " no " + name + " here",
                SAVE_AS);
    }

    private void refuseOtherFiles(Beginning beginning) throws TextRefused {
        boolean utf32 = beginning.startsWith(0xFF, 0xFE, 0, 0) || beginning.startsWith(0, 0, 0xFE, 0xFF);
        if (utf32) {
            throw wrongFormat("text in UTF-32", SAVE_AS);
        }
        if (utf8Only && encoding != TextEncoding.UTF_8) {
            throw wrongFormat("text in UTF-16", SAVE_AS);
        }
        byte[] first = beginning.bytes();
        if (beginning.startsWith('P', 'K') && first.length > 2 && first[2] >= 0 && first[2] < 10) {
            throw wrongFormat("a zip archive or a workbook", "text; save a workbook as CSV in UTF-8");
        }
        if (beginning.startsWith(0xD0, 0xCF)) {
            throw wrongFormat("a workbook of an older kind", "text; save it as CSV in UTF-8");
        }
        if (beginning.startsWith('%', 'P', 'D')) {
            throw wrongFormat("a PDF", "text");
        }
        if (beginning.startsWith(0x1F, 0x8B)) {
            throw wrongFormat("a file compressed with gzip", "text; unpack it first");
        }
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
            if (c > 127) {
                mayBeWindows = false;
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

    /** Leaves the bytes open: whoever opened them reads the rest and closes them. */
    @Override
    public void close() {}
}
