package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Strip;
import java.util.Comparator;
import java.util.List;

/** Draws the strip that shows where readings lie in their tolerance. */
final class StripPainter {
    /** Length from limit to limit. */
    static final double LENGTH = 28 * Type.MM;

    private static final double TICK = 3.4;
    /** Readings stand on the line, the target hangs below it, limits reach to both sides: three shapes, no colour needed. */
    private static final double MARK = 4.6;

    private static final double EXCESS_SIZE = 6.5;

    private final Canvas canvas;

    StripPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Height of the row a strip needs: more where a figure of excess stands above the line. */
    static double height(Strip strip) {
        boolean figure = strip.marks().stream()
                .anyMatch(mark ->
                        (mark.at() < 0 || mark.at() > 1) && !mark.excess().isEmpty());
        return figure ? 20 : Type.LINE;
    }

    /** Draws a strip whose line runs from x over the given length at the height y. */
    void paint(Strip strip, double x, double y, double length) {
        double from = strip.lower() ? strip.lowerGuard() : 0;
        double to = strip.upper() ? 1 - strip.upperGuard() : 1;
        canvas.line(x, y, x + length, y, 0.4, Ink.BLACK);
        if (from < to) {
            canvas.line(x + from * length, y, x + to * length, y, 1.3, Ink.BLACK);
        }
        if (strip.lower()) {
            canvas.line(x, y - TICK, x, y + TICK, 0.9, Ink.BLACK);
        } else {
            openEnd(x, y, -1);
        }
        if (strip.upper()) {
            canvas.line(x + length, y - TICK, x + length, y + TICK, 0.9, Ink.BLACK);
        } else {
            openEnd(x + length, y, 1);
        }
        strip.target().ifPresent(at -> {
            double notch = x + at * length;
            canvas.fillTriangle(notch, y + 1.5, notch - 1.7, y + 4.4, notch + 1.7, y + 4.4, Ink.BLACK);
        });
        double weight = strip.marks().size() > 40 ? 0.35 : 0.95;
        for (Strip.Mark mark : strip.marks()) {
            if (mark.at() >= 0 && mark.at() <= 1) {
                double at = x + mark.at() * length;
                canvas.line(at, y - MARK, at, y, weight, Ink.BLUE);
            }
        }
        outside(strip.marks().stream().filter(mark -> mark.at() < 0).toList(), x, y, -1);
        outside(strip.marks().stream().filter(mark -> mark.at() > 1).toList(), x + length, y, 1);
    }

    /** A line that goes on: dots instead of a tick. */
    private void openEnd(double x, double y, int direction) {
        for (int i = 1; i <= 3; i++) {
            canvas.fillCircle(x + direction * i * 2.2, y, 0.45, Ink.BLACK);
        }
    }

    private void outside(List<Strip.Mark> marks, double end, double y, int direction) {
        if (marks.isEmpty()) {
            return;
        }
        double base = end + direction * 2.4;
        double tip = base + direction * 4.4;
        canvas.line(end, y, base, y, 0.4, Ink.RED);
        canvas.fillTriangle(tip, y, base, y - 2.6, base, y + 2.6, Ink.RED);
        Strip.Mark worst = marks.stream()
                .max(Comparator.comparingDouble(mark -> Math.abs(mark.at() - 0.5)))
                .orElseThrow();
        String excess = canvas.faces().fit(worst.excess());
        if (!excess.isEmpty()) {
            String figure = marks.size() > 1 ? excess + " (" + marks.size() + ")" : excess;
            Type type = new Type(EXCESS_SIZE, 8, true, Ink.RED);
            double baseline = y - 5.6;
            if (direction < 0) {
                canvas.text(figure, tip, baseline, type);
            } else {
                canvas.textRight(figure, tip, baseline, type);
            }
        }
    }
}
