package io.github.firstoff.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a plan says of the part and of the drawing as a whole, where no row of a table says it. */
public enum PlanFact {
    /** The part number. */
    PART("--part", "part number", "part no", "part", "item number", "article"),
    /** The revision of the drawing. */
    REVISION("--revision", "revision", "rev", "issue"),
    /** What the part is called. */
    NAME("--name", "name", "part name", "title", "description"),
    /** The number of the drawing. */
    DRAWING("--drawing", "drawing", "drawing number", "drawing no"),
    /** The unit of the sizes. */
    UNIT("--unit", "unit", "units"),
    /** The hand of the part. */
    HAND("--hand", "hand"),
    /** The general tolerance of the title block. */
    GENERAL_TOLERANCE("--general-tolerance", "general tolerance", "general tolerances", "tolerances unless stated"),
    /** The material. */
    MATERIAL("--material", "material");

    private final String option;
    private final List<String> words;

    PlanFact(String option, String... words) {
        this.option = option;
        this.words = List.of(words);
    }

    /** The option of the command line that says it. */
    public String option() {
        return option;
    }

    /** The word for it. */
    public String word() {
        return words.get(0);
    }

    /** The fact that a label of a table's head names, whatever its letter case, gaps and colon. */
    static Optional<PlanFact> named(String label) {
        String wanted = folded(label);
        return Arrays.stream(values())
                .filter(fact ->
                        fact.words.stream().anyMatch(word -> folded(word).equals(wanted)))
                .findFirst();
    }

    private static String folded(String label) {
        return label.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_.:\\-]", "");
    }
}
