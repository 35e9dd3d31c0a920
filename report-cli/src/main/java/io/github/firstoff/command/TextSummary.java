package io.github.firstoff.command;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.Stage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The result in a few lines for a terminal: the verdict, what needs a decision, the charts, where the sheet went. */
final class TextSummary {
    private static final int MOST_EXCEPTIONS = 20;

    private final Sheet sheet;
    private final @Nullable Path written;

    TextSummary(Sheet sheet, @Nullable Path written) {
        this.sheet = sheet;
        this.written = written;
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(head());
        lines.add(verdict());
        int left = sheet.result().uncovered().size();
        if (left > 0) {
            lines.add("It covers a part of the plan: of " + Phrases.counted(left, "characteristic", "characteristics")
                    + " it claims nothing.");
        }
        lines.add(sheet.provenance().rows() + ".");
        exceptions(lines);
        for (Finding finding : sheet.findings()) {
            finding.study().ifPresent(study -> {
                lines.add(study(finding, study));
                choices(study).forEach(choice -> lines.add("    " + choice));
            });
        }
        if (sheet.kind() == SheetKind.CERTIFICATE && !sheet.refusals().isEmpty()) {
            lines.add("No certificate can be given:");
            sheet.refusals().forEach(reason -> lines.add("  " + reason));
        }
        if (written != null) {
            lines.add("Written: " + written);
        }
        return lines;
    }

    private String head() {
        PartIdentity part = sheet.plan().part();
        StringBuilder head = new StringBuilder(sheet.kind().title())
                .append(": ")
                .append(part.number())
                .append(" revision ")
                .append(part.revision());
        part.hand().ifPresent(hand -> head.append(", ").append(hand.word()));
        sheet.job().batch().ifPresent(batch -> head.append(", batch ").append(batch));
        return head.toString();
    }

    private String verdict() {
        int judged = sheet.result().judged().size();
        return Phrases.headline(sheet.result().verdict()) + ": "
                + sheet.result().count(Verdict.CONFORMING) + " of "
                + Phrases.counted(judged, "characteristic", "characteristics") + " conform on "
                + Phrases.counted(sheet.pieces(), "piece", "pieces") + ".";
    }

    private void exceptions(List<String> lines) {
        List<String> all = new ArrayList<>();
        for (Finding finding : sheet.findings()) {
            CharacteristicResult result = finding.result();
            if (!result.characteristic().isJudged()) {
                continue;
            }
            for (Judgement judgement : result.judgements()) {
                if (judgement.verdict() != Verdict.CONFORMING) {
                    all.add("  " + result.number() + "  "
                            + result.characteristic().characteristic().printed() + "  " + judgement.part() + "  "
                            + value(judgement) + "  " + Phrases.of(judgement)
                            + finding.doubtAbout(judgement)
                                    .map(doubt -> ". " + doubt.sentence())
                                    .orElse(""));
                }
            }
            if (result.verdict() == Verdict.NOT_MEASURED || !result.missing().isEmpty()) {
                all.add("  " + result.number() + "  "
                        + result.characteristic().characteristic().printed() + "  not measured"
                        + (result.judgements().isEmpty() ? "" : " on " + Phrases.missing(result)));
            }
        }
        lines.addAll(all.subList(0, Math.min(MOST_EXCEPTIONS, all.size())));
        if (all.size() > MOST_EXCEPTIONS) {
            lines.add("  and " + (all.size() - MOST_EXCEPTIONS) + " more");
        }
    }

    private static String value(Judgement judgement) {
        if (judgement.reading() instanceof Reading.Measured measured) {
            return measured.value().toPlainString();
        }
        return judgement.reading() instanceof Reading.Observed observed && observed.pass() ? "pass" : "fail";
    }

    private static String study(Finding finding, ProcessStudy study) {
        Assessment assessment = study.assessment();
        String state = switch (assessment.control()) {
            case IN_CONTROL -> "in control";
            case OUT_OF_CONTROL ->
                "not in control, "
                        + Phrases.counted(assessment.signals().size(), "signal", "signals") + ", the first at point "
                        + assessment.signals().stream()
                                .mapToInt(signal -> signal.at())
                                .min()
                                .orElseThrow();
            case NOT_ASSESSED -> "control not assessed";
        };
        return "  chart of " + finding.number() + " ("
                + finding.result().characteristic().characteristic().printed() + ", " + inSentence(study.chartTitle())
                + "): "
                + state;
    }

    /** What somebody decided about a chart, which is never silent: limits from elsewhere, new limits, points left out. */
    private static List<String> choices(ProcessStudy study) {
        List<String> choices = new ArrayList<>();
        study.frozenFrom().ifPresent(from -> choices.add("limits set before: " + from));
        for (Stage stage : study.chart().stages()) {
            stage.reason()
                    .ifPresent(reason -> choices.add("limits recalculated from point " + stage.from() + " on ("
                            + stage.label() + "): " + reason));
        }
        for (Exclusion exclusion : study.chart().data().exclusions()) {
            choices.add("point " + exclusion.number() + " excluded: " + exclusion.reason());
        }
        return choices;
    }

    private static String inSentence(String title) {
        return title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
    }
}
