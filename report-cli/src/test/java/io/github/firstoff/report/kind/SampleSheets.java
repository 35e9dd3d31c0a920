package io.github.firstoff.report.kind;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/** The sheets that the files in sample-measurements come to. */
final class SampleSheets {
    static final Path FOLDER = Path.of("..", "sample-measurements");
    private static final String HASH = "9f3ac2d01b7e5a64c0ffee00112233445566778899aabbccddeeff0011223344";

    private SampleSheets() {}

    static Sheet sheet(SheetKind kind, String plan, String readings) {
        ResolvedPlan resolved =
                PlanFile.read(FOLDER.resolve(plan + ".plan.json")).resolve();
        JobFile job = JobFile.read(FOLDER.resolve(readings + ".job.json"));
        Intake intake = ReadingFiles.read(resolved, List.of(FOLDER.resolve(readings + ".csv")));
        InspectionRecord record = intake.recordOrRefuse();
        return new SheetMaker(
                        kind,
                        job.job(),
                        List.of(),
                        new Provenance(
                                "firstoff 0.1.0",
                                Instant.parse("2026-11-20T09:30:00Z"),
                                HASH,
                                List.of(readings + ".csv"),
                                record.readingCount()))
                .make(record);
    }
}
