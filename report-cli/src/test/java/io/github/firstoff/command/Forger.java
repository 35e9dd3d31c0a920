package io.github.firstoff.command;

import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.pdf.PdfRenderer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** Makes whole sheets anew, seal and all, that carry and print what a forger wants. */
final class Forger {
    private final MadeSheet made;
    private final List<Attachment> attachments;
    private final ReportModel model;

    /** A forger with a true sheet in hand. */
    Forger(byte[] file) {
        SheetFile sheet = SheetFile.read("sheet.pdf", file);
        CarriedShelf shelf = new CarriedShelf(sheet);
        made = SheetRecipes.of(sheet.manifest().command())
                .orElseThrow()
                .make(Ingredients.of(sheet.manifest()), shelf, sheet.manifest().madeAt());
        attachments = new SheetPress(made, shelf.kept(), sheet.manifest().options()).attachments();
        model = made.pages(
                StationeryOptions.stationery(made.house(), sheet.manifest().options()));
    }

    /** What the true sheet prints. */
    ReportModel model() {
        return model;
    }

    /** The sheet with these pages, and with the attachments of these names changed. */
    byte[] forged(ReportModel pages, Map<String, UnaryOperator<String>> changes) throws IOException {
        List<Attachment> carried = new ArrayList<>();
        for (Attachment each : attachments) {
            UnaryOperator<String> change = changes.get(each.name());
            carried.add(
                    change == null
                            ? each
                            : new Attachment(
                                    each.name(),
                                    each.mediaType(),
                                    each.description(),
                                    each.relationship(),
                                    change.apply(new String(each.bytes(), StandardCharsets.UTF_8))
                                            .getBytes(StandardCharsets.UTF_8)));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PdfRenderer().render(pages, carried, out);
        return out.toByteArray();
    }

    /** The sheet with these pages. */
    byte[] forged(ReportModel pages) throws IOException {
        return forged(pages, Map.of());
    }
}
