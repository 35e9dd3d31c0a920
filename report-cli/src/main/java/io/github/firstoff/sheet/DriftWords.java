package io.github.firstoff.sheet;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.study.drift.Advice;
import io.github.firstoff.study.drift.Drift;
import io.github.firstoff.study.drift.Forecast;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A study of drift in sentences, the same on paper and on the terminal. */
public final class DriftWords {
    private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);
    private static final double SMALL = 0.1;
    private static final double SHOWN = 0.05;

    private final DriftFinding finding;
    private final Drift drift;
    private final Unit unit;

    /** The words for one characteristic in one batch. */
    public DriftWords(DriftFinding finding) {
        this.finding = finding;
        this.drift = finding.drift();
        this.unit = finding.unit();
    }

    /** A computed size with one decimal more than the machine's offset, and its unit; never more than the readings and one. */
    public String size(double value) {
        int places = Math.min(
                drift.data().sample().scale().places() + 1,
                Math.max(0, drift.advice().increment().stripTrailingZeros().scale()) + 1);
        return with(
                new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString());
    }

    /** A small length with two significant digits: micrometres for millimetres. */
    public String amount(double value) {
        return figure(value) + "\u00A0" + (isSmall(value) ? "µm" : symbol());
    }

    private boolean isSmall(double value) {
        return unit == Unit.MILLIMETRE && Math.abs(value) < SMALL;
    }

    private String figure(double value) {
        return figure(value, isSmall(value));
    }

    private static String figure(double value, boolean small) {
        BigDecimal rounded = new BigDecimal(small ? value * 1000 : value).round(TWO_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.toPlainString().replace('-', '\u2212');
    }

    private String symbol() {
        return unit.symbol();
    }

    private String with(String figure) {
        return unit == Unit.NONE ? figure : figure + "\u00A0" + symbol();
    }

    /** An interval of small lengths in one unit. */
    public String amounts(ConfidenceInterval interval) {
        boolean small = isSmall(Math.max(Math.abs(interval.lower()), Math.abs(interval.upper())));
        String low = figure(interval.lower(), small);
        String high = figure(interval.upper(), small);
        return (low.equals(high) ? high : low + " to " + high) + "\u00A0" + (small ? "µm" : symbol());
    }

    /** A slope as it is told: {@code rises by 0.30 µm a piece}. */
    String slope(double slope) {
        return (slope > 0 ? "rises by " : "falls by ") + amount(Math.abs(slope)) + " a piece";
    }

    /** Number and name of the characteristic. */
    public String name() {
        return finding.number() + " "
                + finding.result().characteristic().characteristic().feature();
    }

    /** What the process does, when it meets the limit and what that leaves, in one sentence. */
    public String headline() {
        String subject = finding.result().characteristic().characteristic().feature();
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            String why = drift.current()
                    .trend()
                    .filter(trend -> forecast.reason().startsWith("The slope is not"))
                    .map(trend -> "no drift is shown")
                    .orElse("no forecast can be made");
            return capital(subject) + ": " + why + "." + offsetInShort();
        }
        double slope = drift.data()
                .sample()
                .scale()
                .length(forecast.line().orElseThrow().slope());
        String meets = limitName(forecast);
        if (forecast.isReached()) {
            return capital(subject) + " " + slope(slope) + " and meets the " + meets + " already:"
                    + offsetOrder(" offset now");
        }
        long left = forecast.remaining();
        return capital(subject) + " " + slope(slope) + " and meets the " + meets + " at piece "
                + forecast.lastGoodPiece() + ": "
                + Phrases.counted(left, "piece is", "pieces are") + " left." + offsetInShort();
    }

    private String offsetOrder(String otherwise) {
        return drift.advice()
                .offset()
                .filter(offset -> offset.signum() != 0)
                .map(offset -> " offset by " + signed(offset) + " now.")
                .orElse(otherwise + ".");
    }

    private String offsetInShort() {
        return drift.advice()
                .offset()
                .filter(offset -> offset.signum() != 0)
                .map(offset -> " Offset to enter: " + signed(offset) + ".")
                .orElse("");
    }

    /** A figure with its sign, true minus, and its unit. */
    public String signed(BigDecimal value) {
        return with(sign(value));
    }

    /** A figure with its sign and a true minus. */
    public static String sign(BigDecimal value) {
        return (value.signum() > 0 ? "+" : value.signum() < 0 ? "\u2212" : "")
                + value.abs().toPlainString();
    }

    private String limitName(Forecast forecast) {
        return (forecast.side() > 0 ? "upper limit" : "lower limit")
                + (finding.guard().signum() > 0 ? " less the guard band" : "");
    }

    /** {@code meets 40.048 mm at piece 148 (131 to 171), 28 left}, or why there is no forecast. */
    public String forecastInShort() {
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            return "no forecast: " + lower(forecast.reason());
        }
        return "meets " + with(forecast.limit().orElseThrow().toPlainString()) + " at piece "
                + forecast.lastGoodPiece() + " (" + bounds(forecast) + "), "
                + (forecast.isReached() ? "reached" : forecast.remaining() + " left");
    }

    /** The bounds of the piece number. */
    public static String bounds(Forecast forecast) {
        ConfidenceInterval bounds = forecast.interval().orElseThrow();
        long low = (long) Math.floor(bounds.lower());
        return Double.isInfinite(bounds.upper())
                ? low + " at the earliest"
                : low + " to " + (long) Math.floor(bounds.upper());
    }

    /** What happened: slope, spread, stretches. */
    public List<String> whatHappened() {
        List<String> sentences = new ArrayList<>();
        Drift.Segment current = drift.current();
        current.trend().ifPresent(trend -> {
            boolean shown = trend.significance() < SHOWN;
            sentences.add((shown
                            ? "From piece " + current.firstPiece() + " to " + current.lastPiece() + " the level "
                                    + slope(trend.slope()) + " (" + amounts(trend.slopeInterval())
                                    + " with 95 % confidence, "
                                    + probability(trend.significance()) + ")"
                            : "From piece " + current.firstPiece() + " to " + current.lastPiece()
                                    + " no slope is shown (" + amounts(trend.slopeInterval()) + " a piece, "
                                    + probability(trend.significance()) + ")")
                    + "; the pieces spread about that line with a standard deviation of "
                    + amount(trend.residualStandardDeviation()) + ".");
        });
        if (drift.segments().size() > 1) {
            drift.pooled()
                    .filter(pooled -> pooled.lines().lines() > 1)
                    .ifPresent(pooled -> sentences.add(
                            pooled.lines().equality() < SHOWN
                                    ? "The slopes of the stretches differ by more than chance ("
                                            + probability(pooled.lines().equality())
                                            + "): the tools do not wear alike, or conditions changed."
                                    : "Over all stretches together the slope is " + amounts(pooled.interval())
                                            + " a piece; nothing tells the stretches apart ("
                                            + probability(pooled.lines().equality()) + ")."));
        }
        unexplained().ifPresent(sentences::add);
        return sentences;
    }

    /** What the line does not explain; empty if nothing speaks against it. */
    private Optional<String> unexplained() {
        return drift.current().trend().flatMap(trend -> {
            if (trend.runs().significance() >= SHOWN) {
                return Optional.empty();
            }
            return Optional.of(
                    "The line does not explain everything: " + trend.runs().runs() + " runs above and below it where "
                            + String.format(Locale.ROOT, "%.0f", trend.runs().expected()) + " would be chance ("
                            + probability(trend.runs().significance()) + "), neighbours correlate by "
                            + String.format(Locale.ROOT, "%.2f", trend.lagOne().orElse(0))
                                    .replace('-', '\u2212') + ".");
        });
    }

    /** {@code p = 0.03}, {@code p < 0.001}. */
    public static String probability(double p) {
        return p < 0.001 ? "p < 0.001" : String.format(Locale.ROOT, p < 0.1 ? "p = %.3f" : "p = %.2f", p);
    }

    /** What it means: the forecast. */
    public List<String> whatItMeans() {
        List<String> sentences = new ArrayList<>();
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            sentences.add("No forecast: " + lower(forecast.reason()));
            return sentences;
        }
        double sigmas = drift.settings().sigmas();
        String distance = sigmas == 0 ? "the mean" : "the mean and " + plain(sigmas) + " standard deviations";
        sentences.add("If it goes on like this, " + distance + " meet "
                + with(forecast.limit().orElseThrow().toPlainString())
                + " (" + limitName(forecast) + ") at piece " + forecast.lastGoodPiece() + ", with 95 % confidence "
                + (Double.isInfinite(forecast.interval().orElseThrow().upper()) ? "at piece " : "between piece ")
                + bounds(forecast).replace(" to ", " and ") + "; a single piece may do so from piece "
                + (long) Math.ceil(forecast.singlePiece().orElseThrow()) + " on.");
        sentences.addAll(forecast.cautions());
        return sentences;
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** What may be done: offset, re-centring, tool life, the price of a piece. */
    public List<String> whatToDo() {
        List<String> sentences = new ArrayList<>();
        Advice advice = drift.advice();
        advice.offset()
                .filter(offset -> offset.signum() != 0)
                .ifPresent(offset -> sentences.add("Offset by "
                        + signed(offset) + " now: the next piece is expected at "
                        + size(advice.levelNow().orElseThrow())
                        + ", the target is "
                        + with(advice.target().orElseThrow().toPlainString()) + "."));
        if (advice.recentreTo().isPresent() && advice.toolLife().isPresent()) {
            sentences.add("For a whole tool life begin at "
                    + with(advice.recentreTo().get().toPlainString())
                    + advice.recentreOffset()
                            .map(offset -> " (from now: " + signed(offset) + ")")
                            .orElse("")
                    + "; the tool then keeps an index of "
                    + plain(advice.requiredIndex()) + " for "
                    + Phrases.counted(advice.toolLife().getAsLong(), "piece", "pieces")
                    + ", its drift centred between the limits.");
        } else if (advice.toolLife().isPresent()) {
            sentences.add("The index stays at " + plain(advice.requiredIndex()) + " or above for "
                    + Phrases.counted(advice.toolLife().getAsLong(), "more piece", "more pieces") + ".");
        }
        advice.indexPerPiece()
                .ifPresent(cost -> sentences.add("Each piece of wear costs "
                        + new BigDecimal(cost).round(TWO_DIGITS).toPlainString()
                        + " of the index"
                        + advice.indexNow().stream()
                                .mapToObj(now -> String.format(Locale.ROOT, ", which is %.2f at the next piece", now)
                                        .replace('-', '\u2212'))
                                .findFirst()
                                .orElse("")
                        + "."));
        sentences.addAll(advice.notes());
        return sentences;
    }

    /** What it does not say. */
    public String whatItDoesNot() {
        if (drift.forecast().piece().isEmpty()) {
            return drift.current()
                    .trend()
                    .filter(trend -> trend.residualStandardDeviation() > 0)
                    .map(trend -> "That no slope is shown does not mean that there is none: up to "
                            + amount(Math.max(
                                    Math.abs(trend.slopeInterval().lower()),
                                    Math.abs(trend.slopeInterval().upper())))
                            + " a piece would agree with these readings.")
                    .filter(words -> drift.current().trend().orElseThrow().significance() >= SHOWN)
                    .orElse("Without a forecast nothing is said of how long the process may go on. Measure on.");
        }
        return "The forecast knows of wear that goes on as it did, and of nothing else: an edge that chips, another bar of material, a"
                + " machine that warms up come without notice. Measure on.";
    }

    /** The caution that belongs to every offset. */
    public static String caution() {
        return "the offset is in the dimension as it is measured. A control that counts in the radius takes half of a"
                + " diameter, and which sign makes a bore larger depends on machine and tool: check both, and measure the first piece after it.";
    }

    /** One segment's start in words, with its evidence. */
    public String evidence(Drift.Segment segment) {
        StringBuilder words = new StringBuilder(capital(segment.start().reason()));
        segment.start()
                .evidence()
                .ifPresent(change -> words.append(String.format(
                        Locale.ROOT, " (F = %.1f, %s)", change.statistic(), atMost(change.significance()))));
        segment.jump()
                .ifPresent(jump -> words.append("; the level moves by ")
                        .append(jump.amount() < 0 ? "\u2212" : "+")
                        .append(amount(Math.abs(jump.amount()))));
        return words.toString();
    }

    private static String atMost(double significance) {
        return significance <= 0.001 ? "p ≤ 0.001" : probability(significance);
    }

    /** Everything for a terminal. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(name() + " ("
                + finding.result().characteristic().characteristic().printed() + "), " + finding.batch() + ": "
                + headline());
        for (Drift.Segment segment : drift.segments()) {
            lines.add("  pieces " + segment.firstPiece() + " to " + segment.lastPiece() + ", "
                    + segment.start().label()
                    + ": "
                    + segment.trend()
                            .map(trend -> "slope " + amounts(trend.slopeInterval()) + " a piece, "
                                    + probability(trend.significance()) + ", spread "
                                    + amount(trend.residualStandardDeviation()))
                            .orElse("too few readings for a line"));
        }
        whatItMeans().forEach(each -> lines.add("  " + each));
        whatToDo().forEach(each -> lines.add("  " + each));
        if (!finding.signals().isEmpty()) {
            lines.add("  "
                    + Phrases.counted(finding.signals().size(), "signal", "signals")
                    + " of zone tests on the residuals, the first at piece "
                    + drift.data().piece(finding.signals().get(0).at() - 1) + ".");
        }
        finding.notes().forEach(each -> lines.add("  " + each));
        return lines.stream().map(line -> line.replace('\u00A0', ' ')).toList();
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String lower(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
