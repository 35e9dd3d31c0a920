package io.github.firstoff.intake;

import io.github.firstoff.plan.ResolvedCharacteristic;
import java.util.Optional;

/** Holds the rows under a heading against the plan: one reading in a row, or a piece in a row with a column per characteristic. */
final class TableRows {
    private final RowCheck check;
    private final CsvHeading heading;

    TableRows(RowCheck check, CsvHeading heading) {
        this.check = check;
        this.heading = heading;
    }

    /** Hands on what a row says. */
    void read(TableRow row) {
        if (!hasNamesForAll(row) || (heading.isOfRefusedRows() && !wasPutRight(row))) {
            return;
        }
        if (heading.isWide()) {
            wide(row);
        } else {
            readLong(row);
        }
    }

    private boolean hasNamesForAll(TableRow row) {
        for (int index : heading.nameless()) {
            if (!row.text(index).isEmpty()) {
                check.sink()
                        .refuse(Fault.of(
                                FaultKind.BLANK,
                                row.where(index),
                                "the column has no name",
                                Echo.quoted(row.text(index)),
                                "a name in the heading, or nothing in the column"));
                return false;
            }
        }
        return true;
    }

    /**
     * Refuses a row that was refused before and says what it said then, because its fault may not show in its columns, and one that says
     * nothing any more. With its reason taken away a row is read as it stands.
     */
    private boolean wasPutRight(TableRow row) {
        int because = heading.indexOfRemark(RefusedTable.REASON::equals);
        String reason = row.text(because);
        if (reason.isEmpty()) {
            return true;
        }
        Optional<String> before = RefusedTable.markIn(row.text(heading.indexOfRemark(RefusedTable::isPlace)));
        boolean unchanged = before.isEmpty() || before.get().equals(RefusedTable.markOf(row.heading(), row.fields()));
        boolean empty = heading.isWide()
                && heading.characteristics().stream()
                        .allMatch(column -> row.text(column.index()).isEmpty());
        if (!unchanged && !empty) {
            return true;
        }
        check.sink()
                .refuse(Fault.of(
                        FaultKind.WRONG_READING,
                        row.where(because, "column " + RefusedTable.REASON),
                        unchanged
                                ? "the row was refused before and says the same still"
                                : "the row was refused before and holds no value",
                        Echo.quoted(reason),
                        "the row put right, or nothing here if it is right as it stands"));
        return false;
    }

    private void readLong(TableRow row) {
        Optional<RowCheck.Head> head = check.head(row);
        Optional<ResolvedCharacteristic> characteristic =
                check.characteristic(row.text(ReadingColumn.CHARACTERISTIC), row.where(ReadingColumn.CHARACTERISTIC));
        if (check.values().hasOneReading(row) && head.isPresent() && characteristic.isPresent()) {
            check.values().ofRow(head.get(), characteristic.get(), row);
        }
    }

    private void wide(TableRow row) {
        Optional<RowCheck.Head> head = check.head(row);
        if (head.isEmpty()) {
            return;
        }
        for (CsvHeading.Characteristic column : heading.characteristics()) {
            if (!row.text(column.index()).isEmpty()) {
                check.values().wideValue(head.get(), column.characteristic(), row.cell(column.index(), column.label()));
            }
        }
    }
}
