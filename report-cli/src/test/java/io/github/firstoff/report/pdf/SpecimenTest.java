package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.Hand;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SpecimenTest {
    @Test
    void specimen() throws IOException {
        Path file = Path.of("target", "specimen.pdf");
        try (OutputStream out = Files.newOutputStream(file)) {
            RenderedSheet sheet = new PdfRenderer().render(Specimen.sheet(Hand.PORT), out);
            assertThat(sheet.messages()).isEmpty();
        }
    }
}
