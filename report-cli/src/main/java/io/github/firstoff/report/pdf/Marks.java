package io.github.firstoff.report.pdf;

import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfAnnotation;
import com.lowagie.text.pdf.PdfDestination;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfFormField;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfOutline;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfWriter;
import org.jspecify.annotations.Nullable;

/** What a file knows of its pages beside their ink: where its headings stand, and where a signature goes. Places are those of the page. */
final class Marks {
    /** With what the names of the fields for signatures begin; a number follows, counted from 1. */
    static final String SIGNATURE = "signature-";

    private final PdfWriter writer;
    private int signatures;
    private int rank;
    private @Nullable PdfStructureElement structure;

    Marks(PdfWriter writer) {
        this.writer = writer;
    }

    /** The whole sheet, of which everything that is read is a part. */
    PdfStructureElement structure() {
        if (structure == null) {
            structure = new PdfStructureElement(writer.getStructureTreeRoot(), new PdfName("Document"));
        }
        return structure;
    }

    /** The type of a part, headings at most one rank below the heading before them (ISO 14289-1, 7.4.2). */
    String rank(String type) {
        if (!type.matches("H[1-6]")) {
            return type;
        }
        rank = Math.min(type.charAt(1) - '0', rank + 1);
        return "H" + rank;
    }

    /** A line in the outline of the file that leads to this place on the current page. */
    void bookmark(String title, double x, double y) {
        PdfDestination place = new PdfDestination(PdfDestination.XYZ, (float) x, (float) y, 0);
        PdfOutline line = new PdfOutline(writer.getRootOutline(), place, title, true);
        line.setDestinationPage(writer.getCurrentPage());
    }

    /** The same where no line is printed: what is shown there once it is signed says the role, too. */
    void countersignature(String role, double x, double y, double width, double height) {
        signature(SignatureBlock.COUNTERSIGNATURE, role, x, y, width, height);
    }

    /** A field for a digital signature over a line to sign on; x and y are its left lower corner. It prints as nothing until it is signed. */
    void signature(String role, double x, double y, double width, double height) {
        signature(SIGNATURE, role, x, y, width, height);
    }

    private void signature(String kind, String role, double x, double y, double width, double height) {
        signatures++;
        PdfFormField field = PdfFormField.createSignature(writer);
        field.setFieldName(kind + signatures);
        field.setUserName(role);
        field.setWidget(
                new Rectangle((float) x, (float) y, (float) (x + width), (float) (y + height)),
                PdfAnnotation.HIGHLIGHT_NONE);
        field.setFlags(PdfAnnotation.FLAGS_PRINT);
        field.setPage();
        // An archive wants to be told how a field looks, even where it looks like nothing (ISO 19005-3, 6.3.3).
        field.setAppearance(PdfName.N, writer.getDirectContent().createTemplate((float) width, (float) height));
        Tag form = Tag.of("Form");
        PdfStructureElement part = form.element(this);
        PdfDictionary object = new PdfDictionary(new PdfName("OBJR"));
        object.put(new PdfName("Obj"), field.getIndirectReference());
        object.put(PdfName.PG, writer.getCurrentPage());
        part.put(PdfName.K, object);
        part.put(PdfName.PG, writer.getCurrentPage());
        field.put(
                new PdfName("StructParent"),
                new PdfNumber(writer.getStructureTreeRoot().addExistingObject(part.getReference())));
        writer.addAnnotation(field);
    }
}
