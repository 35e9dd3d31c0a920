package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** Reads sizes and angles with whatever tolerance stands behind them. */
final class SizeNotation {
    private final Scanner in;

    private SizeNotation(Scanner in) {
        this.in = in;
    }

    static Requirement read(Scanner in) {
        SizeNotation notation = new SizeNotation(in);
        Requirement size = notation.requirement();
        int at = notation.skipped();
        boolean envelope = in.accept("Ⓔ") || in.accept("(E)") || in.accept("(e)");
        if (envelope && !canHaveEnvelope(size)) {
            throw in.fault(at, "the envelope requirement is for a feature of size with two limits", size.text());
        }
        Requirement read = envelope ? new EnvelopedSize(size) : size;
        in.expectEnd(before -> read.text());
        return read;
    }

    private static boolean canHaveEnvelope(Requirement size) {
        if (size instanceof DeviatedSize deviated) {
            return !deviated.dimension().isAngle() && !deviated.dimension().isRadiusOrChamfer();
        }
        if (size instanceof LimitedSize limited) {
            return !limited.lower().isAngle();
        }
        return size instanceof ClassedSize || size instanceof FitPair;
    }

    /** A size without tolerance: count, symbol, number, and the angle of a chamfer. */
    static Dimension dimension(Scanner in) {
        return new DimensionNotation(in).read();
    }

    static Dimension withUnit(Scanner in, Dimension dimension) {
        return new Dimension(dimension.prefix(), dimension.nominal(), dimension.chamferAngle(), in.unit());
    }

    /** Steps over what stands between two limits. */
    static boolean acceptRange(Scanner in) {
        return in.accept("...") || in.accept("..") || in.accept("…") || in.acceptWord("to");
    }

    private Requirement requirement() {
        Optional<OneLimitSize.Bound> bound = leadingBound();
        Dimension dimension = new DimensionNotation(in).read();
        if (bound.isPresent()) {
            return new OneLimitSize(withUnit(in, dimension), bound.get());
        }
        int at = skipped();
        if (acceptRange(in)) {
            return limited(dimension);
        }
        if (in.accept("±") || acceptPlusMinus()) {
            return symmetric(dimension, at);
        }
        if (in.peek() == '+' || in.peek() == '-' || in.startsNumber()) {
            return deviated(dimension, at);
        }
        if (in.acceptWord("max")) {
            in.accept(".");
            return new OneLimitSize(withUnit(in, dimension), OneLimitSize.Bound.MAX);
        }
        if (in.acceptWord("min")) {
            in.accept(".");
            return new OneLimitSize(withUnit(in, dimension), OneLimitSize.Bound.MIN);
        }
        if (in.accept("/")) {
            throw slash(dimension, at);
        }
        if (Character.isLetter(in.peek())) {
            return new ToleranceClassNotation(in).read(withUnit(in, dimension));
        }
        return bare(dimension);
    }

    private RequirementFault slash(Dimension first, int at) {
        String understood = "51.95..52.05";
        if (in.startsNumber()) {
            Amount second = AmountNotation.read(in, first.isAngle());
            boolean ascending = first.nominal().value().compareTo(second.value()) < 0;
            understood = first.prefix().text()
                    + (ascending
                            ? first.nominal().text() + ".." + second.text()
                            : second.text() + ".." + first.nominal().text());
        }
        return in.fault(
                at, "a slash parts deviations, which have signs; two limits are parted by two points", understood);
    }

    private int skipped() {
        in.skipSpace();
        return in.position();
    }

    private Optional<OneLimitSize.Bound> leadingBound() {
        int at = skipped();
        if (in.acceptBefore("max.") || in.acceptBefore("max") || in.accept("≤") || in.accept("<=")) {
            return Optional.of(OneLimitSize.Bound.MAX);
        }
        if (in.acceptBefore("min.") || in.acceptBefore("min") || in.accept("≥") || in.accept(">=")) {
            return Optional.of(OneLimitSize.Bound.MIN);
        }
        if (in.accept("<") || in.accept(">")) {
            boolean below = in.isNext("<") || in.original().charAt(at) == '<';
            throw in.fault(
                    at,
                    "a value on the limit conforms, so a limit is never “less than” or “greater than”",
                    in.rest().strip() + (below ? " max" : " min"));
        }
        return Optional.empty();
    }

    private Requirement limited(Dimension lower) {
        int at = skipped();
        boolean negative = in.accept("-");
        Amount upper = AmountNotation.read(in, lower.isAngle());
        if (negative) {
            upper = upper.negate();
        }
        requireSameKind(lower, upper, at);
        if (lower.chamferAngle().isPresent()) {
            throw in.fault(at, "the limits of a chamfer's leg are written as a tolerance", "2 ±0.2 x45°");
        }
        Exact low = lower.nominal().exact(Unit.MILLIMETRE);
        Exact high = upper.exact(Unit.MILLIMETRE);
        if (Unit.compare(low.value(), low.unit(), high.value(), high.unit()) >= 0) {
            throw in.fault(
                    at,
                    "the lower limit " + lower.nominal().text() + " is not below the upper limit " + upper.text(),
                    lower.prefix().text() + upper.text() + ".."
                            + lower.nominal().text());
        }
        return new LimitedSize(lower.prefix(), lower.nominal(), upper, in.unit());
    }

    private boolean acceptPlusMinus() {
        int start = in.position();
        if (in.accept("+")) {
            in.accept("/");
            if (in.accept("-")) {
                return true;
            }
        }
        in.back(start);
        return false;
    }

    private Requirement symmetric(Dimension nominal, int at) {
        int number = skipped();
        if (in.peek() == '-' || in.peek() == '+') {
            throw in.fault("behind ± stands the amount alone", nominal.head() + " ±0.05");
        }
        Amount amount = deviationAmount(nominal, number);
        if (amount.isZero()) {
            throw in.fault(
                    number,
                    "a tolerance of 0 lets nothing pass; a theoretically exact dimension stands in a box",
                    "[" + nominal.text() + "]");
        }
        return deviatedSize(nominal, amount, amount.negate(), at);
    }

    private Requirement deviated(Dimension nominal, int at) {
        Amount first = deviation(nominal);
        int gap = in.position();
        boolean parted = in.accept("/") || in.accept(";") || in.accept("|");
        int second = skipped();
        if (in.atEnd() || !(in.peek() == '+' || in.peek() == '-' || in.startsNumber())) {
            if (first.isZero()) {
                throw in.fault(at, "one deviation of 0 is no tolerance", nominal.text() + " +0.02/0");
            }
            throw in.fault(
                    parted ? second : gap,
                    "the second deviation is missing; " + first.signedText()
                            + " alone may be a shifted size or one side of a" + " tolerance",
                    first.isNegative()
                            ? nominal.head() + " 0/" + first.text()
                            : nominal.head() + " " + first.signedText() + "/0");
        }
        Amount other = deviation(nominal);
        Exact one = first.exact(Unit.MILLIMETRE);
        Exact two = other.exact(Unit.MILLIMETRE);
        int order = Unit.compare(one.value(), one.unit(), two.value(), two.unit());
        if (order == 0) {
            throw in.fault(second, "two equal deviations leave no tolerance", nominal.head() + " +0.02/-0.01");
        }
        return order > 0 ? deviatedSize(nominal, first, other, at) : deviatedSize(nominal, other, first, at);
    }

    /** One deviation with its sign; only zero may lack one. */
    private Amount deviation(Dimension nominal) {
        int at = skipped();
        boolean plus = in.accept("+");
        boolean minus = !plus && in.accept("-");
        if (plus && in.accept("-")) {
            throw in.fault(at, "two signs stand together", "±0.05 or +0.02/-0.01");
        }
        int number = skipped();
        Amount amount = deviationAmount(nominal, number);
        if (!plus && !minus && !amount.isZero()) {
            boolean integer = amount.value().scale() <= 0 && !amount.isAngle();
            throw in.fault(
                    at,
                    integer
                            ? amount.text()
                                    + " is neither a deviation, which has a sign, nor a grade, which has its letter in"
                                    + " front"
                            : "a deviation other than 0 has a sign",
                    integer
                            ? nominal.head() + " H" + amount.text()
                            : nominal.head() + " ±" + amount.text() + " or " + nominal.head() + " +" + amount.text()
                                    + "/0");
        }
        return minus ? amount.negate() : amount;
    }

    private Amount deviationAmount(Dimension nominal, int at) {
        Amount amount = AmountNotation.read(in, nominal.isAngle());
        if (nominal.isAngle() && !amount.isAngle() && amount.isZero()) {
            return Amount.degrees(amount.value());
        }
        requireSameKind(nominal, amount, at);
        return amount;
    }

    private void requireSameKind(Dimension nominal, Amount amount, int at) {
        if (nominal.isAngle() && !amount.isAngle()) {
            throw in.fault(
                    in.position(),
                    "it is not said whether " + amount.text() + " is degrees or minutes",
                    amount.text() + "° or " + amount.text() + "'");
        }
        if (nominal.chamferAngle().isPresent() && amount.isAngle()) {
            throw in.fault(
                    at,
                    "with a tolerance on the angle, " + nominal.nominal().text()
                            + " may be the leg of a chamfer or a count of angles",
                    nominal.chamferAngle().get().text() + " ±" + amount.text());
        }
        if (!nominal.isAngle() && amount.isAngle()) {
            throw in.fault(
                    at,
                    "the tolerance is an angle and the size "
                            + nominal.nominal().text() + " is not",
                    nominal.nominal().text() + "° ±" + amount.text());
        }
    }

    private Requirement deviatedSize(Dimension nominal, Amount upper, Amount lower, int at) {
        Dimension whole = nominal;
        if (whole.chamferAngle().isPresent()) {
            throw in.fault(
                    at,
                    "it is not clear whether the tolerance is on the leg or on the angle",
                    nominal.head() + " ±" + upper.digits() + " " + nominal.tail() + " for the leg");
        }
        Optional<Amount> angle = new DimensionNotation(in)
                .chamferAngle(nominal.nominal(), nominal.prefix().symbol());
        whole = new Dimension(nominal.prefix(), nominal.nominal(), angle, in.unit());
        if (nominal.prefix().symbol() != DimensionSymbol.NONE
                && nominal.nominal().value().add(lower.value()).signum() < 0) {
            throw in.fault(
                    at,
                    "the lower limit "
                            + nominal.nominal().value().add(lower.value()).toPlainString() + " of a "
                            + nominal.prefix().symbol().sign() + " is negative",
                    "");
        }
        return DeviatedSize.of(whole, upper, lower);
    }

    private Requirement bare(Dimension dimension) {
        Dimension whole = withUnit(in, dimension);
        int at = skipped();
        Optional<BigDecimal> leg = Optional.empty();
        if (in.accept("(")) {
            if (!in.acceptWord("leg")) {
                throw in.fault(
                        at,
                        "what stands in brackets behind a size is not understood",
                        whole.isAngle() ? whole.text() + " (leg 30)" : whole.text());
            }
            if (!whole.isAngle()) {
                throw in.fault(at, "only an angle has a shorter leg", whole.text());
            }
            leg = Optional.of(in.number());
            in.acceptUnit();
            if (!in.accept(")")) {
                throw in.fault(
                        "the closing ) is missing",
                        whole.text() + " (leg " + leg.get().toPlainString() + ")");
            }
            if (leg.get().signum() == 0) {
                throw in.fault(at, "a leg of 0 makes no angle", whole.text() + " (leg 30)");
            }
            whole = withUnit(in, dimension);
        }
        if (whole.nominal().isNegative() || whole.nominal().isZero()) {
            throw in.fault(
                    0,
                    "a general tolerance needs a size above 0, not "
                            + whole.nominal().text(),
                    whole.text() + " ±0.05");
        }
        return new BareSize(whole, leg);
    }
}
