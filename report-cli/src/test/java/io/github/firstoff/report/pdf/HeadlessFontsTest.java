package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.Hand;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@EnabledOnOs(OS.LINUX)
class HeadlessFontsTest {
    /** A process of its own: AWT reads its font configuration once, and the system's fonts must be out of sight. */
    @Test
    void chartsAreDrawnWhereTheSystemOffersNoFont(@TempDir Path folder) throws Exception {
        Path nothing = Files.writeString(
                folder.resolve("fonts.conf"),
                "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>");
        Path pdf = folder.resolve("sheet.pdf");
        Path log = folder.resolve("log.txt");
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Child.class.getName(),
                folder.toString(),
                pdf.toString());
        builder.environment().put("FONTCONFIG_FILE", nothing.toString());
        builder.redirectErrorStream(true).redirectOutput(log.toFile());
        Process process = builder.start();

        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue())
                .as(Files.readString(log, StandardCharsets.UTF_8))
                .isZero();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        // Another process, other fonts around it, the same bytes.
        assertThat(Files.readAllBytes(pdf)).isEqualTo(ReadBack.bytes(Child.model()));
    }

    /** Runs in the other process. */
    static final class Child {
        private Child() {}

        static io.github.firstoff.report.model.ReportModel model() {
            return Specimen.sheet(Hand.PORT, io.github.firstoff.report.model.PaperSize.A4, Specimen.individuals());
        }

        public static void main(String[] args) throws IOException {
            System.setProperty(
                    "sun.awt.fontconfig",
                    HeadlessFonts.configure(Path.of(args[0])).toString());
            try (OutputStream out = Files.newOutputStream(Path.of(args[1]))) {
                List<String> messages = new PdfRenderer().render(model(), out).messages();
                if (!messages.isEmpty()) {
                    throw new IllegalStateException(messages.toString());
                }
            }
        }
    }
}
