package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Reads {@code Ra 0.8 max} and its like. */
final class RoughnessNotation {
    /**
     * Height parameters, all lengths: ISO 21920-2:2021 and ISO 4287:1997 profile parameters, ISO 25178-2:2021 areal ones, and
     * Rmax and Ry of older drawings. Longer names first.
     */
    private static final List<String> PARAMETERS = List.of(
            "Rmax", "Rz1max", "R3z", "Rpk", "Rvk", "Ra", "Rq", "Rz", "Rt", "Rp", "Rv", "Rc", "Ry", "Rk", "Pa", "Pq",
            "Pt", "Pz", "Wa", "Wq", "Wt", "Wz", "Sa", "Sq", "Sz", "Sp", "Sv");

    private RoughnessNotation() {}

    /** Steps over a parameter's name, if one stands here. */
    static Optional<String> parameter(Scanner in) {
        int start = in.position();
        for (String parameter : PARAMETERS) {
            String word = in.rest().strip();
            // SQ 20 is a square, Sq 20 a roughness
            boolean anyCase = !parameter.startsWith("S");
            if (word.regionMatches(anyCase, 0, parameter, 0, parameter.length())
                    && (word.length() == parameter.length() || !Character.isLetter(word.charAt(parameter.length())))) {
                in.skipSpace();
                in.back(in.position() + parameter.length());
                return Optional.of(parameter);
            }
        }
        in.back(start);
        return Optional.empty();
    }

    static Requirement read(Scanner in, String parameter) {
        if (in.accept("-")) {
            throw in.fault(in.position() - 1, "a roughness is never negative", parameter + " 0.8 max");
        }
        boolean wordFirst = in.acceptWord("max") || in.accept("≤") || in.accept("<=");
        BigDecimal first = in.number();
        in.acceptUnit();
        int afterFirst = in.position();
        Requirement read;
        if (!wordFirst && SizeNotation.acceptRange(in)) {
            int at = in.position();
            BigDecimal second = in.number();
            in.acceptUnit();
            if (first.compareTo(second) >= 0) {
                throw in.fault(
                        at,
                        "the lower limit " + first.toPlainString() + " is not below the upper limit "
                                + second.toPlainString(),
                        parameter + " " + second.toPlainString() + ".." + first.toPlainString());
            }
            read = new Roughness(parameter, Optional.of(first), Optional.of(second), in.unit());
        } else if (!wordFirst && in.acceptWord("min")) {
            read = new Roughness(parameter, Optional.of(first), Optional.empty(), in.unit());
        } else {
            if (first.signum() == 0) {
                throw in.fault(afterFirst - 1, "no surface has a roughness of 0", parameter + " 0.8 max");
            }
            boolean max = in.acceptWord("max");
            if (max) {
                in.accept(".");
            }
            read = new Roughness(parameter, Optional.empty(), Optional.of(first), in.unit());
        }
        in.expectEnd(before -> read.text());
        return read;
    }
}
