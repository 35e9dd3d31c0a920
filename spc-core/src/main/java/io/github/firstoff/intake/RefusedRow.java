package io.github.firstoff.intake;

import java.util.List;
import java.util.Optional;

/**
 * A row that was refused, in the columns of a table of readings, so that it can be put right there and read again.
 *
 * @param where where it stands
 * @param heading the names of its columns
 * @param fields what stands in them; may be fewer or more than the columns
 * @param asItStood what stands in the file, of a format that is no table; else empty
 * @param decimalMark the decimal mark of its numbers; empty while it is not known
 * @param faults why it was refused
 */
public record RefusedRow(
        Fault.Where where,
        List<String> heading,
        List<String> fields,
        String asItStood,
        Optional<DecimalMark> decimalMark,
        List<Fault> faults) {
    /** Copies the lists. */
    public RefusedRow {
        heading = List.copyOf(heading);
        fields = List.copyOf(fields);
        faults = List.copyOf(faults);
    }

    /** Whether the row has a column for a characteristic or a value, as rows with one reading do. */
    public boolean isLong() {
        return heading.stream()
                .map(ReadingColumn::named)
                .flatMap(Optional::stream)
                .anyMatch(ReadingColumn.OF_LONG_ROWS::contains);
    }

    /** Whether a number in it could be read in two ways, so that semicolons must part its columns for it to stay so. */
    public boolean isOpen() {
        return decimalMark.isEmpty() && fields.stream().map(String::strip).anyMatch(Marks::isOpen);
    }
}
