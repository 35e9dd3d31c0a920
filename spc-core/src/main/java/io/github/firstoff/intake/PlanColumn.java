package io.github.firstoff.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a source says of a characteristic, by the names that the columns of a table have for it. */
enum PlanColumn {
    /** The balloon number. */
    NUMBER(
            "number",
            "number",
            "no",
            "nr",
            "#",
            "balloon",
            "balloon #",
            "char #",
            "characteristic #",
            "item #",
            "item number",
            "balloon number",
            "balloon no",
            "char",
            "char no",
            "characteristic",
            "characteristic number",
            "characteristic no",
            "item",
            "item no"),
    /** What it is about. */
    FEATURE("feature", "feature", "description", "feature description", "characteristic description", "designation"),
    /** The requirement as the drawing prints it. */
    REQUIREMENT(
            "requirement",
            "requirement",
            "requirements",
            "dimension",
            "specification",
            "spec",
            "drawing requirement",
            "nominal and tolerance"),
    /** How much depends on it. */
    CLASS("class", "class", "classification", "importance", "criticality"),
    /** The gauge to use. */
    GAUGE("gauge", "gauge", "gage", "gauge id", "instrument", "measuring equipment", "equipment"),
    /** The study to make of it. */
    STUDY("study", "study", "chart", "control chart", "spc"),
    /** Hole or shaft, where the requirement does not tell. */
    FORM("form", "form", "hole or shaft"),
    /** The feature of size behind a geometric tolerance. */
    SIZE_FEATURE("sizeFeature", "size feature", "feature of size"),
    /** Where the process aims. */
    TARGET("target", "target", "aim"),
    /** Whether each piece is measured. */
    INSPECT("inspect", "inspect", "extent", "frequency");

    private final String key;
    private final List<String> words;

    PlanColumn(String key, String... words) {
        this.key = key;
        this.words = List.of(words);
    }

    /** The key of a plan file. */
    String key() {
        return key;
    }

    /** The name to write first. */
    String word() {
        return words.get(0);
    }

    /** The column of that name, whatever its letter case and gaps. */
    static Optional<PlanColumn> named(String name) {
        String wanted = ReadingColumn.folded(name);
        return Arrays.stream(values())
                .filter(column -> column.words.stream()
                        .anyMatch(word -> ReadingColumn.folded(word).equals(wanted)))
                .findFirst();
    }

    /** All names that come first. */
    static List<String> allWords() {
        return Arrays.stream(values()).map(PlanColumn::word).toList();
    }
}
