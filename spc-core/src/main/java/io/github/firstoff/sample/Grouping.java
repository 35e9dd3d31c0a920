package io.github.firstoff.sample;

import io.github.firstoff.remark.Remark;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How readings are cut into subgroups: by n consecutive, by label, by window of time; whether an incomplete last subgroup is
 * kept; and where the process changed phase, which no subgroup of consecutive or timed readings straddles. Immutable.
 *
 * <p>A subgroup is incomplete if it is the last (of its phase) and smaller than its full size: n for consecutive readings, and
 * for labels and windows the size that all others share. Where the others differ among themselves nothing tells what is
 * complete, and the last stays.
 */
public final class Grouping {
    private final Way way;
    private final boolean keep;
    private final List<String> phases;

    /** Gives every reading the key of its subgroup: equal keys, one subgroup. */
    private interface Way {
        /** The keys of readings {@code from} to {@code to} of one phase. */
        List<String> keys(int from, int to);

        /** The size of a complete subgroup, if it is fixed. */
        Optional<Integer> fullSize();

        /** The label of a subgroup, if it has one. */
        boolean isLabelled();

        /** How many readings it can serve; −1: any number. */
        int readings();
    }

    private Grouping(Way way, boolean keep, List<String> phases) {
        this.way = way;
        this.keep = keep;
        this.phases = phases;
    }

    /**
     * Subgroups of {@code size} consecutive readings.
     *
     * @throws IllegalArgumentException if {@code size} is less than 1
     */
    public static Grouping consecutive(int size) {
        if (size < 1) {
            throw new IllegalArgumentException("a subgroup holds at least one reading, not " + size);
        }
        return new Grouping(new Consecutive(size), false, List.of());
    }

    /** Subgroups by label, in the order in which the labels first appear; one label per reading. */
    public static Grouping labelled(List<String> labels) {
        return new Grouping(new Labelled(List.copyOf(labels)), false, List.of());
    }

    /**
     * Subgroups by window of time: all readings from {@code origin} + i {@code window} up to but not including
     * {@code origin} + (i + 1) {@code window} make one; windows without a reading make none.
     *
     * @param times one time per reading, in order
     * @param window its length; above 0
     * @param origin where a window begins
     * @throws IllegalArgumentException if the times are not in order or the window is not above 0
     */
    public static Grouping timed(List<Instant> times, Duration window, Instant origin) {
        if (window.isZero() || window.isNegative()) {
            throw new IllegalArgumentException("a window of time is longer than " + window);
        }
        for (int i = 1; i < times.size(); i++) {
            if (times.get(i).isBefore(times.get(i - 1))) {
                throw new IllegalArgumentException("reading " + (i + 1) + " of " + times.get(i)
                        + " stands after one of " + times.get(i - 1) + ": put the readings in order of time");
            }
        }
        return new Grouping(new Timed(List.copyOf(times), window, origin), false, List.of());
    }

    /** The same, but an incomplete last subgroup stays. */
    public Grouping keepingIncomplete() {
        return new Grouping(way, true, phases);
    }

    /**
     * The same, with a phase for each reading: where the phase changes there is a {@link Break}, and consecutive and timed
     * subgroups begin anew.
     *
     * @param phaseOfReading one word per reading, for example the content of a column {@code phase}
     */
    public Grouping inPhases(List<String> phaseOfReading) {
        return new Grouping(way, keep, List.copyOf(phaseOfReading));
    }

    /**
     * Cuts a sample.
     *
     * @throws IllegalArgumentException if labels, times or phases are not one per reading, or a labelled subgroup lies in two
     *     phases
     */
    public Subgroups of(Sample sample) {
        int n = sample.size();
        if (way.readings() >= 0 && way.readings() != n) {
            throw new IllegalArgumentException(
                    "one subgroup label or time per reading: " + way.readings() + " for " + n + " readings");
        }
        if (!phases.isEmpty() && phases.size() != n) {
            throw new IllegalArgumentException("one phase per reading: " + phases.size() + " for " + n + " readings");
        }
        if (way instanceof Consecutive plain && phases.isEmpty() && !keep) {
            return sample.inSubgroupsOf(plain.size());
        }
        List<List<Integer>> groups = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        List<Break> breaks = new ArrayList<>();
        Subgroups.LeftOver leftOver = Subgroups.LeftOver.NONE;
        List<Integer> incomplete = new ArrayList<>();
        Set<String> known = new HashSet<>();
        int from = 0;
        while (from < n) {
            int to = endOfPhase(from, n);
            if (from > 0) {
                breaks.add(new Break(
                        groups.size() + 1,
                        Remark.verbatim(phases.get(from)),
                        Remark.of("break.phase", "phase {0}", phases.get(from))));
            }
            Map<String, List<Integer>> members = new LinkedHashMap<>();
            List<String> keys = way.keys(from, to);
            for (int i = from; i < to; i++) {
                members.computeIfAbsent(keys.get(i - from), key -> new ArrayList<>())
                        .add(i);
            }
            List<List<Integer>> found = new ArrayList<>(members.values());
            List<String> names = new ArrayList<>(members.keySet());
            if (lastIsIncomplete(found)) {
                if (keep) {
                    incomplete.add(groups.size() + found.size());
                } else {
                    leftOver = leftOver.plus(found.remove(found.size() - 1).size(), to == n);
                    names.remove(names.size() - 1);
                }
            }
            for (String name : names) {
                if (way.isLabelled() && !known.add(name)) {
                    throw new IllegalArgumentException("subgroup " + name + " lies in two phases");
                }
                labels.add(name);
            }
            groups.addAll(found);
            from = to;
        }
        int[] starts = new int[groups.size() + 1];
        int[] order = new int[n - leftOver.readings()];
        int next = 0;
        for (int g = 0; g < groups.size(); g++) {
            for (int index : groups.get(g)) {
                order[next++] = index;
            }
            starts[g + 1] = next;
        }
        int count = groups.size();
        return new Subgroups(sample, order, starts, way.isLabelled() ? labels : List.of(), leftOver, incomplete)
                .breakingBefore(breaks.stream().filter(b -> b.number() <= count).toList());
    }

    private int endOfPhase(int from, int n) {
        if (phases.isEmpty()) {
            return n;
        }
        int to = from + 1;
        while (to < n && phases.get(to).equals(phases.get(from))) {
            to++;
        }
        return to;
    }

    private boolean lastIsIncomplete(List<List<Integer>> groups) {
        int last = groups.get(groups.size() - 1).size();
        if (way.fullSize().isPresent()) {
            return last < way.fullSize().get();
        }
        if (groups.size() < 2) {
            return false;
        }
        int full = groups.get(0).size();
        for (int g = 1; g < groups.size() - 1; g++) {
            if (groups.get(g).size() != full) {
                return false;
            }
        }
        return last < full;
    }

    private record Consecutive(int size) implements Way {
        @Override
        public List<String> keys(int from, int to) {
            List<String> keys = new ArrayList<>(to - from);
            for (int i = from; i < to; i++) {
                keys.add(Integer.toString((i - from) / size));
            }
            return keys;
        }

        @Override
        public Optional<Integer> fullSize() {
            return Optional.of(size);
        }

        @Override
        public boolean isLabelled() {
            return false;
        }

        @Override
        public int readings() {
            return -1;
        }
    }

    private record Labelled(List<String> labels) implements Way {
        @Override
        public List<String> keys(int from, int to) {
            return labels.subList(from, to);
        }

        @Override
        public Optional<Integer> fullSize() {
            return Optional.empty();
        }

        @Override
        public boolean isLabelled() {
            return true;
        }

        @Override
        public int readings() {
            return labels.size();
        }
    }

    private record Timed(List<Instant> times, Duration window, Instant origin) implements Way {
        @Override
        public List<String> keys(int from, int to) {
            List<String> keys = new ArrayList<>(to - from);
            for (int i = from; i < to; i++) {
                Duration since = Duration.between(origin, times.get(i));
                long windows = since.dividedBy(window);
                if (since.isNegative() && !window.multipliedBy(windows).equals(since)) {
                    windows--;
                }
                keys.add(origin.plus(window.multipliedBy(windows)).toString());
            }
            return keys;
        }

        @Override
        public Optional<Integer> fullSize() {
            return Optional.empty();
        }

        @Override
        public boolean isLabelled() {
            // a window that a change of phase cuts in two gives two subgroups of one name
            return false;
        }

        @Override
        public int readings() {
            return times.size();
        }
    }
}
