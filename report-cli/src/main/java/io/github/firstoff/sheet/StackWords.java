package io.github.firstoff.sheet;

import io.github.firstoff.study.stack.StackResult;
import io.github.firstoff.words.Labels;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** A dimension loop in words. */
public final class StackWords {
    private static final double TINY = 0.0001;

    private final StackResult result;
    private final String unit;

    /** The words for one loop. */
    public StackWords(StackResult result) {
        this.result = result;
        this.unit = result.loop().unit().symbol();
    }

    /** The answer in one sentence. */
    public String answer() {
        String name = capital(result.loop().name());
        StackResult.Drawn drawn = result.drawn();
        String range = span(length(drawn.low()), length(drawn.high()));
        if (result.loop().gap().isOpen()) {
            return result.worst()
                    .map(worst -> Labels.text("stack.is-at-worst", name, range, plain(worst) + "\u00A0" + unit))
                    .orElseGet(() -> Labels.text("stack.is", name, range));
        }
        String wanted = result.loop().printed().orElse("") + "\u00A0" + unit;
        if (result.worstFits().orElse(false)) {
            return Labels.text(
                    "stack.fits-at-worst", name, wanted, plain(result.worst().orElseThrow()) + "\u00A0" + unit);
        }
        double outside = drawn.outside().map(StackResult.Outside::total).orElse(0.0);
        String found = outside == 0
                ? Labels.text("stack.stays", name, wanted, Phrases.count(drawn.draws()))
                : Labels.text("stack.leaves", name, wanted, share(outside));
        String worst = result.worst()
                .map(worstCase -> Labels.text("stack.at-worst", plain(worstCase) + "\u00A0" + unit))
                .orElse("");
        return found + worst
                + largest()
                        .map(member -> Labels.text("stack.matters-most", member))
                        .orElse("")
                + ".";
    }

    private String span(String low, String high) {
        return Labels.text("figures.span", low, high) + "\u00A0" + unit;
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private Optional<String> largest() {
        return result.members().stream()
                .max(Comparator.comparingDouble(StackResult.Contribution::ofVariance))
                .filter(member -> member.ofVariance() > 0)
                .map(member -> Labels.text(
                        "stack.of-variance",
                        member.member().name(),
                        FitWords.rounded(100 * member.ofVariance(), 0, RoundingMode.HALF_EVEN) + "\u00A0%"));
    }

    /** A share as a percentage. */
    public static String share(double share) {
        if (share == 0) {
            return Labels.text("stack.none-drawn");
        }
        return share < TINY
                ? Labels.text("press.less-than", "0.01\u00A0%")
                : FitWords.rounded(100 * share, share < 0.1 ? 2 : 1, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    /** Worst cases as exact figures. */
    public static String plain(StackResult.Exact range) {
        int places = Math.max(range.minimum().scale(), range.maximum().scale());
        return Labels.text(
                "figures.span",
                FitWords.minus(range.minimum().setScale(Math.max(places, 0)).toPlainString()),
                FitWords.minus(range.maximum().setScale(Math.max(places, 0)).toPlainString()));
    }

    /** A computed length, one decimal finer than the worst cases are written with. */
    public String length(double value) {
        int places = result.worst()
                .map(worst -> Math.max(
                        worst.minimum().stripTrailingZeros().scale(),
                        worst.maximum().stripTrailingZeros().scale()))
                .map(scale -> Math.max(scale, 0) + 1)
                .orElse(4);
        return FitWords.minus(FitWords.rounded(value, Math.min(places, 6), RoundingMode.HALF_EVEN));
    }
}
