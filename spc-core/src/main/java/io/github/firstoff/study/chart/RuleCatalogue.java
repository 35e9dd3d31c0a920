package io.github.firstoff.study.chart;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The tests and the sets of tests, by the names that plans and results use. A new family of tests is one line here. */
public final class RuleCatalogue {
    private static final Map<String, List<RunRule>> FAMILIES = new LinkedHashMap<>();

    static {
        FAMILIES.put("western-electric", WesternElectricRule.all());
        FAMILIES.put("unnatural", UnnaturalPattern.all());
        FAMILIES.put("nelson", NelsonRule.all());
    }

    private RuleCatalogue() {}

    /** Every test with its usual lengths; {@link RunRule#withLength} and {@link RunRule#withWindow} give others. */
    public static List<RunRule> rules() {
        return FAMILIES.values().stream().flatMap(List::stream).toList();
    }

    /** The test of that name, for example {@code nelson-3}; empty if there is none. */
    public static Optional<RunRule> rule(String id) {
        return rules().stream().filter(rule -> rule.id().equals(id)).findFirst();
    }

    /** The set of that name: {@code western-electric}, {@code unnatural} or {@code nelson}; empty if there is none. */
    public static Optional<RuleSet> set(String name) {
        return Optional.ofNullable(FAMILIES.get(name)).map(RuleSet::new);
    }
}
