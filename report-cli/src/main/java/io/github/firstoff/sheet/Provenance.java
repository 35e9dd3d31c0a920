package io.github.firstoff.sheet;

import io.github.firstoff.intake.RowCounts;
import java.time.Instant;
import java.util.List;

/**
 * What a sheet was made from and by.
 *
 * @param program the program with its version
 * @param madeAt when, from the clock at the command line or {@code SOURCE_DATE_EPOCH}
 * @param dataHash the SHA-256, in hexadecimal, over the SHA-256 of plan, job, house, logo and each file of readings, as far as there are such: hexadecimal, a line each,
 *     in the order of the command line
 * @param files the names of these files, without their folders
 * @param rows what became of the rows of the files of readings
 */
public record Provenance(String program, Instant madeAt, String dataHash, List<String> files, RowCounts rows) {
    /** Copies the list. */
    public Provenance {
        files = List.copyOf(files);
    }

    /** The same where every row was used. */
    public Provenance(String program, Instant madeAt, String dataHash, List<String> files, long rowsRead) {
        this(program, madeAt, dataHash, files, new RowCounts(rowsRead, rowsRead, 0, 0));
    }

    /** The first twelve digits of the hash: enough to tell two sheets apart by eye. */
    public String shortHash() {
        return dataHash.substring(0, Math.min(12, dataHash.length()));
    }
}
