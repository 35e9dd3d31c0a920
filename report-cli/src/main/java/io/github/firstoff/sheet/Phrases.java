package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Fit;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Verdicts in words with their amount, the same on paper, on the terminal and in messages. */
public final class Phrases {
    /** More decimals than any gauge shows come from a conversion. */
    private static final int LONGEST_AMOUNT = 8;

    private static final MathContext CONVERTED_AMOUNT = new MathContext(4, RoundingMode.HALF_EVEN);

    /** From here on a count is set in groups of three digits. */
    private static final long GROUPED = 10_000;

    private Phrases() {}

    /**
     * A count in digits, in groups of three where it is long. The groups stand a narrow space apart (ISO 80000-1, 7.3.1): a comma or a point
     * is a decimal mark in one country or the other.
     */
    public static String count(long count) {
        String digits = Long.toString(count);
        return Math.abs(count) < GROUPED ? digits : digits.replaceAll("(?<=\\d)(?=(\\d{3})+$)", "\u202F");
    }

    /** {@code conforms}, {@code over by 0.004}, {@code not proven (0.001 inside, U 0.002)}, {@code failed}. */
    public static String of(Judgement judgement) {
        if (judgement.reading() instanceof Reading.Observed observed) {
            return Labels.text(observed.pass() ? "phrase.conforms" : "phrase.failed");
        }
        return switch (judgement.verdict()) {
            case CONFORMING -> Labels.text("phrase.conforms");
            case NONCONFORMING -> departure(judgement);
            case INCONCLUSIVE ->
                judgement
                        .uncertainty()
                        .map(u -> Labels.text("phrase.open", place(judgement), shown(judgement, u)))
                        .orElseGet(() -> Labels.text("phrase.open-without-uncertainty", place(judgement)));
            case NOT_MEASURED -> Labels.text("phrase.not-measured");
        };
    }

    /** By how much a value lies outside: {@code over by 0.004} or {@code under by 0.004}. */
    public static String departure(Judgement judgement) {
        return judgement
                .departure()
                .map(amount -> Labels.text(
                        amount.signum() > 0 ? "phrase.over" : "phrase.under", shown(judgement, amount.abs())))
                .orElseGet(() -> Labels.text("phrase.outside"));
    }

    /**
     * An amount beside a verdict: as it is where the reading was judged as read; where a correction or a conversion has made it
     * longer, with one place more than the reading has, but never so short that nothing is left.
     */
    private static String shown(Judgement judgement, BigDecimal amount) {
        if (!(judgement.reading() instanceof Reading.Measured measured)
                || (judgement.correction().isEmpty()
                        && measured.unit() == judgement.allowed().limits().unit())) {
            return plain(amount);
        }
        int places = Math.max(measured.value().scale(), 0) + 1;
        BigDecimal shortened = amount.setScale(places, RoundingMode.HALF_EVEN);
        return plain(amount.scale() <= places || shortened.signum() == 0 ? amount : shortened);
    }

    /** The clearance and interference of a pair by its limits, in words with the unit. */
    public static String fit(Fit fit) {
        String unit = " " + fit.unit().symbol();
        return switch (fit.kind()) {
            case CLEARANCE ->
                Labels.text("fit.clearance", plain(fit.minimumClearance()), plain(fit.maximumClearance()) + unit);
            case INTERFERENCE ->
                Labels.text(
                        "fit.interference", plain(fit.minimumInterference()), plain(fit.maximumInterference()) + unit);
            case TRANSITION ->
                Labels.text(
                        "fit.transition",
                        plain(fit.maximumInterference()) + unit,
                        plain(fit.maximumClearance()) + unit);
        };
    }

    private static String place(Judgement judgement) {
        return judgement
                .inside()
                .map(amount -> amount.signum() == 0
                        ? Labels.text("phrase.on-limit")
                        : Labels.text("phrase.inside", shown(judgement, amount)))
                .orElseGet(() -> departure(judgement));
    }

    /** The verdict on a characteristic over all its pieces, in one phrase. */
    public static String of(CharacteristicResult result) {
        if (!result.characteristic().isJudged()) {
            return Labels.text("phrase.not-judged");
        }
        int readings = result.judgements().size();
        return switch (result.verdict()) {
            case CONFORMING -> readings == 1 ? of(result.judgements().get(0)) : Labels.text("phrase.all-conform");
            case NONCONFORMING -> outOf(result, Verdict.NONCONFORMING, "phrase.out-of");
            case INCONCLUSIVE -> outOf(result, Verdict.INCONCLUSIVE, "phrase.open-of");
            case NOT_MEASURED ->
                readings == 0
                        ? Labels.text("phrase.not-measured")
                        : Labels.text("phrase.not-measured-on", missing(result));
        };
    }

    private static String outOf(CharacteristicResult result, Verdict verdict, String key) {
        List<Judgement> concerned = result.judgements().stream()
                .filter(each -> each.verdict() == verdict)
                .toList();
        if (result.judgements().size() == 1) {
            return of(concerned.get(0));
        }
        return Labels.text(key, concerned.size(), result.judgements().size());
    }

    /** The pieces that lack a reading, named while they are few. */
    public static String missing(CharacteristicResult result) {
        List<String> names =
                result.absent().stream().map(each -> Labels.text(each.remark())).toList();
        return result.missingCount() == names.size()
                ? listed(names)
                : Labels.text("list.more", String.join(", ", names.subList(0, 3)), result.missingCount() - 3);
    }

    /** {@code A}, {@code A and B}, {@code A, B and C}, {@code A, B, C and 4 more}. */
    public static String listed(List<String> names) {
        int most = 4;
        if (names.size() == 1) {
            return names.get(0);
        }
        if (names.size() > most) {
            return Labels.text("list.more", String.join(", ", names.subList(0, most - 1)), names.size() - most + 1);
        }
        return Labels.text(
                "list.last", String.join(", ", names.subList(0, names.size() - 1)), names.get(names.size() - 1));
    }

    /** The same as a remark, of names or of remarks. */
    static Remark listing(List<?> names) {
        int most = 4;
        if (names.size() == 1) {
            return names.get(0) instanceof Remark remark
                    ? remark
                    : Remark.verbatim(names.get(0).toString());
        }
        return names.size() > most
                ? Remark.of(
                        "list.more", "{0} and {1} more", commas(names.subList(0, most - 1)), names.size() - most + 1)
                : Remark.of(
                        "list.last",
                        "{0} and {1}",
                        commas(names.subList(0, names.size() - 1)),
                        names.get(names.size() - 1));
    }

    private static Remark commas(List<?> names) {
        return Remark.joined(
                ", ",
                names.stream()
                        .map(name -> name instanceof Remark remark ? remark : Remark.verbatim(name.toString()))
                        .toList());
    }

    /** {@code 1 piece}, {@code 3 pieces}. */
    public static String counted(long count, String one, String several) {
        return count + " " + (count == 1 ? one : several);
    }

    /** The verdict of a sheet as one word with a capital. */
    public static String headline(SheetVerdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> Labels.text("verdict.accepted");
            case REJECTED -> Labels.text("verdict.rejected");
            case INCONCLUSIVE -> Labels.text("verdict.inconclusive");
            case INCOMPLETE -> Labels.text("verdict.incomplete");
        };
    }

    /** The limits in figures: {@code 51.949 to 51.979}, {@code at least 12}, {@code at most 0.8}. */
    public static String limits(Limits limits) {
        if (limits.naturalLower()) {
            return limits.upper().map(upper -> "at most " + plain(upper)).orElse("");
        }
        if (limits.lower().isPresent() && limits.upper().isPresent()) {
            return plain(limits.lower().get()) + " to " + plain(limits.upper().get());
        }
        return limits.lower()
                .map(lower -> "at least " + plain(lower))
                .or(() -> limits.upper().map(upper -> "at most " + plain(upper)))
                .orElse("");
    }

    /**
     * A decimal without an exponent, zeros kept as they were written. An amount that was converted into another unit and has no
     * finite decimal there is shortened to what a reader can use.
     */
    public static String plain(BigDecimal value) {
        BigDecimal shown = value.scale() > LONGEST_AMOUNT ? value.round(CONVERTED_AMOUNT) : value;
        return shown.toPlainString();
    }
}
