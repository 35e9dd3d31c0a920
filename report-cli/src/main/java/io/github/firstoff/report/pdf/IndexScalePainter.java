package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.words.Labels;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.stream.Collectors;

/** Draws indices as dots with their intervals on one common scale. */
final class IndexScalePainter {
    private static final double ROW = 13.5;

    private final Faces faces;
    private final TextSetter texts;

    IndexScalePainter(Faces faces, TextSetter texts) {
        this.faces = faces;
        this.texts = texts;
    }

    Slab slab(Block.IndexScale scale, double measure) {
        double names = scale.marks().stream()
                        .mapToDouble(mark -> faces.width(faces.fit(mark.name()), true, Type.BODY.size()))
                        .max()
                        .orElse(0)
                + 8;
        double figures = scale.marks().stream()
                        .mapToDouble(mark -> faces.width(faces.fit(mark.figures()), false, Type.BODY.size()))
                        .max()
                        .orElse(0)
                + 10;
        TextSetter.SetText conditions = texts.set(scale.conditions(), measure, Type.NOTE.in(Ink.GREY));
        double rows = scale.marks().size() * ROW;
        double head = 11;
        double axis = 13;
        double height = head + rows + axis + conditions.height();
        String inWords = scale.marks().stream()
                .map(mark -> mark.name() + " " + mark.figures())
                .collect(Collectors.joining("; "));
        Slab drawn = Slab.of(10, height, (canvas, x, y) -> {
            double left = x + names;
            double right = x + measure - figures;
            Ends ends = ends(scale);
            double top = y + head;
            double bottom = top + rows;
            canvas.line(left, bottom, right, bottom, 0.4, Ink.BLACK);
            DecimalFormat format = new DecimalFormat(
                    ends.step < 0.1 ? "0.00" : ends.step < 1 ? "0.0" : "0",
                    DecimalFormatSymbols.getInstance(Locale.ROOT));
            long steps = Math.round((ends.high - ends.low) / ends.step);
            for (long i = 0; i <= steps; i++) {
                double value = ends.low + i * ends.step;
                double at = ends.place(value, left, right);
                canvas.line(at, bottom, at, bottom + 2, 0.4, Ink.BLACK);
                canvas.textMiddle(minus(format.format(value)), at, bottom + 9, Type.LABEL);
            }
            scale.required().ifPresent(required -> {
                double at = ends.place(required, left, right);
                canvas.dashed(at, top - 2, at, bottom, 0.8, Ink.BLACK);
                String label = Labels.text(
                        "line.required",
                        minus(new DecimalFormat("0.0##", DecimalFormatSymbols.getInstance(Locale.ROOT))
                                .format(required)));
                double half = faces.width(label, false, Type.LABEL.size()) / 2;
                double middle = Math.max(left + half, Math.min(right - half, at));
                canvas.textMiddle(label, middle, top - 4, Type.LABEL.in(Ink.BLACK));
            });
            for (int i = 0; i < scale.marks().size(); i++) {
                Block.IndexMark mark = scale.marks().get(i);
                double middle = top + (i + 0.5) * ROW;
                double baseline = middle + Type.BODY.size() * Type.CAPITALS / 2;
                canvas.text(faces.fit(mark.name()), x, baseline, Type.STRONG);
                canvas.text(faces.fit(mark.figures()), right + 10, baseline, Type.BODY);
                double at = ends.place(mark.value(), left, right);
                double from = ends.place(mark.lower().orElse(mark.value()), left, right);
                double to = ends.place(mark.upper().orElse(mark.value()), left, right);
                canvas.line(from, middle, to, middle, 1.1, Ink.BLUE);
                mark.lower().ifPresent(v -> canvas.line(from, middle - 2.4, from, middle + 2.4, 1.1, Ink.BLUE));
                mark.upper().ifPresent(v -> canvas.line(to, middle - 2.4, to, middle + 2.4, 1.1, Ink.BLUE));
                canvas.fillCircle(at, middle, 2.5, Ink.BLUE);
            }
        });
        return Slab.of(10, height, (canvas, x, y) -> {
            canvas.tagged(Tag.figure(inWords), () -> drawn.paint().at(canvas, x, y));
            canvas.tagged(Tag.of("P"), () -> conditions.paint(canvas, x, y + head + rows + axis));
        });
    }

    static String minus(String figure) {
        return figure.replace('-', '\u2212');
    }

    private static Ends ends(Block.IndexScale scale) {
        double low = 0;
        double high = scale.required().orElse(1);
        for (Block.IndexMark mark : scale.marks()) {
            low = Math.min(low, Math.min(mark.value(), mark.lower().orElse(mark.value())));
            high = Math.max(high, Math.max(mark.value(), mark.upper().orElse(mark.value())));
        }
        double step = Ticks.step(low, high, 8);
        return new Ends(Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step, step);
    }

    private record Ends(double low, double high, double step) {
        double place(double value, double left, double right) {
            return left + (value - low) / (high - low) * (right - left);
        }
    }
}
