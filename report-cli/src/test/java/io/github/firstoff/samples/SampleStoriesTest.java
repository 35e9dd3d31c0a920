package io.github.firstoff.samples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.ChartMethod;
import io.github.firstoff.study.chart.Individuals;
import io.github.firstoff.study.chart.RuleSet;
import io.github.firstoff.study.chart.Side;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.chart.XbarRange;
import io.github.firstoff.study.chart.XbarStandardDeviation;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the folder's README says of the charts holds. */
class SampleStoriesTest {

    private static final int ALL = Integer.MAX_VALUE;

    /** Ø52 P7: ES −21 µm, EI −51 µm (ISO 286-2, limit deviations of P7, over 50 to 80). */
    private static final BigDecimal SEAT_LOWER = new BigDecimal("51.949");

    private static final BigDecimal SEAT_UPPER = new BigDecimal("51.979");

    @Test
    void theSeatOfBatch2207WearsOutOfControlWhileEveryPieceConforms() {
        List<BigDecimal> seats = longColumn("batch-2207.csv", "1");

        assertThat(seats).hasSize(125).allSatisfy(seat -> assertThat(seat).isBetween(SEAT_LOWER, SEAT_UPPER));

        Assessment chart = assess(new XbarRange(), inFives(seats), 10);
        assertThat(chart.control()).isEqualTo(ControlState.OUT_OF_CONTROL);
        assertThat(chart.signals()).allSatisfy(signal -> {
            assertThat(signal.side()).isEqualTo(Side.BELOW);
            assertThat(signal.at()).isGreaterThan(10);
        });
        int earliest = chart.signals().stream().mapToInt(Signal::at).min().orElseThrow();
        int beyondLimit = chart.signals().stream()
                .filter(signal -> signal.test().equals("western-electric-1"))
                .mapToInt(Signal::at)
                .min()
                .orElseThrow();
        assertThat(earliest)
                .as("a zone test speaks before a point is beyond its limit")
                .isLessThan(beyondLimit);

        // When the chart first speaks, every seat so far keeps more than half of the way from the middle to the limit.
        BigDecimal leastSoFar = seats.subList(0, 5 * earliest).stream()
                .min(BigDecimal::compareTo)
                .orElseThrow();
        assertThat(leastSoFar).isGreaterThan(new BigDecimal("51.9565"));
    }

    @Test
    void spigotAndFlangeOfBatch2207StayInControl() {
        Subgroups spigots = sample(longColumn("batch-2207.csv", "4")).asIndividuals();
        Subgroups flanges = inFives(longColumn("batch-2207.csv", "5"));

        assertThat(assess(new Individuals(), spigots, ALL).control()).isEqualTo(ControlState.IN_CONTROL);
        assertThat(assess(new XbarStandardDeviation(), flanges, ALL).control()).isEqualTo(ControlState.IN_CONTROL);
    }

    @Test
    void batch2208HasOneSeatOverAndOneFlangeNotMeasured() {
        List<BigDecimal> seats = longColumn("batch-2208.csv", "1");

        assertThat(seats).hasSize(60);
        assertThat(seats.stream()
                        .filter(seat -> seat.compareTo(SEAT_LOWER) < 0 || seat.compareTo(SEAT_UPPER) > 0)
                        .map(seat -> seat.subtract(SEAT_UPPER)))
                .containsExactly(new BigDecimal("0.004"));
        assertThat(longColumn("batch-2208.csv", "5")).hasSize(59);
    }

    @Test
    void theStudiedCharacteristicsOfBatch2209AreInControl() {
        for (String number : List.of("1", "4", "5")) {
            Subgroups pieces = sample(wideColumn("batch-2209.csv", number)).asIndividuals();

            assertThat(pieces.count()).isEqualTo(12);
            assertThat(assess(new Individuals(), pieces, ALL).control())
                    .as("characteristic %s", number)
                    .isEqualTo(ControlState.IN_CONTROL);
        }
    }

    private static Assessment assess(ChartMethod<Subgroups> method, Subgroups data, int baseline) {
        return RuleSet.westernElectric().assess(method.fromData(data, baseline));
    }

    private static Subgroups inFives(List<BigDecimal> values) {
        return sample(values).inSubgroupsOf(5);
    }

    private static Sample sample(List<BigDecimal> values) {
        return Sample.of(values, Unit.MILLIMETRE);
    }

    /** The readings of one characteristic in a long file; no field of the sample files is quoted. */
    private static List<BigDecimal> longColumn(String name, String number) {
        Map<String, BigDecimal> byPart = new LinkedHashMap<>();
        for (String line : lines(name)) {
            String[] fields = line.split(",", -1);
            if (fields[1].equals(number)) {
                assertThat(byPart.put(fields[0], new BigDecimal(fields[2])))
                        .as("a second reading of %s on %s", number, fields[0])
                        .isNull();
            }
        }
        return List.copyOf(byPart.values());
    }

    private static List<BigDecimal> wideColumn(String name, String number) {
        List<String> lines = lines(name);
        int column = List.of(lines.get(0).split(",", -1)).indexOf(number);
        return lines.stream()
                .skip(1)
                .map(line -> new BigDecimal(line.split(",", -1)[column]))
                .toList();
    }

    private static List<String> lines(String name) {
        return SampleGenerator.files().get(name).lines().toList();
    }
}
