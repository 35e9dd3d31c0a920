package io.github.firstoff.intake;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Keeps every reading in memory, finds second readings of the same thing, and puts everything in production order.
 *
 * <p>A million readings are kept: per reading a reference and the number of its piece, and for the search for second readings a packed key
 * of piece, characteristic and setting with the number of the first reading.
 */
final class Gathering implements Rows.Admission, Consumer<ReadingBlock> {
    private static final int FIRST_SIZE = 1024;

    private final ResolvedPlan plan;
    private final Set<String> repeated;
    private final Map<String, Integer> parts = new HashMap<>();
    private final List<String> serials = new ArrayList<>();
    private final Map<String, Integer> characteristics = new HashMap<>();
    private final Map<Optional<String>, Integer> settings = new HashMap<>();

    private Reading[] readings = new Reading[FIRST_SIZE];
    private int[] partOf = new int[FIRST_SIZE];
    private int count;
    /** Readings that were admitted and not yet handed on. */
    private final List<Reading> admitted = new ArrayList<>();

    private final Keys seen = new Keys();

    Gathering(ResolvedPlan plan) {
        this.plan = plan;
        this.repeated = plan.characteristics().stream()
                .filter(each -> each.characteristic().options().repeated())
                .map(ResolvedCharacteristic::number)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** A map from packed keys to numbers of readings, with open addressing; keys are not negative. */
    private static final class Keys {
        private static final long FREE = -1;

        private long[] keys = filled(FIRST_SIZE);
        private int[] values = new int[FIRST_SIZE];
        private int count;

        private static long[] filled(int size) {
            long[] keys = new long[size];
            Arrays.fill(keys, FREE);
            return keys;
        }

        private int slot(long key) {
            long mixed = key * 0x9E3779B97F4A7C15L;
            int slot = (int) (mixed >>> 40) & (keys.length - 1);
            while (keys[slot] != FREE && keys[slot] != key) {
                slot = (slot + 1) & (keys.length - 1);
            }
            return slot;
        }

        /** The number for a key; -1 if there is none. */
        int get(long key) {
            int slot = slot(key);
            return keys[slot] == FREE ? -1 : values[slot];
        }

        void put(long key, int value) {
            if (3 * (count + 1) > 2 * keys.length) {
                long[] before = keys;
                int[] numbers = values;
                keys = filled(2 * before.length);
                values = new int[keys.length];
                for (int i = 0; i < before.length; i++) {
                    if (before[i] != FREE) {
                        int slot = slot(before[i]);
                        keys[slot] = before[i];
                        values[slot] = numbers[i];
                    }
                }
            }
            int slot = slot(key);
            if (keys[slot] == FREE) {
                count++;
            }
            keys[slot] = key;
            values[slot] = value;
        }
    }

    private int partNumber(String part) {
        Integer known = parts.get(part);
        if (known != null) {
            return known;
        }
        serials.add(part);
        parts.put(part, serials.size() - 1);
        return serials.size() - 1;
    }

    /** Piece, characteristic and setting in one number: 31 bits for the piece, 16 each for the others. */
    private long key(ReadingBlock.OfPart each) {
        long part = partNumber(each.part());
        int characteristic =
                characteristics.computeIfAbsent(each.reading().characteristic(), number -> characteristics.size());
        int setting = settings.computeIfAbsent(each.reading().context().setting(), word -> settings.size());
        if (characteristic > 0xFFFF || setting > 0xFFFF) {
            throw new IllegalStateException("more than 65536 characteristics or settings");
        }
        return part << 32 | (long) characteristic << 16 | setting;
    }

    private Reading admittedAs(int number) {
        return number < count ? readings[number] : admitted.get(number - count);
    }

    @Override
    public @Nullable Fault admit(List<ReadingBlock.OfPart> row, List<Where> places) {
        int next = count + admitted.size();
        for (int i = 0; i < row.size(); i++) {
            ReadingBlock.OfPart each = row.get(i);
            if (repeated.contains(each.reading().characteristic())) {
                continue;
            }
            int before = seen.get(key(each));
            if (before >= 0) {
                return second(each, places.get(i), admittedAs(before).context().origin());
            }
            for (int j = 0; j < i; j++) {
                if (key(row.get(j)) == key(each)) {
                    return second(each, places.get(i), each.reading().context().origin());
                }
            }
        }
        for (int i = 0; i < row.size(); i++) {
            ReadingBlock.OfPart each = row.get(i);
            if (!repeated.contains(each.reading().characteristic())) {
                seen.put(key(each), next + i);
            }
            admitted.add(each.reading());
        }
        return null;
    }

    private static Fault second(ReadingBlock.OfPart each, Where where, Reading.Origin first) {
        return Fault.of(
                FaultKind.DUPLICATE_READING,
                where,
                "part " + Echo.plain(each.part()) + ", characteristic "
                        + Echo.plain(each.reading().characteristic()) + " was already read in "
                        + Echo.plain(first.source()) + ":" + first.line(),
                "",
                "one reading of it, or \"repeated\": true in the plan");
    }

    @Override
    public void accept(ReadingBlock block) {
        for (ReadingBlock.OfPart each : block.readings()) {
            if (count == readings.length) {
                int larger = Math.toIntExact(Math.min(Integer.MAX_VALUE - 8L, 3L * count / 2));
                readings = Arrays.copyOf(readings, larger);
                partOf = Arrays.copyOf(partOf, larger);
            }
            readings[count] = each.reading();
            partOf[count] = partNumber(each.part());
            count++;
        }
        admitted.clear();
    }

    private static LocalDateTime time(Reading reading) {
        return reading.context().time().orElseThrow(() -> new IllegalStateException("every reading has a time"));
    }

    /** Puts the readings in the order of their times where all have one, and says so where only some do. */
    private void order(FaultCollector faults) {
        int timed = 0;
        int firstWithout = -1;
        for (int i = 0; i < count; i++) {
            if (readings[i].context().time().isPresent()) {
                timed++;
            } else if (firstWithout < 0) {
                firstWithout = i;
            }
        }
        if (timed > 0 && timed < count) {
            faults.notice(
                    Where.inFile(readings[firstWithout].context().origin().source()),
                    Remark.of(
                            "notice.no-times",
                            "it states no times and other files do, so production order is the order of files and rows"));
        } else if (timed > 0 && !isInOrder()) {
            Integer[] order = new Integer[count];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, Comparator.comparing(i -> time(readings[i])));
            Reading[] sorted = new Reading[count];
            int[] sortedParts = new int[count];
            for (int i = 0; i < count; i++) {
                sorted[i] = readings[order[i]];
                sortedParts[i] = partOf[order[i]];
            }
            readings = sorted;
            partOf = sortedParts;
        }
    }

    private boolean isInOrder() {
        for (int i = 1; i < count; i++) {
            if (time(readings[i]).isBefore(time(readings[i - 1]))) {
                return false;
            }
        }
        return true;
    }

    private List<PartRecord> parts() {
        int[] counts = new int[serials.size()];
        for (int i = 0; i < count; i++) {
            counts[partOf[i]]++;
        }
        Reading[][] ofPart = new Reading[serials.size()][];
        int[] filled = new int[serials.size()];
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int part = partOf[i];
            if (ofPart[part] == null) {
                ofPart[part] = new Reading[counts[part]];
                order.add(part);
            }
            ofPart[part][filled[part]++] = readings[i];
        }
        List<PartRecord> records = new ArrayList<>(order.size());
        for (int part : order) {
            records.add(new PartRecord(serials.get(part), Arrays.asList(ofPart[part])));
        }
        return records;
    }

    Intake intake(List<Intake.ReadFile> files, FaultCollector faults, Rows rows) {
        order(faults);
        return new Intake(
                plan, parts(), faults.refusals(), faults.notices(), files, rows.countsOfAll(), rows.faultsOfFiles());
    }
}
