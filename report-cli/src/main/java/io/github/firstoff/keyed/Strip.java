package io.github.firstoff.keyed;

import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Readings against their limits in one line of characters: a bar for each limit, a dot for each reading, a large one for the last, and an
 * arrow for what lies too far outside to be drawn. Where two limits are, a mark stands in the middle.
 */
final class Strip {
    /** Cells between the limits: odd, so that there is a middle one. */
    private static final int INSIDE = 33;

    /** Cells beyond each limit. */
    private static final int OUTSIDE = 4;

    private Strip() {}

    /**
     * The line.
     *
     * @param limits between which the scale lies
     * @param values in the unit of the limits, the last one last
     * @return empty if there is no limit to draw against, or no value
     */
    static Optional<String> of(Limits limits, List<BigDecimal> values) {
        if (limits.isOpen() || values.isEmpty()) {
            return Optional.empty();
        }
        BigDecimal width = limits.width().orElseGet(() -> reach(limits, values));
        if (width.signum() == 0) {
            return Optional.empty();
        }
        BigDecimal start =
                limits.lower().orElseGet(() -> limits.upper().orElseThrow().subtract(width));
        char[] cells = new char[OUTSIDE + 1 + INSIDE + 1 + OUTSIDE];
        Arrays.fill(cells, ' ');
        int lowerBar = OUTSIDE;
        int upperBar = OUTSIDE + 1 + INSIDE;
        if (limits.lower().isPresent() && limits.upper().isPresent()) {
            cells[OUTSIDE + 1 + INSIDE / 2] = '┊';
        }
        if (limits.lower().isPresent()) {
            cells[lowerBar] = '│';
        }
        if (limits.upper().isPresent()) {
            cells[upperBar] = '│';
        }
        for (int i = 0; i < values.size(); i++) {
            place(cells, limits, values.get(i), start, width, i == values.size() - 1);
        }
        return Optional.of(limits.lower().map(Phrases::plain).orElse("")
                + ' '
                + new String(cells)
                + ' '
                + limits.upper().map(Phrases::plain).orElse(""));
    }

    private static void place(
            char[] cells, Limits limits, BigDecimal value, BigDecimal start, BigDecimal width, boolean last) {
        // The middle of cell 0 is the lower limit, that of the last cell the upper, so that a reading on a limit is
        // seen inside.
        BigDecimal scaled = value.subtract(start)
                .multiply(BigDecimal.valueOf(INSIDE - 1L))
                .divide(width, 0, RoundingMode.HALF_EVEN);
        int cell = scaled.min(BigDecimal.valueOf(INSIDE + OUTSIDE))
                .max(BigDecimal.valueOf(-1L - OUTSIDE))
                .intValue();
        boolean below =
                limits.lower().filter(limit -> value.compareTo(limit) < 0).isPresent();
        boolean above =
                limits.upper().filter(limit -> value.compareTo(limit) > 0).isPresent();
        // Outside is drawn outside, by however little.
        int at = OUTSIDE + 1 + (below ? Math.min(cell - 1, -2) : above ? Math.max(cell + 1, INSIDE + 1) : cell);
        if (at < 0 || at >= cells.length) {
            cells[at < 0 ? 0 : cells.length - 1] = at < 0 ? '◂' : '▸';
        } else if (last || cells[at] != '●') {
            cells[at] = last ? '●' : '·';
        }
    }

    /** How far a scale with a single limit reaches: a quarter beyond the farthest reading. */
    private static BigDecimal reach(Limits limits, List<BigDecimal> values) {
        BigDecimal limit = limits.lower().or(limits::upper).orElseThrow();
        return values.stream()
                .map(value -> value.subtract(limit).abs())
                .reduce(BigDecimal.ZERO, BigDecimal::max)
                .multiply(new BigDecimal("1.25"));
    }
}
