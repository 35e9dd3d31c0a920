package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.SignLine;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.words.Labels;
import java.util.List;

/** Lines to sign a study on: who put its inputs together, and who answers for what is done on the strength of it. */
public final class StudySignOff {
    private StudySignOff() {}

    /**
     * The lines.
     *
     * @param confirmed what whoever signs first confirms: a clause without a stop
     * @param accepted whether the study comes out as was asked
     */
    public static Block of(String confirmed, boolean accepted) {
        String statement = Labels.text("sign.study", confirmed);
        if (!accepted) {
            statement += " " + Labels.text("sign.study.releases-nothing");
        }
        return new Block.SignOff(
                Text.of(statement),
                List.of(
                        new SignLine(Labels.text("sign.prepared"), "", ""),
                        new SignLine(Labels.text("sign.approved"), "", "")));
    }
}
