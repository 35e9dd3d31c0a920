package io.github.firstoff.intake;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads files of readings against a plan.
 *
 * <p>Several files are read one after the other, as if they were one: a piece may go on in the next, and a second reading of the same
 * thing is found across them. Production order is the order of times where every reading has one, and otherwise the order of files
 * and of the rows in them.
 */
public final class ReadingFiles {
    private ReadingFiles() {}

    /** Reads files in this order; whatever cannot be used is among the result's refusals. */
    public static Intake read(ResolvedPlan plan, List<Path> files) {
        return readInputs(plan, files.stream().map(Input::file).toList());
    }

    /** Reads inputs in this order; whatever cannot be used is among the result's refusals. */
    public static Intake readInputs(ResolvedPlan plan, List<Input> inputs) {
        Gathering gathering = new Gathering(plan);
        List<Intake.ReadFile> files = new ArrayList<>();
        RowCheck check = new RowCheck(plan, gathering);
        for (Input input : inputs) {
            long before = gathering.entries.size();
            check.begin(input.name());
            read(input, check, gathering)
                    .ifPresent(read -> files.add(new Intake.ReadFile(
                            input.name(), read.format(), read.sha256(), gathering.entries.size() - before)));
        }
        return gathering.intake(files);
    }

    /** The format and the digest of a file that was read to its end. */
    private record Read(ReadingFormat format, String sha256) {}

    private static Optional<Read> read(Input input, RowCheck check, Gathering gathering) {
        long refused = gathering.faults.count();
        int before = gathering.entries.size();
        try (Utf8Reader reader = new Utf8Reader(input, Long.MAX_VALUE)) {
            ReadingFormat format = ReadingFormat.recognise(reader.beginning());
            format.source().read(input.name(), reader, check);
            reader.skipToEnd();
            if (gathering.faults.count() == refused && gathering.entries.size() == before) {
                gathering.refuse(Fault.of(
                        FaultKind.EMPTY,
                        Where.inFile(input.name()),
                        "",
                        "rows without a value",
                        "at least one reading"));
            }
            return Optional.of(new Read(format, reader.sha256()));
        } catch (TextRefused fault) {
            gathering.refuse(fault.fault());
        } catch (IOException failure) {
            gathering.refuse(input.unreadable(failure));
        }
        return Optional.empty();
    }

    /** Keeps every reading in memory, finds second readings of the same thing, and puts everything in production order. */
    private static final class Gathering implements ReadingSink {
        private final ResolvedPlan plan;
        private final FaultCollector faults = new FaultCollector();
        private final List<Entry> entries = new ArrayList<>();
        private final Map<Subject, Reading.Origin> seen = new HashMap<>();

        Gathering(ResolvedPlan plan) {
            this.plan = plan;
        }

        private record Entry(String part, Reading reading) {
            Optional<LocalDateTime> time() {
                return reading.context().time();
            }
        }

        private record Subject(String part, String characteristic, Optional<String> setting) {}

        @Override
        public void reading(String part, Reading reading, Where where) {
            String number = reading.characteristic();
            boolean repeated = plan.find(number)
                    .filter(each -> each.characteristic().options().repeated())
                    .isPresent();
            if (!repeated) {
                Reading.Origin first = seen.putIfAbsent(
                        new Subject(part, number, reading.context().setting()),
                        reading.context().origin());
                if (first != null) {
                    refuse(Fault.of(
                            FaultKind.DUPLICATE_READING,
                            where,
                            "part " + Echo.plain(part) + ", characteristic " + Echo.plain(number)
                                    + " was already read in " + Echo.plain(first.source()) + ":" + first.line(),
                            "",
                            "one reading of it, or \"repeated\": true in the plan"));
                    return;
                }
            }
            entries.add(new Entry(part, reading));
        }

        @Override
        public void refuse(Fault fault) {
            faults.refuse(fault);
        }

        @Override
        public void notice(Where where, String message) {
            faults.notice(where, message);
        }

        Intake intake(List<Intake.ReadFile> files) {
            long timed =
                    entries.stream().filter(entry -> entry.time().isPresent()).count();
            if (timed == entries.size()) {
                entries.sort(Comparator.comparing(entry ->
                        entry.time().orElseThrow(() -> new IllegalStateException("every reading has a time"))));
            } else if (timed > 0) {
                entries.stream()
                        .filter(entry -> entry.time().isEmpty())
                        .findFirst()
                        .map(entry -> entry.reading().context().origin())
                        .ifPresent(
                                origin -> faults.notice(
                                        new Where(origin.source(), 0, 0, ""),
                                        "it states no times and other files do, so production order is the order of files and rows"));
            }
            Map<String, List<Reading>> byPart = new LinkedHashMap<>();
            for (Entry entry : entries) {
                byPart.computeIfAbsent(entry.part(), part -> new ArrayList<>()).add(entry.reading());
            }
            List<PartRecord> parts = byPart.entrySet().stream()
                    .map(entry -> new PartRecord(entry.getKey(), entry.getValue()))
                    .toList();
            return new Intake(plan, parts, faults.refusals(), faults.notices(), files);
        }
    }
}
