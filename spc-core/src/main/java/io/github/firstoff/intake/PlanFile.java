package io.github.firstoff.intake;

import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.util.List;

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
    private final InspectionPlan plan;
    private final PlanPlaces places;
    private final List<Notice> notices;

    private PlanFile(SourceText source, InspectionPlan plan, PlanPlaces places, List<Notice> notices) {
        this.source = source;
        this.plan = plan;
        this.places = places;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads a plan file.
     *
     * @throws InputRefused with every fault of the file
     */
    public static PlanFile read(Path path) {
        return read(Input.file(path));
    }

    /**
     * Reads a plan.
     *
     * @throws InputRefused with every fault of the input
     */
    public static PlanFile read(Input input) {
        SourceText source = SourceText.of(input, LARGEST);
        FaultCollector faults = new FaultCollector();
        PlanReader reader = new PlanReader(source, faults);
        PlanReader.Outcome outcome = reader.read();
        if (!faults.isEmpty()) {
            outcome.readable().ifPresent(part -> collectContradictions(part, outcome.places(), faults));
        }
        faults.inFileOrder().throwIfAny();
        InspectionPlan plan = outcome.readable()
                .orElseThrow(() -> new IllegalStateException("a plan without a fault was not read: " + source.name()));
        return new PlanFile(source, plan, outcome.places(), faults.notices());
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
            return plan.resolve();
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

    /** The SHA-256 of the file's bytes in hexadecimal. */
    public String sha256() {
        return source.sha256();
    }
}
