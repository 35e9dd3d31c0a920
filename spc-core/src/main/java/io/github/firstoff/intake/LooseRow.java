package io.github.firstoff.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** A row with one reading of a format that is no table: it has the columns that a table with the same in it would have. */
interface LooseRow extends Row {
    /** The columns that every row with one reading has, whether it says anything there or not. */
    Set<ReadingColumn> OF_EVERY_READING = Set.of(ReadingColumn.PART, ReadingColumn.CHARACTERISTIC, ReadingColumn.VALUE);

    /** The columns of which it says anything. */
    Set<ReadingColumn> said();

    /** Those of every reading, and whatever else it says. */
    private List<ReadingColumn> columns() {
        return Arrays.stream(ReadingColumn.values())
                .filter(column -> OF_EVERY_READING.contains(column) || said().contains(column))
                .toList();
    }

    @Override
    default List<String> heading() {
        return columns().stream().map(ReadingColumn::word).toList();
    }

    @Override
    default List<String> fields() {
        return columns().stream().map(this::text).toList();
    }
}
