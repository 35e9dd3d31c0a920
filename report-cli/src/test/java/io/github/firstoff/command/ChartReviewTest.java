package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an outside check of charts by the command line found wrong once; each case says how it is known what is right. */
class ChartReviewTest {
    private static final double COMPUTED = 1e-12;

    @TempDir
    private Path folder;

    private JsonNode first(String requirement, String study, String readings) throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.json"), """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A"}, "unit": "mm",
                 "characteristics": [{"number": "1", "feature": "seat", "requirement": "%s"%s}]}
                """.formatted(
                        requirement, study.isEmpty() ? "" : ", \"study\": " + study));
        Path file = Files.writeString(folder.resolve("readings.csv"), readings);
        Samples.Run run = Samples.run("batch", "--plan", plan, file, "--json");
        assertThat(run.err()).isEmpty();
        return run.json().at("/characteristics/0");
    }

    /** Readings 40.00 to 40.09 that come round, in subgroups of the given sizes. */
    private static String grouped(int... sizes) {
        StringBuilder rows = new StringBuilder("part,1,subgroup,phase\n");
        int reading = 0;
        for (int g = 0; g < sizes.length; g++) {
            for (int i = 0; i < sizes[g]; i++) {
                rows.append("P%d,40.0%d,G%d,%s\n"
                        .formatted(reading, reading * 7 % 10, g, g < sizes.length / 2 ? "A" : "B"));
                reading++;
            }
        }
        return rows.toString();
    }

    /** 2 of 40: 6113.6 to 169196.9 of a million, by quantiles of the beta distribution in SciPy 1.17. */
    @Test
    void piecesThatFailed_stateTheirShareWithItsInterval_withAStudyAndWithout() throws IOException {
        StringBuilder rows = new StringBuilder("part,1\n");
        IntStream.range(0, 40).forEach(i -> rows.append("P%d,%s\n".formatted(i, i % 20 == 7 ? "fail" : "pass")));
        for (String study : new String[] {"", "{\"chart\": \"p\", \"subgroup\": 10}"}) {
            JsonNode share = first("visual: no burrs", study, rows.toString()).get("observedPpm");
            assertThat(share.get("value").asDouble()).isEqualTo(50_000);
            assertThat(share.at("/interval/0").asDouble()).isCloseTo(6113.64659935, within(1e-6));
            assertThat(share.at("/interval/1").asDouble()).isCloseTo(169196.86395942, within(1e-6));
            assertThat(share.get("method").asText()).isEqualTo("Clopper–Pearson");
        }
    }

    /** Points count what is on the chart: subgroups G1 and G4 of one reading are not. */
    @Test
    void subgroupsOfOneReading_doNotShiftWhatThePlanSaysOfPoints() throws IOException {
        String rows = grouped(4, 1, 4, 4, 1, 4, 4, 4);
        JsonNode phase = first(
                "40 ±0.3",
                "{\"chart\": \"xbar-r\", \"subgroupBy\": \"subgroup\", \"baseline\": {\"phase\": \"B\"}, \"breaks\": []}",
                rows);
        assertThat(phase.at("/chart/points").asInt()).isEqualTo(6);
        assertThat(phase.at("/chart/limitsFrom").asInt()).isEqualTo(3);
        assertThat(phase.at("/notes/chart").asText())
                .contains("The limits come from points 4 to 6")
                .contains("2 subgroups have a single reading");
        JsonNode excluded = first(
                "40 ±0.3",
                "{\"chart\": \"xbar-r\", \"subgroupBy\": \"subgroup\", \"breaks\": [],"
                        + " \"exclude\": [{\"point\": 4, \"reason\": \"chip\"}]}",
                rows);
        // the fourth point is G5, whose first piece is the fifteenth
        assertThat(excluded.at("/chart/exclusions/0/point").asInt()).isEqualTo(4);
        assertThat(excluded.at("/chart/exclusions/0/parts/0").asText()).isEqualTo("P14");
    }

    /** A3(n), B3(n) and B4(n) of the pooled s (Montgomery 6.3.2) must come out of the frozen limits as they went in. */
    @Test
    void frozenLimitsOfUnequalSubgroups_areTheLimitsThatWereFrozen() throws IOException {
        String rows = grouped(2, 5, 3, 6, 2, 4, 7, 3);
        JsonNode before = first(
                        "40 ±0.3", "{\"chart\": \"xbar-s\", \"subgroupBy\": \"subgroup\", \"breaks\": []}", rows)
                .get("chart");
        JsonNode after = first(
                        "40 ±0.3",
                        "{\"chart\": \"xbar-s\", \"subgroupBy\": \"subgroup\", \"breaks\": [], \"limits\": "
                                + before.get("frozen") + "}",
                        rows)
                .get("chart");
        for (String panel : new String[] {"location", "dispersion"}) {
            for (int i = 0; i < 8; i++) {
                for (String line : new String[] {"lower", "centre", "upper"}) {
                    String at = "/" + panel + "/limitsByPoint/" + i + "/" + line;
                    assertThat(after.at(at).asDouble()).isCloseTo(before.at(at).asDouble(), within(COMPUTED));
                }
            }
        }
    }

    /** A smaller subgroup after the baseline leaves the estimate of the baseline as it is: s̄/c4 of subgroups of five. */
    @Test
    void anIncompleteSubgroupOutsideTheBaseline_doesNotChangeTheEstimate() throws IOException {
        String study = "{\"chart\": \"xbar-s\", \"subgroup\": 5, \"incomplete\": \"%s\", \"baseline\": 4}";
        StringBuilder rows = new StringBuilder("part,1\n");
        IntStream.range(0, 23).forEach(i -> rows.append("P%d,40.0%d\n".formatted(i, i * 7 % 10)));
        JsonNode left =
                first("40 ±0.3", study.formatted("leave"), rows.toString()).get("chart");
        JsonNode kept =
                first("40 ±0.3", study.formatted("keep"), rows.toString()).get("chart");
        assertThat(kept.get("estimator")).isEqualTo(left.get("estimator"));
        assertThat(kept.at("/frozen/sigma")).isEqualTo(left.at("/frozen/sigma"));
        assertThat(kept.at("/location/limitsByPoint/0/upper").asDouble())
                .isCloseTo(left.at("/location/upper").asDouble(), within(COMPUTED));
        assertThat(kept.at("/location/limitsByPoint/4/upper").asDouble())
                .isCloseTo(
                        kept.at("/frozen/centre").asDouble()
                                + 3 * kept.at("/frozen/sigma").asDouble() / Math.sqrt(3),
                        within(COMPUTED));
    }

    @Test
    void subgroupsThatReadingsName_areTakenAndADifferenceFromThePlanIsSaid() throws IOException {
        JsonNode other =
                first("40 ±0.3", "{\"chart\": \"xbar-r\", \"subgroup\": 5, \"breaks\": []}", grouped(3, 3, 3, 3));
        assertThat(other.at("/chart/points").asInt()).isEqualTo(4);
        assertThat(other.at("/notes/chart").asText()).contains("The plan says subgroups of 5");
        JsonNode same =
                first("40 ±0.3", "{\"chart\": \"xbar-r\", \"subgroup\": 3, \"breaks\": []}", grouped(3, 3, 3, 3));
        assertThat(same.at("/notes/chart").asText()).doesNotContain("The plan says");
    }

    @Test
    void readingsThatAreAllAlike_areNotCalledInControl() throws IOException {
        StringBuilder rows = new StringBuilder("part,1\n");
        IntStream.range(0, 30).forEach(i -> rows.append("P%d,40.01\n".formatted(i)));
        for (String chart : new String[] {"individuals", "ewma", "cusum", "deviation"}) {
            JsonNode one = first("40 ±0.3", "{\"chart\": \"" + chart + "\"}", rows.toString());
            assertThat(one.at("/chart/control").asText()).isEqualTo("not-assessed");
            assertThat(one.at("/notes/chart").asText()).contains("limits without width");
        }
    }

    @Test
    void whatCannotBeDoneAsAsked_isSaid() throws IOException {
        JsonNode reaches = first("40 ±0.3", "{\"chart\": \"individuals\", \"baseline\": 200}", grouped(30));
        assertThat(reaches.at("/notes/chart").asText())
                .contains("The limits come from points 1 to 30")
                .contains("points up to 200, and the chart has 30");
        JsonNode beyond =
                first("40 ±0.3", "{\"chart\": \"individuals\", \"baseline\": {\"from\": 50, \"to\": 60}}", grouped(30));
        assertThat(beyond.at("/notes/chart").asText()).contains("from point 50 on, and the chart has 30");
        JsonNode median = first(
                "40 ±0.3",
                "{\"chart\": \"xbar-r\", \"subgroupBy\": \"subgroup\", \"estimator\": \"median-range\"}",
                grouped(3, 4, 5, 3));
        assertThat(median.at("/notes/chart").asText())
                .contains("no spread by median-range")
                .contains("subgroups of one size");
        StringBuilder rows = new StringBuilder("part,1,phase\n");
        IntStream.range(0, 28).forEach(i -> rows.append("P%d,40.0%d,%d\n".formatted(i, i * 7 % 10, i / 14)));
        JsonNode two = first("40 ±0.3", "{\"chart\": \"xbar-r\", \"subgroup\": 4}", rows.toString());
        assertThat(two.at("/notes/chart").asText())
                .contains(
                        "2 subgroups that end at a break or with the last reading are incomplete (4 readings in all)");
    }

    /** Three stretches at 40.00, 40.08 and 39.95 with limits of their own: each steady, all together not. */
    @Test
    void limitsSetAnew_showControlWithinStretchesAndNoCapabilityOfAll() throws IOException {
        StringBuilder rows = new StringBuilder("part,1,phase\n");
        double[] levels = {40.00, 40.08, 39.95};
        IntStream.range(0, 90)
                .forEach(i -> rows.append("P%d,%s,%d\n"
                        .formatted(
                                i,
                                java.math.BigDecimal.valueOf(Math.round(1000 * levels[i / 30]) + i * 7 % 10, 3),
                                i / 30)));
        JsonNode one = first(
                "40 ±0.3",
                "{\"chart\": \"individuals\", \"tests\": [\"western-electric-1\"],"
                        + " \"breaks\": {\"limits\": \"recalculate\", \"reason\": \"new set-up\"}}",
                rows.toString());
        assertThat(one.at("/chart/control").asText()).isEqualTo("in-control");
        assertThat(one.at("/notes/indices").asText()).contains("control is shown within stretches alone");
    }
}
