package io.github.firstoff.keyed;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Breaks a line that is longer than the screen is wide, so that a terminal does not break it anywhere: between what is parted by two
 * spaces if that is enough, else between words; never between a number and its unit. What follows is set in.
 */
final class Wrapping {
    /** Below this there is no room to set anything in. */
    static final int NARROWEST = 20;

    private static final int SET_IN = 2;

    /** The space that goes before a part, if any, and the part. */
    private static final Pattern PARTS = Pattern.compile("( {2,}|^ ?)((?:[^ ]| (?! ))+)");

    /** Spaces at which no line is broken: before a unit, and within the two words that answer a question. */
    private static final Pattern TOGETHER =
            Pattern.compile("(?<=[\\d.]) (?=(?:mm|in|inch|µm|um|m|°C|deg|degree|%|N)(?![\\p{L}\\d]))"
                    + "|(?<=pass) (?=or fail)|(?<=pass or) (?=fail)");

    /** A space at which no line is broken, until the line is whole. */
    private static final char KEPT = '\u0000';

    private Wrapping() {}

    /**
     * The text in lines.
     *
     * @param text one line, perhaps set in
     * @param width how many columns there are; under 20 counts as 20
     * @return one line at least; longer than the width only where a single word is
     */
    static List<String> lines(String text, int width) {
        int room = Math.max(width, NARROWEST);
        if (columns(text) <= room) {
            return List.of(text);
        }
        int indent = text.length() - text.stripLeading().length();
        String hang = " ".repeat(Math.min(indent, room / 2) + SET_IN);
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        Matcher parts = PARTS.matcher(TOGETHER.matcher(text.stripTrailing()).replaceAll(String.valueOf(KEPT)));
        while (parts.find()) {
            String gap = parts.group(1);
            String part = parts.group(2);
            boolean first = line.isEmpty();
            if (first || columns(line) + columns(gap) + columns(part) <= room) {
                words(first ? gap + part : part, first ? "" : gap, room, hang, line, lines);
            } else {
                boolean own = columns(hang) + columns(part) <= room || columns(line) + columns(gap) > room / 2;
                if (own) {
                    lines.add(line.toString());
                    line.setLength(0);
                    words(hang + part, "", room, hang, line, lines);
                } else {
                    words(part, gap, room, hang, line, lines);
                }
            }
        }
        lines.add(line.toString());
        return lines.stream().map(each -> each.replace(KEPT, ' ')).toList();
    }

    /** Puts a part on the line, word by word where it is too long, each full line to the lines. */
    private static void words(String part, String gap, int room, String hang, StringBuilder line, List<String> lines) {
        String indent = part.substring(0, part.length() - part.stripLeading().length());
        String before = line.isEmpty() ? indent : gap;
        for (String word : part.strip().split(" +", -1)) {
            if (!line.isEmpty() && columns(line) + columns(before) + columns(word) > room) {
                lines.add(line.toString());
                line.setLength(0);
                before = hang;
            }
            line.append(before).append(word);
            before = " ";
        }
    }

    /** How many columns a text takes on a screen: marks that stand above a letter take none, ideographs two. */
    static int columns(CharSequence text) {
        return text.codePoints()
                .map(c -> Character.getType(c) == Character.NON_SPACING_MARK ? 0 : Character.isIdeographic(c) ? 2 : 1)
                .sum();
    }
}
