package io.github.firstoff.study.chart;

import java.util.List;
import java.util.Set;

/**
 * The four zone tests (Western Electric, Statistical Quality Control Handbook, 1956, pages 25–28).
 *
 * <p>Test 1 judges points of every nature (where a panel has no zones: beyond a control limit). Test 4 needs only a centre line
 * that splits the points in halves and judges counts as well. Tests 2 and 3 rest on the areas of the normal distribution and
 * judge nothing else: no range, no count. Points that share readings (moving ranges, averages, sums) are judged by test 1 only.
 */
public final class WesternElectricRule {
    /** One point beyond a control limit (three sigma). */
    public static final RunRule BEYOND_LIMIT =
            new ZoneRule("western-electric-1", ZoneRule.Zone.LIMIT, 1, 1, Set.of(PanelNature.values()));
    /** Two of three successive points beyond two sigma on one side. */
    public static final RunRule TWO_OF_THREE =
            new ZoneRule("western-electric-2", ZoneRule.Zone.TWO_SIGMA, 2, 3, Set.of(PanelNature.NORMAL));
    /** Four of five successive points beyond one sigma on one side. */
    public static final RunRule FOUR_OF_FIVE =
            new ZoneRule("western-electric-3", ZoneRule.Zone.ONE_SIGMA, 4, 5, Set.of(PanelNature.NORMAL));
    /** Eight successive points on one side of the centre line. */
    public static final RunRule EIGHT_ON_ONE_SIDE = new ZoneRule(
            "western-electric-4", ZoneRule.Zone.SIDE, 8, 8, Set.of(PanelNature.NORMAL, PanelNature.COUNTED));

    private WesternElectricRule() {}

    /** The four, in their order. */
    public static List<RunRule> all() {
        return List.of(BEYOND_LIMIT, TWO_OF_THREE, FOUR_OF_FIVE, EIGHT_ON_ONE_SIDE);
    }
}
