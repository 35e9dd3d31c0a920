package io.github.firstoff.sheet;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.study.pressfit.Basis;
import io.github.firstoff.study.pressfit.Chances;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.Range;
import io.github.firstoff.study.pressfit.State;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A press fit in words. What is promised is rounded down, what threatens is rounded up, so that no rounding makes a joint look better than it
 * is.
 */
public final class FitWords {
    private static final int KILO = 1000;
    private static final double MICROMETRES = 1000;
    private static final double ALL_BUT = 0.9999;

    private final FitResult result;
    private final Joint joint;

    /** The words for one joint. */
    public FitWords(FitResult result) {
        this.result = result;
        this.joint = result.joint();
    }

    /** What the outer part is called: {@code hub}, or {@code bearing ring}. */
    public String outer() {
        return joint.outer().bearing().isPresent() ? "bearing ring" : "hub";
    }

    /** What the inner part is called: {@code bearing ring}, {@code shaft} if it is solid, {@code ring}. */
    public String inner() {
        if (joint.inner().bearing().isPresent()) {
            return "bearing ring";
        }
        return joint.inner().farDiameter().signum() == 0
                        || joint.outer().bearing().isPresent()
                ? "shaft"
                : "ring";
    }

    /** The answer in one sentence: does it hold, does the bearing keep its clearance, how near is yield. */
    public String answer() {
        List<String> parts = new ArrayList<>();
        parts.add(grip());
        clearance().ifPresent(parts::add);
        parts.add(stress());
        return String.join("; ", parts) + ".";
    }

    private String grip() {
        State weakest = result.weakest();
        String at = " at " + degrees(weakest.temperature());
        boolean asked =
                joint.demand().force().isPresent() || joint.demand().torque().isPresent();
        if (asked) {
            String load = load();
            return result.verdicts().grip()
                    ? "Grips with the required " + load + at + " "
                            + inShare(result.chances().reckoned().grip())
                    : "Does not grip with the required " + load + at + " "
                            + inShare(1 - result.chances().reckoned().grip());
        }
        if (!result.verdicts().grip()) {
            return "Loose" + at + " " + inShare(1 - result.chances().reckoned().grip());
        }
        if (result.basis() == Basis.LIMITS) {
            return "Grips with at least " + force(weakest.axial().minimum(), RoundingMode.DOWN) + at
                    + " in every pair within limits";
        }
        double held = ordinaryForce();
        return held > 0
                ? "Grips with at least " + force(held, RoundingMode.DOWN) + at + " in 99.9 % of pairs"
                : "Grips" + at + " " + inShare(result.chances().reckoned().grip());
    }

    /** The force that the joint holds in service in all but 1 of 1000 pairs; of limits, in every pair. */
    public double ordinaryForce() {
        double effective = result.ordinary()
                - result.smoothing()
                + result.model().thermalInterference(result.weakest().temperature());
        double friction = Ratio.of(joint.friction().least(), BigDecimal.ONE);
        return result.model().axialForce(result.model().pressure(effective), friction);
    }

    private String load() {
        List<String> loads = new ArrayList<>();
        joint.demand().force().ifPresent(force -> loads.add(force(Ratio.of(force, BigDecimal.ONE), RoundingMode.UP)));
        joint.demand().torque().ifPresent(torque -> loads.add(torque.toPlainString() + "\u00A0N·m"));
        return String.join(" and ", loads);
    }

    private Optional<String> clearance() {
        State cold = result.at(State.Moment.COLDEST);
        State hot = result.at(State.Moment.HOTTEST);
        if (cold.clearanceLeft().isEmpty() || hot.clearanceLeft().isEmpty()) {
            return Optional.empty();
        }
        Range atCold = cold.clearanceLeft().get();
        Range atHot = hot.clearanceLeft().get();
        boolean coldIsWorse = atCold.minimum() <= atHot.minimum();
        double least = Math.min(atCold.minimum(), atHot.minimum());
        String at = " at " + degrees(coldIsWorse ? cold.temperature() : hot.temperature());
        OptionalDouble share = result.chances().reckoned().clearance();
        if (least >= 0) {
            String kept =
                    "bearing keeps " + rounded(least, least < 10 ? 1 : 0, RoundingMode.FLOOR) + "\u00A0µm or more";
            return Optional.of(
                    result.verdicts().clearance()
                            ? kept
                            : kept + ", less than the "
                                    + joint.demand().leastClearance().toPlainString() + "\u00A0µm asked for");
        }
        String lost = "bearing may be without clearance" + at + " (down to "
                + minus(rounded(least, 1, RoundingMode.FLOOR)) + "\u00A0µm";
        return Optional.of(
                lost + (share.isPresent() ? ", in " + percentUp(1 - share.getAsDouble()) + " of pairs)" : ")"));
    }

    private String stress() {
        State tightest = result.tightest();
        double outer = tightest.outerStress().maximum() / result.model().outer().yield();
        double inner = tightest.innerStress().maximum() / result.model().inner().yield();
        String which = outer >= inner ? outer() : inner();
        String share = rounded(100 * Math.max(outer, inner), 0, RoundingMode.CEILING) + "\u00A0%";
        return Math.max(outer, inner) > 1
                ? which + " beyond yield (" + share + " of it, if it stayed elastic)"
                : which + " at " + share + " of yield";
    }

    private String inShare(double share) {
        if (result.basis() == Basis.LIMITS && share >= 1) {
            return "in every pair within limits";
        }
        if (result.basis() == Basis.LIMITS) {
            return "in " + percentUp(share) + " of pairs, were sizes spread evenly within limits";
        }
        return "in " + percent(share) + " of pairs";
    }

    /** A share as a percentage that promises no more than there is. */
    public static String percent(double share) {
        if (share >= 1) {
            return "100\u00A0%";
        }
        if (share > ALL_BUT) {
            return "more than 99.99\u00A0%";
        }
        if (share > 0 && share < 1 - ALL_BUT) {
            return "less than 0.01\u00A0%";
        }
        return rounded(100 * share, 2, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    private static String percentUp(double share) {
        if (share > ALL_BUT) {
            return "nearly all";
        }
        return share < 1 - ALL_BUT ? "less than 0.01\u00A0%" : rounded(100 * share, 2, RoundingMode.UP) + "\u00A0%";
    }

    /** The share of pairs that is asked for. */
    public static String shareAsked(double share) {
        if (share >= 1) {
            return "every pair within limits";
        }
        return new BigDecimal(100 * share)
                        .setScale(4, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                + "\u00A0% of pairs";
    }

    /** A force with its unit, in three figures. */
    public static String force(double newtons, RoundingMode rounding) {
        if (newtons >= KILO) {
            return figures(newtons / KILO, rounding) + "\u00A0kN";
        }
        return figures(newtons, rounding) + "\u00A0N";
    }

    private static String figures(double value, RoundingMode rounding) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(3, rounding));
        return rounded.signum() == 0
                ? "0"
                : rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
    }

    /** A temperature with its unit. */
    public static String degrees(double celsius) {
        BigDecimal rounded =
                new BigDecimal(celsius).setScale(1, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return minus((rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString()) + "\u00A0°C";
    }

    /** A figure rounded to so many places. */
    public static String rounded(double value, int places, RoundingMode rounding) {
        BigDecimal exact = new BigDecimal(value).setScale(places, rounding);
        return (exact.signum() == 0 ? exact.abs() : exact).toPlainString();
    }

    /** A true minus. */
    public static String minus(String figure) {
        return figure.replace('-', '−');
    }

    /** What the sheet was reckoned from, in a sentence. */
    public String basis() {
        return switch (result.basis()) {
            case LIMITS ->
                "From the limits of both parts: least and greatest are the worst cases. Probabilities take sizes as spread evenly within limits.";
            case MEASURED ->
                "From " + result.outer().count() + " measured bores and "
                        + result.inner().count()
                        + " measured " + inner()
                        + "s, any of which may meet. Least and greatest are the worst pairs of the measured"
                        + " pieces; probabilities take both sizes as normal and independent.";
            case MIXED ->
                "From " + Math.max(result.outer().count(), result.inner().count()) + " measured "
                        + (result.outer().measured() ? "bores" : inner() + "s")
                        + " and the limits of the other part. Probabilities take the measured sizes as normal and the others as spread evenly"
                        + " within limits, both as independent.";
            case PAIRED ->
                "From " + pairs()
                        + " measured pairs. Least and greatest are those of the pairs; probabilities take the interference as"
                        + " normal.";
        };
    }

    private long pairs() {
        return result.chances().counted().map(Chances.Counted::pairs).orElse(0L);
    }

    /** What needs a decision; empty if nothing does. */
    public List<String> decisions() {
        List<String> open = new ArrayList<>();
        result.matching()
                .filter(matching ->
                        !result.verdicts().accepted() && !matching.pairs().isEmpty())
                .ifPresent(matching -> open.add("Paired as listed, "
                        + (matching.pairs().size() == 1
                                ? "the pair does"
                                : "all " + matching.pairs().size() + " pairs do")
                        + " what is asked; the figures above are those of pieces taken at random."));
        String share = shareAsked(result.share());
        if (!result.verdicts().grip()) {
            open.add(
                    "The joint does not hold in " + share + ": it takes an interference of at least "
                            + rounded(MICROMETRES * result.bounds().grip(), 1, RoundingMode.UP)
                            + "\u00A0µm at 20\u00A0°C before smoothing. Ask for more interference, a longer joint or a form lock, or pair pieces by size.");
        }
        if (!result.verdicts().stress()) {
            open.add("A part does not stay below yield in " + share + ": that takes an interference of at most "
                    + rounded(MICROMETRES * result.bounds().yield(), 1, RoundingMode.DOWN)
                    + "\u00A0µm at 20\u00A0°C before smoothing. Beyond it the figures of this sheet do not hold.");
        }
        if (!result.verdicts().clearance()) {
            open.add("The bearing does not keep "
                    + joint.demand().leastClearance().toPlainString()
                    + "\u00A0µm of clearance in " + share
                    + ". Ask for a greater clearance group or less interference.");
        }
        result.matching()
                .filter(matching -> !matching.left().isEmpty())
                .ifPresent(matching -> open.add(Phrases.counted(matching.left().size(), "piece stays", "pieces stay")
                        + " without a partner; the table of pairs says which and why."));
        return open;
    }

    /** An exact length in micrometres, with as many places as it has. */
    public static String micrometres(BigDecimal millimetres) {
        BigDecimal exact = millimetres.movePointRight(3);
        return minus((exact.scale() < 0 ? exact.setScale(0) : exact).toPlainString());
    }

    /** A length on the diameter in micrometres. */
    public static String micrometres(double millimetres) {
        return minus(rounded(MICROMETRES * millimetres, 1, RoundingMode.HALF_EVEN));
    }
}
