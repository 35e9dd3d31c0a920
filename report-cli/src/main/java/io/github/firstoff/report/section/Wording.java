package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.study.capability.DistributionChoice;
import io.github.firstoff.study.conformity.ConformanceProbability;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Turns of phrase that several parts of a sheet share. */
final class Wording {
    /** What the job lacks. */
    static String notStated() {
        return Labels.text("not-stated.words");
    }

    /** So many pieces are named in a table's verdict; more are counted. */
    private static final int NAMED = 3;

    /** From here on a probability is printed as all but certain. */
    private static final double SURE = 0.0005;

    private Wording() {}

    static String orNotStated(Optional<String> text) {
        return text.filter(words -> !words.isBlank()).orElseGet(Wording::notStated);
    }

    /** {@code 1 piece}, {@code 3 pieces}. */
    static String pieces(int count) {
        return Labels.text("counted.pieces", count);
    }

    /** {@code 1 characteristic}, {@code 3 characteristics}. */
    static String characteristicsCounted(int count) {
        return Labels.text("counted.characteristics", count);
    }

    /** {@code 1 point}, {@code 3 points}. */
    static String points(int count) {
        return Labels.text("counted.points", count);
    }

    /** From one to the other: {@code 1.2 to 3.4}. */
    static String span(String from, String to) {
        return Labels.text("figures.span", from, to);
    }

    /** The hand of a part in a word. */
    static String hand(io.github.firstoff.plan.Hand hand) {
        return Labels.word("hand", hand.word());
    }

    /** How probable conformance is of a reading (JCGM 106:2012, clause 7), in words that follow a semicolon. */
    static String probability(ConformanceProbability probability) {
        if (probability.nonconforming() < SURE) {
            return Labels.text("probability.above");
        }
        return probability.conforming() < SURE
                ? Labels.text("probability.below")
                : Labels.text("probability.of", Figures.rounded(100 * probability.conforming(), 1));
    }

    /** {@code the piece}, {@code both pieces}, {@code all 3 pieces}. */
    static String allPieces(int pieces) {
        return Labels.text(pieces == 2 ? "pieces.both" : "pieces.all", pieces);
    }

    /** {@code characteristic 4}, {@code characteristics 4 and 7}. */
    static String characteristics(List<String> numbers) {
        return Labels.text("characteristics.named", numbers.size(), Phrases.listed(numbers));
    }

    /** The name of the feature, and that it is critical where it is. */
    static String feature(ResolvedCharacteristic characteristic) {
        Characteristic plain = characteristic.characteristic();
        return plain.importance() == Importance.CRITICAL
                ? Labels.text("characteristics.critical", plain.feature())
                : plain.feature();
    }

    static boolean isCritical(CharacteristicResult result) {
        return result.characteristic().characteristic().importance() == Importance.CRITICAL;
    }

    /** The verdict on one reading with its amount and the unit of the amount. */
    static String phrase(Judgement judgement) {
        String phrase = Phrases.of(judgement);
        Unit unit = judgement.allowed().limits().unit();
        if (judgement.verdict() == Verdict.NONCONFORMING
                && judgement.departure().isPresent()) {
            return Figures.with(phrase, unit);
        }
        boolean bracketed = judgement.verdict() == Verdict.INCONCLUSIVE
                && judgement.uncertainty().isPresent()
                && phrase.endsWith(")");
        return bracketed ? Figures.with(phrase.substring(0, phrase.length() - 1), unit) + ")" : phrase;
    }

    /** The same for a table whose unit stands in its head: the unit is added only where the limits have another one. */
    private static String tablePhrase(Judgement judgement) {
        Unit unit = judgement.allowed().limits().unit();
        return unit == TableParts.readingUnit(unit) ? Phrases.of(judgement) : phrase(judgement);
    }

    /** Why a characteristic is not judged, or the verdict on it, naming the pieces concerned while they are few. */
    static String verdict(CharacteristicResult result) {
        return verdict(result, UnaryOperator.identity());
    }

    /** The same with the pieces named as the table names them. */
    static String verdict(CharacteristicResult result, UnaryOperator<String> name) {
        if (!result.characteristic().isJudged()) {
            Requirement.Nature nature =
                    result.characteristic().characteristic().requirement().nature();
            return Labels.text(nature == Requirement.Nature.EXACT ? "verdict.exact" : "verdict.reference");
        }
        List<Judgement> concerned = result.judgements().stream()
                .filter(each -> each.verdict() != Verdict.CONFORMING)
                .toList();
        List<String> lines = new ArrayList<>();
        if (result.judgements().size() == 1 && concerned.size() == 1) {
            lines.add(tablePhrase(concerned.get(0)));
        } else if (!concerned.isEmpty() && concerned.size() <= NAMED) {
            concerned.forEach(each ->
                    lines.add(name.apply(each.part()) + Readings.atSetting(each.reading()) + " " + tablePhrase(each)));
        } else {
            counted(result, Verdict.NONCONFORMING, lines);
            counted(result, Verdict.INCONCLUSIVE, lines);
        }
        if (!result.missing().isEmpty() && !result.judgements().isEmpty()) {
            lines.add(Labels.text(
                    "phrase.not-measured-on",
                    result.missingCount() > result.missing().size()
                            ? Phrases.missing(result)
                            : Phrases.listed(result.absent().stream()
                                    .map(each -> each.setting().isPresent()
                                            ? Labels.text(each.remark())
                                            : name.apply(each.part()))
                                    .toList())));
        }
        return lines.isEmpty() ? Phrases.of(result) : String.join("\n", lines);
    }

    private static void counted(CharacteristicResult result, Verdict verdict, List<String> lines) {
        if (result.count(verdict) > 0) {
            lines.add(Labels.text(
                    verdict == Verdict.NONCONFORMING ? "phrase.out-of" : "phrase.open-of",
                    result.count(verdict),
                    result.judgements().size()));
        }
    }

    static Tone tone(CharacteristicResult result) {
        return result.characteristic().isJudged() ? tone(result.verdict()) : Tone.PLAIN;
    }

    static Tone tone(Verdict verdict) {
        return switch (verdict) {
            case CONFORMING -> Tone.GOOD;
            case INCONCLUSIVE, NOT_MEASURED -> Tone.OPEN;
            case NONCONFORMING -> Tone.OUT;
        };
    }

    /** {@code by simple acceptance}, {@code with guard bands}, or both; empty where nothing measured is judged. */
    static String rule(Sheet sheet) {
        boolean simple = false;
        boolean guarded = false;
        for (CharacteristicResult each : sheet.result().judged()) {
            if (!each.characteristic().isAttribute()) {
                simple |= each.characteristic().rule() == RuleChoice.SIMPLE;
                guarded |= each.characteristic().rule() == RuleChoice.GUARDED;
            }
        }
        if (guarded) {
            return Labels.text(simple ? "rule.both" : "rule.guarded");
        }
        return simple ? Labels.text("rule.simple") : "";
    }

    /** How many readings conform, of all of one characteristic: {@code all 125 readings conform}. */
    static String conforming(CharacteristicResult result) {
        int readings = result.judgements().size();
        int out = result.count(Verdict.NONCONFORMING);
        int open = result.count(Verdict.INCONCLUSIVE);
        if (out == 0 && open == 0) {
            return Labels.text("conforming.all", readings);
        }
        List<String> parts = new ArrayList<>();
        if (out > 0) {
            parts.add(Labels.text(
                    result.characteristic().isAttribute() ? "conforming.failed" : "conforming.out", out, readings));
        }
        if (open > 0) {
            parts.add(Labels.text("conforming.open", open, readings));
        }
        return String.join(" " + Labels.text("list.and") + " ", parts);
    }

    /** Whether some piece that the readings name was not inspected for this characteristic, by the plan's leave. */
    static boolean isSampled(Sheet sheet, CharacteristicResult result) {
        return mayBeSampled(sheet, result)
                && !result.judgements().isEmpty()
                && new Readings(result).pieces() < sheet.pieces();
    }

    /** Whether the plan asks for this characteristic on a sample of the pieces only. */
    static boolean mayBeSampled(Sheet sheet, CharacteristicResult result) {
        return sheet.plan().plan().extentOf(result.characteristic().characteristic()) == Characteristic.Extent.SAMPLE;
    }

    /** The remark that came with a reading, in brackets after a space; empty text without one. */
    static String remark(Reading reading) {
        return reading.context()
                .note()
                .filter(note -> !note.isBlank())
                .map(note -> " (“" + note + "”)")
                .orElse("");
    }

    /** The rule that decided, in words. */
    static String statement(CharacteristicResult result) {
        return Labels.text(result.rule().remark());
    }

    /** The kind of a sheet, as its head names it. */
    static String kind(SheetKind kind) {
        return Labels.word("kind", kind.command());
    }

    /** The name of a chart, at the start of a sentence. */
    static String chart(ProcessStudy study) {
        return Labels.word("chart-title", study.chart().kind());
    }

    /** The name of a chart within a title. */
    static String chartInTitle(ProcessStudy study) {
        return Labels.word("chart-in-title", study.chart().kind());
    }

    /** The name of a distribution. */
    static String distribution(DistributionChoice choice) {
        return Labels.text(choice.method().family().remark());
    }

    /** The text with a capital at its start. */
    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
