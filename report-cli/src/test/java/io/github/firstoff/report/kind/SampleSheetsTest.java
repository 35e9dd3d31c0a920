package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.pdf.PdfRenderer;
import io.github.firstoff.report.pdf.RenderedSheet;
import io.github.firstoff.sheet.SheetKind;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sets every sample in type; the files in target/sheets are there to be looked at. */
class SampleSheetsTest {
    @ParameterizedTest
    @CsvSource({
        "FIRST_ARTICLE, hq-310-p, first-article-hq-310-p",
        "FIRST_ARTICLE, hq-310-s, first-article-hq-310-s",
        "FIRST_ARTICLE, hq-310-p, first-article-rejected",
        "FIRST_ARTICLE, hq-310-p, first-article-incomplete",
        "FIRST_ARTICLE, hq-310-p-guarded, first-article-guarded",
        "FIRST_ARTICLE, hq-045, first-article-hq-045",
        "FIRST_ARTICLE, hq-320-p, first-article-hq-320-p",
        "FIRST_ARTICLE, hq-320-s, first-article-hq-320-s",
        "BATCH, hq-310-p, batch-2207",
        "BATCH, hq-310-p, batch-2208",
        "BATCH, hq-310-s, batch-2209",
        "BATCH, hq-330, batch-2213",
        "BATCH, hq-331, batch-2214",
        "CERTIFICATE, hq-310-s, batch-2209",
        "CERTIFICATE, hq-310-p, batch-2207",
    })
    void everySampleIsSetWithoutAMessage(SheetKind kind, String plan, String readings) throws IOException {
        ReportModel model = ReportCatalogue.compose(SampleSheets.sheet(kind, plan, readings));
        Path folder = Files.createDirectories(Path.of("target", "sheets"));
        Path file = folder.resolve(readings + "." + kind.command() + ".pdf");
        try (OutputStream out = Files.newOutputStream(file)) {
            RenderedSheet sheet = new PdfRenderer().render(model, out);
            assertThat(sheet.messages()).isEmpty();
        }
    }
}
