package io.github.firstoff.sheet;

import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A history in plain sentences: what happened from batch to batch, and what that does not say. */
public final class HistoryWords {
    private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);

    private final HistorySheet sheet;
    private final List<HistorySheet.Batch> measured;

    /** The words of one history. */
    public HistoryWords(HistorySheet sheet) {
        this.sheet = sheet;
        this.measured = sheet.batches().stream()
                .filter(batch -> batch.finding().summary().isPresent())
                .toList();
    }

    /** The sentence over the picture: conformance over all batches. */
    public String headline() {
        int readings = sheet.batches().stream()
                .mapToInt(batch -> batch.finding().result().judgements().size())
                .sum();
        int out = sheet.batches().stream()
                .mapToInt(batch -> batch.finding().result().count(Verdict.NONCONFORMING))
                .sum();
        int batches = sheet.batches().size();
        if (readings == 0) {
            return Labels.text("history.nothing", batches);
        }
        if (out == 0) {
            int open = sheet.batches().stream()
                    .mapToInt(batch -> batch.finding().result().count(Verdict.INCONCLUSIVE))
                    .sum();
            return open == 0
                    ? Labels.text("history.all-conform", readings, batches)
                    : Labels.text("history.open", open, readings, batches);
        }
        List<String> names = sheet.batches().stream()
                .filter(batch -> batch.finding().result().count(Verdict.NONCONFORMING) > 0)
                .map(HistorySheet.Batch::name)
                .toList();
        return Labels.text("history.out", out, readings, names.size(), Phrases.listed(names));
    }

    /** Two or three sentences: how far the level moved, which batches ran in control, and what neither says. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        level().ifPresent(sentences::add);
        control().ifPresent(sentences::add);
        sentences.add(Labels.text("history.caution"));
        return sentences;
    }

    private Optional<String> level() {
        if (measured.size() < 2) {
            return Optional.empty();
        }
        Comparator<HistorySheet.Batch> byMean = Comparator.comparing(
                batch -> batch.finding().summary().orElseThrow().mean());
        HistorySheet.Batch low = measured.stream().min(byMean).orElseThrow();
        HistorySheet.Batch high = measured.stream().max(byMean).orElseThrow();
        double apart = mean(high) - mean(low);
        String unit = sheet.characteristic().unit().symbol();
        String amount = shown(apart) + (unit.isEmpty() ? "" : "\u00A0" + unit);
        Limits limits = sheet.characteristic().limits();
        String share = limits.naturalLower()
                        || limits.width().isEmpty()
                        || limits.width().get().signum() == 0
                ? ""
                : Labels.text(
                        "history.share",
                        new BigDecimal(apart)
                                .multiply(new BigDecimal(100))
                                .divide(limits.width().get(), TWO_DIGITS)
                                .setScale(0, RoundingMode.HALF_EVEN)
                                .toPlainString());
        return Optional.of(Labels.text("history.level", amount, share, low.name(), high.name()));
    }

    private static double mean(HistorySheet.Batch batch) {
        return batch.finding().summary().orElseThrow().mean();
    }

    private static String shown(double value) {
        BigDecimal two = new BigDecimal(value).round(TWO_DIGITS);
        return (two.scale() < 0 ? two.setScale(0) : two).toPlainString();
    }

    private Optional<String> control() {
        List<HistorySheet.Batch> studied = sheet.batches().stream()
                .filter(batch -> batch.control().isPresent())
                .toList();
        if (studied.isEmpty()) {
            return Optional.of(Labels.text("history.no-study"));
        }
        long steady = studied.stream()
                .filter(batch -> batch.control().equals(Optional.of(ControlState.IN_CONTROL)))
                .count();
        return Optional.of(
                steady == 0
                        ? Labels.text("history.control-none", studied.size())
                        : Labels.text("history.control", steady, studied.size()));
    }

    /** The control state in a phrase. */
    public static String state(Optional<ControlState> control) {
        return control.map(state -> switch (state) {
                    case IN_CONTROL -> Labels.text("history.in-control");
                    case OUT_OF_CONTROL -> Labels.text("history.out-of-control");
                    case NOT_ASSESSED -> Labels.text("history.not-assessed");
                })
                .orElseGet(() -> Labels.text("history.no-chart"));
    }
}
