package io.github.firstoff.sheet;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.words.Labels;
import java.util.List;
import java.util.Optional;

/**
 * A press fit as it is told: the study, and where it comes from.
 *
 * @param result what the joint comes to
 * @param hand the hand of the parts, from the assembly or from the readings
 * @param remarks what should be known of the inputs
 * @param provenance what it was made from and by
 */
public record FitSheet(FitResult result, Optional<Hand> hand, List<Remark> remarks, Provenance provenance)
        implements Told {
    /** Copies the list. */
    public FitSheet {
        remarks = List.copyOf(remarks);
    }

    /** What the assembly is called. */
    public String name() {
        return result.joint().name().orElseGet(() -> Labels.text("kind.fit"));
    }

    /** The part number: that of the assembly, or of the outer part; empty if neither is stated. */
    public String part() {
        return result.joint().part().or(() -> result.joint().outer().part()).orElse("");
    }
}
