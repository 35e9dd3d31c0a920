package io.github.firstoff.report.pdf;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfEncryption;
import com.lowagie.text.pdf.PdfFileSpecification;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfStream;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.model.DocumentInfo;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.words.Labels;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;

/**
 * Sets a sheet as a PDF file: vectors and embedded type only, the same bytes for the same model.
 *
 * <p>Before the first sheet, call {@link HeadlessFonts#prepare()} once if the machine may have no fonts.
 */
public final class PdfRenderer {
    /** A renderer; it keeps no state between sheets and may be used by several threads. */
    public PdfRenderer() {}

    /** Opens what figures are drawn with, for a program that may have to draw them while it is shutting down: Java opens no typeface then. */
    public static void prepareFigures() {
        Pen.openTypefaces();
    }

    /**
     * Writes the sheet.
     *
     * @param model what to print
     * @param out   where to; written to the end, not closed
     * @return the number of pages, and what the reader of the sheet should be told about it
     * @throws IOException when the stream cannot be written
     */
    public RenderedSheet render(ReportModel model, OutputStream out) throws IOException {
        return render(model, List.of(), out);
    }

    /**
     * Writes the sheet with files inside.
     *
     * @param model what to print
     * @param attachments what it carries; no two of one name
     * @param out where to; written to the end, not closed
     * @return the number of pages, and what the reader of the sheet should be told about it
     * @throws IOException when the stream cannot be written
     */
    public RenderedSheet render(ReportModel model, List<Attachment> attachments, OutputStream out) throws IOException {
        return Labels.of(model.document().language()).speaking(() -> set(model, attachments, out));
    }

    private static RenderedSheet set(ReportModel model, List<Attachment> attachments, OutputStream out)
            throws IOException {
        Faces faces = new Faces();
        PageFrame frame = new PageFrame(model, faces);
        List<List<Paginator.Placed>> pages =
                new PageFiller(faces, frame.bottom() - frame.top(), frame.measure()).pages(model.blocks());
        if (pages.isEmpty()) {
            pages = List.of(List.of());
        }
        // Set in memory first: whatever goes wrong while setting, nothing half-written leaves.
        ByteArrayOutputStream file = new ByteArrayOutputStream(1 << 16);
        write(model, attachments, faces, frame, pages, file);
        byte[] bytes = file.toByteArray();
        Seal.close(bytes);
        out.write(bytes);
        return new RenderedSheet(pages.size(), faces.messages());
    }

    private static void write(
            ReportModel model,
            List<Attachment> attachments,
            Faces faces,
            PageFrame frame,
            List<List<Paginator.Placed>> pages,
            OutputStream out)
            throws IOException {
        Document document = new Document(new Rectangle((float) frame.width(), (float) frame.height()), 0, 0, 0, 0);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        writer.setPdfVersion(PdfWriter.PDF_VERSION_1_7);
        writer.setViewerPreferences(PdfWriter.DisplayDocTitle);
        writer.setTagged();
        writer.setTabs(PdfName.S);
        describe(model, attachments, document, writer);
        attach(attachments, model.document(), writer);
        Marks marks = new Marks(writer);
        int number = 0;
        for (List<Paginator.Placed> page : pages) {
            number++;
            document.newPage();
            Canvas canvas = new Canvas(writer.getDirectContent(), faces, frame.height(), marks);
            if (number == 1) {
                marks.bookmark(model.kind(), PageFrame.MARGIN, canvas.up(0));
            }
            canvas.beginPage();
            frame.paint(canvas, number, pages.size());
            for (Paginator.Placed placed : page) {
                placed.slab().paint().at(canvas, PageFrame.MARGIN, frame.top() + placed.y());
            }
            canvas.endPage();
            writer.setPageEmpty(false);
        }
        document.close();
    }

    /** Properties of the file. Dates and identity come from the model, never from the clock or from chance. */
    private static void describe(ReportModel model, List<Attachment> attachments, Document document, PdfWriter writer)
            throws IOException {
        DocumentInfo info = model.document();
        document.addTitle(info.title());
        if (!info.author().isEmpty()) {
            document.addAuthor(info.author());
        }
        if (!info.subject().isEmpty()) {
            document.addSubject(info.subject());
        }
        document.addCreator(model.foot().programVersion());
        document.open();
        PdfDate date = date(info);
        writer.getInfo().put(PdfName.CREATIONDATE, date);
        writer.getInfo().put(PdfName.MODDATE, date);
        byte[] identity = identity(model, attachments);
        writer.getInfo().put(PdfName.FILEID, PdfEncryption.createInfoId(identity, identity));
        writer.getExtraCatalog()
                .put(PdfName.LANG, new PdfString(info.language().toLanguageTag(), PdfObject.TEXT_UNICODE));
        String producer = ((PdfString) writer.getInfo().get(PdfName.PRODUCER)).toUnicodeString();
        writer.setXmpMetadata(Archive.metadata(info, model.foot().programVersion(), producer));
        PdfStream profile = new PdfStream(Archive.screenProfile());
        profile.put(PdfName.N, new PdfNumber(3));
        profile.put(PdfName.ALTERNATE, PdfName.DEVICERGB);
        profile.flateCompress();
        writer.setOutputIntents("", "", "http://www.color.org", "sRGB IEC61966-2.1", (ICC_Profile) null);
        writer.getExtraCatalog()
                .getAsArray(PdfName.OUTPUTINTENTS)
                .getAsDict(0)
                .put(PdfName.DESTOUTPUTPROFILE, writer.addToBody(profile).getIndirectReference());
        // The library marks the intent for print exchange; an archive looks for its own mark (ISO 19005-3, 6.2.3).
        writer.getExtraCatalog()
                .getAsArray(PdfName.OUTPUTINTENTS)
                .getAsDict(0)
                .put(PdfName.S, new PdfName("GTS_PDFA1"));
    }

    private static PdfDate date(DocumentInfo info) {
        GregorianCalendar created = GregorianCalendar.from(info.created().atZone(ZoneOffset.UTC));
        created.setTimeZone(TimeZone.getTimeZone("UTC"));
        return new PdfDate(created);
    }

    /** Puts files into the file, each with its relationship to the sheet (ISO 19005-3, 6.8), and the place of the seal. */
    private static void attach(List<Attachment> attachments, DocumentInfo info, PdfWriter writer) throws IOException {
        PdfArray associated = new PdfArray();
        for (Attachment attachment : attachments) {
            PdfDictionary parameters = new PdfDictionary();
            parameters.put(PdfName.MODDATE, date(info));
            PdfFileSpecification file = PdfFileSpecification.fileEmbedded(
                    writer, null, attachment.name(), attachment.bytes(), true, attachment.mediaType(), parameters);
            file.put(
                    new PdfName("AFRelationship"),
                    new PdfName(attachment.relationship().word()));
            file.addDescription(attachment.description(), true);
            writer.addFileAttachment(attachment.name(), file);
            associated.add(file.getReference());
        }
        if (!attachments.isEmpty()) {
            writer.getExtraCatalog().put(new PdfName("AF"), associated);
        }
        // Data of one program stand in a dictionary of pieces (ISO 32000-1, 14.5).
        PdfDictionary own = new PdfDictionary();
        own.put(new PdfName("LastModified"), date(info));
        own.put(new PdfName("Private"), new PdfString(Seal.OPEN));
        PdfDictionary pieces = new PdfDictionary();
        pieces.put(new PdfName("firstoff"), own);
        writer.getExtraCatalog().put(new PdfName("PieceInfo"), pieces);
    }

    private static byte[] identity(ReportModel model, List<Attachment> attachments) {
        try {
            MessageDigest all = MessageDigest.getInstance("SHA-256");
            all.update(model.toString().getBytes(StandardCharsets.UTF_8));
            for (Attachment attachment : attachments) {
                all.update(attachment.name().getBytes(StandardCharsets.UTF_8));
                all.update(attachment.bytes());
            }
            return Arrays.copyOf(all.digest(), 16);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
