package io.github.firstoff.sheet;

import io.github.firstoff.inspection.Reading.Context;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.Study;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.study.chart.Baseline;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What people say of the points of a chart: where runs begin anew, what does not count, which phase sets the limits. */
final class Marks {
    private final Study study;
    private final String number;
    private final List<Context> contexts;
    private final List<String> parts;

    /**
     * The marks of one study.
     *
     * @param number the characteristic, by which faults are placed
     * @param contexts what is known of each reading that is grouped
     * @param parts the piece of each
     */
    Marks(Study study, String number, List<Context> contexts, List<String> parts) {
        this.study = study;
        this.number = number;
        this.contexts = contexts;
        this.parts = parts;
    }

    /** A fault of one key of the study. */
    PlanContradiction fault(String key, String message, String expected) {
        return new PlanContradiction(List.of(PlanFault.of(number, "study." + key, message, expected)));
    }

    /** The columns at whose changes runs begin anew; none if the plan names none and no reading states a phase. */
    private List<ContextColumn> breakColumns() {
        if (study.breaks().columns().isEmpty()) {
            return isStated(ContextColumn.PHASE) ? List.of(ContextColumn.PHASE) : List.of();
        }
        List<ContextColumn> columns = new ArrayList<>();
        for (String name : study.breaks().columns().get()) {
            ContextColumn column = ContextColumn.named(name);
            if (!isStated(column)) {
                throw fault(
                        "breaks",
                        "runs are to begin anew where " + column.word() + " changes, and no reading of characteristic "
                                + number + " states it",
                        "a column " + column.word() + " in the readings, or no such break");
            }
            columns.add(column);
        }
        return columns;
    }

    private boolean isStated(ContextColumn column) {
        return contexts.stream().anyMatch(context -> column.of(context).isPresent());
    }

    /** For each reading what the break columns say there; where a cell is blank, what was said before. */
    List<List<String>> stretches() {
        return states(breakColumns());
    }

    private List<List<String>> states(List<ContextColumn> columns) {
        List<List<String>> states = new ArrayList<>(contexts.size());
        List<String> current = new ArrayList<>();
        columns.forEach(column -> current.add(""));
        List<String> last = List.copyOf(current);
        for (Context context : contexts) {
            for (int c = 0; c < columns.size(); c++) {
                Optional<String> stated = columns.get(c).of(context);
                if (stated.isPresent()) {
                    current.set(c, stated.get());
                }
            }
            // equal neighbours share one list: a batch has few stretches and many readings
            last = last.equals(current) ? last : List.copyOf(current);
            states.add(last);
        }
        return states;
    }

    /** The readings (from 0) with which a tool life begins: where a break column or the tool changes. */
    List<Integer> toolLives() {
        List<ContextColumn> columns = new ArrayList<>(breakColumns());
        if (!columns.contains(ContextColumn.TOOL) && isStated(ContextColumn.TOOL)) {
            columns.add(ContextColumn.TOOL);
        }
        List<List<String>> states = states(columns);
        List<Integer> starts = new ArrayList<>();
        for (int i = 1; i < states.size(); i++) {
            if (!states.get(i).equals(states.get(i - 1))) {
                starts.add(i);
            }
        }
        return starts;
    }

    /** The breaks on the points of the chart. */
    List<Break> breaks(Subgroups groups) {
        List<ContextColumn> columns = breakColumns();
        List<List<String>> states = states(columns);
        List<Break> breaks = new ArrayList<>();
        for (int g = 1; g < groups.count(); g++) {
            List<String> before = states.get(groups.reading(g - 1, groups.size(g - 1) - 1));
            List<String> now = states.get(groups.reading(g, 0));
            if (now.equals(before)) {
                continue;
            }
            List<Remark> named = new ArrayList<>();
            List<Remark> changed = new ArrayList<>();
            for (int c = 0; c < columns.size(); c++) {
                if (!now.get(c).equals(before.get(c))) {
                    named.add(
                            Remark.of("break.stretch", "{0} {1}", columns.get(c).remark(), now.get(c)));
                    changed.add(columns.get(c).remark());
                }
            }
            breaks.add(new Break(
                    groups.number(g),
                    Remark.joined(", ", named),
                    Remark.of(
                            "break.changes", "the {0} {1|changes|change}", Phrases.listing(changed), changed.size())));
        }
        return breaks;
    }

    /** The points of the phase that sets the limits; empty if the plan names none. */
    Optional<Baseline> phase(Subgroups groups) {
        Optional<String> wanted = study.limits().baseline().flatMap(Study.Baseline::phase);
        if (wanted.isEmpty()) {
            return Optional.empty();
        }
        List<List<String>> states = states(List.of(ContextColumn.PHASE));
        int from = 0;
        int to = 0;
        for (int g = 0; g < groups.count(); g++) {
            boolean inPhase = states.get(groups.reading(g, 0)).get(0).equals(wanted.get());
            if (inPhase && from == 0) {
                from = groups.number(g);
            }
            // the first stretch of that phase alone: a later one of the same name may be another state of the process
            if (inPhase && (to == 0 || to == groups.number(g) - 1)) {
                to = groups.number(g);
            }
        }
        if (from == 0) {
            throw fault(
                    "baseline",
                    "no point of characteristic " + number + " is in phase " + wanted.get(),
                    "a phase that the readings state");
        }
        return Optional.of(new Baseline(from, to));
    }

    /** The exclusions on the points of the chart; two that name one point give both reasons. */
    List<Exclusion> exclusions(Subgroups groups) {
        Map<Integer, String> reasons = new LinkedHashMap<>();
        for (Study.Exclusion each : study.exclusions()) {
            int before = reasons.size();
            boolean found = false;
            for (int g = 0; g < groups.count(); g++) {
                if (isNamed(each, groups, g)) {
                    found = true;
                    reasons.merge(
                            groups.number(g),
                            each.reason(),
                            (first, second) -> first.equals(second) ? first : first + "; " + second);
                }
            }
            if (!found && reasons.size() == before) {
                throw fault(
                        "exclude",
                        each.what().word() + " " + each.name() + " is not on the chart of characteristic " + number,
                        "a " + each.what().word() + " that is there");
            }
        }
        List<Exclusion> exclusions = new ArrayList<>();
        reasons.forEach((point, reason) -> exclusions.add(new Exclusion(point, reason)));
        return exclusions;
    }

    private boolean isNamed(Study.Exclusion exclusion, Subgroups groups, int group) {
        return switch (exclusion.what()) {
            case POINT -> Integer.toString(groups.number(group)).equals(exclusion.name());
            case SUBGROUP -> groups.label(group).equals(exclusion.name());
            case PART ->
                groups.readings(group).stream()
                        .anyMatch(reading -> parts.get(reading).equals(exclusion.name()));
        };
    }
}
