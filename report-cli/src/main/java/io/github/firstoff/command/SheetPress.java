package io.github.firstoff.command;

import io.github.firstoff.proof.Evidence;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.pdf.HeadlessFonts;
import io.github.firstoff.report.pdf.PdfRenderer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Prints a sheet of any kind with all that it carries, and signs it. */
final class SheetPress {
    private final MadeSheet sheet;
    private final List<Attachment> attachments;
    private final Map<String, String> options;

    /**
     * A press with one sheet in it.
     *
     * @param sheet the sheet
     * @param inputs the files that it was made from
     * @param options the choices that change it, by name
     */
    SheetPress(MadeSheet sheet, List<Evidence.Kept> inputs, Map<String, String> options) {
        this.sheet = sheet;
        this.attachments = Evidence.of(sheet.claim(), inputs, options);
        this.options = options;
    }

    /** What the sheet carries. */
    List<Attachment> attachments() {
        return attachments;
    }

    /**
     * Writes the sheet to a file.
     *
     * @return what should be known of how it was set
     */
    List<String> print(Optional<SigningOptions.Pen> pen, Path target) {
        ByteArrayOutputStream unsigned = new ByteArrayOutputStream();
        List<String> messages;
        try {
            messages = print(unsigned);
        } catch (IOException fault) {
            throw new OutputFault(target + " cannot be set: " + Faults.reason(fault), fault);
        }
        byte[] file = pen.isPresent() ? pen.get().sign(unsigned.toByteArray(), sheet.named()) : unsigned.toByteArray();
        OutputFile.write(target, stream -> stream.write(file));
        return messages;
    }

    /** The unsigned sheet. */
    List<String> print(ByteArrayOutputStream out) throws IOException {
        prepareFonts();
        Stationery paper = StationeryOptions.stationery(sheet.house(), options);
        return new PdfRenderer().render(sheet.pages(paper), attachments, out).messages();
    }

    /** Makes ready what can only be made ready before the program is asked to end. */
    static void prepare() {
        prepareFonts();
        PdfRenderer.prepareFigures();
    }

    private static void prepareFonts() {
        try {
            HeadlessFonts.prepare();
        } catch (IOException fault) {
            throw new OutputFault("the fonts of the sheet cannot be unpacked: " + Faults.reason(fault), fault);
        }
    }
}
