package io.github.firstoff.intake;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.assembly.Piece;
import io.github.firstoff.plan.Hand;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * An assembly file as it was read: two parts pressed into one another. The format is {@code firstoff-assembly-1}; see
 * {@code docs/fit.md} and {@code docs/schemas/assembly.schema.json}.
 */
public final class AssemblyFile {
    /** The schema's name in assembly files. */
    public static final String SCHEMA = "firstoff-assembly-1";

    private static final long LARGEST = 4L * 1024 * 1024;

    private final SourceText source;
    private final Joint joint;
    private final AssemblyReader.Places places;
    private final List<Notice> notices;

    private AssemblyFile(SourceText source, Joint joint, AssemblyReader.Places places, List<Notice> notices) {
        this.source = source;
        this.joint = joint;
        this.places = places;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads an assembly file.
     *
     * @throws InputRefused with every fault of the file
     */
    public static AssemblyFile read(Path path) {
        return read(Input.file(path));
    }

    /**
     * Reads an assembly.
     *
     * @throws InputRefused with every fault of the input
     */
    public static AssemblyFile read(Input input) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.ASSEMBLY);
        FaultCollector faults = new FaultCollector();
        Optional<AssemblyReader.Outcome> outcome =
                document(source, faults, "an assembly").map(new AssemblyReader(source, faults)::read);
        faults.inFileOrder().throwIfAny();
        AssemblyReader.Outcome read =
                outcome.orElseThrow(() -> new IllegalStateException("an assembly without a fault was not read"));
        return new AssemblyFile(
                source,
                read.joint().orElseThrow(() -> new IllegalStateException("an assembly without a fault was not read")),
                read.places(),
                faults.notices());
    }

    /** The document of a text; empty with a fault collected if it is none. */
    static Optional<Fields> document(SourceText source, FaultCollector faults, String what) {
        Optional<JsonValue> root = JsonTree.parse(source, faults);
        if (root.isPresent() && root.get() instanceof JsonValue.Obj object) {
            return Optional.of(new Fields(source.name(), faults, object, ""));
        }
        root.ifPresent(other -> faults.refuse(Fault.of(
                FaultKind.WRONG_TYPE,
                new Fault.Where(source.name(), other.at().line(), other.at().column(), ""),
                "",
                other.described(),
                what + ", which is an object { … }")));
        return Optional.empty();
    }

    /**
     * The assembly with the sizes that were measured.
     *
     * @param joint what the file states
     * @param bores measured bores; empty if none were given
     * @param rings measured sizes of what goes in; empty if none were given
     * @param hand the hand, from the file or from the readings
     * @param notices what does not hinder but should be known, of all files
     * @param files the files of readings
     */
    public record Measured(
            Joint joint,
            Optional<List<Piece>> bores,
            Optional<List<Piece>> rings,
            Optional<Hand> hand,
            List<Notice> notices,
            List<Intake.ReadFile> files) {
        /** Copies the lists. */
        public Measured {
            bores = bores.map(List::copyOf);
            rings = rings.map(List::copyOf);
            notices = List.copyOf(notices);
            files = List.copyOf(files);
        }
    }

    /**
     * Reads the sizes that were measured.
     *
     * @param bores readings of the outer part
     * @param rings readings of the inner part
     * @throws InputRefused if a file cannot be used, hands are mixed, a size cannot belong to the joint, a part has neither limits nor
     *     readings, or pairs name pieces that are not there
     */
    public Measured with(Optional<Path> bores, Optional<Path> rings) {
        return withReadings(bores.map(Input::file), rings.map(Input::file), IntakeSettings.USUAL);
    }

    /**
     * Reads the sizes that were measured.
     *
     * @param bores readings of the outer part, which can be read more than once
     * @param rings readings of the inner part, likewise
     * @param settings what the user says of how they are read
     * @throws InputRefused if an input cannot be used, hands are mixed, a size cannot belong to the joint, a part has neither limits nor
     *     readings, or pairs name pieces that are not there
     */
    public Measured withReadings(Optional<Input> bores, Optional<Input> rings, IntakeSettings settings) {
        Optional<SizeReadings> outer = bores.map(input -> readings(joint.outer(), "outer", input, settings));
        Optional<SizeReadings> inner;
        try {
            inner = rings.map(input -> readings(joint.inner(), "inner", input, settings));
        } catch (InputRefused refused) {
            throw refused.after(outer.map(each -> each.file().rows()).orElse(RowCounts.NONE));
        }
        FaultCollector faults = new FaultCollector();
        requireSizes(faults, joint.outer(), outer, "outer", "--bores");
        requireSizes(faults, joint.inner(), inner, "inner", "--rings");
        outer.ifPresent(found -> checkSizes(faults, found));
        inner.ifPresent(found -> checkSizes(faults, found));
        checkHands(faults, outer, inner);
        checkPairs(faults, outer, inner);
        faults.throwIfAny();
        List<Notice> all = new ArrayList<>(notices);
        List<Intake.ReadFile> files = new ArrayList<>();
        for (Optional<SizeReadings> each : List.of(outer, inner)) {
            each.ifPresent(found -> {
                all.addAll(found.notices());
                files.add(found.file());
            });
        }
        Optional<Hand> hand =
                joint.hand().or(() -> outer.flatMap(SizeReadings::hand)).or(() -> inner.flatMap(SizeReadings::hand));
        return new Measured(joint, outer.map(SizeReadings::pieces), inner.map(SizeReadings::pieces), hand, all, files);
    }

    private SizeReadings readings(Joint.Member member, String name, Input input, IntakeSettings settings) {
        return SizeReadings.read(
                new SizeReadings.Question(
                        joint.nominal(), member.part(), member.hand().or(joint::hand), member.characteristic(), name),
                input,
                settings);
    }

    private void requireSizes(
            FaultCollector faults, Joint.Member member, Optional<SizeReadings> readings, String name, String option) {
        if (member.limits().isEmpty() && readings.isEmpty()) {
            faults.refuse(Fault.of(
                    FaultKind.MISSING,
                    places.member(name),
                    "the size of the " + name + " part is not known",
                    "",
                    "\"requirement\"" + (name.equals("inner") ? " or \"bearing\"" : "") + ", or readings by "
                            + option));
        }
    }

    private void checkSizes(FaultCollector faults, SizeReadings readings) {
        for (Piece piece : readings.pieces()) {
            if (AssemblyReader.isFarFrom(joint.nominal(), piece.size())) {
                faults.refuse(Fault.of(
                        FaultKind.NUMBER_OUT_OF_RANGE,
                        new Fault.Where(readings.file().name(), 0, 0, "part " + Echo.plain(piece.name())),
                        "this is no size at a joint of " + joint.nominal().toPlainString() + " mm",
                        piece.size().toPlainString() + " mm",
                        "a size within 2 % of the nominal"));
            }
        }
    }

    private void checkHands(FaultCollector faults, Optional<SizeReadings> outer, Optional<SizeReadings> inner) {
        Optional<Hand> one = outer.flatMap(SizeReadings::hand);
        Optional<Hand> other = inner.flatMap(SizeReadings::hand);
        if (one.isPresent()
                && other.isPresent()
                && one.get().isLeft() != other.get().isLeft()) {
            faults.refuse(Fault.of(
                    FaultKind.OTHER_PART,
                    Fault.Where.inFile(inner.orElseThrow().file().name()),
                    "the hands are mixed: the bores are " + one.get().word() + " parts",
                    other.get().word(),
                    one.get().word() + " parts in both files"));
        }
    }

    private void checkPairs(FaultCollector faults, Optional<SizeReadings> outer, Optional<SizeReadings> inner) {
        if (!joint.pairs().isKnown()) {
            return;
        }
        if (outer.isEmpty() || inner.isEmpty()) {
            faults.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    places.pairs(),
                    "pairs are stated, and not both parts were measured",
                    "",
                    "readings by --bores and --rings"));
            return;
        }
        Set<String> bores = names(outer.get());
        Set<String> rings = names(inner.get());
        if (joint.pairs().byPart()) {
            Set<String> alone = new HashSet<>(bores);
            alone.addAll(rings);
            alone.removeIf(name -> bores.contains(name) && rings.contains(name));
            if (!alone.isEmpty()) {
                faults.refuse(Fault.of(
                        FaultKind.CONTRADICTION,
                        places.pairs(),
                        "pieces are paired by their names, and some have no partner",
                        alone.stream().sorted().limit(5).map(Echo::quoted).collect(Collectors.joining(", ")),
                        "the same names in both files, or pairs listed one by one"));
            }
        }
        for (Joint.Couple couple : joint.pairs().listed()) {
            requireNamed(faults, bores, couple.outer(), "bore");
            requireNamed(faults, rings, couple.inner(), "inner part");
        }
    }

    private void requireNamed(FaultCollector faults, Set<String> known, String name, String noun) {
        if (!known.contains(name)) {
            faults.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    places.pairs(),
                    "no reading is of a " + noun + " of that name",
                    Echo.quoted(name),
                    "a name from the readings"));
        }
    }

    private static Set<String> names(SizeReadings readings) {
        return readings.pieces().stream().map(Piece::name).collect(Collectors.toSet());
    }

    /** What the file states. */
    public Joint joint() {
        return joint;
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
