package io.github.firstoff.study.chart;

import java.util.List;
import java.util.Set;

/**
 * Nelson's eight tests for special causes (Journal of Quality Technology 16, 1984, 237–239).
 *
 * <p>Made for means and individuals of a normal process; tests 1 to 4 may judge charts of attributes too (from memory). Test 1
 * judges points of every nature, beyond a control limit. Test 8 asks for eight points with none within one sigma, on whichever
 * side they lie.
 */
public final class NelsonRule {
    private static final Set<PanelNature> MEASURED = Set.of(PanelNature.NORMAL);
    private static final Set<PanelNature> MEASURED_OR_COUNTED = Set.of(PanelNature.NORMAL, PanelNature.COUNTED);

    /** Test 1: one point beyond three sigma. */
    public static final RunRule BEYOND_LIMIT =
            new ZoneRule("nelson-1", ZoneRule.Zone.LIMIT, 1, 1, Set.of(PanelNature.values()));
    /** Test 2: nine successive points on one side of the centre line. */
    public static final RunRule NINE_ON_ONE_SIDE =
            new ZoneRule("nelson-2", ZoneRule.Zone.SIDE, 9, 9, MEASURED_OR_COUNTED);
    /** Test 3: six successive points steadily rising or falling. */
    public static final RunRule SIX_IN_A_TREND = new StepRule("nelson-3", StepRule.Shape.TREND, 6, MEASURED_OR_COUNTED);
    /** Test 4: fourteen successive points alternating up and down. */
    public static final RunRule FOURTEEN_ALTERNATING =
            new StepRule("nelson-4", StepRule.Shape.ALTERNATION, 14, MEASURED_OR_COUNTED);
    /** Test 5: two of three successive points beyond two sigma on one side. */
    public static final RunRule TWO_OF_THREE = new ZoneRule("nelson-5", ZoneRule.Zone.TWO_SIGMA, 2, 3, MEASURED);
    /** Test 6: four of five successive points beyond one sigma on one side. */
    public static final RunRule FOUR_OF_FIVE = new ZoneRule("nelson-6", ZoneRule.Zone.ONE_SIGMA, 4, 5, MEASURED);
    /** Test 7: fifteen successive points within one sigma. */
    public static final RunRule FIFTEEN_WITHIN = new ZoneRule("nelson-7", ZoneRule.Zone.INNER, 15, 15, MEASURED);
    /** Test 8: eight successive points with none within one sigma. */
    public static final RunRule EIGHT_BEYOND = new ZoneRule("nelson-8", ZoneRule.Zone.OUTER, 8, 8, MEASURED);

    private NelsonRule() {}

    /** The eight, in their order. */
    public static List<RunRule> all() {
        return List.of(
                BEYOND_LIMIT,
                NINE_ON_ONE_SIDE,
                SIX_IN_A_TREND,
                FOURTEEN_ALTERNATING,
                TWO_OF_THREE,
                FOUR_OF_FIVE,
                FIFTEEN_WITHIN,
                EIGHT_BEYOND);
    }
}
