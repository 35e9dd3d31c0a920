package io.github.firstoff.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a plan says of the part and of the drawing as a whole, where no row of a table says it. */
public enum PlanFact {
    /** The part number. */
    PART(
            "--part",
            "part number",
            "part no",
            "part",
            "item number",
            "article",
            "p/n",
            "pn",
            "teil",
            "teilenummer",
            "teilenr",
            "teilnummer",
            "teilnr",
            "artikel",
            "artikelnummer",
            "sachnummer"),
    /** The revision of the drawing. */
    REVISION(
            "--revision",
            "revision",
            "rev",
            "issue",
            "drawing revision",
            "zeichnungsindex",
            "änderungsstand",
            "änderungsindex",
            "revisionsstand"),
    /** What the part is called. */
    NAME("--name", "name", "part name", "title", "description", "benennung", "bezeichnung", "teilebezeichnung"),
    /** The number of the drawing. */
    DRAWING(
            "--drawing",
            "drawing",
            "drawing number",
            "drawing no",
            "dwg",
            "dwg no",
            "zeichnung",
            "zeichnungsnummer",
            "zeichnungsnr",
            "zeichnungnr"),
    /** The unit of the sizes. */
    UNIT("--unit", "unit", "units", "einheit", "einheiten"),
    /** The hand of the part. */
    HAND("--hand", "hand"),
    /** The general tolerance of the title block. */
    GENERAL_TOLERANCE(
            "--general-tolerance",
            "general tolerance",
            "general tolerances",
            "tolerances unless stated",
            "allgemeintoleranz",
            "allgemeintoleranzen"),
    /** The material. */
    MATERIAL("--material", "material", "werkstoff");

    /** Labels behind which the number of a part stands, or its name. */
    private static final List<String> NUMBER_OR_NAME = List.of("part", "article", "teil", "artikel");

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

    /**
     * Whether a text behind a label can only be what the label says: it is no label itself and holds none, and behind a label that may
     * announce a number or a name it is a number.
     */
    boolean isUnmistakable(String label, String text) {
        if (named(text).isPresent() || text.chars().noneMatch(Character::isLetterOrDigit)) {
            return this == REVISION && text.equals("-");
        }
        boolean identity = this == PART || this == REVISION || this == DRAWING;
        if (identity
                && Arrays.stream(text.split("[\\s,;:/]+"))
                        .anyMatch(word -> named(word).isPresent())) {
            return false;
        }
        return !NUMBER_OR_NAME.contains(folded(label))
                || (text.chars().anyMatch(Character::isDigit) && text.chars().noneMatch(Character::isWhitespace));
    }

    private static String folded(String label) {
        return label.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_.:\\-]", "");
    }
}
