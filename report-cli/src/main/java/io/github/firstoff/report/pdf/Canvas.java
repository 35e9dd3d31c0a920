package io.github.firstoff.report.pdf;

import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;

/** A page to draw on, in points from its top left corner, y downwards. */
final class Canvas {
    private static final PdfName ARTIFACT = new PdfName("Artifact");

    private final PdfContentByte content;
    private final Faces faces;
    private final double pageHeight;
    private final Marks marks;
    private boolean furniture;

    Canvas(PdfContentByte content, Faces faces, double pageHeight, Marks marks) {
        this.content = content;
        this.faces = faces;
        this.pageHeight = pageHeight;
        this.marks = marks;
    }

    /** What the file knows of this page beside its ink. */
    Marks marks() {
        return marks;
    }

    PdfContentByte content() {
        return content;
    }

    Faces faces() {
        return faces;
    }

    /** From here on, what belongs to no part of the sheet is furniture of the page. */
    void beginPage() {
        content.beginMarkedContentSequence(ARTIFACT);
        furniture = true;
    }

    /** The page is drawn. */
    void endPage() {
        content.endMarkedContentSequence();
        furniture = false;
    }

    /** Draws a part of the sheet. A part within a part that is being drawn belongs to it. */
    void tagged(Tag tag, Runnable drawing) {
        if (!furniture) {
            drawing.run();
            return;
        }
        endPage();
        content.beginMarkedContentSequence(tag.element(marks));
        drawing.run();
        content.endMarkedContentSequence();
        beginPage();
    }

    /** Draws a part of the sheet, and the same drawing on later pages as their furniture: a repeated head is not read again. */
    void taggedOnce(Tag tag, Runnable drawing) {
        if (tag.isDrawn()) {
            drawing.run();
        } else {
            tagged(tag, drawing);
        }
    }

    /** From y downwards to the y of the page. */
    double up(double y) {
        return pageHeight - y;
    }

    void text(String text, double x, double baseline, Type type) {
        text(text, x, baseline, type.size(), type.strong(), type.ink());
    }

    void text(String text, double x, double baseline, double size, boolean strong, Ink ink) {
        if (text.isEmpty()) {
            return;
        }
        content.setColorFill(ink.colour());
        content.beginText();
        content.setFontAndSize(faces.font(strong), (float) size);
        content.setTextMatrix((float) x, (float) up(baseline));
        // A space that did not break is a space to whoever searches or copies the text.
        content.showText(text.replace('\u00A0', ' '));
        content.endText();
    }

    void textRight(String text, double right, double baseline, Type type) {
        text(text, right - faces.width(text, type.strong(), type.size()), baseline, type);
    }

    void textMiddle(String text, double middle, double baseline, Type type) {
        text(text, middle - faces.width(text, type.strong(), type.size()) / 2, baseline, type);
    }

    /** Text that reads upwards (quarter turn to the left) or downwards. */
    void textTurned(String text, double x, double y, boolean upwards, Type type) {
        content.setColorFill(type.ink().colour());
        content.beginText();
        content.setFontAndSize(faces.font(type.strong()), (float) type.size());
        float turn = upwards ? 1 : -1;
        content.setTextMatrix(0, turn, -turn, 0, (float) x, (float) up(y));
        content.showText(text);
        content.endText();
    }

    void line(double x1, double y1, double x2, double y2, double weight, Ink ink) {
        stroke(weight, ink);
        moveTo(x1, y1);
        lineTo(x2, y2);
        content.stroke();
    }

    void dashed(double x1, double y1, double x2, double y2, double weight, Ink ink) {
        stroke(weight, ink);
        content.setLineDash(2.4f, 1.8f, 0);
        moveTo(x1, y1);
        lineTo(x2, y2);
        content.stroke();
        content.setLineDash(0);
    }

    void fillRectangle(double x, double y, double width, double height, Ink ink) {
        content.setColorFill(ink.colour());
        content.rectangle((float) x, (float) up(y + height), (float) width, (float) height);
        content.fill();
    }

    void strokeRectangle(double x, double y, double width, double height, double weight, Ink ink) {
        stroke(weight, ink);
        content.rectangle((float) x, (float) up(y + height), (float) width, (float) height);
        content.stroke();
    }

    void strokeCircle(double x, double y, double radius, double weight, Ink ink) {
        stroke(weight, ink);
        content.circle((float) x, (float) up(y), (float) radius);
        content.stroke();
    }

    void fillCircle(double x, double y, double radius, Ink ink) {
        content.setColorFill(ink.colour());
        content.circle((float) x, (float) up(y), (float) radius);
        content.fill();
    }

    void fillTriangle(double x1, double y1, double x2, double y2, double x3, double y3, Ink ink) {
        content.setColorFill(ink.colour());
        moveTo(x1, y1);
        lineTo(x2, y2);
        lineTo(x3, y3);
        content.closePath();
        content.fill();
    }

    void stroke(double weight, Ink ink) {
        content.setLineWidth((float) weight);
        content.setColorStroke(ink.colour());
    }

    void moveTo(double x, double y) {
        content.moveTo((float) x, (float) up(y));
    }

    void lineTo(double x, double y) {
        content.lineTo((float) x, (float) up(y));
    }

    void curveTo(double x1, double y1, double x2, double y2, double x3, double y3) {
        content.curveTo((float) x1, (float) up(y1), (float) x2, (float) up(y2), (float) x3, (float) up(y3));
    }

    /**
     * Opens a stretch of drawing that reads as text. Readers look for letters before they honour such a stretch, so an
     * invisible one is set where the drawing stands.
     */
    void beginReading(String characters, double x, double baseline, double size) {
        PdfDictionary properties = new PdfDictionary();
        properties.put(new PdfName("ActualText"), new PdfString(characters, PdfObject.TEXT_UNICODE));
        content.beginMarkedContentSequence(new PdfName("Span"), properties, true);
        content.beginText();
        content.setTextRenderingMode(PdfContentByte.TEXT_RENDER_MODE_INVISIBLE);
        content.setFontAndSize(faces.font(false), (float) size);
        content.setTextMatrix((float) x, (float) up(baseline));
        content.showText("o");
        content.setTextRenderingMode(PdfContentByte.TEXT_RENDER_MODE_FILL);
        content.endText();
    }

    void endReading() {
        content.endMarkedContentSequence();
    }
}
