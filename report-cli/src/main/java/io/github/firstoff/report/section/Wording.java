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
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.tolerance.Requirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Turns of phrase that several parts of a sheet share. */
final class Wording {
    /** What the job lacks. */
    static final String NOT_STATED = "not stated";

    /** So many pieces are named in a table's verdict; more are counted. */
    private static final int NAMED = 3;

    private Wording() {}

    static String orNotStated(Optional<String> text) {
        return text.filter(words -> !words.isBlank()).orElse(NOT_STATED);
    }

    /** {@code the piece}, {@code both pieces}, {@code all 3 pieces}. */
    static String allPieces(int pieces) {
        return switch (pieces) {
            case 1 -> "the piece";
            case 2 -> "both pieces";
            default -> "all " + pieces + " pieces";
        };
    }

    /** {@code characteristic 4}, {@code characteristics 4 and 7}. */
    static String characteristics(List<String> numbers) {
        return (numbers.size() == 1 ? "characteristic " : "characteristics ") + Phrases.listed(numbers);
    }

    /** The name of the feature, and that it is critical where it is. */
    static String feature(ResolvedCharacteristic characteristic) {
        Characteristic plain = characteristic.characteristic();
        return plain.importance() == Importance.CRITICAL ? plain.feature() + " (critical)" : plain.feature();
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
            return nature == Requirement.Nature.EXACT ? "theoretically exact, not judged" : "reference, not judged";
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
            counted(result, Verdict.NONCONFORMING, "out", lines);
            counted(result, Verdict.INCONCLUSIVE, "not proven", lines);
        }
        if (!result.missing().isEmpty() && !result.judgements().isEmpty()) {
            lines.add("not measured on "
                    + (result.missingCount() > result.missing().size()
                            ? Phrases.missing(result)
                            : Phrases.listed(result.missing().stream().map(name).toList())));
        }
        return lines.isEmpty() ? Phrases.of(result) : String.join("\n", lines);
    }

    private static void counted(CharacteristicResult result, Verdict verdict, String word, List<String> lines) {
        if (result.count(verdict) > 0) {
            lines.add(result.count(verdict) + " of " + result.judgements().size() + " " + word);
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
            return simple
                    ? "with guard bands where the plan asks for them, else by simple acceptance"
                    : "with guard bands";
        }
        return simple ? "by simple acceptance" : "";
    }

    /** How many readings conform, of all of one characteristic: {@code all 125 readings conform}. */
    static String conforming(CharacteristicResult result) {
        int readings = result.judgements().size();
        int out = result.count(Verdict.NONCONFORMING);
        int open = result.count(Verdict.INCONCLUSIVE);
        if (out == 0 && open == 0) {
            return readings == 1 ? "the one reading conforms" : "all " + readings + " readings conform";
        }
        List<String> parts = new ArrayList<>();
        if (out > 0) {
            parts.add(out + " of " + readings
                    + (result.characteristic().isAttribute()
                            ? " readings failed"
                            : " readings " + (out == 1 ? "is" : "are") + " out of tolerance"));
        }
        if (open > 0) {
            parts.add(open + " of " + readings + " " + (open == 1 ? "is" : "are") + " not proven to conform");
        }
        return String.join(" and ", parts);
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

    /** The text with a capital at its start. */
    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
