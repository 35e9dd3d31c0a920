package io.github.firstoff.intake;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.plan.ResolvedPlan;
import java.util.List;
import java.util.Optional;

/**
 * What came of reading readings: the good beside the refused. Whoever asked decides what refused readings mean; a verdict on the
 * good ones alone would be a verdict on another lot. A row of which anything was refused is among the refused with all of its readings.
 *
 * @param plan the plan that the readings were held against
 * @param parts the pieces in production order, with every reading that could be used
 * @param refused what could not be used
 * @param notices what does not hinder but should be known
 * @param files the files that were read to their end, in the order in which they were given
 * @param rows what became of the rows of all files, also of those that were not read to their end
 * @param faultsOfFiles how many of the faults concern no single row but a file as a whole: a missing column, a broken encoding
 */
public record Intake(
        ResolvedPlan plan,
        List<PartRecord> parts,
        Refusals refused,
        List<Notice> notices,
        List<ReadFile> files,
        RowCounts rows,
        long faultsOfFiles) {

    /** Copies the lists. */
    public Intake {
        parts = List.copyOf(parts);
        notices = List.copyOf(notices);
        files = List.copyOf(files);
    }

    /**
     * A file that was read.
     *
     * @param name its name as the user gave it
     * @param format its format
     * @param sha256 the SHA-256 of its bytes in hexadecimal
     * @param readings how many readings came from it
     * @param rows what became of its rows
     */
    public record ReadFile(String name, ReadingFormat format, String sha256, long readings, RowCounts rows) {}

    /**
     * Everything that was read, if nothing was refused.
     *
     * @throws InputRefused with every fault, if there is any
     */
    public InspectionRecord recordOrRefuse() {
        if (!refused.isEmpty()) {
            throw new InputRefused(refused, Optional.of(rows));
        }
        return new InspectionRecord(plan, parts);
    }

    /**
     * The good rows, with the number of those that were refused, so that no verdict on them can be mistaken for one on all.
     *
     * @throws InputRefused with every fault, if any concerns a file as a whole or no row is good: then nobody knows which rows are missing
     */
    public InspectionRecord recordOfTheGoodRows() {
        if (faultsOfFiles > 0 || (parts.isEmpty() && !refused.isEmpty())) {
            throw new InputRefused(refused, Optional.of(rows));
        }
        return new InspectionRecord(plan, parts, rows.refused());
    }
}
