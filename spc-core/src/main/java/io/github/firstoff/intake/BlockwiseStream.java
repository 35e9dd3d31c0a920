package io.github.firstoff.intake;

import java.io.IOException;
import java.io.InputStream;

/** A stream that watches what is read from it block by block: also a single byte, and what is skipped, goes that way. */
abstract class BlockwiseStream extends InputStream {
    @Override
    public final int read() throws IOException {
        byte[] one = new byte[1];
        int count = 0;
        while (count == 0) {
            count = read(one, 0, 1);
        }
        return count < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public abstract int read(byte[] buffer, int offset, int length) throws IOException;
}
