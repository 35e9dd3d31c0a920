package io.github.firstoff.intake;

/**
 * What became of the rows of files of readings. Each row that was read is used, refused or explained, so that the three always come to
 * the number read.
 *
 * @param read the rows under the heading of a table, the items of a list
 * @param used those whose readings are all used
 * @param refused those of which anything was refused; nothing of them is used
 * @param explained those that hold no reading, such as blank ones; a notice names them
 */
public record RowCounts(long read, long used, long refused, long explained) {
    /** No rows. */
    public static final RowCounts NONE = new RowCounts(0, 0, 0, 0);

    /** Refuses counts that do not come to the rows read: a row would have been lost. */
    public RowCounts {
        if (used < 0 || refused < 0 || explained < 0 || read != used + refused + explained) {
            throw new IllegalArgumentException("of " + read + " rows, " + used + " used, " + refused + " refused and "
                    + explained + " explained leave some unaccounted for");
        }
    }

    /** So many rows, each of them used. */
    public static RowCounts allUsed(long rows) {
        return new RowCounts(rows, rows, 0, 0);
    }

    /** Both together. */
    public RowCounts plus(RowCounts other) {
        return new RowCounts(
                read + other.read, used + other.used, refused + other.refused, explained + other.explained);
    }

    /** For example {@code 120 rows read: 118 used, 2 refused, 0 explained}. */
    @Override
    public String toString() {
        return read + (read == 1 ? " row read: " : " rows read: ") + used + " used, " + refused + " refused, "
                + explained + " explained";
    }
}
