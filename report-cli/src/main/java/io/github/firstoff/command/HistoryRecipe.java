package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.InputRefused;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.IntakeSettings;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.JudgedReadings;
import io.github.firstoff.proof.PrintedFigures;
import io.github.firstoff.proof.ProofRefused;
import io.github.firstoff.proof.ReadingLines;
import io.github.firstoff.report.kind.HistoryReport;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.HistoryJson;
import io.github.firstoff.sheet.HistorySheet;
import io.github.firstoff.sheet.HistoryWords;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import java.io.Writer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sheets of one characteristic across several batches: a plan, the readings of each batch, and the jobs of some of them. */
final class HistoryRecipe implements SheetRecipe {
    private static final String COMMAND = "history";
    private static final String CHARACTERISTIC = "characteristic";
    private static final String JOB_OF = "job-of-readings-";

    @Override
    public String command() {
        return COMMAND;
    }

    /** Which characteristic is asked for, as a sheet carries it. */
    static Map<String, String> options(String characteristic) {
        return Map.of(CHARACTERISTIC, characteristic);
    }

    /** These ingredients and one more batch. */
    static Ingredients with(Ingredients from, String readings, Optional<String> job) {
        Ingredients more = from.with(Role.READINGS, readings);
        if (job.isEmpty()) {
            return more;
        }
        String place = Integer.toString(more.all(Role.JOB).size() + 1);
        return more.with(Role.JOB, job)
                .choosing(Map.of(JOB_OF + more.all(Role.READINGS).size(), place));
    }

    /** A characteristic was asked for that the plan does not judge. */
    static final class NotJudged extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private NotJudged(String says) {
            super(says);
        }

        /** Which it is, and which there are. */
        String says() {
            return String.valueOf(getMessage());
        }
    }

    @Override
    public MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        try {
            return history(from, shelf, now);
        } catch (NotJudged fault) {
            throw new ProofRefused("what was asked cannot be read from the sheet: characteristic " + fault.says());
        }
    }

    /**
     * The history.
     *
     * @throws NotJudged if the plan does not judge the characteristic that is asked for
     */
    static Made history(Ingredients from, Inputs.Shelf shelf, Instant now) {
        Sources sources = new Sources();
        PlanFile planFile =
                PlanFile.read(shelf.open(Role.PLAN, 1, from.first(Role.PLAN).orElse("plan.json")));
        sources.add(planFile.name(), planFile.sha256());
        sources.add(planFile.notices());
        ResolvedPlan resolved = planFile.resolve();
        ResolvedCharacteristic wanted = wanted(resolved, from.options().getOrDefault(CHARACTERISTIC, ""));
        List<PlanFault> faults = SheetMaker.impossibleStudies(resolved);
        if (!faults.isEmpty()) {
            throw planFile.refusal(faults);
        }
        IntakeSettings settings = sources.settings(from, shelf);
        List<HistorySheet.Batch> batches = new ArrayList<>();
        RowCounts rows = RowCounts.NONE;
        for (String name : from.all(Role.READINGS)) {
            int place = batches.size() + 1;
            Optional<JobFile> job = job(from, place, shelf);
            job.ifPresent(each -> {
                each.requireFor(resolved);
                sources.add(each.name(), each.sha256());
            });
            Input input = shelf.open(Role.READINGS, place, name);
            Intake intake = ReadingFiles.readInputs(resolved, List.of(input), settings);
            InspectionRecord record = readOrRefuse(intake, rows);
            for (Intake.ReadFile each : intake.files()) {
                sources.add(each.name(), each.sha256());
                shelf.wasRead(Role.READINGS, place, each.sha256());
            }
            sources.add(intake.notices());
            rows = rows.plus(intake.rows());
            String own = Inputs.nameOf(name);
            batches.add(new HistorySheet.Batch(
                    job.map(JobFile::job).flatMap(Job::batch).orElse(own.replaceFirst("\\.[^.]*$", "")),
                    own,
                    finding(planFile, record, wanted, new Sources().provenance(now, RowCounts.NONE))));
        }
        Optional<House> house = sources.house(from, shelf);
        return new Made(
                new HistorySheet(resolved, wanted, batches, sources.notices(), sources.provenance(now, rows)), house);
    }

    /** Counts the rows of the batches before it among those that were read. */
    private static InspectionRecord readOrRefuse(Intake intake, RowCounts before) {
        try {
            return intake.recordOrRefuse();
        } catch (InputRefused refused) {
            throw refused.after(before);
        }
    }

    private static ResolvedCharacteristic wanted(ResolvedPlan resolved, String asked) {
        return resolved.characteristics().stream()
                .filter(each -> each.number().equals(asked))
                .findFirst()
                .filter(ResolvedCharacteristic::isJudged)
                .orElseThrow(() -> new NotJudged(asked + ": the plan judges no such characteristic; it has "
                        + String.join(
                                ", ",
                                resolved.characteristics().stream()
                                        .filter(ResolvedCharacteristic::isJudged)
                                        .map(ResolvedCharacteristic::number)
                                        .toList())));
    }

    private static Optional<JobFile> job(Ingredients from, int readings, Inputs.Shelf shelf) {
        String stated = from.options().getOrDefault(JOB_OF + readings, "");
        List<String> jobs = from.all(Role.JOB);
        for (int place = 1; place <= jobs.size(); place++) {
            if (stated.equals(Integer.toString(place))) {
                return Optional.of(JobFile.read(shelf.open(Role.JOB, place, jobs.get(place - 1))));
            }
        }
        return Optional.empty();
    }

    private static Finding finding(
            PlanFile planFile, InspectionRecord record, ResolvedCharacteristic wanted, Provenance provenance) {
        try {
            Sheet sheet = new SheetMaker(SheetKind.BATCH, Job.NOT_STATED, List.of(), provenance).make(record);
            return sheet.findings().stream()
                    .filter(each -> each.number().equals(wanted.number()))
                    .findFirst()
                    .orElseThrow();
        } catch (PlanContradiction contradiction) {
            throw planFile.refusal(contradiction.faults());
        }
    }

    /**
     * A history.
     *
     * @param sheet what it says
     * @param house whose paper it is printed on
     */
    record Made(HistorySheet sheet, Optional<House> house) implements MadeStudy {
        @Override
        public String command() {
            return COMMAND;
        }

        @Override
        public void write(Writer target) {
            HistoryJson.write(sheet, target);
        }

        @Override
        public Optional<ReadingLines> readings() {
            return Optional.of(JudgedReadings.of(
                    "batch",
                    sheet.batches().stream()
                            .map(batch -> Map.entry(batch.name(), batch.finding()))
                            .toList()));
        }

        @Override
        public PrintedFigures printed() {
            return PrintedFigures.at(
                    "part", "characteristic.number", "batches[].batch", "batches[].minimum", "batches[].maximum");
        }

        @Override
        public ReportModel compose(PaperSize paper) {
            return new HistoryReport().compose(sheet, paper);
        }

        @Override
        public List<String> lines() {
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
            lines.add(provenance().rows() + ".");
            return lines;
        }

        @Override
        public boolean accepted() {
            return sheet.accepted();
        }
    }
}
