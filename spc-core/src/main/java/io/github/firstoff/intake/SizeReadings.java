package io.github.firstoff.intake;

import io.github.firstoff.assembly.Piece;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.RequirementNotation;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The sizes of one feature from a file of readings, which may hold any number of other characteristics. Where nobody says which one it
 * is, the file must hold only one.
 *
 * @param pieces the pieces in the order of production, sizes in millimetres
 * @param characteristic the characteristic that was taken
 * @param hand the hand that the readings state
 * @param notices what does not hinder but should be known
 * @param file the file
 */
record SizeReadings(
        List<Piece> pieces, String characteristic, Optional<Hand> hand, List<Notice> notices, Intake.ReadFile file) {
    /** No characteristic is called that: a control character cannot be a name. */
    private static final String NOBODY = "\u0000";

    private static final int FEWEST = 2;

    SizeReadings {
        pieces = List.copyOf(pieces);
        notices = List.copyOf(notices);
    }

    /**
     * What is asked of a file.
     *
     * @param nominal the nominal size, in millimetres
     * @param part the part number, if it is stated
     * @param hand the hand, if it is stated
     * @param characteristic the characteristic, if it is stated
     * @param member what messages call the part: {@code outer} or {@code inner}
     */
    record Question(
            BigDecimal nominal,
            Optional<String> part,
            Optional<Hand> hand,
            Optional<String> characteristic,
            String member) {}

    /**
     * Reads a file.
     *
     * @param input it; opened twice where nobody says which characteristic is meant
     * @param settings what the user says of how it is read
     * @throws InputRefused with every fault of the file, or if it holds fewer than two sizes
     */
    static SizeReadings read(Question question, Input input, IntakeSettings settings) {
        String characteristic = question.characteristic().orElseGet(() -> only(question, input, settings));
        Leeway leeway = new Leeway();
        Intake intake =
                ReadingFiles.readInputs(plan(question, characteristic), List.of(input), settings, Optional.of(leeway));
        boolean none = intake.parts().isEmpty() && !leeway.others().isEmpty();
        if (none && intake.refused().faults().stream().allMatch(fault -> fault.kind() == FaultKind.EMPTY)) {
            throw InputRefused.because(Fault.of(
                    FaultKind.UNKNOWN_CHARACTERISTIC,
                    Where.inFile(input.name()),
                    "no reading is of the characteristic that the assembly names for the " + question.member()
                            + " part",
                    "readings of " + named(leeway.others()),
                    Echo.quoted(characteristic)));
        }
        List<PartRecord> parts = intake.recordOrRefuse().parts();
        List<Piece> pieces = new ArrayList<>();
        for (PartRecord part : parts) {
            part.sizeOf(characteristic)
                    .ifPresent(size ->
                            pieces.add(new Piece(part.serial(), size.unit().convert(size.value(), Unit.MILLIMETRE))));
        }
        if (pieces.size() < FEWEST) {
            long line = parts.stream()
                    .flatMap(part -> part.of(characteristic).stream())
                    .mapToLong(reading -> origin(reading).line())
                    .findFirst()
                    .orElse(0);
            throw InputRefused.because(Fault.of(
                    FaultKind.EMPTY,
                    new Where(input.name(), line, 0, ""),
                    "one size says nothing of how sizes are spread",
                    "a sample of " + pieces.size(),
                    "readings of at least two pieces, or no file and a \"requirement\" in the assembly"));
        }
        return new SizeReadings(
                pieces,
                characteristic,
                leeway.hand(),
                intake.notices(),
                intake.files().get(0));
    }

    private static Reading.Origin origin(Reading reading) {
        return reading.context().origin();
    }

    /** The one characteristic of the file; where there is none, any name will bring its faults to light. */
    private static String only(Question question, Input input, IntakeSettings settings) {
        Leeway leeway = new Leeway();
        ReadingFiles.readInputs(plan(question, NOBODY), List.of(input), settings, Optional.of(leeway));
        Set<String> others = leeway.others();
        if (others.size() > 1) {
            throw InputRefused.because(Fault.of(
                    FaultKind.MISSING,
                    Where.inFile(input.name()),
                    "the file holds several characteristics, and the assembly does not say which of them is the size of the "
                            + question.member() + " part",
                    named(others),
                    "\"characteristic\" in \"" + question.member() + "\" of the assembly"));
        }
        return others.stream().findFirst().orElse("1");
    }

    private static String named(Set<String> numbers) {
        return Words.oneOf(numbers.stream().sorted().map(Echo::quoted).toList()).replace(" or ", " and ");
    }

    private static ResolvedPlan plan(Question question, String characteristic) {
        // A reference dimension: taken as read, judged by nothing.
        String printed = "(" + question.nominal().toPlainString() + ")";
        return new InspectionPlan(
                        new PartIdentity(
                                question.part().orElse(""),
                                Optional.empty(),
                                Optional.empty(),
                                "",
                                question.hand(),
                                Optional.empty(),
                                Optional.empty()),
                        Unit.MILLIMETRE,
                        Optional.empty(),
                        DecisionChoice.SIMPLE,
                        Optional.empty(),
                        Map.of(),
                        List.of(),
                        List.of(new Characteristic(
                                characteristic,
                                "size at the joint",
                                RequirementNotation.parse(printed),
                                printed,
                                Importance.MINOR,
                                Optional.empty(),
                                Optional.empty(),
                                Characteristic.Options.NONE)))
                .resolve();
    }
}
