package io.github.firstoff.study.pressfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The assignment against every possible one, against the general method, and its laws. */
class PairMatchingTest {
    private static final long SEED = 97;

    private record Value(int pairs, long cost) {
        boolean betterThan(Value other) {
            return pairs > other.pairs || (pairs == other.pairs && cost < other.cost);
        }
    }

    private static Value value(long[] bores, long[] rings, int[] partner, long least, long greatest, long twice) {
        boolean[] taken = new boolean[rings.length];
        int pairs = 0;
        long cost = 0;
        for (int i = 0; i < bores.length; i++) {
            if (partner[i] >= 0) {
                assertThat(taken[partner[i]]).isFalse();
                taken[partner[i]] = true;
                long interference = rings[partner[i]] - bores[i];
                assertThat(interference).isBetween(least, greatest);
                pairs++;
                cost += (2 * interference - twice) * (2 * interference - twice);
            }
        }
        return new Value(pairs, cost);
    }

    private static Value brute(
            long[] bores, long[] rings, int i, boolean[] taken, long least, long greatest, long twice) {
        if (i == bores.length) {
            return new Value(0, 0);
        }
        Value best = brute(bores, rings, i + 1, taken, least, greatest, twice);
        for (int j = 0; j < rings.length; j++) {
            long interference = rings[j] - bores[i];
            if (!taken[j] && interference >= least && interference <= greatest) {
                taken[j] = true;
                Value rest = brute(bores, rings, i + 1, taken, least, greatest, twice);
                taken[j] = false;
                long off = 2 * interference - twice;
                Value here = new Value(rest.pairs + 1, rest.cost + off * off);
                best = here.betterThan(best) ? here : best;
            }
        }
        return best;
    }

    @Test
    void smallSets_equalTheBestOfAllAssignments() {
        SplittableRandom random = new SplittableRandom(SEED);
        int bounded = 0;
        for (int trial = 0; trial < 1500; trial++) {
            long[] bores = random.longs(random.nextInt(0, 7), 0, 25).toArray();
            long[] rings = random.longs(random.nextInt(0, 7), 10, 40).toArray();
            long least = random.nextInt(0, 20);
            long greatest = least + random.nextInt(0, 25);
            long twice = 2 * least + random.nextInt(-3, 50);

            int[] partner = PairMatching.match(bores, rings, least, greatest, twice);

            Value expected = brute(bores, rings, 0, new boolean[rings.length], least, greatest, twice);
            assertThat(value(bores, rings, partner, least, greatest, twice)).isEqualTo(expected);
            bounded += expected.pairs < Math.min(bores.length, rings.length) ? 1 : 0;
        }
        assertThat(bounded).as("sets in which a bound leaves pieces over").isGreaterThan(200);
    }

    /** The Hungarian method knows nothing of lines and order: an independent answer for larger sets. */
    @Test
    void middleSets_equalTheGeneralMethod() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int trial = 0; trial < 20; trial++) {
            int n = 20 + random.nextInt(40);
            long[] bores = random.longs(n, 0, 300).toArray();
            long[] rings = random.longs(n, 100, 420).toArray();
            long least = 60;
            long greatest = 160;
            long twice = 211;

            Value found = value(
                    bores, rings, PairMatching.match(bores, rings, least, greatest, twice), least, greatest, twice);

            // leaving a pair costs more than any sum of costs, so that the number of pairs goes first
            double leave = 1e9;
            double[][] cost = new double[n + 1][n + 1];
            for (int i = 1; i <= n; i++) {
                for (int j = 1; j <= n; j++) {
                    long interference = rings[j - 1] - bores[i - 1];
                    long off = 2 * interference - twice;
                    cost[i][j] = interference >= least && interference <= greatest ? (double) off * off : leave;
                }
            }
            double total = hungarian(cost, n);
            assertThat((n - found.pairs) * leave + found.cost).isEqualTo(total);
        }
    }

    /** Kuhn's method in the form of shortest augmenting paths, O(n³); sums of whole numbers below 2⁵³ are exact. */
    private static double hungarian(double[][] cost, int n) {
        double[] u = new double[n + 1];
        double[] v = new double[n + 1];
        int[] match = new int[n + 1];
        for (int i = 1; i <= n; i++) {
            match[0] = i;
            int j0 = 0;
            double[] least = new double[n + 1];
            int[] way = new int[n + 1];
            boolean[] used = new boolean[n + 1];
            Arrays.fill(least, Double.POSITIVE_INFINITY);
            do {
                used[j0] = true;
                int i0 = match[j0];
                int j1 = 0;
                double delta = Double.POSITIVE_INFINITY;
                for (int j = 1; j <= n; j++) {
                    if (!used[j]) {
                        double here = cost[i0][j] - u[i0] - v[j];
                        if (here < least[j]) {
                            least[j] = here;
                            way[j] = j0;
                        }
                        if (least[j] < delta) {
                            delta = least[j];
                            j1 = j;
                        }
                    }
                }
                for (int j = 0; j <= n; j++) {
                    if (used[j]) {
                        u[match[j]] += delta;
                        v[j] -= delta;
                    } else {
                        least[j] -= delta;
                    }
                }
                j0 = j1;
            } while (match[j0] != 0);
            do {
                int j1 = way[j0];
                match[j0] = match[j1];
                j0 = j1;
            } while (j0 != 0);
        }
        double total = 0;
        for (int j = 1; j <= n; j++) {
            total += cost[match[j]][j];
        }
        return total;
    }

    /** Greedy pairing of each bore with its nearest ring is what a bench would do; it can only be worse. */
    @Test
    void isNeverWorseThanGreed() {
        SplittableRandom random = new SplittableRandom(5);
        int worse = 0;
        for (int trial = 0; trial < 200; trial++) {
            long[] bores = random.longs(30, 0, 60).toArray();
            long[] rings = random.longs(30, 30, 90).toArray();
            Value found = value(bores, rings, PairMatching.match(bores, rings, 10, 55, 61), 10, 55, 61);
            boolean[] taken = new boolean[rings.length];
            int[] greedy = new int[bores.length];
            for (int i = 0; i < bores.length; i++) {
                greedy[i] = -1;
                long least = Long.MAX_VALUE;
                for (int j = 0; j < rings.length; j++) {
                    long interference = rings[j] - bores[i];
                    if (!taken[j]
                            && interference >= 10
                            && interference <= 55
                            && Math.abs(2 * interference - 61) < least) {
                        least = Math.abs(2 * interference - 61);
                        greedy[i] = j;
                    }
                }
                if (greedy[i] >= 0) {
                    taken[greedy[i]] = true;
                }
            }
            Value bench = value(bores, rings, greedy, 10, 55, 61);
            assertThat(bench.betterThan(found)).isFalse();
            worse += found.betterThan(bench) ? 1 : 0;
        }
        assertThat(worse).isGreaterThan(150);
    }

    @Test
    @Timeout(20)
    void twoThousandByTwoThousand_isFast() {
        SplittableRandom random = new SplittableRandom(SEED);
        long[] bores = random.longs(2000, 0, 300).toArray();
        long[] rings = random.longs(2000, 200, 520).toArray();
        long begin = System.nanoTime();

        int[] partner = PairMatching.match(bores, rings, 120, 320, 401);

        Duration taken = Duration.ofNanos(System.nanoTime() - begin);
        assertThat(value(bores, rings, partner, 120, 320, 401).pairs).isGreaterThan(1900);
        // 4 million steps; two seconds leave room for a busy machine
        assertThat(taken).isLessThan(Duration.ofSeconds(2));
    }
}
