package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.ThermalCorrection;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.study.conformity.ConformanceProbability;
import io.github.firstoff.study.conformity.GaugeAssessment;
import io.github.firstoff.tolerance.Fit;
import io.github.firstoff.tolerance.FitPair;
import io.github.firstoff.tolerance.Limits;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The JSON result of a command: one document with the names that scripts rely on (docs/schemas/result.schema.json).
 *
 * <p>Limits and readings are decimal text, as they were judged; statistics are numbers. A figure that has no right to exist is
 * {@code null} with its reason under {@code notes}.
 */
public final class SheetJson {
    /** Digits of figures that inform but judge nothing. */
    private static final MathContext SHOWN = new MathContext(6);

    private final JsonGenerator out;
    private final Sheet sheet;

    private SheetJson(JsonGenerator out, Sheet sheet) {
        this.out = out;
        this.sheet = sheet;
    }

    /** Writes the document and a line end; the writer stays open. */
    public static void write(Sheet sheet, Writer target) {
        JsonDocument.generate(target, out -> new SheetJson(out, sheet).document());
    }

    private void document() throws IOException {
        PartIdentity part = sheet.plan().part();
        out.writeStartObject();
        out.writeStringField("command", sheet.kind().command());
        out.writeStringField("part", part.number());
        text("partName", part.name());
        text("drawing", part.drawing());
        out.writeStringField("revision", part.revision());
        text("hand", part.hand().map(hand -> hand.word()));
        text("batch", sheet.job().batch());
        text("job", sheet.job().job());
        out.writeStringField("verdict", sheet.result().verdict().word());
        counts();
        firstArticle();
        intake();
        if (sheet.kind() == SheetKind.CERTIFICATE) {
            strings("reasons", sheet.refusals());
        }
        strings("notices", sheet.notices());
        out.writeArrayFieldStart("characteristics");
        for (Finding finding : sheet.findings()) {
            characteristic(finding);
        }
        out.writeEndArray();
        provenance();
        out.writeEndObject();
    }

    /** What kind of first article, and which characteristics it does not cover; absent where the job does not say. */
    private void firstArticle() throws IOException {
        Optional<Job.FirstArticleReason> article = sheet.job().firstArticle();
        if (sheet.kind() != SheetKind.FIRST_ARTICLE || article.isEmpty()) {
            return;
        }
        out.writeObjectFieldStart("firstArticle");
        out.writeStringField("kind", article.get().kind().word());
        text("baseline", article.get().baseline());
        strings(
                "notCovered",
                sheet.result().uncovered().stream()
                        .map(ResolvedCharacteristic::number)
                        .toList());
        out.writeEndObject();
    }

    private void counts() throws IOException {
        out.writeObjectFieldStart("counts");
        out.writeNumberField("characteristics", sheet.result().judged().size());
        out.writeNumberField("conforming", sheet.result().count(Verdict.CONFORMING));
        out.writeNumberField("nonconforming", sheet.result().count(Verdict.NONCONFORMING));
        out.writeNumberField("inconclusive", sheet.result().count(Verdict.INCONCLUSIVE));
        out.writeNumberField("notMeasured", sheet.result().count(Verdict.NOT_MEASURED));
        out.writeNumberField(
                "notJudged",
                sheet.result().characteristics().size()
                        - sheet.result().judged().size());
        out.writeNumberField("pieces", sheet.pieces());
        out.writeEndObject();
    }

    /** What became of the rows: read = used + refused + explained. */
    private void intake() throws IOException {
        RowCounts rows = sheet.provenance().rows();
        out.writeObjectFieldStart("intake");
        out.writeNumberField("rowsRead", rows.read());
        out.writeNumberField("used", rows.used());
        out.writeNumberField("refused", rows.refused());
        out.writeNumberField("explained", rows.explained());
        out.writeEndObject();
    }

    private void provenance() throws IOException {
        Provenance from = sheet.provenance();
        out.writeObjectFieldStart("madeFrom");
        out.writeStringField("program", from.program());
        out.writeStringField("sha256", from.dataHash());
        strings("files", from.files());
        out.writeNumberField("readings", sheet.result().record().readingCount());
        out.writeNumberField("rows", from.rows().read());
        out.writeEndObject();
    }

    private void characteristic(Finding finding) throws IOException {
        CharacteristicResult result = finding.result();
        ResolvedCharacteristic characteristic = result.characteristic();
        Limits limits = characteristic.limits();
        out.writeStartObject();
        out.writeStringField("number", finding.number());
        out.writeStringField("feature", characteristic.characteristic().feature());
        out.writeStringField("requirement", characteristic.characteristic().printed());
        out.writeStringField(
                "class", characteristic.characteristic().importance().word());
        out.writeStringField("unit", characteristic.unit().word());
        decimal("nominal", characteristic.zone().nominal());
        decimal("lower", limits.lower());
        decimal("upper", limits.upper());
        if (limits.naturalLower()) {
            out.writeStringField("naturalBound", "lower");
        }
        if (characteristic.characteristic().requirement() instanceof FitPair pair) {
            fit(pair.fitOn(sheet.plan().plan().unit()));
        }
        text("gauge", characteristic.characteristic().gauge());
        rule(result);
        if (characteristic.isJudged()) {
            out.writeStringField("verdict", result.verdict().word());
        } else {
            out.writeNullField("verdict");
        }
        out.writeNumberField("count", result.judgements().size());
        out.writeNumberField("nonconforming", result.count(Verdict.NONCONFORMING));
        out.writeNumberField("inconclusive", result.count(Verdict.INCONCLUSIVE));
        out.writeNumberField("missingCount", result.missingCount());
        strings("missing", result.missing());
        summary(finding);
        study(finding);
        gauges(finding);
        readings(finding);
        notes(finding);
        out.writeEndObject();
    }

    private void summary(Finding finding) throws IOException {
        Optional<Summary> summary = finding.summary();
        decimal("minimum", summary.map(Summary::minimum));
        decimal("maximum", summary.map(Summary::maximum));
        if (summary.isPresent()) {
            number("mean", OptionalDouble.of(summary.get().mean()));
        } else {
            out.writeNullField("mean");
        }
        out.writeObjectFieldStart("standardDeviation");
        number("within", within(finding));
        number("overall", summary.map(Summary::standardDeviation).orElse(OptionalDouble.empty()));
        out.writeEndObject();
    }

    private static OptionalDouble within(Finding finding) {
        return finding.study()
                .flatMap(ProcessStudy::indices)
                .flatMap(indices -> indices.capability().within())
                .map(estimate -> OptionalDouble.of(estimate.sigma()))
                .orElse(OptionalDouble.empty());
    }

    private void study(Finding finding) throws IOException {
        if (finding.study().isEmpty()) {
            out.writeNullField("indices");
            out.writeNullField("intervals");
            Optional<ObservedShare> share = observed(finding);
            if (share.isPresent()) {
                IndicesJson.writeObserved(out, share.get());
            }
            out.writeNullField("chart");
            return;
        }
        ProcessStudy study = finding.study().get();
        if (study.indices().isPresent()) {
            IndicesJson.write(out, study.indices().get().byDefinition());
            IndicesJson.writeFitted(out, study.indices().get().capability());
        } else {
            out.writeNullField("indices");
            out.writeNullField("intervals");
        }
        Optional<ObservedShare> share = observed(finding);
        if (share.isPresent()) {
            IndicesJson.writeObserved(out, share.get());
        } else {
            IndicesJson.writeNonconforming(out, study.indices());
        }
        IndicesJson.writeTrended(out, study.indices());
        DataChecksJson.write(out, study);
        new ChartJson(out, study, origin(study)).write();
    }

    /** Of a batch alone: a first article says nothing of a share. */
    private Optional<ObservedShare> observed(Finding finding) {
        return sheet.kind() == SheetKind.FIRST_ARTICLE ? Optional.empty() : ObservedShare.of(finding.result());
    }

    /** From which batch limits come that this batch set, for those who freeze them. */
    private String origin(ProcessStudy study) {
        String batch = sheet.job().batch().map(name -> "batch " + name).orElse("batch not stated");
        int points = study.chart().limitsFrom();
        return batch + ", " + Phrases.counted(points, "point", "points");
    }

    /** Every reading on a first article; on a batch only those that do not simply conform. */
    private void readings(Finding finding) throws IOException {
        boolean all = sheet.kind() == SheetKind.FIRST_ARTICLE;
        out.writeArrayFieldStart(all ? "readings" : "exceptions");
        for (Judgement judgement : finding.result().judgements()) {
            if (all || judgement.verdict() != Verdict.CONFORMING) {
                reading(finding, judgement);
            }
        }
        out.writeEndArray();
    }

    private void gauges(Finding finding) throws IOException {
        out.writeArrayFieldStart("gaugeChecks");
        for (GaugeAssessment each : finding.gauges()) {
            out.writeStartObject();
            out.writeStringField("gauge", each.gauge());
            out.writeStringField("grade", each.grade().word());
            decimal("toleranceToUncertainty", each.ratio().map(ratio -> ratio.round(SHOWN)));
            text("says", each.statement());
            strings("cautions", each.cautions());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    /** The pair by its limits; a negative clearance is an interference. */
    private void fit(Fit fit) throws IOException {
        out.writeObjectFieldStart("fit");
        out.writeStringField("kind", fit.kind().name().toLowerCase(Locale.ROOT));
        out.writeStringField("minimumClearance", fit.minimumClearance().toPlainString());
        out.writeStringField("maximumClearance", fit.maximumClearance().toPlainString());
        out.writeStringField("unit", fit.unit().word());
        out.writeEndObject();
    }

    private void rule(CharacteristicResult result) throws IOException {
        DecisionChoice decision = result.characteristic().decision();
        out.writeStringField("decisionRule", result.rule().name());
        if (decision.rule() == DecisionChoice.RuleChoice.GUARDED) {
            out.writeStringField("guardFraction", decision.guardFraction().toPlainString());
        }
        decimal(
                "coverageFactor",
                result.characteristic().gauge().flatMap(Gauge::uncertainty).map(Uncertainty::coverageFactor));
        out.writeStringField("comparison", decision.comparison().word());
    }

    private void howJudged(Judgement judgement) throws IOException {
        if (judgement.correction().isPresent()) {
            ThermalCorrection correction = judgement.correction().get();
            out.writeStringField("temperature", correction.temperature().toPlainString());
            out.writeStringField("correctedTo20", correction.corrected().toPlainString());
        }
        if (judgement.uncertainty().isPresent()) {
            out.writeStringField(
                    "uncertainty", judgement.uncertainty().get().round(SHOWN).toPlainString());
            Optional<ConformanceProbability> probability = ConformanceProbability.of(sheet.plan(), judgement);
            number(
                    "conformanceProbability",
                    probability
                            .map(found -> OptionalDouble.of(found.conforming()))
                            .orElse(OptionalDouble.empty()));
        }
    }

    private void reading(Finding finding, Judgement judgement) throws IOException {
        out.writeStartObject();
        out.writeStringField("part", judgement.part());
        if (judgement.reading() instanceof Reading.Measured measured) {
            out.writeStringField("value", measured.value().toPlainString());
            if (measured.unit() != judgement.allowed().limits().unit()) {
                out.writeStringField("unit", measured.unit().word());
            }
        } else if (judgement.reading() instanceof Reading.Observed observed) {
            out.writeStringField("value", observed.pass() ? "pass" : "fail");
        }
        text("setting", judgement.reading().context().setting());
        out.writeStringField("verdict", judgement.verdict().word());
        out.writeStringField("says", Phrases.of(judgement));
        howJudged(judgement);
        if (finding.doubtAbout(judgement).isPresent()) {
            out.writeStringField("doubt", finding.doubtAbout(judgement).get().sentence());
        }
        if (judgement.allowed().bonus().isPresent()) {
            decimal("upper", judgement.allowed().limits().upper());
            out.writeStringField(
                    "bonus", judgement.allowed().bonus().get().amount().toPlainString());
            out.writeStringField(
                    "bonusReason", judgement.allowed().bonus().get().reason());
        }
        out.writeEndObject();
    }

    private void notes(Finding finding) throws IOException {
        out.writeObjectFieldStart("notes");
        for (Map.Entry<String, String> note : finding.notes().entrySet()) {
            out.writeStringField(note.getKey(), note.getValue());
        }
        out.writeEndObject();
    }

    private void text(String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(name, value.get());
        } else {
            out.writeNullField(name);
        }
    }

    private void decimal(String name, Optional<BigDecimal> value) throws IOException {
        text(name, value.map(BigDecimal::toPlainString));
    }

    private void number(String name, OptionalDouble value) throws IOException {
        if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
            out.writeNumberField(name, value.getAsDouble());
        } else {
            out.writeNullField(name);
        }
    }

    private void strings(String name, List<String> values) throws IOException {
        out.writeArrayFieldStart(name);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
