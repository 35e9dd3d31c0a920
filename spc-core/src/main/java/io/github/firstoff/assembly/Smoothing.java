package io.github.firstoff.assembly;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How much of the interference is lost because the surfaces are smoothed: G = factor·(Rz outer + Rz inner).
 *
 * @param word the word in files
 * @param factor from 0 to 2
 * @param origin where the factor comes from
 */
public record Smoothing(String word, BigDecimal factor, Remark origin) {
    /** DIN 7190-1:2017, by a secondary description of the standard: 0.4 Rz of each surface. */
    public static final Smoothing DIN_7190_1_2017 = new Smoothing(
            "din-7190-1-2017",
            new BigDecimal("0.4"),
            Remark.of("smoothing.din-7190-1-2017", "DIN 7190-1:2017: 0.4 (Rz outer + Rz inner)"));

    /** DIN 7190:2001, by the same description: 0.8 Rz of each surface. */
    public static final Smoothing DIN_7190_2001 = new Smoothing(
            "din-7190-2001",
            new BigDecimal("0.8"),
            Remark.of("smoothing.din-7190-2001", "DIN 7190:2001: 0.8 (Rz outer + Rz inner)"));

    /** None. */
    public static final Smoothing NONE =
            new Smoothing("none", BigDecimal.ZERO, Remark.of("smoothing.none", "no smoothing, as stated"));

    private static final List<Smoothing> NAMED = List.of(DIN_7190_1_2017, DIN_7190_2001, NONE);

    /** The words in files. */
    public static List<String> words() {
        return NAMED.stream().map(Smoothing::word).toList();
    }

    /** The rule that a word means; empty if none. */
    public static Optional<Smoothing> parse(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return NAMED.stream().filter(each -> each.word.equals(wanted)).findFirst();
    }

    /** A factor that a file states itself. */
    public static Smoothing stated(BigDecimal factor) {
        return new Smoothing(
                factor.toPlainString(),
                factor,
                Remark.of("smoothing.stated", "{0} (Rz outer + Rz inner), as stated", factor.toPlainString()));
    }

    /** Where the factor comes from, in English. */
    public String source() {
        return origin.english();
    }

    /** The interference that is lost, in millimetres, of two roughnesses in micrometres. */
    public BigDecimal loss(BigDecimal outerRz, BigDecimal innerRz) {
        return factor.multiply(outerRz.add(innerRz)).movePointLeft(3);
    }
}
