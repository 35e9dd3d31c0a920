package io.github.firstoff.report.pdf;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import com.lowagie.text.pdf.PdfTemplate;
import io.github.firstoff.report.figure.BandFigure;
import io.github.firstoff.report.figure.ConsequenceFigure;
import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.DriftFigure;
import io.github.firstoff.report.figure.Figure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.HistoryFigure;
import io.github.firstoff.report.figure.ProbabilityFigure;
import io.github.firstoff.report.figure.ShareFigure;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Locale;

/** Draws figures as vectors on a sheet; each kind has a painter of its own. */
final class FigurePainter {
    private final Faces faces;
    private final FontMapper mapper;

    FigurePainter(Faces faces) {
        this.faces = faces;
        mapper = new FontMapper() {
            @Override
            public BaseFont awtToPdf(Font font) {
                return faces.font(font.getFontName(Locale.ROOT).contains("Semibold"));
            }

            @Override
            public Font pdfToAwt(BaseFont font, int size) {
                throw new UnsupportedOperationException("drawing goes one way, from the chart to the sheet");
            }
        };
    }

    void paint(Canvas canvas, Figure figure, String alternative, double x, double y, double width, double height) {
        PdfTemplate template = canvas.content().createTemplate((float) width, (float) height);
        Graphics2D g = template.createGraphics((float) width, (float) height, mapper);
        try {
            paint(new Pen(g, faces), figure, width, height);
        } finally {
            g.dispose();
        }
        canvas.tagged(
                Tag.figure(alternative),
                () -> canvas.content().addTemplate(template, (float) x, (float) canvas.up(y + height)));
    }

    static void paint(Pen pen, Figure figure, double width, double height) {
        if (figure instanceof ControlFigure control) {
            new ControlPainter(pen, control).paint(width, height);
        } else if (figure instanceof HistogramFigure histogram) {
            new HistogramPainter(pen, histogram).paint(width, height);
        } else if (figure instanceof ProbabilityFigure probability) {
            new ProbabilityPainter(pen, probability).paint(width, height);
        } else if (figure instanceof ConsequenceFigure consequences) {
            new ConsequencePainter(pen, consequences).paint(width, height);
        } else if (figure instanceof BandFigure band) {
            new BandPainter(pen, band).paint(width, height);
        } else if (figure instanceof DriftFigure drift) {
            new DriftPainter(pen, drift).paint(width, height);
        } else if (figure instanceof HistoryFigure history) {
            new HistoryPainter(pen, history).paint(width, height);
        } else if (figure instanceof ShareFigure shares) {
            new SharePainter(pen, shares).paint(width, height);
        }
    }
}
