package io.github.firstoff.report.section;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.SignLine;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lines to sign on. Who inspected is filled in where the job says; a signature is always written by hand. */
public final class SignOffSection {
    private final Sheet sheet;

    /** The section of one sheet. */
    public SignOffSection(Sheet sheet) {
        this.sheet = sheet;
    }

    /** The lines of a first article or a batch. */
    public Block block() {
        String statement = Labels.text("sign.statement");
        if (!VerdictSection.isAccepted(sheet)) {
            statement += " " + Labels.text("sign.releases-nothing");
        }
        String date = sheet.job().date().map(Object::toString).orElse("");
        return new Block.SignOff(
                Text.of(statement),
                List.of(
                        new SignLine(
                                Labels.text("sign.inspected"),
                                JobFacts.person(sheet.job().inspector()),
                                date),
                        new SignLine(Labels.text("sign.approved"), "", "")));
    }

    /** The line of a certificate: who is authorised to declare. */
    public Block forCertificate() {
        String issuer =
                sheet.job().issuer().map(firm -> firm.name()).orElseGet(() -> Labels.text("sign.issuer-not-stated"));
        String date = sheet.job().date().map(Object::toString).orElse("");
        Optional<Job.InspectionDocument> document = sheet.job().inspectionDocument();
        boolean certificate = document.filter(
                        each -> each == Job.InspectionDocument.TYPE_3_1 || each == Job.InspectionDocument.TYPE_3_2)
                .isPresent();
        List<SignLine> lines = new ArrayList<>();
        lines.add(new SignLine(
                Labels.text(certificate ? "sign.representative" : "sign.authorised"),
                JobFacts.person(sheet.job().inspector()),
                date));
        if (document.equals(Optional.of(Job.InspectionDocument.TYPE_3_2))) {
            lines.add(new SignLine(Labels.text("sign.purchaser"), "", ""));
        } else {
            // One signs a certificate; a second signature is there only where the house wants one, and then says what
            // it is.
            lines.add(SignLine.onlySigned(Labels.text("sign.approved")));
        }
        return new Block.SignOff(Text.of(Labels.text("sign.for", issuer)), lines);
    }
}
