package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.GeneralTolerance;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.tolerance.RequirementFault;
import io.github.firstoff.tolerance.RequirementNotation;
import io.github.firstoff.tolerance.ToleranceZone;
import java.math.BigDecimal;
import java.util.Optional;

/** Reads requirements of lengths that stand by themselves, without a plan around them. */
final class LimitsReader {
    private final SourceText source;
    private final FaultCollector faults;
    private final Unit unit;

    LimitsReader(SourceText source, FaultCollector faults, Unit unit) {
        this.source = source;
        this.faults = faults;
        this.unit = unit;
    }

    /**
     * A requirement with its limits.
     *
     * @param printed as the file writes it
     * @param nominal its nominal, where it has one, in the unit asked for
     * @param limits its limits in the unit asked for
     */
    record Limited(String printed, Optional<BigDecimal> nominal, Limits limits) {}

    /** The requirement under a key; empty if there is none or it was refused. */
    Optional<Limited> read(Fields fields, String key, Optional<Drawing.Form> form, boolean both) {
        Optional<String> text = fields.text(key);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            Requirement requirement = RequirementNotation.parse(text.get());
            boolean length = requirement.nature() == Requirement.Nature.MEASURED
                    && requirement.unit(unit).kind() == Unit.Kind.LENGTH;
            // what nature bounds from below is a deviation of form or place, or a roughness
            if (!length || requirement.resolve(new Alone(unit, form)).stated().naturalLower()) {
                fields.refuse(
                        key,
                        FaultKind.REQUIREMENT,
                        "this is no size with limits",
                        Echo.quoted(text.get()),
                        "a size with a tolerance, such as \"52 P7\" or \"12.5 ±0.05\"");
                return Optional.empty();
            }
            ToleranceZone zone = requirement.resolve(new Alone(unit, form));
            Limits limits = zone.stated();
            if (both && (limits.lower().isEmpty() || limits.upper().isEmpty())) {
                fields.refuse(
                        key,
                        FaultKind.REQUIREMENT,
                        "the size has only one limit",
                        Echo.quoted(text.get()),
                        "a size with two limits, such as \"52 P7\" or \"12.5 ±0.05\"");
                return Optional.empty();
            }
            Unit own = limits.unit();
            if (own != unit && !(own == Unit.INCH || unit == Unit.MILLIMETRE)) {
                fields.refuse(
                        key,
                        FaultKind.WRONG_UNIT,
                        "its limits are in " + own.word() + " and the file is in " + unit.word(),
                        Echo.quoted(text.get()),
                        "\"unit\": \"mm\" for the file, or deviations written out");
                return Optional.empty();
            }
            return Optional.of(new Limited(
                    text.get(),
                    zone.nominal().map(value -> own.convert(value, unit)),
                    new Limits(
                            limits.lower().map(value -> own.convert(value, unit)),
                            limits.upper().map(value -> own.convert(value, unit)),
                            limits.naturalLower(),
                            unit)));
        } catch (RequirementFault fault) {
            refuse(fields, key, fault);
            return Optional.empty();
        }
    }

    private void refuse(Fields fields, String key, RequirementFault fault) {
        Where where = fields.where(key);
        String message = fault.getMessage() == null ? "" : fault.getMessage();
        Fault located = Fault.of(FaultKind.REQUIREMENT, where, message, Echo.quoted(fault.text()), fault.expected());
        Optional<JsonValue> value = fields.value(key);
        if (value.isPresent() && value.get() instanceof JsonValue.Text text) {
            Place literal = text.at();
            int stripped = text.text().length() - text.text().stripLeading().length();
            int column = Excerpts.columnWithin(
                    source.line(literal.line()),
                    literal,
                    stripped + fault.position().orElse(0));
            Where exact = new Where(where.file(), literal.line(), column, where.field());
            located = Fault.of(FaultKind.REQUIREMENT, exact, message, located.found(), located.expected())
                    .with(Excerpts.of(source, exact));
        }
        faults.refuse(located);
    }

    /** A drawing that says nothing but its unit. */
    private record Alone(Unit unit, Optional<Form> form) implements Drawing {
        @Override
        public Optional<GeneralTolerance> generalTolerance() {
            return Optional.empty();
        }

        @Override
        public Optional<SizeFeature> sizeFeature() {
            return Optional.empty();
        }
    }
}
