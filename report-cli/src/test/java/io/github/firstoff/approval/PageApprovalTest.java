package io.github.firstoff.approval;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page of every sample sheet, rendered and held against the picture of it that a person approved.
 *
 * <p>Pages are rendered in grey at 72 dots to the inch and compared in cells of 8 by 8 dots, about the size of one character. Where the
 * mean grey of a cell differs by more than {@value #TOLERANCE} of 255, the page differs. Between Java 17 and 25 no cell of any page
 * differed by more than 5, and 4 of these come of the sixteen greys in which approved pages are kept. A patch of print that is moved by
 * two dots changes a cell by 16 in the median of 3387 tried; a patch of a solid bar moved along it changes nothing, and is not noticed.
 * The figures themselves are compared as text elsewhere.
 *
 * <p>To approve pages that were meant to change: look at {@code target/pages/*.received.png}, then run this test with
 * {@code -Dapprove.pages=true}, which takes them over, and look at the difference once more in version control.
 */
class PageApprovalTest {
    private static final Path APPROVED = Path.of("src", "test", "resources", "approved-pages");
    private static final Path RECEIVED = Path.of("target", "pages");
    private static final int DOTS_PER_INCH = 72;
    private static final int CELL = 8;
    private static final int TOLERANCE = 10;

    @TempDir
    private Path folder;

    /** A sheet under its name, and how it is made. */
    record Page(String name, List<String> arguments) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Page> sheets() {
        Stream<Page> records =
                Samples.all().map(sample -> new Page(sample.command() + "-" + sample.name(), sample.arguments()));
        return Stream.concat(records, others());
    }

    private static Stream<Page> others() {
        return Stream.of(
                new Page("fit-bearing-limits", List.of("fit", sample("hq-310-p-seat.assembly.json"))),
                new Page("fit-spindle-limits", List.of("fit", sample("spindle-bearing.assembly.json"))),
                page("fit-bush-measured", Samples.pawlBush()),
                new Page("stack-drum-play", List.of("stack", sample("drum-play.stack.json"))),
                page("drift-2216", Samples.drift()),
                page("history-of-the-seat", Samples.history()),
                page("fit-bush-german", Samples.pawlBush(), "--language", "de"),
                new Page(
                        "fit-bearing-letter-german",
                        List.of("fit", sample("hq-310-p-seat.assembly.json"), "--paper", "letter", "--language", "de")),
                new Page(
                        "stack-drum-play-german", List.of("stack", sample("drum-play.stack.json"), "--language", "de")),
                page("drift-2216-letter-german", Samples.drift(), "--paper", "letter", "--language", "de"),
                page(
                        "batch-2213-letter-german",
                        new Samples.Sample("batch", "hq-330", "batch-2213"),
                        "--house",
                        sample("hollin-quay.house.json"),
                        "--paper",
                        "letter",
                        "--language",
                        "de"));
    }

    private static Page page(String name, Samples.Made sheet, String... more) {
        return new Page(
                name, Stream.concat(sheet.arguments().stream(), Stream.of(more)).toList());
    }

    private static String sample(String name) {
        return Samples.FOLDER.resolve(name).toString();
    }

    @ParameterizedTest
    @MethodSource("sheets")
    void everyPage_looksAsApproved(Page sheet) throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        List<String> arguments = new ArrayList<>(sheet.arguments());
        arguments.addAll(List.of("--out", pdf.toString()));
        Samples.Run run = Samples.run(arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isLessThanOrEqualTo(1);
        if (!Files.exists(pdf)) {
            assertThat(sheet.arguments()).as("only a certificate is refused").contains("certificate");
            return;
        }
        List<BufferedImage> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                pages.add(renderer.renderImageWithDPI(page, DOTS_PER_INCH, ImageType.GRAY));
            }
        }
        List<String> differences = new ArrayList<>();
        for (int page = 0; page < pages.size(); page++) {
            compare(sheet.name() + "-" + (page + 1), pages.get(page), differences);
        }
        Path beyond = APPROVED.resolve(sheet.name() + "-" + (pages.size() + 1) + ".png");
        if (Files.exists(beyond)) {
            differences.add(beyond.getFileName() + " was approved and there is no such page any more");
        }
        assertThat(differences).isEmpty();
    }

    private static void compare(String name, BufferedImage page, List<String> differences) throws IOException {
        Path approved = APPROVED.resolve(name + ".png");
        if (Boolean.getBoolean("approve.pages")) {
            Files.createDirectories(APPROVED);
            ImageIO.write(inSixteenGreys(page), "png", approved.toFile());
        }
        if (!Files.exists(approved)) {
            keep(name, page);
            differences.add(name + " was never approved");
            return;
        }
        BufferedImage expected = ImageIO.read(approved.toFile());
        if (expected.getWidth() != page.getWidth() || expected.getHeight() != page.getHeight()) {
            keep(name, page);
            differences.add(name + " is of another size");
            return;
        }
        int worst = 0;
        String place = "";
        int cells = 0;
        for (int y = 0; y < page.getHeight(); y += CELL) {
            for (int x = 0; x < page.getWidth(); x += CELL) {
                int difference = Math.abs(mean(page, x, y) - mean(expected, x, y));
                cells += difference > TOLERANCE ? 1 : 0;
                if (difference > worst) {
                    worst = difference;
                    place = x + ", " + y;
                }
            }
        }
        if (worst > TOLERANCE) {
            keep(name, page);
            differences.add(name + " differs in " + cells + " cells, most at " + place + " by " + worst + " of 255");
        }
    }

    private static int mean(BufferedImage image, int fromX, int fromY) {
        int toX = Math.min(image.getWidth(), fromX + CELL);
        int toY = Math.min(image.getHeight(), fromY + CELL);
        int sum = 0;
        for (int y = fromY; y < toY; y++) {
            for (int x = fromX; x < toX; x++) {
                sum += image.getRaster().getSample(x, y, 0);
            }
        }
        return sum / ((toX - fromX) * (toY - fromY));
    }

    private static void keep(String name, BufferedImage page) throws IOException {
        Files.createDirectories(RECEIVED);
        ImageIO.write(page, "png", RECEIVED.resolve(name + ".received.png").toFile());
    }

    /** The same in steps of 17 of 255, which need a third of the room and lie far below the tolerance. */
    private static BufferedImage inSixteenGreys(BufferedImage page) {
        BufferedImage coarse = new BufferedImage(page.getWidth(), page.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        Raster from = page.getRaster();
        WritableRaster to = coarse.getRaster();
        for (int y = 0; y < page.getHeight(); y++) {
            for (int x = 0; x < page.getWidth(); x++) {
                to.setSample(x, y, 0, (from.getSample(x, y, 0) + 8) / 17 * 17);
            }
        }
        return coarse;
    }
}
