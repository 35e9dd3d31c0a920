package io.github.firstoff.intake;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.KeyedEvent.Kind;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.tolerance.CountedRequirement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** How the readings file of a session is laid out for a plan, and what its rows say. */
final class KeyedLayout {
    private KeyedLayout() {}

    /** A kept reading with the piece it was taken on. */
    record Taken(String part, Reading reading) {}

    /** Texts of the plan go to the file as they are, since readings are found by them; none may be a formula to a spreadsheet. */
    static void requireHarmless(ResolvedPlan plan) {
        Stream<String> ofPlan = Stream.concat(
                Stream.of(plan.part().number(), plan.part().revision()),
                plan.plan().gauges().stream().map(gauge -> gauge.id()));
        Stream<String> ofCharacteristics = plan.characteristics().stream()
                .flatMap(each ->
                        Stream.concat(Stream.of(each.number()), each.characteristic().options().settings().stream()));
        Stream.concat(ofPlan, ofCharacteristics)
                .filter(KeyedRow::isFormula)
                .findFirst()
                .ifPresent(text -> {
                    throw InputRefused.because(Fault.of(
                            FaultKind.UNREADABLE_TEXT,
                            Where.inFile("the plan"),
                            "a spreadsheet that opens the readings would take this for a formula",
                            Echo.quoted(text),
                            "a text that begins with a letter or a figure"));
                });
    }

    static KeyedEvent begin(ResolvedPlan plan, String planHash) {
        return KeyedEvent.of(
                Kind.BEGIN,
                KeyedState.VERSION,
                planHash,
                plan.part().number(),
                plan.part().revision(),
                heading(plan),
                KeyedOrder.PIECE.word());
    }

    /** The columns that readings of this plan can need, and the part and revision so that no other plan takes the file. */
    static String heading(ResolvedPlan plan) {
        List<ReadingColumn> columns =
                new ArrayList<>(List.of(ReadingColumn.PART, ReadingColumn.CHARACTERISTIC, ReadingColumn.VALUE));
        int axes = plan.characteristics().stream()
                .mapToInt(each -> InspectionPlan.axesOf(each.characteristic().requirement()))
                .max()
                .orElse(0);
        columns.addAll(ValueCheck.AXES.subList(0, axes));
        columns.add(ReadingColumn.UNIT);
        boolean settings = plan.characteristics().stream()
                .anyMatch(each -> !each.characteristic().options().settings().isEmpty());
        if (settings) {
            columns.add(ReadingColumn.SETTING);
        }
        if (plan.plan().thermal().isPresent()) {
            columns.add(ReadingColumn.TEMPERATURE);
        }
        if (plan.characteristics().stream().anyMatch(KeyedLayout::isCounted)) {
            columns.add(ReadingColumn.SIZE);
        }
        columns.addAll(List.of(
                ReadingColumn.GAUGE,
                ReadingColumn.OPERATOR,
                ReadingColumn.TIME,
                ReadingColumn.NOTE,
                ReadingColumn.PART_NUMBER,
                ReadingColumn.REVISION));
        return String.join(",", columns.stream().map(ReadingColumn::word).toList());
    }

    static boolean isCounted(ResolvedCharacteristic characteristic) {
        return characteristic.characteristic().requirement() instanceof CountedRequirement;
    }

    static InputRefused notOurs(String name, String why) {
        return InputRefused.because(Fault.of(
                FaultKind.CONTRADICTION,
                Where.inFile(name),
                "the file exists and is no readings file of measuring against this plan (" + why + ")",
                "",
                "a new file, or one that this command has begun"));
    }

    /** The readings in the order of their rows, one for each. */
    static List<Taken> readingsOf(ResolvedPlan plan, String name, String text, int rows) {
        Intake intake = ReadingFiles.readInputs(
                plan, List.of(Input.text(name, text)), IntakeSettings.USUAL.withDecimalMark(DecimalMark.POINT));
        Map<Long, Taken> byLine = new HashMap<>();
        for (PartRecord part : intake.recordOrRefuse().parts()) {
            part.readings()
                    .values()
                    .forEach(list -> list.forEach(reading ->
                            byLine.put(reading.context().origin().line(), new Taken(part.serial(), reading))));
        }
        List<Taken> inOrder = new ArrayList<>();
        for (long line = 2; line < rows + 2L; line++) {
            Taken found = byLine.get(line);
            if (found == null) {
                throw InputRefused.because(Fault.of(
                        FaultKind.BLANK, new Where(name, line, 0, ""), "", "a line without a reading", "a reading"));
            }
            inOrder.add(found);
        }
        return inOrder;
    }
}
