package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.pdf.PdfRenderer;
import io.github.firstoff.report.pdf.RenderedSheet;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Sheets at the edges of what a shop may feed in, set in type; the files in target/sheets are there to be looked at. */
class UnusualSheetsTest {
    private static final String INDIVIDUALS = ", \"class\": \"critical\", \"study\": { \"chart\": \"individuals\" }";
    private static final String XBAR = ", \"study\": { \"chart\": \"xbar-r\", \"subgroup\": 4, \"baseline\": 20 }";

    private static int pages(String name, Sheet sheet) throws IOException {
        return pages(name, sheet, PaperSize.A4);
    }

    private static int pages(String name, Sheet sheet, PaperSize paper) throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "sheets"));
        try (OutputStream out = Files.newOutputStream(folder.resolve("unusual-" + name + ".pdf"))) {
            RenderedSheet rendered = new PdfRenderer().render(ReportCatalogue.compose(sheet, paper), out);
            assertThat(rendered.messages()).isEmpty();
            return rendered.pages();
        }
    }

    private static MadeUp values(MadeUp made, int count, int places, IntToDoubleFunction value) {
        made.readings("part,1");
        for (int i = 1; i <= count; i++) {
            made.readings("P" + i + ","
                    + new BigDecimal(value.applyAsDouble(i))
                            .setScale(places, RoundingMode.HALF_EVEN)
                            .toPlainString());
        }
        return made;
    }

    @Test
    void sixPiecesWithLongSerials() throws IOException {
        MadeUp made = MadeUp.plan()
                .part(", \"hand\": \"left\", \"name\": \"Cleat base, left\"")
                .requires("1", "Ø52 P7", ", \"class\": \"critical\"")
                .requires("2", "12.5 +0.02/-0.01")
                .requires("3", "position Ø0.2 (M) A B (M) C", ", \"sizeFeature\": \"4\"")
                .requires("4", "Ø6.6 H13")
                .requires("5", "M5x0.8-6H go/no-go")
                .requires("6", "45° ±20'")
                .requires("7", "surface profile 0.2 (U) 0.05 A");
        made.readings("part,1,2,3,4,5,6,7");
        for (int i = 1; i <= 6; i++) {
            made.readings("HQ310-2026-000" + i + ",51.9" + (60 + i) + "5,12.50" + i + ",0.2" + i + ",6.70" + i
                    + ",pass,45." + i + ",0.1" + i);
        }
        assertThat(pages("six-pieces", made.sheet(SheetKind.FIRST_ARTICLE))).isEqualTo(2);
    }

    @Test
    void sevenPiecesOnLetter() throws IOException {
        MadeUp made = MadeUp.plan()
                .part(", \"hand\": \"right\"")
                .requires("1", "12.5 ±0.05")
                .requires("2", "8 min")
                .requires("3", "visual: no burrs");
        made.readings("part,1,2,3");
        for (int i = 1; i <= 7; i++) {
            made.readings("P" + i + ",12.5" + i + ",8.0" + i + "," + (i == 3 ? "fail" : "pass"));
        }
        assertThat(pages("seven-letter", made.sheet(SheetKind.FIRST_ARTICLE), PaperSize.US_LETTER))
                .isLessThanOrEqualTo(2);
    }

    @Test
    void thousandPiecesOneByOne() throws IOException {
        Random random = new Random(1);
        MadeUp made = values(
                MadeUp.plan().requires("1", "12.5 ±0.05", INDIVIDUALS),
                1000,
                3,
                i -> 12.5 + random.nextGaussian() * 0.008 + (i > 700 ? (i - 700) * 0.00006 : 0));
        assertThat(pages("thousand-individuals", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(4);
    }

    @Test
    void thousandSubgroups() throws IOException {
        Random random = new Random(2);
        MadeUp made = values(
                MadeUp.plan().requires("1", "12.5 ±0.05", XBAR), 4000, 3, i -> 12.5 + random.nextGaussian() * 0.008);
        assertThat(pages("thousand-subgroups", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(4);
    }

    @Test
    void noSpreadAtAll() throws IOException {
        MadeUp made = values(MadeUp.plan().requires("1", "12.5 ±0.05", XBAR), 40, 2, i -> 12.51);
        assertThat(pages("no-spread", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(3);
    }

    @Test
    void oneSidedAndBoundedByZero() throws IOException {
        Random random = new Random(3);
        MadeUp flat = values(
                MadeUp.plan().requires("1", "flatness 0.02", INDIVIDUALS),
                60,
                4,
                i -> Math.abs(0.006 + random.nextGaussian() * 0.002));
        assertThat(pages("flatness", flat.sheet(SheetKind.BATCH))).isEqualTo(2);
        MadeUp wall =
                values(MadeUp.plan().requires("1", "5 min", XBAR), 120, 2, i -> 5.2 + random.nextGaussian() * 0.03);
        assertThat(pages("one-sided", wall.sheet(SheetKind.BATCH))).isEqualTo(2);
    }

    @Test
    void inchesWithGuardBands() throws IOException {
        Random random = new Random(4);
        MadeUp made = values(
                MadeUp.plan()
                        .with(
                                "\"unit\": \"inch\", \"decisionRule\": \"guarded\", \"gauges\": [ { \"id\": \"MIC-7\", \"kind\":"
                                        + " \"micrometer\", \"resolution\": \"0.0001\", \"expandedUncertainty\": \"0.0002\" } ], ")
                        .requires(
                                "1", "0.5000 ±0.0020", ", \"gauge\": \"MIC-7\", \"study\": { \"chart\": \"xbar-s\" }"),
                60,
                4,
                i -> 0.5 + random.nextGaussian() * 0.0007);
        assertThat(pages("inch-guarded", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(3);
    }

    @Test
    void farLimits_doNotPressTheChartFlat() throws IOException {
        Random random = new Random(6);
        MadeUp made = values(
                MadeUp.plan().requires("1", "12.5 ±2", INDIVIDUALS), 60, 3, i -> 12.5 + random.nextGaussian() * 0.01);
        assertThat(pages("far-limits", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(3);
    }

    @Test
    void manySignalsAndManyOutOfTolerance() throws IOException {
        Random random = new Random(7);
        MadeUp made = values(
                MadeUp.plan().requires("1", "12.5 ±0.05", INDIVIDUALS),
                120,
                3,
                i -> 12.5 + random.nextGaussian() * 0.004 + (i % 13 == 0 ? 0.055 : i % 17 == 0 ? -0.06 : 0));
        assertThat(pages("many-signals", made.sheet(SheetKind.BATCH))).isLessThanOrEqualTo(4);
    }

    @Test
    void sixtyCharacteristics() throws IOException {
        MadeUp made = MadeUp.plan();
        StringBuilder head = new StringBuilder("part");
        StringBuilder first = new StringBuilder("A");
        StringBuilder second = new StringBuilder("B");
        for (int i = 1; i <= 60; i++) {
            made.requires(Integer.toString(i), (10 + i) + " ±0.1");
            head.append(',').append(i);
            first.append(',').append(10 + i).append(".05");
            second.append(',').append(10 + i).append(i % 5 == 0 ? ".15" : ".02");
        }
        made.readings(head.toString(), first.toString(), second.toString());
        assertThat(pages("sixty-characteristics", made.sheet(SheetKind.FIRST_ARTICLE)))
                .isLessThanOrEqualTo(6);
    }

    @Test
    void nothingKnown() throws IOException {
        assertThat(pages(
                        "nothing-known",
                        MadeUp.plan().requires("1", "12.5 ±0.05", XBAR).sheet(SheetKind.BATCH)))
                .isLessThanOrEqualTo(2);
    }
}
