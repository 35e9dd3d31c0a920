package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.ExceptionItem;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.study.conformity.ConformanceProbability;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What needs a decision: only what does not simply conform, worst first, and charts that signal. */
public final class ExceptionsSection {
    /** So many readings of one characteristic are told one by one. */
    private static final int TOLD = 4;

    private final Sheet sheet;

    /** The section of one sheet. */
    public ExceptionsSection(Sheet sheet) {
        this.sheet = sheet;
    }

    /** The exceptions, and under them what else a reader must know. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Exceptions(Labels.text("exceptions.title"), items(), whenNone()));
        if (!sheet.remarks().isEmpty()) {
            blocks.add(new Block.Heading(Labels.text("exceptions.else"), Block.Level.SUBSECTION));
            for (Remark remark : sheet.remarks()) {
                blocks.add(new Block.Paragraph(Text.of(Labels.text(remark))));
            }
        }
        return blocks;
    }

    private String whenNone() {
        List<ControlState> charts = sheet.findings().stream()
                .flatMap(each -> each.study().stream())
                .map(study -> study.assessment().control())
                .toList();
        if (charts.isEmpty()) {
            return Labels.text(sheet.result().uncovered().isEmpty() ? "exceptions.none" : "exceptions.none.covered");
        }
        return Labels.text(
                charts.contains(ControlState.NOT_ASSESSED) ? "exceptions.none.unassessed" : "exceptions.none.quiet");
    }

    List<ExceptionItem> items() {
        List<ExceptionItem> items = new ArrayList<>();
        for (Verdict verdict : List.of(Verdict.NONCONFORMING, Verdict.NOT_MEASURED, Verdict.INCONCLUSIVE)) {
            sheet.result().judged().stream()
                    .filter(each -> concerns(each, verdict))
                    .sorted(Comparator.comparing(
                            each -> each.characteristic().characteristic().importance()))
                    .forEach(each -> items.add(item(each, verdict)));
        }
        VerdictSection.restless(sheet).forEach(each -> items.add(restless(each)));
        for (Finding finding : sheet.findings()) {
            new Demands(sheet, finding).shortfalls().forEach(each -> items.add(missed(finding, each)));
        }
        return items;
    }

    private static boolean concerns(CharacteristicResult result, Verdict verdict) {
        return verdict == Verdict.NOT_MEASURED
                ? result.judgements().isEmpty() || !result.missing().isEmpty()
                : result.count(verdict) > 0;
    }

    private ExceptionItem item(CharacteristicResult result, Verdict verdict) {
        if (verdict == Verdict.NOT_MEASURED) {
            return unmeasured(result);
        }
        List<Judgement> concerned = result.judgements().stream()
                .filter(each -> each.verdict() == verdict)
                .toList();
        Tone tone = verdict == Verdict.NONCONFORMING ? Tone.OUT : Tone.OPEN;
        return item(
                result,
                Text.of(actual(result, concerned) + howSure(verdict, concerned)),
                byHowMuch(concerned),
                tone,
                Text.of(slips(result, concerned) + proposal(result, concerned)));
    }

    /** How probable conformance is of the one reading that is not proven (JCGM 106:2012, clause 7); nothing where there are several. */
    private String howSure(Verdict verdict, List<Judgement> concerned) {
        if (verdict != Verdict.INCONCLUSIVE || concerned.size() != 1) {
            return "";
        }
        return ConformanceProbability.of(sheet.plan(), concerned.get(0))
                .map(probability -> "; " + Wording.probability(probability))
                .orElse("");
    }

    /** What comes first where a reading looks like a slip of the pen: looking at it again. */
    private String slips(CharacteristicResult result, List<Judgement> concerned) {
        List<Remark> sentences = new ArrayList<>();
        for (Finding finding : sheet.findings()) {
            if (finding.number().equals(result.number())) {
                concerned.forEach(each -> finding.doubtAbout(each).ifPresent(doubt -> sentences.add(doubt.remark())));
            }
        }
        if (sentences.isEmpty()) {
            return "";
        }
        return Labels.text("exceptions.slip", sentences.get(0), sentences.size() == 1, sentences.size() - 1);
    }

    private static ExceptionItem item(
            CharacteristicResult result, Text actual, String byHowMuch, Tone tone, Text mayBeDone) {
        return new ExceptionItem(
                result.number(),
                Wording.feature(result.characteristic()),
                Notations.of(result.characteristic().characteristic()),
                actual,
                byHowMuch,
                tone,
                mayBeDone);
    }

    private ExceptionItem unmeasured(CharacteristicResult result) {
        boolean nowhere = result.judgements().isEmpty();
        String where = !nowhere
                ? Labels.text("exceptions.unread", result.missing().size(), Phrases.missing(result))
                : sheet.pieces() == 0
                        ? Labels.text("exceptions.no-piece")
                        : Labels.text("exceptions.none-of", Wording.pieces(sheet.pieces()));
        return item(
                result,
                Text.of(where),
                Labels.text("phrase.not-measured"),
                Tone.OPEN,
                Text.of(Labels.text(
                        "exceptions.measure", result.characteristic().isAttribute(), wanting(result))));
    }

    private String wanting(CharacteristicResult result) {
        if (!result.judgements().isEmpty()) {
            boolean settings =
                    result.absent().stream().anyMatch(each -> each.setting().isPresent());
            return settings
                    ? Labels.text("exceptions.there")
                    : Labels.text("exceptions.on-those", result.missingCount());
        }
        return Wording.mayBeSampled(sheet, result)
                ? Labels.text("exceptions.on-sample")
                : Labels.text("exceptions.on-every", sheet.pieces());
    }

    private static String actual(CharacteristicResult result, List<Judgement> concerned) {
        if (concerned.size() == 1) {
            return told(concerned.get(0));
        }
        String first = Labels.text(
                "exceptions.readings", concerned.size(), result.judgements().size());
        if (concerned.size() <= TOLD) {
            return first + ":\n"
                    + concerned.stream().map(ExceptionsSection::told).collect(Collectors.joining("\n"));
        }
        List<String> pieces = concerned.stream().map(Judgement::part).distinct().toList();
        return Labels.text("exceptions.on-pieces", first, Phrases.listed(pieces))
                + worst(concerned)
                        .map(each -> Labels.text("exceptions.furthest", told(each)))
                        .orElse("");
    }

    private static String told(Judgement judgement) {
        String found = Readings.withUnit(judgement.reading())
                + Readings.offsets(judgement.reading())
                + Readings.atReference(judgement).map(text -> ", " + text + ",").orElse("");
        return Labels.text("exceptions.on-piece", found, judgement.part())
                + bonus(judgement)
                + Wording.remark(judgement.reading());
    }

    private static String bonus(Judgement judgement) {
        return judgement
                .allowed()
                .bonus()
                .filter(bonus -> bonus.amount().signum() > 0)
                .flatMap(bonus -> judgement.allowed().limits().upper())
                .map(upper -> Labels.text(
                        "exceptions.allowed",
                        Figures.with(
                                Figures.of(upper), judgement.allowed().limits().unit())))
                .orElse("");
    }

    private static Optional<Judgement> worst(List<Judgement> concerned) {
        return concerned.stream()
                .filter(each -> each.departure().isPresent())
                .max(Comparator.comparing(each -> each.departure().orElseThrow().abs()));
    }

    private static String byHowMuch(List<Judgement> concerned) {
        if (concerned.size() == 1) {
            return Wording.phrase(concerned.get(0));
        }
        if (concerned.get(0).verdict() == Verdict.INCONCLUSIVE) {
            return Labels.text("exceptions.several-open", concerned.size());
        }
        List<String> ends = new ArrayList<>();
        extreme(concerned, 1).ifPresent(each -> ends.add(upTo(concerned, each, "over")));
        extreme(concerned, -1).ifPresent(each -> ends.add(upTo(concerned, each, "under")));
        return ends.isEmpty() ? Labels.text("exceptions.several-failed", concerned.size()) : String.join("\n", ends);
    }

    private static String upTo(List<Judgement> concerned, Judgement furthest, String side) {
        int sign = furthest.departure().orElseThrow().signum();
        long alike = concerned.stream()
                .filter(each ->
                        each.departure().map(amount -> amount.signum() == sign).orElse(false))
                .count();
        String amount = Figures.with(
                Phrases.plain(furthest.departure().orElseThrow().abs()),
                furthest.allowed().limits().unit());
        return side.equals("over")
                ? Labels.text("exceptions.over", alike, amount)
                : Labels.text("exceptions.under", alike, amount);
    }

    private static Optional<Judgement> extreme(List<Judgement> concerned, int sign) {
        return concerned.stream()
                .filter(each ->
                        each.departure().map(amount -> amount.signum() == sign).orElse(false))
                .max(Comparator.comparing(each -> each.departure().orElseThrow().abs()));
    }

    /** What may be done. The sheet proposes; people decide, by the rules of their shop and their customer. */
    private String proposal(CharacteristicResult result, List<Judgement> concerned) {
        String customer =
                sheet.job().customer().map(firm -> firm.name()).orElseGet(() -> Labels.text("firm.the-customer"));
        Proposals proposals = new Proposals(result.characteristic(), customer);
        return concerned.get(0).verdict() == Verdict.INCONCLUSIVE
                ? proposals.toProve(concerned)
                : proposals.forNonconforming(concerned);
    }

    private ExceptionItem missed(Finding finding, Demands.Missed shortfall) {
        return item(
                finding.result(),
                Text.of(shortfall.actual()),
                shortfall.byHowMuch(),
                Tone.OPEN,
                Text.of(Labels.text(
                        "exceptions.demand",
                        sheet.job()
                                .customer()
                                .map(firm -> firm.name())
                                .orElseGet(() -> Labels.text("firm.the-customer")))));
    }

    private ExceptionItem restless(Finding finding) {
        StudyStory story = new StudyStory(finding);
        return item(
                finding.result(),
                Text.of(story.signalsInShort()),
                Labels.text("exceptions.restless"),
                Tone.OPEN,
                Text.of(story.proposal()));
    }
}
