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
        if (!hasNamesForAll(row)) {
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
