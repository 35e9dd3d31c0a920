package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.DecisionRule;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
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
import java.util.List;
import java.util.Locale;

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
        return new ReportModel(paper, sheet.kind().title(), number(), head(), foot(), document(), blocks);
    }

    private String number() {
        return sheet.kind() == SheetKind.CERTIFICATE
                ? sheet.job().certificateNumber().orElse("number " + Wording.NOT_STATED)
                : sheet.job().job().map(job -> "job " + job).orElse("");
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

    /** The rule that decided; where two did, which characteristics are guarded. */
    private String rule() {
        List<CharacteristicResult> measured = sheet.result().judged().stream()
                .filter(each -> !each.characteristic().isAttribute())
                .toList();
        List<String> guarded = measured.stream()
                .filter(each -> each.characteristic().rule() == RuleChoice.GUARDED)
                .map(CharacteristicResult::number)
                .toList();
        if (measured.isEmpty()) {
            return "";
        }
        if (guarded.isEmpty()) {
            return Wording.capital(DecisionRule.simple().statement()) + ".";
        }
        if (guarded.size() == measured.size()) {
            return Wording.capital(DecisionRule.guarded().statement()) + ".";
        }
        return Wording.capital(DecisionRule.simple().statement()) + "; " + Wording.characteristics(guarded) + ": "
                + DecisionRule.guarded().statement() + ".";
    }

    private DocumentInfo document() {
        String title = sheet.kind().title() + ", " + part.number() + " revision " + part.revision()
                + sheet.job().batch().map(batch -> ", batch " + batch).orElse("");
        return new DocumentInfo(
                title,
                sheet.job().issuer().map(firm -> firm.name()).orElse(""),
                Phrases.headline(sheet.result().verdict()) + ", " + Phrases.counted(sheet.pieces(), "piece", "pieces"),
                Locale.UK,
                sheet.provenance().madeAt());
    }
}
