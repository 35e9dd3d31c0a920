package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;

/** A row of a table under its heading. */
interface TableRow extends Row {

    /** What stands in a column, counted from 0, without surrounding space. */
    String text(int index);

    /** The same with its form. */
    Cell cell(int index, String label);

    /** Where it stands, by the name of the column. */
    Where where(int index, String label);

    /** Where it stands, by the place of the column alone. */
    Where where(int index);

    /** Whether no column has anything in it. */
    boolean isBlank();

    @Override
    default String noun() {
        return "row";
    }
}
