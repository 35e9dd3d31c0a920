package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A label and what stands behind it, as exports write them beside each other: {@code Piece: S001   By  A. Quill}, {@code serial = S001}.
 *
 * @param label the label, without the mark behind it
 * @param text what stands behind it
 */
record LabelledText(String label, String text) {
    private static final int LONGEST_LABEL = 40;

    /** Every label of a line. Parts of the line are parted by two blanks or more; a part without a mark has a word and a text. */
    static List<LabelledText> in(String line) {
        return in(line.strip().split("\\s{2,}|\\t", -1), false);
    }

    /** Every label of a line whose fields a character parts: what stands in the field behind it is its text, with a mark or without. */
    static List<LabelledText> in(String line, char delimiter) {
        return in(line.strip().split(Pattern.quote(String.valueOf(delimiter)), -1), true);
    }

    private static List<LabelledText> in(String[] parts, boolean fields) {
        List<LabelledText> found = new ArrayList<>();
        for (int i = 0; i < parts.length; i++) {
            String part = parts[i].strip();
            int mark = firstMark(part);
            boolean alone = mark > 0 && mark == part.length() - 1;
            if (i + 1 < parts.length && (alone || (fields && mark < 0)) && part.length() <= LONGEST_LABEL) {
                String next = parts[i + 1].strip();
                boolean label = firstMark(next) > 0;
                if (!label) {
                    add(found, alone ? part.substring(0, mark) : part, next);
                    i++;
                    continue;
                }
            }
            if (mark > 0 && mark <= LONGEST_LABEL && mark + 1 < part.length()) {
                add(found, part.substring(0, mark), part.substring(mark + 1));
            } else if (mark < 0) {
                int blank = part.indexOf(' ');
                if (blank > 0 && blank <= LONGEST_LABEL) {
                    add(found, part.substring(0, blank), part.substring(blank + 1));
                }
            }
        }
        return found;
    }

    private static int firstMark(String part) {
        int colon = part.indexOf(':');
        int equals = part.indexOf('=');
        // A colon between digits is that of a time.
        boolean ofATime = colon > 0
                && colon + 1 < part.length()
                && Character.isDigit(part.charAt(colon - 1))
                && Character.isDigit(part.charAt(colon + 1));
        int first = ofATime ? -1 : colon;
        return first < 0 ? equals : equals < 0 ? first : Math.min(first, equals);
    }

    private static void add(List<LabelledText> found, String label, String text) {
        boolean word = label.chars().anyMatch(Character::isLetter);
        if (word && !text.isBlank()) {
            found.add(new LabelledText(label.strip(), text.strip()));
        }
    }
}
