package io.github.firstoff.inspection;

import io.github.firstoff.tolerance.PartSizes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One piece and everything that was read on it.
 *
 * <p>There may be a great many pieces, so the readings stand in one array, those of a characteristic together; only a piece with many
 * readings has an index.
 */
public final class PartRecord implements PartSizes {
    private static final int WITHOUT_INDEX = 64;

    private final String serial;
    private final Reading[] readings;
    private final @Nullable Map<String, Integer> index;

    /**
     * A piece with its readings.
     *
     * @param serial its serial number or name
     * @param readings in the order in which they were taken
     */
    public PartRecord(String serial, List<Reading> readings) {
        this.serial = serial;
        this.readings = together(readings);
        this.index = readings.size() > WITHOUT_INDEX ? index(this.readings) : null;
    }

    /** The readings of each characteristic together, characteristics in the order of their first readings. */
    private static Reading[] together(List<Reading> readings) {
        Reading[] all = readings.toArray(new Reading[0]);
        if (readings.size() > WITHOUT_INDEX) {
            Map<String, List<Reading>> grouped = new LinkedHashMap<>();
            for (Reading reading : all) {
                grouped.computeIfAbsent(reading.characteristic(), number -> new ArrayList<>())
                        .add(reading);
            }
            int at = 0;
            for (List<Reading> group : grouped.values()) {
                for (Reading reading : group) {
                    all[at++] = reading;
                }
            }
            return all;
        }
        for (int i = 1; i < all.length; i++) {
            int home = lastOf(all[i].characteristic(), all, i) + 1;
            if (home > 0 && home < i) {
                Reading moved = all[i];
                System.arraycopy(all, home, all, home + 1, i - home);
                all[home] = moved;
            }
        }
        return all;
    }

    private static int lastOf(String characteristic, Reading[] all, int end) {
        for (int i = end - 1; i >= 0; i--) {
            if (all[i].characteristic().equals(characteristic)) {
                return i;
            }
        }
        return -1;
    }

    private static Map<String, Integer> index(Reading[] all) {
        Map<String, Integer> first = new HashMap<>();
        for (int i = 0; i < all.length; i++) {
            first.putIfAbsent(all[i].characteristic(), i);
        }
        return first;
    }

    private int firstOf(String characteristic) {
        if (index != null) {
            return index.getOrDefault(characteristic, -1);
        }
        for (int i = 0; i < readings.length; i++) {
            if (readings[i].characteristic().equals(characteristic)) {
                return i;
            }
        }
        return -1;
    }

    private int endOf(int first) {
        int end = first + 1;
        while (end < readings.length && readings[end].characteristic().equals(readings[first].characteristic())) {
            end++;
        }
        return end;
    }

    /** The serial number or name. */
    public String serial() {
        return serial;
    }

    /** How many readings there are on this piece. */
    public int count() {
        return readings.length;
    }

    /** The readings of one characteristic on this piece; empty if it was not measured. */
    public List<Reading> of(String characteristic) {
        int first = firstOf(characteristic);
        if (first < 0) {
            return List.of();
        }
        int end = endOf(first);
        return end == first + 1
                ? List.of(readings[first])
                : Collections.unmodifiableList(Arrays.asList(readings).subList(first, end));
    }

    /** All readings, by characteristic. */
    public Map<String, List<Reading>> readings() {
        Map<String, List<Reading>> grouped = new LinkedHashMap<>();
        for (int first = 0; first < readings.length; first = endOf(first)) {
            String characteristic = readings[first].characteristic();
            grouped.put(characteristic, of(characteristic));
        }
        return Collections.unmodifiableMap(grouped);
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
