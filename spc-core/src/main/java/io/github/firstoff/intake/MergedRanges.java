package io.github.firstoff.intake;

import io.github.firstoff.intake.SheetTaker.Range;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** The merged cells of a sheet, so that a cell which is blank can be told from one that is blank because it is part of another. */
final class MergedRanges {
    /** No cells are merged. */
    static final MergedRanges NONE = new MergedRanges(List.of());

    private final List<Range> ranges;
    /** By the first row, for each column that was asked about: many rows ask, and ranges do not overlap. */
    private final Map<Integer, NavigableMap<Long, Range>> byColumn = new HashMap<>();

    MergedRanges(List<Range> ranges) {
        this.ranges = List.copyOf(ranges);
    }

    /** The range that leaves a cell empty; none if it is its first cell, or in no range. */
    Optional<Range> hiding(Fault.Where cell) {
        Map.Entry<Long, Range> above =
                byColumn.computeIfAbsent(cell.column(), this::ofColumn).floorEntry(cell.line());
        return Optional.ofNullable(above)
                .map(Map.Entry::getValue)
                .filter(range -> range.hides(cell.line(), cell.column()));
    }

    /** Why nothing stands in a cell, where that is because cells are merged; else nothing. */
    String why(Fault.Where cell) {
        return hiding(cell)
                .map(range -> "the cells " + range + " are merged, and only the first of them holds anything")
                .orElse("");
    }

    private NavigableMap<Long, Range> ofColumn(int column) {
        NavigableMap<Long, Range> found = new TreeMap<>();
        ranges.stream()
                .filter(range -> range.fromColumn() <= column && column <= range.toColumn())
                .forEach(range -> found.putIfAbsent(range.fromRow(), range));
        return found;
    }
}
