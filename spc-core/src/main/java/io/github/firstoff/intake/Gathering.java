package io.github.firstoff.intake;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Keeps every reading in memory, finds second readings of the same thing, and puts everything in production order. */
final class Gathering implements Rows.Admission, Consumer<ReadingBlock> {
    private final ResolvedPlan plan;
    private final Set<String> repeated;
    private final List<ReadingBlock.OfPart> entries = new ArrayList<>();
    private final Map<Subject, Reading.Origin> seen = new HashMap<>();

    Gathering(ResolvedPlan plan) {
        this.plan = plan;
        this.repeated = plan.characteristics().stream()
                .filter(each -> each.characteristic().options().repeated())
                .map(ResolvedCharacteristic::number)
                .collect(Collectors.toUnmodifiableSet());
    }

    private record Subject(String part, String characteristic, Optional<String> setting) {
        static Subject of(ReadingBlock.OfPart each) {
            return new Subject(
                    each.part(),
                    each.reading().characteristic(),
                    each.reading().context().setting());
        }
    }

    @Override
    public @Nullable Fault admit(List<ReadingBlock.OfPart> readings, List<Where> places) {
        Set<Subject> ofRow = new HashSet<>();
        for (int i = 0; i < readings.size(); i++) {
            ReadingBlock.OfPart each = readings.get(i);
            if (repeated.contains(each.reading().characteristic())) {
                continue;
            }
            Subject subject = Subject.of(each);
            Reading.Origin first = seen.get(subject);
            if (first == null && !ofRow.add(subject)) {
                first = each.reading().context().origin();
            }
            if (first != null) {
                return Fault.of(
                        FaultKind.DUPLICATE_READING,
                        places.get(i),
                        "part " + Echo.plain(each.part()) + ", characteristic "
                                + Echo.plain(each.reading().characteristic())
                                + " was already read in " + Echo.plain(first.source()) + ":" + first.line(),
                        "",
                        "one reading of it, or \"repeated\": true in the plan");
            }
        }
        for (ReadingBlock.OfPart each : readings) {
            if (!repeated.contains(each.reading().characteristic())) {
                seen.put(Subject.of(each), each.reading().context().origin());
            }
        }
        return null;
    }

    @Override
    public void accept(ReadingBlock block) {
        entries.addAll(block.readings());
    }

    private static Optional<LocalDateTime> time(ReadingBlock.OfPart entry) {
        return entry.reading().context().time();
    }

    Intake intake(List<Intake.ReadFile> files, FaultCollector faults, Rows rows) {
        long timed = entries.stream().filter(entry -> time(entry).isPresent()).count();
        if (timed == entries.size()) {
            entries.sort(Comparator.comparing(
                    entry -> time(entry).orElseThrow(() -> new IllegalStateException("every reading has a time"))));
        } else if (timed > 0) {
            entries.stream()
                    .filter(entry -> time(entry).isEmpty())
                    .findFirst()
                    .map(entry -> entry.reading().context().origin())
                    .ifPresent(
                            origin -> faults.notice(
                                    Where.inFile(origin.source()),
                                    "it states no times and other files do, so production order is the order of files and rows"));
        }
        Map<String, List<Reading>> byPart = new LinkedHashMap<>();
        for (ReadingBlock.OfPart entry : entries) {
            byPart.computeIfAbsent(entry.part(), part -> new ArrayList<>()).add(entry.reading());
        }
        List<PartRecord> parts = byPart.entrySet().stream()
                .map(entry -> new PartRecord(entry.getKey(), entry.getValue()))
                .toList();
        return new Intake(
                plan, parts, faults.refusals(), faults.notices(), files, rows.countsOfAll(), rows.faultsOfFiles());
    }
}
