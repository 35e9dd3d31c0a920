package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.SheetKind;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BatchReportTest {
    private static final String XBAR = ", \"study\": { \"chart\": \"xbar-r\", \"subgroup\": 5 }";
    private static final String INDIVIDUALS = ", \"study\": { \"chart\": \"individuals\" }";

    private static Printed printed(MadeUp made) {
        return new Printed(ReportCatalogue.compose(made.sheet(SheetKind.BATCH)));
    }

    /** Pieces P1, P2, … with values about 12.5 in thousandths; from a piece on they are moved. */
    private static MadeUp pieces(MadeUp made, int count, double sigma, int movedFrom, double move) {
        Random random = new Random(11);
        made.readings("part,1");
        for (int i = 1; i <= count; i++) {
            double value = 12.5 + random.nextGaussian() * sigma + (i >= movedFrom ? move : 0);
            made.readings("P" + i + "," + new BigDecimal(value).setScale(3, java.math.RoundingMode.HALF_EVEN));
        }
        return made;
    }

    @Test
    void inControl_showsIndicesWithIntervalsAndConditions() {
        Printed sheet = printed(pieces(MadeUp.plan().requires("1", "12.5 ±0.05", XBAR), 125, 0.01, 1000, 0));
        Block.IndexScale scale = sheet.first(Block.IndexScale.class);
        assertThat(scale.marks()).extracting(Block.IndexMark::name).containsExactly("Cp", "Cpk", "Pp", "Ppk", "Cpm");
        assertThat(scale.marks())
                .allMatch(mark -> mark.figures().matches("\\d\\.\\d\\d \\(\\d\\.\\d\\d to \\d\\.\\d\\d\\)"));
        assertThat(Printed.text(scale.conditions()))
                .contains("n = 125 in 25 subgroups of 5")
                .contains("mean range")
                .contains("normal distribution")
                .contains("95 % intervals")
                .endsWith("in control.");
        assertThat(sheet.prose()).contains("do not refute the normal distribution");
        assertThat(Printed.text(sheet.all(Block.Headline.class).get(1).sentence()))
                .startsWith("Ran in control, Cpk ")
                .endsWith("all 125 readings conform.");
        assertThat(sheet.first(Block.Exceptions.class).items()).isEmpty();
        assertThat(sheet.all(Block.MarkedList.class)).isEmpty();
    }

    @Test
    void outOfControl_hasNoScaleAndSaysWhy() {
        Printed sheet = printed(pieces(
                MadeUp.plan()
                        .requires(
                                "1",
                                "12.5 ±0.05",
                                ", \"study\": { \"chart\": \"xbar-r\", \"subgroup\": 5, \"baseline\": 10 }"),
                125,
                0.003,
                66,
                -0.012));
        assertThat(sheet.all(Block.IndexScale.class)).isEmpty();
        assertThat(sheet.prose())
                .contains("No index of capability: the process was not in control, so indices do not predict.")
                .contains("describe this batch and no other")
                .contains("It does not say that a piece is nonconforming");
        assertThat(sheet.headline())
                .startsWith("Accepted: the one characteristic of all 125 pieces conforms")
                .endsWith("did not run in control.");
        Block.ExceptionItem item = sheet.first(Block.Exceptions.class).items().get(0);
        assertThat(item.byHowMuch()).isEqualTo("not in control");
        assertThat(item.tone()).isEqualTo(Tone.OPEN);
        String study = Printed.text(sheet.all(Block.Headline.class).get(1).sentence());
        assertThat(study).contains("below").contains("ends").contains("µm").endsWith("all 125 readings conform.");
        List<Block.MarkedItem> signals = sheet.first(Block.MarkedList.class).items();
        assertThat(signals).extracting(Block.MarkedItem::mark).startsWith("1", "2");
        assertThat(signals).allMatch(each -> Printed.text(each.sentence()).contains("below"));
        ControlFigure figure =
                (ControlFigure) sheet.first(Block.FigureBlock.class).figure();
        assertThat(figure.location().points()).hasSize(25);
        assertThat(figure.location().points().subList(0, 13))
                .allMatch(point -> point.marks().isEmpty());
        assertThat(figure.location().points().get(24).marks()).isNotEmpty();
        assertThat(figure.breaks()).extracting(ControlFigure.PhaseBreak::before).containsExactly(11);
    }

    @Test
    void tooFewPoints_controlIsNotAssessedAndNothingPredicts() {
        Printed sheet = printed(pieces(MadeUp.plan().requires("1", "12.5 ±0.05", XBAR), 15, 0.01, 100, 0));
        assertThat(sheet.all(Block.IndexScale.class)).isEmpty();
        assertThat(sheet.prose()).contains("whether the process was in control is not known");
        assertThat(Printed.text(sheet.all(Block.Headline.class).get(1).sentence()))
                .startsWith("Whether it ran in control cannot be told yet");
    }

    @Test
    void individuals_carryLimitsAndHistogramOnOneScale() {
        Printed sheet = printed(pieces(MadeUp.plan().requires("1", "12.5 ±0.05", INDIVIDUALS), 40, 0.01, 100, 0));
        ControlFigure figure =
                (ControlFigure) sheet.first(Block.FigureBlock.class).figure();
        assertThat(figure.histogram()).isPresent();
        assertThat(figure.location().lines())
                .extracting(line -> line.name())
                .contains("upper limit", "lower limit", "UCL", "LCL", "centre");
        assertThat(figure.dispersion().orElseThrow().points()).hasSize(40);
        assertThat(figure.dispersion().orElseThrow().points().get(0).value()).isNaN();
        assertThat(sheet.all(Block.FigureBlock.class)).hasSize(1);
    }

    @Test
    void individualOutOfTolerance_isShapedAndNamed() {
        MadeUp made = pieces(MadeUp.plan().requires("1", "12.5 ±0.05", INDIVIDUALS), 40, 0.005, 100, 0);
        Printed sheet = printed(made.readings("P41,12.561"));
        ControlFigure figure =
                (ControlFigure) sheet.first(Block.FigureBlock.class).figure();
        assertThat(figure.location().points().get(40).shape()).isEqualTo(ControlFigure.Shape.OUT_OF_SPECIFICATION);
        assertThat(sheet.headline()).startsWith("Rejected: the feature 1 (1) of piece P41 is over by 0.011");
        assertThat(sheet.prose()).contains("Piece P41: individual value above the upper control limit");
    }

    @Test
    void histogram_countsEveryReadingOnceAndHasNoCombs() {
        // readings in halves of a hundredth: bins must hold as many steps each
        MadeUp made = MadeUp.plan().requires("1", "12.5 ±0.05", XBAR).readings("part,1");
        for (int i = 0; i < 100; i++) {
            made.readings("P" + i + "," + (i % 2 == 0 ? "12.490" : "12.4" + (90 + i % 10) + (i % 2 == 0 ? "0" : "5")));
        }
        Printed sheet = printed(made);
        HistogramFigure figure = sheet.all(Block.FigureBlock.class).stream()
                .filter(block -> block.figure() instanceof HistogramFigure)
                .map(block -> (HistogramFigure) block.figure())
                .findFirst()
                .orElseThrow();
        assertThat(figure.bins().stream().mapToLong(HistogramFigure.Bin::count).sum())
                .isEqualTo(100);
        assertThat(figure.lines()).extracting(line -> line.name()).containsExactly("lower limit", "upper limit");
    }

    @Test
    void summary_hasTheFiguresOfEveryCharacteristic() {
        Printed sheet = printed(MadeUp.plan()
                .requires("1", "12.5 ±0.05")
                .requires("2", "visual: no burrs")
                .requires("3", "[40]")
                .readings("part,1,2", "A,12.50,pass", "B,12.52,pass", "C,12.57,fail"));
        assertThat(sheet.cell("1", "n")).isEqualTo("3");
        assertThat(sheet.cell("1", "Least")).isEqualTo("12.50");
        assertThat(sheet.cell("1", "Mean")).isEqualTo("12.530");
        assertThat(sheet.cell("1", "Greatest")).isEqualTo("12.57");
        // s = 0.0361 of three readings: one digit, since it leads with a 3
        assertThat(sheet.cell("1", "s")).isEqualTo("0.04");
        assertThat(sheet.cell("1", "Out")).isEqualTo("1");
        assertThat(sheet.cell("2", "Out")).isEqualTo("1");
        assertThat(sheet.cell("3", "Out")).isEqualTo("—");
        assertThat(sheet.cell("3", "Verdict")).isEqualTo("theoretically exact, not judged");
    }

    @Test
    void sample_isNeverCalledEveryPiece() {
        Printed sheet = printed(MadeUp.plan()
                .requires("1", "12.5 ±0.05")
                .requires("2", "8 ±0.1", ", \"inspect\": \"sample\"")
                .readings("part,characteristic,value", "A,1,12.5", "A,2,8.0", "B,1,12.5", "C,1,12.5"));
        assertThat(sheet.headline())
                .isEqualTo(
                        "Accepted: all 2 characteristics conform, 1 on all 3 pieces and 1 on a sample of them, by simple"
                                + " acceptance.");
    }

    @Test
    void fewerInspectedThanMade_isSaidInTheHeadline() {
        Printed sheet = printed(MadeUp.plan()
                .requires("1", "12.5 ±0.05")
                .job("\"quantity\": 125")
                .readings("part,1", "A,12.5", "B,12.5"));
        assertThat(sheet.headline())
                .isEqualTo("Accepted: the one characteristic of 2 of the 125 pieces conforms, by simple acceptance.");
        assertThat(sheet.prose()).contains("2 pieces of 125 were inspected");
    }

    @Test
    void manySignals_areToldOneByOneToSevenAndThenCounted() {
        MadeUp made = MadeUp.plan().requires("1", "12.5 ±0.5", INDIVIDUALS).readings("part,1");
        Random random = new Random(5);
        for (int i = 1; i <= 400; i++) {
            double value = 12.5 + random.nextGaussian() * 0.001 + (i % 20 == 0 ? 0.02 : 0);
            made.readings("P" + i + "," + new BigDecimal(value).setScale(4, java.math.RoundingMode.HALF_EVEN));
        }
        List<Block.MarkedItem> items =
                printed(made).first(Block.MarkedList.class).items();
        assertThat(items).hasSize(8);
        assertThat(items.get(7).mark()).isEqualTo("+");
        assertThat(Printed.text(items.get(7).sentence())).contains("more signals");
    }
}
