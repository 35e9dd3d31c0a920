package io.github.firstoff.study.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Forecast and advice: against a series reckoned with base R, by hand where it can be done by hand, and by simulated coverage. */
class DriftStudyTest {
    private static final double ROOT = 1e-6;
    private static final Bounds HUNDREDTHS = Bounds.between(new BigDecimal("9.970"), new BigDecimal("10.030"));

    /** The series of {@code reference/drift/drift.R}. */
    private static final long[] WEAR = {2, 3, 5, 4, 7, 9, 8, 11, 12, 15};

    private static DriftData data(long[] deviations, Bounds bounds, int... starts) {
        return data(deviations, LongStream.rangeClosed(1, deviations.length).toArray(), bounds, false, starts);
    }

    private static DriftData data(long[] deviations, long[] pieces, Bounds bounds, boolean detect, int... starts) {
        List<Start> all = new ArrayList<>();
        all.add(Start.stated(0, Start.Cause.FIRST, Remark.verbatim("tool 1"), Remark.verbatim("the readings begin")));
        for (int start : starts) {
            all.add(Start.stated(
                    start,
                    Start.Cause.STATED,
                    Remark.verbatim("tool at " + start),
                    Remark.verbatim("the tool changes")));
        }
        Sample sample = Sample.ofDeviations(deviations, new Scale(new BigDecimal("10"), 3, Unit.MILLIMETRE));
        return new DriftData(sample, pieces, all, detect, bounds, bounds);
    }

    @Test
    void forecast_ofASeriesReckonedWithR() {
        Drift drift = DriftStudy.withDefaults().analyse(data(WEAR, HUNDREDTHS));
        Forecast forecast = drift.forecast();
        // source: drift.R, crossing 3 and single reaches
        assertThat(forecast.piece().orElseThrow()).isCloseTo(19.7421513645113, within(ROOT));
        assertThat(forecast.interval().orElseThrow().lower()).isCloseTo(16.4522132663856, within(ROOT));
        assertThat(forecast.interval().orElseThrow().upper()).isCloseTo(22.5884134099729, within(ROOT));
        assertThat(forecast.singlePiece().orElseThrow()).isCloseTo(18.8640856830711, within(ROOT));
        assertThat(forecast.limit()).contains(new BigDecimal("10.030"));
        assertThat(forecast.lastGoodPiece()).isEqualTo(19);
        assertThat(forecast.remaining()).isEqualTo(9);
        assertThat(forecast.isReached()).isFalse();
        Drift.Trend trend = drift.current().trend().orElseThrow();
        assertThat(trend.slope()).isCloseTo(0.00135757575757543, within(1e-12));
        assertThat(trend.residualStandardDeviation()).isCloseTo(0.00102173352393911, within(1e-12));
    }

    /** By hand: the line puts piece 11 at 10.0150667, so −0.015 to the middle; 0.06 − 6·1.33·0.00102173 leaves 38 pieces. */
    @Test
    void advice_byHand() {
        Advice advice =
                DriftStudy.withDefaults().analyse(data(WEAR, HUNDREDTHS)).advice();
        assertThat(advice.levelNow().orElseThrow()).isCloseTo(10.0150666667, within(1e-9));
        assertThat(advice.offset().orElseThrow()).isEqualByComparingTo("-0.015");
        assertThat(advice.toolLife()).hasValue(38);
        // 10 − 0.00135757576·38/2 = 9.974206
        assertThat(advice.recentreTo().orElseThrow()).isEqualByComparingTo("9.974");
        assertThat(advice.recentreOffset().orElseThrow()).isEqualByComparingTo("-0.041");
        assertThat(advice.indexPerPiece().orElseThrow())
                .isCloseTo(0.00135757575757543 / (3 * 0.00102173352393911), within(1e-9));
        assertThat(advice.indexNow().orElseThrow())
                .isCloseTo((10.03 - 10.0150666666667) / (3 * 0.00102173352393911), within(1e-6));
    }

    @Test
    void advice_isRoundedToTheMachinesIncrement() {
        DriftStudy study = new DriftStudy(DriftSettings.withDefaults().withIncrement(new BigDecimal("0.002")));
        Advice advice = study.analyse(data(WEAR, HUNDREDTHS)).advice();
        assertThat(advice.offset().orElseThrow()).isEqualByComparingTo("-0.016");
        assertThat(advice.recentreTo().orElseThrow()).isEqualByComparingTo("9.974");
    }

    @Test
    void mirroredReadings_mirrorForecastAndAdvice() {
        long[] falling = LongStream.of(WEAR).map(value -> -value).toArray();
        Drift up = DriftStudy.withDefaults().analyse(data(WEAR, HUNDREDTHS));
        Drift down = DriftStudy.withDefaults().analyse(data(falling, HUNDREDTHS));
        assertThat(down.forecast().piece().orElseThrow())
                .isCloseTo(up.forecast().piece().orElseThrow(), within(ROOT));
        assertThat(down.forecast().side()).isEqualTo(-1);
        assertThat(down.forecast().interval().orElseThrow().upper())
                .isCloseTo(up.forecast().interval().orElseThrow().upper(), within(ROOT));
        assertThat(down.advice().offset().orElseThrow())
                .isEqualByComparingTo(up.advice().offset().orElseThrow().negate());
        assertThat(down.advice().toolLife()).isEqualTo(up.advice().toolLife());
        assertThat(down.advice().recentreTo().orElseThrow()).isEqualByComparingTo("10.026");
    }

    @Test
    void piecesThatWereNotMeasured_countInTheSlope() {
        long[] everyFifth = LongStream.rangeClosed(1, 10).map(i -> 5 * i - 4).toArray();
        Drift drift = DriftStudy.withDefaults().analyse(data(WEAR, everyFifth, HUNDREDTHS, false));
        assertThat(drift.current().trend().orElseThrow().slope()).isCloseTo(0.00135757575757543 / 5, within(1e-12));
        assertThat(drift.forecast().piece().orElseThrow()).isCloseTo(5 * 19.7421513645113 - 4, within(1e-5));
    }

    @Test
    void newTool_borrowsTheSlopeOfTheOthers_whileItsOwnIsNotShown() {
        long[] readings = {2, 3, 5, 4, 7, 9, 8, 11, 12, 15, 1, 3, 2, 5, 6, 8, 9, 10, 12, 13, 1, 3, 3};
        Drift drift = DriftStudy.withDefaults().analyse(data(readings, HUNDREDTHS, 10, 20));
        assertThat(drift.forecast().pooled()).isTrue();
        assertThat(drift.forecast().cautions()).anyMatch(each -> each.contains("slope is that of all stretches"));
        assertThat(drift.forecast().lastPiece()).isEqualTo(23);
        assertThat(drift.forecast().remaining()).isBetween(10L, 22L);
        assertThat(drift.segments()).hasSize(3);
        // the second stretch begins about 15 below the end of the first
        Drift.Jump jump = drift.segments().get(1).jump().orElseThrow();
        assertThat(jump.interval().lower()).isLessThan(-0.014);
        assertThat(jump.interval().upper()).isGreaterThan(-0.016);
        assertThat(jump.significance()).isLessThan(1e-6);
    }

    @Test
    void slopesThatDiffer_lendNothing() {
        long[] readings = {2, 3, 5, 4, 7, 9, 8, 11, 12, 15, 1, 5, 8, 13, 16, 21, 25, 28, 33, 36, 1, 3, 3};
        Forecast forecast = DriftStudy.withDefaults()
                .analyse(data(readings, HUNDREDTHS, 10, 20))
                .forecast();
        assertThat(forecast.piece()).isEmpty();
        assertThat(forecast.reason()).contains("3 readings").contains("do not agree on one slope");
    }

    @Test
    void withoutASlopeThatIsShown_noForecast() {
        long[] still = {1, -1, 2, 0, -2, 1, 0, -1, 1, 0, 2, -2};
        Drift drift = DriftStudy.withDefaults().analyse(data(still, HUNDREDTHS));
        assertThat(drift.forecast().reason()).contains("not distinguishable from none");
        assertThat(drift.advice().offset().orElseThrow()).isEqualByComparingTo("0");
        assertThat(drift.advice().toolLife()).isEmpty();
        assertThat(drift.advice().notes()).anyMatch(each -> each.contains("leave the offset alone"));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 7})
    void tooFewReadings_noForecast(int count) {
        Drift drift = DriftStudy.withDefaults().analyse(data(java.util.Arrays.copyOf(WEAR, count), HUNDREDTHS));
        assertThat(drift.forecast().piece()).isEmpty();
        assertThat(drift.forecast().reason())
                .contains(count == 1 ? "one reading" : count + " readings")
                .contains("at least 8");
    }

    @Test
    void limitsThatDoNotLieAhead_endNothing() {
        Drift drift = DriftStudy.withDefaults().analyse(data(WEAR, Bounds.atLeast(new BigDecimal("9.970"))));
        assertThat(drift.forecast().reason()).contains("there is no upper limit");
        assertThat(drift.advice().offset()).isEmpty();
        assertThat(drift.advice().toolLife()).isEmpty();
        Drift roughness = DriftStudy.withDefaults().analyse(data(WEAR, Bounds.fromZeroTo(new BigDecimal("10.030"))));
        assertThat(roughness.forecast().piece()).isPresent();
        assertThat(roughness.advice().recentreTo()).isEmpty();
        // (10.030 − 10.0150667 − 3·1.33·0.00102173)/0.00135757 = 7.997
        assertThat(roughness.advice().toolLife()).hasValue(7);
    }

    @Test
    void limitMetAlready_isSaidSo() {
        Drift drift = DriftStudy.withDefaults()
                .analyse(data(WEAR, Bounds.between(new BigDecimal("9.990"), new BigDecimal("10.012"))));
        assertThat(drift.forecast().isReached()).isTrue();
        assertThat(drift.forecast().singlePiece()).hasValue(11);
        assertThat(drift.advice().toolLife().orElseThrow()).isGreaterThan(0);
    }

    @Test
    void readingsOnALineExactly_haveNoBounds() {
        Drift drift =
                DriftStudy.withDefaults().analyse(data(LongStream.range(0, 12).toArray(), HUNDREDTHS));
        assertThat(drift.forecast().reason()).contains("do not spread");
        assertThat(drift.advice().offset()).isEmpty();
    }

    @Test
    void curvedWear_isCautioned() {
        long[] curved = IntStream.range(0, 30)
                .mapToLong(i -> Math.round(0.04 * i * i) + i % 2)
                .toArray();
        Drift drift = DriftStudy.withDefaults().analyse(data(curved, HUNDREDTHS));
        assertThat(drift.current().trend().orElseThrow().runs().isSlow()).isTrue();
        assertThat(drift.forecast().cautions()).anyMatch(each -> each.contains("not a straight line"));
    }

    @Test
    void changePoints_areFoundWhereNothingIsStated() {
        Random random = new Random(3);
        long[] readings = new long[90];
        for (int i = 0; i < readings.length; i++) {
            readings[i] = Math.round(0.4 * (i % 45) + 1.5 * random.nextGaussian());
        }
        Drift drift = DriftStudy.withDefaults()
                .analyse(data(readings, LongStream.rangeClosed(1, 90).toArray(), HUNDREDTHS, true));
        assertThat(drift.segments()).hasSize(2);
        assertThat(drift.segments().get(1).from()).isBetween(43, 47);
        assertThat(drift.segments().get(1).start().cause()).isEqualTo(Start.Cause.DETECTED);
        assertThat(drift.segments().get(1).start().evidence()).isPresent();
    }

    @Test
    void contradictoryData_isRefused() {
        assertThatThrownBy(() -> data(WEAR, HUNDREDTHS, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> data(WEAR, LongStream.range(0, 9).toArray(), HUNDREDTHS, false))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DriftSettings.withDefaults().withIncrement(BigDecimal.ZERO))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DriftSettings.withDefaults().withSigmas(-1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** 4,000 series of 30 and of 12 pieces: how often the bounds hold the true piece where the limit is met. */
    @ParameterizedTest
    @ValueSource(ints = {12, 30})
    @Tag("slow")
    void forecastBounds_holdAsOftenAsTheyClaim(int n) {
        Random random = new Random(95 + n);
        double slope = 300;
        double sigma = 1000;
        double limit = 30_000;
        double truth = (limit - 3 * sigma) / slope;
        int forecasts = 0;
        int held = 0;
        int singles = 0;
        int series = 4000;
        Bounds bounds = Bounds.between(new BigDecimal("-20"), new BigDecimal("40"));
        for (int run = 0; run < series; run++) {
            long[] readings = new long[n];
            for (int i = 0; i < n; i++) {
                readings[i] = Math.round(slope * (i + 1) + sigma * random.nextGaussian());
            }
            Forecast forecast =
                    DriftStudy.withDefaults().analyse(data(readings, bounds)).forecast();
            if (forecast.piece().isEmpty()) {
                continue;
            }
            forecasts++;
            held += forecast.interval().orElseThrow().lower() <= truth
                            && truth <= forecast.interval().orElseThrow().upper()
                    ? 1
                    : 0;
            double next = slope * (n + 1) + sigma * random.nextGaussian();
            double[] band = {
                forecast.line().orElseThrow().predictionInterval(n + 1, 0.95).lower(),
                forecast.line().orElseThrow().predictionInterval(n + 1, 0.95).upper()
            };
            singles += band[0] <= next && next <= band[1] ? 1 : 0;
        }
        double error = Math.sqrt(0.95 * 0.05 / forecasts);
        System.out.printf(
                java.util.Locale.ROOT,
                "n = %d: %d of %d series forecast; bounds held %.4f, single next piece %.4f, each give or take %.4f%n",
                n,
                forecasts,
                series,
                (double) held / forecasts,
                (double) singles / forecasts,
                error);
        // as many slopes are shown as the power of the t test says
        double shift = slope / sigma * Math.sqrt(n * (n * (double) n - 1) / 12);
        double student = io.github.firstoff.stats.Distributions.studentTQuantile(0.975, n - 2);
        double power = 1
                - io.github.firstoff.stats.NoncentralT.probability(student, n - 2, shift)
                + io.github.firstoff.stats.NoncentralT.probability(-student, n - 2, shift);
        assertThat((double) forecasts / series)
                .isCloseTo(power, within(4 * Math.sqrt(power * (1 - power) / series) + 1e-9));
        assertThat((double) held / forecasts).isCloseTo(0.95, within(4 * error));
        assertThat((double) singles / forecasts).isCloseTo(0.95, within(4 * error));
    }
}
