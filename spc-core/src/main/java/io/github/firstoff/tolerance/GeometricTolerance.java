package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A geometric tolerance (ISO 1101:2017; ASME Y14.5-2018): {@code flatness 0.02}, {@code position Ø0.1 (M) A B C}.
 *
 * <p>Its limits are zero, by nature, and the tolerance. The reading is the deviation in the same terms: for a position in a
 * {@code Ø} zone the diameter 2·√(x² + y²), not the offset (see {@link PositionDeviation}).
 *
 * @param characteristic what is toleranced
 * @param shape of the zone
 * @param tolerance the width or diameter of the zone, as written
 * @param material the material requirement on the tolerance, if any: it earns a bonus from the feature's size
 * @param unequal the unequal disposition of a profile zone, if any
 * @param notes further modifiers as a keyboard writes them, such as {@code (F)} or {@code CZ}, and a restricted extent such as {@code /100}
 *     (the tolerance then holds over every such length, and the reading is the worst of them); they do not change the limits
 * @param datums in order of precedence
 * @param unit a unit written on the requirement itself; otherwise the drawing's
 */
public record GeometricTolerance(
        GeometricCharacteristic characteristic,
        ZoneShape shape,
        BigDecimal tolerance,
        Optional<MaterialModifier> material,
        Optional<UnequalDisposition> unequal,
        List<String> notes,
        List<DatumReference> datums,
        Optional<Unit> unit)
        implements Requirement {

    /** The shape of the tolerance zone as its symbol tells it. */
    public enum ZoneShape {
        /** No symbol: the zone has a width. */
        WIDTH(""),
        /** {@code Ø}: a cylinder or a circle. */
        DIAMETER("Ø"),
        /** {@code SØ}: a sphere. */
        SPHERE("SØ");

        private final String sign;

        ZoneShape(String sign) {
            this.sign = sign;
        }

        /** What stands before the tolerance. */
        public String sign() {
            return sign;
        }
    }

    /** Copies the lists. */
    public GeometricTolerance {
        notes = List.copyOf(notes);
        datums = List.copyOf(datums);
    }

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        List<String> cells = new ArrayList<>();
        StringBuilder first = new StringBuilder(shape.sign() + tolerance.toPlainString());
        unit.ifPresent(written -> first.append(' ').append(written.symbol()));
        unequal.ifPresent(zone -> first.append(' ').append(zone.set()));
        notes.forEach(note -> first.append(gap(note)).append(GeometricNotation.circled(note)));
        material.ifPresent(modifier -> first.append(' ').append(modifier.symbol()));
        cells.add(first.toString());
        datums.forEach(datum -> cells.add(datum.set()));
        return Notation.of(new Notation.Framed(characteristic, cells));
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(characteristic.word())
                .append(' ')
                .append(shape.sign())
                .append(tolerance.toPlainString());
        unit.ifPresent(written -> text.append(' ').append(written.symbol()));
        unequal.ifPresent(zone -> text.append(' ').append(zone.text()));
        notes.forEach(note -> text.append(gap(note)).append(note));
        material.ifPresent(modifier -> text.append(' ').append(modifier.text()));
        datums.forEach(datum -> text.append(' ').append(datum.text()));
        return text.toString();
    }

    /** A restriction such as {@code /100} stands directly behind the tolerance, all else behind a space. */
    private static String gap(String note) {
        return note.startsWith("/") ? "" : " ";
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return unit.orElse(drawingUnit);
    }

    /**
     * Zero to the tolerance; with a material requirement, a {@link GeometricZone} that adds each part's bonus.
     *
     * @throws RequirementFault if the tolerance has a material requirement and the plan names no feature of size, or one that
     *     lacks the limit from which the departure counts
     */
    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.require(this, drawing);
        Limits stated = Limits.fromZeroTo(tolerance, unit(drawing.unit()));
        if (material.isEmpty()) {
            return ToleranceZone.fixed(stated, Optional.empty());
        }
        MaterialModifier modifier = material.get();
        Drawing.SizeFeature feature = drawing.sizeFeature()
                .orElseThrow(() -> new RequirementFault(
                        text(),
                        text().indexOf(modifier.text()),
                        "the " + modifier.words() + " requirement " + modifier.text()
                                + " needs the feature of size whose size gives the bonus, and the plan names none",
                        "\"sizeFeature\": the number of the characteristic that is the size of this feature"));
        if (GeometricZone.materialLimit(modifier, feature).isEmpty()) {
            throw new RequirementFault(
                    text(),
                    text().indexOf(modifier.text()),
                    "the feature of size " + feature.number() + " has no limit at " + modifier.words()
                            + ", so nothing can depart from it",
                    "a size feature with two limits");
        }
        return new GeometricZone(stated, modifier, feature);
    }

    /**
     * Along how many axes deviations make a reading of this requirement: two for a position in a {@code Ø} zone, three in a {@code SØ}
     * zone, none otherwise. A position whose zone has a width lies across one direction that the frame does not name.
     */
    public int axesOfPosition() {
        if (characteristic != GeometricCharacteristic.POSITION) {
            return 0;
        }
        return switch (shape) {
            case WIDTH -> 0;
            case DIAMETER -> 2;
            case SPHERE -> 3;
        };
    }

    /** The datum letters with a hyphen between cells, for short references such as {@code A-B, C}. */
    public String datumSystem() {
        return datums.stream().map(DatumReference::letters).collect(Collectors.joining(", "));
    }
}
