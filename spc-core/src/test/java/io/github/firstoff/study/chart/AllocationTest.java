package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.CusumTally;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.EwmaTally;
import io.github.firstoff.stats.LagTally;
import io.github.firstoff.stats.LineTally;
import io.github.firstoff.stats.MovingRangeTally;
import java.lang.management.ManagementFactory;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the inner loops allocate, counted by the Java machine: a chart keeps its columns and makes no object per reading; a tally keeps
 * nothing. Counted as the difference between a long and a short series, so that what is allocated once does not matter, and
 * with the interpreter's and the compiler's code alike.
 */
class AllocationTest {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final int SHORT = 20_000;
    private static final int LONG = 60_000;
    /**
     * Bytes of a panel's columns: six of eight bytes, three of four and three of one. An object per reading would add 16 at the
     * least.
     */
    private static final double COLUMNS = 3 * 4 + 6 * 8 + 3;

    /** Bytes that the subgroups behind the limits take, in whole and long numbers, while limits are set. */
    private static final double BASIS = 44;

    private static double bytesPerPoint(Supplier<?> shorter, Supplier<?> longer, int points) {
        bytes(shorter);
        bytes(longer);
        return (bytes(longer) - bytes(shorter)) / (double) points;
    }

    private static long bytes(Supplier<?> work) {
        long before = THREADS.getCurrentThreadAllocatedBytes();
        Object result = work.get();
        long after = THREADS.getCurrentThreadAllocatedBytes();
        assertThat(result).isNotNull();
        return after - before;
    }

    private static long[] deviations(int n) {
        Random random = new Random(n);
        long[] d = new long[n];
        for (int i = 0; i < n; i++) {
            d[i] = Math.round(random.nextGaussian() * 40);
        }
        return d;
    }

    private static Sample sample(int n) {
        return Sample.ofDeviations(deviations(n), new Scale(new BigDecimal("25.000"), 3, Unit.MILLIMETRE));
    }

    static Stream<ChartMethod<Subgroups>> measured() {
        return ChartCatalogue.measured().stream();
    }

    /** Every kind, so that a new one is counted too; what a basis of limits keeps in arrays is 40 bytes at most. */
    @ParameterizedTest
    @MethodSource("measured")
    void chartOfMeasuredValues(ChartMethod<Subgroups> method) {
        boolean single = method.kind().equals("individuals");
        Subgroups few = single ? sample(SHORT).asIndividuals() : sample(SHORT).inSubgroupsOf(5);
        Subgroups many = single ? sample(LONG).asIndividuals() : sample(LONG).inSubgroupsOf(5);
        int panels = method.fromData(few).panels().size();
        double found =
                bytesPerPoint(() -> method.fromData(few), () -> method.fromData(many), many.count() - few.count());
        assertThat(found).as("bytes per subgroup").isLessThan(BASIS + COLUMNS * panels);
    }

    @ParameterizedTest
    @ValueSource(strings = {"ewma", "cusum", "deviation"})
    void chartOfSingles(String kind) {
        ChartMethod<Subgroups> method = ChartCatalogue.measured(kind).orElseThrow();
        Subgroups few = sample(SHORT).asIndividuals();
        Subgroups many = sample(LONG).asIndividuals();
        int panels = method.fromData(few).panels().size();
        double found = bytesPerPoint(() -> method.fromData(few), () -> method.fromData(many), LONG - SHORT);
        assertThat(found).as("bytes per reading").isLessThan(BASIS + COLUMNS * panels);
    }

    static Stream<ChartMethod<Counts>> counted() {
        return ChartCatalogue.counted().stream();
    }

    @ParameterizedTest
    @MethodSource("counted")
    void chartOfCounts(ChartMethod<Counts> method) {
        Counts few = counts(SHORT);
        Counts many = counts(LONG);
        double found = bytesPerPoint(() -> method.fromData(few), () -> method.fromData(many), LONG - SHORT);
        assertThat(found).as("bytes per count").isLessThan(BASIS + COLUMNS);
    }

    private static Counts counts(int n) {
        Random random = new Random(n);
        long[] counts = new long[n];
        for (int i = 0; i < n; i++) {
            counts[i] = 5L + random.nextInt(12);
        }
        return Counts.of(counts, 120);
    }

    /** Points in and out of every zone, but never a pattern: what is allocated for signals is another matter. */
    @ParameterizedTest
    @ValueSource(strings = {"western-electric", "unnatural", "nelson"})
    void testsOfPatterns(String set) {
        RuleSet rules = RuleCatalogue.set(set).orElseThrow();
        Panel few = quiet(SHORT);
        Panel many = quiet(LONG);
        assertThat(signals(rules, few)).isEmpty();
        double found = bytesPerPoint(() -> signals(rules, few), () -> signals(rules, many), LONG - SHORT);
        assertThat(found).as("bytes per point").isLessThan(0.1);
    }

    private static List<Signal> signals(RuleSet rules, Panel panel) {
        PanelWatch watch = rules.watch(panel.kind(), panel.nature());
        watch.next(panel);
        return watch.signals();
    }

    private static Panel quiet(int n) {
        long[] pattern = {10, 20, -10, -45, 60, 5, -70, -20, 30, -15};
        long[] d = new long[n];
        for (int i = 0; i < n; i++) {
            d[i] = pattern[i % pattern.length];
        }
        Sample sample = Sample.ofDeviations(d, new Scale(BigDecimal.ZERO, 0, Unit.MILLIMETRE));
        return new Individuals()
                .withLimits(
                        sample.asIndividuals(), new FrozenLimits("individuals", 0, 40, "stated", 99, Unit.MILLIMETRE))
                .location();
    }

    @Test
    void tallies() {
        long[] few = deviations(SHORT);
        long[] many = deviations(LONG);
        double[] fewPoints = Arrays.stream(few).asDoubleStream().toArray();
        double[] manyPoints = Arrays.stream(many).asDoubleStream().toArray();
        Map<String, Supplier<?>[]> tallies = new LinkedHashMap<>();
        tallies.put("deviations", pair(() -> DeviationTally.of(few), () -> DeviationTally.of(many)));
        tallies.put("moving ranges", pair(() -> MovingRangeTally.of(few), () -> MovingRangeTally.of(many)));
        tallies.put("lag", pair(() -> LagTally.of(few), () -> LagTally.of(many)));
        tallies.put("line", pair(() -> LineTally.ofSeries(few, 0, SHORT), () -> LineTally.ofSeries(many, 0, LONG)));
        tallies.put("ewma", pair(() -> EwmaTally.of(0.2, fewPoints), () -> EwmaTally.of(0.2, manyPoints)));
        tallies.put("cusum", pair(() -> CusumTally.of(0.5, fewPoints), () -> CusumTally.of(0.5, manyPoints)));
        tallies.forEach((name, pair) -> assertThat(bytesPerPoint(pair[0], pair[1], LONG - SHORT))
                .as(name)
                .isLessThan(0.1));
    }

    private static Supplier<?>[] pair(Supplier<?> shorter, Supplier<?> longer) {
        return new Supplier<?>[] {shorter, longer};
    }
}
