package io.github.firstoff.command;

import io.github.firstoff.proof.Claim;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Told;
import java.util.List;

/** A study that was made: the same value is printed, and says what its sheet claims. */
interface MadeStudy extends MadeSheet, Claim {
    /** What its sheet tells. */
    Told sheet();

    @Override
    default Provenance provenance() {
        return sheet().provenance();
    }

    @Override
    default List<String> notices() {
        return sheet().notices();
    }

    @Override
    default Claim claim() {
        return this;
    }

    @Override
    default ReportModel pages(Stationery stationery) {
        return stationery.on(() -> compose(stationery.paper()));
    }

    /** Its pages on that paper, in the language that is spoken. */
    ReportModel compose(PaperSize paper);
}
