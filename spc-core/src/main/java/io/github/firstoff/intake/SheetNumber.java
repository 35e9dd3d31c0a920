package io.github.firstoff.intake;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * Numbers as workbooks store them.
 *
 * <p>A spreadsheet reckons in binary and keeps 15 significant digits of what is typed; in the file it may write 17, so that
 * {@code 51.963} stands there as {@code 51.963000000000001}. The text of the file is read as a decimal, never through a binary number. One
 * of at most 15 digits is taken as it stands; one of more is taken to 15 (halves to even), which is what was typed and what the spreadsheet
 * shows. Zeros at the end are not stored, so a resolution cannot be told from a workbook.
 */
final class SheetNumber {
    private static final int DIGITS = 15;
    private static final MathContext TO_15 = new MathContext(DIGITS, RoundingMode.HALF_EVEN);

    private static final BigDecimal MILLISECONDS_OF_A_DAY = new BigDecimal(24L * 60 * 60 * 1000);
    private static final BigDecimal LAST_DAY = new BigDecimal(110_000);
    private static final LocalDateTime BEFORE_1900 = LocalDateTime.of(1899, 12, 30, 0, 0);
    private static final LocalDateTime IN_1904 = LocalDateTime.of(1904, 1, 1, 0, 0);
    /** Before that, day numbers of the calendar that begins in 1900 are one off, because it has a 29 February 1900. */
    private static final BigDecimal FIRST_SOUND_DAY = new BigDecimal(61);

    private SheetNumber() {}

    /**
     * The number of a cell.
     *
     * @param column the column of the cell
     * @param stored its text in the file
     * @param formula whether it is the result of a formula
     */
    static SheetCell cell(int column, String stored, boolean formula) {
        try {
            BigDecimal number = ExactNumber.literal(stored);
            boolean longer = number.stripTrailingZeros().precision() > DIGITS;
            if (longer) {
                number = number.round(TO_15).stripTrailingZeros();
            }
            if (number.scale() < 0) {
                number = number.setScale(0);
            }
            return new SheetCell(column, SheetCell.Kind.NUMBER, number.toPlainString(), formula, longer);
        } catch (NumberRefused noNumber) {
            // Whoever uses the cell as a number says in its own words what is wrong with the text.
            return new SheetCell(column, SheetCell.Kind.NUMBER, stored, formula, false);
        }
    }

    /** Whether two texts are the same number, however they are written. */
    static boolean isSameNumber(String one, String other) {
        try {
            return ExactNumber.written(one).compareTo(ExactNumber.written(other)) == 0;
        } catch (NumberRefused noNumber) {
            return false;
        }
    }

    /**
     * A day number with its fraction as a date, or a date and a time of day to the millisecond; empty if it is no day of the years in which
     * anything is measured.
     *
     * @param stored the text in the file
     * @param from1904 whether the workbook counts days from 1904 on
     * @param withTime whether the cell shows a time of day
     */
    static Optional<String> time(String stored, boolean from1904, boolean withTime) {
        BigDecimal days;
        try {
            days = ExactNumber.literal(stored);
        } catch (NumberRefused noNumber) {
            return Optional.empty();
        }
        BigDecimal first = from1904 ? BigDecimal.ZERO : FIRST_SOUND_DAY;
        if (days.compareTo(first) < 0 || days.compareTo(LAST_DAY) > 0) {
            return Optional.empty();
        }
        long milliseconds = days.multiply(MILLISECONDS_OF_A_DAY)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
        LocalDateTime time = (from1904 ? IN_1904 : BEFORE_1900).plusNanos(milliseconds * 1_000_000);
        boolean midnight = time.toLocalTime().toNanoOfDay() == 0;
        return Optional.of(
                midnight && !withTime
                        ? time.toLocalDate().toString()
                        : DateTimeFormatter.ISO_LOCAL_DATE_TIME
                                .withLocale(Locale.ROOT)
                                .format(time));
    }
}
