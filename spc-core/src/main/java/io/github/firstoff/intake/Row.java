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

    /** The names of its columns; of a format without columns, those that a table with the same in it would have. */
    List<String> heading();

    /** What stands in them, as it stands there. */
    List<String> fields();

    /** All that stands in the file, of a format without columns; else empty. */
    default String asItStood() {
        return "";
    }

    /** What is known of the decimal mark of the numbers among its fields. */
    default Marks marks() {
        return Marks.FORMAT_POINT;
    }

    /** The refused row, for these faults. */
    default RefusedRow refused(List<Fault> faults) {
        return new RefusedRow(where(), heading(), fields(), asItStood(), marks().known(), faults);
    }

    /** What it says there, without surrounding space; empty if nothing. */
    String text(ReadingColumn column);

    /** The same with its form. */
    Cell cell(ReadingColumn column);

    /** What a row is called in messages. */
    String noun();

    /** Where it says it. */
    Where where(ReadingColumn column);
}
