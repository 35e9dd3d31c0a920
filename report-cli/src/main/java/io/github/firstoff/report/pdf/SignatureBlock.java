package io.github.firstoff.report.pdf;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfEncryption;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;

/** What a digital signature shows on the line to sign on: who signed, in what position, and when, in the type of the sheet. */
public final class SignatureBlock {
    /** With what the names of fields begin that have no printed line, so that their block shows the role as well. */
    public static final String COUNTERSIGNATURE = "countersignature-";

    private static final double SMALLEST = 5;
    private static final double LEADING = 1.2;
    private static final double BELOW = 2.5;

    /** Room for one line that says it all: a certificate has no more to spare without running onto another page. */
    static final double HEIGHT_WITH_ROLE = 10;

    private SignatureBlock() {}

    /**
     * The block as a page of its own, without any other page's furniture.
     *
     * @param width of the block in points
     * @param height of the block in points
     * @param role in what capacity, where no printed line says so
     * @param name who signed, with position; set in the heavier weight
     * @param when the time in words
     * @return a PDF file of one page of that size; the same bytes for the same words
     */
    public static byte[] page(double width, double height, Optional<String> role, String name, String when) {
        Faces faces = new Faces();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle((float) width, (float) height), 0, 0, 0, 0);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        document.open();
        byte[] identity = new byte[16];
        writer.getInfo().put(PdfName.FILEID, PdfEncryption.createInfoId(identity, identity));
        Canvas canvas = new Canvas(writer.getDirectContent(), faces, height, new Marks(writer));
        List<String> lines = role.map(said -> List.of(faces.fit(said + " " + name + ", " + when)))
                .orElseGet(() -> List.of(faces.fit(name), faces.fit(when)));
        double last = height - BELOW;
        for (int i = 0; i < lines.size(); i++) {
            boolean strong = i == 0 && role.isEmpty();
            double size = Math.min(Type.LABEL.size(), height / (lines.size() * LEADING));
            while (size > SMALLEST && faces.width(lines.get(i), strong, size) > width) {
                size -= 0.25;
            }
            double baseline = last - (lines.size() - 1 - i) * Type.LABEL.size() * LEADING;
            canvas.text(shortened(faces, lines.get(i), strong, size, width), 0, baseline, size, strong, Ink.BLUE);
        }
        writer.setPageEmpty(false);
        document.close();
        return out.toByteArray();
    }

    private static String shortened(Faces faces, String text, boolean strong, double size, double width) {
        String shorter = text;
        while (shorter.length() > 1 && faces.width(shorter, strong, size) > width) {
            shorter = shorter.substring(0, shorter.length() - 2).stripTrailing() + "\u2026";
        }
        return shorter;
    }
}
