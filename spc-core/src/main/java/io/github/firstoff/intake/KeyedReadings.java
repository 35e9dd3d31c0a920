package io.github.firstoff.intake;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.KeyedEvent.Kind;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Requirement.Nature;
import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Readings that a person or a gauge keys one after the other: what is to be measured next, what was keyed held against the plan, and
 * everything that was kept on the disk before the next is asked for.
 *
 * <p>The readings go to a long CSV file that every command reads, one row after the other, and what was decided goes to a journal
 * beside it ({@code .journal}). When a method that decides something has returned, it is on the disk; opened again after a crash, the
 * session stands exactly where it stood. Nothing here speaks to a person or knows the time.
 *
 * <p>Only one session at a time can have a file open. Not for several threads.
 */
public final class KeyedReadings implements Closeable {
    /** No more readings than this can close what is measured repeatedly. */
    public static final int MOST_REPEATS = 999_999_999;

    private static final String CONFIRMED = "confirmed at entry";

    private final ResolvedPlan plan;
    private final String planHash;
    private final String name;
    private final KeyedFiles files;
    private final boolean resumed;
    private boolean adopted;
    private final List<String> repairs;
    private final List<KeyedLayout.Taken> taken = new ArrayList<>();

    private KeyedReadings(
            ResolvedPlan plan, String planHash, String name, KeyedFiles files, boolean resumed, List<String> repairs) {
        this.plan = plan;
        this.planHash = planHash;
        this.name = name;
        this.files = files;
        this.resumed = resumed;
        this.repairs = repairs;
    }

    /**
     * Opens a session: begins it, or goes on with what the file and its journal hold. A readings file of this layout without a journal
     * is taken as it stands.
     *
     * @param plan the plan with its limits
     * @param planHash the SHA-256 of the plan's file
     * @param csv the readings file
     * @throws InputRefused if the file holds something else, was changed by hand, or is of another part
     * @throws IOException if a file cannot be opened or written, or another session has it open
     */
    public static KeyedReadings open(ResolvedPlan plan, String planHash, Path csv) throws IOException {
        KeyedLayout.requireHarmless(plan);
        return openReal(plan, planHash, Files.isSymbolicLink(csv) ? target(csv) : csv);
    }

    /** A session lies beside the file itself, by whatever link it is named. */
    private static Path target(Path link) throws IOException {
        if (!Files.exists(link)) {
            throw new KeyedFault(link + " is a link to a file that is not there");
        }
        return link.toRealPath();
    }

    private static KeyedReadings openReal(ResolvedPlan plan, String planHash, Path csv) throws IOException {
        requireFile(csv);
        Path journal = csv.resolveSibling(csv.getFileName() + ".journal");
        requireFile(journal);
        List<String> repairs = new ArrayList<>();
        boolean adopted = !Files.exists(journal) && Files.exists(csv) && Files.size(csv) > 0;
        if (adopted) {
            KeyedAdoption.adopt(plan, planHash, csv, journal, repairs);
        }
        DurableFile journalFile = DurableFile.OnDisk.locked(journal);
        DurableFile csvFile;
        try {
            // Another name of the same file would have a journal, and a lock, of its own.
            csvFile = DurableFile.OnDisk.lockedForWriting(csv);
        } catch (IOException failure) {
            journalFile.close();
            throw failure;
        }
        KeyedReadings session = open(plan, planHash, csv.toString(), journalFile, csvFile, repairs);
        session.adopted = adopted;
        return session;
    }

    static KeyedReadings open(
            ResolvedPlan plan,
            String planHash,
            String name,
            DurableFile journal,
            DurableFile csv,
            List<String> earlierRepairs)
            throws IOException {
        KeyedFiles files = new KeyedFiles(name, journal, csv);
        try {
            if (files.open().isPresent()) {
                throw KeyedLayout.notOurs(name, "the journal beside it is empty");
            }
            boolean resumed = files.state().hasBegun();
            if (!resumed) {
                files.add(KeyedLayout.begin(plan, planHash));
            }
            List<String> repairs = new ArrayList<>(earlierRepairs);
            repairs.addAll(files.repairs());
            KeyedReadings session = new KeyedReadings(plan, planHash, name, files, resumed, repairs);
            session.requireSamePart();
            session.readKept();
            return session;
        } catch (IOException | RuntimeException failure) {
            try {
                files.close();
            } catch (IOException second) {
                failure.addSuppressed(second);
            }
            throw failure;
        }
    }

    private static void requireFile(Path path) throws IOException {
        if (Files.exists(path) && !Files.isRegularFile(path)) {
            throw new KeyedFault(path + " is a folder or a device; name a file");
        }
    }

    private void requireSamePart() {
        KeyedState state = files.state();
        boolean same = state.partNumber().equals(plan.part().number())
                && state.revision().equals(plan.part().revision());
        if (!same) {
            boolean otherHand =
                    plan.part().counterpart().filter(state.partNumber()::equals).isPresent();
            throw InputRefused.because(Fault.of(
                    FaultKind.OTHER_PART,
                    Where.inFile(name),
                    otherHand
                            ? "the file was begun for the part of the other hand"
                            : "the file was begun for another part or revision",
                    Echo.quoted(state.partNumber()) + " revision " + Echo.quoted(state.revision()),
                    Echo.quoted(plan.part().number()) + " revision "
                            + Echo.quoted(plan.part().revision())));
        }
        if (!state.heading().equals(KeyedLayout.heading(plan))) {
            throw InputRefused.because(Fault.of(
                    FaultKind.CONTRADICTION,
                    Where.inFile(name),
                    "the plan was changed since the file was begun, and its readings need other columns now",
                    state.heading(),
                    KeyedLayout.heading(plan) + " in a new file"));
        }
    }

    /** Makes the kept rows readings again, by the same way as any command that reads the file. */
    private void readKept() {
        int rows = files.state().rows().size();
        if (rows > 0) {
            taken.addAll(
                    KeyedLayout.readingsOf(plan, name, new String(files.state().file(), StandardCharsets.UTF_8), rows));
        }
    }

    // ---- where the session stands

    /** The plan. */
    public ResolvedPlan plan() {
        return plan;
    }

    /** The readings file as it was named. */
    public String name() {
        return name;
    }

    /** Whether the session was begun earlier. */
    public boolean isResumed() {
        return resumed;
    }

    /** Whether a readings file without a journal was taken just now: its readings are there, and nothing else was decided. */
    public boolean isAdopted() {
        return adopted;
    }

    /** What was found and mended when the files were opened, in sentences. */
    public List<String> repairs() {
        return List.copyOf(repairs);
    }

    /** Whether the plan's file is another one than the readings were begun with; {@link #takePlan()} goes on with it. */
    public boolean isPlanChanged() {
        return !files.state().plan().equals(planHash);
    }

    /** The order in which is asked. */
    public KeyedOrder order() {
        return files.state().order();
    }

    /** The pieces in the order in which they were named. */
    public List<String> pieces() {
        return files.state().pieces();
    }

    /** Whether there are no more pieces to name. */
    public boolean isClosed() {
        return files.state().isClosed();
    }

    /** How many readings are kept. */
    public int count() {
        return taken.size();
    }

    /** The remark that will go with the next reading; empty text for none. */
    public String remark() {
        return files.state().remark();
    }

    /** The temperature that goes with readings of lengths, in degrees Celsius; empty text for none. */
    public String temperature() {
        return files.state().temperature();
    }

    /** How many readings close what is measured repeatedly; 0 if only the person decides. */
    public int repeats() {
        return files.state().repeats();
    }

    /** The decimal mark of what is keyed; the file has the point whatever it is. */
    public DecimalMark decimalMark() {
        return files.state().mark();
    }

    /** The gauge that a reading of the characteristic will name: the one chosen, or else the plan's if the plan lists it. */
    public Optional<String> gaugeFor(ResolvedCharacteristic characteristic) {
        return files.state()
                .gauge(characteristic.number())
                .or(() -> characteristic
                        .characteristic()
                        .gauge()
                        .filter(id -> plan.gauge(id).isPresent()));
    }

    /** The piece with everything that was kept of it; without readings if there is nothing. */
    public PartRecord piece(String part) {
        return new PartRecord(
                part,
                taken.stream()
                        .filter(each -> each.part().equals(part))
                        .map(KeyedLayout.Taken::reading)
                        .toList());
    }

    /** Everything that was kept, with a piece for each that was named. */
    public InspectionRecord record() {
        return new InspectionRecord(plan, pieces().stream().map(this::piece).toList());
    }

    /** The readings of one characteristic in the order in which they were kept, with their pieces. */
    public List<Map.Entry<PartRecord, Reading>> of(String characteristic) {
        return taken.stream()
                .filter(each -> each.reading().characteristic().equals(characteristic))
                .map(each -> Map.entry(piece(each.part()), each.reading()))
                .toList();
    }

    /** What is to be measured next; empty if everything named was measured or passed over. */
    public Optional<KeyedTask> next() {
        return open(false).findFirst();
    }

    /** Everything that is still to be measured, in order, without what was skipped. */
    public List<KeyedTask> open() {
        return open(false).toList();
    }

    /** What was skipped and is still to be measured. */
    public List<KeyedTask> skipped() {
        return open(true).toList();
    }

    private Stream<KeyedTask> open(boolean skipped) {
        int repeats = repeats();
        Map<KeyedSubject, Integer> kept = new HashMap<>();
        Set<KeyedSubject> skips = new HashSet<>();
        Set<KeyedSubject> done = new HashSet<>();
        for (KeyedState.Act act : files.state().acts()) {
            if (act instanceof KeyedState.Passed passed) {
                (passed.skipped() ? skips : done).add(passed.subject());
            } else if (act instanceof KeyedState.Kept taking) {
                kept.merge(taking.subject(), 1, Integer::sum);
            }
        }
        return subjects()
                .filter(task -> {
                    int count = kept.getOrDefault(task.subject(), 0);
                    boolean enough = task.isRepeated() ? repeats > 0 && count >= repeats : count > 0;
                    return !enough && !done.contains(task.subject()) && skips.contains(task.subject()) == skipped;
                })
                .map(task -> new KeyedTask(
                        task.part(), task.characteristic(), task.setting(), kept.getOrDefault(task.subject(), 0) + 1));
    }

    private Stream<KeyedTask> subjects() {
        List<String> pieces = pieces();
        // What is theoretically exact is not measured by itself.
        List<ResolvedCharacteristic> measured = plan.characteristics().stream()
                .filter(each -> each.characteristic().requirement().nature() != Nature.EXACT)
                .toList();
        return order() == KeyedOrder.PIECE
                ? pieces.stream().flatMap(piece -> measured.stream().flatMap(each -> tasks(piece, each)))
                : measured.stream().flatMap(each -> pieces.stream().flatMap(piece -> tasks(piece, each)));
    }

    private static Stream<KeyedTask> tasks(String piece, ResolvedCharacteristic characteristic) {
        List<String> settings = characteristic.characteristic().options().settings();
        return settings.isEmpty()
                ? Stream.of(new KeyedTask(piece, characteristic, Optional.empty(), 1))
                : settings.stream().map(setting -> new KeyedTask(piece, characteristic, Optional.of(setting), 1));
    }

    // ---- what is keyed

    /**
     * Holds what was keyed against the plan, by the rules for files. Two things are understood here that a file must write otherwise: a
     * unit behind a number, and the decimal mark of the session; the other mark is in doubt.
     *
     * @param task what it is of
     * @param typed a value, or the places along the axes
     * @param around what goes with it
     */
    public KeyedEntry check(KeyedTask task, List<String> typed, KeyedCircumstances around) {
        KeyedRow row = new KeyedRow();
        row.set(ReadingColumn.PART, task.part());
        row.set(ReadingColumn.CHARACTERISTIC, task.characteristic().number());
        row.set(ReadingColumn.SETTING, task.setting().orElse(""));
        row.set(ReadingColumn.GAUGE, gaugeFor(task.characteristic()).orElse(""));
        row.set(ReadingColumn.OPERATOR, around.operator().orElse(""));
        row.set(ReadingColumn.TIME, around.time().toString());
        row.set(ReadingColumn.NOTE, note(around.confirmed()));
        row.set(ReadingColumn.PART_NUMBER, plan.part().number());
        row.set(ReadingColumn.REVISION, plan.part().revision());
        boolean length = task.characteristic().unit().kind() == Unit.Kind.LENGTH;
        if (plan.plan().thermal().isPresent() && length) {
            row.set(ReadingColumn.TEMPERATURE, temperature());
        }
        if (KeyedLayout.isCounted(task.characteristic())) {
            row.set(ReadingColumn.SIZE, size());
        }
        List<ReadingColumn> columns = typed.size() == 1 ? List.of(ReadingColumn.VALUE) : ValueCheck.AXES;
        Set<Optional<Unit>> units = new HashSet<>();
        for (int i = 0; i < Math.min(typed.size(), columns.size()); i++) {
            if (task.characteristic().isAttribute()) {
                row.set(columns.get(i), typed.get(i));
                continue;
            }
            KeyedNumber number = KeyedNumber.of(typed.get(i), decimalMark() == DecimalMark.COMMA);
            if (number.noUnit().isPresent()) {
                return new KeyedEntry.Refused(List.of(Fault.of(
                        FaultKind.WRONG_UNIT,
                        row.where(ReadingColumn.UNIT),
                        Echo.quoted(number.noUnit().get()) + " behind the number is no unit that is known here",
                        "",
                        task.characteristic().unit().kind() == Unit.Kind.ANGLE
                                ? "degree, arc-minute or arc-second, or the number alone"
                                : "mm, inch or µm, or the number alone")));
            }
            if (number.doubt().isPresent()) {
                return number.doubt().get();
            }
            row.set(columns.get(i), number.text());
            number.unit().ifPresent(unit -> row.set(ReadingColumn.UNIT, unit.word()));
            units.add(number.unit());
        }
        if (units.size() > 1) {
            return new KeyedEntry.Refused(List.of(Fault.of(
                    FaultKind.WRONG_UNIT,
                    row.where(ReadingColumn.UNIT),
                    "the places along the axes are in different units, or only some state one",
                    "",
                    "one unit for all of them")));
        }
        return checked(task, row);
    }

    private String note(boolean confirmed) {
        if (!confirmed) {
            return remark();
        }
        return remark().isEmpty() ? CONFIRMED : remark() + "; " + CONFIRMED;
    }

    private KeyedEntry checked(KeyedTask task, KeyedRow row) {
        Caught caught = Caught.of(plan, row, task.characteristic());
        if (caught.readings().isEmpty() || !caught.faults().isEmpty()) {
            return new KeyedEntry.Refused(caught.faults());
        }
        Reading reading = caught.readings().get(0);
        if (reading instanceof Reading.Measured measured
                && row.text(ReadingColumn.UNIT).isEmpty()) {
            // A degree with minutes carries its units itself; everything else states its unit, so that the file speaks
            // for itself.
            boolean sexagesimal = measured.unit().kind() == Unit.Kind.ANGLE && measured.unit() != Unit.DEGREE;
            if (!sexagesimal && measured.offsets().isEmpty()) {
                row.set(ReadingColumn.UNIT, measured.unit().word());
            }
        }
        return new KeyedEntry.Sound(
                task, reading, caught.notices(), row.csv(files.state().heading()));
    }

    /** What came of one row by the rules for files. */
    private record Caught(List<Reading> readings, List<Fault> faults, List<String> notices) {

        static Caught of(ResolvedPlan plan, KeyedRow row, ResolvedCharacteristic characteristic) {
            List<Reading> readings = new ArrayList<>();
            FaultCollector faults = new FaultCollector();
            Rows rows = new Rows(
                    faults,
                    IntakeSettings.USUAL,
                    (ofRow, places) -> null,
                    block -> block.readings().forEach(each -> readings.add(each.reading())));
            RowCheck check = new RowCheck(plan, rows, new QifLibrary(List.of()));
            check.begin("keyed");
            rows.beginFile("keyed");
            rows.begin(row);
            Optional<RowCheck.Head> head = check.head(row);
            if (check.values().hasOneReading(row) && head.isPresent()) {
                check.values().ofRow(head.get(), characteristic, row);
            }
            rows.end();
            rows.endFile();
            return new Caught(
                    readings,
                    faults.refusals().faults(),
                    faults.notices().stream().map(Notice::message).toList());
        }
    }

    // ---- what is decided; on the disk when the method returns

    /**
     * Keeps a reading.
     *
     * @throws IllegalArgumentException if it is not of what {@link #next()} asks for
     */
    public void keep(KeyedEntry.Sound entry) throws IOException {
        KeyedTask task = entry.task();
        if (next().filter(task::equals).isEmpty()) {
            throw new IllegalArgumentException("this reading is not of what is to be measured next");
        }
        files.add(KeyedEvent.of(
                Kind.READING,
                task.part(),
                task.characteristic().number(),
                task.setting().orElse(""),
                entry.row()));
        taken.add(new KeyedLayout.Taken(task.part(), entry.reading()));
    }

    /** Leaves what is to be measured next unmeasured for now; {@link #again()} comes back to it. */
    public void skip() throws IOException {
        pass(Kind.SKIP);
    }

    /** Ends what is measured repeatedly on this piece. */
    public void enough() throws IOException {
        pass(Kind.NEXT);
    }

    private void pass(Kind kind) throws IOException {
        KeyedSubject subject = next().orElseThrow(() -> new IllegalStateException("there is nothing to pass over"))
                .subject();
        files.add(KeyedEvent.of(kind, subject.part(), subject.characteristic(), subject.setting()));
    }

    /** Whether there is something to undo. */
    public boolean canUndo() {
        return !files.state().acts().isEmpty();
    }

    /**
     * Takes the last step back: a reading, a skip, or a piece that was named. The journal keeps what was taken back, the readings file
     * does not.
     *
     * @throws IllegalStateException if there is nothing to undo
     */
    public TakenBack undo() throws IOException {
        List<KeyedState.Act> acts = files.state().acts();
        if (acts.isEmpty()) {
            throw new IllegalStateException("there is nothing to undo");
        }
        KeyedState.Act last = acts.get(acts.size() - 1);
        files.add(KeyedEvent.of(Kind.UNDO));
        if (last instanceof KeyedState.Kept) {
            KeyedLayout.Taken back = taken.remove(taken.size() - 1);
            return new TakenBack(Optional.of(back.part()), Optional.of(back.reading()));
        }
        return new TakenBack(
                last instanceof KeyedState.Named named ? Optional.of(named.part()) : Optional.empty(),
                Optional.empty());
    }

    /**
     * What was taken back.
     *
     * @param part the piece of the reading, or the piece whose name it was; empty for a skip
     * @param reading the reading; empty for a skip and for a name
     */
    public record TakenBack(Optional<String> part, Optional<Reading> reading) {}

    /** Comes back to everything that was skipped. */
    public void again() throws IOException {
        files.add(KeyedEvent.of(Kind.AGAIN));
    }

    /** Names a piece. It must have been looked at with {@link #refusalOfPiece(String)}. */
    public void addPiece(String part) throws IOException {
        files.add(KeyedEvent.of(Kind.PIECE, part.strip()));
    }

    /** Why this cannot be the name of another piece; empty if it can. */
    public Optional<String> refusalOfPiece(String part) {
        if (pieces().contains(part.strip())) {
            return Optional.of("there is a piece " + Echo.quoted(part.strip()) + " already");
        }
        return KeyedNames.refusalOfPiece(part);
    }

    /** Names a piece that is known beforehand, so that undo does not take its name back. */
    public void givePiece(String part) throws IOException {
        files.add(KeyedEvent.of(Kind.GIVEN, part.strip()));
    }

    /** There are no more pieces to name. */
    public void closePieces() throws IOException {
        files.add(KeyedEvent.of(Kind.CLOSED));
    }

    /** Asks in another order from now on. */
    public void setOrder(KeyedOrder order) throws IOException {
        if (order != order()) {
            files.add(KeyedEvent.of(Kind.ORDER, order.word()));
        }
    }

    /**
     * Lets so many readings close what is measured repeatedly.
     *
     * @param times 0 if only the person decides
     * @throws IllegalArgumentException if it is negative or has more than nine digits
     */
    public void setRepeats(int times) throws IOException {
        if (times < 0 || times > MOST_REPEATS) {
            throw new IllegalArgumentException("repeats must be from 0 to " + MOST_REPEATS + ", not " + times);
        }
        if (times != repeats()) {
            files.add(KeyedEvent.of(Kind.REPEATS, Integer.toString(times)));
        }
    }

    /** Takes numbers with another decimal mark from now on. */
    public void setDecimalMark(DecimalMark mark) throws IOException {
        if (mark != decimalMark()) {
            files.add(KeyedEvent.of(Kind.MARK, mark.word()));
        }
    }

    /** Goes on with a plan that was changed since the readings were begun. */
    public void takePlan() throws IOException {
        files.add(KeyedEvent.of(Kind.PLAN, planHash));
    }

    /** Why this cannot be a remark; empty if it can. */
    public static Optional<String> refusalOfRemark(String text) {
        return KeyedNames.refusalOfRemark(text);
    }

    /** Why this cannot be the name of a person or a gauge; empty if it can. */
    public static Optional<String> refusalOfName(String text) {
        return KeyedNames.refusalOfName(text);
    }

    /** Why no piece can be called so; empty if one can. */
    public static Optional<String> refusalOfPieceName(String text) {
        return KeyedNames.refusalOfPiece(text);
    }

    /** Lets a remark go with the next reading that is kept; it must have passed {@link #refusalOfRemark(String)}. */
    public void setRemark(String text) throws IOException {
        files.add(KeyedEvent.of(Kind.REMARK, text.strip()));
    }

    /**
     * Puts a remark on the reading that was kept last, in place of any that it has; it must have passed
     * {@link #refusalOfRemark(String)}.
     *
     * @throws IllegalStateException if nothing is kept
     */
    public void remarkOnLast(String text) throws IOException {
        List<String> rows = files.state().rows();
        if (rows.isEmpty()) {
            throw new IllegalStateException("there is no reading to remark on");
        }
        String heading = files.state().heading();
        String row = KeyedRow.of(heading, rows.get(rows.size() - 1))
                .with(ReadingColumn.NOTE, text)
                .csv(heading);
        files.add(KeyedEvent.of(Kind.AMEND, row));
        taken.set(
                taken.size() - 1,
                KeyedLayout.readingsOf(plan, name, heading + "\n" + row + "\n", 1)
                        .get(0));
    }

    /** Chooses the gauge for a characteristic; it must have passed {@link #refusalOfGauge(String)}. */
    public void setGauge(ResolvedCharacteristic characteristic, String gauge) throws IOException {
        files.add(KeyedEvent.of(Kind.GAUGE, characteristic.number(), gauge.strip()));
    }

    /** Why this cannot be a gauge: the plan lists others. */
    public Optional<String> refusalOfGauge(String gauge) {
        if (plan.gauge(gauge.strip()).isPresent()) {
            return Optional.empty();
        }
        List<String> listed =
                plan.plan().gauges().stream().map(each -> each.id()).toList();
        if (!listed.isEmpty()) {
            return Optional.of(
                    "the plan does not list gauge " + Echo.quoted(gauge) + "; it lists " + Words.oneOf(listed));
        }
        return refusalOfName(gauge);
    }

    /** Lets a temperature of the pieces go with readings of lengths; it must have passed {@link #refusalOfTemperature(String)}. */
    public void setTemperature(String degrees) throws IOException {
        files.add(KeyedEvent.of(Kind.TEMPERATURE, degrees.strip()));
    }

    /** Why this cannot be the temperature of the pieces, in degrees Celsius; empty if it can, and for an empty text. */
    public Optional<String> refusalOfTemperature(String degrees) {
        if (plan.plan().thermal().isEmpty()) {
            return Optional.of("the plan has no \"temperature\", so readings are not brought to 20 °C");
        }
        KeyedRow row = new KeyedRow();
        row.set(ReadingColumn.PART, "any");
        row.set(ReadingColumn.VALUE, "0");
        row.set(ReadingColumn.TEMPERATURE, degrees);
        return faultIn(row, ReadingColumn.TEMPERATURE);
    }

    /** The reading that was kept last; empty if none is kept. */
    public Optional<Reading> last() {
        return taken.isEmpty()
                ? Optional.empty()
                : Optional.of(taken.get(taken.size() - 1).reading());
    }

    /** On how much nonconformities are counted, as it was keyed; empty where nothing was said, which means one. */
    public String size() {
        return files.state().size();
    }

    /** Lets a size go with counts of nonconformities; it must have passed {@link #refusalOfSize(String)}. */
    public void setSize(String size) throws IOException {
        files.add(KeyedEvent.of(Kind.SIZE, size.strip()));
    }

    /** Why nonconformities cannot be counted on so much; empty if they can. */
    public Optional<String> refusalOfSize(String size) {
        if (plan.characteristics().stream().noneMatch(KeyedLayout::isCounted)) {
            return Optional.of("the plan counts no nonconformities");
        }
        KeyedRow row = new KeyedRow();
        row.set(ReadingColumn.PART, "any");
        row.set(ReadingColumn.VALUE, "0");
        row.set(ReadingColumn.SIZE, size);
        return faultIn(row, ReadingColumn.SIZE);
    }

    private Optional<String> faultIn(KeyedRow row, ReadingColumn column) {
        return Caught.of(plan, row, plan.characteristics().get(0)).faults().stream()
                .filter(fault -> fault.where().field().equals(column.word()))
                .findFirst()
                .map(KeyedReadings::sentence);
    }

    /** A fault of something keyed in one sentence, without the place, which the person has before the eyes. */
    public static String sentence(Fault fault) {
        List<String> parts = new ArrayList<>();
        if (!fault.message().isEmpty()) {
            parts.add(fault.message());
        }
        if (!fault.found().isEmpty()) {
            parts.add("found " + fault.found());
        }
        if (!fault.expected().isEmpty()) {
            parts.add("expected " + fault.expected());
        }
        return String.join("; ", parts);
    }

    /**
     * Looks whether both files still are where and as this session has left them, so that what is kept can be said to be there.
     *
     * @throws KeyedFault if another program has changed, removed or replaced one
     */
    public void requireUntouched() throws IOException {
        files.requireUntouched();
    }

    @Override
    public void close() throws IOException {
        files.close();
    }
}
