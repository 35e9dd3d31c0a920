package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Place;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says in the words of a person with a text editor what the JSON parser found. */
final class JsonSyntax {
    private static final Pattern CHARACTER =
            Pattern.compile("character \\(.*code (\\d+)(?: / 0x\\p{XDigit}+)?\\)", Pattern.DOTALL);
    private static final Pattern TOKEN = Pattern.compile("[Tt]oken '([^']*)'");
    private static final String VALUE =
            "a value: text in quotation marks, a number such as 12.5, true, false, null, a list or an object";

    private JsonSyntax() {}

    /**
     * The fault.
     *
     * @param linesBefore how many lines of the file stand before the text
     * @param reached how far the parser came, counted in the file
     * @param last where the last token begins that was read
     */
    static Fault fault(String file, long linesBefore, JsonProcessingException thrown, Place reached, Place last) {
        JsonLocation location = thrown.getLocation();
        Where where = location == null || location.getLineNr() < 1
                ? new Where(file, reached.line(), reached.column(), "")
                : new Where(file, linesBefore + location.getLineNr(), Math.max(1, location.getColumnNr()), "");
        String said = thrown.getOriginalMessage();
        if (thrown instanceof StreamConstraintsException) {
            boolean deep = said.contains("nesting depth");
            // Where a text that is too long is given up hangs on how the bytes came in; where it begins does not.
            return constraint(deep ? where : new Where(file, last.line(), last.column(), ""), deep);
        }
        if (thrown instanceof JsonEOFException || said.startsWith("Unexpected end-of-input")) {
            return syntax(where, "the end of the file", end(said));
        }
        Matcher character = CHARACTER.matcher(said);
        int found = character.find() ? Integer.parseInt(character.group(1)) : -1;
        if (said.startsWith("Illegal unquoted character")) {
            return found == '\n' || found == '\r'
                    ? syntax(where, "the end of the line within a text", "a closing quotation mark")
                    : syntax(where, Echo.character(found) + " within a text", "it written as an escape such as \\t");
        }
        if (said.startsWith("Illegal character") && found >= 0) {
            return syntax(where, Echo.character(found), "only space and line ends between values");
        }
        if (said.startsWith("Unexpected character") && found >= 0) {
            return syntax(where, isHalf(found) ? "a special character" : Echo.character(found), character(said, found));
        }
        if (said.startsWith("Unexpected close marker")) {
            boolean list = said.startsWith("Unexpected close marker '}'");
            return syntax(
                    where,
                    list ? "\"}\"" : "\"]\"",
                    list ? "\"]\", which ends the list" : "\"}\", which ends the object");
        }
        if (said.contains("Leading zeroes")) {
            return syntax(where, "a number that begins with a needless 0", "a number such as 12.5");
        }
        if (said.startsWith("Unrecognized character escape")) {
            return syntax(where, "a backslash before a character that needs none", "\\\\ for a backslash itself");
        }
        Matcher token = TOKEN.matcher(said);
        if (token.find()) {
            String word = token.group(1);
            // The parser has read a word that only other dialects know, and stands behind it.
            boolean behind = said.startsWith("Non-standard") && where.column() > word.length();
            Where before = new Where(file, where.line(), where.column() - (behind ? word.length() : 0), "");
            return syntax(before, Echo.quoted(word), VALUE);
        }
        return Fault.of(FaultKind.SYNTAX, where, "this is no JSON (" + Echo.plain(firstLine(said)) + ")", "", "");
    }

    /** The parser sees the first half of a character that takes two. */
    private static boolean isHalf(int found) {
        return found >= Character.MIN_SURROGATE && found <= Character.MAX_SURROGATE;
    }

    private static String character(String said, int found) {
        if (said.contains("start field name")) {
            if (found == '}') {
                return "a key after the comma, or no comma before \"}\"";
            }
            if (found >= '0' && found <= '9') {
                return "a key in quotation marks; a number has a decimal point, not a comma";
            }
            return "a key in quotation marks (\")";
        }
        if (said.contains("colon")) {
            return "a colon after the key";
        }
        if (said.contains("comma to separate Object")) {
            return "a comma before the next key, or \"}\"";
        }
        if (said.contains("comma to separate Array")) {
            return "a comma before the next item, or \"]\"";
        }
        if (said.contains("comment")) {
            return "no comment; JSON has none";
        }
        if (said.contains("numeric value")) {
            return "a number such as 12.5, with digits on both sides of its point and no plus sign";
        }
        return VALUE;
    }

    private static String end(String said) {
        if (said.contains("for Object")) {
            return "\"}\", which ends the object";
        }
        if (said.contains("for Array")) {
            return "\"]\", which ends the list";
        }
        if (said.contains("quote") || said.contains("field name")) {
            return "a closing quotation mark";
        }
        return "the rest of the JSON document";
    }

    private static Fault constraint(Where where, boolean deep) {
        if (deep) {
            return Fault.of(
                    FaultKind.SYNTAX,
                    where,
                    "",
                    "lists and objects nested more than " + JsonTree.DEEPEST + " deep",
                    "a document of this kind, which is flatter");
        }
        return Fault.of(
                FaultKind.TOO_LARGE, where, "", "a text or number longer than this program reads", "a shorter one");
    }

    private static Fault syntax(Where where, String found, String expected) {
        return Fault.of(FaultKind.SYNTAX, where, "", found, expected);
    }

    private static String firstLine(String text) {
        return text.lines().findFirst().orElse("");
    }
}
