package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.RowCheck.Head;
import io.github.firstoff.plan.Coordinates;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.CountedRequirement;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Holds what was read of one characteristic against the plan and makes a reading of it. */
final class ValueCheck {
    /** What stands instead of a value for a position from its coordinates. */
    static final List<ReadingColumn> AXES = List.of(ReadingColumn.X, ReadingColumn.Y, ReadingColumn.Z);

    private static final int SHARED = 1 << 13;

    private final ResolvedPlan plan;
    private final ReadingSink sink;
    private final @Nullable BigDecimal[] lastValues = new BigDecimal[SHARED];

    ValueCheck(ResolvedPlan plan, ReadingSink sink) {
        this.plan = plan;
        this.sink = sink;
    }

    /** Hands on the reading of a row that has one: its value, or the place along the axes. */
    void ofRow(Head head, ResolvedCharacteristic characteristic, Row row) {
        if (statesPlace(row)) {
            place(head, characteristic, row);
        } else {
            value(head, characteristic, row.cell(ReadingColumn.VALUE));
        }
    }

    /** Refuses a row with neither a value nor a place, and one with both. */
    boolean hasOneReading(Row row) {
        boolean value = !row.text(ReadingColumn.VALUE).isEmpty()
                || row.cell(ReadingColumn.VALUE).form() == Cell.Form.OTHER;
        boolean place = statesPlace(row);
        if (value && place) {
            refuse(
                    FaultKind.CONTRADICTION,
                    row.cell(ReadingColumn.VALUE),
                    "there is a value and a place along the axes",
                    "a value, or x and y");
        } else if (!value && !place) {
            sink.refuse(Fault.of(
                    FaultKind.BLANK,
                    row.where(ReadingColumn.VALUE),
                    "",
                    "nothing",
                    "a value, or no " + row.noun() + " for what was not measured"));
        }
        return value != place;
    }

    private static boolean statesPlace(Row row) {
        return AXES.stream().anyMatch(axis -> !row.text(axis).isEmpty());
    }

    private void refuse(FaultKind kind, Cell cell, String message, String expected) {
        sink.refuse(Fault.of(kind, cell.where(), message, Echo.quoted(cell.text()), expected));
    }

    private static String named(ResolvedCharacteristic characteristic) {
        return "characteristic " + Echo.plain(characteristic.number());
    }

    private static String printed(ResolvedCharacteristic characteristic) {
        return named(characteristic) + " ("
                + Echo.plain(characteristic.characteristic().printed()) + ")";
    }

    /** A place along the axes, as a coordinate where the plan says where the feature should be, and otherwise as a deviation. */
    private void place(Head head, ResolvedCharacteristic characteristic, Row row) {
        int axes = InspectionPlan.axesOf(characteristic.characteristic().requirement());
        if (axes == 0) {
            Cell first = AXES.stream()
                    .map(row::cell)
                    .filter(cell -> !cell.text().isEmpty())
                    .findFirst()
                    .orElseThrow();
            refuse(
                    FaultKind.WRONG_READING,
                    first,
                    printed(characteristic) + " is no position in a zone of diameter",
                    characteristic.isAttribute() ? PassOrFail.EXPECTED : "a value");
            return;
        }
        Optional<Unit> unit = lengthUnit(head, characteristic, row.cell(ReadingColumn.UNIT));
        BigDecimal[] read = new BigDecimal[axes];
        boolean sound = unit.isPresent();
        for (int i = 0; i < AXES.size(); i++) {
            Cell cell = row.cell(AXES.get(i));
            boolean wanted = i < axes;
            if (wanted && cell.text().isEmpty()) {
                sink.refuse(Fault.of(
                        FaultKind.BLANK,
                        cell.where(),
                        AXES.get(i).word() + " is missing beside the others",
                        "nothing",
                        axes == 2 ? "x and y together" : "x, y and z together"));
                sound = false;
            } else if (!wanted && !cell.text().isEmpty()) {
                refuse(
                        FaultKind.WRONG_READING,
                        cell,
                        "in the Ø zone of " + printed(characteristic)
                                + " only the two axes square to the feature count",
                        "x and y alone");
                sound = false;
            } else if (wanted) {
                Optional<BigDecimal> number = number(cell);
                sound &= number.isPresent();
                read[i] = number.orElse(BigDecimal.ZERO);
            }
        }
        if (sound) {
            sink.reading(
                    head.part(), measured(head, characteristic, unit.orElseThrow(), read), row.where(ReadingColumn.X));
        }
    }

    private Optional<Unit> lengthUnit(Head head, ResolvedCharacteristic characteristic, Cell stated) {
        Unit own = readingUnit(characteristic);
        Unit unit = head.unit().orElse(own);
        if (unit.isComparableWith(own)) {
            return Optional.of(unit);
        }
        refuse(
                FaultKind.WRONG_UNIT,
                stated,
                named(characteristic) + " is measured in " + own.word(),
                "a unit of the same kind");
        return Optional.empty();
    }

    private Reading.Measured measured(Head head, ResolvedCharacteristic characteristic, Unit unit, BigDecimal[] read) {
        Optional<Coordinates> exact = characteristic.characteristic().options().coordinates();
        Unit planUnit = plan.plan().unit();
        // Every length is a finite decimal of a millimetre; not every one of an inch.
        Unit common = exact.isPresent() && unit != planUnit ? Unit.MILLIMETRE : unit;
        BigDecimal[] offsets = new BigDecimal[read.length];
        int places = 0;
        for (int i = 0; i < read.length; i++) {
            offsets[i] = unit.convert(read[i], common);
            if (exact.isPresent()) {
                offsets[i] = offsets[i].subtract(planUnit.convert(along(exact.get(), i), common));
            }
            places = Math.max(places, offsets[i].scale());
        }
        Reading.Offsets found = new Reading.Offsets(
                offsets[0], offsets[1], offsets.length == 3 ? Optional.of(offsets[2]) : Optional.empty());
        return new Reading.Measured(
                characteristic.number(),
                found.position().rounded(places + 1),
                common,
                Optional.of(found),
                head.context());
    }

    private static BigDecimal along(Coordinates place, int axis) {
        return switch (axis) {
            case 0 -> place.x();
            case 1 -> place.y();
            default -> place.z().orElseThrow();
        };
    }

    private Optional<BigDecimal> number(Cell cell) {
        try {
            return Optional.of(cell.number());
        } catch (NumberRefused refused) {
            refuse(refused.kind(), cell, refused.message(), refused.expected());
            return Optional.empty();
        }
    }

    /**
     * Hands on a value of a row that has many. Its unit then speaks of the drawing's lengths; whether a roughness or an angle beside
     * them is meant too cannot be told, so that is refused unless the row only repeats the plan's own unit.
     */
    void wideValue(Head head, ResolvedCharacteristic characteristic, Cell cell) {
        Head bare = new Head(head.part(), Optional.empty(), head.context());
        Unit planUnit = plan.plan().unit();
        if (head.unit().isEmpty() || head.unit().get() == planUnit || characteristic.isAttribute()) {
            value(bare, characteristic, cell);
        } else if (readingUnit(characteristic) == planUnit) {
            value(head, characteristic, cell);
        } else {
            sink.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    cell.where(),
                    "whether the unit " + head.unit().get().word() + " of the row holds for characteristic "
                            + Echo.plain(characteristic.number()) + " too, which the plan has in "
                            + readingUnit(characteristic).word() + ", is not known",
                    "",
                    "a reading of its own with its unit"));
        }
    }

    /** The unit of a reading that states none. */
    private Unit readingUnit(ResolvedCharacteristic characteristic) {
        return characteristic
                .characteristic()
                .requirement()
                .readingUnit(plan.plan().unit());
    }

    /** Hands on the reading of one characteristic, if its value can be read. */
    void value(Head head, ResolvedCharacteristic characteristic, Cell cell) {
        Optional<Reading> reading = characteristic.isAttribute()
                ? attribute(head, characteristic, cell)
                : measured(head, characteristic, cell);
        reading.ifPresent(sound -> sink.reading(head.part(), sound, cell.where()));
    }

    private Optional<Reading> attribute(Head head, ResolvedCharacteristic characteristic, Cell cell) {
        if (head.unit().filter(unit -> unit != Unit.NONE).isPresent()) {
            sink.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    cell.where(),
                    named(characteristic) + " is judged by pass or fail and has no unit",
                    "the unit " + head.unit().get().word(),
                    "no unit"));
            return Optional.empty();
        }
        Optional<Reading.Context> context = atSetting(head.context(), characteristic, cell);
        Optional<Boolean> pass = cell.form() == Cell.Form.TEXT ? PassOrFail.parse(cell.text()) : Optional.empty();
        if (pass.isEmpty()) {
            String what = named(characteristic) + " is judged by pass or fail";
            refuse(
                    FaultKind.WRONG_READING,
                    cell,
                    PassOrFail.hangsOnTheQuestion(cell.text()) ? what + "; what this answers is not known" : what,
                    PassOrFail.EXPECTED);
            return Optional.empty();
        }
        boolean ofAnEnd = context.flatMap(Reading.Context::setting)
                .filter(PassOrFail::namesAnEnd)
                .isPresent();
        if (ofAnEnd && PassOrFail.namesAnEnd(cell.text())) {
            refuse(
                    FaultKind.WRONG_READING,
                    cell,
                    "whether this names the end of the gauge or what came of it is not known",
                    "pass where that end did as it should, otherwise fail");
            return Optional.empty();
        }
        return context.flatMap(
                known -> pass.map(passed -> new Reading.Observed(characteristic.number(), passed, known)));
    }

    /** The context with the setting as the plan names it; refused where the plan lists settings and the reading names none of them. */
    private Optional<Reading.Context> atSetting(
            Reading.Context context, ResolvedCharacteristic characteristic, Cell cell) {
        List<String> settings = characteristic.characteristic().options().settings();
        if (settings.isEmpty()) {
            return Optional.of(context);
        }
        Optional<String> stated = context.setting();
        Optional<String> meant = stated.flatMap(
                text -> settings.stream().filter(text::equalsIgnoreCase).findFirst());
        if (meant.isEmpty()) {
            sink.refuse(Fault.of(
                    FaultKind.UNKNOWN_SETTING,
                    cell.where(),
                    named(characteristic) + " has a result for each setting",
                    stated.map(text -> "the setting " + Echo.quoted(text)).orElse("no setting"),
                    Words.oneOf(settings)));
            return Optional.empty();
        }
        return Optional.of(meant.equals(stated) ? context : context.at(meant.get()));
    }

    private static boolean isWord(String text) {
        return !text.isEmpty() && Character.isLetter(text.charAt(0));
    }

    private Optional<Reading> measured(Head head, ResolvedCharacteristic characteristic, Cell cell) {
        Unit own = readingUnit(characteristic);
        Unit unit = head.unit().orElse(own);
        if (!unit.isComparableWith(own)) {
            sink.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    cell.where(),
                    "characteristic " + Echo.plain(characteristic.number()) + " is measured in " + own.word(),
                    "the unit " + unit.word(),
                    "a unit of the same kind"));
            return Optional.empty();
        }
        try {
            boolean saysPassOrFail =
                    isWord(cell.text()) && PassOrFail.parse(cell.text()).isPresent();
            if (cell.form() == Cell.Form.OTHER || saysPassOrFail) {
                sink.refuse(Fault.of(
                        FaultKind.WRONG_READING,
                        cell.where(),
                        printed(characteristic) + " needs a value",
                        Echo.quoted(cell.text()),
                        ExactNumber.EXAMPLE));
                return Optional.empty();
            }
            boolean angle = own.kind() == Unit.Kind.ANGLE && cell.form() == Cell.Form.TEXT;
            Optional<ExactAngle> sexagesimal = angle ? ExactAngle.parse(cell.text()) : Optional.empty();
            if (sexagesimal.isPresent()) {
                return sexagesimal(head, characteristic, cell, sexagesimal.get());
            }
            BigDecimal value = shared(cell.number());
            Limits limits = characteristic.limits();
            if (limits.naturalLower() && limits.isBelow(Found.of(value, unit))) {
                sink.refuse(Fault.of(
                        FaultKind.NUMBER_OUT_OF_RANGE,
                        cell.where(),
                        printed(characteristic) + " cannot be less than "
                                + limits.lower().map(BigDecimal::toPlainString).orElse("0"),
                        Echo.quoted(cell.text()),
                        "0 or more"));
                return Optional.empty();
            }
            if (characteristic.characteristic().requirement() instanceof CountedRequirement
                    && value.stripTrailingZeros().scale() > 0) {
                refuse(
                        FaultKind.NUMBER_OUT_OF_RANGE,
                        cell,
                        printed(characteristic) + " is counted in whole numbers",
                        "a whole number from 0");
                return Optional.empty();
            }
            return Optional.of(new Reading.Measured(characteristic.number(), value, unit, head.context()));
        } catch (NumberRefused refused) {
            sink.refuse(Fault.of(
                    refused.kind(), cell.where(), refused.message(), Echo.quoted(cell.text()), refused.expected()));
            return Optional.empty();
        }
    }

    /** Values come from a scale with few steps within the tolerance: one object serves all readings of the same value. */
    private BigDecimal shared(BigDecimal value) {
        int slot = value.hashCode() & (SHARED - 1);
        BigDecimal known = lastValues[slot];
        if (known != null && known.scale() == value.scale() && known.compareTo(value) == 0) {
            return known;
        }
        lastValues[slot] = value;
        return value;
    }

    private Optional<Reading> sexagesimal(
            Head head, ResolvedCharacteristic characteristic, Cell cell, ExactAngle angle) {
        if (head.unit().filter(unit -> unit != Unit.DEGREE).isPresent()) {
            refuse(
                    FaultKind.WRONG_UNIT,
                    cell,
                    "an angle in degrees, minutes and seconds carries its units, and the row states "
                            + head.unit().get().word(),
                    "the unit degree, or none");
            return Optional.empty();
        }
        return Optional.of(new Reading.Measured(characteristic.number(), angle.value(), angle.unit(), head.context()));
    }
}
