package io.github.firstoff.tolerance;

import java.util.Locale;
import java.util.Optional;

/** Reads a size without its tolerance: count, symbol, number, and the angle of a chamfer. */
final class DimensionNotation {
    private final Scanner in;

    DimensionNotation(Scanner in) {
        this.in = in;
    }

    private int skipped() {
        in.skipSpace();
        return in.position();
    }

    Dimension read() {
        Optional<Integer> count = count();
        DimensionSymbol symbol = symbol();
        int at = skipped();
        boolean negative = false;
        if (in.peek() == '±' || in.peek() == '+') {
            throw nominalMissing(at);
        }
        if (in.accept("-")) {
            negative = true;
        }
        if (!in.startsNumber()) {
            throw notASize(at);
        }
        Amount nominal = AmountNotation.read(in, false);
        if (negative) {
            if (isDeviationOfNothing()) {
                in.back(at);
                throw nominalMissing(at);
            }
            if (symbol != DimensionSymbol.NONE) {
                throw in.fault(at, "a " + symbol.sign() + " is never negative", symbol.sign() + nominal.text());
            }
            nominal = nominal.negate();
        }
        if (nominal.isAngle() && symbol != DimensionSymbol.NONE) {
            throw in.fault(at, "an angle has no " + symbol.sign(), nominal.text());
        }
        Optional<Amount> chamfer = chamferAngle(nominal, symbol);
        return new Dimension(new Dimension.Prefix(count, symbol), nominal, chamfer, in.unit());
    }

    /** Whether the negative number just read is the first of two deviations rather than a size below zero. */
    private boolean isDeviationOfNothing() {
        int start = in.position();
        boolean alone = in.accept("/");
        if (!alone && in.accept("+") && in.startsNumber()) {
            AmountNotation.read(in, false);
            alone = in.atEnd();
        }
        in.back(start);
        return alone;
    }

    private RequirementFault nominalMissing(int at) {
        return in.fault(
                at,
                "the nominal size is missing in front of its tolerance",
                "12.5 " + in.rest().strip());
    }

    private RequirementFault notASize(int at) {
        if (in.atEnd()) {
            return in.fault("the requirement ends where a number should stand", "12.5 ±0.05");
        }
        String found = in.nextWord();
        String upper = found.toUpperCase(Locale.ROOT);
        if (!found.equals(upper) && upper.matches("(R|SR|C)[0-9.].*")) {
            return in.fault(at, "a drawing writes " + upper.charAt(0) + " as a capital letter", upper);
        }
        return in.fault(
                at,
                Scanner.quoted(found) + " is neither a size, a geometric characteristic, a roughness nor an attribute",
                "12.5 ±0.05, Ø52 P7, flatness 0.02, Ra 0.8 max, visual: no burrs");
    }

    /** The count of {@code 4x Ø5}; {@code 2x45°} is a chamfer and has none. */
    private Optional<Integer> count() {
        int start = skipped();
        String digits = in.digits();
        if (digits.isEmpty() || !acceptTimes()) {
            in.back(start);
            return Optional.empty();
        }
        if (in.startsNumber()) {
            int second = in.position();
            boolean angle = AmountNotation.read(in, false).isAngle();
            in.back(angle ? start : second);
            if (angle) {
                return Optional.empty();
            }
        }
        if (digits.length() > 4 || Integer.parseInt(digits) == 0) {
            throw in.fault(start, digits + " is no count of features", "4x");
        }
        return Optional.of(Integer.valueOf(digits));
    }

    private boolean acceptTimes() {
        return in.accept("x") || in.accept("X");
    }

    private DimensionSymbol symbol() {
        if (in.accept("SØ")) {
            return DimensionSymbol.SPHERE_DIAMETER;
        }
        if (in.accept("Ø") || in.acceptBefore("dia.") || in.acceptBefore("dia") || in.acceptBefore("diameter")) {
            return DimensionSymbol.DIAMETER;
        }
        if (in.accept("□") || in.acceptBefore("sq.") || in.acceptBefore("sq") || in.acceptBefore("square")) {
            return DimensionSymbol.SQUARE;
        }
        int start = skipped();
        String letters = in.letters();
        boolean number = in.startsNumber() || in.peek() == '-' || in.peek() == '+';
        if (number) {
            switch (letters) {
                case "R" -> {
                    return DimensionSymbol.RADIUS;
                }
                case "SR" -> {
                    return DimensionSymbol.SPHERE_RADIUS;
                }
                case "C" -> {
                    return DimensionSymbol.CHAMFER;
                }
                default -> {
                    // not a symbol: what it is, is said where a number is missed
                }
            }
        }
        in.back(start);
        return DimensionSymbol.NONE;
    }

    Optional<Amount> chamferAngle(Amount leg, DimensionSymbol symbol) {
        int start = in.position();
        if (!acceptTimes()) {
            return Optional.empty();
        }
        int at = skipped();
        Amount angle = AmountNotation.read(in, false);
        if (!angle.isAngle()) {
            throw in.fault(
                    at,
                    "behind the x of a chamfer stands its angle; two lengths are two characteristics",
                    leg.text() + "x45°");
        }
        if (symbol != DimensionSymbol.NONE || leg.isAngle()) {
            throw in.fault(start, "a chamfer is a length and an angle", "1x45°");
        }
        in.acceptUnit();
        return Optional.of(angle);
    }
}
