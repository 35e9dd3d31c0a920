package io.github.firstoff.sample;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Counts in the order in which they were taken: nonconforming pieces among so many inspected, or nonconformities on so much
 * area of opportunity. Immutable.
 *
 * @param data the counts as single readings in whole steps of 1, with labels, breaks and exclusions
 * @param sizes how much each count was found on, above 0: pieces inspected, or area of opportunity in any one unit
 */
public record Counts(Subgroups data, List<BigDecimal> sizes) {
    private static final int MOST_PLACES = 6;
    private static final long MILLION = 1_000_000;

    /** Checks that every count has a size and none is below 0. */
    public Counts {
        sizes = List.copyOf(sizes);
        if (sizes.size() != data.count()) {
            throw new IllegalArgumentException("one size per count: " + sizes.size() + " sizes for " + data.count());
        }
        for (int i = 0; i < sizes.size(); i++) {
            BigDecimal size = sizes.get(i);
            if (data.size(i) != 1 || data.deviation(i, 0) < 0) {
                throw new IllegalArgumentException("count " + data.number(i) + " is not a single count of 0 or more");
            }
            if (size.signum() <= 0
                    || size.stripTrailingZeros().scale() > MOST_PLACES
                    || size.precision() - size.scale() > 9) {
                throw new IllegalArgumentException("the size of count " + data.number(i)
                        + " is above 0, below a thousand" + " million and has at most " + MOST_PLACES
                        + " decimal places, not " + size.toPlainString());
            }
        }
    }

    /**
     * Counts with a size each.
     *
     * @throws IllegalArgumentException if a count is below 0, or a size not above 0
     */
    public static Counts of(long[] counts, List<BigDecimal> sizes) {
        Sample sample = Sample.ofDeviations(counts, new Scale(BigDecimal.ZERO, 0, Unit.NONE));
        return new Counts(sample.asIndividuals(), sizes);
    }

    /** Counts on the same size each. */
    public static Counts of(long[] counts, int size) {
        List<BigDecimal> sizes = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            sizes.add(BigDecimal.valueOf(size));
        }
        return of(counts, sizes);
    }

    /**
     * Nonconforming pieces in subgroups: readings that failed are 1, others 0.
     *
     * @param passFail a grouped sample of ones and zeros
     * @throws IllegalArgumentException if a reading is neither 0 nor 1
     */
    public static Counts ofFailures(Subgroups passFail) {
        long[] counts = new long[passFail.count()];
        List<BigDecimal> sizes = new ArrayList<>();
        for (int g = 0; g < counts.length; g++) {
            for (int m = 0; m < passFail.size(g); m++) {
                BigDecimal value = passFail.sample().exactValue(passFail.reading(g, m));
                if (value.signum() != 0 && value.compareTo(BigDecimal.ONE) != 0) {
                    throw new IllegalArgumentException("a reading passes (0) or fails (1), it is not " + value);
                }
                counts[g] += value.signum();
            }
            sizes.add(BigDecimal.valueOf(passFail.size(g)));
        }
        return of(counts, sizes)
                .withData(data -> data.breakingBefore(passFail.breaks()).excluding(passFail.exclusions()));
    }

    /** The same counts with other marks, for example breaks. */
    public Counts withData(UnaryOperator<Subgroups> marking) {
        return new Counts(marking.apply(data), sizes);
    }

    /** The counts {@code from} (inclusive) to {@code to} (exclusive), counted from 0. */
    public Counts part(int from, int to) {
        return new Counts(data.part(from, to), sizes.subList(from, to));
    }

    /** Count {@code i}, from 0. */
    public long count(int i) {
        return data.deviation(i, 0);
    }

    /** The size of count {@code i} in millionths, whole: for exact comparisons. */
    public long sizeInMillionths(int i) {
        BigDecimal size = sizes.get(i);
        // pieces are whole: no new number each time
        return size.scale() == 0
                ? Math.multiplyExact(size.longValueExact(), MILLION)
                : size.movePointRight(MOST_PLACES).longValueExact();
    }

    /** The size of count {@code i}, rounded once. */
    public double size(int i) {
        return sizes.get(i).doubleValue();
    }

    /** Whether every size is a whole number. */
    public boolean areWhole() {
        return sizes.stream()
                .allMatch(size -> size.scale() <= 0 || size.stripTrailingZeros().scale() <= 0);
    }

    /** Whether all sizes are the same. */
    public boolean haveOneSize() {
        return sizes.stream().allMatch(size -> size.compareTo(sizes.get(0)) == 0);
    }
}
