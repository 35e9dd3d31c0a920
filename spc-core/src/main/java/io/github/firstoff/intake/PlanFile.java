package io.github.firstoff.intake;

import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A plan file as it was read: the plan, and the places of everything in it, so that what only shows when the plan is resolved can
 * still be found in the file.
 *
 * <p>The format is {@code firstoff-plan-1}; see {@code docs/inputs.md} and {@code docs/schemas/plan.schema.json}.
 */
public final class PlanFile {
    /** The schema's name in plan files. */
    public static final String SCHEMA = "firstoff-plan-1";

    static final long LARGEST = 8L * 1024 * 1024;

    private final SourceText source;
    private final Optional<SourceText> counterpart;
    private final InspectionPlan written;
    private final InspectionPlan plan;
    private final PlanPlaces places;
    private final List<Notice> notices;

    /**
     * A plan file that was read.
     *
     * @param written the plan whose requirements stand in a file as they are: that of the counterpart, for a mirror image
     */
    private PlanFile(
            SourceText source,
            Optional<SourceText> counterpart,
            InspectionPlan written,
            InspectionPlan plan,
            PlanPlaces places,
            List<Notice> notices) {
        this.source = source;
        this.counterpart = counterpart;
        this.written = written;
        this.plan = plan;
        this.places = places;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads a plan file. One that is the mirror image of its counterpart's ({@code "mirrorOf"}) reads that file too.
     *
     * @throws InputRefused with every fault of the file, and of the counterpart's
     */
    public static PlanFile read(Path path) {
        return read(Input.file(path));
    }

    /**
     * Reads a plan. Only a plan that is a file can name another as its mirror image.
     *
     * @throws InputRefused with every fault of the input
     */
    public static PlanFile read(Input input) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.PLAN);
        FaultCollector faults = new FaultCollector();
        PlanReader reader = new PlanReader(source, faults);
        Optional<Fields> document = reader.document();
        MirrorReader.Mirror read;
        if (document.isEmpty()) {
            read = new MirrorReader.Mirror(Optional.empty(), Optional.empty(), reader.nowhere(), Optional.empty());
        } else if (document.get().value(MirrorReader.OF).isPresent()) {
            read = new MirrorReader(input, faults).read(document.get(), reader.nowhere());
        } else {
            PlanReader.Outcome alone = reader.read(document.get());
            read = new MirrorReader.Mirror(alone.readable(), alone.readable(), alone.places(), Optional.empty());
        }
        if (!faults.isEmpty()) {
            read.original().ifPresent(part -> collectContradictions(part, read.places(), faults));
        }
        faults.inFileOrder().throwIfAny();
        return new PlanFile(
                source, read.source(), sound(read.original()), sound(read.mirrored()), read.places(), faults.notices());
    }

    private static InspectionPlan sound(Optional<InspectionPlan> plan) {
        return plan.orElseThrow(() -> new IllegalStateException("a plan without a fault was not read"));
    }

    /** What the plan says. */
    public InspectionPlan plan() {
        return plan;
    }

    /**
     * The plan with the limits of every requirement.
     *
     * @throws InputRefused with every contradiction in the plan and its place in the file
     */
    public ResolvedPlan resolve() {
        try {
            ResolvedPlan resolved = written.resolve();
            return counterpart.isEmpty() ? resolved : plan.resolve();
        } catch (PlanContradiction contradiction) {
            throw refusal(contradiction.faults());
        }
    }

    /** The refusal of this plan for these faults, each with its place in the file. */
    public InputRefused refusal(List<PlanFault> planFaults) {
        FaultCollector faults = new FaultCollector();
        for (PlanFault fault : planFaults) {
            faults.refuse(places.locate(fault));
        }
        return new InputRefused(faults.inFileOrder().refusals());
    }

    /** Resolves the part of a faulty plan that could be read, so that its faults come to light in the same run. */
    private static void collectContradictions(InspectionPlan part, PlanPlaces places, FaultCollector faults) {
        try {
            part.resolve();
        } catch (PlanContradiction contradiction) {
            for (PlanFault fault : contradiction.faults()) {
                faults.refuse(places.locate(fault));
            }
        }
    }

    /** What does not hinder but should be known. */
    public List<Notice> notices() {
        return notices;
    }

    /** The file's name as the user gave it. */
    public String name() {
        return source.name();
    }

    /** The name of the counterpart's plan file, where this plan is its mirror image. */
    public Optional<String> counterpart() {
        return counterpart.map(SourceText::name);
    }

    /**
     * The SHA-256 of the file's bytes in hexadecimal. Of a mirror image, the SHA-256 of two such digests, this file's and its
     * counterpart's, each with a line feed behind it, so that it covers both.
     */
    public String sha256() {
        return counterpart
                .map(other -> InputBytes.sha256Of(source.sha256() + "\n" + other.sha256() + "\n"))
                .orElse(source.sha256());
    }
}
