package io.github.firstoff.intake;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;

/** The first bytes of an input, by which its format is recognised: what it is called does not count. */
final class Beginning {
    /** How many bytes are looked at. */
    static final int MOST = 1 << 16;

    private final byte[] bytes;
    private final boolean whole;
    private final TextEncoding encoding;
    private final String text;

    private Beginning(byte[] bytes, boolean whole, TextEncoding encoding, String text) {
        this.bytes = bytes;
        this.whole = whole;
        this.encoding = encoding;
        this.text = text;
    }

    static Beginning of(byte[] bytes, boolean whole) {
        TextEncoding encoding = TextEncoding.of(bytes);
        CharsetDecoder decoder = encoding.charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        rest.position(encoding.markLength(bytes));
        CharBuffer chars = CharBuffer.allocate(bytes.length);
        boolean broken = decoder.decode(rest, chars, false).isError();
        if (broken && encoding == TextEncoding.UTF_8) {
            // The reader decides with all bytes before it whether this is another encoding; to recognise a format, its
            // ASCII is enough.
            while (rest.hasRemaining()) {
                int next = rest.get() & 0xFF;
                chars.put(next < 0x80 ? (char) next : '\uFFFD');
            }
        }
        return new Beginning(bytes, whole, encoding, chars.flip().toString());
    }

    /** The first bytes, at most {@link #MOST}; not to be changed. */
    byte[] bytes() {
        return bytes;
    }

    /** Whether these are all bytes of the input. */
    boolean isWhole() {
        return whole;
    }

    /** How the bytes make text, as far as the first ones show. */
    TextEncoding encoding() {
        return encoding;
    }

    /** The same as text, without a byte order mark; ends where the bytes are no text of that encoding. */
    String text() {
        return text;
    }

    /** Whether the input begins with these bytes. */
    boolean startsWith(int... first) {
        if (bytes.length < first.length) {
            return false;
        }
        for (int i = 0; i < first.length; i++) {
            if ((bytes[i] & 0xFF) != first[i]) {
                return false;
            }
        }
        return true;
    }

    /** The first character that is no space and no line end; NUL if there is none. */
    char firstCharacter() {
        for (int i = 0; i < text.length(); i++) {
            if (!Character.isWhitespace(text.charAt(i))) {
                return text.charAt(i);
            }
        }
        return '\0';
    }
}
