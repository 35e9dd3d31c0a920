package io.github.firstoff.report.pdf;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.attributes.ViewBox;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.lowagie.text.Image;
import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfTemplate;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Logo;
import io.github.firstoff.report.model.Text;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.geom.Dimension2D;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Sets the head of a firm's paper: its mark, drawn as shapes where it is SVG, and beside it name, address and approvals. */
final class LogoPainter {
    /** A mark fills so much of the head at most. */
    private static final double HEIGHT = 11 * Type.MM;

    private static final double WIDTH = 46 * Type.MM;
    private static final double GAP = 4 * Type.MM;

    private final TextSetter texts;

    LogoPainter(TextSetter texts) {
        this.texts = texts;
    }

    Slab slab(Block.Letterhead head, double measure) {
        Picture picture = head.logo().map(LogoPainter::picture).orElse(Picture.NONE);
        double indent = picture.width > 0 ? picture.width + GAP : 0;
        TextSetter.SetText name = texts.set(Text.bold(head.name()), measure - indent, Type.BODY);
        String below = head.approvals().isEmpty()
                ? head.address()
                : head.address() + (head.address().isEmpty() ? "" : "\n") + head.approvals();
        TextSetter.SetText rest = texts.set(Text.of(below), measure - indent, Type.NOTE);
        double height = Math.max(picture.height, name.height() + rest.height());
        return Slab.of(0, height, (canvas, x, y) -> {
                    if (picture.width > 0) {
                        canvas.tagged(Tag.figure(head.name()), () -> picture.paint.at(canvas, x, y));
                    }
                    canvas.tagged(Tag.of("P"), () -> {
                        name.paint(canvas, x + indent, y);
                        rest.paint(canvas, x + indent, y + name.height());
                    });
                })
                .kept();
    }

    /** A mark in the size in which it is drawn, in points. */
    private record Picture(double width, double height, Slab.Paint paint) {
        static final Picture NONE = new Picture(0, 0, (canvas, x, y) -> {});

        static double scale(double width, double height) {
            return Math.min(HEIGHT / height, WIDTH / width);
        }
    }

    private static Picture picture(Logo logo) {
        return logo.isVector() ? shapes(logo) : dots(logo);
    }

    private static Picture shapes(Logo logo) {
        SVGDocument document =
                new SVGLoader().load(new ByteArrayInputStream(logo.bytes()), null, LoaderContext.createDefault());
        if (document == null) {
            throw new IllegalStateException("the logo was read before, and cannot be drawn");
        }
        Dimension2D size = document.size();
        double scale = Picture.scale(size.getWidth(), size.getHeight());
        double width = size.getWidth() * scale;
        double height = size.getHeight() * scale;
        return new Picture(width, height, (canvas, x, y) -> {
            PdfTemplate template = canvas.content().createTemplate((float) width, (float) height);
            Graphics2D pen = new PdfGraphics2D(template, (float) width, (float) height, null, true, false, 0);
            document.render((Component) null, pen, new ViewBox(0, 0, (float) width, (float) height));
            pen.dispose();
            canvas.content().addTemplate(template, (float) x, (float) canvas.up(y + height));
        });
    }

    private static Picture dots(Logo logo) {
        try {
            Image image = Image.getInstance(logo.bytes());
            double scale = Picture.scale(image.getWidth(), image.getHeight());
            double width = image.getWidth() * scale;
            double height = image.getHeight() * scale;
            return new Picture(
                    width,
                    height,
                    (canvas, x, y) -> canvas.content()
                            .addImage(image, (float) width, 0, 0, (float) height, (float) x, (float)
                                    canvas.up(y + height)));
        } catch (IOException fault) {
            throw new UncheckedIOException("the logo was read before, and cannot be printed", fault);
        }
    }
}
