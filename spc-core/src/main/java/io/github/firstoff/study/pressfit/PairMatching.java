package io.github.firstoff.study.pressfit;

import java.util.Arrays;

/**
 * Which bore goes with which ring: as many pairs as can be made without leaving the allowed interference, and among those the ones
 * with the least sum of squared distances from the wanted interference. Exact, not greedy.
 *
 * <p>Sizes lie on one line, and the cost of a pair is a convex function of the difference of its sizes (infinite outside what is
 * allowed). For bores b ≤ b′ and rings r ≤ r′ the differences r − b and r′ − b′ lie between r − b′ and r′ − b and have the same
 * sum, so c(r − b) + c(r′ − b′) ≤ c(r − b′) + c(r′ − b): uncrossing two pairs never costs more and never breaks a bound.
 * Hence some best assignment keeps the order of sizes (Hoffman 1963, "On simple linear programming problems": a Monge array is solved by order), and a
 * recursion over the sorted sizes finds it in n·m steps, where the general assignment needs n³: best(i, j) is the best of
 * leaving bore i, leaving ring j, or pairing both. Counts and sums are whole numbers, so nothing is rounded.
 */
public final class PairMatching {
    private static final byte LEAVE_BORE = 1;
    private static final byte LEAVE_RING = 2;
    private static final byte PAIR = 3;

    /** More cells than that would need more memory than a shop's computer gives away. */
    private static final long MOST_CELLS = 400_000_000L;

    private PairMatching() {}

    /**
     * Assigns.
     *
     * @param bores sizes of bores in whole steps
     * @param rings sizes of rings in the same steps
     * @param least the least allowed interference, ring less bore, in steps
     * @param greatest the greatest allowed
     * @param wantedTwice twice the wanted interference in steps, so that it may lie between two steps
     * @return for each bore the index of its ring, or −1 if it is left
     * @throws IllegalArgumentException if there are more than 400 million combinations
     */
    public static int[] match(long[] bores, long[] rings, long least, long greatest, long wantedTwice) {
        int n = bores.length;
        int m = rings.length;
        if ((n + 1L) * (m + 1L) > MOST_CELLS) {
            throw new IllegalArgumentException(n + " bores and " + m + " rings are too many to match at once");
        }
        int[] boreOrder = order(bores);
        int[] ringOrder = order(rings);
        byte[][] choice = new byte[n + 1][m + 1];
        int[] count = new int[m + 1];
        long[] cost = new long[m + 1];
        for (int i = 1; i <= n; i++) {
            int diagonalCount = count[0];
            long diagonalCost = cost[0];
            for (int j = 1; j <= m; j++) {
                int bestCount = count[j];
                long bestCost = cost[j];
                byte best = LEAVE_BORE;
                if (better(count[j - 1], cost[j - 1], bestCount, bestCost)) {
                    bestCount = count[j - 1];
                    bestCost = cost[j - 1];
                    best = LEAVE_RING;
                }
                long interference = Math.subtractExact(rings[ringOrder[j - 1]], bores[boreOrder[i - 1]]);
                if (interference >= least && interference <= greatest) {
                    long off = Math.subtractExact(Math.multiplyExact(2L, interference), wantedTwice);
                    long paired = Math.addExact(diagonalCost, Math.multiplyExact(off, off));
                    if (better(diagonalCount + 1, paired, bestCount, bestCost)) {
                        bestCount = diagonalCount + 1;
                        bestCost = paired;
                        best = PAIR;
                    }
                }
                choice[i][j] = best;
                diagonalCount = count[j];
                diagonalCost = cost[j];
                count[j] = bestCount;
                cost[j] = bestCost;
            }
        }
        int[] partner = new int[n];
        Arrays.fill(partner, -1);
        int i = n;
        int j = m;
        while (i > 0 && j > 0) {
            switch (choice[i][j]) {
                case PAIR -> {
                    partner[boreOrder[i - 1]] = ringOrder[j - 1];
                    i--;
                    j--;
                }
                case LEAVE_RING -> j--;
                default -> i--;
            }
        }
        return partner;
    }

    private static boolean better(int count, long cost, int thanCount, long thanCost) {
        return count > thanCount || (count == thanCount && cost < thanCost);
    }

    private static int[] order(long[] sizes) {
        Integer[] order = new Integer[sizes.length];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
        }
        Arrays.sort(order, (a, b) -> sizes[a] != sizes[b] ? Long.compare(sizes[a], sizes[b]) : Integer.compare(a, b));
        int[] plain = new int[order.length];
        for (int i = 0; i < plain.length; i++) {
            plain[i] = order[i];
        }
        return plain;
    }
}
