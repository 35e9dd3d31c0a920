package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The general tolerance of a title block, for example {@code ISO 2768-mK}: ISO 2768-1:1989 for sizes and angles printed without a
 * tolerance, and, where a second letter is given, ISO 2768-2:1989 for geometry.
 *
 * <p>ISO 2768-2 was withdrawn in 2021 in favour of ISO 22081, which has no tables; drawings that name it still mean it.
 *
 * @param linear the class of ISO 2768-1 for sizes and angles
 * @param geometric the class of ISO 2768-2, if the title block names one
 */
public record GeneralTolerance(LinearClass linear, Optional<GeometricClass> geometric) {

    private static final Pattern WRITTEN = Pattern.compile(
            "\\s*(?:(?:DIN|EN|BS|NF|SS|UNI|JIS)\\s+)*(?:EN\\s+)?ISO\\s*2768(?:\\s*-\\s*|\\s+)(?:1\\s*[-\\s]\\s*)?(\\p{Alpha})(\\p{Alpha})?(?:\\s*-\\s*E)?\\s*",
            Pattern.CASE_INSENSITIVE);
    private static final String UNDERSTOOD = "ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)";

    private static final SizeTable LINEAR = SizeTable.read("iso-2768-1/1989/linear.csv");
    private static final SizeTable BROKEN_EDGES = SizeTable.read("iso-2768-1/1989/broken-edges.csv");
    private static final SizeTable ANGLES = SizeTable.read("iso-2768-1/1989/angles.csv");
    private static final BigDecimal LEAST = new BigDecimal("0.5");

    /** The classes of ISO 2768-1. */
    public enum LinearClass {
        /** Fine. */
        F,
        /** Medium. */
        M,
        /** Coarse. */
        C,
        /** Very coarse. */
        V;

        /** The small letter of the title block. */
        public String letter() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The classes of ISO 2768-2. */
    public enum GeometricClass {
        /** Finest. */
        H,
        /** Middle. */
        K,
        /** Widest. */
        L
    }

    /**
     * The general tolerance that a title block states, for example {@code ISO 2768-m}, {@code ISO 2768-mK} or {@code DIN ISO 2768-1 m}.
     * The envelope mark of {@code ISO 2768-mK-E} is read and changes no limits.
     *
     * @throws RequirementFault if the text names no general tolerance that has tables here
     */
    public static GeneralTolerance parse(String text) {
        Matcher matcher =
                WRITTEN.matcher(text.replace('\u00a0', ' ').replace('–', '-').replace('‑', '-'));
        if (!matcher.matches()) {
            throw notUnderstood(text);
        }
        String first = matcher.group(1);
        Optional<String> second = Optional.ofNullable(matcher.group(2));
        if ("fmcv".indexOf(first.charAt(0)) < 0) {
            boolean capital = "FMCV".indexOf(first.charAt(0)) >= 0;
            throw new RequirementFault(
                    text,
                    matcher.start(1),
                    capital
                            ? "the class of sizes is a small letter, not " + first
                            : first + " is no class of ISO 2768-1",
                    capital ? "ISO 2768-" + first.toLowerCase(Locale.ROOT) + second.orElse("") : UNDERSTOOD);
        }
        if (second.isPresent() && "HKL".indexOf(second.get().charAt(0)) < 0) {
            boolean small = "hkl".indexOf(second.get().charAt(0)) >= 0;
            throw new RequirementFault(
                    text,
                    matcher.start(2),
                    small
                            ? "the class of geometry is a capital letter, not " + second.get()
                            : second.get() + " is no class of ISO 2768-2",
                    small ? "ISO 2768-" + first + second.get().toUpperCase(Locale.ROOT) : UNDERSTOOD);
        }
        return new GeneralTolerance(
                LinearClass.valueOf(first.toUpperCase(Locale.ROOT)), second.map(GeometricClass::valueOf));
    }

    private static RequirementFault notUnderstood(String text) {
        if (text.contains("22081")) {
            return new RequirementFault(
                    text,
                    text.indexOf("22081"),
                    "ISO 22081 has no tables: its title block states the general tolerance itself",
                    "a tolerance at each size, or " + UNDERSTOOD);
        }
        return new RequirementFault(
                text, 0, "the general tolerance " + Scanner.quoted(text) + " is not understood", UNDERSTOOD);
    }

    /** As a title block prints it. */
    public String text() {
        return "ISO 2768-" + linear.letter() + geometric.map(Enum::name).orElse("");
    }

    /** The tables of ISO 2768-2 for the class named; empty if the title block names none. */
    public Optional<GeneralGeometry> geometry() {
        return geometric.map(GeneralGeometry::new);
    }

    /**
     * The amount each side of a linear size (Table 1), in millimetres; empty if the table has none: below 0.5 mm, above 4000 mm, above
     * 2000 mm in class f, up to 3 mm in class v.
     *
     * @param millimetres the nominal size
     */
    public Optional<BigDecimal> linearDeviation(BigDecimal millimetres) {
        return from(LINEAR, millimetres);
    }

    /**
     * The amount each side of an external radius or a chamfer height (Table 2), in millimetres; empty below 0.5 mm.
     *
     * @param millimetres the nominal size
     */
    public Optional<BigDecimal> brokenEdgeDeviation(BigDecimal millimetres) {
        return from(BROKEN_EDGES, millimetres);
    }

    /**
     * The amount each side of an angle (Table 3), in minutes of arc.
     *
     * @param shorterLeg the length of the angle's shorter leg in millimetres, above 0
     */
    public Optional<BigDecimal> angularDeviation(BigDecimal shorterLeg) {
        return ANGLES.value(shorterLeg, linear.letter());
    }

    /** The first row of both tables includes its lower bound: “0.5 up to 3”. */
    private Optional<BigDecimal> from(SizeTable table, BigDecimal size) {
        BigDecimal inside = size.compareTo(LEAST) == 0 ? BigDecimal.ONE : size;
        return table.value(inside, linear.letter());
    }

    /** Where the tables for lengths hold for this class, in words. */
    String rangesOf(boolean brokenEdge) {
        return (brokenEdge ? BROKEN_EDGES : LINEAR).rangesOf(linear.letter()).replace("over 0.5", "from 0.5");
    }
}
