package io.github.firstoff.command;

import io.github.firstoff.intake.DecimalMark;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the command line says of how readings are read. It changes the sheet, so a sheet carries it.
 *
 * @param decimalMark the decimal mark of numbers in texts; empty to find it out from each file
 * @param sheet the sheet of a workbook; empty to take the only one that can hold readings
 * @param keepGoing whether good rows are judged although others were refused
 */
record ReadingChoices(Optional<DecimalMark> decimalMark, Optional<String> sheet, boolean keepGoing) {
    static final ReadingChoices NONE = new ReadingChoices(Optional.empty(), Optional.empty(), false);

    private static final String DECIMAL_MARK = "decimal-mark";
    private static final String SHEET = "sheet";
    private static final String KEEP_GOING = "keep-going";

    /** The choices by name, as a sheet carries them. */
    Map<String, String> options() {
        Map<String, String> options = new LinkedHashMap<>();
        decimalMark.ifPresent(mark -> options.put(DECIMAL_MARK, mark.word()));
        sheet.ifPresent(name -> options.put(SHEET, name));
        if (keepGoing) {
            options.put(KEEP_GOING, "true");
        }
        return options;
    }

    /** The choices that a sheet carries; names that are not of readings are left to others. */
    static ReadingChoices of(Map<String, String> options) {
        return new ReadingChoices(
                Arrays.stream(DecimalMark.values())
                        .filter(mark -> mark.word().equals(options.get(DECIMAL_MARK)))
                        .findFirst(),
                Optional.ofNullable(options.get(SHEET)),
                "true".equals(options.get(KEEP_GOING)));
    }
}
