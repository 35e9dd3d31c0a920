package io.github.firstoff.report.kind;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A small sheet from a plan, a job and readings written in a test. */
final class MadeUp {
    private final List<String> characteristics = new ArrayList<>();
    private final StringBuilder readings = new StringBuilder();
    private String top = "\"unit\": \"mm\", ";
    private String part = "";
    private Job job = Job.NOT_STATED;
    private final List<String> notices = new ArrayList<>();

    static MadeUp plan() {
        return new MadeUp();
    }

    /** Top-level members of the plan, each ending in a comma. */
    MadeUp with(String members) {
        top = members;
        return this;
    }

    /** Further members of the part, each beginning with a comma. */
    MadeUp part(String members) {
        part = members;
        return this;
    }

    /** A characteristic; further members begin with a comma. */
    MadeUp requires(String number, String requirement, String members) {
        characteristics.add("{ \"number\": \"" + number + "\", \"feature\": \"feature " + number
                + "\", \"requirement\": \"" + requirement + "\"" + members + " }");
        return this;
    }

    MadeUp requires(String number, String requirement) {
        return requires(number, requirement, "");
    }

    /** The head of the readings; then a line each. */
    MadeUp readings(String... lines) {
        for (String line : lines) {
            readings.append(line).append('\n');
        }
        return this;
    }

    MadeUp job(String json) {
        job = JobFile.read(Input.text("job.json", "{ \"schema\": \"firstoff-job-1\", " + json + " }"))
                .job();
        return this;
    }

    MadeUp notice(String sentence) {
        notices.add(sentence);
        return this;
    }

    Sheet sheet(SheetKind kind) {
        String plan = "{ \"schema\": \"firstoff-plan-1\", \"part\": { \"number\": \"HQ-9\", \"revision\": \"A\"" + part
                + " }, " + top + "\"characteristics\": [ " + String.join(", ", characteristics) + " ] }";
        ResolvedPlan resolved = PlanFile.read(Input.text("plan.json", plan)).resolve();
        InspectionRecord record = readings.isEmpty()
                ? new InspectionRecord(resolved, List.of())
                : ReadingFiles.readInputs(resolved, List.of(Input.text("readings.csv", readings.toString())))
                        .recordOrRefuse();
        Provenance provenance = new Provenance(
                "firstoff 0.1.0",
                Instant.parse("2026-11-20T09:30:00Z"),
                "0123456789abcdef0123456789abcdef",
                List.of("readings.csv"),
                record.readingCount());
        return new SheetMaker(kind, job, notices.stream().map(Remark::verbatim).toList(), provenance).make(record);
    }
}
