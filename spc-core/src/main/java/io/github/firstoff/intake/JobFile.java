package io.github.firstoff.intake;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.inspection.Job.FirstArticleReason;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * A job file as it was read. The format is {@code firstoff-job-1}; see {@code docs/inputs.md} and
 * {@code docs/schemas/job.schema.json}.
 */
public final class JobFile {
    /** The schema's name in job files. */
    public static final String SCHEMA = "firstoff-job-1";

    private static final long LARGEST = 1024 * 1024;
    private static final int LARGEST_BATCH = 100_000_000;

    private final SourceText source;
    private final Job job;
    private final Optional<Claim> part;
    private final Optional<Fault.Where> covered;
    private final List<Notice> notices;

    private JobFile(SourceText source, Read read, List<Notice> notices) {
        this.source = source;
        this.job = read.job();
        this.part = read.part();
        this.covered = read.covered();
        this.notices = List.copyOf(notices);
    }

    /** What came of the document. */
    private record Read(Job job, Optional<Claim> part, Optional<Fault.Where> covered) {}

    /** The part number that the job states, and where. */
    private record Claim(String number, Fault.Where where) {}

    /**
     * Reads a job file.
     *
     * @throws InputRefused with every fault of the file
     */
    public static JobFile read(Path path) {
        return read(Input.file(path));
    }

    /**
     * Reads a job.
     *
     * @throws InputRefused with every fault of the input
     */
    public static JobFile read(Input input) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.JOB);
        FaultCollector faults = new FaultCollector();
        Optional<Read> read = JsonTree.parse(source, faults).flatMap(root -> {
            if (root instanceof JsonValue.Obj object) {
                return Optional.of(job(new Fields(source.name(), faults, object, "")));
            }
            faults.refuse(Fault.of(
                    FaultKind.WRONG_TYPE,
                    new Fault.Where(source.name(), root.at().line(), root.at().column(), ""),
                    "",
                    root.described(),
                    "a job, which is an object { … }"));
            return Optional.empty();
        });
        faults.inFileOrder().throwIfAny();
        return new JobFile(
                source,
                read.orElseThrow(() -> new IllegalStateException("a job without a fault was not read")),
                faults.notices());
    }

    private static Read job(Fields document) {
        SchemaName.check(document, SCHEMA);
        Optional<Job.Firm> issuer = firm(document, "issuer");
        Optional<Job.Firm> customer = firm(document, "customer");
        Optional<Claim> part = document.text("part").map(number -> new Claim(number, document.where("part")));
        Optional<String> job = document.name("job");
        Optional<String> batch = document.name("batch");
        Optional<String> order = document.name("order");
        OptionalInt quantity = document.count("quantity", 1, LARGEST_BATCH);
        List<Job.Material> materials = new ArrayList<>();
        for (Fields entry : document.objects("materials", "a material, which is an object { … }")) {
            material(entry).ifPresent(materials::add);
        }
        Optional<String> machine = document.name("machine");
        Optional<String> program = document.name("program");
        Optional<Job.Person> inspector = document.object("inspector").flatMap(JobFile::person);
        Optional<LocalDate> date = document.date("date");
        Optional<Fields> article = document.object("firstArticle");
        Optional<Fault.Where> covered =
                article.filter(fields -> fields.has("characteristics")).map(fields -> fields.where("characteristics"));
        Optional<FirstArticleReason> firstArticle = article.flatMap(JobFile::firstArticle);
        Optional<Fields> certificate = document.object("certificate");
        Optional<String> certificateNumber = certificate.flatMap(fields -> fields.name("number"));
        Optional<Job.InspectionDocument> inspectionDocument = certificate.flatMap(JobFile::inspectionDocument);
        certificate.ifPresent(Fields::finish);
        List<Job.SpecialProcess> processes = new ArrayList<>();
        for (Fields entry : document.objects("processes", "a special process, which is an object { … }")) {
            process(entry).ifPresent(processes::add);
        }
        document.finish();
        Job read = new Job(
                issuer,
                customer,
                job,
                batch,
                order,
                quantity,
                materials,
                machine,
                program,
                inspector,
                date,
                firstArticle,
                certificateNumber,
                processes,
                inspectionDocument);
        return new Read(read, part, covered);
    }

    private static Optional<Job.Firm> firm(Fields document, String key) {
        return document.object(key).flatMap(fields -> {
            Optional<String> name = fields.requiredText("name", "the firm's name");
            Optional<String> address = fields.lines("address");
            fields.finish();
            return name.map(known -> new Job.Firm(known, address));
        });
    }

    private static Optional<Job.Material> material(Fields fields) {
        Optional<String> grade = fields.requiredText("grade", "the material's grade");
        Optional<String> heat = fields.name("heat");
        Optional<String> certificate = fields.name("certificate");
        fields.finish();
        return grade.map(known -> new Job.Material(known, heat, certificate));
    }

    private static Optional<Job.SpecialProcess> process(Fields fields) {
        Optional<String> name = fields.requiredText("name", "what was done");
        Optional<String> specification = fields.text("specification");
        Optional<String> by = fields.text("by");
        Optional<String> certificate = fields.name("certificate");
        fields.finish();
        return name.map(known -> new Job.SpecialProcess(known, specification, by, certificate));
    }

    private static Optional<Job.InspectionDocument> inspectionDocument(Fields fields) {
        List<String> types = Arrays.stream(Job.InspectionDocument.values())
                .map(Job.InspectionDocument::word)
                .toList();
        return fields.word(
                "inspectionDocument",
                word -> Arrays.stream(Job.InspectionDocument.values())
                        .filter(each -> each.word().equals(word))
                        .findFirst(),
                types);
    }

    private static Optional<Job.Person> person(Fields fields) {
        Optional<String> name = fields.requiredText("name", "the person's name");
        Optional<String> position = fields.text("position");
        fields.finish();
        return name.map(known -> new Job.Person(known, position));
    }

    private static Optional<FirstArticleReason> firstArticle(Fields fields) {
        List<String> words =
                Arrays.stream(Job.Kind.values()).map(Job.Kind::word).toList();
        Optional<Job.Kind> kind = fields.required(
                "kind",
                fields.word(
                        "kind",
                        word -> Arrays.stream(Job.Kind.values())
                                .filter(each -> each.word().equalsIgnoreCase(word))
                                .findFirst(),
                        words),
                Words.oneOf(words));
        Optional<String> reason = fields.text("reason");
        Optional<String> baseline = fields.name("baseline");
        Optional<String> changes = fields.lines("changes");
        List<String> characteristics =
                fields.names("characteristics", "a list of numbers of characteristics, such as [\"1\", \"4\"]");
        if (kind.isPresent() && kind.get() == Job.Kind.FULL && !characteristics.isEmpty()) {
            fields.refuse(
                    "characteristics",
                    FaultKind.CONTRADICTION,
                    "a full first article covers every characteristic",
                    "a list of some",
                    "the kind partial or delta, or no list");
        }
        fields.finish();
        return kind.map(known -> new FirstArticleReason(known, reason, baseline, changes, characteristics));
    }

    /**
     * Makes sure that the job is about the plan's part, where it names one, and that the plan has every characteristic that a partial
     * first article is said to cover.
     *
     * @throws InputRefused if it names another part, such as that of the other hand, or a characteristic that the plan has not
     */
    public void requireFor(ResolvedPlan plan) {
        requirePart(plan);
        List<String> unknown = job.firstArticle().map(FirstArticleReason::characteristics).orElse(List.of()).stream()
                .filter(number -> plan.find(number).isEmpty())
                .toList();
        if (!unknown.isEmpty()) {
            throw InputRefused.because(Fault.of(
                    FaultKind.UNKNOWN_CHARACTERISTIC,
                    covered.orElseThrow(),
                    "the plan has no such characteristic",
                    unknown.stream().map(Echo::quoted).collect(Collectors.joining(", ")),
                    Words.oneOf(plan.characteristics().stream()
                            .map(each -> each.number())
                            .toList())));
        }
    }

    private void requirePart(ResolvedPlan plan) {
        if (part.isEmpty() || part.get().number().equals(plan.part().number())) {
            return;
        }
        boolean counterpart = plan.part().counterpart().equals(part.map(Claim::number));
        throw InputRefused.because(Fault.of(
                FaultKind.OTHER_PART,
                part.get().where(),
                counterpart
                        ? "the job is about the part of the other hand"
                        : "the job is about another part than the plan",
                Echo.quoted(part.get().number()),
                Echo.quoted(plan.part().number())));
    }

    /** What the job file says. */
    public Job job() {
        return job;
    }

    /** What does not hinder but should be known. */
    public List<Notice> notices() {
        return notices;
    }

    /** The file's name as the user gave it. */
    public String name() {
        return source.name();
    }

    /** The SHA-256 of the file's bytes in hexadecimal. */
    public String sha256() {
        return source.sha256();
    }
}
