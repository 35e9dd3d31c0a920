package io.github.firstoff.keyed;

import io.github.firstoff.tolerance.GeometricCharacteristic;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;

/**
 * Texts for a terminal that has ASCII only: each sign of the trade by what stands for it in typescript, each letter without its accents.
 * What has no stand-in becomes a question mark, never nothing.
 */
final class AsciiText {
    private static final Map<Integer, String> SIGNS = signs();
    private static final String RAISED = "⁻⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final String LOWERED_AGAIN = "-0123456789";
    private static final int FIRST_CIRCLED = 'Ⓐ';
    private static final int LAST_CIRCLED = 'Ⓩ';

    private AsciiText() {}

    private static Map<Integer, String> signs() {
        Map<Integer, String> signs = new HashMap<>(Map.ofEntries(
                Map.entry((int) 'Ø', "dia "),
                Map.entry((int) '⌀', "dia "),
                Map.entry((int) '∅', "dia "),
                Map.entry((int) '±', "+/-"),
                Map.entry((int) '°', " deg"),
                Map.entry((int) 'º', " deg"),
                Map.entry((int) 'µ', "u"),
                Map.entry((int) 'μ', "u"),
                Map.entry((int) 'Ω', "ohm"),
                Map.entry((int) 'α', "alpha"),
                Map.entry((int) 'σ', "sigma"),
                Map.entry((int) '×', "x"),
                Map.entry((int) '√', "sqrt "),
                Map.entry((int) '·', "."),
                Map.entry((int) '●', "o"),
                Map.entry((int) '│', "|"),
                Map.entry((int) '┊', ":"),
                Map.entry((int) '◂', "<"),
                Map.entry((int) '▸', ">"),
                Map.entry((int) '✓', "[ok]"),
                Map.entry((int) '✗', "[X]"),
                Map.entry((int) '…', "..."),
                Map.entry((int) '–', "-"),
                Map.entry((int) '—', "-"),
                Map.entry((int) '‑', "-"),
                Map.entry((int) '−', "-"),
                Map.entry((int) '′', "'"),
                Map.entry((int) '″', "\""),
                Map.entry((int) '‘', "'"),
                Map.entry((int) '’', "'"),
                Map.entry((int) '“', "\""),
                Map.entry((int) '”', "\""),
                Map.entry((int) '\u00A0', " "),
                Map.entry((int) '≤', "<="),
                Map.entry((int) '≥', ">="),
                Map.entry((int) '≈', "about "),
                Map.entry((int) '→', "->"),
                Map.entry((int) '½', " 1/2"),
                Map.entry((int) '¼', " 1/4"),
                Map.entry((int) '¾', " 3/4"),
                Map.entry((int) 'ß', "ss"),
                Map.entry((int) 'æ', "ae"),
                Map.entry((int) 'Æ', "AE"),
                Map.entry((int) 'ø', "o"),
                Map.entry((int) 'ⓔ', "(E)"),
                Map.entry((int) '▱', "flatness "),
                Map.entry((int) '◯', "roundness "),
                Map.entry((int) '⫽', "parallelism "),
                Map.entry((int) '⊥', "perpendicularity "),
                Map.entry((int) '∡', "angularity "),
                Map.entry((int) '⊕', "position "),
                Map.entry((int) '⌾', "coaxiality "),
                Map.entry((int) '⊚', "coaxiality "),
                Map.entry((int) '⇗', "total run-out "),
                Map.entry((int) '□', "sq ")));
        for (GeometricCharacteristic each : GeometricCharacteristic.values()) {
            signs.put(each.symbol().codePointAt(0), each.word() + ' ');
        }
        return Map.copyOf(signs);
    }

    /** The text in ASCII. */
    static String of(String text) {
        StringBuilder ascii = new StringBuilder(text.length());
        int before = ' ';
        for (int c : text.codePoints().toArray()) {
            if (c == ' ' && before > 0x7F && ascii.toString().endsWith(" ")) {
                // The stand-in has brought its space along.
                continue;
            }
            if (c < 0x7F) {
                ascii.appendCodePoint(c);
            } else if (RAISED.indexOf(c) >= 0) {
                // 10⁻⁶ is not 10-6, and m² not m2.
                ascii.append(RAISED.indexOf(before) >= 0 ? "" : "^").append(LOWERED_AGAIN.charAt(RAISED.indexOf(c)));
            } else if (c >= FIRST_CIRCLED && c <= LAST_CIRCLED) {
                ascii.append('(').append((char) ('A' + c - FIRST_CIRCLED)).append(')');
            } else {
                String sign = SIGNS.getOrDefault(c, letters(c));
                ascii.append(before == ' ' ? sign.stripLeading() : sign);
            }
            before = c;
        }
        return ascii.toString();
    }

    private static String letters(int c) {
        if (!Character.isLetter(c)) {
            return "?";
        }
        String apart = Normalizer.normalize(Character.toString(c), Normalizer.Form.NFD);
        int letter = apart.codePointAt(0);
        return letter < 0x7F ? Character.toString(letter) : "?";
    }
}
