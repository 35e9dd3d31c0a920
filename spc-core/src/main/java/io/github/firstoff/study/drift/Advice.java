package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What to do about a drift, in the dimension as it is measured. What cannot be said is empty, and a note says why.
 *
 * @param target where the process should be, in the unit
 * @param levelNow where the line puts the next piece, in the unit
 * @param offset what to add to the size now so that the next piece is expected at the target, rounded to the increment; 0 where the
 *     distance is not distinguishable from none
 * @param recentreTo the size at which a new tool should begin, so that its whole life lies about the middle of the limits, rounded to the increment
 * @param recentreOffset what to add now to begin a whole tool life there
 * @param toolLife the most pieces that one tool, begun there, can make before the index at its worst moment falls below the required one;
 *     with one limit only, the pieces left from now on
 * @param requiredIndex that index
 * @param indexNow the index at the next piece: its distance to the nearer limit over three standard deviations about the line
 * @param indexPerPiece by how much that index falls with each piece, not below 0
 * @param increment the step of the machine's offset, in the unit
 * @param remarks why something is empty or as it is, in sentences
 */
public record Advice(
        Optional<BigDecimal> target,
        OptionalDouble levelNow,
        Optional<BigDecimal> offset,
        Optional<BigDecimal> recentreTo,
        Optional<BigDecimal> recentreOffset,
        OptionalLong toolLife,
        double requiredIndex,
        OptionalDouble indexNow,
        OptionalDouble indexPerPiece,
        BigDecimal increment,
        List<Remark> remarks) {
    /** Copies the list. */
    public Advice {
        remarks = List.copyOf(remarks);
    }

    /** Why something is empty or as it is, in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }
}
