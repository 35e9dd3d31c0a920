package io.github.firstoff.intake;

import io.github.firstoff.quantity.Unit;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a source says of a characteristic, by the names that the columns of a table have for it, in English and German. */
enum PlanColumn {
    /** The balloon number. */
    NUMBER(
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
            "char no",
            "characteristic number",
            "characteristic no",
            "item no",
            "nummer",
            "lfd nr",
            "merkmalnr",
            "merkmalsnr",
            "merkmalnummer",
            "merkmalsnummer",
            "pos",
            "pos nr",
            "stempelnr",
            "ballonnr"),
    /** What it is about. */
    FEATURE(
            "feature",
            "description",
            "feature description",
            "characteristic description",
            "designation",
            "bezeichnung",
            "benennung",
            "beschreibung",
            "merkmalbezeichnung",
            "merkmalsbezeichnung"),
    /** The requirement as the drawing prints it. */
    REQUIREMENT(
            "requirement",
            "requirements",
            "dimension",
            "specification",
            "spec",
            "drawing requirement",
            "nominal and tolerance",
            "forderung",
            "anforderung",
            "zeichnungsforderung",
            "zeichnungsangabe",
            "spezifikation",
            "vorgabe",
            "nennmaß und toleranz"),
    /** The size from which deviations go, where a table parts the requirement. */
    NOMINAL(
            "nominal",
            "nominal size",
            "nominal value",
            "nom",
            "nennmaß",
            "nennmass",
            "nennwert",
            "sollmaß",
            "sollmass",
            "sollwert",
            "soll"),
    /** The tolerance, written so that its sides can be told. */
    TOLERANCE("tolerance", "tol", "toleranz"),
    /** The same deviation to both sides. */
    PLUS_MINUS("tolerance +/-", "tol +/-", "+/-", "toleranz +/-", "plus/minus"),
    /** The upper deviation. */
    UPPER_DEVIATION(
            "upper tolerance",
            "upper tol",
            "upper deviation",
            "tolerance +",
            "+ tolerance",
            "tol +",
            "+ tol",
            "plus tolerance",
            "plus tol",
            "oberes abmaß",
            "oberes abmass",
            "obere abweichung",
            "obere toleranz",
            "toleranz +",
            "+ toleranz",
            "toleranz oben"),
    /** The lower deviation, with its sign. */
    LOWER_DEVIATION(
            "lower tolerance",
            "lower tol",
            "lower deviation",
            "unteres abmaß",
            "unteres abmass",
            "untere abweichung",
            "untere toleranz",
            "toleranz unten"),
    /** The lower deviation without its sign. */
    TAKEN_OFF(
            "tolerance -", "- tolerance", "tol -", "- tol", "minus tolerance", "minus tol", "toleranz -", "- toleranz"),
    /** The lower limit. */
    LOWER_LIMIT(
            "lower limit",
            "lower limit of size",
            "lower specification limit",
            "lower spec limit",
            "lsl",
            "min",
            "minimum",
            "mindestmaß",
            "mindestmass",
            "kleinstmaß",
            "kleinstmass",
            "untergrenze",
            "untere grenze",
            "untere toleranzgrenze",
            "unteres grenzmaß",
            "unterer grenzwert",
            "utg",
            "usg",
            "ugw"),
    /** The upper limit. */
    UPPER_LIMIT(
            "upper limit",
            "upper limit of size",
            "upper specification limit",
            "upper spec limit",
            "usl",
            "max",
            "maximum",
            "höchstmaß",
            "höchstmass",
            "größtmaß",
            "grösstmass",
            "obergrenze",
            "obere grenze",
            "obere toleranzgrenze",
            "oberes grenzmaß",
            "oberer grenzwert",
            "otg",
            "osg",
            "ogw"),
    /** The unit of its figures. */
    UNIT("unit", "units", "einheit", "maßeinheit"),
    /** How much depends on it. */
    CLASS("class", "classification", "importance", "criticality", "klasse", "merkmalsklasse", "gewichtung"),
    /** A mark on what is a key characteristic. */
    KEY("key", "key characteristic", "schlüsselmerkmal"),
    /** The gauge to use. */
    GAUGE(
            "gauge",
            "gage",
            "gauge id",
            "gauge no",
            "instrument",
            "measuring equipment",
            "measuring instrument",
            "equipment",
            "prüfmittel",
            "messmittel",
            "prüfmittelnr",
            "messgerät"),
    /** The study to make of it. */
    STUDY("study", "chart", "control chart", "spc", "regelkarte", "untersuchung"),
    /** Hole or shaft, where the requirement does not tell. */
    FORM("form", "hole or shaft"),
    /** The feature of size behind a geometric tolerance. */
    SIZE_FEATURE("size feature", "feature of size"),
    /** Where the process aims. */
    TARGET("target", "aim"),
    /** Whether each piece is measured. */
    INSPECT("inspect", "extent", "frequency");

    /** The columns that state a requirement, whole or in parts, in the order in which they stand here. */
    static final List<PlanColumn> OF_REQUIREMENTS = List.of(
            REQUIREMENT,
            NOMINAL,
            TOLERANCE,
            PLUS_MINUS,
            UPPER_DEVIATION,
            LOWER_DEVIATION,
            TAKEN_OFF,
            LOWER_LIMIT,
            UPPER_LIMIT);

    /** Names that some give the number and some the feature; the other columns of the table tell which is meant. */
    private static final Set<String> NUMBER_OR_FEATURE =
            Set.of("characteristic", "char", "item", "merkmal", "prüfmerkmal");

    private static final Pattern BRACKETED = Pattern.compile("(.*\\S)\\s*[\\[(]\\s*([^\\[\\]()]{1,12})\\s*[\\])]\\s*");
    private static final Map<String, PlanColumn> BY_WORD = byWord();

    private final String word;
    private final List<String> words;

    PlanColumn(String word, String... others) {
        this.word = word;
        this.words = List.of(others);
    }

    private static Map<String, PlanColumn> byWord() {
        Map<String, PlanColumn> all = new HashMap<>();
        for (PlanColumn column : values()) {
            all.put(folded(column.word), column);
            column.words.forEach(word -> all.put(folded(word), column));
        }
        return Map.copyOf(all);
    }

    /** The key of a plan file. */
    String key() {
        return this == SIZE_FEATURE ? "sizeFeature" : word;
    }

    /** The name to write first. */
    String word() {
        return word;
    }

    /** The column of that name, whatever its letter case and gaps, and whatever unit stands behind it in brackets. */
    static Optional<PlanColumn> named(String name) {
        return Optional.ofNullable(BY_WORD.get(folded(withoutUnit(name))));
    }

    /** Whether the name may mean the number or the feature. */
    static boolean isNumberOrFeature(String name) {
        return NUMBER_OR_FEATURE.contains(folded(name));
    }

    /** The unit that stands in brackets behind the name of a column, as in {@code Nominal [mm]}. */
    static Optional<String> unitIn(String name) {
        Matcher matcher = BRACKETED.matcher(name);
        return matcher.matches() && isUnit(matcher.group(2))
                ? Optional.of(matcher.group(2).strip())
                : Optional.empty();
    }

    private static String withoutUnit(String name) {
        Matcher matcher = BRACKETED.matcher(name);
        return matcher.matches() && isUnit(matcher.group(2)) ? matcher.group(1) : name;
    }

    /** Whether a text is the name of a unit and nothing else. */
    static boolean isUnit(String text) {
        return unit(text).isPresent();
    }

    /** The unit of that name, in English or German. */
    static Optional<Unit> unit(String text) {
        String word = text.strip();
        if (word.isEmpty() || word.equalsIgnoreCase("none")) {
            return Optional.empty();
        }
        if (word.equalsIgnoreCase("grad")) {
            return Optional.of(Unit.DEGREE);
        }
        return word.equalsIgnoreCase("zoll") ? Optional.of(Unit.INCH) : Unit.parse(word);
    }

    /** All names that come first and can be meant by others that are nearly so. */
    static List<String> allWords() {
        return Arrays.stream(values())
                .filter(column -> column != KEY)
                .map(PlanColumn::word)
                .toList();
    }

    /** Letter case, gaps and full stops do not matter; plus and minus do, except for a minus that joins two words. */
    private static String folded(String name) {
        StringBuilder out = new StringBuilder(name.length());
        String lower = name.strip()
                .toLowerCase(Locale.ROOT)
                .replace("±", "+/-")
                .replace("+-", "+/-")
                .replace("\u2212", "-")
                .replace("\u2013", "-");
        for (int i = 0; i < lower.length(); i++) {
            char c = lower.charAt(i);
            boolean joins = c == '-' && out.length() > 0 && i + 1 < lower.length() && joins(lower, i);
            if (" _.:()[]\u00A0\n\r\t".indexOf(c) < 0 && !joins) {
                out.append(c);
            }
        }
        return out.toString();
    }

    private static boolean joins(String text, int at) {
        char before = text.charAt(at - 1);
        char after = text.charAt(at + 1);
        return (Character.isLetterOrDigit(before) || before == '.') && Character.isLetterOrDigit(after);
    }
}
