package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.List;

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
        List<LabelledText> found = new ArrayList<>();
        for (String part : line.strip().split("\\s{2,}|\\t", -1)) {
            int mark = firstMark(part);
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
