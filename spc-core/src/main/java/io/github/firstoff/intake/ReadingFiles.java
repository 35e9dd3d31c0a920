package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

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
        return readInputs(plan, inputs, IntakeSettings.USUAL);
    }

    /**
     * Reads inputs in this order; whatever cannot be used is among the result's refusals.
     *
     * @param plan what readings are held against
     * @param inputs the files and streams
     * @param settings what the user says beside them
     */
    public static Intake readInputs(ResolvedPlan plan, List<Input> inputs, IntakeSettings settings) {
        return readInputs(plan, inputs, settings, Optional.empty());
    }

    /** With leeway, reads inputs that say more than the plan asks. */
    static Intake readInputs(ResolvedPlan plan, List<Input> inputs, IntakeSettings settings, Optional<Leeway> leeway) {
        Gathering gathering = new Gathering(plan);
        FaultCollector faults = new FaultCollector();
        Rows rows = new Rows(faults, settings, gathering, Corrections.among(inputs, plan), gathering);
        List<Intake.ReadFile> files = readAll(plan, inputs, faults, rows, leeway);
        return gathering.intake(files, faults, rows);
    }

    /**
     * Reads inputs in this order and hands their readings on in blocks, in the order of the files. Memory does not grow with the files,
     * and so second readings of the same thing are not found. The result holds no pieces.
     *
     * @param plan what readings are held against
     * @param inputs the files and streams
     * @param settings what the user says beside them
     * @param taker takes each block
     */
    public static Intake readBlocks(
            ResolvedPlan plan, List<Input> inputs, IntakeSettings settings, Consumer<ReadingBlock> taker) {
        FaultCollector faults = new FaultCollector();
        Rows rows = new Rows(faults, settings, (readings, places) -> null, Corrections.among(inputs, plan), taker);
        List<Intake.ReadFile> files = readAll(plan, inputs, faults, rows, Optional.empty());
        return new Intake(
                plan, List.of(), faults.refusals(), faults.notices(), files, rows.countsOfAll(), rows.faultsOfFiles());
    }

    private static List<Intake.ReadFile> readAll(
            ResolvedPlan plan, List<Input> inputs, FaultCollector faults, Rows rows, Optional<Leeway> leeway) {
        List<Intake.ReadFile> files = new ArrayList<>();
        boolean anyReading = false;
        RowCheck check = new RowCheck(plan, rows, new QifLibrary(inputs), leeway);
        for (Input input : inputs) {
            check.begin(input.name());
            rows.beginFile(input.name());
            long before = faults.count();
            Optional<Read> read = read(input, check, rows);
            rows.endFile();
            anyReading |= rows.readings() > 0;
            boolean mayBeEmpty =
                    (check.expectsReadingsElsewhere() && (anyReading || input != inputs.get(inputs.size() - 1)))
                            || rows.standAgainElsewhere();
            if (faults.count() == before && rows.readings() == 0 && !mayBeEmpty) {
                rows.refuse(Fault.of(
                        FaultKind.EMPTY,
                        Where.inFile(input.name()),
                        "",
                        check.expectsReadingsElsewhere()
                                ? "a document that only says what was to be measured"
                                : "rows without a value",
                        "at least one reading"));
            }
            read.ifPresent(each -> files.add(
                    new Intake.ReadFile(input.name(), each.format(), each.sha256(), rows.readings(), rows.counts())));
        }
        return files;
    }

    /** The format and the digest of a file that was read to its end. */
    private record Read(ReadingFormat format, String sha256) {}

    private static Optional<Read> read(Input input, RowCheck check, Rows rows) {
        long before = rows.faultsOfFiles();
        try (InputBytes bytes = new InputBytes(input, Long.MAX_VALUE)) {
            ReadingFormat recognised = ReadingFormat.recognise(bytes.beginning());
            boolean mapped = recognised == ReadingFormat.CSV
                    && rows.settings().mapping().isPresent()
                    && !RefusedTable.begins(bytes.beginning());
            Optional<Fault> other = OtherFile.insteadOfReadings(input.name(), bytes.beginning(), mapped);
            if (other.isPresent()) {
                throw new TextRefused(other.get());
            }
            ReadingFormat format = mapped ? ReadingFormat.MAPPED : recognised;
            format.source().read(bytes, check);
            if (rows.faultsOfFiles() > before) {
                // The rest may have no end, and no digest of it is wanted.
                return Optional.empty();
            }
            bytes.skipToEnd();
            return Optional.of(new Read(format, bytes.sha256()));
        } catch (TextRefused fault) {
            rows.refuseFile(fault.fault());
        } catch (IOException failure) {
            rows.refuseFile(input.unreadable(failure));
        }
        return Optional.empty();
    }
}
