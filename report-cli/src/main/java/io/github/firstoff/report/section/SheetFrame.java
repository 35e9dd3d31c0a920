package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.DocumentInfo;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.SheetFoot;
import io.github.firstoff.report.model.SheetHead;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What stands around the content of every sheet: head, foot, the hand at the edge, and what the file says of itself. */
public final class SheetFrame {
    private static final int HASH_DIGITS = 12;

    private final Sheet sheet;
    private final PartIdentity part;

    /** The frame of one sheet. */
    public SheetFrame(Sheet sheet) {
        this.sheet = sheet;
        this.part = sheet.plan().part();
    }

    /** The whole sheet around these blocks. */
    public ReportModel around(PaperSize paper, List<Block> blocks) {
        return new ReportModel(paper, Wording.kind(sheet.kind()), number(), head(), foot(), document(), blocks);
    }

    /** The same with other words about what the sheet says, where that is not its verdict. */
    public ReportModel around(PaperSize paper, String subject, List<Block> blocks) {
        DocumentInfo usual = document();
        DocumentInfo document =
                new DocumentInfo(usual.title(), usual.author(), subject, usual.language(), usual.created());
        return new ReportModel(paper, Wording.kind(sheet.kind()), number(), head(), foot(), document, blocks);
    }

    private String number() {
        return sheet.kind() == SheetKind.CERTIFICATE
                ? sheet.job().certificateNumber().orElseGet(() -> Labels.text("certificate.number-not-stated"))
                : sheet.job().job().map(job -> Labels.text("frame.job", job)).orElse("");
    }

    private SheetHead head() {
        return new SheetHead(
                part.number(),
                part.name().orElse(""),
                part.revision(),
                sheet.job().batch().orElse(""),
                part.hand().map(SheetFrame::hand).orElse(Hand.NONE));
    }

    private static Hand hand(io.github.firstoff.plan.Hand hand) {
        return switch (hand) {
            case PORT -> Hand.PORT;
            case STARBOARD -> Hand.STARBOARD;
            case LEFT -> Hand.LEFT;
            case RIGHT -> Hand.RIGHT;
        };
    }

    private SheetFoot foot() {
        String hash = sheet.provenance().shortHash();
        return new SheetFoot(rule(), sheet.provenance().program(), hash.length() == HASH_DIGITS ? hash : "");
    }

    /** The rules that decided, the commonest first; each of the others with the characteristics it decided. */
    private String rule() {
        Map<String, List<String>> numbers = new LinkedHashMap<>();
        for (CharacteristicResult each : sheet.result().judged()) {
            if (!each.characteristic().isAttribute()) {
                numbers.computeIfAbsent(statement(each), rule -> new ArrayList<>())
                        .add(each.number());
            }
        }
        return numbers.entrySet().stream()
                .sorted(Comparator.comparing(entry -> -entry.getValue().size()))
                .map(entry -> Wording.capital(
                        numbers.size() == 1 || entry.getValue().size() == most(numbers)
                                ? entry.getKey()
                                : Wording.characteristics(entry.getValue()) + ": " + entry.getKey()))
                .collect(Collectors.joining("; ", "", numbers.isEmpty() ? "" : "."));
    }

    private static int most(Map<String, List<String>> numbers) {
        return numbers.values().stream().mapToInt(List::size).max().orElse(0);
    }

    private static String statement(CharacteristicResult result) {
        boolean rounded = result.characteristic().decision().comparison() == DecisionChoice.Comparison.ROUNDING;
        String statement = Wording.statement(result);
        return rounded ? Labels.text("rule.rounded", statement) : statement;
    }

    private DocumentInfo document() {
        String title = Labels.text(
                "document.title",
                Wording.kind(sheet.kind()),
                part.number(),
                part.revision(),
                sheet.job()
                        .batch()
                        .map(batch -> Labels.text("document.batch", batch))
                        .orElse(""));
        return new DocumentInfo(
                title,
                sheet.job().issuer().map(firm -> firm.name()).orElse(""),
                Phrases.headline(sheet.result().verdict()) + ", " + Wording.pieces(sheet.pieces()),
                Labels.spoken(),
                sheet.provenance().madeAt());
    }
}
