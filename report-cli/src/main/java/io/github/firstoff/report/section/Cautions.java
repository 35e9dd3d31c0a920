package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.FitPair;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Warnings in measured words, where what is at stake is more than a part. They defer to the rules of the shop and the customer. */
public final class Cautions {
    /** A tolerance class of ISO 286 whose zone lies on the interference side of the usual counterpart: p to zc, P to ZC. */
    private static final Pattern PRESSED =
            Pattern.compile("(?:P|R|S|T|U|V|X|Y|Z|ZA|ZB|ZC|p|r|s|t|u|v|x|y|z|za|zb|zc)\\d{1,2}$");

    private final Sheet sheet;

    /** The cautions of one sheet. */
    public Cautions(Sheet sheet) {
        this.sheet = sheet;
    }

    /** What must be heeded before the sheet is acted on; usually nothing. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        List<CharacteristicResult> critical = sheet.result().judged().stream()
                .filter(Wording::isCritical)
                .filter(each -> each.verdict() != Verdict.CONFORMING)
                .toList();
        List<CharacteristicResult> out = critical.stream()
                .filter(each -> each.verdict() == Verdict.NONCONFORMING)
                .toList();
        List<CharacteristicResult> open = critical.stream()
                .filter(each -> each.verdict() != Verdict.NONCONFORMING)
                .toList();
        if (!out.isEmpty()) {
            blocks.add(caution(Labels.text("caution.critical-out", named(out), out.size()) + rules()));
        }
        if (!open.isEmpty()) {
            blocks.add(caution(Labels.text("caution.critical-open", named(open), open.size()) + rules()));
        }
        critical.stream()
                .filter(Cautions::isPressed)
                .findFirst()
                .ifPresent(each -> blocks.add(caution(Labels.text(
                        "caution.press",
                        each.number(),
                        each.characteristic().characteristic().printed()))));
        return blocks;
    }

    private static String rules() {
        return " " + Labels.text("caution.rules");
    }

    private static Block caution(String text) {
        return new Block.Caution(Text.of(text));
    }

    private static String named(List<CharacteristicResult> results) {
        return Phrases.listed(results.stream()
                .map(each -> each.number() + " ("
                        + each.characteristic().characteristic().feature() + ")")
                .toList());
    }

    /** What the limits of a pair come to, and what a conforming size in a press fit does and does not say; empty without one. */
    public List<Block> fitNotes() {
        return fitSentences()
                .map(text -> List.<Block>of(new Block.Note(Text.of(text))))
                .orElse(List.of());
    }

    /** The same as running text. */
    public Optional<String> fitSentences() {
        List<String> sentences = new ArrayList<>();
        for (CharacteristicResult each : sheet.result().judged()) {
            Characteristic characteristic = each.characteristic().characteristic();
            if (characteristic.requirement() instanceof FitPair pair) {
                sentences.add(Labels.text(
                        "fit.pair",
                        each.number(),
                        characteristic.printed(),
                        Phrases.fit(pair.fitOn(sheet.plan().plan().unit()))));
            }
        }
        String numbers = sheet.result().judged().stream()
                .filter(Cautions::isPressed)
                .map(each -> each.number() + " ("
                        + each.characteristic().characteristic().printed() + ")")
                .collect(Collectors.joining(", "));
        if (!numbers.isEmpty()) {
            sentences.add(Labels.text("fit.pressed", numbers));
        }
        return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
    }

    private static boolean isPressed(CharacteristicResult result) {
        boolean classed = result.characteristic()
                .characteristic()
                .requirement()
                .form()
                .filter(form -> form == Drawing.Form.HOLE || form == Drawing.Form.SHAFT)
                .isPresent();
        return classed
                && PRESSED.matcher(result.characteristic()
                                .characteristic()
                                .requirement()
                                .text())
                        .find();
    }
}
