package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.SignLine;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Sheet;
import java.util.List;

/** Lines to sign on. Who inspected is filled in where the job says; a signature is always written by hand. */
public final class SignOffSection {
    private final Sheet sheet;

    /** The section of one sheet. */
    public SignOffSection(Sheet sheet) {
        this.sheet = sheet;
    }

    /** The lines of a first article or a batch. */
    public Block block() {
        String statement =
                "By signing, the undersigned confirm that the readings on this sheet were taken on the pieces named,"
                        + " with the gauges listed.";
        if (!VerdictSection.isAccepted(sheet)) {
            statement += " This sheet is not accepted: a signature here releases nothing.";
        }
        String date = sheet.job().date().map(Object::toString).orElse("");
        return new Block.SignOff(
                Text.of(statement),
                List.of(
                        new SignLine("Inspected by", JobFacts.person(sheet.job().inspector()), date),
                        new SignLine("Approved by", "", "")));
    }

    /** The line of a certificate: who is authorised to declare. */
    public Block forCertificate() {
        String issuer = sheet.job().issuer().map(firm -> firm.name()).orElse("the issuer (" + Wording.NOT_STATED + ")");
        String date = sheet.job().date().map(Object::toString).orElse("");
        return new Block.SignOff(
                Text.of("Signed for and on behalf of " + issuer),
                List.of(new SignLine(
                        "Authorised by", JobFacts.person(sheet.job().inspector()), date)));
    }
}
