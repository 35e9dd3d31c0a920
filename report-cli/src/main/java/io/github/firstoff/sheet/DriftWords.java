package io.github.firstoff.sheet;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.study.drift.Advice;
import io.github.firstoff.study.drift.Drift;
import io.github.firstoff.study.drift.Forecast;
import io.github.firstoff.words.Labels;
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
        return (low.equals(high) ? high : Labels.text("figures.span", low, high)) + "\u00A0"
                + (small ? "µm" : symbol());
    }

    /** A slope as it is told: {@code rises by 0.30 µm a piece}. */
    String slope(double slope) {
        return Labels.text(slope > 0 ? "drift.rises" : "drift.falls", amount(Math.abs(slope)));
    }

    /** Number and name of the characteristic. */
    public String name() {
        return finding.number() + " "
                + finding.result().characteristic().characteristic().feature();
    }

    /** What the batch is called. */
    public String batch() {
        return finding.batch().equals(DriftFinding.ALL_FILES) ? Labels.text("drift.all-files") : finding.batch();
    }

    /** What a stretch is called. */
    public String label(Drift.Segment segment) {
        return Labels.text(segment.start().name());
    }

    /** What the process does, when it meets the limit and what that leaves, in one sentence. */
    public String headline() {
        String subject =
                capital(finding.result().characteristic().characteristic().feature());
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            return Labels.text(
                    isDriftless() ? "drift.headline.none" : "drift.headline.no-forecast", subject, offsetInShort());
        }
        String slope = slope(drift.data()
                .sample()
                .scale()
                .length(forecast.line().orElseThrow().slope()));
        String limit = limitName(forecast);
        if (forecast.isReached()) {
            return offset().map(offset -> Labels.text("drift.headline.reached-offset", subject, slope, limit, offset))
                    .orElseGet(() -> Labels.text("drift.headline.reached", subject, slope, limit));
        }
        return Labels.text(
                "drift.headline.ahead",
                subject,
                slope,
                limit,
                forecast.lastGoodPiece(),
                forecast.remaining(),
                offsetInShort());
    }

    /** Whether a line was drawn and no slope of it is shown. */
    private boolean isDriftless() {
        return drift.current().trend().isPresent()
                && drift.forecast().why().key().equals("forecast.no-slope");
    }

    /** The offset to enter, with sign and unit; empty where there is none to enter. */
    private Optional<String> offset() {
        return drift.advice().offset().filter(offset -> offset.signum() != 0).map(this::signed);
    }

    private String offsetInShort() {
        return offset().map(offset -> Labels.text("drift.offset-to-enter", offset))
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
        boolean upper = forecast.side() > 0;
        if (finding.guard().signum() > 0) {
            return Labels.text(upper ? "drift.upper-guarded" : "drift.lower-guarded");
        }
        return Labels.text(upper ? "line.upper-limit" : "line.lower-limit");
    }

    /** {@code meets 40.048 mm at piece 148 (131 to 171), 28 left}, or why there is no forecast. */
    public String forecastInShort() {
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            return Labels.text("drift.short.none", clause(Labels.text(forecast.why())));
        }
        return Labels.text(
                "drift.short",
                with(forecast.limit().orElseThrow().toPlainString()),
                forecast.lastGoodPiece(),
                bounds(forecast),
                forecast.isReached() ? Labels.text("drift.reached") : Labels.text("drift.left", forecast.remaining()));
    }

    /** The bounds of the piece number. */
    public static String bounds(Forecast forecast) {
        ConfidenceInterval bounds = forecast.interval().orElseThrow();
        long low = (long) Math.floor(bounds.lower());
        return Double.isInfinite(bounds.upper())
                ? Labels.text("drift.earliest", low)
                : Labels.text("figures.span", low, (long) Math.floor(bounds.upper()));
    }

    /** What happened: slope, spread, stretches. */
    public List<String> whatHappened() {
        List<String> sentences = new ArrayList<>();
        Drift.Segment current = drift.current();
        current.trend().ifPresent(trend -> {
            boolean shown = trend.significance() < SHOWN;
            String spread = amount(trend.residualStandardDeviation());
            sentences.add(
                    shown
                            ? Labels.text(
                                    "drift.level-moves",
                                    current.firstPiece(),
                                    current.lastPiece(),
                                    slope(trend.slope()),
                                    amounts(trend.slopeInterval()),
                                    probability(trend.significance()),
                                    spread)
                            : Labels.text(
                                    "drift.no-slope",
                                    current.firstPiece(),
                                    current.lastPiece(),
                                    amounts(trend.slopeInterval()),
                                    probability(trend.significance()),
                                    spread));
        });
        if (drift.segments().size() > 1) {
            drift.pooled()
                    .filter(pooled -> pooled.lines().lines() > 1)
                    .ifPresent(pooled -> sentences.add(
                            pooled.lines().equality() < SHOWN
                                    ? Labels.text(
                                            "drift.slopes-differ",
                                            probability(pooled.lines().equality()))
                                    : Labels.text(
                                            "drift.slopes-alike",
                                            amounts(pooled.interval()),
                                            probability(pooled.lines().equality()))));
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
            return Optional.of(Labels.text(
                    "drift.unexplained",
                    trend.runs().runs(),
                    String.format(Locale.ROOT, "%.0f", trend.runs().expected()),
                    probability(trend.runs().significance()),
                    String.format(Locale.ROOT, "%.2f", trend.lagOne().orElse(0)).replace('-', '\u2212')));
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
            sentences.add(Labels.text("drift.no-forecast", clause(Labels.text(forecast.why()))));
            return sentences;
        }
        double sigmas = drift.settings().sigmas();
        ConfidenceInterval bounds = forecast.interval().orElseThrow();
        long low = (long) Math.floor(bounds.lower());
        sentences.add(Labels.text(
                sigmas == 0 ? "drift.if-it-goes-on-mean" : "drift.if-it-goes-on",
                with(forecast.limit().orElseThrow().toPlainString()),
                limitName(forecast),
                forecast.lastGoodPiece(),
                Double.isInfinite(bounds.upper())
                        ? Labels.text("drift.at-earliest", low)
                        : Labels.text("drift.between", low, (long) Math.floor(bounds.upper())),
                (long) Math.ceil(forecast.singlePiece().orElseThrow()),
                plain(sigmas)));
        forecast.warnings().forEach(each -> sentences.add(Labels.text(each)));
        return sentences;
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** What may be done: offset, re-centring, tool life, the price of a piece. */
    public List<String> whatToDo() {
        List<String> sentences = new ArrayList<>();
        Advice advice = drift.advice();
        offset().ifPresent(offset -> sentences.add(Labels.text(
                "drift.offset-now",
                offset,
                size(advice.levelNow().orElseThrow()),
                with(advice.target().orElseThrow().toPlainString()))));
        if (advice.recentreTo().isPresent() && advice.toolLife().isPresent()) {
            sentences.add(Labels.text(
                    "drift.recentre",
                    with(advice.recentreTo().get().toPlainString()),
                    advice.recentreOffset()
                            .map(offset -> Labels.text("drift.recentre-from-now", signed(offset)))
                            .orElse(""),
                    plain(advice.requiredIndex()),
                    advice.toolLife().getAsLong()));
        } else if (advice.toolLife().isPresent()) {
            sentences.add(Labels.text(
                    "drift.tool-life",
                    plain(advice.requiredIndex()),
                    advice.toolLife().getAsLong()));
        }
        advice.indexPerPiece().ifPresent(cost -> {
            String price = new BigDecimal(cost).round(TWO_DIGITS).toPlainString();
            sentences.add(
                    advice.indexNow().isPresent()
                            ? Labels.text(
                                    "drift.price-now",
                                    price,
                                    String.format(
                                                    Locale.ROOT,
                                                    "%.2f",
                                                    advice.indexNow().getAsDouble())
                                            .replace('-', '\u2212'))
                            : Labels.text("drift.price", price));
        });
        advice.remarks().forEach(each -> sentences.add(Labels.text(each)));
        return sentences;
    }

    /** What it does not say. */
    public String whatItDoesNot() {
        if (drift.forecast().piece().isEmpty()) {
            return drift.current()
                    .trend()
                    .filter(trend -> trend.residualStandardDeviation() > 0)
                    .filter(trend -> trend.significance() >= SHOWN)
                    .map(trend -> Labels.text(
                            "drift.not-shown-not-none",
                            amount(Math.max(
                                    Math.abs(trend.slopeInterval().lower()),
                                    Math.abs(trend.slopeInterval().upper())))))
                    .orElseGet(() -> Labels.text("drift.says-nothing"));
        }
        return Labels.text("drift.knows-only-wear");
    }

    /** The caution that belongs to every offset. */
    public static String caution() {
        return Labels.text("drift.caution");
    }

    /** One segment's start in words, with its evidence. */
    public String evidence(Drift.Segment segment) {
        StringBuilder words =
                new StringBuilder(capital(Labels.text(segment.start().why())));
        segment.start()
                .evidence()
                .ifPresent(change -> words.append(String.format(
                        Locale.ROOT, " (F = %.1f, %s)", change.statistic(), atMost(change.significance()))));
        segment.jump()
                .ifPresent(jump -> words.append(Labels.text(
                        "drift.jump", (jump.amount() < 0 ? "\u2212" : "+") + amount(Math.abs(jump.amount())))));
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

    /** A sentence as it follows a colon: in English with a small letter. */
    private static String clause(String sentence) {
        return sentence.isEmpty() || !Labels.spoken().getLanguage().equals("en")
                ? sentence
                : sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
    }
}
