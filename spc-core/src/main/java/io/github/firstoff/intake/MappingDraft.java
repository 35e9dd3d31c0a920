package io.github.firstoff.intake;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A mapping proposed from an example, and the table that it would give. The proposal is read back by the reader of mappings and the example
 * is read with it before anybody sees either, so that what is shown is what would be used. It is a proposal: how every name was matched is
 * told, for a person to check.
 */
public final class MappingDraft {
    private static final long LARGEST = 8L << 20;

    private final String text;
    private final Intake intake;
    private final List<Entry> entries;
    private final List<String> unmatchedNames;
    private final List<ResolvedCharacteristic> notFound;
    private final boolean saysPiece;

    private MappingDraft(
            String text,
            Intake intake,
            List<Entry> entries,
            List<String> unmatchedNames,
            List<ResolvedCharacteristic> notFound,
            boolean saysPiece) {
        this.text = text;
        this.intake = intake;
        this.entries = List.copyOf(entries);
        this.unmatchedNames = List.copyOf(unmatchedNames);
        this.notFound = List.copyOf(notFound);
        this.saysPiece = saysPiece;
    }

    /**
     * A line of the table: one reading of the example.
     *
     * @param line its line in the example
     * @param part the piece
     * @param name what the example calls the characteristic
     * @param characteristic the characteristic that is meant
     * @param value the value as it was read, with its unit, or pass or fail
     * @param matchedBy how the name was matched
     */
    public record Entry(
            long line,
            String part,
            String name,
            ResolvedCharacteristic characteristic,
            String value,
            String matchedBy) {}

    /**
     * Proposes a mapping.
     *
     * @param example an export with readings of the plan's part
     * @param plan the plan
     * @return the proposal
     * @throws InputRefused if the example cannot be read as text, or no line of it can be a reading of the plan
     */
    public static MappingDraft of(Input example, ResolvedPlan plan) {
        FaultCollector faults = new FaultCollector();
        byte[] bytes = new byte[0];
        String read = "";
        try (InputBytes opened = new InputBytes(example, LARGEST)) {
            Optional<Fault> noText = OtherFile.readings(
                            example.name(),
                            opened.beginning(),
                            "a machine's text; such a file is read without a mapping")
                    .or(() -> OtherFile.qif(
                            example.name(),
                            opened.beginning(),
                            "a machine's text; such a file is read without a mapping"));
            if (noText.isPresent()) {
                throw InputRefused.because(noText.get());
            }
            bytes = opened.readAllBytes();
            Input again = Input.bytes(example.name(), bytes, relative -> Optional.empty());
            try (InputBytes second = new InputBytes(again, LARGEST)) {
                read = text(TextReader.of(second));
            }
        } catch (TextRefused refused) {
            faults.refuse(refused.fault());
        } catch (IOException failure) {
            faults.refuse(example.unreadable(failure));
        }
        faults.throwIfAny();
        MappingSearch search = new MappingSearch(example.name(), read.lines().toList(), plan);
        String proposal = search.proposal();
        Mapping mapping = Mapping.read(Input.text("mapping.json", proposal));
        Intake intake = ReadingFiles.readInputs(
                plan,
                List.of(Input.bytes(example.name(), bytes, relative -> Optional.empty())),
                IntakeSettings.USUAL.withMapping(mapping));
        return new MappingDraft(
                proposal,
                intake,
                entries(intake, plan, search),
                search.unmatchedNames(),
                plan.characteristics().stream()
                        .filter(each -> intake.parts().stream()
                                .noneMatch(part -> part.readings().containsKey(each.number())))
                        .toList(),
                search.saysPiece());
    }

    private static String text(TextReader reader) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[8192];
        int count = reader.read(buffer, 0, buffer.length);
        while (count >= 0) {
            text.append(buffer, 0, count);
            count = reader.read(buffer, 0, buffer.length);
        }
        return text.toString();
    }

    private static List<Entry> entries(Intake intake, ResolvedPlan plan, MappingSearch search) {
        List<Entry> entries = new ArrayList<>();
        for (PartRecord part : intake.parts()) {
            part.readings()
                    .values()
                    .forEach(list -> list.forEach(reading -> {
                        long line = reading.context().origin().line();
                        String name = search.nameAt(line);
                        entries.add(new Entry(
                                line,
                                part.serial(),
                                name,
                                plan.find(reading.characteristic()).orElseThrow(),
                                value(reading),
                                search.matchedBy(name)));
                    }));
        }
        entries.sort(Comparator.comparingLong(Entry::line));
        return entries;
    }

    private static String value(Reading reading) {
        if (reading instanceof Reading.Measured measured) {
            String symbol = measured.unit().symbol();
            return measured.value().toPlainString() + (symbol.isEmpty() ? "" : " " + symbol);
        }
        return ((Reading.Observed) reading).pass() ? "pass" : "fail";
    }

    /**
     * The mapping file, ready to be written.
     *
     * @return JSON
     */
    public String text() {
        return text;
    }

    /**
     * What came of reading the example with it: counts, refusals, notices.
     *
     * @return the intake
     */
    public Intake intake() {
        return intake;
    }

    /**
     * The table that the example gives, in the order of its lines.
     *
     * @return the readings
     */
    public List<Entry> entries() {
        return entries;
    }

    /**
     * Names in the example for which no characteristic was found; their rows are refused until the mapping says what they are.
     *
     * @return the names
     */
    public List<String> unmatchedNames() {
        return unmatchedNames;
    }

    /**
     * Characteristics of the plan of which the example holds no reading that could be used.
     *
     * @return the characteristics
     */
    public List<ResolvedCharacteristic> notFound() {
        return notFound;
    }

    /**
     * Whether it was found out which piece a row is of.
     *
     * @return false if somebody has to say under {@code part} where the piece stands; every row is refused until then
     */
    public boolean saysPiece() {
        return saysPiece;
    }

    /**
     * Whether every name was matched, every row used and every characteristic found.
     *
     * @return whether nothing is left to be settled by hand
     */
    public boolean isComplete() {
        return unmatchedNames.isEmpty()
                && notFound.isEmpty()
                && intake.refused().isEmpty();
    }

    /** Counts, in a map that keeps their order. */
    static <K> void count(Map<K, Integer> counts, K key) {
        counts.merge(key, 1, Integer::sum);
    }

    static <K> Optional<K> most(Map<K, Integer> counts) {
        K best = null;
        int most = 0;
        for (Map.Entry<K, Integer> each : new LinkedHashMap<>(counts).entrySet()) {
            if (each.getValue() > most) {
                most = each.getValue();
                best = each.getKey();
            }
        }
        return Optional.ofNullable(best);
    }
}
