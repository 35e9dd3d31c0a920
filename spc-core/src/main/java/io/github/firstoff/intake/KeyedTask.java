package io.github.firstoff.intake;

import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.util.List;
import java.util.Optional;

/**
 * One thing to measure.
 *
 * @param part the piece
 * @param characteristic what of it
 * @param setting at which setting, where the plan lists some
 * @param reading which reading of it on this piece, counted from 1; only where the plan says that it is measured repeatedly more than
 *     1
 */
public record KeyedTask(String part, ResolvedCharacteristic characteristic, Optional<String> setting, int reading) {

    KeyedSubject subject() {
        return new KeyedSubject(part, characteristic.number(), setting.orElse(""));
    }

    /** Whether the plan says that it may be measured several times on one piece. */
    public boolean isRepeated() {
        return characteristic.characteristic().options().repeated();
    }

    /** The axes along which the plan wants coordinates: none, x and y, or x, y and z. Without any, a value is wanted. */
    public List<String> axes() {
        boolean wanted = characteristic.characteristic().options().coordinates().isPresent();
        return wanted ? possibleAxes() : List.of();
    }

    /** The axes along which a place may be keyed instead of a value. */
    public List<String> possibleAxes() {
        int axes = InspectionPlan.axesOf(characteristic.characteristic().requirement());
        return ValueCheck.AXES.stream().limit(axes).map(ReadingColumn::word).toList();
    }
}
