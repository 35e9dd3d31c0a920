package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.Arrays;

/** The texts that the cells of a workbook share, one behind the other in one stretch of memory. */
final class SharedTexts {
    private static final int MOST = 1_100_000;
    private static final int MOST_CHARACTERS = 16_000_000;

    private final Where where;
    private final StringBuilder all = new StringBuilder();
    private int[] ends = new int[64];
    private int count;

    SharedTexts(Where where) {
        this.where = where;
    }

    /** Adds the next text. */
    void add(CharSequence text) throws TextRefused {
        if (count >= MOST || all.length() + text.length() > MOST_CHARACTERS) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where,
                    "",
                    "a workbook with more than "
                            + (count >= MOST
                                    ? MOST + " texts"
                                    : MOST_CHARACTERS / 1_000_000 + " million characters of text"),
                    "a workbook of readings; save very large tables as CSV"));
        }
        all.append(text);
        if (count == ends.length) {
            ends = Arrays.copyOf(ends, count * 2);
        }
        ends[count++] = all.length();
    }

    /** How many there are. */
    int count() {
        return count;
    }

    /** One of them, counted from 0. */
    String get(int index) {
        return all.substring(index == 0 ? 0 : ends[index - 1], ends[index]);
    }
}
