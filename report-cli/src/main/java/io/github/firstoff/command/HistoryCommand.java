package io.github.firstoff.command;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.report.kind.HistoryReport;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.HistoryJson;
import io.github.firstoff.sheet.HistorySheet;
import io.github.firstoff.sheet.HistoryWords;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import io.github.firstoff.sheet.TableCsv;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code firstoff history}. */
@Command(
        name = "history",
        description = "One characteristic across several batches, on one page: each file of readings is a batch.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class HistoryCommand extends StudyCommand {
    @Option(names = "--plan", required = true, paramLabel = "PLAN", description = "What the drawing requires (JSON).")
    private @Nullable Path plan;

    @Option(
            names = "--characteristic",
            required = true,
            paramLabel = "NUMBER",
            description = "The number of the characteristic in the plan.")
    private @Nullable String number;

    @Option(names = "--csv", paramLabel = "FILE.csv", description = "Write the table of batches as CSV.")
    private @Nullable Path csv;

    @Parameters(
            paramLabel = "READINGS",
            arity = "1..*",
            description = {
                "What was measured, a file for each batch, the oldest first. A job NAME.job.json beside NAME.csv",
                "names the batch; else the file does."
            })
    private List<Path> readings = new ArrayList<>();

    HistoryCommand(Console console) {
        super(console);
    }

    @Override
    boolean isTranslated() {
        return true;
    }

    @Override
    public Integer call() {
        Path planPath = Objects.requireNonNull(plan);
        List<Path> inputs = new ArrayList<>(readings);
        inputs.add(planPath);
        keep(inputs);
        keep(inputs, Optional.ofNullable(csv), "--csv");
        HistorySheet sheet = sheet(PlanFile.read(planPath));
        if (csv != null) {
            byte[] table = TableCsv.batches(sheet).getBytes(StandardCharsets.UTF_8);
            OutputFile.write(csv, stream -> stream.write(table));
        }
        return tell(
                sheet.notices(),
                paper -> new HistoryReport().compose(sheet, paper),
                target -> HistoryJson.write(sheet, target),
                summary(sheet),
                sheet.accepted());
    }

    private HistorySheet sheet(PlanFile planFile) {
        ResolvedPlan resolved = planFile.resolve();
        ResolvedCharacteristic wanted = wanted(resolved);
        List<PlanFault> faults = SheetMaker.impossibleStudies(resolved);
        if (!faults.isEmpty()) {
            throw planFile.refusal(faults);
        }
        List<String> notices = new ArrayList<>(lines(planFile.notices()));
        List<String> hashes = new ArrayList<>(List.of(planFile.sha256()));
        List<String> names = new ArrayList<>(List.of(planFile.name()));
        List<HistorySheet.Batch> batches = new ArrayList<>();
        long rows = 0;
        for (Path file : readings) {
            Optional<JobFile> job = job(file);
            job.ifPresent(each -> {
                each.requireFor(resolved);
                hashes.add(each.sha256());
                names.add(each.name());
            });
            Intake intake = ReadingFiles.read(resolved, List.of(file));
            InspectionRecord record = intake.recordOrRefuse();
            intake.files().forEach(each -> {
                hashes.add(each.sha256());
                names.add(each.name());
            });
            notices.addAll(lines(intake.notices()));
            rows += intake.rows().read();
            String own = Inputs.nameOf(file.toString());
            batches.add(new HistorySheet.Batch(
                    job.map(JobFile::job).flatMap(Job::batch).orElse(own.replaceFirst("\\.[^.]*$", "")),
                    own,
                    finding(planFile, record, wanted)));
        }
        return new HistorySheet(
                resolved, wanted, batches, notices.stream().distinct().toList(), provenance(names, hashes, rows));
    }

    private ResolvedCharacteristic wanted(ResolvedPlan resolved) {
        String asked = Objects.requireNonNull(number);
        return resolved.characteristics().stream()
                .filter(each -> each.number().equals(asked))
                .findFirst()
                .filter(ResolvedCharacteristic::isJudged)
                .orElseThrow(() -> new ParameterException(
                        command().commandLine(),
                        "--characteristic " + asked + ": the plan judges no such characteristic; it has "
                                + String.join(
                                        ", ",
                                        resolved.characteristics().stream()
                                                .filter(ResolvedCharacteristic::isJudged)
                                                .map(ResolvedCharacteristic::number)
                                                .toList())));
    }

    /** The job that lies beside the readings under their name. */
    private static Optional<JobFile> job(Path file) {
        String own = Inputs.nameOf(file.toString()).replaceFirst("\\.[^.]*$", "") + ".job.json";
        Path job = file.resolveSibling(own);
        return Files.isRegularFile(job) ? Optional.of(JobFile.read(job)) : Optional.empty();
    }

    private Finding finding(PlanFile planFile, InspectionRecord record, ResolvedCharacteristic wanted) {
        Provenance none = provenance(List.of(), List.of(), 0);
        try {
            Sheet sheet = new SheetMaker(SheetKind.BATCH, Job.NOT_STATED, List.of(), none).make(record);
            return sheet.findings().stream()
                    .filter(each -> each.number().equals(wanted.number()))
                    .findFirst()
                    .orElseThrow();
        } catch (PlanContradiction contradiction) {
            throw planFile.refusal(contradiction.faults());
        }
    }

    private static List<String> summary(HistorySheet sheet) {
        HistoryWords words = new HistoryWords(sheet);
        List<String> lines = new ArrayList<>();
        lines.add(words.headline());
        lines.addAll(words.sentences());
        for (HistorySheet.Batch batch : sheet.batches()) {
            lines.add("  " + batch.name() + ": n "
                    + batch.finding().result().judgements().size()
                    + batch.finding()
                            .summary()
                            .map(each -> ", " + each.minimum().toPlainString() + " to "
                                    + each.maximum().toPlainString())
                            .orElse("")
                    + ", " + HistoryWords.state(batch.control()));
        }
        return lines.stream().map(line -> line.replace('\u00A0', ' ')).toList();
    }
}
