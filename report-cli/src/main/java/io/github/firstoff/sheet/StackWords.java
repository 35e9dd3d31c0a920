package io.github.firstoff.sheet;

import io.github.firstoff.study.stack.StackResult;
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
        String range = length(drawn.low()) + " to " + length(drawn.high()) + "\u00A0" + unit;
        if (result.loop().gap().isOpen()) {
            return name + " is " + range + " in 99.73\u00A0% of assemblies"
                    + result.worst()
                            .map(worst -> ", at worst " + plain(worst) + "\u00A0" + unit)
                            .orElse("")
                    + ".";
        }
        String wanted = result.loop().printed().orElse("");
        if (result.worstFits().orElse(false)) {
            return name + " is as wanted (" + wanted + "\u00A0" + unit + ") even at worst: "
                    + plain(result.worst().orElseThrow()) + "\u00A0" + unit + ".";
        }
        double outside = drawn.outside().map(StackResult.Outside::total).orElse(0.0);
        String worst = result.worst()
                .map(worstCase -> " (at worst " + plain(worstCase) + "\u00A0" + unit + ")")
                .orElse("");
        String found = outside == 0
                ? " stays within " + wanted + "\u00A0" + unit + " in all of " + drawn.draws() + " assemblies drawn"
                : " is outside " + wanted + "\u00A0" + unit + " in " + share(outside) + " of assemblies";
        return name + found + worst
                + largest().map(member -> "; " + member + " matters most").orElse("") + ".";
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private Optional<String> largest() {
        return result.members().stream()
                .max(Comparator.comparingDouble(StackResult.Contribution::ofVariance))
                .filter(member -> member.ofVariance() > 0)
                .map(member -> member.member().name() + " ("
                        + FitWords.rounded(100 * member.ofVariance(), 0, RoundingMode.HALF_EVEN)
                        + "\u00A0% of the variance)");
    }

    /** A share as a percentage. */
    public static String share(double share) {
        if (share == 0) {
            return "none drawn";
        }
        return share < TINY
                ? "less than 0.01\u00A0%"
                : FitWords.rounded(100 * share, share < 0.1 ? 2 : 1, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    /** Worst cases as exact figures. */
    public static String plain(StackResult.Exact range) {
        int places = Math.max(range.minimum().scale(), range.maximum().scale());
        return FitWords.minus(range.minimum().setScale(Math.max(places, 0)).toPlainString()) + " to "
                + FitWords.minus(range.maximum().setScale(Math.max(places, 0)).toPlainString());
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
