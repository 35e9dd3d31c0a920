package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.drift.Advice;
import io.github.firstoff.study.drift.Drift;
import io.github.firstoff.study.drift.Forecast;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The JSON result of a study of drift (docs/schemas/drift-result.schema.json). */
public final class DriftJson {
    private final DriftSheet sheet;
    private final JsonDocument out;

    private DriftJson(DriftSheet sheet, JsonDocument out) {
        this.sheet = sheet;
        this.out = out;
    }

    /** Writes the document and a line end; the writer stays open. */
    public static void write(DriftSheet sheet, Writer target) {
        JsonDocument.write(target, document -> new DriftJson(sheet, document).document());
    }

    private void document() throws IOException {
        PartIdentity part = sheet.sheet().plan().part();
        out.text("command", "drift");
        out.text("part", part.number());
        out.text("revision", part.revision());
        out.text("hand", part.hand().map(hand -> hand.word()));
        out.text("batch", sheet.sheet().job().batch());
        out.text("verdict", sheet.verdict().word());
        out.texts("notices", sheet.sheet().notices());
        out.array("characteristics", () -> {
            for (DriftFinding finding : sheet.findings()) {
                out.item(() -> characteristic(finding));
            }
        });
        out.array("notFollowed", () -> {
            for (DriftSheet.Left left : sheet.left()) {
                out.item(() -> {
                    out.text("number", left.number());
                    out.text("reason", left.reason());
                });
            }
        });
        out.provenance(sheet.sheet().provenance());
    }

    private void characteristic(DriftFinding finding) throws IOException {
        CharacteristicResult result = finding.result();
        Drift drift = finding.drift();
        out.text("number", finding.number());
        out.text("feature", result.characteristic().characteristic().feature());
        out.text("requirement", result.characteristic().characteristic().printed());
        out.text("batch", finding.batch());
        out.text("unit", finding.unit().word());
        out.decimal("lower", result.characteristic().limits().lower());
        out.decimal("upper", result.characteristic().limits().upper());
        out.decimal("guardBand", finding.guard());
        out.text("verdict", finding.verdict().word());
        out.text("attention", finding.attention().word());
        out.whole("count", finding.judgements().size());
        out.array("segments", () -> {
            for (Drift.Segment segment : drift.segments()) {
                out.item(() -> segment(segment));
            }
        });
        pooled(drift);
        forecast(drift);
        advice(drift.advice());
        indices(finding);
        signals(finding);
        out.texts("notes", finding.notes());
    }

    private void interval(String name, Optional<ConfidenceInterval> interval) throws IOException {
        if (interval.isEmpty()) {
            out.nothing(name);
            return;
        }
        out.numbers(name, interval.get().lower(), interval.get().upper());
    }

    private void segment(Drift.Segment segment) throws IOException {
        out.whole("from", segment.firstPiece());
        out.whole("to", segment.lastPiece());
        out.whole("count", segment.count());
        out.text("start", segment.start().cause().word());
        out.text("label", segment.start().label());
        out.text("reason", segment.start().reason());
        Optional<Drift.Trend> trend = segment.trend();
        out.number("slope", trend.map(Drift.Trend::slope).orElse(Double.NaN));
        interval("slopeInterval", trend.map(Drift.Trend::slopeInterval));
        out.number("slopeSignificance", trend.map(Drift.Trend::significance).orElse(Double.NaN));
        out.number(
                "residualStandardDeviation",
                trend.map(Drift.Trend::residualStandardDeviation).orElse(Double.NaN));
        if (trend.isPresent()) {
            out.object("residualRuns", () -> {
                out.whole("runs", trend.get().runs().runs());
                out.number("expected", trend.get().runs().expected());
                out.number("significance", trend.get().runs().significance());
                out.number("lagOneAutocorrelation", trend.get().lagOne());
            });
        }
        if (segment.jump().isPresent()) {
            out.object("jump", () -> {
                out.number("amount", segment.jump().get().amount());
                interval("interval", segment.jump().map(Drift.Jump::interval));
                out.number("significance", segment.jump().get().significance());
            });
        }
        if (segment.start().evidence().isPresent()) {
            out.object("evidence", () -> {
                out.number("f", segment.start().evidence().get().statistic());
                out.number("significance", segment.start().evidence().get().significance());
            });
        }
    }

    private void pooled(Drift drift) throws IOException {
        if (drift.pooled().isEmpty()) {
            out.nothing("pooled");
            return;
        }
        Drift.Pooled pooled = drift.pooled().get();
        out.object("pooled", () -> {
            out.whole("segments", pooled.lines().lines());
            out.number("slope", pooled.slope());
            interval("slopeInterval", Optional.of(pooled.interval()));
            out.number("slopeSignificance", pooled.significance());
            out.number("residualStandardDeviation", pooled.residualStandardDeviation());
            out.number("equalSlopesSignificance", pooled.lines().equality());
        });
    }

    private void forecast(Drift drift) throws IOException {
        Forecast forecast = drift.forecast();
        out.object("forecast", () -> {
            if (forecast.piece().isPresent()) {
                out.whole("piece", forecast.lastGoodPiece());
            } else {
                out.nothing("piece");
            }
            interval("interval", forecast.interval());
            out.decimal("limit", forecast.limit());
            out.number("at", forecast.piece());
            out.number("singlePiece", forecast.singlePiece());
            if (forecast.piece().isPresent()) {
                out.whole("remaining", forecast.remaining());
            } else {
                out.nothing("remaining");
            }
            out.number("level", drift.settings().level());
            out.number("sigmas", drift.settings().sigmas());
            out.flag("pooledSlope", forecast.pooled());
            out.text("reason", Optional.of(forecast.reason()).filter(reason -> !reason.isEmpty()));
            out.texts("cautions", forecast.cautions());
        });
    }

    private void advice(Advice advice) throws IOException {
        out.object("advice", () -> {
            out.figure("offset", advice.offset());
            out.figure("recentreTo", advice.recentreTo());
            if (advice.toolLife().isPresent()) {
                out.whole("toolLife", advice.toolLife().getAsLong());
            } else {
                out.nothing("toolLife");
            }
            out.figure("recentreOffset", advice.recentreOffset());
            out.decimal("target", advice.target());
            out.number("levelNow", advice.levelNow());
            out.number("requiredIndex", advice.requiredIndex());
            out.number("indexNow", advice.indexNow());
            out.number("indexPerPiece", advice.indexPerPiece());
            out.decimal("increment", advice.increment());
            out.texts("notes", advice.notes());
        });
    }

    private void indices(DriftFinding finding) throws IOException {
        out.object("withinTrend", () -> indices(finding.indices().potential()));
        out.object("wholeToolLife", () -> {
            indices(finding.indices().wholeLife());
            index(finding.indices().worst(), "worst");
        });
    }

    private void indices(List<Index> indices) throws IOException {
        for (Index index : indices) {
            index(index, index.name().substring(0, index.name().indexOf(' ')).toLowerCase(Locale.ROOT));
        }
    }

    private void index(Index index, String name) throws IOException {
        out.object(name, () -> {
            out.number("value", index.value());
            interval("interval", index.interval().map(each -> new ConfidenceInterval(each.lower(), each.upper())));
            out.text("reason", Optional.of(index.reason()).filter(reason -> !reason.isEmpty()));
        });
    }

    private void signals(DriftFinding finding) throws IOException {
        out.array("signals", () -> {
            for (Signal signal : finding.signals()) {
                out.item(() -> {
                    out.text("test", signal.test());
                    out.text("side", signal.side().word());
                    out.whole("piece", finding.drift().data().piece(signal.at() - 1));
                    out.text("part", finding.judgements().get(signal.at() - 1).part());
                });
            }
        });
    }
}
