package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a readings file can say of a reading, by the names that its columns or keys have. */
enum ReadingColumn {
    /** The piece. */
    PART("part"),
    /** The number of the characteristic. */
    CHARACTERISTIC("characteristic"),
    /** What was read. */
    VALUE("value"),
    /** Along the first axis, for a position. */
    X("x"),
    /** Along the second. */
    Y("y"),
    /** Along the third. */
    Z("z"),
    /** When. */
    TIME("time", "timestamp"),
    /** To which subgroup it belongs. */
    SUBGROUP("subgroup"),
    /** By whom. */
    OPERATOR("operator"),
    /** With what. */
    GAUGE("gauge"),
    /** On which machine the piece was made. */
    MACHINE("machine"),
    /** In which unit. */
    UNIT("unit"),
    /** At which temperature of the piece, in degrees Celsius. */
    TEMPERATURE("temperature"),
    /** A remark. */
    NOTE("note", "comment", "comments", "remark", "remarks"),
    /** At which setting a functional check was made. */
    SETTING("setting"),
    /** The tool that cut the piece. */
    TOOL("tool"),
    /** The phase of a study. */
    PHASE("phase"),
    /** The offset that was entered before the piece. */
    OFFSET("offset"),
    /** On how much a count of nonconformities was found. */
    SIZE("size"),
    /** The part number that the readings are of. */
    PART_NUMBER("part number"),
    /** The revision that the readings are of. */
    REVISION("revision"),
    /** The hand that the readings are of. */
    HAND("hand");

    /** Words that people use for a column which has another name here; named in messages, never understood silently. */
    private static final Map<String, ReadingColumn> OTHER_WORDS = Map.ofEntries(
            Map.entry("serial", PART),
            Map.entry("serialnumber", PART),
            Map.entry("serialno", PART),
            Map.entry("sn", PART),
            Map.entry("id", PART),
            Map.entry("piece", PART),
            Map.entry("sample", PART),
            Map.entry("balloon", CHARACTERISTIC),
            Map.entry("char", CHARACTERISTIC),
            Map.entry("feature", CHARACTERISTIC),
            Map.entry("dimension", CHARACTERISTIC),
            Map.entry("no", CHARACTERISTIC),
            Map.entry("number", CHARACTERISTIC),
            Map.entry("measured", VALUE),
            Map.entry("measurement", VALUE),
            Map.entry("actual", VALUE),
            Map.entry("reading", VALUE),
            Map.entry("result", VALUE),
            Map.entry("date", TIME),
            Map.entry("datetime", TIME),
            Map.entry("inspector", OPERATOR),
            Map.entry("instrument", GAUGE),
            Map.entry("units", UNIT),
            Map.entry("temp", TEMPERATURE),
            // German, as spreadsheets of firms there have them.
            Map.entry("teil", PART),
            Map.entry("stück", PART),
            Map.entry("seriennummer", PART),
            Map.entry("seriennr", PART),
            Map.entry("merkmal", CHARACTERISTIC),
            Map.entry("merkmalnr", CHARACTERISTIC),
            Map.entry("prüfmerkmal", CHARACTERISTIC),
            Map.entry("messwert", VALUE),
            Map.entry("istwert", VALUE),
            Map.entry("wert", VALUE),
            Map.entry("zeit", TIME),
            Map.entry("zeitstempel", TIME),
            Map.entry("prüfer", OPERATOR),
            Map.entry("messmittel", GAUGE),
            Map.entry("prüfmittel", GAUGE),
            Map.entry("maschine", MACHINE),
            Map.entry("einheit", UNIT),
            Map.entry("stichprobe", SUBGROUP),
            Map.entry("bemerkung", NOTE));

    /** All columns by their words, folded: every field of the first lines of a text is looked up. */
    private static final Map<String, ReadingColumn> BY_WORD = byWord();

    /** The columns that tell what was read where a row has one reading. */
    static final Set<ReadingColumn> OF_LONG_ROWS = Set.of(CHARACTERISTIC, VALUE, X, Y, Z);

    private final List<String> words;

    ReadingColumn(String... words) {
        this.words = List.of(words);
    }

    private static Map<String, ReadingColumn> byWord() {
        Map<String, ReadingColumn> all = new HashMap<>();
        for (ReadingColumn column : values()) {
            column.words.forEach(word -> all.putIfAbsent(folded(word), column));
        }
        return Map.copyOf(all);
    }

    /** The name to write first. */
    String word() {
        return words.get(0);
    }

    /** The column of that name, whatever its letter case and gaps. */
    static Optional<ReadingColumn> named(String name) {
        return Optional.ofNullable(BY_WORD.get(folded(name)));
    }

    /** The column that somebody who wrote another name probably meant. */
    static Optional<ReadingColumn> meant(String name) {
        ReadingColumn other = OTHER_WORDS.get(folded(name));
        if (other != null) {
            return Optional.of(other);
        }
        List<String> known = new ArrayList<>();
        for (ReadingColumn column : values()) {
            known.addAll(column.words);
        }
        return Nearest.to(name, known).flatMap(ReadingColumn::named);
    }

    /** All names. */
    static List<String> allWords() {
        return Arrays.stream(values()).map(ReadingColumn::word).toList();
    }

    static String folded(String name) {
        StringBuilder out = new StringBuilder(name.length());
        String lower = name.strip().toLowerCase(Locale.ROOT);
        for (int i = 0; i < lower.length(); i++) {
            char c = lower.charAt(i);
            if (c != ' ' && c != '_' && c != '-' && c != '.' && c != '/') {
                out.append(c);
            }
        }
        return out.toString();
    }
}
