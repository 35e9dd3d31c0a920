package io.github.firstoff.report.pdf;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a sheet says of its own bytes: how many it has, and their SHA-256 (FIPS 180-4), reckoned with 64 zeros where the digest itself stands.
 *
 * <p>It finds a change by accident or by a hand that does not know of it, in whatever part of the file. It proves nothing against one
 * who reckons it anew: that is what signatures are for.
 */
public final class Seal {
    private static final int DIGITS = 64;
    private static final int LENGTH_DIGITS = 12;
    private static final String ZEROS = "0".repeat(DIGITS);

    private static final Pattern FORM =
            Pattern.compile("firstoff-seal-1 length ([0-9]{" + LENGTH_DIGITS + "}) sha256 ([0-9a-f]{" + DIGITS + "})");

    /** What stands in a file until its bytes are known. */
    static final String OPEN = "firstoff-seal-1 length " + "0".repeat(LENGTH_DIGITS) + " sha256 " + ZEROS;

    private final long length;
    private final String digest;
    private final int place;

    private Seal(long length, String digest, int place) {
        this.length = length;
        this.digest = digest;
        this.place = place;
    }

    /** Closes the one open seal of a file, in place. */
    static void close(byte[] file) {
        Seal open = find(file).orElseThrow(() -> new IllegalStateException("the file was written without its seal"));
        byte[] count = String.format(java.util.Locale.ROOT, "%0" + LENGTH_DIGITS + "d", file.length)
                .getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(count, 0, file, open.place - " sha256 ".length() - LENGTH_DIGITS, LENGTH_DIGITS);
        byte[] digits = digestOf(file, file.length, open.place).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(digits, 0, file, open.place, DIGITS);
    }

    /** The first seal in a file, if there is one. */
    public static Optional<Seal> find(byte[] file) {
        // One character for each byte, so that places agree.
        Matcher matcher = FORM.matcher(new String(file, StandardCharsets.ISO_8859_1));
        if (!matcher.find()) {
            return Optional.empty();
        }
        return Optional.of(new Seal(Long.parseLong(matcher.group(1)), matcher.group(2), matcher.start(2)));
    }

    /** How many bytes the sheet had when it was made; signatures are appended behind them. */
    public long length() {
        return length;
    }

    /** Whether the bytes up to that length are those that were sealed. */
    public boolean isIntact(byte[] file) {
        return length <= file.length
                && place + DIGITS <= length
                && digest.equals(digestOf(file, Math.toIntExact(length), place));
    }

    private static String digestOf(byte[] file, int length, int place) {
        byte[] copy = Arrays.copyOf(file, length);
        System.arraycopy(ZEROS.getBytes(StandardCharsets.US_ASCII), 0, copy, place, DIGITS);
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(copy));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
