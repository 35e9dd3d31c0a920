package io.github.firstoff.keyed;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;

/**
 * Lines from a keyboard, a data key or a pipe, as they come. A line ends with a line feed, a carriage return or both; what stands at the
 * end of the input without one may have been cut short and is handed on as such, never as a line.
 */
public final class Lines {
    private static final int LONGEST = 4096;

    private final InputStream in;
    private final Charset charset;
    private boolean afterReturn;

    /**
     * Lines from a stream.
     *
     * @param in where they come from; read no further than the line that is asked for
     * @param charset in which its text is written, one in which line ends are single bytes
     */
    public Lines(InputStream in, Charset charset) {
        this.in = in;
        this.charset = charset;
    }

    /** What comes from the input. */
    sealed interface Line permits Text, Unusable, End {}

    /**
     * A line.
     *
     * @param text without surrounding space
     */
    record Text(String text) implements Line {}

    /**
     * A line that cannot be used.
     *
     * @param why in words
     */
    record Unusable(String why) implements Line {}

    /**
     * The end of the input.
     *
     * @param rest what stood there without a line end; empty text for nothing
     */
    record End(String rest) implements Line {}

    /** The next line; waits for it. */
    Line next() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        long length = 0;
        int c = in.read();
        if (c == '\n' && afterReturn) {
            c = in.read();
        }
        while (c >= 0 && c != '\n' && c != '\r') {
            length++;
            if (length <= LONGEST) {
                line.write(c);
            }
            c = in.read();
        }
        afterReturn = c == '\r';
        if (c < 0) {
            return new End(decodedAnyhow(line));
        }
        if (length > LONGEST) {
            return new Unusable("the line has " + length + " characters; at most " + LONGEST);
        }
        try {
            return new Text(charset.newDecoder()
                    .decode(ByteBuffer.wrap(line.toByteArray()))
                    .toString()
                    .strip());
        } catch (CharacterCodingException unreadable) {
            return new Unusable("the line holds bytes that are no text in " + charset.name());
        }
    }

    private String decodedAnyhow(ByteArrayOutputStream rest) {
        return new String(rest.toByteArray(), charset).strip();
    }
}
