package io.github.firstoff.sheet;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.study.stack.StackResult;
import java.util.List;

/**
 * A dimension loop as it is told: the study, and where it comes from.
 *
 * @param result what the loop comes to
 * @param remarks what should be known of the inputs
 * @param provenance what it was made from and by
 */
public record StackSheet(StackResult result, List<Remark> remarks, Provenance provenance) implements Told {
    /** The share outside the wanted gap that is taken as none to speak of (common practice: the tails of ±3σ). */
    private static final double USUAL_SHARE = 0.0027;

    /** Copies the list. */
    public StackSheet {
        remarks = List.copyOf(remarks);
    }

    /**
     * Whether the gap is as wanted: by worst case, or else by the share outside of it. True where nothing is asked.
     *
     * @return true if no conforming part can take it out, or at most 0.27 % of assemblies are out by the simulation
     */
    public boolean accepted() {
        return result.worstFits().orElse(false)
                || result.drawn()
                        .outside()
                        .map(outside -> outside.total() <= USUAL_SHARE)
                        .orElse(true);
    }
}
