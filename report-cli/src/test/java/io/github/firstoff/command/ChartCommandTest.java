package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import io.github.firstoff.proof.Samples;
import io.github.firstoff.proof.Samples.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Charts through the command line, held against the published examples that the library is held against (the files under
 * {@code reference/chart}, each with its source).
 */
class ChartCommandTest {
    private static final Path REFERENCE = Path.of("..", "spc-core", "src", "test", "resources", "reference", "chart");
    private static final ObjectMapper MAPPER = new ObjectMapper();
    /** Between doubles that took different ways through the same arithmetic. */
    private static final double COMPUTED = 1e-9;

    @TempDir
    private Path folder;

    private Run run(String requirement, String study, String readings, String... more) throws IOException {
        Path plan = Files.writeString(
                folder.resolve("plan.json"), """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A"}, "unit": "mm",
                 "characteristics": [
                  {"number": "1", "feature": "seat", "requirement": "%s",
                   "study": %s}%s]}
                """.formatted(requirement, study, String.join("", more)));
        Path file = Files.writeString(folder.resolve("readings.csv"), readings);
        return Samples.run("batch", "--plan", plan, file, "--json");
    }

    private JsonNode first(String requirement, String study, String readings, String... more) throws IOException {
        Run run = run(requirement, study, readings, more);
        assertThat(run.err()).isEmpty();
        return MAPPER.readTree(run.out()).at("/characteristics/0");
    }

    private JsonNode chart(String requirement, String study, String readings) throws IOException {
        return first(requirement, study, readings).get("chart");
    }

    private static JsonNode reference(String file, String id) throws IOException {
        for (JsonNode each : MAPPER.readTree(REFERENCE.resolve(file).toFile()).get("cases")) {
            if (each.get("id").asText().equals(id)) {
                return each;
            }
        }
        throw new AssertionError("no case " + id);
    }

    /** One piece in a row, in the order of the list, however deep it is nested. */
    private static String readings(JsonNode values) {
        StringBuilder rows = new StringBuilder("part,1\n");
        int piece = 0;
        for (JsonNode value : flat(values)) {
            piece++;
            rows.append("P")
                    .append(piece)
                    .append(',')
                    .append(value.decimalValue().toPlainString())
                    .append('\n');
        }
        return rows.toString();
    }

    private static List<JsonNode> flat(JsonNode values) {
        List<JsonNode> all = new ArrayList<>();
        for (JsonNode value : values) {
            if (value.isArray()) {
                all.addAll(flat(value));
            } else {
                all.add(value);
            }
        }
        return all;
    }

    private static String rings() throws IOException {
        return readings(reference("subgroups.json", "xbar-ring-printed").at("/input/data"));
    }

    private static List<Integer> at(JsonNode chart, String test) {
        List<Integer> points = new ArrayList<>();
        for (JsonNode signal : chart.get("signals")) {
            if (signal.get("test").asText().equals(test)) {
                points.add(signal.get("at").asInt());
            }
        }
        return points;
    }

    private static void assertPanel(JsonNode panel, double centre, double lower, double upper) {
        assertThat(panel.get("centre").asDouble()).isCloseTo(centre, within(COMPUTED));
        assertThat(panel.get("lower").asDouble()).isCloseTo(lower, within(COMPUTED));
        assertThat(panel.get("upper").asDouble()).isCloseTo(upper, within(COMPUTED));
    }

    /** Montgomery, section 6.2: ring diameters, 25 subgroups of 5; printed limits 74.014 and 73.988. */
    @ParameterizedTest
    @CsvSource({"xbar-r, xbar_r, mean_range, r_ucl, sigma_from_range", "xbar-s, xbar_s, mean_s, s_ucl, sigma_from_s"})
    void meansOfRings(String kind, String lines, String spread, String top, String sigma) throws IOException {
        JsonNode e = reference("subgroups.json", "xbar-ring-computed").get("expected");
        JsonNode one = first("74 ±0.05", "{\"chart\": \"" + kind + "\", \"subgroup\": 5}", rings());
        JsonNode chart = one.get("chart");

        assertThat(chart.get("kind").asText()).isEqualTo(kind);
        assertPanel(
                chart.get("location"),
                e.get("grand_mean").asDouble(),
                e.at("/" + lines + "/lcl").asDouble(),
                e.at("/" + lines + "/ucl").asDouble());
        assertPanel(
                chart.get("dispersion"),
                e.get(spread).asDouble(),
                0,
                e.at("/" + lines + "/" + top).asDouble());
        assertThat(one.at("/standardDeviation/within").asDouble())
                .isCloseTo(e.get(sigma).asDouble(), within(COMPUTED));
        assertThat(chart.get("location").get("upper").asDouble()).isCloseTo(74.014, within(6e-4));
        assertThat(chart.at("/signalCounts").fieldNames())
                .toIterable()
                .containsExactly(
                        "western-electric-1",
                        "western-electric-2",
                        "western-electric-3",
                        "western-electric-4",
                        "dispersion-limits");
        // the published run length of the four zone tests
        assertThat(chart.at("/falseSignals/average").asDouble()).isCloseTo(91.75, within(0.005));
        assertThat(chart.at("/falseSignals/exact").asBoolean()).isTrue();
    }

    /** The same data: any chart of means has their grand mean as its centre; the median chart has the mean of the medians. */
    @ParameterizedTest
    @CsvSource({"between-within", "deviation", "standardised-deviation", "ewma", "cusum"})
    void otherChartsOfRings_haveTheirCentreWhereTheReadingsLie(String kind) throws IOException {
        JsonNode e = reference("subgroups.json", "xbar-ring-computed").get("expected");
        JsonNode chart = chart("74 ±0.05", "{\"chart\": \"" + kind + "\", \"subgroup\": 5}", rings());
        double mean = e.get("grand_mean").asDouble();
        double sigma = e.get("sigma_from_range").asDouble();

        assertThat(chart.get("kind").asText()).isEqualTo(kind);
        assertThat(chart.get("points").asInt()).isEqualTo(25);
        switch (kind) {
            case "between-within" -> {
                assertThat(chart.at("/location/centre").asDouble()).isCloseTo(mean, within(COMPUTED));
                assertThat(chart.at("/panels/between/centre").asDouble()).isPositive();
                assertPanel(
                        chart.get("dispersion"),
                        e.get("mean_range").asDouble(),
                        0,
                        e.at("/xbar_r/r_ucl").asDouble());
                assertThat(chart.at("/frozen/pointSigma").asDouble()).isPositive();
            }
            case "deviation" ->
                assertPanel(
                        chart.get("location"),
                        mean - 74,
                        e.at("/xbar_r/lcl").asDouble() - 74,
                        e.at("/xbar_r/ucl").asDouble() - 74);
            case "standardised-deviation" -> {
                assertPanel(chart.get("location"), 0, -3 / Math.sqrt(5), 3 / Math.sqrt(5));
                // d2 and D2 of subgroups of five, printed 2.326 and 4.918
                assertThat(chart.at("/dispersion/centre").asDouble()).isCloseTo(2.326, within(5e-4));
                assertThat(chart.at("/dispersion/upper").asDouble()).isCloseTo(4.918, within(5e-4));
                assertThat(chart.at("/frozen/partSigmas/1").asDouble()).isCloseTo(sigma, within(COMPUTED));
            }
            case "ewma" -> {
                JsonNode last = chart.at("/location/limitsByPoint/24");
                // after 25 points all but 0.8^50 = 1e-5 of the width √(0.2/1.8) · 3σ/√5 is there
                double reach = 3 * e.get("sigma_pooled_unbiased").asDouble() / Math.sqrt(5) * Math.sqrt(0.2 / 1.8);
                assertThat(last.get("centre").asDouble()).isCloseTo(mean, within(COMPUTED));
                assertThat(last.get("upper").asDouble() - mean).isCloseTo(reach, within(2e-5 * reach));
            }
            default -> {
                assertThat(chart.at("/frozen/centre").asDouble()).isCloseTo(mean, within(COMPUTED));
                assertThat(chart.at("/location/upper").asDouble())
                        .isCloseTo(5 * e.get("sigma_pooled_unbiased").asDouble() / Math.sqrt(5), within(COMPUTED));
            }
        }
    }

    @Test
    void mediansOfRings_lieAboutTheMeanOfTheMedians() throws IOException {
        List<JsonNode> values =
                flat(reference("subgroups.json", "xbar-ring-printed").at("/input/data"));
        double sum = 0;
        for (int g = 0; g < values.size(); g += 5) {
            sum += values.subList(g, g + 5).stream()
                    .mapToDouble(JsonNode::asDouble)
                    .sorted()
                    .skip(2)
                    .findFirst()
                    .orElseThrow();
        }
        JsonNode chart = chart("74 ±0.05", "{\"chart\": \"median-r\", \"subgroup\": 5}", rings());
        assertThat(chart.at("/location/centre").asDouble()).isCloseTo(sum / 25, within(COMPUTED));
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.2: ten batches, 50.81; limits with the exact d2. */
    @Test
    void individualsOfFlowRates() throws IOException {
        JsonNode c = reference("individuals.json", "CHART-IMR-NIST-6.3.2.2");
        JsonNode e = c.get("expected");
        JsonNode chart = chart("50 ±10", "{\"chart\": \"individuals\"}", readings(c.at("/inputs/x")));
        assertPanel(
                chart.get("location"),
                50.81,
                e.get("LCL_exact_d2").asDouble(),
                e.get("UCL_exact_d2").asDouble());
        assertPanel(
                chart.get("dispersion"),
                e.get("mean_moving_range").asDouble(),
                0,
                e.get("UCL_MR_exact").asDouble());
        JsonNode median = chart(
                "50 ±10",
                "{\"chart\": \"individuals\", \"estimator\": \"median-moving-range\"}",
                readings(c.at("/inputs/x")));
        // 3.145 times the median moving range 1.5 (3/0.954, common in print)
        assertThat(median.at("/location/upper").asDouble()).isCloseTo(50.81 + 3.145 * 1.5, within(1e-3));
        assertThat(median.get("estimator").asText()).contains("median");
    }

    private static String frozen(String kind, String centre, String sigma, String unit) {
        return """
                {"kind": "%s", "centre": %s, "sigma": %s, "estimator": "stated", "degreesOfFreedom": 100, "unit": "%s",
                 "from": "batch B-2201"}""".formatted(kind, centre, sigma, unit);
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.4: target 50, s 2.0539, λ 0.3. */
    @Test
    void weightedAverageOfNist_byLimitsInThePlan() throws IOException {
        JsonNode c = reference("drift.json", "nist-ewma-exact");
        JsonNode chart = chart(
                "50 ±10",
                "{\"chart\": \"ewma\", \"weight\": \"0.3\", \"limits\": " + frozen("ewma", "50", "2.0539", "mm") + "}",
                readings(c.at("/input/values")));
        JsonNode points = chart.at("/location/limitsByPoint");
        for (int i = 0; i < points.size(); i++) {
            assertThat(points.get(i).get("upper").asDouble())
                    .isCloseTo(c.at("/expected/ucl/" + i).asDouble(), within(COMPUTED));
        }
        assertThat(points).hasSize(20);
        assertThat(chart.get("limitsFrom").asInt()).isZero();
        assertThat(chart.get("limitsSetBy").asText()).isEqualTo("batch B-2201");
        assertThat(chart.get("control").asText()).isEqualTo("in-control");
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.3: k 0.3175 and h 4.1959 in the unit of the data, sigma 0.635. */
    @Test
    void cumulativeSumOfNist_byLimitsInThePlan() throws IOException {
        JsonNode c = reference("drift.json", "nist-cusum-computed");
        JsonNode chart = chart(
                "325 ±10",
                "{\"chart\": \"cusum\", \"reference\": 0.5, \"decision\": \"6.607716535433071\", \"limits\": "
                        + frozen("cusum", "325", "0.635", "mm") + "}",
                readings(c.at("/input/values")));
        assertPanel(chart.get("location"), 0, -4.1959, 4.1959);
        assertThat(at(chart, "western-electric-1").get(0))
                .isEqualTo(reference("drift.json", "nist-cusum-data")
                        .at("/expected/first_signal_index")
                        .asInt());
    }

    /** Montgomery: 15 further samples by the limits of the first 25; means 37, 38 and 39 lie beyond. */
    @Test
    void limitsOfOneBatch_goIntoThePlanOfTheNextAsTheyArePrinted() throws IOException {
        JsonNode before = chart("74 ±0.05", "{\"chart\": \"xbar-r\", \"subgroup\": 5}", rings());
        JsonNode after = chart(
                "74 ±0.05",
                "{\"chart\": \"xbar-r\", \"subgroup\": 5, \"limits\": " + before.get("frozen") + "}",
                readings(reference("subgroups.json", "CLASSIC-PISTON-PHASE2").at("/inputs/x")));

        assertPanel(
                after.get("location"),
                before.at("/location/centre").asDouble(),
                before.at("/location/lower").asDouble(),
                before.at("/location/upper").asDouble());
        assertThat(at(after, "western-electric-1")).containsExactly(37 - 25, 38 - 25, 39 - 25);
        assertThat(after.get("frozen")).isEqualTo(before.get("frozen"));
        assertThat(after.get("limitsSetBy").asText()).isEqualTo("batch not stated, 25 points");
    }

    private static String lots(JsonNode rows) {
        StringBuilder text = new StringBuilder("part,subgroup,1\n");
        for (JsonNode row : rows) {
            for (int piece = 0; piece < row.get(2).asInt(); piece++) {
                text.append(row.get(0).asInt())
                        .append('-')
                        .append(piece)
                        .append(',')
                        .append(row.get(0).asInt());
                text.append(piece < row.get(1).asInt() ? ",fail\n" : ",pass\n");
            }
        }
        return text.toString();
    }

    /** Ishikawa, pages 77 to 79: defective motors in lots of different size. */
    @Test
    void shareOfDefectiveMotors() throws IOException {
        JsonNode c = reference("attributes.json", "CHART-P-ISHIKAWA-79");
        JsonNode chart = chart(
                "visual: no burrs",
                "{\"chart\": \"p\", \"subgroupBy\": \"subgroup\", \"dispersion\": \"distribution\"}",
                lots(c.at("/inputs/rows")));
        JsonNode points = chart.at("/location/limitsByPoint");
        assertThat(points).hasSameSizeAs(c.at("/expected/UCL"));
        for (int i = 0; i < points.size(); i++) {
            assertPanel(
                    points.get(i),
                    c.at("/expected/p_bar").asDouble(),
                    c.at("/expected/LCL/" + i).asDouble(),
                    c.at("/expected/UCL/" + i).asDouble());
        }
        assertThat(chart.at("/dispersionCheck/applied").asBoolean()).isFalse();
        assertThat(chart.at("/estimator").asText()).isEqualTo("binomial");
    }

    /** Ishikawa, pages 80 to 81: defective mirrors among 150. */
    @Test
    void numberOfDefectiveMirrors() throws IOException {
        JsonNode c = reference("attributes.json", "CHART-NP-ISHIKAWA-80");
        JsonNode chart = chart(
                "visual: no burrs",
                "{\"chart\": \"np\", \"subgroup\": 150, \"dispersion\": \"distribution\"}",
                lots(c.at("/inputs/rows")).replaceAll("(?m)^([^,]*),[^,]*,", "$1,"));
        assertPanel(chart.get("location"), 5.48, 0, c.at("/expected/UCL").asDouble());
        assertThat(at(chart, "western-electric-1")).containsExactly(25);
    }

    /** NIST/SEMATECH e-Handbook 6.3.3.1: 16 ± 12; wafer 3 lies on the limit with 28, wafer 24 beyond with 31. */
    @Test
    void defectsOfWafers_pointOnTheLimitIsNotBeyond() throws IOException {
        StringBuilder rows = new StringBuilder("part,1\n");
        for (JsonNode row : reference("attributes.json", "CHART-C-NIST-6.3.3.1").at("/inputs/rows")) {
            rows.append('W')
                    .append(row.get(0).asInt())
                    .append(',')
                    .append(row.get(1).asInt())
                    .append('\n');
        }
        JsonNode one = first("nonconformities 28 max: scratches", "{\"chart\": \"c\"}", rows.toString());
        assertPanel(one.at("/chart/location"), 16, 4, 28);
        assertThat(at(one.get("chart"), "western-electric-1")).containsExactly(24);
        assertThat(one.get("nonconforming").asInt()).isEqualTo(1);
        assertThat(one.get("upper").asText()).isEqualTo("28");
        assertThat(one.get("indices").isNull()).isTrue();
    }

    /** Ishikawa, pages 81 to 83: cracks on wire of different lengths. */
    @Test
    void cracksOfWire_onLengthsInTheColumnSize() throws IOException {
        JsonNode c = reference("attributes.json", "CHART-U-ISHIKAWA-81");
        StringBuilder rows = new StringBuilder("part,characteristic,value,size\n");
        for (JsonNode row : c.at("/inputs/rows")) {
            rows.append("W%d,1,%d,%s\n"
                    .formatted(
                            row.get(0).asInt(), row.get(1).asInt(), row.get(2).asText()));
        }
        JsonNode chart = chart(
                "nonconformities 20 max", "{\"chart\": \"u\", \"dispersion\": \"distribution\"}", rows.toString());
        JsonNode points = chart.at("/location/limitsByPoint");
        for (int i = 0; i < points.size(); i++) {
            assertPanel(
                    points.get(i),
                    c.at("/expected/u_bar").asDouble(),
                    c.at("/expected/LCL/" + i).asDouble(),
                    c.at("/expected/UCL/" + i).asDouble());
        }
        assertThat(points).hasSameSizeAs(c.at("/expected/UCL"));
        Run onOneSize = run("nonconformities 20 max", "{\"chart\": \"c\"}", rows.toString());
        assertThat(onOneSize.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(onOneSize.err()).contains("plan.json:4").contains("use a chart u");
    }

    /** Montgomery, chapter 7: boards 6 and 20 left out for written reasons; revised limits 6.37 and 32.97. */
    @Test
    void excludedBoards_setNoLimitsAndStayInTheCount() throws IOException {
        JsonNode c = reference("attributes.json", "c-chart-boards-computed");
        JsonNode one = first("nonconformities 38 max", """
                {"chart": "c", "exclude": [{"point": 6, "reason": "new inspector"},
                  {"part": "P20", "reason": "wave solder too hot"}]}""", readings(c.at("/input/counts")));
        JsonNode chart = one.get("chart");
        assertPanel(
                chart.get("location"),
                c.at("/expected/revised_c_bar").asDouble(),
                c.at("/expected/revised_lcl").asDouble(),
                c.at("/expected/revised_ucl").asDouble());
        assertThat(one.get("count").asInt()).isEqualTo(26);
        assertThat(one.get("nonconforming").asInt()).isEqualTo(1);
        assertThat(chart.at("/exclusions/1/point").asInt()).isEqualTo(20);
        assertThat(chart.at("/exclusions/1/reason").asText()).isEqualTo("wave solder too hot");
        assertThat(chart.at("/exclusions/1/parts/0").asText()).isEqualTo("P20");
        assertThat(one.at("/notes/chart").asText())
                .contains("Point 6 is excluded")
                .contains("new inspector");
    }

    /** Nine points on one side (Nelson's definition), by a Western Electric test that was given nine as its length. */
    @Test
    void testsWithLengths_signalWhereTheLongerDefinitionDoes() throws IOException {
        JsonNode c = reference("run-rules.json", "RULES-nine-side");
        String limits = frozen("individuals", "0", "1", "mm");
        JsonNode usual =
                chart("0 ±10", "{\"chart\": \"individuals\", \"limits\": " + limits + "}", readings(c.at("/inputs/z")));
        assertThat(at(usual, "western-electric-4")).containsExactly(9, 10, 11);
        JsonNode longer = chart(
                "0 ±10",
                "{\"chart\": \"individuals\", \"tests\": [{\"test\": \"western-electric-4\", \"length\": 9}], \"limits\": "
                        + limits + "}",
                readings(c.at("/inputs/z")));
        assertThat(at(longer, "western-electric-4")).containsExactly(10, 11);
        assertThat(longer.get("signalCounts").fieldNames())
                .toIterable()
                .containsExactly("western-electric-4", "dispersion-limits");
        assertThat(longer.at("/tests/western-electric-4").asText()).startsWith("nine successive points");
    }

    @Test
    void falseSignals_ofTestOneAlone_areThePublishedFigure() throws IOException {
        JsonNode chart = chart(
                "74 ±0.05", "{\"chart\": \"xbar-r\", \"subgroup\": 5, \"tests\": [\"western-electric-1\"]}", rings());
        assertThat(chart.at("/falseSignals/average").asDouble()).isCloseTo(370.4, within(0.005));
        assertThat(chart.at("/falseSignals/sentence").asText()).contains("370 points");
    }

    private static String phases(String heading, String... phases) {
        StringBuilder rows = new StringBuilder("part,1," + heading + "\n");
        for (int i = 0; i < phases.length; i++) {
            // all on one side of the centre, no two alike
            rows.append("P%d,0.%d,%s\n".formatted(i + 1, i + 1, phases[i]));
        }
        return rows.toString();
    }

    @Test
    void phases_restartRuns() throws IOException {
        String study = "{\"chart\": \"individuals\", \"limits\": " + frozen("individuals", "0", "1", "mm") + "}";
        JsonNode through = chart("0 ±10", study, phases("note", "a", "a", "a", "a", "b", "b", "b", "b"));
        assertThat(at(through, "western-electric-4")).containsExactly(8);
        JsonNode broken = chart("0 ±10", study, phases("phase", "a", "a", "a", "a", "b", "b", "b", "b"));
        assertThat(at(broken, "western-electric-4")).isEmpty();
        assertThat(broken.at("/breaks/0/before").asInt()).isEqualTo(5);
        assertThat(broken.at("/breaks/0/label").asText()).isEqualTo("phase b");
        // a blank cell says what the one before it said
        String byTool = study.replaceFirst("\"individuals\",", "\"individuals\", \"breaks\": [\"tool\"],");
        JsonNode changed = chart("0 ±10", byTool, phases("tool", "T1", "", "", "", "T2", "", "", ""));
        assertThat(changed.at("/breaks/0/label").asText()).isEqualTo("tool T2");
        assertThat(changed.get("breaks")).hasSize(1);
        // an empty list: the phase is there and breaks nothing
        String never = study.replaceFirst("\"individuals\",", "\"individuals\", \"breaks\": [],");
        assertThat(at(
                        chart("0 ±10", never, phases("phase", "a", "a", "a", "a", "b", "b", "b", "b")),
                        "western-electric-4"))
                .containsExactly(8);
    }

    @Test
    void recalculation_isSaidWithItsReason_andAPhaseCanBeTheBaseline() throws IOException {
        StringBuilder rows = new StringBuilder("part,1,phase\n");
        for (int i = 0; i < 60; i++) {
            rows.append("P%d,%s,%d\n".formatted(i + 1, (i < 30 ? "40.0" : "40.1") + (i * 7 % 10), i < 30 ? 1 : 2));
        }
        JsonNode one = first("40 ±0.3", """
                {"chart": "individuals", "breaks": {"limits": "recalculate", "reason": "new fixture, accepted"}}""", rows.toString());
        JsonNode stages = one.at("/chart/stages");
        assertThat(stages).hasSize(2);
        assertThat(stages.at("/1/reason").asText()).isEqualTo("new fixture, accepted");
        assertThat(stages.at("/1/frozen/centre").asDouble()
                        - stages.at("/0/frozen/centre").asDouble())
                .isCloseTo(0.1, within(COMPUTED));
        assertThat(one.at("/notes/chart").asText())
                .contains("recalculated from point 31")
                .contains("new fixture, accepted");
        JsonNode baseline =
                chart("40 ±0.3", "{\"chart\": \"individuals\", \"baseline\": {\"phase\": 2}}", rows.toString());
        assertThat(baseline.get("limitsFrom").asInt()).isEqualTo(30);
        assertThat(baseline.at("/location/centre").asDouble())
                .isCloseTo(stages.at("/1/frozen/centre").asDouble(), within(COMPUTED));
    }

    @Test
    void subgroups_byTimeByColumnAndWithTheIncompleteKept() throws IOException {
        StringBuilder rows = new StringBuilder("part,1,time,machine\n");
        for (int i = 0; i < 22; i++) {
            rows.append(
                    "P%d,40.0%d,2026-11-20T%02d:%02d,M%d\n".formatted(i, i * 7 % 10, 8 + i / 4, 10 * (i % 4), i / 11));
        }
        JsonNode hours = chart("40 ±0.3", "{\"chart\": \"xbar-r\", \"window\": \"PT1H\"}", rows.toString());
        assertThat(hours.get("points").asInt()).isEqualTo(5);
        JsonNode kept = first(
                "40 ±0.3", "{\"chart\": \"xbar-r\", \"window\": \"PT1H\", \"incomplete\": \"keep\"}", rows.toString());
        assertThat(kept.at("/chart/points").asInt()).isEqualTo(6);
        assertThat(kept.at("/notes/chart").asText())
                .contains("Subgroup 6 is incomplete")
                .contains("by choice");
        JsonNode machines = chart("40 ±0.3", "{\"chart\": \"xbar-r\", \"subgroupBy\": \"machine\"}", rows.toString());
        assertThat(machines.get("points").asInt()).isEqualTo(2);
    }

    @Test
    void trendedProcess_hasTheIndexOfTheWholeToolLifeBesideTheUsual() throws IOException {
        StringBuilder rows = new StringBuilder("part,1,tool\n");
        for (int i = 0; i < 80; i++) {
            int wear = i % 40;
            rows.append("P%d,%s,T%d\n"
                    .formatted(i, java.math.BigDecimal.valueOf(400000 + 5 * wear + i * 7 % 10, 4), i / 40));
        }
        JsonNode one = first("40 ±0.06", "{\"chart\": \"individuals\", \"trended\": true}", rows.toString());
        assertThat(one.at("/trended/toolLives")).hasSize(2);
        // five ten-thousandths for each piece
        assertThat(one.at("/trended/toolLives/0/slope").asDouble()).isCloseTo(0.0005, within(2e-6));
        assertThat(one.at("/trended/cp/value").asDouble())
                .isGreaterThan(one.at("/trended/pp/value").asDouble());
        assertThat(one.at("/indices/pp").isNumber()).isTrue();
        assertThat(one.at("/expectedPpm/interval")).hasSize(2);
        assertThat(one.at("/observedPpm/method").asText()).isEqualTo("Clopper–Pearson");
    }

    @Test
    void distributionOfThePlan_isUsedAndSaid() throws IOException {
        JsonNode fixed =
                first("74 ±0.05", "{\"chart\": \"xbar-r\", \"subgroup\": 5, \"distribution\": \"lognormal\"}", rings());
        assertThat(fixed.at("/fitted/fixedByPlan").asBoolean()).isTrue();
        assertThat(fixed.at("/fitted/evidence/0/distribution").asText()).isEqualTo("lognormal");
        JsonNode chosen = first("74 ±0.05", "{\"chart\": \"xbar-r\", \"subgroup\": 5}", rings());
        assertThat(chosen.at("/fitted/fixedByPlan").asBoolean()).isFalse();
        assertThat(chosen.at("/dataChecks/discreteness/step").asText()).isEqualTo("0.001");
        assertThat(chosen.at("/dataChecks/autocorrelation/lagOne").isNumber()).isTrue();
    }

    /** Two bores measured in turn: each is standardised by its own spread, piece after piece. */
    @Test
    void family_isOneChartInTheOrderOfProduction() throws IOException {
        StringBuilder rows = new StringBuilder("part,1,2\n");
        for (int i = 0; i < 30; i++) {
            rows.append("P%d,40.0%d,20.00%d\n".formatted(i, i * 7 % 10, i * 3 % 10));
        }
        JsonNode one = first(
                "40 ±0.3",
                "{\"chart\": \"standardised-deviation\", \"family\": [\"1\", \"2\"]}",
                rows.toString(),
                ", {\"number\": \"2\", \"feature\": \"seat\", \"requirement\": \"20 ±0.1\"}");
        assertThat(one.at("/chart/points").asInt()).isEqualTo(60);
        assertPanel(one.at("/chart/location"), 0, -3, 3);
        // the mean moving range of 0, 7, 4, 1, 8, 5, 2, 9, 6, 3, 0 … by hand: 7 3 3 7 3 3 7 3 3 3, over d2 = 1.128
        double first = one.at("/chart/frozen/partSigmas/1").asDouble();
        assertThat(first).isCloseTo((7 * 9 + 3 * 20) / 29.0 / 100 / 1.128, within(1e-4));
        assertThat(one.at("/indices/cp").asDouble()).isCloseTo(0.6 / 6 / first, within(COMPUTED));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{`chart`: `xbar-r`, `tests`: [`nelsen`]} | part,1 | perhaps nelson is meant",
                "{`chart`: `xbar-r`, `tests`: [{`test`: `nelson`, `length`: 7}]} | part,1 | a length belongs to one test",
                "{`chart`: `xbar-r`, `tests`: [`nelson`, `nelson-3`]} | part,1 | nelson-3 stands twice",
                "{`chart`: `xbar-r`, `tests`: [{`test`: `nelson-3`, `points`: 5, `of`: 6}]} | part,1 | not 5 of 6",
                "{`chart`: `xbar-r`, `window`: `PT1H`} | part,1 | readings.csv:2 states none",
                "{`chart`: `xbar-r`, `window`: `1 hour`} | part,1 | a duration of ISO 8601",
                "{`chart`: `xbar-r`, `subgroupBy`: `operator`} | part,1 | readings.csv:2 does not state it",
                "{`chart`: `xbar-r`, `subgroupBy`: `operator`, `subgroup`: 5} | part,1 | cut in one way",
                "{`chart`: `xbar-r`, `breaks`: [`tool`]} | part,1 | no reading of characteristic 1 states it",
                "{`chart`: `xbar-r`, `breaks`: {`limits`: `recalculate`}} | part,1 | without a written reason",
                "{`chart`: `xbar-r`, `exclude`: [{`part`: `P99`, `reason`: `chip`}]} | part,1 | part P99 is not on the chart",
                "{`chart`: `xbar-r`, `exclude`: [{`part`: `P1`, `reason`: ` `}]} | part,1 | why it does not count",
                "{`chart`: `xbar-r`, `exclude`: [{`point`: 9, `reason`: `chip`}]} | part,1 | point 9 is not on the chart",
                "{`chart`: `xbar-r`, `baseline`: {`phase`: `3`}} | part,1 | in phase 3",
                "{`chart`: `xbar-r`, `weight`: 0.2} | part,1 | has no use for it",
                "{`chart`: `ewma`, `weight`: 1.2} | part,1 | above 0 and at most 1",
                "{`chart`: `p`, `subgroup`: 5} | part,1 | the requirement is measured, and the chart counts",
                "{`chart`: `xbar-r`, `family`: [`1`]} | part,1 | has no use for it",
                "{`chart`: `deviation`, `family`: [`1`, `7`]} | part,1 | the plan has no characteristic 7",
            })
    void whatContradictsItself_isRefusedWithItsPlace(String study, String heading, String message) throws IOException {
        StringBuilder rows = new StringBuilder(heading + "\n");
        for (int i = 1; i <= 10; i++) {
            rows.append("P").append(i).append(",40.0").append(i % 4).append('\n');
        }
        Run run = run("40 ±0.3", study.replace('`', '"'), rows.toString());
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err())
                .contains("plan.json:4:")
                .contains("characteristic 1")
                .contains(message);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void frozenLimits_ofAnotherKindOrUnit_areRefused() throws IOException {
        String rows = "part,1\nP1,40.01\nP2,40.02\n";
        Run kind = run(
                "40 ±0.3",
                "{\"chart\": \"individuals\", \"limits\": " + frozen("xbar-r", "40", "0.01", "mm") + "}",
                rows);
        assertThat(kind.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(kind.err()).contains("limits of a chart xbar-r do not fit a chart individuals");
        Run unit = run(
                "40 ±0.3",
                "{\"chart\": \"individuals\", \"limits\": " + frozen("individuals", "1.57", "0.01", "inch") + "}",
                rows);
        assertThat(unit.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(unit.err()).contains("plan.json:4:").contains("limits in inch do not fit readings in mm");
        Run unsourced = run(
                "40 ±0.3",
                "{\"chart\": \"individuals\", \"limits\": "
                        + frozen("individuals", "40", "0.01", "mm").replace("\"batch B-2201\"", "\"\"") + "}",
                rows);
        assertThat(unsourced.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(unsourced.err()).contains("from which batch the limits come");
    }

    @Test
    void countsThatAreNotWhole_areRefused() throws IOException {
        Run run = run("nonconformities 3 max", "{\"chart\": \"c\"}", "part,1\nP1,2\nP2,1.5\n");
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("readings.csv:3").contains("counted in whole numbers");
        Run negative = run("nonconformities 3 max", "{\"chart\": \"c\"}", "part,1\nP1,-2\n");
        assertThat(negative.code()).isEqualTo(ExitCodes.INPUT);
        Run empty = run("nonconformities 3 max", "{\"chart\": \"u\"}", "part,characteristic,value,size\nP1,1,2,0\n");
        assertThat(empty.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(empty.err()).contains("a size above 0");
        assertThat(Stream.of("nonconformities", "nonconformities ±3", "nonconformities 2.5 max"))
                .allSatisfy(text -> {
                    Run refused = run(text, "{\"chart\": \"c\"}", "part,1\nP1,2\n");
                    assertThat(refused.code()).isEqualTo(ExitCodes.INPUT);
                    assertThat(refused.err()).contains("nonconformities 3 max");
                });
    }

    @Test
    void chartOfThreePanels_namesThemAll() throws IOException {
        JsonNode chart = chart("74 ±0.05", "{\"chart\": \"between-within\", \"subgroup\": 5}", rings());
        assertThat(chart.get("signals")).isInstanceOf(ArrayNode.class);
        assertThat(chart.get("panels").fieldNames()).toIterable().containsExactly("location", "between", "dispersion");
        assertThat(chart.at("/signalCounts/between-limits").isInt()).isTrue();
    }
}
