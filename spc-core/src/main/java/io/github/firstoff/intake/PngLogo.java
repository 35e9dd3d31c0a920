package io.github.firstoff.intake;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Holds a PNG picture (ISO/IEC 15948) to what a sheet can print, and keeps of it only what makes the picture. */
final class PngLogo {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

    /** Larger than any logo needs at 600 dots per inch, and small enough to unpack without a thought. */
    private static final int MOST_DOTS = 4000;

    private static final Set<String> KEPT = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private final String name;
    private final ByteBuffer in;
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream packed = new ByteArrayOutputStream();
    private long expected;
    private boolean palette;
    private boolean paletteSeen;
    private boolean ended;

    private PngLogo(String name, byte[] bytes) {
        this.name = name;
        this.in = ByteBuffer.wrap(bytes);
    }

    static boolean isPng(byte[] bytes) {
        return bytes.length >= SIGNATURE.length
                && ByteBuffer.wrap(bytes, 0, SIGNATURE.length).equals(ByteBuffer.wrap(SIGNATURE));
    }

    /**
     * The picture alone.
     *
     * @throws InputRefused if it is damaged, too large or of a kind that sheets do not print
     */
    static byte[] kept(String name, byte[] bytes) {
        PngLogo logo = new PngLogo(name, bytes);
        logo.chunks();
        logo.requireWholePicture();
        return logo.out.toByteArray();
    }

    private void chunks() {
        in.position(SIGNATURE.length);
        out.writeBytes(SIGNATURE);
        while (!ended) {
            if (in.remaining() < 12) {
                throw damaged("it ends before its picture does");
            }
            int length = in.getInt();
            if (length < 0 || length > in.remaining() - 8) {
                throw damaged("a piece of it is longer than the file");
            }
            byte[] typed = new byte[length + 4];
            in.get(typed);
            int stated = in.getInt();
            CRC32 crc = new CRC32();
            crc.update(typed);
            String type = new String(typed, 0, 4, StandardCharsets.ISO_8859_1);
            if ((int) crc.getValue() != stated) {
                throw damaged("the check sum of a piece is wrong");
            }
            take(type, ByteBuffer.wrap(typed, 4, length).slice());
            if (KEPT.contains(type)) {
                out.writeBytes(ByteBuffer.allocate(4).putInt(length).array());
                out.writeBytes(typed);
                out.writeBytes(ByteBuffer.allocate(4).putInt(stated).array());
            } else if (Character.isUpperCase(type.charAt(0))) {
                throw damaged("it has a piece of an unknown kind that must be understood");
            }
        }
    }

    private void take(String type, ByteBuffer content) {
        boolean first = expected == 0;
        if (first != type.equals("IHDR")) {
            throw damaged("its pieces are out of order");
        }
        switch (type) {
            case "IHDR" -> header(content);
            case "PLTE" -> paletteSeen = true;
            case "IDAT" -> {
                byte[] data = new byte[content.remaining()];
                content.get(data);
                packed.writeBytes(data);
            }
            case "IEND" -> ended = true;
            default -> {
                // remarks, profiles and times are not copied
            }
        }
    }

    private void header(ByteBuffer header) {
        if (header.remaining() != 13) {
            throw damaged("its head has a wrong length");
        }
        int width = header.getInt();
        int height = header.getInt();
        int depth = header.get();
        int colour = header.get();
        header.getShort();
        int interlace = header.get();
        if (width < 1 || height < 1 || width > MOST_DOTS || height > MOST_DOTS) {
            throw InputRefused.because(Fault.of(
                    FaultKind.TOO_LARGE,
                    Fault.Where.inFile(name),
                    "",
                    width + " by " + height + " dots",
                    "at most " + MOST_DOTS + " by " + MOST_DOTS + " dots"));
        }
        int channels = switch (colour) {
            case 0, 3 -> 1;
            case 2 -> 3;
            case 4 -> 2;
            case 6 -> 4;
            default -> throw damaged("its kind of colour is unknown");
        };
        if (depth != 8 || interlace != 0) {
            throw InputRefused.because(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    Fault.Where.inFile(name),
                    "",
                    interlace != 0 ? "an interlaced PNG picture" : "a PNG picture of " + depth + " bits a channel",
                    "a PNG picture of 8 bits a channel, not interlaced"));
        }
        palette = colour == 3;
        expected = height * (1L + (long) width * channels);
    }

    /** Unpacks into nothing, so that whoever prints it later meets neither a hole nor a flood. */
    private void requireWholePicture() {
        if (palette && !paletteSeen) {
            throw damaged("its colours are missing");
        }
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(packed.toByteArray());
            byte[] sink = new byte[1 << 16];
            long found = 0;
            while (!inflater.finished() && found <= expected) {
                int count = inflater.inflate(sink);
                if (count == 0) {
                    break;
                }
                found += count;
            }
            if (found != expected) {
                throw damaged("its picture has another size than its head says");
            }
        } catch (DataFormatException fault) {
            throw damaged("its picture cannot be unpacked");
        } finally {
            inflater.end();
        }
    }

    private InputRefused damaged(String message) {
        return InputRefused.because(Fault.of(
                FaultKind.WRONG_FORMAT,
                Fault.Where.inFile(name),
                "the PNG picture is damaged: " + message,
                "",
                "a whole PNG picture"));
    }
}
