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
    /** Cells between the limits where there is room: odd, so that there is a middle one. */
    private static final int INSIDE = 33;

    /** With fewer cells than this between the limits, the room of the limits' figures is taken too. */
    private static final int NARROW = 11;

    private static final int NARROWEST = 7;

    /** Cells beyond each limit, with room and without. */
    private static final int OUTSIDE = 4;

    private static final int OUTSIDE_NARROW = 2;

    /** Cells between the limits, and beyond each. */
    private final int inside;

    private final int outside;

    private Strip(int inside, int outside) {
        this.inside = inside;
        this.outside = outside;
    }

    /**
     * The line: as it is in a wide one, in fewer cells where there are fewer columns, then without the limits' figures.
     *
     * @param limits between which the scale lies
     * @param values in the unit of the limits, the last one last
     * @param columns how many there are at most
     * @return empty if there is no limit to draw against, no value, or no room
     */
    static Optional<String> of(Limits limits, List<BigDecimal> values, int columns) {
        if (limits.isOpen() || values.isEmpty()) {
            return Optional.empty();
        }
        String lower = limits.lower().map(Phrases::plain).orElse("") + ' ';
        String upper = ' ' + limits.upper().map(Phrases::plain).orElse("");
        int whole = cells(columns - lower.length() - upper.length(), OUTSIDE);
        if (whole >= NARROW) {
            return new Strip(whole, OUTSIDE).drawn(limits, values).map(cells -> lower + cells + upper);
        }
        int narrow = cells(columns, OUTSIDE_NARROW);
        return narrow < NARROWEST ? Optional.empty() : new Strip(narrow, OUTSIDE_NARROW).drawn(limits, values);
    }

    /** An odd number of cells between the limits. */
    private static int cells(int columns, int outside) {
        int cells = Math.min(INSIDE, columns - 2 - 2 * outside);
        return cells % 2 == 0 ? cells - 1 : cells;
    }

    private Optional<String> drawn(Limits limits, List<BigDecimal> values) {
        BigDecimal width = limits.width().orElseGet(() -> reach(limits, values));
        if (width.signum() == 0) {
            return Optional.empty();
        }
        BigDecimal start =
                limits.lower().orElseGet(() -> limits.upper().orElseThrow().subtract(width));
        char[] cells = new char[outside + 1 + inside + 1 + outside];
        Arrays.fill(cells, ' ');
        int lowerBar = outside;
        int upperBar = outside + 1 + inside;
        if (limits.lower().isPresent() && limits.upper().isPresent()) {
            cells[outside + 1 + inside / 2] = '┊';
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
        return Optional.of(new String(cells));
    }

    private void place(
            char[] cells, Limits limits, BigDecimal value, BigDecimal start, BigDecimal width, boolean last) {
        // The middle of cell 0 is the lower limit, that of the last cell the upper, so that a reading on a limit is
        // seen inside.
        BigDecimal scaled = value.subtract(start)
                .multiply(BigDecimal.valueOf(inside - 1L))
                .divide(width, 0, RoundingMode.HALF_EVEN);
        int cell = scaled.min(BigDecimal.valueOf((long) inside + outside))
                .max(BigDecimal.valueOf(-1L - outside))
                .intValue();
        boolean below =
                limits.lower().filter(limit -> value.compareTo(limit) < 0).isPresent();
        boolean above =
                limits.upper().filter(limit -> value.compareTo(limit) > 0).isPresent();
        // Outside is drawn outside, by however little.
        int at = outside + 1 + (below ? Math.min(cell - 1, -2) : above ? Math.max(cell + 1, inside + 1) : cell);
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
