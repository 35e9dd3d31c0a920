package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Recognises by its content a file that stands where another kind of file belongs, so that it is called by its name and not by the first
 * character that the other kind could not have there.
 */
final class OtherFile {
    private static final int FEWEST_COLUMNS = 3;
    private static final Pattern LIST_OF_PIECES = Pattern.compile("(?s)\\s*\\[\\s*\\{.*\"part\"\\s*:.*");
    private static final Pattern RESULT = Pattern.compile("(?s)\\s*\\{\\s*\"command\"\\s*:\\s*\"([a-z-]{1,20})\".*");
    private static final Pattern READINGS_IN_AN_OBJECT = Pattern.compile("(?s)\\s*\\{.*\"readings\"\\s*:\\s*\\[.*");
    private static final Pattern SCHEMA = Pattern.compile("\"schema\"\\s*:\\s*\"firstoff-([a-z]{1,20})-\\d{1,9}\"");

    private static final String BY_SCHEMA = ", as its \"schema\" says";

    private OtherFile() {}

    /** The documents that this program reads as JSON, and where their guide stands. */
    enum Wanted {
        /** What the drawing requires. */
        PLAN("a plan (JSON, see docs/inputs.md)"),
        /** What the order is about. */
        JOB("a job (JSON, see docs/inputs.md)"),
        /** A press fit. */
        ASSEMBLY("an assembly (JSON, see docs/fit.md)"),
        /** A dimension loop. */
        STACK("a file of members (JSON, see docs/stack.md)"),
        /** How a firm's sheets look. */
        HOUSE("a house file (JSON, see docs/house.md)"),
        /** How a machine's text is understood. */
        MAPPING("a mapping (JSON, see docs/intake.md)");

        private final String described;

        Wanted(String described) {
            this.described = described;
        }

        private String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What a file is, and what it is good for. */
    private enum Nature {
        QIF("a QIF document"),
        REQUIREMENTS("a table of requirements"),
        WORKBOOK("a workbook"),
        READINGS("readings"),
        TABLE("a text in columns"),
        OTHER("");

        private final String described;

        Nature(String described) {
            this.described = described;
        }
    }

    /** The fault of an input that begins as no file of the kind does; empty if it may be one, or is nothing that is known. */
    static Optional<Fault> insteadOf(Wanted wanted, String file, Beginning beginning) {
        Optional<String> foreign = foreign(beginning);
        if (foreign.isPresent()) {
            return Optional.of(fault(file, foreign.get(), wanted.described));
        }
        Optional<String> json = json(wanted, beginning);
        if (json.isPresent()) {
            Nature given = json.get().contains("readings") ? Nature.READINGS : Nature.OTHER;
            return Optional.of(fault(file, json.get(), wanted.described + advice(wanted, given, file)));
        }
        Nature nature = nature(beginning);
        return nature == Nature.OTHER
                ? Optional.empty()
                : Optional.of(fault(file, nature.described, wanted.described + advice(wanted, nature, file)));
    }

    /** The fault of an input that holds no readings but what belongs elsewhere; empty if it may hold readings. */
    static Optional<Fault> insteadOfReadings(String file, Beginning beginning, boolean mapped) {
        boolean object = beginning.firstCharacter() == '{';
        Matcher schema = SCHEMA.matcher(beginning.text());
        if (object && schema.find()) {
            for (Wanted other : Wanted.values()) {
                if (other.word().equals(schema.group(1))) {
                    return Optional.of(fault(
                            file, withArticle(other) + BY_SCHEMA, "readings (see docs/intake.md); " + belongs(other)));
                }
            }
        }
        Matcher result = RESULT.matcher(beginning.text());
        if (object && result.matches()) {
            return Optional.of(
                    fault(file, "the result of firstoff " + result.group(1), "the readings from which it was made"));
        }
        if (!mapped && nature(beginning) == Nature.REQUIREMENTS) {
            return Optional.of(fault(
                    file,
                    Nature.REQUIREMENTS.described,
                    "readings (see docs/intake.md); of such a table firstoff plan makes a plan"));
        }
        return Optional.empty();
    }

    /** The fault of an input that holds readings where something else belongs; empty if it does not. */
    static Optional<Fault> readings(String file, Beginning beginning, String expected) {
        char first = beginning.firstCharacter();
        Optional<String> found = first == '{' || first == '['
                ? json(Wanted.PLAN, beginning).filter(each -> each.contains("readings"))
                : Optional.of(nature(beginning))
                        .filter(nature -> nature == Nature.READINGS)
                        .map(nature -> nature.described);
        return found.map(each -> fault(file, each, expected));
    }

    /** The fault of a QIF document where something else belongs; empty if it is none. */
    static Optional<Fault> qif(String file, Beginning beginning, String expected) {
        return nature(beginning) == Nature.QIF
                ? Optional.of(fault(file, Nature.QIF.described, expected))
                : Optional.empty();
    }

    private static Fault fault(String file, String found, String expected) {
        return Fault.of(FaultKind.WRONG_FORMAT, Where.inFile(file), "", found, expected);
    }

    private static String withArticle(Wanted wanted) {
        String described = wanted.described;
        return described.substring(0, described.indexOf(" ("));
    }

    private static String belongs(Wanted other) {
        return switch (other) {
            case PLAN, JOB, HOUSE, MAPPING -> "it belongs behind --" + other.word();
            case ASSEMBLY -> "it belongs to firstoff fit";
            case STACK -> "it belongs to firstoff stack";
        };
    }

    private static String advice(Wanted wanted, Nature nature, String file) {
        String name = Echo.plain(file);
        String named = name.indexOf(' ') >= 0 ? '"' + name + '"' : name;
        return switch (wanted) {
            case PLAN ->
                switch (nature) {
                    case READINGS -> "; readings stand behind the options";
                    case OTHER -> "";
                    case TABLE ->
                        "; firstoff plan makes one of a table with the columns number, feature and requirement";
                    default -> "; make a plan of it first: firstoff plan " + named + " --out plan.json";
                };
            case MAPPING ->
                nature == Nature.READINGS || nature == Nature.TABLE
                        ? "; of an export, this proposes one: firstoff mapping " + named
                                + " --plan PLAN --out mapping.json"
                        : "";
            default -> "";
        };
    }

    private static Optional<String> foreign(Beginning beginning) {
        if (beginning.startsWith('%', 'P', 'D', 'F')) {
            return Optional.of("a PDF document");
        }
        if (beginning.startsWith(0x89, 'P', 'N', 'G') || beginning.startsWith(0xFF, 0xD8, 0xFF)) {
            return Optional.of("a picture");
        }
        String text = beginning.text();
        if (beginning.firstCharacter() == '<' && nature(beginning) != Nature.QIF) {
            String lower = text.substring(0, Math.min(text.length(), 4000)).toLowerCase(Locale.ROOT);
            return Optional.of(
                    lower.contains("<svg")
                            ? "an SVG picture"
                            : lower.contains("<html") ? "a web page" : "an XML document that is no QIF");
        }
        return Optional.empty();
    }

    private static Optional<String> json(Wanted wanted, Beginning beginning) {
        String text = beginning.text();
        char first = beginning.firstCharacter();
        if (first == '[' && LIST_OF_PIECES.matcher(text).matches()) {
            return Optional.of("a list of readings");
        }
        if (first != '{') {
            return Optional.empty();
        }
        Matcher result = RESULT.matcher(text);
        if (result.matches()) {
            return Optional.of("the result of firstoff " + result.group(1));
        }
        Matcher schema = SCHEMA.matcher(text);
        boolean stated = schema.find();
        if (stated && schema.group(1).equals("readings")) {
            return Optional.of("readings");
        }
        for (Wanted other : Wanted.values()) {
            if (stated && other != wanted && other.word().equals(schema.group(1))) {
                return Optional.of(withArticle(other) + BY_SCHEMA);
            }
        }
        if (!stated
                && ReadingFormat.JSON_LINES.source().recognises(beginning)
                && text.strip().indexOf('\n') > 0) {
            return Optional.of("readings as JSON lines");
        }
        // A plan has no such list, and a job neither.
        return !stated
                        && wanted != Wanted.MAPPING
                        && READINGS_IN_AN_OBJECT.matcher(text).matches()
                ? Optional.of("readings")
                : Optional.empty();
    }

    private static Nature nature(Beginning beginning) {
        if (WorkbookFile.recognises(beginning)) {
            String bytes = new String(beginning.bytes(), StandardCharsets.ISO_8859_1);
            boolean workbook = beginning.startsWith(0xD0, 0xCF, 0x11, 0xE0)
                    || WorkbookFile.saysOpenDocument(beginning)
                    || bytes.contains("[Content_Types].xml")
                    || bytes.contains("xl/");
            return workbook ? Nature.WORKBOOK : Nature.OTHER;
        }
        String text = beginning.text();
        char first = beginning.firstCharacter();
        if (first == '<') {
            return text.contains("QIFDocument") ? Nature.QIF : Nature.OTHER;
        }
        if (first == '{' || first == '[') {
            return Nature.OTHER;
        }
        return text.lines()
                .limit(CsvDialect.LINES_LOOKED_AT)
                .map(OtherFile::nature)
                .filter(nature -> nature == Nature.READINGS || nature == Nature.REQUIREMENTS)
                .findFirst()
                .orElseGet(() -> hasColumns(text) ? Nature.TABLE : Nature.OTHER);
    }

    private static Nature nature(String line) {
        for (char separator : CsvDialect.SEPARATORS) {
            List<String> fields = CsvDialect.split(line, separator);
            if (fields.size() < 2) {
                continue;
            }
            List<ReadingColumn> columns = fields.stream()
                    .map(ReadingColumn::named)
                    .flatMap(Optional::stream)
                    .toList();
            long numbers = fields.stream()
                    .filter(field -> ReadingColumn.named(field).isEmpty())
                    .filter(field -> field.matches("\\d[\\w.]{0,9}"))
                    .count();
            boolean values = columns.stream().anyMatch(ReadingColumn.OF_LONG_ROWS::contains)
                    || (numbers > 0 && numbers + columns.size() == fields.size());
            if (columns.contains(ReadingColumn.PART) && values) {
                return Nature.READINGS;
            }
            List<PlanColumn> ofPlan = fields.stream()
                    .map(PlanColumn::named)
                    .flatMap(Optional::stream)
                    .toList();
            if (ofPlan.contains(PlanColumn.NUMBER) && ofPlan.contains(PlanColumn.REQUIREMENT)) {
                return Nature.REQUIREMENTS;
            }
        }
        return Nature.OTHER;
    }

    /** Whether the first lines have the same number of columns, as those of a table do. */
    private static boolean hasColumns(String text) {
        List<String> lines = text.lines()
                .filter(line -> !line.isBlank())
                .limit(FEWEST_COLUMNS)
                .toList();
        for (char separator : CsvDialect.SEPARATORS) {
            long kinds = lines.stream()
                    .mapToInt(line -> CsvDialect.split(line, separator).size())
                    .distinct()
                    .count();
            if (lines.size() > 1
                    && kinds == 1
                    && CsvDialect.split(lines.get(0), separator).size() >= FEWEST_COLUMNS) {
                return true;
            }
        }
        return false;
    }
}
