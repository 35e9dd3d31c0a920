package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lines against base R, {@code reference/drift/drift.R}, and against the certified values of NIST StRD. */
class FittedLineReferenceTest {
    /** In per cent: 1e-9 relative; R carries no more digits through predict on these data. */
    private static final double COMPUTED = 1e-7;
    /** In per cent: the root finder of R. */
    private static final double ROOT = 1e-5;
    /** In per cent: fifteen certified digits, and arithmetic that rounds a few times. */
    private static final double CERTIFIED = 1e-10;

    /** Points in whole steps of 10<sup>-places</sup>. */
    private record Points(LineTally tally, List<Double> x, List<Double> y, int placesX, int placesY) {
        double alongX(double value) {
            return value * Math.pow(10, placesX);
        }

        double length(double steps) {
            return steps / Math.pow(10, placesY);
        }

        double slope(double steps) {
            return steps / Math.pow(10, placesY - placesX);
        }
    }

    private static Points points(String name) {
        List<BigDecimal> xs = new ArrayList<>();
        List<BigDecimal> ys = new ArrayList<>();
        for (Map<String, String> row : ReferenceFile.rows("drift/points.csv")) {
            if (row.get("case").equals(name)) {
                xs.add(new BigDecimal(row.get("x")));
                ys.add(new BigDecimal(row.get("y")));
            }
        }
        int placesX = xs.stream().mapToInt(BigDecimal::scale).max().orElseThrow();
        int placesY = ys.stream().mapToInt(BigDecimal::scale).max().orElseThrow();
        LineTally tally = LineTally.EMPTY;
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int i = 0; i < xs.size(); i++) {
            long stepsX = xs.get(i).movePointRight(Math.max(0, placesX)).longValueExact();
            long stepsY = ys.get(i).movePointRight(Math.max(0, placesY)).longValueExact();
            tally = tally.plus(stepsX, stepsY);
            x.add((double) stepsX);
            y.add((double) stepsY);
        }
        return new Points(tally, x, y, Math.max(0, placesX), Math.max(0, placesY));
    }

    static Stream<Map<String, String>> lines() {
        return ReferenceFile.rows("drift/lines.csv").stream()
                .filter(row -> !row.get("case").equals("parallel"));
    }

    @ParameterizedTest
    @MethodSource("lines")
    void againstBaseR(Map<String, String> row) {
        Points points = points(row.get("case"));
        FittedLine line = FittedLine.of(points.tally());
        String what = row.get("what");
        double value = Double.parseDouble(row.get("value"));
        double at = row.get("at").isEmpty() ? Double.NaN : Double.parseDouble(row.get("at"));
        double x = points.alongX(at);
        if (what.equals("single reaches")) {
            double found = line.predictionReaches(at * Math.pow(10, points.placesY()), 1, 0.95, 10);
            assertThat(found).isCloseTo(value, withinPercentage(ROOT));
            return;
        }
        if (what.startsWith("crossing")) {
            double k = Double.parseDouble(what.substring(what.lastIndexOf(' ') + 1));
            FittedLine.Crossing crossing =
                    line.crossing(at * Math.pow(10, points.placesY()), line.slope() > 0 ? 1 : -1, k, 0.95);
            double found = what.contains("lower")
                    ? crossing.bounds().lower()
                    : what.contains("upper") ? crossing.bounds().upper() : crossing.at();
            assertThat(found).isCloseTo(value, withinPercentage(ROOT));
            return;
        }
        double found = switch (what) {
            case "slope" -> points.slope(line.slope());
            case "error" -> points.slope(line.slopeError());
            case "deviation" -> points.length(line.deviation());
            case "significance" -> line.significance();
            case "lower" -> points.slope(line.slopeInterval(0.95).lower());
            case "upper" -> points.slope(line.slopeInterval(0.95).upper());
            case "fit" -> points.length(line.at(x));
            case "mean lower" -> points.length(line.meanInterval(x, 0.95).lower());
            case "mean upper" -> points.length(line.meanInterval(x, 0.95).upper());
            case "single lower" ->
                points.length(line.predictionInterval(x, 0.95).lower());
            case "single upper" ->
                points.length(line.predictionInterval(x, 0.95).upper());
            case "runs" -> RunsTest.of(residuals(points, line)).runs();
            default -> throw new IllegalStateException(what);
        };
        assertThat(found).isCloseTo(value, withinPercentage(COMPUTED));
    }

    private static double[] residuals(Points points, FittedLine line) {
        double[] residuals = new double[points.x().size()];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = points.y().get(i) - line.at(points.x().get(i));
        }
        return residuals;
    }

    /** NIST StRD, linear regression, Norris: certified values, printed to fifteen digits. */
    @Test
    void norris_asCertified() {
        Points points = points("norris");
        FittedLine line = FittedLine.of(points.tally());
        assertThat(points.slope(line.slope())).isCloseTo(1.00211681802045, withinPercentage(CERTIFIED));
        assertThat(points.slope(line.slopeError())).isCloseTo(0.429796848199937e-03, withinPercentage(CERTIFIED));
        assertThat(points.length(line.deviation())).isCloseTo(0.884796396144373, withinPercentage(CERTIFIED));
        assertThat(points.length(line.at(0))).isCloseTo(-0.262323073774029, withinPercentage(100 * CERTIFIED));
        assertThat(points.tally().explained()).isCloseTo(0.999993745883712, withinPercentage(CERTIFIED));
    }

    /** NIST/SEMATECH e-Handbook, load cell: R² above 0.99999, and yet the straight line does not explain the readings. */
    @Test
    void loadcell_residualsTellTheCurve() {
        Points points = points("loadcell");
        RunsTest runs = RunsTest.of(residuals(points, FittedLine.of(points.tally())));
        assertThat(runs.isSlow()).isTrue();
        assertThat(runs.significance()).isLessThan(0.001);
    }

    static Stream<Map<String, String>> parallel() {
        return ReferenceFile.rows("drift/lines.csv").stream()
                .filter(row -> row.get("case").equals("parallel"));
    }

    @ParameterizedTest
    @MethodSource("parallel")
    void parallelLines_againstAnova(Map<String, String> row) {
        List<LineTally> tallies = Stream.of("stretch1", "stretch2", "stretch3")
                .map(name -> finer(points(name)))
                .toList();
        ParallelLines lines = ParallelLines.of(tallies);
        FittedLine last = lines.through(tallies.get(2));
        double step = 1e-4;
        double found = switch (row.get("what")) {
            case "slope" -> lines.slope() * step;
            case "deviation" -> lines.deviation() * step;
            case "own deviation" -> lines.ownDeviation() * step;
            case "equality" -> lines.equality();
            case "error" -> last.slopeError() * step;
            case "mean lower" -> last.meanInterval(30, 0.95).lower() * step;
            case "mean upper" -> last.meanInterval(30, 0.95).upper() * step;
            default -> throw new IllegalStateException(row.get("what"));
        };
        assertThat(found).isCloseTo(Double.parseDouble(row.get("value")), withinPercentage(COMPUTED));
    }

    /** All stretches in steps of 0.0001. */
    private static LineTally finer(Points points) {
        LineTally tally = LineTally.EMPTY;
        for (int i = 0; i < points.x().size(); i++) {
            tally = tally.plus(
                    points.x().get(i).longValue(), Math.round(points.y().get(i) * Math.pow(10, 4 - points.placesY())));
        }
        return tally;
    }

    @Test
    void crossing_ofASlopeThatIsNotShown_hasNoUpperEnd() {
        LineTally tally = LineTally.EMPTY;
        long[] y = {0, 5, -4, 3, 1, -2, 6, 0};
        for (int i = 0; i < y.length; i++) {
            tally = tally.plus(i, y[i]);
        }
        FittedLine line = FittedLine.of(tally);
        assertThat(line.significance()).isGreaterThan(0.5);
        assertThat(line.crossing(50, 1, 3, 0.95).bounds().upper()).isInfinite();
    }

    @Test
    void crossing_awayFromTheLimitOrWithoutSpread_isRefused() {
        FittedLine line = new FittedLine(10, 5, 0, 100, 1, 0.5, 8);
        assertThatThrownBy(() -> line.crossing(10, -1, 3, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> line.predictionReaches(10, -1, 0.95, 11)).isInstanceOf(IllegalArgumentException.class);
        FittedLine perfect = new FittedLine(10, 5, 0, 100, 1, 0, 8);
        assertThatThrownBy(() -> perfect.crossing(10, 1, 3, 0.95)).isInstanceOf(IllegalStateException.class);
        assertThat(perfect.significance()).isZero();
        assertThat(perfect.predictionReaches(10, 1, 0.95, 11)).isCloseTo(15, within(1e-9));
        assertThat(line.predictionReaches(10, 1, 0.95, 30)).isEqualTo(30);
    }

    @Test
    void crossing_manyDegreesOfFreedom_agreesAcrossTheSeam() {
        FittedLine below = new FittedLine(10_002, 5000, 0, 8.3e10, 0.01, 2, 10_000);
        FittedLine above = new FittedLine(10_002, 5000, 0, 8.3e10, 0.01, 2, 10_001);
        ConfidenceInterval exact = below.crossing(80, 1, 3, 0.95).bounds();
        ConfidenceInterval approximate = above.crossing(80, 1, 3, 0.95).bounds();
        // the approximation of Johnson and Welch is good to some 1e-4 of the width here
        double width = exact.upper() - exact.lower();
        assertThat(approximate.lower()).isCloseTo(exact.lower(), within(1e-3 * width));
        assertThat(approximate.upper()).isCloseTo(exact.upper(), within(1e-3 * width));
    }
}
