package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.DimensionSign;
import io.github.firstoff.report.model.GeometricSymbol;
import io.github.firstoff.report.model.Modifier;

/** Draws the symbols that no text face holds completely, as strokes in the weight of the text beside them. */
final class SymbolPainter {
    /** Width of a ringed letter, as a share of the size of the text. */
    static final double RING = 1.12;

    /** Width of a symbol, as a share of the size of the text. */
    static final double SYMBOL = 1.0;

    /** Control distance of a quarter circle drawn as a cubic curve. */
    private static final double ROUND = 0.5523;

    private final Canvas canvas;
    private double left;
    private double bottom;
    private double unit;

    SymbolPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Draws a characteristic symbol in a square that stands with the capitals on the baseline. */
    void symbol(GeometricSymbol symbol, double x, double baseline, double size, Ink ink) {
        begin(symbol.character(), x, baseline, size, ink);
        switch (symbol) {
            case STRAIGHTNESS -> line(0, 0.5, 1, 0.5);
            case FLATNESS -> shape(0, 0.15, 0.72, 0.15, 1, 0.85, 0.28, 0.85);
            case ROUNDNESS -> circle(0.5, 0.5, 0.42);
            case CYLINDRICITY -> {
                circle(0.5, 0.5, 0.29);
                line(0.02, 0.1, 0.42, 0.98);
                line(0.58, 0.02, 0.98, 0.9);
            }
            case PROFILE_OF_LINE -> arc();
            case PROFILE_OF_SURFACE -> {
                arc();
                line(0, 0.25, 1, 0.25);
            }
            case PARALLELISM -> {
                line(0.12, 0, 0.52, 1);
                line(0.48, 0, 0.88, 1);
            }
            case PERPENDICULARITY -> {
                line(0, 0.05, 1, 0.05);
                line(0.5, 0.05, 0.5, 1);
            }
            case ANGULARITY -> {
                line(0, 0.1, 1, 0.1);
                line(0, 0.1, 0.85, 0.9);
            }
            case POSITION -> {
                circle(0.5, 0.5, 0.3);
                line(0, 0.5, 1, 0.5);
                line(0.5, 0, 0.5, 1);
            }
            case CONCENTRICITY -> {
                circle(0.5, 0.5, 0.46);
                circle(0.5, 0.5, 0.23);
            }
            case SYMMETRY -> {
                line(0.2, 0.85, 0.8, 0.85);
                line(0, 0.5, 1, 0.5);
                line(0.2, 0.15, 0.8, 0.15);
            }
            case CIRCULAR_RUN_OUT -> arrow(0.08, 0.05, 0.95, 0.95);
            case TOTAL_RUN_OUT -> {
                line(0.0, 0.02, 0.42, 0.02);
                arrow(0.0, 0.02, 0.62, 0.95);
                arrow(0.42, 0.02, 1.04, 0.95);
            }
        }
        canvas.endReading();
    }

    /** Draws a sign before a dimension. */
    void sign(DimensionSign sign, double x, double baseline, double size, Ink ink) {
        begin(sign.character(), x, baseline, size, ink);
        switch (sign) {
            case DIAMETER -> {
                circle(0.5, 0.5, 0.36);
                line(0.12, -0.02, 0.88, 1.02);
            }
            case DEPTH -> {
                line(0.1, 1, 0.9, 1);
                arrow(0.5, 1, 0.5, 0);
            }
            case COUNTERBORE -> {
                line(0.05, 0.85, 0.05, 0.1);
                line(0.05, 0.1, 0.95, 0.1);
                line(0.95, 0.1, 0.95, 0.85);
            }
            case COUNTERSINK -> {
                line(0.02, 0.85, 0.5, 0.1);
                line(0.5, 0.1, 0.98, 0.85);
            }
            case SQUARE -> shape(0.1, 0.1, 0.9, 0.1, 0.9, 0.9, 0.1, 0.9);
        }
        canvas.endReading();
    }

    /** Draws a letter in a ring. */
    void modifier(Modifier modifier, double x, double baseline, double size, Ink ink) {
        ring(modifier.letter(), modifier.character(), x, baseline, size, ink);
    }

    /** Draws one to three characters in a ring (an oval when they need it) and returns nothing but ink. */
    void ring(String letters, String reading, double x, double baseline, double size, Ink ink) {
        double letterSize = size * 0.72;
        double width = ringWidth(canvas.faces(), letters, size);
        double middle = baseline - size * Type.CAPITALS / 2;
        double radius = size * RING / 2 - 0.3;
        boolean ownReading = !reading.equals(letters);
        if (ownReading) {
            canvas.beginReading(reading, x, baseline, size);
        }
        canvas.stroke(stroke(size), ink);
        canvas.content()
                .roundRectangle(
                        (float) (x + 0.3),
                        (float) canvas.up(middle + radius),
                        (float) (width - 0.6),
                        (float) (2 * radius),
                        (float) radius);
        canvas.content().stroke();
        if (ownReading) {
            drawLetters(letters, x + width / 2, middle, letterSize, ink);
            canvas.endReading();
        } else {
            drawLetters(letters, x + width / 2, middle, letterSize, ink);
        }
    }

    static double ringWidth(Faces faces, String letters, double size) {
        return Math.max(size * RING, faces.width(letters, false, size * 0.72) + size * 0.5);
    }

    private void drawLetters(String letters, double middleX, double middleY, double size, Ink ink) {
        double width = canvas.faces().width(letters, false, size);
        canvas.text(letters, middleX - width / 2, middleY + size * Type.CAPITALS / 2, size, false, ink);
    }

    private void begin(String reading, double x, double baseline, double size, Ink ink) {
        canvas.beginReading(reading, x, baseline, size);
        canvas.stroke(stroke(size), ink);
        unit = size * 0.86;
        left = x + (size * SYMBOL - unit) / 2;
        bottom = baseline + (unit - size * Type.CAPITALS) / 2;
    }

    private static double stroke(double size) {
        return size * 0.075;
    }

    private void line(double x1, double y1, double x2, double y2) {
        canvas.moveTo(left + x1 * unit, bottom - y1 * unit);
        canvas.lineTo(left + x2 * unit, bottom - y2 * unit);
        canvas.content().stroke();
    }

    private void shape(double... corners) {
        canvas.moveTo(left + corners[0] * unit, bottom - corners[1] * unit);
        for (int i = 2; i < corners.length; i += 2) {
            canvas.lineTo(left + corners[i] * unit, bottom - corners[i + 1] * unit);
        }
        canvas.content().closePathStroke();
    }

    private void circle(double x, double y, double radius) {
        canvas.content()
                .circle((float) (left + x * unit), (float) canvas.up(bottom - y * unit), (float) (radius * unit));
        canvas.content().stroke();
    }

    private void arc() {
        double r = 0.5 * unit;
        double x = left + 0.5 * unit;
        double y = bottom - 0.25 * unit;
        canvas.moveTo(x - r, y);
        canvas.curveTo(x - r, y - ROUND * r, x - ROUND * r, y - r, x, y - r);
        canvas.curveTo(x + ROUND * r, y - r, x + r, y - ROUND * r, x + r, y);
        canvas.content().stroke();
    }

    private void arrow(double x1, double y1, double x2, double y2) {
        line(x1, y1, x2, y2);
        double length = Math.hypot(x2 - x1, y2 - y1);
        double dx = (x2 - x1) / length;
        double dy = (y2 - y1) / length;
        double head = 0.36;
        double half = 0.13;
        double baseX = x2 - dx * head;
        double baseY = y2 - dy * head;
        canvas.content().setColorFill(Ink.BLACK.colour());
        canvas.moveTo(left + x2 * unit, bottom - y2 * unit);
        canvas.lineTo(left + (baseX - dy * half) * unit, bottom - (baseY + dx * half) * unit);
        canvas.lineTo(left + (baseX + dy * half) * unit, bottom - (baseY - dx * half) * unit);
        canvas.content().closePath();
        canvas.content().fill();
    }
}
