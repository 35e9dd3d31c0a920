package io.github.firstoff.intake;

import java.util.List;

/** The kinds of files from which a plan can be made, in the order in which they are tried. */
final class PlanSources {
    private static final List<PlanSource> ALL =
            List.of(new QifPlan(), new WorkbookPlan(true), new WorkbookPlan(false), new CsvPlan());

    private PlanSources() {}

    /** The kind that recognises the beginning; a table of text if none does. */
    static PlanSource of(Beginning beginning) {
        return ALL.stream()
                .filter(source -> source.recognises(beginning))
                .findFirst()
                .orElse(ALL.get(ALL.size() - 1));
    }
}
