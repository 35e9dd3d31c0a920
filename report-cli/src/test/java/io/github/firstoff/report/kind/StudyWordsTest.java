package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.ProbabilityFigure;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.chart.ChartRequest;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a sheet says and shows of every kind of chart. */
class StudyWordsTest {
    private static final Map<String, Sheet> CASES = StudyCases.all();

    /** Half a unit of the last of the coarsest printed places. */
    private static final double PRINTED = 0.51;

    private static Printed printed(String name) {
        return new Printed(ReportCatalogue.compose(CASES.get(name)));
    }

    private static ControlFigure figure(String name) {
        return (ControlFigure) printed(name).first(Block.FigureBlock.class).figure();
    }

    private static ControlChart chart(String name) {
        return CASES.get(name).findings().get(0).study().orElseThrow().chart();
    }

    private static String headline(String name) {
        return Printed.text(printed(name).all(Block.Headline.class).get(1).sentence());
    }

    private static List<String> lineNames(ControlFigure figure) {
        return figure.location().lines().stream().map(LevelLine::name).toList();
    }

    @Test
    void everyChart_showsEveryPointWithItsOwnLimits() {
        CASES.forEach((name, sheet) -> {
            ControlChart chart = chart(name);
            ControlFigure figure = figure(name);
            assertThat(figure.panels()).as(name).hasSameSizeAs(chart.panels());
            for (int p = 0; p < chart.panels().size(); p++) {
                Panel panel = chart.panels().get(p);
                List<ControlFigure.Point> points = figure.panels().get(p).points();
                for (int i = 0; i < panel.count(); i++) {
                    ControlFigure.Point point =
                            points.get(panel.number(i) - chart.data().number(0));
                    assertThat(point.value()).as(name).isEqualTo(panel.value(i));
                    Lines lines = panel.lines(i).orElseThrow();
                    assertThat(point.upper()).as(name).isEqualTo(lines.upper());
                    assertThat(point.centre()).as(name).isEqualTo(lines.centre());
                    if (!Double.isNaN(point.lower())) {
                        assertThat(point.lower()).as(name).isEqualTo(lines.lower());
                    } else {
                        assertThat(lines.lower()).as(name).isLessThanOrEqualTo(0);
                    }
                }
            }
        });
    }

    @Test
    void everyLineLabel_hasTheValueOfItsLine() {
        CASES.keySet()
                .forEach(name -> figure(name).panels().stream()
                        .flatMap(panel -> panel.lines().stream())
                        .filter(line -> !line.value().isEmpty())
                        .forEach(line -> {
                            String value = line.value().replace('−', '-');
                            int point = value.indexOf('.');
                            int places = point < 0 ? 0 : value.length() - point - 1;
                            assertThat(Double.parseDouble(value))
                                    .as(name + " " + line)
                                    .isCloseTo(line.at(), within(PRINTED * Math.pow(10, -places)));
                        }));
    }

    @Test
    void everySignal_hasAShapeOfItsOwnAndEveryChartSaysHowOftenItCriesWolf() {
        CASES.forEach((name, sheet) -> {
            assertThat(printed(name).prose())
                    .as(name)
                    .contains(sheet.findings()
                            .get(0)
                            .study()
                            .orElseThrow()
                            .falseSignals()
                            .sentence());
            ControlChart chart = chart(name);
            ControlFigure figure = figure(name);
            sheet.findings().get(0).study().orElseThrow().assessment().signals().forEach(signal -> {
                int p = IntStream.range(0, chart.panels().size())
                        .filter(i -> chart.panels().get(i).kind() == signal.panel())
                        .findFirst()
                        .orElseThrow();
                int at = signal.at() - chart.data().number(0);
                ControlFigure.Panel panel = figure.panels().get(p);
                boolean shown = panel.points().get(at).speaks()
                        || (!panel.second().isEmpty() && panel.second().get(at).speaks());
                assertThat(shown).as(name + " " + signal).isTrue();
            });
        });
    }

    @Test
    void zoneTests_nameTheirRunLength() {
        // 91.75: Champ and Woodall 1987, Technometrics 29, 393–399, table 1
        assertThat(printed("xbar-r in control").prose())
                .contains("gives a false signal once in 91.8 points on average");
    }

    @Test
    void cusum_namesBothSumsAndItsDecisionLines() {
        Printed sheet = printed("cusum head start");
        assertThat(lineNames(figure("cusum head start")))
                .containsExactly("decision line", "decision line", "upper sum", "lower sum");
        assertThat(sheet.prose())
                .contains("cumulative sum beyond the lower decision line, on the side of low values")
                .contains("4.0 sigma from zero. Both start at 50 % of it")
                .doesNotContain("beyond three sigma")
                .doesNotContain("western-electric");
        assertThat(headline("cusum head start"))
                .startsWith(
                        "The lower sum passes its decision line at subgroup 4: the level has probably been low since"
                                + " about subgroup 1;");
        ControlFigure.Panel panel = figure("cusum head start").location();
        // the signal is marked on the sum that gave it
        assertThat(panel.points()).allMatch(point -> point.marks().isEmpty());
        assertThat(panel.second().get(3).marks()).isEqualTo("1");
    }

    @Test
    void ewma_limitsWidenAndBeginAnewAtBreaks() {
        List<ControlFigure.Point> points = figure("ewma breaks").location().points();
        assertThat(points.get(1).upper()).isGreaterThan(points.get(0).upper());
        assertThat(points.get(10).upper()).isCloseTo(points.get(0).upper(), within(1e-12));
        assertThat(figure("ewma breaks").breaks())
                .extracting(ControlFigure.PhaseBreak::before, ControlFigure.PhaseBreak::word)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(11, "insert 2"),
                        org.assertj.core.groups.Tuple.tuple(21, "insert 3"));
        assertThat(lineNames(figure("ewma breaks"))).contains("last UCL", "centre", "last LCL");
        assertThat(printed("ewma breaks").prose())
                .contains("the newest counts 0.2")
                .contains("subgroup 11 (insert 2), subgroup 21 (insert 3), where insert changed");
    }

    @Test
    void betweenWithin_hasThreePanelsTheLowerTwoOnOneScale() {
        ControlFigure figure = figure("between-within");
        assertThat(figure.panels()).hasSize(3);
        assertThat(figure.panels().get(1).scale())
                .isPresent()
                .isEqualTo(figure.panels().get(2).scale());
        assertThat(printed("between-within").prose()).contains("spread between subgroups, sigma");
    }

    @Test
    void excludedPoint_isACrossAndItsReasonIsPrinted() {
        ControlFigure figure = figure("stages");
        assertThat(figure.location().points().get(4).shape()).isEqualTo(ControlFigure.Shape.EXCLUDED);
        assertThat(printed("stages").prose())
                .contains("× Subgroup 5 was left out: chip under the part, seen by the operator.");
    }

    @Test
    void recalculatedLimits_standInATableWithTheReason() {
        Block.Table table = printed("stages").all(Block.Table.class).stream()
                .filter(each -> each.columns().get(0).head().equals("Stretch"))
                .findFirst()
                .orElseThrow();
        List<String> last = ((TableRow.Cells) table.rows().get(1))
                .cells().stream().map(Printed::text).collect(Collectors.toList());
        assertThat(last)
                .startsWith("insert 2", "13 to 30", "18")
                .endsWith("new insert after wear, verified by the setter");
        Lines lines = chart("stages").location().lines(20).orElseThrow();
        assertThat(Double.parseDouble(last.get(5))).isCloseTo(lines.upper(), within(0.00006));
    }

    @Test
    void frozenLimits_sayWhereTheyComeFrom() {
        assertThat(printed("frozen").prose()).contains("set before and kept: limits from batch B-2206, 25 subgroups");
    }

    @Test
    void baseline_isMarkedWithoutAGap() {
        assertThat(figure("baseline").breaks())
                .containsExactly(new ControlFigure.PhaseBreak(13, "limits set up to here", false));
        assertThat(printed("baseline").prose()).contains("set by the first 12 of 25 subgroups");
    }

    @Test
    void counts_haveOnePanelAndSayWhetherTheySpreadAsTheyShould() {
        for (String name : List.of("p", "np", "c", "u overdispersed")) {
            assertThat(figure(name).panels()).as(name).hasSize(1);
            assertThat(printed(name).all(Block.IndexScale.class)).as(name).isEmpty();
            assertThat(printed(name).prose())
                    .as(name)
                    .contains(
                            List.of("p", "np").contains(name)
                                    ? "What passes or fails has no indices of capability"
                                    : "Counts have no indices of capability")
                    .contains("From one sample to the next the counts differ");
        }
        assertThat(printed("p").prose())
                .contains("so the limits are those of that distribution")
                .contains("Each sample is judged by limits of its own size.");
        assertThat(printed("u overdispersed").prose())
                .contains("they spread more than chance explains. The limits are widened by that factor (Laney 2002)");
        List<ControlFigure.Point> points = figure("p").location().points();
        assertThat(points.stream().map(ControlFigure.Point::upper).distinct().count())
                .isGreaterThan(5);
    }

    @Test
    void family_hasItsNumbersUnderTheAxisAndItsScaleIsSaid() {
        assertThat(figure("family standardised").bands())
                .extracting(ControlFigure.Band::word)
                .startsWith("no. 4", "no. 9", "no. 12", "no. 4");
        assertThat(figure("family standardised").location().unit()).isEqualTo("in sigmas of each part");
        assertThat(printed("family standardised").prose())
                .contains("in standard deviations of its own readings (sigmas)");
        assertThat(printed("family deviation").prose()).contains("0 is on nominal");
    }

    @Test
    void signalsOfOtherSets_areToldInWords() {
        assertThat(printed("median-r unnatural trend").prose())
                .contains("Eight successive points beyond one sigma, on either side: subgroups 1 to 10 (3 times).");
        assertThat(printed("individuals stratified").prose())
                .contains("Fourteen successive points alternating up and down: pieces 2207-001 to 2207-090");
        assertThat(printed("xbar-s drift, nelson").prose()).contains("Nine successive points, below the centre line");
    }

    @Test
    void longRun_saysWhatIsNotDrawn() {
        assertThat(printed("thousand").prose())
                .contains("Of these 1000 points the picture draws, of every 7 neighbours, the highest and the lowest");
    }

    @Test
    void otherDistribution_isShownWithItsEvidence() {
        ProbabilityFigure figure = probability(printed("bounded"));
        assertThat(figure.points()).hasSize(125);
        assertThat(figure.curve()).isEqualTo("folded normal");
        assertThat(printed("bounded").prose()).containsPattern("Anderson–Darling A² 0\\.\\d\\d, p 0\\.\\d{3}");
        Printed fixed = new Printed(ReportCatalogue.compose(StudyCases.fixed(CapabilityMethod.LOGNORMAL)));
        assertThat(probability(fixed).curve()).isEqualTo("lognormal");
        // the normal distribution, not refuted and not asked for, needs no second picture
        assertThat(printed("xbar-r in control").all(Block.FigureBlock.class))
                .noneMatch(block -> block.figure() instanceof ProbabilityFigure);
    }

    private static ProbabilityFigure probability(Printed sheet) {
        return sheet.all(Block.FigureBlock.class).stream()
                .filter(block -> block.figure() instanceof ProbabilityFigure)
                .map(block -> (ProbabilityFigure) block.figure())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void drift_standsInIndicesSideBySideAndAsLines() {
        Block.IndexScale scale =
                printed("tool wear").all(Block.IndexScale.class).get(0);
        assertThat(scale.marks())
                .extracting(Block.IndexMark::name)
                .containsExactly(
                        "Cp within trend",
                        "Cpk within trend",
                        "Pp whole life",
                        "Ppk whole life",
                        "Cpk at the worst moment");
        assertThat(figure("tool wear").location().trends()).hasSize(3);
        assertThat(headline("tool wear")).startsWith("In every tool life the level rises, by 0.1");
    }

    @Test
    void observedShare_hasItsIntervalAndItsCondition() {
        // 0 of 125, 95 %: 1 − 0.025^(1/125) = 0.02908 (Clopper and Pearson 1934, closed form for none)
        assertThat(printed("xbar-r in control").prose())
                .contains(
                        "Observed outside the limits: none of 125 readings. If the process keeps its share, that lies between"
                                + " 0 and 29\u202F000 of a million, with 95 % confidence (Clopper–Pearson).");
    }

    @Test
    void twoChartsOfCounts_shareAPage() {
        Sheet one = CASES.get("p");
        Sheet two = new Sheet(
                one.kind(),
                one.result(),
                List.of(
                        one.findings().get(0),
                        one.findings().get(0),
                        one.findings().get(0)),
                one.job(),
                one.refusals(),
                one.remarks(),
                one.provenance());
        long breaks = ReportCatalogue.compose(two).blocks().stream()
                .filter(block -> block instanceof Block.PageBreak)
                .count();
        assertThat(breaks).isEqualTo(2);
    }

    @Test
    void fewPointsWithoutASignal_areNotCalledInControl() {
        Sheet sheet = StudyCases.measured(7, 1, 0.01, i -> 0, ChartRequest.of("cusum"));
        Printed printed = new Printed(ReportCatalogue.compose(sheet));
        assertThat(Printed.text(printed.all(Block.Headline.class).get(1).sentence()))
                .isEqualTo("Whether it ran in control cannot be told yet; all 7 readings conform.");
        assertThat(printed.prose())
                .contains("7 points: too few for the tests. It neither shows nor excludes a change.");
    }
}
