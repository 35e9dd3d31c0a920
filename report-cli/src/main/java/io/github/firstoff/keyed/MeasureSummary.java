package io.github.firstoff.keyed;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.intake.KeyedTask;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.sheet.JsonDocument;
import io.github.firstoff.sheet.Phrases;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/**
 * What a session came to: the verdict on everything that is kept in its file, and what is left.
 *
 * <p>A piece that was named and not measured leaves the verdict incomplete, as does any characteristic that every piece needs.
 */
public final class MeasureSummary {
    private static final int MOST_EXCEPTIONS = 20;

    private final KeyedReadings session;
    private final Dialogue.End end;
    private final int keptNow;
    private final InspectionResult result;

    private MeasureSummary(KeyedReadings session, Dialogue.End end, int keptNow) {
        this.session = session;
        this.end = end;
        this.keptNow = keptNow;
        this.result = Judge.of(session.plan()).assess(session.record());
    }

    /**
     * The summary of a session that has ended and is still open.
     *
     * @param keptNow how many readings came to the file in it; negative if more were taken back than kept
     */
    public static MeasureSummary of(KeyedReadings session, Dialogue.End end, int keptNow) {
        return new MeasureSummary(session, end, keptNow);
    }

    /** Whether everything that was named is measured and accepted, and nothing that was questioned is left open. */
    public boolean isAccepted() {
        return verdict() == SheetVerdict.ACCEPTED && end != Dialogue.End.UNSETTLED;
    }

    /** The verdict on everything that is kept. */
    public SheetVerdict verdict() {
        return result.verdict();
    }

    /** What is to be measured and was not skipped: what is informative need not be. */
    private List<KeyedTask> left() {
        return session.open().stream()
                .filter(task -> task.characteristic().isJudged())
                .filter(task -> !(task.isRepeated() && task.reading() > 1))
                .toList();
    }

    /** The summary in a few lines. */
    public List<String> lines() {
        PartIdentity part = session.plan().part();
        List<String> lines = new ArrayList<>();
        lines.add("Measured: " + part.number() + " revision " + part.revision()
                + part.hand().map(hand -> ", " + hand.word()).orElse(""));
        lines.add(Phrases.headline(verdict()) + ": " + result.count(Verdict.CONFORMING) + " of "
                + Phrases.counted(result.judged().size(), "characteristic", "characteristics") + " conform on "
                + Phrases.counted(session.pieces().size(), "piece", "pieces") + ".");
        List<String> exceptions = exceptions();
        lines.addAll(exceptions.subList(0, Math.min(MOST_EXCEPTIONS, exceptions.size())));
        if (exceptions.size() > MOST_EXCEPTIONS) {
            lines.add("  and " + (exceptions.size() - MOST_EXCEPTIONS) + " more");
        }
        lines.add("Kept: " + Phrases.counted(session.count(), "reading", "readings") + " in " + session.name() + "; "
                + left().size() + " left to measure, " + session.skipped().size() + " skipped.");
        if (end == Dialogue.End.UNSETTLED) {
            lines.add(
                    "What was questioned at the beginning is not settled; nothing was measured and nothing was changed.");
        }
        return lines;
    }

    private List<String> exceptions() {
        List<String> lines = new ArrayList<>();
        for (CharacteristicResult each : result.characteristics()) {
            ResolvedCharacteristic characteristic = each.characteristic();
            if (!characteristic.isJudged()) {
                continue;
            }
            String begin = "  " + each.number() + "  "
                    + characteristic.characteristic().printed() + "  ";
            for (Judgement judgement : each.judgements()) {
                if (judgement.verdict() != Verdict.CONFORMING) {
                    lines.add(begin + judgement.part() + "  " + Found.value(judgement.reading()) + "  "
                            + Found.verdict(characteristic, judgement));
                }
            }
            if (!each.missing().isEmpty()) {
                lines.add(begin + "not measured on " + Phrases.missing(each));
            } else if (each.judgements().isEmpty()) {
                lines.add(begin + "not measured");
            }
        }
        return lines;
    }

    /** Writes the summary as one JSON document and a line end (docs/schemas/measure.schema.json); the writer stays open. */
    public void writeJson(Writer target) {
        JsonDocument.write(target, this::document);
    }

    private void document(JsonDocument out) throws IOException {
        PartIdentity part = session.plan().part();
        out.text("command", "measure");
        out.text("part", part.number());
        out.text("revision", part.revision());
        out.text("verdict", verdict().word());
        out.text("end", end.word());
        out.flag("resumed", session.isResumed());
        out.text("readings", session.name());
        out.whole("kept", session.count());
        out.whole("keptNow", keptNow);
        out.texts("pieces", session.pieces());
        out.object("counts", () -> {
            out.whole("characteristics", result.judged().size());
            out.whole("conforming", result.count(Verdict.CONFORMING));
            out.whole("nonconforming", result.count(Verdict.NONCONFORMING));
            out.whole("inconclusive", result.count(Verdict.INCONCLUSIVE));
            out.whole("notMeasured", result.count(Verdict.NOT_MEASURED));
        });
        out.array("characteristics", () -> {
            for (CharacteristicResult each : result.characteristics()) {
                out.item(() -> characteristic(out, each));
            }
        });
        tasks(out, "skipped", session.skipped());
        tasks(out, "left", left());
        out.texts("repairs", session.repairs());
    }

    private static void characteristic(JsonDocument out, CharacteristicResult each) throws IOException {
        ResolvedCharacteristic characteristic = each.characteristic();
        out.text("number", each.number());
        out.text("requirement", characteristic.characteristic().printed());
        out.decimal("lower", characteristic.limits().lower());
        out.decimal("upper", characteristic.limits().upper());
        if (characteristic.isJudged()) {
            out.text("verdict", each.verdict().word());
        } else {
            out.nothing("verdict");
        }
        out.whole("count", each.judgements().size());
        out.whole("nonconforming", count(each, Verdict.NONCONFORMING));
        out.whole("inconclusive", count(each, Verdict.INCONCLUSIVE));
    }

    private static long count(CharacteristicResult each, Verdict verdict) {
        return each.judgements().stream()
                .filter(judgement -> judgement.verdict() == verdict)
                .count();
    }

    private static void tasks(JsonDocument out, String name, List<KeyedTask> tasks) throws IOException {
        out.array(name, () -> {
            for (KeyedTask task : tasks) {
                out.item(() -> {
                    out.text("part", task.part());
                    out.text("characteristic", task.characteristic().number());
                    if (task.setting().isPresent()) {
                        out.text("setting", task.setting());
                    }
                });
            }
        });
    }
}
