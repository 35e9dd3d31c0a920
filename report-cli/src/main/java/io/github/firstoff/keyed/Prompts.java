package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.intake.KeyedTask;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.CountedRequirement;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.Stream;

/** What the dialogue asks, in words. */
final class Prompts {
    /** How many of the last readings a strip shows. */
    private static final int DRAWN = 25;

    /** A chart keeps so many columns for its strips, however long the names behind them are. */
    private static final int LEAST_DRAWN = 13;

    private static final String SET_IN = "    ";

    private final KeyedReadings session;
    private final Settings settings;
    private final Judge judge;

    Prompts(KeyedReadings session, Settings settings, Judge judge) {
        this.session = session;
        this.settings = settings;
        this.judge = judge;
    }

    /** The part with its hand. */
    String ownHand() {
        return session.plan().part().number()
                + session.plan()
                        .part()
                        .hand()
                        .map(Hand::word)
                        .map(word -> ", " + word)
                        .orElse("");
    }

    /** What is said before a task that differs from the one before it. */
    List<String> heading(String shownPiece, Optional<KeyedTask> before, KeyedTask task) {
        List<String> lines = new ArrayList<>();
        boolean byPiece = session.order() == KeyedOrder.PIECE;
        boolean otherPiece = !shownPiece.equals(task.part());
        boolean other = before.filter(last -> last.characteristic()
                        .number()
                        .equals(task.characteristic().number()))
                .isEmpty();
        if (byPiece && otherPiece) {
            List<String> pieces = session.pieces();
            lines.add("");
            lines.add("Piece " + task.part() + " (" + (pieces.indexOf(task.part()) + 1)
                    + (session.isClosed() ? " of " + pieces.size() : "") + ")");
        }
        if (other || (byPiece && otherPiece)) {
            if (!byPiece) {
                lines.add("");
            }
            lines.add(' ' + described(task.characteristic()));
            warnings(task.characteristic()).forEach(warning -> lines.add("    note: " + warning));
        }
        return lines;
    }

    /** The characteristic as the drawing has it, with its limits in figures and the gauge. */
    String described(ResolvedCharacteristic characteristic) {
        String limits = characteristic.isJudged() ? Phrases.limits(characteristic.limits()) : "";
        Unit unit = characteristic.limits().unit();
        return characteristic.number() + "  " + characteristic.characteristic().feature() + ": "
                + characteristic.characteristic().printed()
                + (limits.isEmpty() ? "" : "  (" + Found.withUnit(limits, unit) + ")")
                + (characteristic.isJudged() ? "" : "  (for information; not judged)")
                + gauge(characteristic);
    }

    private String gauge(ResolvedCharacteristic characteristic) {
        Optional<String> id = session.gaugeFor(characteristic)
                .or(() -> characteristic.characteristic().gauge());
        if (id.isEmpty()) {
            return session.plan().plan().gauges().isEmpty() ? "" : "  no gauge named";
        }
        return "  gauge " + id.get()
                + session.plan()
                        .gauge(id.get())
                        .flatMap(Gauge::kind)
                        .map(kind -> ", " + kind)
                        .orElse("");
    }

    private List<String> warnings(ResolvedCharacteristic characteristic) {
        LocalDate today = settings.time().get().toLocalDate();
        return session.gaugeFor(characteristic).flatMap(session.plan()::gauge).stream()
                .filter(gauge -> gauge.isOutOfCalibrationOn(today))
                .map(gauge -> "the calibration of gauge " + gauge.id() + " was due on "
                        + gauge.calibrationDue().orElseThrow())
                .toList();
    }

    /** The question itself. */
    String of(KeyedTask task, int placesKnown) {
        StringBuilder prompt = new StringBuilder("  ")
                .append(task.part())
                .append(", ")
                .append(task.characteristic().number());
        task.setting().ifPresent(setting -> prompt.append(" at ").append(setting));
        if (task.characteristic().isAttribute()) {
            return prompt.append(", pass or fail: ").toString();
        }
        if (task.isRepeated()) {
            prompt.append(", reading ").append(task.reading());
        }
        if (!task.axes().isEmpty()) {
            prompt.append(", ").append(task.axes().get(placesKnown));
        } else if (!task.possibleAxes().isEmpty()) {
            prompt.append(", value (or ")
                    .append(String.join(" ", task.possibleAxes()))
                    .append(')');
        }
        if (task.characteristic().characteristic().requirement() instanceof CountedRequirement) {
            prompt.append(", count on size ").append(session.size().isEmpty() ? "1" : session.size());
        }
        Unit unit = readingUnit(task.characteristic());
        prompt.append(unit.kind() == Unit.Kind.NONE ? "" : " in " + unit.word());
        return prompt.append(task.isRepeated() && task.reading() > 1 ? " (Enter goes on): " : ": ")
                .toString();
    }

    private Unit readingUnit(ResolvedCharacteristic characteristic) {
        return characteristic
                .characteristic()
                .requirement()
                .readingUnit(session.plan().plan().unit());
    }

    /** What is asked when nothing is to be measured. */
    String between(boolean needsPiece) {
        int skipped = session.skipped().size();
        String again = skipped == 0
                ? ""
                : skipped + (skipped == 1 ? " was skipped" : " were skipped") + ": again comes back to "
                        + (skipped == 1 ? "it" : "them") + "; ";
        if (needsPiece && session.order() == KeyedOrder.CHARACTERISTIC) {
            return session.pieces().isEmpty() ? "First piece: " : "Next piece (Enter when all are named): ";
        }
        if (needsPiece) {
            return session.pieces().isEmpty() ? "First piece: " : "Next piece (" + again + "stop ends): ";
        }
        return (skipped == 0 ? "Everything is measured; " : again) + "undo takes the last value back, stop ends: ";
    }

    /** What the readings kept so far come to, in words. */
    String keptVerdicts() {
        List<Judgement> judgements = session.plan().characteristics().stream()
                .filter(ResolvedCharacteristic::isJudged)
                .flatMap(each -> session.of(each.number()).stream()
                        .map(kept -> judge.judge(each, kept.getKey(), kept.getValue())))
                .toList();
        long conforming = judgements.stream()
                .filter(each -> each.verdict() == Verdict.CONFORMING)
                .count();
        return judgements.isEmpty()
                ? "nothing is judged yet"
                : conforming + " of " + Phrases.counted(judgements.size(), "reading", "readings")
                        + " kept so far conform";
    }

    /** The last readings of a characteristic against its limits, in so many columns at most; empty text if nothing can be drawn. */
    IntFunction<String> strip(ResolvedCharacteristic characteristic) {
        List<BigDecimal> values =
                last(characteristic).flatMap(each -> Found.drawn(each).stream()).toList();
        return columns -> Strip.of(characteristic.limits(), values, columns)
                .map(String::stripTrailing)
                .orElse("");
    }

    /** The same, a line for each reading with its piece, the last one last, in so many columns where the names leave room. */
    List<String> chart(ResolvedCharacteristic characteristic, int columns) {
        List<Judgement> last = last(characteristic).toList();
        int behind = last.stream()
                .mapToInt(each -> Wrapping.columns(behind(each)))
                .max()
                .orElse(0);
        int room = Math.max(columns - SET_IN.length() - behind, LEAST_DRAWN);
        return last.stream()
                .flatMap(each -> Found.drawn(each)
                        .flatMap(value -> Strip.of(characteristic.limits(), List.of(value), room))
                        .map(strip -> SET_IN + strip + behind(each))
                        .stream())
                .toList();
    }

    private static String behind(Judgement judgement) {
        return "  " + judgement.part() + "  " + Found.value(judgement.reading());
    }

    private Stream<Judgement> last(ResolvedCharacteristic characteristic) {
        List<Map.Entry<PartRecord, Reading>> all = session.of(characteristic.number());
        return all.subList(Math.max(0, all.size() - DRAWN), all.size()).stream()
                .map(each -> judge.judge(characteristic, each.getKey(), each.getValue()));
    }
}
