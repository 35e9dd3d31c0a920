package io.github.firstoff.intake;

import io.github.firstoff.intake.Mapping.Item;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Holds nominal and tolerance of an export against the plan. Where they differ, either the machine measured to another drawing or the plan
 * is wrong, and no verdict may rest on the value until a person has said which.
 */
final class MappedLimits {
    private final RowCheck check;

    MappedLimits(RowCheck check) {
        this.check = check;
    }

    /** Refuses a row whose nominal or limits are not the plan's; true if all that it states is. */
    boolean agree(MappedRow row, ResolvedCharacteristic characteristic) {
        if (characteristic.isAttribute()) {
            return true;
        }
        String stated = row.text(ReadingColumn.UNIT);
        Unit unit = (stated.isEmpty() ? Optional.<Unit>empty() : Unit.parse(stated))
                .orElseGet(() -> characteristic
                        .characteristic()
                        .requirement()
                        .readingUnit(check.plan().plan().unit()));
        Limits limits = characteristic.limits();
        if (!unit.isComparableWith(limits.unit())) {
            return true;
        }
        Numbers numbers = new Numbers(row);
        Optional<BigDecimal> nominal = numbers.of(Item.NOMINAL);
        Optional<BigDecimal> either = numbers.of(Item.TOLERANCE);
        Optional<BigDecimal> upper = numbers.of(Item.UPPER_TOLERANCE).or(() -> either);
        Optional<BigDecimal> lower = numbers.of(Item.LOWER_TOLERANCE).or(() -> either.map(BigDecimal::negate));
        Optional<BigDecimal> upperLimit = numbers.of(Item.UPPER_LIMIT);
        Optional<BigDecimal> lowerLimit = numbers.of(Item.LOWER_LIMIT);
        boolean agree = numbers.sound;
        Optional<BigDecimal> planned = characteristic.zone().nominal();
        if (planned.isPresent()) {
            agree &= same(row, Item.NOMINAL, "nominal", nominal, planned, unit, characteristic);
        }
        if (check.leavesOthersAlone()) {
            // Whoever asks for one size of a part knows its nominal, and no limits.
            return agree;
        }
        Item upperItem = numbers.states(Item.UPPER_TOLERANCE) ? Item.UPPER_TOLERANCE : Item.TOLERANCE;
        Item lowerItem = numbers.states(Item.LOWER_TOLERANCE) ? Item.LOWER_TOLERANCE : Item.TOLERANCE;
        agree &= same(row, upperItem, "upper limit", sum(nominal, upper), limits.upper(), unit, characteristic);
        agree &= same(row, lowerItem, "lower limit", sum(nominal, lower), limits.lower(), unit, characteristic);
        agree &= same(row, Item.UPPER_LIMIT, "upper limit", upperLimit, limits.upper(), unit, characteristic);
        agree &= same(row, Item.LOWER_LIMIT, "lower limit", lowerLimit, limits.lower(), unit, characteristic);
        return agree;
    }

    private static Optional<BigDecimal> sum(Optional<BigDecimal> nominal, Optional<BigDecimal> deviation) {
        return nominal.flatMap(size -> deviation.map(size::add));
    }

    private boolean same(
            MappedRow row,
            Item item,
            String what,
            Optional<BigDecimal> stated,
            Optional<BigDecimal> planned,
            Unit unit,
            ResolvedCharacteristic characteristic) {
        Unit planUnit = characteristic.limits().unit();
        boolean same = stated.isEmpty()
                || (planned.isPresent() && Unit.compare(stated.get(), unit, planned.get(), planUnit) == 0);
        if (!same) {
            check.sink()
                    .refuse(Fault.of(
                            FaultKind.CONTRADICTION,
                            row.where(item),
                            "the " + what + " of characteristic " + Echo.plain(characteristic.number())
                                    + " is not that of the plan ("
                                    + Echo.plain(characteristic.characteristic().printed()) + ")",
                            with(stated.get(), unit),
                            planned.map(each -> with(each, planUnit)).orElse("none, as in the plan")));
        }
        return same;
    }

    private static String with(BigDecimal value, Unit unit) {
        return value.toPlainString() + (unit.symbol().isEmpty() ? "" : " " + unit.symbol());
    }

    /** The numbers of a row; one that cannot be read is refused once. */
    private final class Numbers {
        private final MappedRow row;
        private boolean sound = true;

        Numbers(MappedRow row) {
            this.row = row;
        }

        boolean states(Item item) {
            return !row.text(item).isEmpty();
        }

        Optional<BigDecimal> of(Item item) {
            if (!states(item)) {
                return Optional.empty();
            }
            try {
                return Optional.of(row.cell(item).number());
            } catch (NumberRefused refused) {
                sound = false;
                check.sink()
                        .refuse(Fault.of(
                                refused.kind(),
                                row.where(item),
                                refused.message(),
                                Echo.quoted(row.text(item)),
                                refused.expected()));
                return Optional.empty();
            }
        }
    }
}
