package io.github.firstoff.remark;

import java.util.List;

/**
 * A text with places for arguments: {@code {0}} is the first argument as it is; {@code {0|piece|pieces}} is the first wording if
 * the first argument is the number 1 or {@code true}, else the second, and either may hold places itself. Numbers are printed as
 * they come: whoever words a figure has rounded it before.
 *
 * @param text the text with its places
 */
public record TextPattern(String text) {
    /**
     * The text with its places filled.
     *
     * @param arguments what stands in the places
     * @return the sentence
     * @throws IllegalArgumentException if there is a place that nothing stands in, or one that does not end
     */
    public String filled(List<?> arguments) {
        StringBuilder out = new StringBuilder();
        new Filling(text, arguments).until("", out);
        return out.toString();
    }

    /** Fills the places of one text. */
    private static final class Filling {
        private final String pattern;
        private final List<?> arguments;
        private int at;

        Filling(String pattern, List<?> arguments) {
            this.pattern = pattern;
            this.arguments = arguments;
        }

        /** Copies up to one of these signs, or to the end, and fills places on the way. */
        private void until(String ends, StringBuilder out) {
            while (at < pattern.length() && ends.indexOf(pattern.charAt(at)) < 0) {
                char c = pattern.charAt(at);
                at++;
                if (c == '{') {
                    place(out);
                } else {
                    out.append(c);
                }
            }
        }

        private void place(StringBuilder out) {
            int start = at;
            while (at < pattern.length() && Character.isDigit(pattern.charAt(at))) {
                at++;
            }
            int number = start < at ? Integer.parseInt(pattern.substring(start, at)) : arguments.size();
            if (number >= arguments.size()) {
                throw new IllegalArgumentException("the text \"" + pattern + "\" has a place that nothing stands in");
            }
            Object argument = arguments.get(number);
            if (at < pattern.length() && pattern.charAt(at) == '|') {
                StringBuilder one = new StringBuilder();
                StringBuilder other = new StringBuilder();
                at++;
                until("|}", one);
                expect('|');
                until("}", other);
                out.append(isOne(argument) ? one : other);
            } else {
                out.append(argument);
            }
            expect('}');
        }

        private void expect(char sign) {
            if (at >= pattern.length() || pattern.charAt(at) != sign) {
                throw new IllegalArgumentException("the text \"" + pattern + "\" has a place that does not end");
            }
            at++;
        }

        private static boolean isOne(Object argument) {
            return argument instanceof Number number ? number.longValue() == 1 : Boolean.TRUE.equals(argument);
        }
    }
}
