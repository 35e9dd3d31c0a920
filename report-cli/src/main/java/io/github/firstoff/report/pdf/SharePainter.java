package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.ShareFigure;
import java.awt.geom.Rectangle2D;

/** Draws shares as bars from one line, with name and figure. */
final class SharePainter {
    private final Pen pen;
    private final ShareFigure figure;

    SharePainter(Pen pen, ShareFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        double names = Math.min(
                        width * 0.45,
                        pen.widest(figure.rows().stream()
                                .mapToDouble(row -> pen.width(pen.faces().fit(row.name())))))
                + 8;
        double figures = pen.widest(figure.rows().stream().mapToDouble(row -> pen.width(row.figure()))) + 6;
        double room = width - names - figures;
        double most =
                figure.rows().stream().mapToDouble(ShareFigure.Row::share).max().orElse(1);
        double pitch = (height - Pen.TITLE) / Math.max(1, figure.rows().size());
        double bar = Math.min(9, pitch * 0.6);
        pen.text(pen.faces().fit(figure.head()), names, Pen.TITLE - 4, true, Ink.BLACK);
        for (int i = 0; i < figure.rows().size(); i++) {
            ShareFigure.Row row = figure.rows().get(i);
            double middle = Pen.TITLE + (i + 0.5) * pitch;
            double baseline = middle + Pen.SIZE * Type.CAPITALS / 2;
            String name = pen.faces().fit(row.name());
            pen.text(name, Math.max(0, names - 8 - pen.width(name)), baseline, false, Ink.BLACK);
            double length = most > 0 ? row.share() / most * room : 0;
            pen.graphics().setPaint(Ink.BLUE.colour());
            pen.graphics().fill(new Rectangle2D.Double(names, middle - bar / 2, Math.max(length, 0.6), bar));
            pen.text(pen.faces().figure(row.figure()), names + length + 4, baseline, false, Ink.BLACK);
        }
        pen.line(names, Pen.TITLE, names, height, Pen.HAIR, Ink.GREY);
    }
}
