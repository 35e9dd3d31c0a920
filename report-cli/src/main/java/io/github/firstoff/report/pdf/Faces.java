package io.github.firstoff.report.pdf;

import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The two weights of the typeface in one document: measuring, and making sure that no character is lost. The PDF library drops
 * a character that the face lacks without a word; here it becomes a visible box and a message.
 */
final class Faces {
    /** Stands for a character that the face lacks. */
    static final String REPLACEMENT = "\u25A1";

    static final String REGULAR = "Lato-Regular";
    static final String SEMIBOLD = "Lato-Semibold";

    private final BaseFont regular = load(REGULAR, 1);
    private final BaseFont semibold = load(SEMIBOLD, 2);
    private final Set<String> messages = new LinkedHashSet<>();

    BaseFont font(boolean strong) {
        return strong ? semibold : regular;
    }

    double width(String text, boolean strong, double size) {
        return font(strong).getWidthPoint(text, (float) size);
    }

    /** The text as it can be printed. Control characters become spaces; line feeds stay. */
    String fit(String text) {
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
        StringBuilder printable = new StringBuilder(composed.length());
        composed.codePoints().forEach(character -> {
            if (character == '\n') {
                printable.append('\n');
            } else if (Character.isISOControl(character)) {
                printable.append(' ');
            } else if (regular.charExists(character) && semibold.charExists(character)) {
                printable.appendCodePoint(character);
            } else if (character >= '\u24B6' && character <= '\u24CF') {
                // A letter in a ring as a keyboard writes it; where a requirement is set, it is drawn.
                printable
                        .append('(')
                        .append((char) ('A' + character - '\u24B6'))
                        .append(')');
            } else {
                printable.append(REPLACEMENT);
                messages.add(String.format(
                        Locale.ROOT,
                        "the character %s (U+%04X) in \u201C%s\u201D is not in the typeface of the sheet; it is printed as %s",
                        Character.toString(character),
                        character,
                        composed,
                        REPLACEMENT));
            }
        });
        return printable.toString();
    }

    /** A figure as it can be printed, a hyphen before its digits set as the minus it stands for. */
    String figure(String text) {
        return fit(text).replaceAll("(?<![\\p{L}\\p{N}])-(?=[0-9.])", "\u2212");
    }

    void say(String message) {
        messages.add(message);
    }

    List<String> messages() {
        return List.copyOf(messages);
    }

    static byte[] bytes(String name) {
        try (InputStream in = Faces.class.getResourceAsStream(name + ".ttf")) {
            if (in == null) {
                throw new IllegalStateException("the typeface " + name + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("the typeface " + name + " cannot be read from the program", e);
        }
    }

    private static BaseFont load(String name, int seed) {
        try {
            BaseFont font = BaseFont.createFont(
                    name + ".ttf", BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, bytes(name), null);
            // A list of the glyphs held is optional, and the one the library writes is incomplete (ISO 19005-3,
            // 6.2.11.4.2).
            font.setIncludeCidSet(false);
            // The prefix of an embedded subset is drawn at random; equal sheets must be equal files.
            SecureRandom fixed = SecureRandom.getInstance("SHA1PRNG");
            fixed.setSeed(seed);
            font.setSecureRandom(fixed);
            return font;
        } catch (IOException e) {
            throw new UncheckedIOException("the typeface " + name + " cannot be read from the program", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has the generator SHA1PRNG", e);
        }
    }
}
