package io.github.firstoff.study.pressfit;

import io.github.firstoff.assembly.Piece;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Which bore goes with which ring.
 *
 * @param wanted the interference aimed at, on the diameter at 20 °C before smoothing, in mm
 * @param least the least allowed, in mm
 * @param greatest the greatest allowed, in mm
 * @param pairs the pairs, in the order of the bores
 * @param left the pieces that stay without a partner
 * @param rootMeanSquare the root mean square of the distances from what is wanted, in mm; empty without pairs
 */
public record Matching(
        double wanted,
        double least,
        double greatest,
        List<Pair> pairs,
        List<Left> left,
        OptionalDouble rootMeanSquare) {
    /** Copies the lists. */
    public Matching {
        pairs = List.copyOf(pairs);
        left = List.copyOf(left);
    }

    /**
     * A pair.
     *
     * @param outer the bore
     * @param inner what goes in
     * @param interference exact, on the diameter at 20 °C before smoothing, in mm
     * @param effective the same after smoothing at the assembly temperature
     * @param pressIn what pressing takes at most, in N
     * @param holding what it holds at least, at any temperature, in N
     */
    public record Pair(
            Piece outer, Piece inner, BigDecimal interference, double effective, double pressIn, double holding) {}

    /**
     * A piece without a partner.
     *
     * @param piece the piece
     * @param bore whether it is a bore
     * @param why why
     * @param nearest the interference with the partner that comes nearest to what is allowed, in mm
     */
    public record Left(Piece piece, boolean bore, Why why, BigDecimal nearest) {}

    /** Why a piece stays. */
    public enum Why {
        /** With every partner the interference is too small. */
        TOO_LOOSE(Remark.of("pieces-left.too-loose", "too loose with every partner")),
        /** With every partner the interference is too great. */
        TOO_TIGHT(Remark.of("pieces-left.too-tight", "too tight with every partner")),
        /** Some partners are too loose, the others too tight. */
        BETWEEN(Remark.of("pieces-left.between", "too loose with some partners, too tight with the others")),
        /** It could be paired, but its partners serve other pieces. */
        LEFT_OVER(Remark.of("pieces-left.left-over", "left over: its partners serve other pieces better"));

        private final Remark remark;

        Why(Remark remark) {
            this.remark = remark;
        }

        /** In words. */
        public Remark remark() {
            return remark;
        }

        /** The same in English. */
        public String words() {
            return remark.english();
        }
    }
}
