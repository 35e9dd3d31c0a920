package io.github.firstoff.report.pdf;

import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import org.jspecify.annotations.Nullable;

/**
 * A part of the structure of a sheet for those who have it read aloud or search it by its parts (ISO 32000-1, 14.8): a heading, a paragraph, a
 * cell of a table. It comes into being when it is first drawn, so that the parts stand in the order of reading.
 */
final class Tag {
    private final String type;
    private final @Nullable Tag parent;
    private @Nullable PdfStructureElement element;
    private String alternative = "";
    private String scope = "";
    private int columns = 1;

    private Tag(String type, @Nullable Tag parent) {
        this.type = type;
        this.parent = parent;
    }

    /** A part of the sheet itself. */
    static Tag of(String type) {
        return new Tag(type, null);
    }

    /** A heading of that rank or, where the ranks above it are missing, of the next that may stand there. */
    static Tag heading(int rank) {
        return of("H" + rank);
    }

    /** A picture with what it says in words. */
    static Tag figure(String alternative) {
        Tag figure = of("Figure");
        figure.alternative = alternative;
        return figure;
    }

    /** A part of this part. */
    Tag within(String kind) {
        return new Tag(kind, this);
    }

    /** The head of a column. */
    Tag columnHead() {
        Tag head = within("TH");
        head.scope = "Column";
        return head;
    }

    /** A cell over several columns. */
    Tag over(int count) {
        columns = count;
        return this;
    }

    String type() {
        return type;
    }

    boolean isDrawn() {
        return element != null;
    }

    PdfStructureElement element(Marks marks) {
        if (element == null) {
            PdfName name = new PdfName(marks.rank(type));
            PdfStructureElement made = parent == null
                    ? new PdfStructureElement(marks.structure(), name)
                    : new PdfStructureElement(parent.element(marks), name);
            if (!alternative.isEmpty()) {
                made.put(new PdfName("Alt"), new PdfString(alternative, PdfObject.TEXT_UNICODE));
            }
            if (!scope.isEmpty() || columns > 1) {
                PdfDictionary attributes = new PdfDictionary();
                attributes.put(PdfName.O, new PdfName("Table"));
                if (!scope.isEmpty()) {
                    attributes.put(new PdfName("Scope"), new PdfName(scope));
                }
                if (columns > 1) {
                    attributes.put(new PdfName("ColSpan"), new PdfNumber(columns));
                }
                made.put(new PdfName("A"), attributes);
            }
            element = made;
        }
        return element;
    }
}
