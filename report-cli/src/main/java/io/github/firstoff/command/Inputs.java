package io.github.firstoff.command;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads plan, job and readings, and makes the sheet that they come to. */
final class Inputs {
    private final Path plan;
    private final Optional<Path> job;
    private final List<Path> readings;
    private Optional<Path> counterpart = Optional.empty();

    Inputs(Path plan, @Nullable Path job, List<Path> readings) {
        this.plan = plan;
        this.job = Optional.ofNullable(job);
        this.readings = List.copyOf(readings);
    }

    /** Every file that is read; of a plan that is a mirror image, its counterpart's too as soon as it was read. */
    List<Path> paths() {
        List<Path> paths = new ArrayList<>();
        paths.add(plan);
        counterpart.ifPresent(paths::add);
        job.ifPresent(paths::add);
        paths.addAll(readings);
        return paths;
    }

    /**
     * The sheet.
     *
     * @throws io.github.firstoff.intake.InputRefused if any input cannot be used; nothing was written then
     */
    Sheet sheet(SheetKind kind, Instant now) {
        PlanFile planFile = PlanFile.read(plan);
        counterpart = planFile.counterpart().map(Path::of);
        ResolvedPlan resolved = planFile.resolve();
        List<PlanFault> beyond = SheetMaker.beyondThisVersion(resolved);
        if (!beyond.isEmpty()) {
            throw planFile.refusal(beyond);
        }
        Optional<JobFile> jobFile = job.map(JobFile::read);
        jobFile.ifPresent(file -> file.requireFor(resolved));
        Intake intake = ReadingFiles.read(resolved, readings);
        InspectionRecord record = intake.recordOrRefuse();

        List<String> notices = new ArrayList<>();
        add(planFile.notices(), notices);
        jobFile.ifPresent(file -> add(file.notices(), notices));
        add(intake.notices(), notices);

        List<String> hashes = new ArrayList<>();
        List<String> names = new ArrayList<>();
        hashes.add(planFile.sha256());
        names.add(nameOf(plan));
        counterpart.map(Inputs::nameOf).ifPresent(names::add);
        jobFile.ifPresent(file -> {
            hashes.add(file.sha256());
            names.add(nameOf(job.orElseThrow()));
        });
        for (Intake.ReadFile file : intake.files()) {
            hashes.add(file.sha256());
            names.add(nameOf(Path.of(file.name())));
        }
        Provenance provenance = new Provenance(
                ProgramVersion.text(),
                now,
                together(hashes),
                names,
                intake.files().stream().mapToLong(Intake.ReadFile::readings).sum());
        return new SheetMaker(kind, jobFile.map(JobFile::job).orElse(Job.NOT_STATED), notices, provenance).make(record);
    }

    private static void add(List<Notice> found, List<String> notices) {
        found.stream().map(Notice::line).forEach(notices::add);
    }

    /** The file's own name: a sheet that travels says nothing of the folders of the machine it was made on. */
    private static String nameOf(Path path) {
        Path name = path.getFileName();
        return name == null ? path.toString() : name.toString();
    }

    /** One hash over the hashes of all files, in the order of the command line. */
    private static String together(List<String> hashes) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String hash : hashes) {
                digest.update(hash.getBytes(StandardCharsets.US_ASCII));
                digest.update((byte) '\n');
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException fault) {
            throw new IllegalStateException("every Java has SHA-256", fault);
        }
    }
}
