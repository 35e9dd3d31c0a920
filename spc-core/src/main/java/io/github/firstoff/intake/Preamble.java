package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The lines that an export puts before its heading. They are not used, but named, and what they say of the part is held against the
 * plan: readings of another part must not pass because their part number stands on line 3 and not in a column.
 */
final class Preamble {
    /** What stands between a label and what it labels: space, signs, the delimiter, quotation marks of fields. */
    private static final String BETWEEN = "[\\s:=;,|\"]*";

    private static final String WORD = "([^\\s\":=;,|]+)";
    private static final String NO_LETTER_BEFORE = "(?i)(?<![\\p{L}\\d])";
    private static final String NO_LETTER_BEHIND = "(?![\\p{L}\\d])";

    private static final Pattern PART_NUMBER = Pattern.compile(NO_LETTER_BEFORE
            + "(?:part\\s*[-_]?\\s*(?:(?:number|num|no|nr)" + NO_LETTER_BEHIND + "|#)|p\\s?/\\s?n" + NO_LETTER_BEHIND
            + "|(?:teile|artikel|sach)[- ]?(?:nummer|nr)" + NO_LETTER_BEHIND + ")\\.?" + BETWEEN + WORD);
    private static final Pattern REVISION =
            Pattern.compile(NO_LETTER_BEFORE + "rev(?:ision)?" + NO_LETTER_BEHIND + "\\.?" + BETWEEN + WORD);
    private static final Pattern HAND = Pattern.compile(
            NO_LETTER_BEFORE + "hand" + NO_LETTER_BEHIND + BETWEEN + "(port|starboard|left|right)" + NO_LETTER_BEHIND);
    /** Labels that may stand before a part number or before a piece's name; the shape of what is labelled tells which. */
    private static final Pattern PART = Pattern.compile(
            NO_LETTER_BEFORE + "(?:part|item|article|component|product|teil|bauteil|artikel)\\s*(?:id)?\\s*[:=;,|\\t\"]"
                    + BETWEEN + WORD);

    private static final Pattern DRAWING = Pattern.compile(NO_LETTER_BEFORE
            + "(?:drawing|drg|dwg)(?:\\s*(?:number|num|no|nr))?" + NO_LETTER_BEHIND + "\\.?" + BETWEEN + WORD);
    /** A label where a value should be: the field before it was left blank. */
    private static final Pattern LABEL = Pattern.compile(
            "(?i)(?:rev(?:ision)?|hand|name|drawing|date|time|operator|inspector|order|batch|lot|customer|material|machine|serial)\\.?");

    private static final Pattern TOKEN = Pattern.compile("[^\\s\":=;,|()]+");
    private static final int LONGEST_QUOTED = 40;
    private static final int LINES_QUOTED = 5;

    private Preamble() {}

    /** Checks the lines of a text and names them. */
    static void check(String file, List<String> lines, ResolvedPlan plan, ReadingSink sink) {
        List<Line> placed = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            placed.add(new Line(new Where(file, i + 1L, 0, ""), lines.get(i)));
        }
        check(false, Where.inFile(file), placed, plan, sink);
    }

    /** A line, or a row of a sheet, and where it stands. */
    record Line(Where where, String text) {}

    /**
     * Checks lines and names them.
     *
     * @param rows whether they are rows of a sheet
     * @param where where they stand together
     */
    static void check(boolean rows, Where where, List<Line> lines, ResolvedPlan plan, ReadingSink sink) {
        StringBuilder said = new StringBuilder();
        int quoted = 0;
        for (Line line : lines) {
            checkLine(line.where(), line.text(), plan.part(), sink);
            if (!line.text().isBlank() && quoted < LINES_QUOTED) {
                quoted++;
                said.append(said.length() == 0 ? ": " : ", ")
                        .append(Echo.quoted(shortened(line.text().strip())));
            }
        }
        if (!lines.isEmpty()) {
            long first = lines.get(0).where().line();
            long last = lines.get(lines.size() - 1).where().line();
            sink.notice(
                    where,
                    rows
                            ? Remark.of(
                                    "notice.rows-before-heading",
                                    "{0|row {1} stands|rows {1} to {2} stand} before the heading and {0|was|were} not used{3}",
                                    lines.size(),
                                    first,
                                    last,
                                    said)
                            : Remark.of(
                                    "notice.lines-before-heading",
                                    "{0|line {1} stands|lines {1} to {2} stand} before the heading and {0|was|were} not used{3}",
                                    lines.size(),
                                    first,
                                    last,
                                    said));
        }
    }

    private static String shortened(String line) {
        return line.length() > LONGEST_QUOTED ? line.substring(0, LONGEST_QUOTED) + "…" : line;
    }

    /** Refuses a line that is not used if it says that the readings are of another part, revision or hand. */
    static void checkLine(Where where, String line, PartIdentity part, ReadingSink sink) {
        Optional<String> number = labelled(PART_NUMBER, line)
                .or(() -> labelled(PART, line).filter(text -> isShapedLike(text, part.number())))
                .filter(text -> !text.equals(part.number()));
        if (number.isPresent() || namesCounterpart(line, part.counterpart())) {
            String found = number.orElseGet(() -> part.counterpart().orElseThrow());
            boolean counterpart = part.counterpart().filter(found::equals).isPresent();
            refuse(
                    where,
                    counterpart
                            ? "the readings are of the part of the other hand"
                            : "the readings are of another part than the plan",
                    found,
                    part.number(),
                    sink);
        }
        labelled(REVISION, line)
                .filter(text -> !text.equals(part.revision()))
                .ifPresent(text -> refuse(
                        where, "the readings are of another revision than the plan", text, part.revision(), sink));
        part.drawing()
                .ifPresent(drawing -> labelled(DRAWING, line)
                        .filter(text -> !text.equals(drawing) && isShapedLike(text, drawing))
                        .ifPresent(text -> refuse(
                                where, "the readings are made to another drawing than the plan", text, drawing, sink)));
        Optional<Hand> stated = labelled(HAND, line).flatMap(Hand::parse);
        part.hand()
                .ifPresent(own -> stated.filter(hand -> hand.isLeft() != own.isLeft())
                        .ifPresent(hand -> refuse(
                                where,
                                "the readings are of the other hand than the plan",
                                hand.word(),
                                own.word(),
                                sink)));
    }

    private static void refuse(Where where, String message, String found, String expected, ReadingSink sink) {
        sink.refuse(Fault.of(FaultKind.OTHER_PART, where, message, Echo.quoted(found), Echo.quoted(expected)));
    }

    private static Optional<String> labelled(Pattern label, String line) {
        Matcher matcher = label.matcher(line);
        return matcher.find() && !LABEL.matcher(matcher.group(1)).matches()
                ? Optional.of(matcher.group(1))
                : Optional.empty();
    }

    /** Letters where the other has letters and figures where it has figures. A number without letters could be of anything. */
    private static boolean isShapedLike(String text, String other) {
        return shape(text).equals(shape(other)) && shape(other).indexOf('A') >= 0;
    }

    private static String shape(String text) {
        return text.replaceAll("\\p{L}", "A").replaceAll("\\d", "9");
    }

    /** Whether the part number of the other hand stands in the line, whatever it is called there. */
    private static boolean namesCounterpart(String line, Optional<String> counterpart) {
        Matcher tokens = TOKEN.matcher(line);
        while (counterpart.isPresent() && tokens.find()) {
            if (tokens.group().equals(counterpart.get())) {
                return true;
            }
        }
        return false;
    }
}
