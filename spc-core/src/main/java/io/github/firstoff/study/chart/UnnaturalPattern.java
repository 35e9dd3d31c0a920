package io.github.firstoff.study.chart;

import java.util.List;
import java.util.Set;

/**
 * Tests for unnatural patterns (Western Electric, Statistical Quality Control Handbook, 1956, section on unnatural patterns;
 * the lengths of stratification and mixture are the handbook's).
 *
 * <p>The handbook describes trends and systematic variation without a length that could be verified here. Seven points for a
 * trend are common practice, fourteen for systematic variation are those of Nelson 1984; both can be set. Stratification and
 * mixture rest on the areas of the normal distribution and judge nothing else; trend and systematic variation compare
 * neighbours and judge counts as well.
 */
public final class UnnaturalPattern {
    /** Seven successive points rising or falling: tool wear, loosening, temperature. */
    public static final RunRule TREND =
            new StepRule("unnatural-trend", StepRule.Shape.TREND, 7, Set.of(PanelNature.NORMAL, PanelNature.COUNTED));
    /** Fifteen successive points within one sigma: subgroups that mix what should be kept apart, or limits too wide. */
    public static final RunRule STRATIFICATION =
            new ZoneRule("unnatural-stratification", ZoneRule.Zone.INNER, 15, 15, Set.of(PanelNature.NORMAL));
    /** Eight successive points with none within one sigma: two processes on one chart. */
    public static final RunRule MIXTURE =
            new ZoneRule("unnatural-mixture", ZoneRule.Zone.OUTER, 8, 8, Set.of(PanelNature.NORMAL));
    /** Fourteen successive points up, down, up, down: two fixtures, spindles or shifts in turn. */
    public static final RunRule SYSTEMATIC = new StepRule(
            "unnatural-systematic", StepRule.Shape.ALTERNATION, 14, Set.of(PanelNature.NORMAL, PanelNature.COUNTED));

    private UnnaturalPattern() {}

    /** The four. */
    public static List<RunRule> all() {
        return List.of(TREND, STRATIFICATION, MIXTURE, SYSTEMATIC);
    }
}
