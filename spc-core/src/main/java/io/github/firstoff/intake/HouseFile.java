package io.github.firstoff.intake;

import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.House.Paper;
import io.github.firstoff.inspection.Job;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A house file as it was read: how a firm's sheets look. The format is {@code firstoff-house-1}; see {@code docs/house.md} and
 * {@code docs/schemas/house.schema.json}.
 */
public final class HouseFile {
    /** The schema's name in house files. */
    public static final String SCHEMA = "firstoff-house-1";

    private static final long LARGEST = 64 * 1024;

    private final SourceText source;
    private final House house;
    private final Optional<LogoFile> logo;
    private final List<Notice> notices;

    private HouseFile(SourceText source, House house, Optional<LogoFile> logo, List<Notice> notices) {
        this.source = source;
        this.house = house;
        this.logo = logo;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads a house file and the logo that it names.
     *
     * @param input the file
     * @param languages the languages that sheets can be printed in, as tags
     * @throws InputRefused with every fault of the file or of its logo
     */
    public static HouseFile read(Input input, List<String> languages) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.HOUSE);
        FaultCollector faults = new FaultCollector();
        Optional<JsonValue> root = JsonTree.parse(source, faults);
        Optional<House> house = Optional.empty();
        Optional<LogoFile> logo = Optional.empty();
        if (root.isPresent() && root.get() instanceof JsonValue.Obj object) {
            Fields document = new Fields(source.name(), faults, object, "");
            SchemaName.check(document, SCHEMA);
            logo = logo(input, document);
            house = house(document, logo, languages);
            document.finish();
        } else if (root.isPresent()) {
            faults.refuse(Fault.of(
                    FaultKind.WRONG_TYPE,
                    new Fault.Where(
                            source.name(),
                            root.get().at().line(),
                            root.get().at().column(),
                            ""),
                    "",
                    root.get().described(),
                    "a house, which is an object { … }"));
        }
        faults.inFileOrder().throwIfAny();
        return new HouseFile(
                source,
                house.orElseThrow(() -> new IllegalStateException("a house without a fault was not read")),
                logo,
                faults.notices());
    }

    private static Optional<House> house(Fields document, Optional<LogoFile> logo, List<String> languages) {
        Optional<String> name = document.requiredText("name", "the firm's name");
        Optional<String> address = document.lines("address");
        Optional<String> approvals = document.lines("approvals");
        Optional<String> signOff = document.text("signOff");
        List<String> papers = Arrays.stream(Paper.values()).map(Paper::word).toList();
        Optional<Paper> paper = document.word(
                "paper",
                word -> Arrays.stream(Paper.values())
                        .filter(each -> each.word().equalsIgnoreCase(word))
                        .findFirst(),
                papers);
        Optional<String> language = document.word(
                "language",
                word -> languages.stream().filter(word::equalsIgnoreCase).findFirst(),
                languages);
        return name.map(known ->
                new House(new Job.Firm(known, address), approvals, signOff, logo.map(LogoFile::logo), paper, language));
    }

    private static Optional<LogoFile> logo(Input input, Fields document) {
        Optional<String> name = document.text("logo");
        if (name.isEmpty()) {
            return Optional.empty();
        }
        Optional<Input> beside = input.beside(name.get());
        if (beside.isEmpty()) {
            document.refuse(
                    "logo",
                    FaultKind.UNREADABLE_FILE,
                    "",
                    Echo.quoted(name.get()),
                    "a path that begins at the folder of this file");
            return Optional.empty();
        }
        return Optional.of(LogoFile.read(beside.get()));
    }

    /** What the file says. */
    public House house() {
        return house;
    }

    /** What does not hinder but should be known. */
    public List<Notice> notices() {
        return notices;
    }

    /** The SHA-256 of the file's bytes in hexadecimal. */
    public String sha256() {
        return source.sha256();
    }

    /** The name of the logo's file as messages call it; empty without one. */
    public Optional<String> logoName() {
        return logo.map(LogoFile::name);
    }

    /** The SHA-256 of the logo's bytes in hexadecimal; empty without one. */
    public Optional<String> logoSha256() {
        return logo.map(LogoFile::sha256);
    }
}
