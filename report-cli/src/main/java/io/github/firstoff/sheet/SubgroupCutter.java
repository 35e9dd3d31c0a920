package io.github.firstoff.sheet;

import io.github.firstoff.inspection.Reading.Context;
import io.github.firstoff.plan.Study;
import io.github.firstoff.plan.Study.Subgrouping;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Grouping;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Cuts readings into subgroups as a plan says. */
final class SubgroupCutter {
    /** The subgroup size that a plan without one gets (common practice: four or five consecutive pieces). */
    private static final int USUAL_SUBGROUP = 5;

    /** Charts of single readings unless the plan or the readings group them. */
    private static final List<String> OF_SINGLES =
            List.of("individuals", "ewma", "cusum", "deviation", "standardised-deviation", "c", "u");

    private final Study study;
    private final Marks marks;
    private final List<Context> contexts;
    private final List<String> stretches;

    SubgroupCutter(Study study, Marks marks, List<Context> contexts) {
        this.study = study;
        this.marks = marks;
        this.contexts = contexts;
        this.stretches = numbered(marks.stretches());
    }

    /**
     * The subgroups, without marks.
     *
     * @throws io.github.firstoff.plan.PlanContradiction if the readings do not state what the plan groups by
     */
    Subgroups cut(Sample sample) {
        Grouping grouping = grouping();
        if (study.grouping().keepIncomplete()) {
            grouping = grouping.keepingIncomplete();
        }
        if (stretches.stream().distinct().count() > 1) {
            grouping = grouping.inPhases(stretches);
        }
        try {
            return grouping.of(sample).withoutBreaks();
        } catch (IllegalArgumentException fault) {
            boolean timed = study.grouping().window().isPresent();
            throw marks.fault(
                    timed ? "window" : "breaks",
                    fault.getMessage() == null ? "" : fault.getMessage(),
                    timed ? "readings in the order of their times" : "each subgroup within one stretch of the process");
        }
    }

    /** A number for each stretch in place of what its columns say, so that two stretches of the same content stay apart. */
    private static List<String> numbered(List<List<String>> stretches) {
        List<String> numbers = new ArrayList<>(stretches.size());
        int current = 0;
        String number = "0";
        for (int i = 0; i < stretches.size(); i++) {
            if (i > 0 && !stretches.get(i).equals(stretches.get(i - 1))) {
                current++;
                number = Integer.toString(current);
            }
            numbers.add(number);
        }
        return numbers;
    }

    private Grouping grouping() {
        Subgrouping way = study.grouping();
        if (study.chart().equals("individuals")) {
            return Grouping.consecutive(1);
        }
        if (way.column().isPresent()) {
            ContextColumn column = ContextColumn.named(way.column().get());
            List<String> content = stated(column);
            return Grouping.labelled(column == ContextColumn.SUBGROUP ? content : runs(content));
        }
        if (way.window().isPresent()) {
            List<Instant> times = times();
            Instant origin = times.isEmpty()
                    ? Instant.EPOCH
                    : times.get(0)
                            .atOffset(ZoneOffset.UTC)
                            .toLocalDate()
                            .atStartOfDay()
                            .toInstant(ZoneOffset.UTC);
            return Grouping.timed(times, way.window().get(), origin);
        }
        if (isLabelled()) {
            return Grouping.labelled(stated(ContextColumn.SUBGROUP));
        }
        if (way.size().isEmpty() && (study.chart().equals("p") || study.chart().equals("np"))) {
            throw marks.fault(
                    "chart",
                    "the chart " + study.chart() + " counts among the pieces of a subgroup, and nothing says which"
                            + " those are",
                    "subgroup, subgroupBy or window in the study, or a column subgroup in the readings");
        }
        return Grouping.consecutive(way.size().orElse(OF_SINGLES.contains(study.chart()) ? 1 : USUAL_SUBGROUP));
    }

    private boolean isLabelled() {
        return !contexts.isEmpty()
                && contexts.stream().allMatch(context -> context.subgroup().isPresent());
    }

    /** That readings name subgroups of another size than the plan's; empty where both agree or only one speaks. */
    Optional<Remark> sizeNote(Subgroups cut) {
        Subgrouping way = study.grouping();
        boolean named = !study.chart().equals("individuals")
                && way.column().isEmpty()
                && way.window().isEmpty()
                && way.size().isPresent()
                && isLabelled();
        if (!named) {
            return Optional.empty();
        }
        int size = way.size().getAsInt();
        for (int g = 0; g < cut.count(); g++) {
            if (cut.size(g) != size) {
                return Optional.of(Remark.of(
                        "chart.named-subgroups",
                        "The plan says subgroups of {0}; the readings name their subgroups, of other sizes, and these are taken.",
                        size));
            }
        }
        return Optional.empty();
    }

    private List<String> stated(ContextColumn column) {
        List<String> content = new ArrayList<>(contexts.size());
        for (Context context : contexts) {
            content.add(column.of(context)
                    .orElseThrow(() -> marks.fault(
                            "subgroupBy",
                            "subgroups are made by " + column.word() + ", and "
                                    + context.origin().source() + ":"
                                    + context.origin().line()
                                    + " does not state it",
                            "a column " + column.word() + " in the readings, filled in every row")));
        }
        return content;
    }

    /** A subgroup ends where the content changes: what comes back later is another subgroup, with a number behind its name. */
    private List<String> runs(List<String> content) {
        Map<String, Integer> seen = new LinkedHashMap<>();
        List<String> labels = new ArrayList<>(content.size());
        for (int i = 0; i < content.size(); i++) {
            if (i > 0
                    && content.get(i).equals(content.get(i - 1))
                    && stretches.get(i).equals(stretches.get(i - 1))) {
                labels.add(labels.get(i - 1));
                continue;
            }
            int turn = seen.merge(content.get(i), 1, Integer::sum);
            labels.add(turn == 1 ? content.get(i) : content.get(i) + " (" + turn + ")");
        }
        return labels;
    }

    private List<Instant> times() {
        List<Instant> times = new ArrayList<>(contexts.size());
        for (Context context : contexts) {
            Optional<Instant> time = context.time().map(at -> at.toInstant(ZoneOffset.UTC));
            times.add(time.orElseThrow(() -> marks.fault(
                    "window",
                    "subgroups are made by time, and " + context.origin().source() + ":"
                            + context.origin().line() + " states none",
                    "a column time in the readings, filled in every row")));
        }
        return times;
    }
}
