package io.github.firstoff.inspection;

import io.github.firstoff.tolerance.PartSizes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One piece and everything that was read on it. */
public final class PartRecord implements PartSizes {
    private final String serial;
    private final Map<String, List<Reading>> readings;

    /**
     * A piece with its readings.
     *
     * @param serial its serial number or name
     * @param readings in the order in which they were taken
     */
    public PartRecord(String serial, List<Reading> readings) {
        this.serial = serial;
        Map<String, List<Reading>> grouped = new LinkedHashMap<>();
        for (Reading reading : readings) {
            grouped.computeIfAbsent(reading.characteristic(), number -> new ArrayList<>())
                    .add(reading);
        }
        grouped.replaceAll((number, list) -> List.copyOf(list));
        this.readings = Collections.unmodifiableMap(grouped);
    }

    /** The serial number or name. */
    public String serial() {
        return serial;
    }

    /** The readings of one characteristic on this piece; empty if it was not measured. */
    public List<Reading> of(String characteristic) {
        return readings.getOrDefault(characteristic, List.of());
    }

    /** All readings, by characteristic. */
    public Map<String, List<Reading>> readings() {
        return readings;
    }

    /** The size that the first reading of the characteristic gives; empty if there is none. */
    @Override
    public Optional<Size> sizeOf(String characteristicNumber) {
        for (Reading reading : of(characteristicNumber)) {
            if (reading instanceof Reading.Measured measured) {
                return Optional.of(new Size(measured.value(), measured.unit()));
            }
        }
        return Optional.empty();
    }
}
