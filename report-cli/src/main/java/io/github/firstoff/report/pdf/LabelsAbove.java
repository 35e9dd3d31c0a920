package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.LevelLine;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;

/** Upright lines across a picture, with name and value above them; labels that would touch are pushed apart. */
final class LabelsAbove {
    private static final double LEVEL = 2 * Pen.LABEL_STEP + 2;

    private final Pen pen;
    private final Axis axis;
    private final List<LineLabel> labels;

    LabelsAbove(Pen pen, List<LevelLine> lines, Axis axis, double left, double plotWidth) {
        this.pen = pen;
        this.axis = axis;
        labels = place(lines, left, plotWidth);
    }

    private static final class LineLabel {
        private final LevelLine line;
        private final String name;
        private final String value;
        private double middle;
        private int level;

        LineLabel(LevelLine line, String name, String value, double middle) {
            this.line = line;
            this.name = name;
            this.value = value;
            this.middle = middle;
        }

        double top() {
            return 2 + level * LEVEL;
        }
    }

    /** The height that the labels need over the picture. */
    double height() {
        return labels.stream().mapToInt(label -> label.level + 1).max().orElse(0) * LEVEL;
    }

    void draw(Rectangle2D area) {
        for (LineLabel label : labels) {
            double x = axis.along(label.line.at(), area);
            double foot = label.top() + 2 * Pen.LABEL_STEP;
            double start = Math.min(foot + 3, area.getY());
            pen.line(x, start, x, area.getMaxY(), Pen.stroke(label.line.kind()), Pen.ink(label.line.kind()));
            pen.line(label.middle, foot, x, start, Pen.HAIR, Pen.ink(label.line.kind()));
        }
        for (LineLabel label : labels) {
            double half = Math.max(pen.width(label.name), pen.width(label.value)) / 2;
            pen.graphics().setPaint(Ink.WHITE.colour());
            pen.graphics()
                    .fill(new Rectangle2D.Double(
                            label.middle - half - 1, label.top(), 2 * half + 2, 2 * Pen.LABEL_STEP));
            boolean heavy = label.line.kind() == LevelLine.Kind.SPECIFICATION_LIMIT;
            double baseline = label.top() + Pen.SIZE - 1.4;
            pen.text(label.name, label.middle - pen.width(label.name) / 2, baseline, heavy, Ink.BLACK);
            pen.text(
                    label.value,
                    label.middle - pen.width(label.value) / 2,
                    baseline + Pen.LABEL_STEP,
                    heavy,
                    Ink.BLACK);
        }
    }

    /** On as many levels as the labels need not to touch. */
    private List<LineLabel> place(List<LevelLine> lines, double left, double plotWidth) {
        Rectangle2D area = new Rectangle2D.Double(left, 0, plotWidth, 1);
        List<LineLabel> placed = new ArrayList<>();
        List<Double> ends = new ArrayList<>();
        List<LevelLine> sorted = lines.stream()
                .filter(line -> line.at() >= axis.low && line.at() <= axis.high)
                .sorted(Comparator.comparingDouble(LevelLine::at))
                .toList();
        for (LevelLine line : sorted) {
            String name = pen.faces().fit(line.name());
            String value = pen.faces().figure(line.value());
            double half = Math.max(pen.width(name), pen.width(value)) / 2;
            double x = axis.along(line.at(), area);
            double middle = Math.max(half, Math.min(left + plotWidth + 4 - half, x));
            LineLabel label = new LineLabel(line, name, value, middle);
            int level = 0;
            while (level < ends.size() && ends.get(level) + 5 > middle - half) {
                level++;
            }
            if (level == ends.size()) {
                ends.add(middle + half);
            } else {
                ends.set(level, middle + half);
            }
            label.level = level;
            placed.add(label);
        }
        if (ends.size() > 1) {
            onOneLevel(placed, left + plotWidth + 4);
        }
        return placed;
    }

    /** Pushes labels apart sideways where they all have room in one row; their lines then reach them aslant. */
    private void onOneLevel(List<LineLabel> placed, double right) {
        double gap = 6;
        double[] half = placed.stream()
                .mapToDouble(label -> Math.max(pen.width(label.name), pen.width(label.value)) / 2)
                .toArray();
        if (2 * DoubleStream.of(half).sum() + gap * (half.length - 1) > right) {
            return;
        }
        double[] middle = placed.stream().mapToDouble(label -> label.middle).toArray();
        // Two sweeps from the middle one: its neighbours give way to either side.
        int pivot = half.length / 2;
        for (int i = pivot + 1; i < half.length; i++) {
            middle[i] = Math.max(middle[i], middle[i - 1] + half[i - 1] + half[i] + gap);
        }
        for (int i = pivot - 1; i >= 0; i--) {
            middle[i] = Math.min(middle[i], middle[i + 1] - half[i] - half[i + 1] - gap);
        }
        double limit = right;
        for (int i = half.length - 1; i >= 0; i--) {
            middle[i] = Math.min(middle[i], limit - half[i]);
            limit = middle[i] - half[i] - gap;
        }
        double floor = 0;
        for (int i = 0; i < half.length; i++) {
            middle[i] = Math.max(middle[i], floor + half[i]);
            floor = middle[i] + half[i] + gap;
        }
        for (int i = 0; i < half.length; i++) {
            placed.get(i).middle = middle[i];
            placed.get(i).level = 0;
        }
    }
}
