package io.github.firstoff.sheet;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.study.pressfit.Basis;
import io.github.firstoff.study.pressfit.Chances;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.Range;
import io.github.firstoff.study.pressfit.State;
import io.github.firstoff.words.Labels;
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
    private static final String LEAST_SHARE = "0.01\u00A0%";
    private static final String BEARING_RING = "bearing-ring";

    private final FitResult result;
    private final Joint joint;

    /** The words for one joint. */
    public FitWords(FitResult result) {
        this.result = result;
        this.joint = result.joint();
    }

    /** What the outer part is called: {@code hub}, or {@code bearing ring}. */
    public String outer() {
        return noun(outerCode());
    }

    /** What the inner part is called: {@code bearing ring}, {@code shaft} if it is solid, {@code ring}. */
    public String inner() {
        return noun(innerCode());
    }

    /** The outer part with its article, as a sentence begins with it or goes on: {@code the hub}. */
    public String theOuter() {
        return Labels.word("press.the", outerCode());
    }

    /** The inner part with its article. */
    public String theInner() {
        return Labels.word("press.the", innerCode());
    }

    /** The inner part as what something slips over: {@code the tightest shaft}. */
    public String overTightestInner() {
        return Labels.word("press.over-tightest", innerCode());
    }

    private static String noun(String code) {
        return Labels.word("press.part", code);
    }

    /** What is measured of the inner parts, as they are counted: {@code shafts}. */
    private String inners() {
        return Labels.word("press.parts", innerCode());
    }

    private String outerCode() {
        return joint.outer().bearing().isPresent() ? BEARING_RING : "hub";
    }

    private String innerCode() {
        if (joint.inner().bearing().isPresent()) {
            return BEARING_RING;
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
        String at = degrees(weakest.temperature());
        double grips = result.chances().reckoned().grip();
        boolean asked =
                joint.demand().force().isPresent() || joint.demand().torque().isPresent();
        if (asked) {
            return result.verdicts().grip()
                    ? Labels.text("press.grips-load", load(), at, inShare(grips))
                    : Labels.text("press.grips-load-not", load(), at, inShare(1 - grips));
        }
        if (!result.verdicts().grip()) {
            return Labels.text("press.loose", at, inShare(1 - grips));
        }
        if (result.basis() == Basis.LIMITS) {
            return Labels.text(
                    "press.grips-least",
                    force(weakest.axial().minimum(), RoundingMode.DOWN),
                    at,
                    Labels.text("press.share.every"));
        }
        double held = ordinaryForce();
        return held > 0
                ? Labels.text(
                        "press.grips-least",
                        force(held, RoundingMode.DOWN),
                        at,
                        Labels.text("press.share.pairs", "99.9 %"))
                : Labels.text("press.grips", at, inShare(grips));
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
        return Phrases.listed(loads);
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
        String at = degrees(coldIsWorse ? cold.temperature() : hot.temperature());
        OptionalDouble share = result.chances().reckoned().clearance();
        if (least >= 0) {
            String kept = rounded(least, least < 10 ? 1 : 0, RoundingMode.FLOOR);
            return Optional.of(
                    result.verdicts().clearance()
                            ? Labels.text("press.bearing-keeps", kept)
                            : Labels.text(
                                    "press.bearing-keeps-too-little",
                                    kept,
                                    joint.demand().leastClearance().toPlainString()));
        }
        String lost = minus(rounded(least, 1, RoundingMode.FLOOR));
        return Optional.of(
                share.isPresent()
                        ? Labels.text("press.bearing-without-share", at, lost, percentUp(1 - share.getAsDouble()))
                        : Labels.text("press.bearing-without", at, lost));
    }

    private String stress() {
        State tightest = result.tightest();
        double outer = tightest.outerStress().maximum() / result.model().outer().yield();
        double inner = tightest.innerStress().maximum() / result.model().inner().yield();
        String which = outer >= inner ? outer() : inner();
        String share = rounded(100 * Math.max(outer, inner), 0, RoundingMode.CEILING) + "\u00A0%";
        return Math.max(outer, inner) > 1
                ? Labels.text("press.beyond-yield", which, share)
                : Labels.text("press.at-yield", which, share);
    }

    private String inShare(double share) {
        if (result.basis() == Basis.LIMITS && share >= 1) {
            return Labels.text("press.share.every");
        }
        if (result.basis() == Basis.LIMITS) {
            return Labels.text("press.share.even", percentUp(share));
        }
        return Labels.text("press.share.pairs", percent(share));
    }

    /** A share as a percentage that promises no more than there is. */
    public static String percent(double share) {
        if (share >= 1) {
            return "100\u00A0%";
        }
        if (share > ALL_BUT) {
            return Labels.text("press.more-than", "99.99\u00A0%");
        }
        if (share > 0 && share < 1 - ALL_BUT) {
            return Labels.text("press.less-than", LEAST_SHARE);
        }
        return rounded(100 * share, 2, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    private static String percentUp(double share) {
        if (share > ALL_BUT) {
            return Labels.text("press.more-than", "99.99\u00A0%");
        }
        return share < 1 - ALL_BUT
                ? Labels.text("press.less-than", LEAST_SHARE)
                : rounded(100 * share, 2, RoundingMode.UP) + "\u00A0%";
    }

    /** The share of pairs that is asked for. */
    public static String shareAsked(double share) {
        if (share >= 1) {
            return Labels.text("press.every-pair");
        }
        return Labels.text(
                "press.of-pairs",
                new BigDecimal(100 * share)
                                .setScale(4, RoundingMode.HALF_EVEN)
                                .stripTrailingZeros()
                                .toPlainString()
                        + "\u00A0%");
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
            case LIMITS -> Labels.text("press.basis.limits");
            case MEASURED ->
                Labels.text(
                        "press.basis.measured",
                        result.outer().count(),
                        result.inner().count(),
                        inners());
            case MIXED ->
                Labels.text(
                        "press.basis.mixed",
                        Math.max(result.outer().count(), result.inner().count()),
                        result.outer().measured() ? Labels.text("press.bores") : inners());
            case PAIRED -> Labels.text("press.basis.paired", pairs());
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
                .ifPresent(matching ->
                        open.add(Labels.text("press.paired-do", matching.pairs().size())));
        String share = shareAsked(result.share());
        if (!result.verdicts().grip()) {
            open.add(Labels.text(
                    "press.holds-not",
                    share,
                    rounded(MICROMETRES * result.bounds().grip(), 1, RoundingMode.UP)));
        }
        if (!result.verdicts().stress()) {
            open.add(Labels.text(
                    "press.yields", share, rounded(MICROMETRES * result.bounds().yield(), 1, RoundingMode.DOWN)));
        }
        if (!result.verdicts().clearance()) {
            open.add(Labels.text(
                    "press.clearance-not", joint.demand().leastClearance().toPlainString(), share));
        }
        result.matching()
                .filter(matching -> !matching.left().isEmpty())
                .ifPresent(matching ->
                        open.add(Labels.text("press.left-over", matching.left().size())));
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
