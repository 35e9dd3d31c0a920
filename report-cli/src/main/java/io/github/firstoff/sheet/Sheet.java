package io.github.firstoff.sheet;

import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import java.util.List;

/**
 * What one sheet says.
 *
 * @param kind first article, batch or certificate
 * @param result the verdicts
 * @param findings one per characteristic, in the plan's order
 * @param job which order, batch, material and people; what is missing is "not stated"
 * @param refusals why a certificate cannot be given, in sentences; empty for other kinds and where it can
 * @param remarks what a reader must know beside the verdicts, in sentences
 * @param provenance what it was made from and by
 */
public record Sheet(
        SheetKind kind,
        InspectionResult result,
        List<Finding> findings,
        Job job,
        List<String> refusals,
        List<Remark> remarks,
        Provenance provenance)
        implements Told {
    /** Copies the lists. */
    public Sheet {
        findings = List.copyOf(findings);
        refusals = List.copyOf(refusals);
        remarks = List.copyOf(remarks);
    }

    /** The plan that the pieces were held against. */
    public ResolvedPlan plan() {
        return result.record().plan();
    }

    /** How many pieces the readings name. */
    public int pieces() {
        return result.record().parts().size();
    }
}
