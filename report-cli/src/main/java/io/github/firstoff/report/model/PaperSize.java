package io.github.firstoff.report.model;

/**
 * The sheet of paper, upright.
 *
 * @param name     what the trade calls it
 * @param widthMm  width in millimetres, at least 120
 * @param heightMm height in millimetres, at least 160
 */
public record PaperSize(String name, double widthMm, double heightMm) {
    /** ISO 216 A4, 210 mm by 297 mm. */
    public static final PaperSize A4 = new PaperSize("A4", 210, 297);
    /** US Letter, 8.5 inch by 11 inch. */
    public static final PaperSize US_LETTER = new PaperSize("US Letter", 215.9, 279.4);

    /** Refuses a sheet too small for the grid. */
    public PaperSize {
        if (!(widthMm >= 120 && heightMm >= 160)) {
            throw new IllegalArgumentException("a sheet of " + widthMm + " mm by " + heightMm + " mm is too small");
        }
    }
}
