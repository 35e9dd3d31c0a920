package io.github.firstoff.conformance;

import io.github.firstoff.conformance.Doubt.Explanation;
import io.github.firstoff.conformance.Doubt.Kind;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Points at readings that look like slips of the pen: kept, judged, and doubted in words.
 *
 * <p>Only a reading far outside its limits is doubted (common practice; the bounds were chosen so that a bad part is not taken for a slip):
 *
 * <ul>
 *   <li>limits of a size, narrow against it (width T not above a fifth of the smaller limit): beyond a limit by more than 5 T;
 *   <li>limits about zero, as of a form or a deviation: beyond by more than 20 T;
 *   <li>a single limit, or two wide ones: more than five times the limit, less than a fifth of it, or of the other sign.
 * </ul>
 *
 * <p>Then what would explain it is looked for. A decimal point shifted by up to three places (by one at single and wide limits, which
 * more would always meet) or another unit must bring the value within the limits, those of a size widened by T on each side, since a
 * nonconforming part can be mis-keyed too; every other explanation must fit exactly. Two values of one piece are called swapped already
 * from 1 T on, if each fits the other's limits and not its own. Without an explanation a reading is doubted only beyond 20 T and a tenth
 * of the size, or ten times a single limit.
 *
 * <p>Exact decimals; the values are taken as read, not corrected to 20 °C.
 */
public final class Plausibility {
    private static final BigDecimal FIVE = new BigDecimal("5");
    private static final BigDecimal TEN = BigDecimal.TEN;
    private static final BigDecimal TWENTY = new BigDecimal("20");
    private static final int MOST_EXPLANATIONS = 2;
    private static final int FARTHEST_SHIFT = 3;

    /** Enough to recognise a value by; whole conversions are shorter. */
    private static final int SHOWN_PLACES = 6;

    private final ResolvedPlan plan;

    private Plausibility(ResolvedPlan plan) {
        this.plan = plan;
    }

    /** For readings against that plan. */
    public static Plausibility of(ResolvedPlan plan) {
        return new Plausibility(plan);
    }

    /** How the limits of a requirement lie, which decides what is far from them. */
    private enum Kin {
        SIZE,
        ABOUT_ZERO,
        WIDE_OR_SINGLE,
        NONE
    }

    /**
     * The doubt about a judged reading; empty for most.
     *
     * @param part the piece with all its readings
     * @param judgement of one of them
     * @throws IllegalArgumentException if the reading's characteristic is not in the plan
     */
    public Optional<Doubt> doubt(PartRecord part, Judgement judgement) {
        if (!(judgement.reading() instanceof Reading.Measured reading)
                || judgement.departure().isEmpty()) {
            return Optional.empty();
        }
        ResolvedCharacteristic own = plan.find(reading.characteristic())
                .orElseThrow(() ->
                        new IllegalArgumentException("the plan has no characteristic " + reading.characteristic()));
        Suspect suspect = new Suspect(
                own,
                part,
                reading,
                judgement.allowed().limits(),
                judgement.departure().get().abs());
        return suspect.doubt();
    }

    private static Kin kin(Limits limits) {
        if (limits.isOpen()) {
            return Kin.NONE;
        }
        Optional<BigDecimal> width = limits.width();
        if (width.isEmpty()) {
            BigDecimal single = limits.lower().or(limits::upper).orElseThrow();
            return single.signum() == 0 ? Kin.NONE : Kin.WIDE_OR_SINGLE;
        }
        BigDecimal lower = limits.lower().orElseThrow();
        BigDecimal upper = limits.upper().orElseThrow();
        if (lower.signum() <= 0 && upper.signum() >= 0) {
            return width.get().signum() > 0 ? Kin.ABOUT_ZERO : Kin.NONE;
        }
        boolean narrow = width.get().multiply(FIVE).compareTo(lower.abs().min(upper.abs())) <= 0;
        return narrow && width.get().signum() > 0 ? Kin.SIZE : Kin.WIDE_OR_SINGLE;
    }

    /** One reading outside its limits. */
    private final class Suspect {
        private final ResolvedCharacteristic own;
        private final PartRecord part;
        private final Reading.Measured reading;
        private final Limits limits;
        private final BigDecimal departure;
        private final Kin kin;

        Suspect(
                ResolvedCharacteristic own,
                PartRecord part,
                Reading.Measured reading,
                Limits limits,
                BigDecimal departure) {
            this.own = own;
            this.part = part;
            this.reading = reading;
            this.limits = limits;
            this.departure = departure;
            this.kin = kin(limits);
        }

        Optional<Doubt> doubt() {
            if (kin == Kin.NONE) {
                return Optional.empty();
            }
            Optional<Explanation> swapped = swapped();
            if (swapped.isPresent()) {
                return Optional.of(
                        new Doubt(List.of(swapped.get()), swapped.get().words()));
            }
            if (!isFar()) {
                return Optional.empty();
            }
            List<Explanation> found = new ArrayList<>();
            if (reading.offsets().isEmpty()) {
                // A single limit lets almost any unit fit, so there the commoner slip goes first.
                (kin == Kin.WIDE_OR_SINGLE ? decimalPoint().or(this::unit) : unit().or(this::decimalPoint))
                        .ifPresent(found::add);
                sign().ifPresent(found::add);
                digits().ifPresent(found::add);
            }
            characteristic().ifPresent(found::add);
            if (found.isEmpty()) {
                return isVeryFar()
                        ? Optional.of(new Doubt(
                                List.of(),
                                Remark.of(
                                        "slip.very-far",
                                        "{0} is very far outside its limits; check the reading",
                                        show(reading.value()))))
                        : Optional.empty();
            }
            List<Explanation> likeliest = found.subList(0, Math.min(found.size(), MOST_EXPLANATIONS));
            return Optional.of(new Doubt(
                    likeliest,
                    Remark.of(
                            "slip.far",
                            "{0} is far outside its limits; it {1}",
                            show(reading.value()),
                            either(likeliest))));
        }

        private static Remark either(List<Explanation> explanations) {
            Remark all = explanations.get(0).words();
            for (Explanation next : explanations.subList(1, explanations.size())) {
                all = Remark.of("slip.or", "{0}, or {1}", all, next.words());
            }
            return all;
        }

        private BigDecimal width() {
            return limits.width().orElseThrow();
        }

        /** The limit that the reading lies beyond. */
        private BigDecimal nearLimit() {
            Found found = Found.of(reading.value(), reading.unit());
            Optional<BigDecimal> beyond = limits.isAbove(found) ? limits.upper() : limits.lower();
            return beyond.or(limits::upper).orElseThrow();
        }

        private boolean isFar() {
            return switch (kin) {
                case SIZE -> departure.compareTo(width().multiply(FIVE)) > 0;
                case ABOUT_ZERO -> departure.compareTo(width().multiply(TWENTY)) > 0;
                case WIDE_OR_SINGLE -> isTimesOff(FIVE) || hasOtherSign();
                case NONE -> false;
            };
        }

        private boolean hasOtherSign() {
            return reading.value().signum() * nearLimit().signum() < 0;
        }

        private boolean isVeryFar() {
            return switch (kin) {
                case SIZE ->
                    departure.compareTo(width().multiply(TWENTY)) > 0
                            && departure.multiply(TEN).compareTo(nearLimit().abs()) > 0;
                case ABOUT_ZERO -> true;
                case WIDE_OR_SINGLE -> isTimesOff(TEN);
                case NONE -> false;
            };
        }

        /** More than so many times the limit in amount, or less than that part of it. */
        private boolean isTimesOff(BigDecimal times) {
            BigDecimal amount = reading.value().abs();
            BigDecimal limit = nearLimit().abs();
            return Unit.compare(amount, reading.unit(), limit.multiply(times), limits.unit()) > 0
                    || Unit.compare(amount.multiply(times), reading.unit(), limit, limits.unit()) < 0;
        }

        private boolean fits(BigDecimal value, Unit unit) {
            return limits.contains(value, unit);
        }

        /** Within the limits, those of a size widened by T on each side. */
        private boolean nearlyFits(BigDecimal value, Unit unit) {
            Limits wanted =
                    kin == Kin.SIZE ? limits.narrowedBy(width().negate()).orElseThrow() : limits;
            return wanted.contains(value, unit);
        }

        private Optional<Explanation> decimalPoint() {
            int farthest = kin == Kin.WIDE_OR_SINGLE ? 1 : FARTHEST_SHIFT;
            for (int places = 1; places <= farthest; places++) {
                for (int direction : new int[] {1, -1}) {
                    BigDecimal meant = reading.value().scaleByPowerOfTen(direction * places);
                    if (nearlyFits(meant, reading.unit())) {
                        return Optional.of(insteadOf(Kind.DECIMAL_POINT, meant));
                    }
                }
            }
            return Optional.empty();
        }

        private Optional<Explanation> unit() {
            Optional<Unit> other = otherUnit();
            if (other.isEmpty() || !nearlyFits(reading.value(), other.get())) {
                return Optional.empty();
            }
            BigDecimal meant = other.get()
                    .convert(reading.value(), reading.unit(), MathContext.DECIMAL128)
                    .setScale(SHOWN_PLACES, RoundingMode.HALF_EVEN)
                    .stripTrailingZeros();
            return Optional.of(new Explanation(
                    Kind.UNIT,
                    Remark.of(
                            "slip.unit",
                            "looks like {0} {1}, which is {2}",
                            reading.value().toPlainString(),
                            other.get().symbol(),
                            show(meant)),
                    Optional.of(meant),
                    Optional.empty()));
        }

        /** The unit that is most easily taken for the reading's. */
        private Optional<Unit> otherUnit() {
            return switch (reading.unit()) {
                case MILLIMETRE -> Optional.of(kin == Kin.ABOUT_ZERO ? Unit.MICROMETRE : Unit.INCH);
                case INCH -> Optional.of(Unit.MILLIMETRE);
                case MICROMETRE -> Optional.of(Unit.MICROINCH);
                case MICROINCH -> Optional.of(Unit.MICROMETRE);
                case DEGREE, ARC_MINUTE, ARC_SECOND, NONE -> Optional.empty();
            };
        }

        private Optional<Explanation> sign() {
            BigDecimal meant = reading.value().negate();
            return hasOtherSign() && fits(meant, reading.unit())
                    ? Optional.of(insteadOf(Kind.SIGN, meant))
                    : Optional.empty();
        }

        private Optional<Explanation> digits() {
            if (kin != Kin.SIZE) {
                return Optional.empty();
            }
            char[] digits = reading.value().unscaledValue().abs().toString().toCharArray();
            for (int i = 1; i < digits.length; i++) {
                char[] exchanged = digits.clone();
                exchanged[i] = digits[i - 1];
                exchanged[i - 1] = digits[i];
                BigDecimal amount = new BigDecimal(new String(exchanged))
                        .movePointLeft(reading.value().scale());
                BigDecimal meant = reading.value().signum() < 0 ? amount.negate() : amount;
                if (fits(meant, reading.unit())) {
                    return Optional.of(insteadOf(
                            Kind.DIGITS, meant.setScale(reading.value().scale(), RoundingMode.UNNECESSARY)));
                }
            }
            return Optional.empty();
        }

        private Explanation insteadOf(Kind kind, BigDecimal meant) {
            return new Explanation(
                    kind,
                    Remark.of(
                            "slip.instead",
                            "looks like {0} instead of {1}{2| (two digits exchanged)|}",
                            meant.toPlainString(),
                            reading.value().toPlainString(),
                            kind == Kind.DIGITS),
                    Optional.of(meant),
                    Optional.empty());
        }

        private Optional<Explanation> characteristic() {
            for (ResolvedCharacteristic other : others()) {
                if (other.limits().contains(reading.value(), reading.unit())) {
                    return Optional.of(new Explanation(
                            Kind.CHARACTERISTIC,
                            Remark.of(
                                    "slip.characteristic",
                                    "fits characteristic {0} ({1})",
                                    other.number(),
                                    other.characteristic().printed()),
                            Optional.empty(),
                            Optional.of(other.number())));
                }
            }
            return Optional.empty();
        }

        private Optional<Explanation> swapped() {
            if (kin != Kin.SIZE || departure.compareTo(width()) < 0) {
                return Optional.empty();
            }
            for (ResolvedCharacteristic other : others()) {
                if (!other.limits().contains(reading.value(), reading.unit())) {
                    continue;
                }
                for (Reading theirs : part.of(other.number())) {
                    if (theirs instanceof Reading.Measured value
                            && value.unit().isComparableWith(limits.unit())
                            && fits(value.value(), value.unit())
                            && !other.limits().contains(value.value(), value.unit())) {
                        return Optional.of(new Explanation(
                                Kind.SWAPPED,
                                Remark.of(
                                        "slip.swapped",
                                        "{0} and the {1} of characteristic {2} on the same piece look swapped: each fits the limits of"
                                                + " the other",
                                        show(reading.value()),
                                        show(value.value(), value.unit()),
                                        other.number()),
                                Optional.of(value.value()),
                                Optional.of(other.number())));
                    }
                }
            }
            return Optional.empty();
        }

        /** The other characteristics whose limits are narrow enough to recognise a value by. */
        private List<ResolvedCharacteristic> others() {
            return plan.characteristics().stream()
                    .filter(other -> !other.number().equals(own.number()))
                    .filter(other -> other.isJudged() && !other.isAttribute())
                    .filter(other -> kin(other.limits()) == Kin.SIZE)
                    .filter(other -> other.limits().unit().isComparableWith(reading.unit()))
                    .toList();
        }

        private String show(BigDecimal value) {
            return show(value, reading.unit());
        }

        private static String show(BigDecimal value, Unit unit) {
            return unit == Unit.DEGREE
                    ? value.toPlainString() + unit.symbol()
                    : value.toPlainString() + " " + unit.symbol();
        }
    }
}
