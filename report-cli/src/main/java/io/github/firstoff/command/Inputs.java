package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.HouseFile;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.IntakeSettings;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.Mapping;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.intake.RefusedRow;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import io.github.firstoff.words.Labels;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** Reads plan, job and readings, and makes the sheet that they come to. */
final class Inputs {
    /** What stands for standard input among the names of files. */
    static final String STANDARD_INPUT = "-";

    /** What messages and sheets call it. */
    static final String STANDARD_INPUT_NAME = "standard input";

    private final String plan;
    private final Optional<String> job;
    private final List<String> readings;
    private final Shelf shelf;
    private Optional<String> counterpart = Optional.empty();
    private Optional<String> house = Optional.empty();
    private Optional<String> mapping = Optional.empty();
    private Optional<HouseFile> houseFile = Optional.empty();
    private BiConsumer<Integer, Integer> watcher = (done, all) -> {};
    private ReadingChoices choices = ReadingChoices.NONE;
    private Consumer<RefusedRow> refusedRows = row -> {};
    private Optional<Intake> intake = Optional.empty();

    /** Where inputs come from. */
    interface Shelf {
        /** Opens one of them; of readings, the place among their files is told, counted from 1. */
        Input open(CarriedFile.Role role, int place, String name);

        /** Hears which bytes of a file were read that may be too large to be held. */
        default void wasRead(CarriedFile.Role role, int place, String sha256) {}
    }

    /**
     * Inputs from a shelf.
     *
     * @param plan the name of the plan
     * @param job that of the job
     * @param readings those of the readings, in their order
     * @param shelf gives the bytes for a name
     */
    Inputs(String plan, Optional<String> job, List<String> readings, Shelf shelf) {
        this.plan = plan;
        this.job = job;
        this.readings = List.copyOf(readings);
        this.shelf = shelf;
    }

    /** Inputs that are files. */
    Inputs(Path plan, Optional<Path> job, List<Path> readings, Shelf shelf) {
        this(
                plan.toString(),
                job.map(Path::toString),
                readings.stream().map(Path::toString).toList(),
                shelf);
    }

    /** Whether a name on the command line stands for standard input. */
    static boolean isStandardInput(Path path) {
        return path.toString().equals(STANDARD_INPUT);
    }

    /** The same with what the command line says of how readings are read. */
    Inputs choosing(ReadingChoices chosen) {
        choices = chosen;
        return this;
    }

    /** The same with the file that says how the firm's sheets look. */
    Inputs ofHouse(String name) {
        house = Optional.of(name);
        return this;
    }

    /** The same with the name of a mapping, by which texts of measuring machines are read. */
    Inputs byMapping(String name) {
        mapping = Optional.of(name);
        return this;
    }

    /** How the firm's sheets look; empty without such a file, and before the sheet was made. */
    Optional<House> house() {
        return houseFile.map(HouseFile::house);
    }

    /** The same with somebody who hears how many characteristics are worked out, of how many. */
    Inputs watchedBy(BiConsumer<Integer, Integer> taker) {
        watcher = taker;
        return this;
    }

    /** The same with somebody who takes refused rows. */
    Inputs handingRefusedRowsTo(Consumer<RefusedRow> taker) {
        refusedRows = taker;
        return this;
    }

    /** What came of reading the readings; empty until they were read. */
    Optional<Intake> intake() {
        return intake;
    }

    /** Every file that is read; of a plan that is a mirror image, its counterpart's too as soon as it was read. */
    List<Path> paths() {
        List<Path> paths = new ArrayList<>();
        paths.add(Path.of(plan));
        counterpart.map(Path::of).ifPresent(paths::add);
        job.map(Path::of).ifPresent(paths::add);
        house.map(Path::of).ifPresent(paths::add);
        mapping.map(Path::of).ifPresent(paths::add);
        houseFile.flatMap(HouseFile::logoName).map(Path::of).ifPresent(paths::add);
        readings.stream()
                .filter(name -> !name.equals(STANDARD_INPUT))
                .map(Path::of)
                .forEach(paths::add);
        return paths;
    }

    /**
     * The sheet.
     *
     * @throws io.github.firstoff.intake.InputRefused if any input cannot be used; nothing was written then
     */
    Sheet sheet(SheetKind kind, Instant now) {
        PlanFile planFile = PlanFile.read(shelf.open(CarriedFile.Role.PLAN, 1, plan));
        counterpart = planFile.counterpart();
        ResolvedPlan resolved = planFile.resolve();
        List<PlanFault> faults = SheetMaker.impossibleStudies(resolved);
        if (!faults.isEmpty()) {
            throw planFile.refusal(faults);
        }
        Optional<JobFile> jobFile = job.map(name -> JobFile.read(shelf.open(CarriedFile.Role.JOB, 1, name)));
        jobFile.ifPresent(file -> file.requireFor(resolved));
        houseFile = house.map(name -> HouseFile.read(shelf.open(CarriedFile.Role.HOUSE, 1, name), Labels.languages()));
        Optional<Mapping> mappingFile =
                mapping.map(name -> Mapping.read(shelf.open(CarriedFile.Role.MAPPING, 1, name)));
        List<Input> opened = new ArrayList<>();
        for (String name : readings) {
            opened.add(shelf.open(CarriedFile.Role.READINGS, opened.size() + 1, name));
        }
        IntakeSettings settings = new IntakeSettings(choices.decimalMark(), choices.sheet(), mappingFile, refusedRows);
        Intake read = ReadingFiles.readInputs(resolved, opened, settings);
        intake = Optional.of(read);
        InspectionRecord record = choices.keepGoing() ? read.recordOfTheGoodRows() : read.recordOrRefuse();
        for (int i = 0; i < read.files().size(); i++) {
            shelf.wasRead(CarriedFile.Role.READINGS, i + 1, read.files().get(i).sha256());
        }

        List<Remark> notices = new ArrayList<>();
        add(planFile.notices(), notices);
        jobFile.ifPresent(file -> add(file.notices(), notices));
        houseFile.ifPresent(file -> add(file.notices(), notices));
        mappingFile.ifPresent(file -> add(file.notices(), notices));
        add(read.notices(), notices);

        List<String> hashes = new ArrayList<>();
        List<String> names = new ArrayList<>();
        hashes.add(planFile.sha256());
        names.add(nameOf(plan));
        counterpart.map(Inputs::nameOf).ifPresent(names::add);
        jobFile.ifPresent(file -> {
            hashes.add(file.sha256());
            names.add(nameOf(job.orElseThrow()));
        });
        houseFile.ifPresent(file -> {
            hashes.add(file.sha256());
            names.add(nameOf(house.orElseThrow()));
            file.logoSha256().ifPresent(hashes::add);
            file.logoName().map(Inputs::nameOf).ifPresent(names::add);
        });
        mappingFile.ifPresent(file -> {
            hashes.add(file.sha256());
            names.add(nameOf(mapping.orElseThrow()));
        });
        for (Intake.ReadFile file : read.files()) {
            hashes.add(file.sha256());
            names.add(nameOf(file.name()));
        }
        Provenance provenance =
                new Provenance(ProgramVersion.text(), now, Sources.together(hashes), names, read.rows());
        Job stated = jobFile.map(JobFile::job).orElse(Job.NOT_STATED);
        SheetMaker maker = new SheetMaker(
                kind,
                houseFile.map(file -> stated.issuedBy(file.house().firm())).orElse(stated),
                notices,
                provenance);
        try {
            int all = resolved.characteristics().size();
            return maker.watchedBy(done -> watcher.accept(done, all)).make(record);
        } catch (PlanContradiction contradiction) {
            // what a study of the plan needs and the readings do not state
            throw planFile.refusal(contradiction.faults());
        }
    }

    private static void add(List<Notice> found, List<Remark> notices) {
        found.stream()
                .map(notice -> new Notice(
                        new Fault.Where(
                                nameOf(notice.where().file()),
                                notice.where().sheet(),
                                notice.where().line(),
                                notice.where().column(),
                                notice.where().field()),
                        notice.remark()))
                .map(Notice::told)
                .forEach(notices::add);
    }

    /** The file's own name: a sheet that travels says nothing of the folders of the machine it was made on. */
    static String nameOf(String path) {
        Path name = Path.of(path).getFileName();
        return name == null ? path : name.toString();
    }
}
