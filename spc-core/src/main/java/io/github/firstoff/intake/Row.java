package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;

/** What one row, line or object of a readings file says, whatever its format. */
interface Row {

    /** Its line, counted from 1. */
    long line();

    /** What it says there, without surrounding space; empty if nothing. */
    String text(ReadingColumn column);

    /** The same with its form. */
    Cell cell(ReadingColumn column);

    /** What a row is called in messages. */
    String noun();

    /** Where it says it. */
    Where where(ReadingColumn column);
}
