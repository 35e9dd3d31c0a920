package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a requirement as a drawing prints it (ISO 129-1, ISO 286, ISO 1101, ISO 21920-1, ASME Y14.5).
 *
 * <p>Sizes {@code 12.5 ±0.05}, {@code 12.5 +0.02/-0.01}, {@code 51.95..52.05}, {@code 12 max}, {@code Ø52 P7}, {@code 40},
 * {@code [40]}, {@code (40)}; angles {@code 45° ±30'}; roughness {@code Ra 0.8 max}; geometric tolerances
 * {@code position Ø0.1 (M) A B C}; attributes {@code M5x0.8-6H go/no-go}, {@code visual: …}, {@code function: …};
 * counts {@code nonconformities 3 max}. The decimal mark
 * is the point. What cannot be read in exactly one way is refused, with the place and what would be understood.
 */
public final class RequirementNotation {
    private static final Pattern DESCRIBED = Pattern.compile("(?i)\\s*(visual|function|functional)\\s*:\\s*(.*)");
    private static final Pattern GAUGED =
            Pattern.compile("(?i)(.*?)[\\s,]*\\bgo\\s*(?:/|-|and|\\s)\\s*no[\\s-]*go\\s*");
    private static final Pattern THREAD = Pattern.compile(
            "(?i)\\s*(?:M|MJ|Tr|G|Rp|Rc)\\s?\\d.*|.*\\b(?:UNC|UNF|UNEF|UNJF|UNJC|UNS|NPT|BSP|BSW)\\b.*");
    private static final Pattern MARKED_REFERENCE = Pattern.compile("(?i)(.*\\S)\\s+ref\\.?\\s*");
    private static final Pattern MARKED_EXACT = Pattern.compile("(?i)(.*\\S)\\s+(?:basic|bsc|ted)\\.?\\s*");
    private static final Pattern COUNTING = Pattern.compile("(?i)\\s*nonconformities\\b.*");
    private static final Pattern COUNTED =
            Pattern.compile("(?i)\\s*nonconformities\\s+(\\d{1,9})(?:\\s+max\\.?)?\\s*(?::(.*))?");
    private static final int LONGEST = 500;

    private RequirementNotation() {}

    /**
     * The requirement that the text states.
     *
     * @throws RequirementFault if the text has no meaning, or more than one
     */
    public static Requirement parse(String text) {
        if (text.isBlank()) {
            throw new RequirementFault(text, 0, "the requirement is empty", "12.5 ±0.05");
        }
        if (text.length() > LONGEST) {
            throw new RequirementFault(
                    text, LONGEST, "the requirement is longer than " + LONGEST + " characters", "a shorter text");
        }
        for (int i = 0; i < text.length(); i++) {
            if (Character.isISOControl(text.charAt(i)) && text.charAt(i) != '\t') {
                throw new RequirementFault(text, i, "a requirement is one line of text", "");
            }
        }
        Optional<Requirement> counted = counted(text);
        if (counted.isPresent()) {
            return counted.get();
        }
        Optional<Requirement> attribute = attribute(text);
        if (attribute.isPresent()) {
            return attribute.get();
        }
        Scanner in = new Scanner(text);
        in.skipSpace();
        Optional<Integer> count = countBeforeBracket(in);
        if (in.peek() == '[') {
            return enclosed(in, "]", Requirement.Nature.EXACT, count);
        }
        if (in.peek() == '(') {
            return enclosed(in, ")", Requirement.Nature.REFERENCE, count);
        }
        Optional<GeometricCharacteristic> geometric = GeometricNotation.characteristic(in);
        if (geometric.isPresent()) {
            return GeometricNotation.read(in, geometric.get());
        }
        Optional<String> roughness = RoughnessNotation.parameter(in);
        if (roughness.isPresent()) {
            return RoughnessNotation.read(in, roughness.get());
        }
        if (THREAD.matcher(text).matches()) {
            throw in.fault(
                    "a thread is checked with a gauge and has no limits of its own here", text.strip() + " go/no-go");
        }
        Optional<Requirement> marked = marked(text);
        return marked.isPresent() ? marked.get() : SizeNotation.read(in);
    }

    private static Optional<Requirement> counted(String text) {
        if (!COUNTING.matcher(text).matches()) {
            return Optional.empty();
        }
        Matcher counted = COUNTED.matcher(text);
        if (!counted.matches()) {
            throw new RequirementFault(
                    text,
                    text.toLowerCase(Locale.ROOT).indexOf(CountedRequirement.WORD) + CountedRequirement.WORD.length(),
                    "how many nonconformities may be there is a whole number and an upper limit",
                    CountedRequirement.WORD + " 3 max");
        }
        Optional<String> what =
                Optional.ofNullable(counted.group(2)).map(String::strip).filter(said -> !said.isEmpty());
        return Optional.of(new CountedRequirement(new BigDecimal(counted.group(1)), what));
    }

    private static Optional<Requirement> attribute(String text) {
        Matcher described = DESCRIBED.matcher(text);
        if (described.matches()) {
            String what = described.group(2).strip();
            AttributeCheck.Means means =
                    described.group(1).toLowerCase(Locale.ROOT).startsWith("v")
                            ? AttributeCheck.Means.VISUAL
                            : AttributeCheck.Means.FUNCTION;
            if (what.isEmpty()) {
                throw new RequirementFault(
                        text,
                        text.length(),
                        "what is to be checked is missing",
                        means.word() + ": no burrs, edges broken 0.2 max");
            }
            return Optional.of(new AttributeCheck(means, what));
        }
        Matcher gauged = GAUGED.matcher(text);
        if (gauged.matches()) {
            String what = gauged.group(1).strip();
            if (what.isEmpty()) {
                throw new RequirementFault(text, 0, "what the gauge checks is missing", "M5x0.8-6H go/no-go");
            }
            return Optional.of(new AttributeCheck(AttributeCheck.Means.GAUGE, what));
        }
        return Optional.empty();
    }

    /** Steps over the count of {@code 4x [40]}; where no bracket follows, the count belongs to the size and stays. */
    private static Optional<Integer> countBeforeBracket(Scanner in) {
        int start = in.position();
        String digits = in.digits();
        if (!digits.isEmpty() && digits.length() <= 4 && (in.accept("x") || in.accept("X"))) {
            in.skipSpace();
            if ((in.peek() == '[' || in.peek() == '(') && Integer.parseInt(digits) > 0) {
                return Optional.of(Integer.valueOf(digits));
            }
        }
        in.back(start);
        return Optional.empty();
    }

    private static Requirement enclosed(Scanner in, String close, Requirement.Nature nature, Optional<Integer> count) {
        boolean exact = nature == Requirement.Nature.EXACT;
        in.accept(exact ? "[" : "(");
        Dimension inside = SizeNotation.dimension(in);
        if (count.isPresent() && inside.prefix().count().isPresent()) {
            throw in.fault(0, "the count is stated twice", inside.text());
        }
        Dimension dimension = count.isPresent()
                ? new Dimension(
                        new Dimension.Prefix(count, inside.prefix().symbol()),
                        inside.nominal(),
                        inside.chamferAngle(),
                        inside.unit())
                : inside;
        if (!in.accept(close)) {
            throw in.fault(
                    in.atEnd()
                            ? "the closing " + close + " is missing"
                            : (exact ? "a theoretically exact" : "a reference") + " dimension has no tolerance: "
                                    + Scanner.quoted(in.nextWord()),
                    exact ? "[" + dimension.text() + "]" : "(" + dimension.text() + ")");
        }
        Requirement read = new UnjudgedSize(SizeNotation.withUnit(in, dimension), nature);
        in.expectEnd(before -> read.text());
        return read;
    }

    /** The spelled forms {@code 40 REF} and {@code 40 BASIC}. */
    private static Optional<Requirement> marked(String text) {
        Matcher reference = MARKED_REFERENCE.matcher(text);
        if (reference.matches()) {
            return Optional.of(unjudged(text, reference.group(1), Requirement.Nature.REFERENCE));
        }
        Matcher exact = MARKED_EXACT.matcher(text);
        return exact.matches()
                ? Optional.of(unjudged(text, exact.group(1), Requirement.Nature.EXACT))
                : Optional.empty();
    }

    private static Requirement unjudged(String text, String size, Requirement.Nature nature) {
        Scanner in = new Scanner(size);
        Dimension dimension = SizeNotation.withUnit(in, SizeNotation.dimension(in));
        if (!in.atEnd()) {
            throw new RequirementFault(
                    text,
                    in.position(),
                    "a dimension that is never judged has no tolerance: " + Scanner.quoted(in.nextWord()),
                    new UnjudgedSize(dimension, nature).text());
        }
        return new UnjudgedSize(dimension, nature);
    }
}
