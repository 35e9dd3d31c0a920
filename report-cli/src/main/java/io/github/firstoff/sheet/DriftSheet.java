package io.github.firstoff.sheet;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import java.util.List;

/**
 * A study of drift, ready to be told.
 *
 * @param sheet part, job, verdicts and where they come from
 * @param options what was asked
 * @param findings one for each characteristic and batch that was followed, those that need attention first
 * @param left the characteristics that were not followed, and why
 */
public record DriftSheet(Sheet sheet, DriftOptions options, List<DriftFinding> findings, List<Left> left) {
    /** Copies the lists. */
    public DriftSheet {
        findings = List.copyOf(findings);
        left = List.copyOf(left);
    }

    /**
     * A characteristic that was not followed.
     *
     * @param number its number
     * @param reason why, a clause without a stop
     */
    public record Left(String number, String reason) {}

    /** The verdict on the readings that were followed, and on no others. */
    public SheetVerdict verdict() {
        Verdict worst = Verdict.CONFORMING;
        for (DriftFinding each : findings) {
            worst = worst.worse(each.verdict());
        }
        return switch (worst) {
            case CONFORMING -> SheetVerdict.ACCEPTED;
            case INCONCLUSIVE -> SheetVerdict.INCONCLUSIVE;
            case NONCONFORMING -> SheetVerdict.REJECTED;
            case NOT_MEASURED -> SheetVerdict.INCOMPLETE;
        };
    }
}
