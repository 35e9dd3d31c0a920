package io.github.firstoff.intake;

import java.util.List;

/**
 * A row that was refused, as it stands in its file, so that it can be put right and read again.
 *
 * @param where where it stands
 * @param heading the names of its columns; of a format without columns, one name for the whole
 * @param fields what stands in them; may be fewer or more than the columns
 * @param faults why it was refused
 */
public record RefusedRow(Fault.Where where, List<String> heading, List<String> fields, List<Fault> faults) {
    /** Copies the lists. */
    public RefusedRow {
        heading = List.copyOf(heading);
        fields = List.copyOf(fields);
        faults = List.copyOf(faults);
    }
}
