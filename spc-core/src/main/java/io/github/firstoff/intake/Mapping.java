package io.github.firstoff.intake;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How the lines of a text that a measuring machine writes are to be understood: where part and time stand, which lines or columns carry
 * name, nominal, tolerance and value, how names match the numbers of the plan, and what to skip. The format is
 * {@code firstoff-mapping-1}; see {@code docs/intake.md} and {@code docs/schemas/mapping.schema.json}.
 *
 * <p>A mapping says what stands where, and nothing is searched for by patterns: a line is never read in two ways, and takes no more time
 * than its length.
 */
public final class Mapping {
    /** The schema's name in mapping files. */
    public static final String SCHEMA = "firstoff-mapping-1";

    private static final long LARGEST = 1 << 20;
    private static final int WIDEST = 100_000;
    private static final int MOST_NAMES = 10_000;

    private final SourceText source;
    private final Layout layout;
    private final Optional<Character> delimiter;
    private final Map<Item, List<Place>> rows;
    private final Map<ReadingColumn, Find> heads;
    private final Optional<String> piece;
    private final Map<String, String> names;
    private final Optional<String> prefix;
    private final List<String> others;
    private final List<Skip> skips;
    private final DecimalMark decimalMark;
    private final Optional<Unit> unit;
    private final Optional<TimeForm> timeForm;
    private final List<Notice> notices;

    /** How lines carry readings. */
    enum Layout {
        /** In columns that begin and end at fixed characters of a line. */
        COLUMNS,
        /** In columns that something parts. */
        DELIMITED,
        /** In lines that begin with a label, several for each characteristic. */
        LABELS;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What a row says, by the keys under {@code rows}. */
    enum Item {
        /** What the characteristic is called. */
        NAME("name"),
        /** What was found. */
        ACTUAL("actual"),
        /** What the machine was told that it should be. */
        NOMINAL("nominal"),
        /** By how much it may differ to either side. */
        TOLERANCE("tolerance"),
        /** By how much it may be more. */
        UPPER_TOLERANCE("upperTolerance"),
        /** By how much it may be more; less has a minus sign. */
        LOWER_TOLERANCE("lowerTolerance"),
        /** The most that it may be. */
        UPPER_LIMIT("upperLimit"),
        /** The least that it may be. */
        LOWER_LIMIT("lowerLimit"),
        /** The piece, where every row names it. */
        PART("part", ReadingColumn.PART),
        /** When. */
        TIME("time", ReadingColumn.TIME),
        /** In which unit. */
        UNIT("unit", ReadingColumn.UNIT),
        /** By whom. */
        OPERATOR("operator", ReadingColumn.OPERATOR),
        /** With what. */
        GAUGE("gauge", ReadingColumn.GAUGE),
        /** On which machine the piece was made. */
        MACHINE("machine", ReadingColumn.MACHINE),
        /** To which subgroup it belongs. */
        SUBGROUP("subgroup", ReadingColumn.SUBGROUP),
        /** A remark. */
        NOTE("note", ReadingColumn.NOTE);

        private final String key;
        private final Optional<ReadingColumn> column;

        Item(String key) {
            this.key = key;
            this.column = Optional.empty();
        }

        Item(String key, ReadingColumn column) {
            this.key = key;
            this.column = Optional.of(column);
        }

        String key() {
            return key;
        }

        /** The column of readings that it is, if it is one. */
        Optional<ReadingColumn> column() {
            return column;
        }
    }

    /** What lines outside the rows may say, by their keys. */
    private static final Map<String, ReadingColumn> HEADS = keysOfHeads();

    private static Map<String, ReadingColumn> keysOfHeads() {
        Map<String, ReadingColumn> heads = new LinkedHashMap<>();
        heads.put("part", ReadingColumn.PART);
        heads.put("time", ReadingColumn.TIME);
        heads.put("operator", ReadingColumn.OPERATOR);
        heads.put("gauge", ReadingColumn.GAUGE);
        heads.put("machine", ReadingColumn.MACHINE);
        heads.put("subgroup", ReadingColumn.SUBGROUP);
        heads.put("tool", ReadingColumn.TOOL);
        heads.put("partNumber", ReadingColumn.PART_NUMBER);
        heads.put("revision", ReadingColumn.REVISION);
        heads.put("hand", ReadingColumn.HAND);
        return heads;
    }

    /**
     * Where something stands in a row.
     *
     * @param from the first character, or the column where something parts them, counted from 1
     * @param to the last character; the column again where something parts them
     * @param label the label of the line where lines have labels; otherwise empty
     */
    record Place(int from, int to, String label) {}

    /**
     * Where something stands outside the rows: behind a label, or in a line of each piece between two characters.
     *
     * @param label the label; empty if it is found by its line
     * @param line the line of the piece, counted from 1
     * @param from the first character
     * @param to the last character
     */
    record Find(Optional<String> label, int line, int from, int to) {}

    /**
     * Lines that carry nothing.
     *
     * @param begins with what they begin, blanks aside; empty if they are known by what they contain
     * @param contains what they contain
     */
    record Skip(Optional<String> begins, Optional<String> contains) {
        boolean matches(String line) {
            return begins.filter(line.strip()::startsWith).isPresent()
                    || contains.filter(line::contains).isPresent();
        }

        @Override
        public String toString() {
            return remark().english();
        }

        Remark remark() {
            return begins.map(text -> Remark.of("skip.begins", "begin with {0}", Echo.quoted(text)))
                    .orElseGet(() -> Remark.of("skip.contains", "contain {0}", Echo.quoted(contains.orElse(""))));
        }
    }

    private Mapping(SourceText source, Reading read, List<Notice> notices) {
        this.source = source;
        this.layout = read.layout;
        this.delimiter = read.delimiter;
        this.rows = read.rows;
        this.heads = read.heads;
        this.piece = read.piece;
        this.names = read.names;
        this.prefix = read.prefix;
        this.others = List.copyOf(read.others);
        this.skips = List.copyOf(read.skips);
        this.decimalMark = read.decimalMark;
        this.unit = read.unit;
        this.timeForm = read.timeForm;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads a mapping.
     *
     * @param input the file
     * @return the mapping
     * @throws InputRefused with every fault of the file
     */
    public static Mapping read(Input input) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.MAPPING);
        FaultCollector faults = new FaultCollector();
        Optional<Reading> read = JsonTree.parse(source, faults).flatMap(root -> {
            if (root instanceof JsonValue.Obj object) {
                return Optional.of(new Reading(new Fields(source.name(), faults, object, "")));
            }
            faults.refuse(Fault.of(
                    FaultKind.WRONG_TYPE,
                    new Fault.Where(source.name(), root.at().line(), root.at().column(), ""),
                    "",
                    root.described(),
                    "a mapping, which is an object { … }"));
            return Optional.empty();
        });
        faults.inFileOrder().throwIfAny();
        return new Mapping(
                source,
                read.orElseThrow(() -> new IllegalStateException("a mapping without a fault was not read")),
                faults.notices());
    }

    /**
     * The SHA-256 of its bytes.
     *
     * @return the digest in hexadecimal
     */
    public String sha256() {
        return source.sha256();
    }

    /**
     * What does not hinder but should be known of the file.
     *
     * @return the notices
     */
    public List<Notice> notices() {
        return notices;
    }

    Layout layout() {
        return layout;
    }

    /** What parts columns; empty if runs of blanks do. Of no meaning where nothing parts them. */
    Optional<Character> delimiter() {
        return delimiter;
    }

    Map<Item, List<Place>> rows() {
        return rows;
    }

    Map<ReadingColumn, Find> heads() {
        return heads;
    }

    /** With what a line begins that begins another piece. */
    Optional<String> piece() {
        return piece;
    }

    List<Skip> skips() {
        return skips;
    }

    Marks marks() {
        return Marks.stated(decimalMark);
    }

    /** The unit of lengths. */
    Optional<Unit> unit() {
        return unit;
    }

    /** How times are written, if not as ISO 8601 writes them. */
    Optional<TimeForm> timeForm() {
        return timeForm;
    }

    /** Whether a name is known to be of something that the plan does not ask for. */
    boolean isOther(String name) {
        return others.contains(name);
    }

    /** The number that a name means by this mapping; the name itself where the mapping says nothing of it. */
    String number(String name) {
        String listed = names.get(name);
        if (listed != null) {
            return listed;
        }
        if (prefix.isPresent() && name.startsWith(prefix.get())) {
            String rest = name.substring(prefix.get().length()).strip();
            String bare = rest.replaceFirst("^0+(?=.)", "");
            return bare.isEmpty() ? name : bare;
        }
        return name;
    }

    /** Every name that the mapping knows. */
    List<String> names() {
        return List.copyOf(names.keySet());
    }

    /** One look at a mapping file. */
    private static final class Reading {
        private static final List<String> LAYOUTS = List.of("columns", "delimited", "labels");
        private static final Map<String, Character> DELIMITERS =
                Map.of("semicolon", ';', "comma", ',', "tab", '\t', "bar", '|', "spaces", ' ');

        private final Layout layout;
        private final Map<Item, List<Place>> rows = new EnumMap<>(Item.class);
        private final Map<ReadingColumn, Find> heads = new EnumMap<>(ReadingColumn.class);
        private final Map<String, String> names = new LinkedHashMap<>();
        private final List<String> others;
        private final List<Skip> skips = new ArrayList<>();
        private final Optional<String> piece;
        private final Optional<String> prefix;
        private final DecimalMark decimalMark;
        private final Optional<Unit> unit;
        private Optional<Character> delimiter = Optional.empty();
        private Optional<TimeForm> timeForm = Optional.empty();

        Reading(Fields document) {
            SchemaName.check(document, SCHEMA);
            Optional<Layout> stated = document.required(
                    "layout",
                    document.word(
                            "layout",
                            word -> LAYOUTS.contains(word)
                                    ? Optional.of(Layout.valueOf(word.toUpperCase(Locale.ROOT)))
                                    : Optional.empty(),
                            LAYOUTS),
                    "columns, delimited or labels");
            layout = stated.orElse(Layout.COLUMNS);
            Optional<Character> parts = document.word(
                    "delimiter",
                    word -> Optional.ofNullable(DELIMITERS.get(word)),
                    DELIMITERS.keySet().stream().sorted().toList());
            if (layout == Layout.DELIMITED) {
                delimiter = document.required("delimiter", parts, "semicolon, comma, tab, bar or spaces")
                        .filter(each -> each != ' ');
            }
            decimalMark = document.word(
                            "decimalMark",
                            word -> java.util.Arrays.stream(DecimalMark.values())
                                    .filter(mark -> mark.word().equals(word))
                                    .findFirst(),
                            List.of("point", "comma"))
                    .orElse(DecimalMark.POINT);
            unit = document.word(
                    "unit",
                    word -> Unit.parse(word).filter(each -> each.kind() == Unit.Kind.LENGTH),
                    List.of("mm", "inch"));
            piece = document.object("piece").flatMap(fields -> {
                Optional<String> begins = fields.requiredText("begins", "with what a line begins that begins a piece");
                fields.finish();
                return begins;
            });
            HEADS.forEach((key, column) -> document.object(key).ifPresent(fields -> head(column, fields)));
            Optional<Fields> places =
                    document.required("rows", document.object("rows"), "where a row has name and actual");
            places.ifPresent(this::rows);
            document.object("names").ifPresent(this::names);
            prefix = document.text("prefix");
            others = document.names("notInPlan", "a list of names [ … ]");
            for (Fields entry : document.objects("skip", "an object such as { \"begins\": \"---\" }")) {
                skip(entry);
            }
            document.finish();
        }

        private void head(ReadingColumn column, Fields fields) {
            Optional<String> label = fields.text("label");
            java.util.OptionalInt line = fields.count("line", 1, WIDEST);
            java.util.OptionalInt from = fields.count("from", 1, WIDEST);
            java.util.OptionalInt to = fields.count("to", 1, WIDEST);
            if (column == ReadingColumn.TIME) {
                timeForm = fields.text("form").flatMap(text -> {
                    Optional<TimeForm> form = TimeForm.of(text);
                    if (form.isEmpty()) {
                        fields.refuse("form", FaultKind.UNKNOWN_WORD, "", Echo.quoted(text), TimeForm.EXPECTED);
                    }
                    return form;
                });
            }
            if (label.isPresent() == line.isPresent()) {
                fields.refuse(
                        "label",
                        label.isPresent() ? FaultKind.CONTRADICTION : FaultKind.MISSING,
                        label.isPresent() ? "there is a label and a line" : "neither a label nor a line is stated",
                        "",
                        "a label, or a line with from and to");
            } else {
                heads.put(column, new Find(label, line.orElse(0), from.orElse(1), to.orElse(Integer.MAX_VALUE)));
            }
            fields.finish();
        }

        private void rows(Fields fields) {
            for (Item item : Item.values()) {
                List<Place> places = places(item, fields);
                if (!places.isEmpty()) {
                    rows.put(item, places);
                }
            }
            for (Item needed : List.of(Item.NAME, Item.ACTUAL)) {
                if (!fields.has(needed.key())) {
                    fields.required(needed.key(), Optional.empty(), "where it stands");
                }
            }
            boolean both = rows.containsKey(Item.TOLERANCE)
                    && (rows.containsKey(Item.UPPER_TOLERANCE) || rows.containsKey(Item.LOWER_TOLERANCE));
            if (both) {
                fields.refuse(
                        Item.TOLERANCE.key(),
                        FaultKind.CONTRADICTION,
                        "one tolerance to either side, and one for each side",
                        "",
                        "tolerance, or upperTolerance and lowerTolerance");
            }
            fields.finish();
        }

        private List<Place> places(Item item, Fields fields) {
            String key = item.key();
            boolean several =
                    fields.value(key).filter(JsonValue.Array.class::isInstance).isPresent();
            List<String> texts = several
                    ? fields.names(key, "a list of places")
                    : fields.name(key).map(List::of).orElse(List.of());
            List<Place> places = new ArrayList<>();
            for (String text : texts) {
                Optional<Place> place = place(text);
                if (place.isEmpty()) {
                    fields.refuse(
                            key,
                            FaultKind.WRONG_TYPE,
                            "",
                            Echo.quoted(text),
                            layout == Layout.COLUMNS
                                    ? "the first and the last character, such as 14-23"
                                    : "the number of a column, such as 2");
                }
                place.ifPresent(places::add);
            }
            return places;
        }

        private Optional<Place> place(String text) {
            if (layout == Layout.LABELS) {
                return Optional.of(new Place(0, 0, text));
            }
            String[] ends = text.split("-", -1);
            boolean numbers =
                    java.util.Arrays.stream(ends).allMatch(end -> end.strip().matches("\\d{1,5}"));
            if (!numbers || ends.length > 2) {
                return Optional.empty();
            }
            int from = Integer.parseInt(ends[0].strip());
            int to = Integer.parseInt(ends[ends.length - 1].strip());
            boolean sound = from > 0 && to >= from && (layout == Layout.COLUMNS ? ends.length == 2 : from == to);
            return sound ? Optional.of(new Place(from, to, "")) : Optional.empty();
        }

        private void names(Fields fields) {
            int count = 0;
            for (String name : fields.object().members().keySet()) {
                if (++count > MOST_NAMES) {
                    fields.refuse(name, FaultKind.TOO_LARGE, "", "more than " + MOST_NAMES + " names", "at most that");
                    return;
                }
                fields.requiredName(name, "the number of a characteristic")
                        .ifPresent(number -> names.put(MappedReadings.joined(List.of(name)), number));
            }
        }

        private void skip(Fields fields) {
            Optional<String> begins = fields.text("begins");
            Optional<String> contains = fields.text("contains");
            if (begins.isPresent() == contains.isPresent()) {
                fields.refuse(
                        "begins",
                        FaultKind.CONTRADICTION,
                        "a line is known by one of the two",
                        "",
                        "begins, or contains");
            } else {
                skips.add(new Skip(begins, contains));
            }
            fields.finish();
        }
    }
}
