package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.List;

/** What one row, line or object of a readings file says, whatever its format. */
interface Row {

    /** Its line, or its row in a sheet, counted from 1. */
    default long line() {
        return where().line();
    }

    /** Where it stands. */
    Where where();

    /** The names of its columns; of a format without columns, one name for the whole. */
    List<String> heading();

    /** All that stands in it, as it stands there. */
    List<String> fields();

    /** What it says there, without surrounding space; empty if nothing. */
    String text(ReadingColumn column);

    /** The same with its form. */
    Cell cell(ReadingColumn column);

    /** What a row is called in messages. */
    String noun();

    /** Where it says it. */
    Where where(ReadingColumn column);
}
