package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.RunLength;
import io.github.firstoff.stats.StepChain;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * How long a process runs until one of a set of tests signals.
 *
 * <p>For independent normal points and known lines the tests of sides and zones remember finitely much, so that their joint
 * memory is an absorbing Markov chain (Champ and Woodall 1987, Technometrics 29, 393–399; Brook and Evans 1972, Biometrika 59);
 * it starts with no earlier points. Tests of steps (trend, alternation) remember finitely many steps besides the last value, whose
 * density within its zone is carried along ({@link StepChain}). The run length is computed, not simulated: relative 1e-9 or
 * better. The chain is built from the very memories that watch charts, without what cannot matter any more.
 *
 * @param runLength of the tests that were counted
 * @param states how many states the chain has
 * @param leftOut the tests that could not be counted, because they tell nothing of what they remember; the figure then is an
 *     upper bound
 */
public record InControlRunLength(RunLength runLength, int states, List<String> leftOut) {
    /** A chain of more states is not worth its time. */
    private static final int MOST_STATES = 200_000;

    /** The cells that have a probability, in order; lines themselves have none. */
    private static final int[] CELLS = {-5, -4, -3, -1, 1, 3, 4, 5};

    /** Lines included, for points that can lie on one. */
    private static final int[] ALL_CELLS = {-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5};

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
     * @throws IllegalArgumentException if the shift is not finite, or the tests together remember more than 200,000 states
     */
    public static InControlRunLength shifted(RuleSet rules, double shift) {
        if (!Double.isFinite(shift)) {
            throw new IllegalArgumentException("a shift is finite, not " + shift);
        }
        List<RunRule.ZoneMemory> zones = new ArrayList<>();
        List<RunRule.StepMemory> steps = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        for (RunRule rule : rules.rules()) {
            if (!rule.judges(PanelNature.NORMAL)) {
                continue;
            }
            rule.memory().ifPresent(zones::add);
            rule.steps().ifPresent(steps::add);
            if (rule.memory().isEmpty() && rule.steps().isEmpty()) {
                leftOut.add(rule.id());
            }
        }
        Chain chain = new Chain(CELLS, zones, steps);
        RunLength length = steps.isEmpty()
                ? RunLength.ofChain(chain.targets(1), probabilities(shift))
                : StepChain.runLength(chain.targets(1), chain.targets(-1), chain.cells(), probabilities(shift));
        return new InControlRunLength(length, chain.states(), leftOut);
    }

    /**
     * The run length of independent points that fall into cells with given probabilities, for example counts.
     *
     * <p>Tests of steps are left out: counts repeat, and a step between equal counts is none.
     *
     * @param points what the points are to a test
     * @param probabilities of the cells −5 to 5 of {@link RunRule.ZoneMemory}, in this order; they sum to 1
     */
    static InControlRunLength ofCells(RuleSet rules, PanelNature points, double[] probabilities) {
        List<RunRule.ZoneMemory> zones = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        for (RunRule rule : rules.rules()) {
            if (rule.judges(points)) {
                rule.memory().ifPresentOrElse(zones::add, () -> leftOut.add(rule.id()));
            }
        }
        Chain chain = new Chain(ALL_CELLS, zones, List.of());
        return new InControlRunLength(RunLength.ofChain(chain.targets(1), probabilities), chain.states(), leftOut);
    }

    /** Whether every test of the set is in the figure. */
    public boolean isComplete() {
        return leftOut.isEmpty();
    }

    /** What a sheet says of it. */
    public Remark remark() {
        double average = runLength.average();
        boolean never = Double.isInfinite(average);
        String figure = never ? "" : FalseSignals.figure(average);
        return isComplete()
                ? Remark.of(
                        "false-signals.normal",
                        "{0|These tests never signal on a process in control|A process in control, with normal points and known"
                                + " limits, gives a false signal once in {1} points on average}.",
                        never,
                        figure)
                : Remark.of(
                        "false-signals.normal-without",
                        "{0|These tests never signal on a process in control|A process in control, with normal points and known"
                                + " limits, gives a false signal once in {1} points on average}, not counting {2}, for which there is"
                                + " no exact figure; with them it is more often.",
                        never,
                        figure,
                        listed(leftOut));
    }

    /** The same in English. */
    public String sentence() {
        return remark().english();
    }

    /** Names of tests with an "and" between them. */
    static Remark listed(List<String> tests) {
        Remark all = Remark.verbatim(tests.get(0));
        for (String next : tests.subList(1, tests.size())) {
            all = Remark.of("list.both", "{0} and {1}", all, next);
        }
        return all;
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
        private final int[] outcomes;
        private final List<RunRule.ZoneMemory> zones;
        private final List<RunRule.StepMemory> steps;
        private final Map<State, Integer> numbers = new HashMap<>();
        private final List<State> states = new ArrayList<>();
        private final List<int[]> upwards = new ArrayList<>();
        private final List<int[]> downwards = new ArrayList<>();

        /** What tests remember, and in which cell (by its place) the last point lies where steps matter; −1: there is none. */
        private record State(List<Long> zones, List<Integer> steps, int cell) {}

        Chain(int[] outcomes, List<RunRule.ZoneMemory> zones, List<RunRule.StepMemory> steps) {
            this.outcomes = outcomes;
            this.zones = zones;
            this.steps = steps;
            number(new State(
                    zones.stream().map(zone -> 0L).toList(),
                    steps.stream().map(step -> 0).toList(),
                    -1));
            for (int state = 0; state < states.size(); state++) {
                State from = states.get(state);
                int[] up = new int[outcomes.length];
                int[] down = new int[outcomes.length];
                for (int cell = 0; cell < outcomes.length; cell++) {
                    boolean first = from.cell < 0;
                    // a step against the order of the cells cannot happen, and needs no state
                    up[cell] = cell >= from.cell ? target(from, cell, first ? 0 : 1) : RunLength.SIGNAL;
                    down[cell] = first || steps.isEmpty()
                            ? up[cell]
                            : cell <= from.cell ? target(from, cell, -1) : RunLength.SIGNAL;
                }
                upwards.add(up);
                downwards.add(down);
            }
        }

        private int target(State from, int cell, int step) {
            List<Long> nextZones = new ArrayList<>(zones.size());
            for (int m = 0; m < zones.size(); m++) {
                long next = zones.get(m).next(from.zones.get(m), outcomes[cell]);
                if (zones.get(m).signals(next)) {
                    return RunLength.SIGNAL;
                }
                nextZones.add(zones.get(m).essence(next));
            }
            List<Integer> nextSteps = new ArrayList<>(steps.size());
            for (int m = 0; m < steps.size(); m++) {
                int next = steps.get(m).next(from.steps.get(m), step);
                if (steps.get(m).signals(next)) {
                    return RunLength.SIGNAL;
                }
                nextSteps.add(next);
            }
            return number(new State(List.copyOf(nextZones), List.copyOf(nextSteps), steps.isEmpty() ? -1 : cell));
        }

        private int number(State state) {
            Integer known = numbers.get(state);
            if (known != null) {
                return known;
            }
            if (states.size() == MOST_STATES) {
                throw new IllegalArgumentException("these tests remember too much for an exact run length");
            }
            numbers.put(state, states.size());
            states.add(state);
            return states.size() - 1;
        }

        int[][] targets(int step) {
            return (step > 0 ? upwards : downwards).toArray(new int[0][]);
        }

        int[] cells() {
            return states.stream().mapToInt(state -> state.cell).toArray();
        }

        int states() {
            return states.size();
        }
    }
}
