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
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.words.Labels;
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
        return verdict() + covers() + refusedRows();
    }

    /** A first article that covers a part of the drawing says so in the same breath, because it claims nothing of the rest. */
    private String covers() {
        int left = sheet.result().uncovered().size();
        return left == 0 ? "" : " " + Labels.text("headline.covers", judged.size(), judged.size() + left);
    }

    /** Rows that could not be read: said in the same breath, because the verdict is not on them. */
    private String refusedRows() {
        long refused = sheet.result().record().refusedRows();
        if (refused == 0) {
            return "";
        }
        long read = sheet.provenance().rows().read();
        return " " + Labels.text("headline.refused-rows", read, refused);
    }

    private String verdict() {
        if (sheet.result().verdict() == SheetVerdict.INCOMPLETE
                && sheet.result().record().refusedRows() > 0
                && judged.stream().allMatch(each -> each.verdict() == Verdict.CONFORMING)) {
            return Labels.text("headline.not-all-read");
        }
        if (judged.isEmpty()) {
            return Labels.text("headline.nothing");
        }
        return switch (sheet.result().verdict()) {
            case ACCEPTED -> accepted();
            case REJECTED -> Labels.text("headline.rejected", nonconforming() + rest(Verdict.NONCONFORMING) + ruled());
            case INCONCLUSIVE ->
                Labels.text("headline.inconclusive", unproven() + rest(Verdict.INCONCLUSIVE) + ruled());
            case INCOMPLETE -> Labels.text("headline.incomplete", unmeasured() + rest(Verdict.NOT_MEASURED) + ruled());
        };
    }

    private String accepted() {
        long sampled =
                judged.stream().filter(each -> Wording.isSampled(sheet, each)).count();
        int all = judged.size();
        String sentence;
        if (sampled == 0) {
            sentence = Labels.text("headline.accepted", all, pieces());
        } else if (sampled == all) {
            sentence = Labels.text("headline.accepted-sample", all, pieces());
        } else {
            sentence = Labels.text("headline.accepted-some", all, all - sampled, pieces(), sampled);
        }
        String rule = Wording.rule(sheet);
        boolean simple = rule.equals(Labels.text("rule.simple"));
        String ruled = rule.isEmpty() ? "" : Labels.text("headline.accepted-ruled", simple, rule);
        return sentence + ruled + "." + control() + demands();
    }

    /** The pieces inspected, and of how many where the job says that there are more. */
    private String pieces() {
        int quantity = sheet.job().quantity().orElse(0);
        if (quantity > sheet.pieces()) {
            return Labels.text("headline.of-quantity", sheet.pieces(), quantity);
        }
        return Wording.allPieces(sheet.pieces());
    }

    private String ruled() {
        String rule = Wording.rule(sheet);
        return rule.isEmpty() ? "." : Labels.text("headline.ruled", rule);
    }

    /** An accepted batch whose charts signal: said in the same breath, because it is easily missed. */
    private String control() {
        List<Finding> restless = restless(sheet);
        if (restless.isEmpty()) {
            return "";
        }
        if (restless.size() > 1) {
            return " "
                    + Labels.text(
                            "headline.restless",
                            Wording.capital(Wording.characteristics(
                                    restless.stream().map(Finding::number).toList())));
        }
        Finding one = restless.get(0);
        return " "
                + Labels.text(
                        "headline.restless-one",
                        one.number(),
                        one.result().characteristic().characteristic().feature());
    }

    /** An accepted batch whose class demands indices that were not shown. */
    private String demands() {
        List<String> lacking = sheet.findings().stream()
                .filter(each -> !new Demands(sheet, each).shortfalls().isEmpty())
                .map(Finding::number)
                .toList();
        return lacking.isEmpty()
                ? ""
                : " " + Labels.text("headline.lacking", Wording.capital(Wording.characteristics(lacking)));
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
        return Labels.text("headline.out", share(out), out.size(), concerned(readings));
    }

    private String unproven() {
        List<CharacteristicResult> open = with(Verdict.INCONCLUSIVE);
        List<Judgement> readings = readings(open, Verdict.INCONCLUSIVE);
        if (readings.size() == 1) {
            return one(open.get(0), readings.get(0));
        }
        return Labels.text("headline.open", share(open), open.size(), concerned(readings));
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
        if (nowhere) {
            return Labels.text("headline.missing", share(missing), missing.size());
        }
        return Labels.text(
                settings ? "headline.missing-settings" : "headline.missing-pieces", share(missing), missing.size());
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
            parts.add(Labels.text("headline.others-open", unproven));
        }
        if (told != Verdict.NOT_MEASURED && unmeasured > 0) {
            parts.add(Labels.text("headline.others-missing", unmeasured));
        }
        if (parts.isEmpty()) {
            int others = sheet.result().count(Verdict.CONFORMING);
            return others == 0 ? "" : Labels.text("headline.others-conform", others);
        }
        return "; " + String.join(" " + Labels.text("list.and") + " ", parts);
    }

    private String one(CharacteristicResult result, Judgement judgement) {
        return Labels.text(
                judgement.reading() instanceof Reading.Observed ? "headline.one-check" : "headline.one",
                result.characteristic().characteristic().feature(),
                result.number(),
                judgement.part(),
                Wording.phrase(judgement));
    }

    private String share(List<CharacteristicResult> some) {
        return judged.size() == 1
                ? Labels.text("headline.the-one")
                : Labels.text("headline.share", some.size(), judged.size());
    }

    private String concerned(List<Judgement> readings) {
        long pieces = readings.stream().map(Judgement::part).distinct().count();
        return pieces == sheet.pieces()
                ? Wording.allPieces(sheet.pieces())
                : Labels.text("headline.pieces", pieces, Wording.pieces(sheet.pieces()));
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
