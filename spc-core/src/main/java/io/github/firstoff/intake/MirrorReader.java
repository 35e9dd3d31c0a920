package io.github.firstoff.intake;

import io.github.firstoff.intake.PlanReader.Outcome;
import io.github.firstoff.plan.Axis;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import java.util.Arrays;
import java.util.Optional;

/**
 * Reads a plan that is the mirror image of its counterpart's: {@code "mirrorOf"}. It says its own part and the axis; all else comes
 * from the other file.
 */
final class MirrorReader {
    static final String OF = "mirrorOf";
    static final String AXIS = "mirrorAxis";

    private final Input input;
    private final FaultCollector faults;

    MirrorReader(Input input, FaultCollector faults) {
        this.input = input;
        this.faults = faults;
    }

    /**
     * What could be read.
     *
     * @param original the counterpart's plan, as far as it can be resolved; its contradictions are this plan's too
     * @param mirrored this plan, if nothing is wrong
     * @param places where everything of the counterpart stands
     * @param source the counterpart's file
     */
    record Mirror(
            Optional<InspectionPlan> original,
            Optional<InspectionPlan> mirrored,
            PlanPlaces places,
            Optional<SourceText> source) {}

    Mirror read(Fields document, PlanPlaces nowhere) {
        SchemaName.check(document, PlanFile.SCHEMA);
        Optional<String> other =
                document.requiredText(OF, "the counterpart's plan file, such as \"hq-310-p.plan.json\"");
        Optional<Axis> axis = document.required(
                AXIS,
                document.word(
                        AXIS,
                        Axis::parse,
                        Arrays.stream(Axis.values()).map(Axis::word).toList()),
                "the axis square to the plane of the mirror: x, y or z");
        for (String key : PlanReader.KEYS) {
            if (document.value(key).isPresent()) {
                document.refuse(
                        key,
                        FaultKind.CONTRADICTION,
                        "a plan that is the mirror image of another takes this from it",
                        "",
                        "no " + Echo.quoted(key) + ", or no \"mirrorOf\"");
            }
        }
        Optional<Fields> partFields =
                document.required("part", document.object("part"), "an object with number, hand and counterpart");
        Optional<PartReader> part = partFields.map(MirrorReader::part);
        document.finish();
        Optional<SourceText> source = other.flatMap(name -> open(document, name));
        if (source.isEmpty()) {
            return new Mirror(Optional.empty(), Optional.empty(), nowhere, source);
        }
        boolean own = faults.isEmpty();
        PlanReader reader = new PlanReader(source.get(), faults);
        Optional<Fields> otherDocument = reader.document();
        if (otherDocument.isEmpty()) {
            return new Mirror(Optional.empty(), Optional.empty(), reader.nowhere(), source);
        }
        if (otherDocument.get().has(OF)) {
            document.refuse(
                    OF,
                    FaultKind.CONTRADICTION,
                    "that plan is itself the mirror image of another",
                    Echo.quoted(other.orElseThrow()),
                    "a plan with characteristics of its own");
            return new Mirror(Optional.empty(), Optional.empty(), reader.nowhere(), source);
        }
        Outcome outcome = reader.read(otherDocument.get());
        Optional<InspectionPlan> original = outcome.readable();
        if (own && original.isPresent()) {
            Optional<PartIdentity> identity = identity(
                    partFields.orElseThrow(), part.orElseThrow(), original.get().part());
            if (faults.isEmpty() && identity.isPresent()) {
                return new Mirror(
                        original,
                        Optional.of(original.get().mirrored(identity.get(), axis.orElseThrow())),
                        outcome.places(),
                        source);
            }
        }
        return new Mirror(original, Optional.empty(), outcome.places(), source);
    }

    private static PartReader part(Fields fields) {
        PartReader part = PartReader.read(fields);
        fields.required("hand", part.hand(), "the hand of this part, such as starboard");
        fields.required("counterpart", part.counterpart(), "the part number of the other hand");
        fields.finish();
        return part;
    }

    private Optional<SourceText> open(Fields document, String name) {
        Optional<Input> beside = input.beside(name);
        if (beside.isEmpty()) {
            document.refuse(
                    OF,
                    FaultKind.UNREADABLE_FILE,
                    "it is looked for in the folder of this plan, which must itself be a file, and by a path that begins there",
                    Echo.quoted(name),
                    "the counterpart's plan file, such as \"hq-310-p.plan.json\"");
            return Optional.empty();
        }
        Input other = beside.get();
        try {
            return Optional.of(SourceText.of(other, PlanFile.LARGEST, OtherFile.Wanted.PLAN));
        } catch (InputRefused refused) {
            for (Fault fault : refused.faults()) {
                if (fault.kind() == FaultKind.UNREADABLE_FILE) {
                    document.refuse(
                            OF,
                            FaultKind.UNREADABLE_FILE,
                            fault.message(),
                            fault.message().isEmpty() ? fault.found() : Echo.quoted(name),
                            "the counterpart's plan file");
                } else {
                    faults.refuse(fault);
                }
            }
            return Optional.empty();
        }
    }

    /** The part as both files tell it; empty where they contradict each other. */
    private Optional<PartIdentity> identity(Fields fields, PartReader own, PartIdentity other) {
        long before = faults.count();
        if (own.counterpart().filter(other.number()::equals).isEmpty()) {
            fields.refuse(
                    "counterpart",
                    FaultKind.CONTRADICTION,
                    "the plan under \"mirrorOf\" is of another part",
                    Echo.quoted(own.counterpart().orElse("")),
                    Echo.quoted(other.number()));
        }
        if (other.counterpart().isPresent() && !other.counterpart().equals(own.number())) {
            fields.refuse(
                    "number",
                    FaultKind.CONTRADICTION,
                    "the plan of " + Echo.plain(other.number()) + " names another counterpart",
                    Echo.quoted(own.number().orElse("")),
                    Echo.quoted(other.counterpart().get()));
        }
        checkHand(fields, own, other);
        boolean sameDrawing = own.drawing().isEmpty() || own.drawing().equals(other.drawing());
        if (sameDrawing
                && own.revision()
                        .filter(stated -> !stated.equals(other.revision()))
                        .isPresent()) {
            fields.refuse(
                    "revision",
                    FaultKind.CONTRADICTION,
                    "the plan of " + Echo.plain(other.number()) + " is of another revision of the same drawing",
                    Echo.quoted(own.revision().get()),
                    Echo.quoted(other.revision()) + ", or nothing");
        }
        if (own.material().isPresent() && !own.material().equals(other.material())) {
            fields.refuse(
                    "material",
                    FaultKind.CONTRADICTION,
                    "the plan of " + Echo.plain(other.number()) + " states another material",
                    Echo.quoted(own.material().get()),
                    other.material().map(Echo::quoted).orElse("nothing") + ", or nothing here");
        }
        if (faults.count() > before) {
            return Optional.empty();
        }
        return Optional.of(new PartIdentity(
                own.number().orElseThrow(),
                own.name(),
                own.drawing().or(other::drawing),
                own.revision().orElse(other.revision()),
                own.hand(),
                own.counterpart(),
                other.material()));
    }

    private static void checkHand(Fields fields, PartReader own, PartIdentity other) {
        Hand hand = own.hand().orElseThrow();
        if (other.hand().isEmpty()) {
            fields.refuse(
                    "hand",
                    FaultKind.CONTRADICTION,
                    "the plan of " + Echo.plain(other.number()) + " states no hand, so it has no mirror image",
                    Echo.quoted(hand.word()),
                    "\"hand\": \"" + hand.opposite().word() + "\" in that plan");
        } else if (other.hand().get().opposite() != hand) {
            fields.refuse(
                    "hand",
                    FaultKind.CONTRADICTION,
                    "the plan of " + Echo.plain(other.number()) + " is for "
                            + other.hand().get().word(),
                    Echo.quoted(hand.word()),
                    Echo.quoted(other.hand().get().opposite().word()));
        }
    }
}
