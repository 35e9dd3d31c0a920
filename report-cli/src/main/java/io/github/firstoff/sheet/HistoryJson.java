package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.study.capability.Index;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import java.util.OptionalDouble;

/** The JSON result of a history (docs/schemas/history-result.schema.json): limits and readings as decimal text, statistics as numbers. */
public final class HistoryJson {
    private HistoryJson() {}

    /** Writes the document and a line end; the writer stays open. */
    public static void write(HistorySheet sheet, Writer target) {
        HistoryWords words = new HistoryWords(sheet);
        JsonDocument.write(target, out -> {
            out.text("command", "history");
            out.text("part", sheet.plan().part().number());
            out.text("revision", sheet.plan().part().revision());
            out.text("verdict", sheet.accepted() ? "accepted" : "not-accepted");
            out.object("characteristic", () -> {
                out.text("number", sheet.characteristic().number());
                out.text("feature", sheet.characteristic().characteristic().feature());
                out.text("requirement", sheet.characteristic().characteristic().printed());
                out.text("unit", sheet.characteristic().unit().word());
                out.decimal("lower", sheet.characteristic().limits().lower());
                out.decimal("upper", sheet.characteristic().limits().upper());
            });
            out.array("batches", () -> {
                for (HistorySheet.Batch batch : sheet.batches()) {
                    out.item(() -> batch(out, batch));
                }
            });
            out.text("says", words.headline() + " " + String.join(" ", words.sentences()));
            out.texts("notices", sheet.notices());
            out.provenance(sheet.provenance());
        });
    }

    private static void batch(JsonDocument out, HistorySheet.Batch batch) throws IOException {
        CharacteristicResult result = batch.finding().result();
        Optional<Summary> summary = batch.finding().summary();
        out.text("batch", batch.name());
        out.text("file", batch.file());
        out.text("verdict", result.verdict().word());
        out.whole("count", result.judgements().size());
        out.whole("nonconforming", result.count(Verdict.NONCONFORMING));
        out.whole("inconclusive", result.count(Verdict.INCONCLUSIVE));
        out.whole("missing", result.missingCount());
        out.decimal("minimum", summary.map(Summary::minimum));
        out.decimal("maximum", summary.map(Summary::maximum));
        out.number("mean", summary.map(each -> OptionalDouble.of(each.mean())).orElse(OptionalDouble.empty()));
        out.number("standardDeviation", summary.map(Summary::standardDeviation).orElse(OptionalDouble.empty()));
        out.text("control", batch.control().map(ControlState::word));
        Optional<Index> shown = batch.cpk().filter(index -> batch.showsCpk());
        out.number("cpk", shown.map(Index::value).orElse(OptionalDouble.empty()));
        out.number(
                "cpkLower",
                shown.flatMap(Index::interval)
                        .map(each -> OptionalDouble.of(each.lower()))
                        .orElse(OptionalDouble.empty()));
        out.number(
                "cpkUpper",
                shown.flatMap(Index::interval)
                        .map(each -> OptionalDouble.of(each.upper()))
                        .orElse(OptionalDouble.empty()));
        out.text(
                "cpkReason",
                batch.cpk()
                        .filter(index -> !batch.showsCpk())
                        .map(index -> index.reason().isEmpty() ? "The process was not in control." : index.reason()));
    }
}
