package io.github.firstoff.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** The ways in which bytes make text that are told apart here. */
enum TextEncoding {
    /** UTF-8, with or without a byte order mark; ASCII is a part of it. */
    UTF_8("UTF-8", StandardCharsets.UTF_8),
    /** UTF-16 with the low byte first. */
    UTF_16_LE("UTF-16 (low byte first)", StandardCharsets.UTF_16LE),
    /** UTF-16 with the high byte first. */
    UTF_16_BE("UTF-16 (high byte first)", StandardCharsets.UTF_16BE),
    /** The usual encoding of older Windows programs in western Europe. */
    WINDOWS_1252("Windows-1252", Charset.forName("windows-1252"));

    /** So few bytes of a file without a mark tell UTF-16 from something else. */
    private static final int PAIRS = 256;

    private final String words;
    private final Charset charset;

    TextEncoding(String words, Charset charset) {
        this.words = words;
        this.charset = charset;
    }

    String words() {
        return words;
    }

    Charset charset() {
        return charset;
    }

    /**
     * The encoding that the first bytes show: by the byte order mark; without one, UTF-16 where most characters have a NUL byte on the
     * same side, because measurements are mostly digits; otherwise UTF-8. That something is Windows-1252 shows only at the first byte
     * that is no UTF-8, which may be late in the file.
     */
    static TextEncoding of(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return UTF_16_LE;
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return UTF_16_BE;
        }
        int pairs = Math.min(PAIRS, bytes.length / 2);
        int low = 0;
        int high = 0;
        for (int i = 0; i < pairs; i++) {
            boolean first = bytes[2 * i] == 0;
            boolean second = bytes[2 * i + 1] == 0;
            low += !first && second ? 1 : 0;
            high += first && !second ? 1 : 0;
        }
        if (low > pairs / 2 && high == 0) {
            return UTF_16_LE;
        }
        return high > pairs / 2 && low == 0 ? UTF_16_BE : UTF_8;
    }

    /** How many of the bytes are a byte order mark. */
    int markLength(byte[] bytes) {
        return switch (this) {
            case UTF_8 -> startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
            case UTF_16_LE -> startsWith(bytes, 0xFF, 0xFE) ? 2 : 0;
            case UTF_16_BE -> startsWith(bytes, 0xFE, 0xFF) ? 2 : 0;
            case WINDOWS_1252 -> 0;
        };
    }

    private static boolean startsWith(byte[] bytes, int... first) {
        for (int i = 0; i < first.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xFF) != first[i]) {
                return false;
            }
        }
        return true;
    }
}
