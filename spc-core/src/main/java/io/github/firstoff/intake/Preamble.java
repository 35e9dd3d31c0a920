package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedPlan;
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
    private static final Pattern PART_NUMBER =
            Pattern.compile("(?i)\\bpart\\s*[-_]?\\s*(?:number|num|no|nr|#)\\.?\\s*[:=;,|\\t]*\\s*\"?([^\\s\":=;,|]+)");
    private static final Pattern REVISION =
            Pattern.compile("(?i)\\brev(?:ision)?\\b\\.?\\s*[:=;,|\\t]*\\s*\"?([^\\s\":=;,|]+)");
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
        check("line", Where.inFile(file), placed, plan, sink);
    }

    /** A line, or a row of a sheet, and where it stands. */
    record Line(Where where, String text) {}

    /**
     * Checks lines and names them.
     *
     * @param word what a line is called
     * @param where where they stand together
     */
    static void check(String word, Where where, List<Line> lines, ResolvedPlan plan, ReadingSink sink) {
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
            boolean one = lines.size() == 1;
            long first = lines.get(0).where().line();
            long last = lines.get(lines.size() - 1).where().line();
            sink.notice(
                    where,
                    word + (one ? " " + first + " stands" : "s " + first + " to " + last + " stand")
                            + " before the heading and " + (one ? "was" : "were") + " not used" + said);
        }
    }

    private static String shortened(String line) {
        return line.length() > LONGEST_QUOTED ? line.substring(0, LONGEST_QUOTED) + "…" : line;
    }

    /** Refuses a line that is not used if it says that the readings are of another part, revision or hand. */
    static void checkLine(Where where, String line, PartIdentity part, ReadingSink sink) {
        Matcher number = PART_NUMBER.matcher(line);
        boolean other = number.find() && !number.group(1).equals(part.number());
        if (other || namesCounterpart(line, part.counterpart())) {
            String found = other ? number.group(1) : part.counterpart().orElseThrow();
            boolean counterpart = part.counterpart().filter(found::equals).isPresent();
            sink.refuse(Fault.of(
                    FaultKind.OTHER_PART,
                    where,
                    counterpart
                            ? "the readings are of the part of the other hand"
                            : "the readings are of another part than the plan",
                    Echo.quoted(found),
                    Echo.quoted(part.number())));
        }
        Matcher revision = REVISION.matcher(line);
        if (revision.find() && !revision.group(1).equals(part.revision())) {
            sink.refuse(Fault.of(
                    FaultKind.OTHER_PART,
                    where,
                    "the readings are of another revision than the plan",
                    Echo.quoted(revision.group(1)),
                    Echo.quoted(part.revision())));
        }
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
