package io.github.firstoff.sheet;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Study;
import io.github.firstoff.study.chart.RuleCatalogue;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.Signal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Tells what is new each time the readings have grown: a line for each subgroup that is complete, a line for each signal. Has state and belongs
 * to one thread.
 */
public final class DriftFollower {
    private static final int USUAL_SUBGROUP = 5;

    private final String source;
    private final OptionalInt subgroup;
    private final Map<String, Integer> told = new HashMap<>();
    private final Map<String, Set<Signal>> known = new HashMap<>();

    /**
     * A follower.
     *
     * @param source the file that grows, as readings name it; signals and subgroups of other files are past
     * @param subgroup how many readings make a line; empty for what the plan's study says, else five
     */
    public DriftFollower(String source, OptionalInt subgroup) {
        this.source = source;
        this.subgroup = subgroup;
    }

    /**
     * What is new.
     *
     * @param lines what to print, in order
     * @param signalled whether a test fired on a reading that is new
     */
    public record News(List<String> lines, boolean signalled) {
        /** Copies the list. */
        public News {
            lines = List.copyOf(lines);
        }
    }

    /** Looks at a study of the readings so far. */
    public News look(DriftSheet sheet) {
        List<String> lines = new ArrayList<>();
        boolean signalled = false;
        List<DriftFinding> inPlanOrder = new ArrayList<>(sheet.findings());
        List<String> order = sheet.sheet().result().characteristics().stream()
                .map(each -> each.number())
                .toList();
        inPlanOrder.sort(java.util.Comparator.comparingInt(each -> order.indexOf(each.number())));
        for (DriftFinding finding : inPlanOrder) {
            int first = firstOfSource(finding);
            if (first < 0) {
                continue;
            }
            List<Signal> fresh = new ArrayList<>();
            Set<Signal> before = known.computeIfAbsent(finding.number(), number -> new HashSet<>());
            for (Signal signal : DriftTests.asTheyCome(finding.drift())) {
                if (signal.at() > first && before.add(signal)) {
                    fresh.add(signal);
                }
            }
            signalled |= !fresh.isEmpty();
            subgroups(finding, first, lines);
            for (Signal signal : fresh) {
                lines.add(prefix(finding) + signal(finding, signal));
            }
        }
        return new News(lines, signalled);
    }

    /** The first reading (from 0) of the file that grows; −1 if there is none. */
    private int firstOfSource(DriftFinding finding) {
        for (int i = 0; i < finding.judgements().size(); i++) {
            if (finding.judgements()
                    .get(i)
                    .reading()
                    .context()
                    .origin()
                    .source()
                    .equals(source)) {
                return i;
            }
        }
        return -1;
    }

    private void subgroups(DriftFinding finding, int first, List<String> lines) {
        int size = subgroup.orElseGet(() -> ofPlan(finding));
        int complete = (finding.judgements().size() - first) / size;
        int already = told.getOrDefault(finding.number(), 0);
        for (int k = already; k < complete; k++) {
            int from = first + k * size;
            int to = from + size;
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += finding.drift().data().sample().deviation(i);
            }
            long firstPiece = finding.drift().data().piece(from);
            long lastPiece = finding.drift().data().piece(to - 1);
            // earlier subgroups of one look have no forecast of their own: the newest knows all of them
            String forecast = k == complete - 1 ? "; " + new DriftWords(finding).forecastInShort() : "";
            lines.add(prefix(finding) + "subgroup " + (k + 1) + ", "
                    + (size == 1 ? "piece " + firstPiece : "pieces " + firstPiece + " to " + lastPiece)
                    + (size == 1 ? ", " : ", mean ")
                    + new DriftWords(finding)
                            .size(finding.drift().data().sample().scale().value(sum / size))
                    + forecast);
        }
        told.put(finding.number(), Math.max(already, complete));
    }

    private static int ofPlan(DriftFinding finding) {
        Study study = finding.result().characteristic().characteristic().study().orElse(null);
        if (study == null) {
            return USUAL_SUBGROUP;
        }
        return study.grouping().size().orElse(study.chart().equals("individuals") ? 1 : USUAL_SUBGROUP);
    }

    private static String prefix(DriftFinding finding) {
        return finding.number() + " "
                + finding.result().characteristic().characteristic().feature() + ": ";
    }

    private static String signal(DriftFinding finding, Signal signal) {
        Reading reading = finding.judgements().get(signal.at() - 1).reading();
        return "signal at piece " + finding.drift().data().piece(signal.at() - 1) + " ("
                + finding.judgements().get(signal.at() - 1).part() + ", line "
                + reading.context().origin().line() + "): " + signal.test() + ", "
                + RuleCatalogue.rule(signal.test()).map(RunRule::description).orElse("") + ", "
                + signal.side().word() + " the line that the readings before it follow";
    }
}
