package io.github.firstoff.study.chart;

import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.RunLength;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * How long a process runs until one of a set of tests signals.
 *
 * <p>For independent normal points and known lines the tests of sides and zones remember finitely much, so that their joint
 * memory is an absorbing Markov chain (Champ and Woodall 1987, Technometrics 29, 393–399; Brook and Evans 1972, Biometrika 59);
 * it starts with no earlier points. The run length is computed from it, not simulated: relative 1e-10. The chain is built from
 * the very memories that watch charts, without what cannot matter any more.
 *
 * <p>Tests that compare neighbours (trend, alternation) remember values and not zones. They are left out of the figure, which then
 * is the run length of the others and an upper bound of that of the whole set; {@link #leftOut} names them.
 *
 * @param runLength of the tests that were counted
 * @param states how many states the chain has
 * @param leftOut the tests that were not counted
 */
public record InControlRunLength(RunLength runLength, int states, List<String> leftOut) {
    /** A chain of more states is not worth its time. */
    private static final int MOST_STATES = 2_000_000;

    /** The cells that have a probability, in order; lines themselves have none. */
    private static final int[] CELLS = {-5, -4, -3, -1, 1, 3, 4, 5};

    private static final Map<RuleSet, InControlRunLength> KNOWN = new ConcurrentHashMap<>();

    /** Copies the list. */
    public InControlRunLength {
        leftOut = List.copyOf(leftOut);
    }

    static InControlRunLength of(RuleSet rules) {
        return KNOWN.computeIfAbsent(rules, set -> shifted(set, 0));
    }

    /**
     * The run length when the process has moved by {@code shift} standard deviations of the plotted statistic.
     *
     * @throws IllegalArgumentException if the shift is not finite
     */
    public static InControlRunLength shifted(RuleSet rules, double shift) {
        if (!Double.isFinite(shift)) {
            throw new IllegalArgumentException("a shift is finite, not " + shift);
        }
        List<RunRule.ZoneMemory> memories = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        for (RunRule rule : rules.rules()) {
            if (!rule.judges(PanelNature.NORMAL)) {
                continue;
            }
            if (rule.memory().isPresent()) {
                memories.add(rule.memory().get());
            } else {
                leftOut.add(rule.id());
            }
        }
        Chain chain = new Chain(memories);
        return new InControlRunLength(
                RunLength.ofChain(chain.targets(), probabilities(shift)), chain.states(), leftOut);
    }

    /** Whether every test of the set is in the figure. */
    public boolean isComplete() {
        return leftOut.isEmpty();
    }

    /** What a sheet says of it. */
    public String sentence() {
        double average = runLength.average();
        String figure = Double.isInfinite(average)
                ? "These tests never signal on a process in control"
                : "A process in control, with normal points and known limits, gives a false signal once in "
                        + FalseSignals.points(average) + " on average";
        return isComplete()
                ? figure + "."
                : figure + ", not counting " + String.join(" and ", leftOut)
                        + ", for which there is no exact figure; with them it is more often.";
    }

    private static double[] probabilities(double shift) {
        double[] p = new double[CELLS.length];
        for (int i = 0; i < p.length; i++) {
            // the upper half holds, in order, 0 to 1, 1 to 2, 2 to 3, beyond 3; areas far out keep their digits
            int half = CELLS.length / 2;
            int sigmas = i < half ? half - 1 - i : i - half;
            double near = sigmas + (i < half ? shift : -shift);
            double beyond = Distributions.normalAbove(near);
            p[i] = sigmas == half - 1 ? beyond : beyond - Distributions.normalAbove(near + 1);
        }
        return p;
    }

    /** The joint memory of several tests, as states numbered from 0, the start. */
    private static final class Chain {
        private final List<RunRule.ZoneMemory> memories;
        private final Map<List<Long>, Integer> numbers = new HashMap<>();
        private final List<List<Long>> states = new ArrayList<>();
        private final List<int[]> targets = new ArrayList<>();

        Chain(List<RunRule.ZoneMemory> memories) {
            this.memories = memories;
            number(memories.stream().map(memory -> 0L).toList());
            for (int state = 0; state < states.size(); state++) {
                List<Long> from = states.get(state);
                targets.add(Arrays.stream(CELLS).map(cell -> target(from, cell)).toArray());
            }
        }

        private int target(List<Long> from, int cell) {
            List<Long> to = new ArrayList<>(from.size());
            for (int m = 0; m < memories.size(); m++) {
                long next = memories.get(m).next(from.get(m), cell);
                if (memories.get(m).signals(next)) {
                    return RunLength.SIGNAL;
                }
                to.add(memories.get(m).essence(next));
            }
            return number(List.copyOf(to));
        }

        private int number(List<Long> memory) {
            Integer known = numbers.get(memory);
            if (known != null) {
                return known;
            }
            if (states.size() == MOST_STATES) {
                throw new IllegalArgumentException("these tests remember too much for an exact run length");
            }
            numbers.put(memory, states.size());
            states.add(memory);
            return states.size() - 1;
        }

        int[][] targets() {
            return targets.toArray(new int[0][]);
        }

        int states() {
            return states.size();
        }
    }
}
