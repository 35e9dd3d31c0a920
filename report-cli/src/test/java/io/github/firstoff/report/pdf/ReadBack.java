package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.ReportModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Reads a sheet back with another library than the one that wrote it. */
final class ReadBack {
    private ReadBack() {}

    static byte[] bytes(ReportModel model) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PdfRenderer().render(model, out);
        return out.toByteArray();
    }

    static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replace('\u00A0', ' ');
        }
    }

    /** Text page by page. */
    static List<String> pages(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(stripper.getText(document).replace('\u00A0', ' '));
            }
            return pages;
        }
    }

    /** One printed character with its place. */
    record Glyph(int page, String text, double x, double y, double width, double size) {}

    static List<Glyph> glyphs(byte[] pdf) throws IOException {
        List<Glyph> glyphs = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition position) {
                    glyphs.add(new Glyph(
                            getCurrentPageNo(),
                            position.getUnicode(),
                            position.getXDirAdj(),
                            position.getYDirAdj(),
                            position.getWidthDirAdj(),
                            position.getFontSizeInPt()));
                }
            };
            stripper.getText(document);
        }
        return glyphs;
    }

    static List<PDFont> fonts(PDDocument document) throws IOException {
        List<PDFont> fonts = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            fonts(page.getResources(), fonts);
        }
        return fonts;
    }

    private static void fonts(PDResources resources, List<PDFont> fonts) throws IOException {
        for (COSName name : resources.getFontNames()) {
            fonts.add(resources.getFont(name));
        }
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof PDFormXObject form && form.getResources() != null) {
                fonts(form.getResources(), fonts);
            }
        }
    }

    static int images(PDDocument document) throws IOException {
        int images = 0;
        for (PDPage page : document.getPages()) {
            images += images(page.getResources());
        }
        return images;
    }

    private static int images(PDResources resources) throws IOException {
        int images = 0;
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            if (object instanceof PDImageXObject) {
                images++;
            } else if (object instanceof PDFormXObject form && form.getResources() != null) {
                images += images(form.getResources());
            }
        }
        return images;
    }

    /** What drawings say in extracted text, in the order of the page. */
    static List<String> readings(byte[] pdf) throws IOException {
        List<String> readings = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFStreamEngine engine = new PDFStreamEngine() {
                @Override
                protected void processOperator(Operator operator, List<COSBase> operands) {
                    if (operator.getName().equals("BDC") && operands.get(1) instanceof COSDictionary properties) {
                        String reading = properties.getString("ActualText");
                        if (reading != null) {
                            readings.add(reading);
                        }
                    }
                }
            };
            for (PDPage page : document.getPages()) {
                engine.processPage(page);
            }
        }
        return readings;
    }
}
