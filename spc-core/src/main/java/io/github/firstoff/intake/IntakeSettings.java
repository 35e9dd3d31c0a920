package io.github.firstoff.intake;

import java.util.Optional;
import java.util.function.Consumer;

/**
 * What the user says of readings beside the files.
 *
 * @param decimalMark the decimal mark of texts, where the user states it; empty to find it out from each file
 * @param sheet which sheet of a workbook holds the readings; empty to take the only one that can
 * @param mapping how the lines of texts that are neither JSON nor XML are understood; empty where every file is understood by itself
 * @param refusedRows takes each row of which anything was refused, in the order of the files
 */
public record IntakeSettings(
        Optional<DecimalMark> decimalMark,
        Optional<String> sheet,
        Optional<Mapping> mapping,
        Consumer<RefusedRow> refusedRows) {

    /** Everything is found out from the files, and refused rows are only counted and explained. */
    public static final IntakeSettings USUAL =
            new IntakeSettings(Optional.empty(), Optional.empty(), Optional.empty(), row -> {});

    /** The same with a decimal mark that the user states. */
    public IntakeSettings withDecimalMark(DecimalMark mark) {
        return new IntakeSettings(Optional.of(mark), sheet, mapping, refusedRows);
    }

    /** The same with the name of the sheet that holds the readings, where a file is a workbook. */
    public IntakeSettings withSheet(String name) {
        return new IntakeSettings(decimalMark, Optional.of(name), mapping, refusedRows);
    }

    /** The same with a mapping, by which texts that are neither JSON nor XML are read. */
    public IntakeSettings withMapping(Mapping stated) {
        return new IntakeSettings(decimalMark, sheet, Optional.of(stated), refusedRows);
    }

    /** The same with somebody who takes the refused rows. */
    public IntakeSettings withRefusedRows(Consumer<RefusedRow> taker) {
        return new IntakeSettings(decimalMark, sheet, mapping, taker);
    }
}
