package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.pdf.PdfRenderer;
import io.github.firstoff.report.pdf.RenderedSheet;
import io.github.firstoff.sheet.Sheet;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Sets a sheet of every kind of chart in type; the files in target/studies are there to be looked at. */
class StudyCasesTest {
    @Test
    void everyKindOfChartIsSetWithoutAMessage() throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "studies"));
        for (Map.Entry<String, Sheet> each : StudyCases.all().entrySet()) {
            Path file = folder.resolve(each.getKey().replaceAll("\\W+", "-") + ".pdf");
            try (OutputStream out = Files.newOutputStream(file)) {
                RenderedSheet sheet = new PdfRenderer().render(ReportCatalogue.compose(each.getValue()), out);
                assertThat(sheet.messages()).as(each.getKey()).isEmpty();
            }
        }
    }
}
