package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.Strip;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.SheetKind;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class FirstArticleReportTest {
    private static ReportModel model(MadeUp made) {
        return ReportCatalogue.compose(made.sheet(SheetKind.FIRST_ARTICLE));
    }

    private static Printed printed(MadeUp made) {
        return new Printed(model(made));
    }

    private static MadeUp two() {
        return MadeUp.plan()
                .requires("1", "12.5 ±0.05", ", \"class\": \"critical\"")
                .requires("2", "flatness 0.02")
                .requires("3", "visual: no burrs");
    }

    @Test
    void everythingConforms_saysSoWithItsCondition() {
        Printed sheet = printed(two().readings("part,1,2,3", "A,12.50,0.010,pass", "B,12.52,0.008,pass"));
        assertThat(sheet.headline())
                .isEqualTo("Accepted: all 3 characteristics of both pieces conform, by simple acceptance.");
        assertThat(sheet.first(Block.Headline.class).tone()).isEqualTo(Tone.GOOD);
        assertThat(sheet.first(Block.Exceptions.class).items()).isEmpty();
        assertThat(sheet.first(Block.Exceptions.class).whenNone()).startsWith("Nothing.");
        assertThat(sheet.all(Block.Caution.class)).isEmpty();
        assertThat(sheet.prose()).doesNotContain("releases nothing");
    }

    @Test
    void exceptionsComeBeforeFactsAndTables_worstFirst() {
        Printed sheet = printed(two().requires("4", "3 ±0.1")
                .requires("5", "8 max")
                .readings("part,characteristic,value", "A,1,12.50", "A,2,0.010", "A,3,fail", "A,5,8.004"));
        assertThat(sheet.headline()).startsWith("Rejected: 2 of 5 characteristics do not conform, on the piece;");
        assertThat(sheet.headline())
                .contains("1 characteristic is not measured")
                .endsWith("simple acceptance.");
        int exceptions = sheet.blocks().indexOf(sheet.first(Block.Exceptions.class));
        assertThat(exceptions).isEqualTo(1);
        assertThat(sheet.first(Block.Exceptions.class).items())
                .extracting(Block.ExceptionItem::number)
                .containsExactly("3", "5", "4");
        Block.ExceptionItem over = sheet.first(Block.Exceptions.class).items().get(1);
        assertThat(over.byHowMuch()).isEqualTo("over by 0.004\u00A0mm");
        assertThat(over.tone()).isEqualTo(Tone.OUT);
        assertThat(Printed.text(over.actual())).isEqualTo("8.004\u00A0mm on piece A");
        assertThat(Printed.text(over.mayBeDone())).contains("concession");
        assertThat(sheet.prose()).contains("a signature here releases nothing");
    }

    @Test
    void oneReadingOut_isNamedInTheHeadline() {
        Printed sheet = printed(two().readings("part,1,2,3", "A,12.50,0.010,pass", "B,12.554,0.008,pass"));
        assertThat(sheet.headline())
                .isEqualTo(
                        "Rejected: the feature 1 (1) of piece B is over by 0.004\u00A0mm; the other 2 conform; decided by"
                                + " simple acceptance.");
        assertThat(sheet.first(Block.Headline.class).tone()).isEqualTo(Tone.OUT);
        assertThat(sheet.cell("1", "Verdict")).isEqualTo("B over by 0.004");
        assertThat(Printed.text(sheet.first(Block.Caution.class).text()))
                .contains("1 (feature 1) as critical")
                .contains("Hold the pieces")
                .contains("Your own rules");
    }

    @Test
    void unmeasured_isIncompleteAndNeverAccepted() {
        Printed sheet =
                printed(two().readings("part,characteristic,value", "A,1,12.50", "A,3,pass", "B,1,12.51", "B,3,pass"));
        assertThat(sheet.headline()).startsWith("Incomplete, so not accepted: 1 of 3 characteristics is not measured;");
        assertThat(sheet.headline()).doesNotContain("Accepted");
        assertThat(sheet.first(Block.Headline.class).tone()).isEqualTo(Tone.OPEN);
        Block.ExceptionItem item = sheet.first(Block.Exceptions.class).items().get(0);
        assertThat(item.byHowMuch()).isEqualTo("not measured");
        assertThat(Printed.text(item.actual())).isEqualTo("none of 2 pieces");
        assertThat(sheet.cell("2", "Piece A")).isEqualTo("not\nmeasured");
        assertThat(sheet.cell("2", "Verdict")).isEqualTo("not measured");
    }

    @Test
    void onePieceUnmeasured_isNamed() {
        Printed sheet = printed(two().readings(
                        "part,characteristic,value", "A,1,12.50", "A,2,0.01", "A,3,pass", "B,1,12.51", "B,3,pass"));
        assertThat(sheet.headline()).contains("is not measured on every piece");
        assertThat(Printed.text(
                        sheet.first(Block.Exceptions.class).items().get(0).actual()))
                .isEqualTo("no reading on piece B");
        assertThat(sheet.cell("2", "Verdict")).isEqualTo("not measured on B");
    }

    @Test
    void noPieceAtAll_isIncomplete() {
        Printed sheet = printed(two());
        assertThat(sheet.headline()).startsWith("Incomplete, so not accepted: 3 of 3 characteristics are not measured");
        assertThat(sheet.fact("inspected")).isEqualTo("no piece");
    }

    @Test
    void nothingToJudge_isNotCalledAccepted() {
        Printed sheet = printed(MadeUp.plan().requires("1", "(40)").readings("part,1", "A,40.1"));
        assertThat(sheet.headline()).startsWith("Nothing was judged");
        assertThat(sheet.first(Block.Headline.class).tone()).isEqualTo(Tone.OPEN);
        assertThat(sheet.prose()).contains("releases nothing");
        assertThat(sheet.cell("1", "Verdict")).isEqualTo("reference, not judged");
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("40.1");
    }

    @Test
    void sixPieces_haveAColumnEach_sevenHaveLeastGreatestAndCount() {
        Printed withColumns = printed(two().readings(
                        "part,1,2,3",
                        "P1,12.51,0.01,pass",
                        "P2,12.51,0.01,pass",
                        "P3,12.51,0.01,pass",
                        "P4,12.51,0.01,pass",
                        "P5,12.51,0.01,pass",
                        "P6,12.54,0.01,pass"));
        assertThat(withColumns.heads()).contains("Piece P1", "Piece P6").doesNotContain("Least");
        Printed summarised = printed(two().readings(
                        "part,1,2,3",
                        "P1,12.510,0.01,pass",
                        "P2,12.51,0.01,pass",
                        "P3,12.51,0.01,pass",
                        "P4,12.51,0.01,pass",
                        "P5,12.49,0.01,pass",
                        "P6,12.54,0.01,pass",
                        "P7,12.5,0.01,pass"));
        assertThat(summarised.heads()).contains("Least", "Greatest", "Count").doesNotContain("Piece P1");
        assertThat(summarised.cell("1", "Least")).isEqualTo("12.49");
        assertThat(summarised.cell("1", "Greatest")).isEqualTo("12.54");
        assertThat(summarised.cell("1", "Count")).isEqualTo("7");
        assertThat(summarised.cell("3", "Least")).isEqualTo("—");
        assertThat(summarised.cell("3", "Verdict")).isEqualTo("all\u00A0conform");
    }

    @Test
    void readings_arePrintedAsRead_limitsWithTheDecimalsOfThePlan() {
        Printed sheet = printed(MadeUp.plan().requires("1", "12.5 +0.02/0").readings("part,1", "A,12.500", "B,12.5"));
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("12.500");
        assertThat(sheet.cell("1", "Piece B")).isEqualTo("12.5");
        assertThat(sheet.cell("1", "Limits")).isEqualTo("12.52\n12.50");
        assertThat(sheet.characteristics()
                        .columns()
                        .get(sheet.heads().indexOf("Limits"))
                        .unit())
                .isEqualTo("mm");
        assertThat(sheet.heads()).doesNotContain("Unit");
    }

    @Test
    void rowsOfDifferentUnits_nameTheirOwn() {
        Printed sheet = printed(MadeUp.plan()
                .with("\"unit\": \"inch\", ")
                .requires("1", "0.500 ±0.005")
                .requires("2", "Ra 63 max")
                .requires("3", "visual: no burrs")
                .readings("part,1,2,3", "A,0.5001,40,pass"));
        assertThat(sheet.cell("1", "Unit")).isEqualTo("in");
        assertThat(sheet.cell("2", "Unit")).isEqualTo("µin");
        assertThat(sheet.cell("3", "Unit")).isEmpty();
        assertThat(sheet.cell("2", "Limits")).isEqualTo("≤ 63");
        assertThat(sheet.characteristics()
                        .columns()
                        .get(sheet.heads().indexOf("Limits"))
                        .unit())
                .isEmpty();
    }

    @Test
    void inchReadingsOfAMillimetreDrawing_keepTheirUnit() {
        Printed sheet = printed(
                MadeUp.plan().requires("1", "25.4 ±0.1").readings("part,characteristic,value,unit", "A,1,1.0050,inch"));
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("1.0050\u00A0in");
        // 1.0050 in = 25.527 mm exactly, 0.027 mm above 25.5
        assertThat(sheet.cell("1", "Verdict")).isEqualTo("over by 0.02700");
    }

    @Test
    void oneSidedRequirement_hasAnOpenStrip() {
        Printed sheet = printed(MadeUp.plan().requires("1", "12 min").readings("part,1", "A,12.4", "B,12.2"));
        Strip strip = sheet.strip("1").strip();
        assertThat(strip.lower()).isTrue();
        assertThat(strip.upper()).isFalse();
        assertThat(strip.target()).isEmpty();
        assertThat(strip.marks()).allMatch(mark -> mark.at() > 0 && mark.at() < 1);
        // 0.2 above the limit lies half as far along as 0.4 above it
        assertThat(strip.marks().get(1).at() * 2).isCloseTo(strip.marks().get(0).at(), within(1e-12));
        assertThat(sheet.cell("1", "Limits")).isEqualTo("≥ 12");
    }

    @Test
    void readingOutside_liesPastTheEndWithItsExcess() {
        Printed sheet = printed(two().readings("part,1,2,3", "A,12.44,0.030,pass"));
        Strip strip = sheet.strip("1").strip();
        assertThat(strip.target()).hasValue(0.5);
        assertThat(strip.marks().get(0).at()).isCloseTo(-0.1, within(1e-12));
        assertThat(strip.marks().get(0).excess()).isEqualTo("0.01");
        Strip flatness = sheet.strip("2").strip();
        assertThat(flatness.target()).isEmpty();
        assertThat(flatness.marks().get(0).at()).isCloseTo(1.5, within(1e-12));
    }

    @Test
    void guardedRule_hasGuardBandsAndSaysNotProven() {
        Printed sheet = printed(guarded().readings("part,1", "A,12.549", "B,12.500"));
        assertThat(sheet.headline())
                .isEqualTo(
                        "Inconclusive, so not accepted: the feature 1 (1) of piece A is not proven (0.001 inside, U 0.002\u00A0mm);"
                                + " decided with guard bands.");
        assertThat(sheet.cell("1", "Verdict")).isEqualTo("A not proven (0.001 inside, U 0.002)");
        Strip strip = sheet.strip("1").strip();
        assertThat(strip.lowerGuard()).isCloseTo(0.02, within(1e-12));
        assertThat(strip.upperGuard()).isCloseTo(0.02, within(1e-12));
        assertThat(Printed.text(
                        sheet.first(Block.Exceptions.class).items().get(0).mayBeDone()))
                .startsWith("Measure with a gauge whose U is at most 0.001\u00A0mm");
        assertThat(model(guarded().readings("part,1", "A,12.5")).foot().decisionRule())
                .startsWith("Guarded acceptance");
    }

    private static MadeUp guarded() {
        return MadeUp.plan()
                .with(
                        "\"unit\": \"mm\", \"decisionRule\": \"guarded\", \"gauges\": [ { \"id\": \"MIC-1\", \"resolution\":"
                                + " \"0.001\", \"expandedUncertainty\": \"0.002\" } ], ")
                .requires("1", "12.5 ±0.05", ", \"gauge\": \"MIC-1\"");
    }

    @Test
    void bonus_isPrintedForEachPieceAndExplained() {
        Printed sheet = printed(MadeUp.plan()
                .requires("1", "6.6 +0.2/0", ", \"form\": \"hole\"")
                .requires("2", "position Ø0.2 (M) A", ", \"sizeFeature\": \"1\"")
                .readings("part,1,2", "A,6.70,0.29", "B,6.60,0.15"));
        assertThat(sheet.cell("2", "Piece A")).isEqualTo("0.29\n≤ 0.30");
        assertThat(sheet.cell("2", "Piece B")).isEqualTo("0.15\n≤ 0.20");
        assertThat(sheet.prose()).contains("A bonus 0.10 mm").contains("B no bonus");
        // each mark lies within the tolerance of its own piece: 0.29 of 0.30, 0.15 of 0.20
        assertThat(sheet.strip("2").strip().marks().get(0).at()).isCloseTo(0.29 / 0.30, within(1e-9));
        assertThat(sheet.strip("2").strip().marks().get(1).at()).isCloseTo(0.75, within(1e-9));
        assertThat(sheet.row("2").get(1)).contains("POSITION|Ø0.2[MAXIMUM_MATERIAL]|A");
    }

    @Test
    void whatTheJobLacks_isNotStated() {
        Printed sheet = printed(two().readings("part,1,2,3", "A,12.5,0.01,pass"));
        for (String label : new String[] {
            "name",
            "material required",
            "material delivered",
            "customer",
            "order",
            "job",
            "batch",
            "kind",
            "reason",
            "machine",
            "program",
            "measured",
            "measured by",
            "inspector",
            "date of sheet"
        }) {
            assertThat(sheet.fact(label)).as(label).isEqualTo("not stated");
        }
    }

    @Test
    void job_standsInTheFactsTheHeadAndTheSignature() {
        ReportModel model = model(two().part(", \"hand\": \"port\", \"counterpart\": \"HQ-9-S\", \"drawing\": \"HQ-9\"")
                .job(
                        "\"job\": \"J-1\", \"batch\": \"B-2\", \"machine\": \"lathe 2\", \"inspector\": { \"name\": \"A. Quill\","
                                + " \"position\": \"inspector\" }, \"date\": \"2026-11-20\", \"firstArticle\": { \"kind\": \"delta\","
                                + " \"reason\": \"new insert\" }, \"materials\": [ { \"grade\": \"EN AW-6061 T6\", \"heat\": \"H1\" } ]")
                .readings("part,1,2,3,time", "A,12.5,0.01,pass,2026-11-20T08:15"));
        Printed sheet = new Printed(model);
        assertThat(model.head().hand()).isEqualTo(Hand.PORT);
        assertThat(model.head().batch()).isEqualTo("B-2");
        assertThat(model.document().title()).isEqualTo("First article inspection, HQ-9 revision A, batch B-2");
        assertThat(model.document().language()).isEqualTo(Locale.UK);
        assertThat(model.document().created()).isEqualTo("2026-11-20T09:30:00Z");
        assertThat(model.foot().dataHash()).isEqualTo("0123456789ab");
        assertThat(sheet.fact("hand")).isEqualTo("port; the starboard part is HQ-9-S");
        assertThat(sheet.fact("kind")).isEqualTo("delta first article");
        assertThat(sheet.fact("measured")).isEqualTo("2026-11-20 08:15");
        assertThat(sheet.fact("material delivered")).isEqualTo("EN AW-6061 T6, heat H1, certificate not stated");
        assertThat(sheet.first(Block.SignOff.class).lines().get(0).name()).isEqualTo("A. Quill, inspector");
        assertThat(sheet.first(Block.SignOff.class).lines().get(1).name()).isEmpty();
    }

    @Test
    void leftPart_keepsItsOwnWordAtTheLeftEdge() {
        Hand hand = model(two().part(", \"hand\": \"left\"").readings("part,1,2,3", "A,12.5,0.01,pass"))
                .head()
                .hand();
        assertThat(hand.word()).isEqualTo("left");
        assertThat(hand.isLeft()).isTrue();
    }

    @Test
    void materialDecidesWhatMayBeDone() {
        MadeUp hole = MadeUp.plan().requires("1", "6.6 +0.2/0", ", \"form\": \"hole\"");
        Printed small = printed(hole.readings("part,1", "A,6.5"));
        assertThat(Printed.text(
                        small.first(Block.Exceptions.class).items().get(0).mayBeDone()))
                .startsWith("Material is left on the hole");
        Printed wide = printed(MadeUp.plan()
                .requires("1", "6.6 +0.2/0", ", \"form\": \"hole\"")
                .readings("part,1", "A,6.9"));
        assertThat(Printed.text(
                        wide.first(Block.Exceptions.class).items().get(0).mayBeDone()))
                .startsWith("No material is left on the hole");
    }

    @Test
    void notices_standWithTheExceptions() {
        Printed sheet = printed(two().notice("Gauge X is not listed.").readings("part,1,2,3", "A,12.5,0.01,pass"));
        assertThat(sheet.prose()).contains("Gauge X is not listed.");
    }
}
