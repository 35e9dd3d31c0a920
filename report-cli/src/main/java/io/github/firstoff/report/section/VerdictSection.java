package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import java.util.ArrayList;
import java.util.List;

/** The one sentence that matters: the verdict, what it rests on, and the rule that decided. */
public final class VerdictSection {
    private final Sheet sheet;
    private final List<CharacteristicResult> judged;

    /** The section of one sheet. */
    public VerdictSection(Sheet sheet) {
        this.sheet = sheet;
        this.judged = sheet.result().judged();
    }

    /** The headline. */
    public Block headline() {
        return new Block.Headline(Text.of(sentence()), tone());
    }

    private Tone tone() {
        if (judged.isEmpty()) {
            return Tone.OPEN;
        }
        return switch (sheet.result().verdict()) {
            case ACCEPTED -> Tone.GOOD;
            case INCONCLUSIVE, INCOMPLETE -> Tone.OPEN;
            case REJECTED -> Tone.OUT;
        };
    }

    /** The sentence. */
    String sentence() {
        return verdict() + refusedRows();
    }

    /** Rows that could not be read: said in the same breath, because the verdict is not on them. */
    private String refusedRows() {
        long refused = sheet.result().record().refusedRows();
        if (refused == 0) {
            return "";
        }
        long read = sheet.provenance().rows().read();
        return " Of " + read + " rows of readings, " + refused + (refused == 1 ? " was" : " were")
                + " refused and not judged.";
    }

    private String verdict() {
        if (sheet.result().verdict() == SheetVerdict.INCOMPLETE
                && sheet.result().record().refusedRows() > 0
                && judged.stream().allMatch(each -> each.verdict() == Verdict.CONFORMING)) {
            return "Incomplete, so not accepted: all that could be read conforms, but not everything could be read.";
        }
        if (judged.isEmpty()) {
            return "Nothing was judged: the plan requires nothing that readings could be held against.";
        }
        return switch (sheet.result().verdict()) {
            case ACCEPTED -> accepted();
            case REJECTED -> "Rejected: " + nonconforming() + rest(Verdict.NONCONFORMING) + ruled("; ");
            case INCONCLUSIVE ->
                "Inconclusive, so not accepted: " + unproven() + rest(Verdict.INCONCLUSIVE) + ruled("; ");
            case INCOMPLETE ->
                "Incomplete, so not accepted: " + unmeasured() + rest(Verdict.NOT_MEASURED) + ruled("; ");
        };
    }

    private String accepted() {
        long sampled =
                judged.stream().filter(each -> Wording.isSampled(sheet, each)).count();
        String all = judged.size() == 1 ? "the one characteristic" : "all " + judged.size() + " characteristics";
        String conform = judged.size() == 1 ? " conforms" : " conform";
        String sentence = "Accepted: " + all;
        if (sampled == 0) {
            sentence += " of " + pieces() + conform;
        } else if (sampled == judged.size()) {
            sentence += conform + " on a sample of " + pieces();
        } else {
            sentence += conform + ", " + (judged.size() - sampled) + " on " + pieces() + " and " + sampled
                    + " on a sample of them";
        }
        return sentence + ruled(", ") + control() + demands();
    }

    /** The pieces inspected, and of how many where the job says that there are more. */
    private String pieces() {
        int quantity = sheet.job().quantity().orElse(0);
        if (quantity > sheet.pieces()) {
            return sheet.pieces() + " of the " + quantity + " pieces";
        }
        return Wording.allPieces(sheet.pieces());
    }

    private String ruled(String before) {
        String rule = Wording.rule(sheet);
        if (rule.isEmpty()) {
            return ".";
        }
        return before + (rule.startsWith("by") && before.equals(", ") ? rule : "decided " + rule) + ".";
    }

    /** An accepted batch whose charts signal: said in the same breath, because it is easily missed. */
    private String control() {
        List<Finding> restless = restless(sheet);
        if (restless.isEmpty()) {
            return "";
        }
        if (restless.size() > 1) {
            return " "
                    + Wording.capital(Wording.characteristics(
                            restless.stream().map(Finding::number).toList())) + " did not run in control.";
        }
        Finding one = restless.get(0);
        return " Characteristic " + one.number() + ", "
                + one.result().characteristic().characteristic().feature() + ", did not run in control.";
    }

    /** An accepted batch whose class demands indices that were not shown. */
    private String demands() {
        List<String> lacking = sheet.findings().stream()
                .filter(each -> !new Demands(sheet, each).shortfalls().isEmpty())
                .map(Finding::number)
                .toList();
        return lacking.isEmpty()
                ? ""
                : " " + Wording.capital(Wording.characteristics(lacking)) + " did not show the index demanded.";
    }

    /** The findings whose charts are out of control. */
    static List<Finding> restless(Sheet sheet) {
        return sheet.findings().stream()
                .filter(finding -> finding.study()
                        .filter(study -> study.assessment().control() == ControlState.OUT_OF_CONTROL)
                        .isPresent())
                .toList();
    }

    private String nonconforming() {
        List<CharacteristicResult> out = with(Verdict.NONCONFORMING);
        List<Judgement> readings = readings(out, Verdict.NONCONFORMING);
        if (readings.size() == 1) {
            return one(out.get(0), readings.get(0));
        }
        return share(out) + " " + (out.size() == 1 ? "does" : "do") + " not conform, on " + concerned(readings);
    }

    private String unproven() {
        List<CharacteristicResult> open = with(Verdict.INCONCLUSIVE);
        List<Judgement> readings = readings(open, Verdict.INCONCLUSIVE);
        if (readings.size() == 1) {
            return one(open.get(0), readings.get(0));
        }
        return share(open) + " " + (open.size() == 1 ? "is" : "are") + " not proven to conform, on "
                + concerned(readings);
    }

    private String unmeasured() {
        List<CharacteristicResult> missing = with(Verdict.NOT_MEASURED);
        boolean nowhere = missing.stream().allMatch(each -> each.judgements().isEmpty());
        boolean settings = missing.stream()
                .anyMatch(each -> !each.characteristic()
                        .characteristic()
                        .options()
                        .settings()
                        .isEmpty());
        return share(missing) + " " + (missing.size() == 1 ? "is" : "are") + " not measured"
                + (nowhere ? "" : settings ? " completely" : " on every piece");
    }

    /** What else keeps the sheet from being accepted, and that nothing does. */
    private String rest(Verdict told) {
        List<String> parts = new ArrayList<>();
        int unmeasured = (int) judged.stream()
                .filter(each -> each.judgements().isEmpty() || !each.missing().isEmpty())
                .count();
        int unproven = (int) judged.stream()
                .filter(each -> each.count(Verdict.INCONCLUSIVE) > 0)
                .count();
        if (told != Verdict.INCONCLUSIVE && unproven > 0) {
            parts.add(others(unproven) + " not proven to conform");
        }
        if (told != Verdict.NOT_MEASURED && unmeasured > 0) {
            parts.add(others(unmeasured) + " not measured");
        }
        if (parts.isEmpty()) {
            int others = sheet.result().count(Verdict.CONFORMING);
            return others == 0 ? "" : others == 1 ? "; the other one conforms" : "; the other " + others + " conform";
        }
        return "; " + String.join(" and ", parts);
    }

    private static String others(int count) {
        return Phrases.counted(count, "characteristic is", "characteristics are");
    }

    private String one(CharacteristicResult result, Judgement judgement) {
        return "the " + result.characteristic().characteristic().feature() + " (" + result.number() + ") of piece "
                + judgement.part() + " "
                + (judgement.reading() instanceof Reading.Observed ? "" : "is ")
                + Wording.phrase(judgement);
    }

    private String share(List<CharacteristicResult> some) {
        return judged.size() == 1
                ? "the one characteristic"
                : some.size() + " of " + judged.size() + " characteristics";
    }

    private String concerned(List<Judgement> readings) {
        long pieces = readings.stream().map(Judgement::part).distinct().count();
        return pieces == sheet.pieces()
                ? Wording.allPieces(sheet.pieces())
                : pieces + " of " + Phrases.counted(sheet.pieces(), "piece", "pieces");
    }

    private List<CharacteristicResult> with(Verdict verdict) {
        return judged.stream().filter(each -> each.verdict() == verdict).toList();
    }

    private static List<Judgement> readings(List<CharacteristicResult> results, Verdict verdict) {
        return results.stream()
                .flatMap(each -> each.judgements().stream())
                .filter(each -> each.verdict() == verdict)
                .toList();
    }

    /** Whether a signature on this sheet releases anything. */
    static boolean isAccepted(Sheet sheet) {
        return sheet.result().verdict() == SheetVerdict.ACCEPTED
                && !sheet.result().judged().isEmpty();
    }
}
