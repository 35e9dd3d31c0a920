package io.github.firstoff.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A study in short, as a cell of a table says it: a chart, the size of its subgroups, and how many first points set its limits. Charts
 * may have the names that ISO 7870-2:2013 gives them in words (from memory). A chart that is not known is left to whoever reads the plan.
 *
 * @param chart the chart, by its name in a plan if it is known
 * @param subgroup the size of the subgroups
 * @param baseline how many first points set the limits
 */
record StudyWords(String chart, Optional<Integer> subgroup, Optional<Integer> baseline) {
    private static final Pattern SHORT = Pattern.compile(
            "(?iu)(\\p{L}[\\p{L}\\p{M}\\-/& ]*?)(?:\\s*[,;(]?\\s*(?:n\\s*=\\s*|of\\s+|subgroups?(?:\\s+of)?\\s*|von\\s+|zu\\s+)?(\\d{1,4})\\s*\\)?)?"
                    + "(?:\\s*[,;]?\\s*baseline\\s*(\\d{1,7}))?");

    private static final int LONGEST = 100;
    private static final Map<String, String> CHARTS = charts();

    private static Map<String, String> charts() {
        Map<String, String> all = new HashMap<>();
        names(
                all,
                "individuals",
                List.of(
                        "individual",
                        "individual values",
                        "individuals and moving range",
                        "i-mr",
                        "x-mr",
                        "Einzelwerte",
                        "Einzelwertkarte"));
        names(
                all,
                "xbar-r",
                List.of(
                        "mean and range",
                        "average and range",
                        "mean-range",
                        "xbar and r",
                        "Mittelwert und Spannweite"));
        names(
                all,
                "xbar-s",
                List.of(
                        "mean and standard deviation",
                        "average and standard deviation",
                        "xbar and s",
                        "Mittelwert und Standardabweichung"));
        names(all, "median-r", List.of("median and range", "Median und Spannweite"));
        return Map.copyOf(all);
    }

    private static void names(Map<String, String> all, String chart, List<String> names) {
        all.put(folded(chart), chart);
        names.forEach(name -> all.put(folded(name), chart));
    }

    /** What the text says; empty if it is not of this form. */
    static Optional<StudyWords> parse(String text) {
        Matcher matcher = SHORT.matcher(text);
        if (text.length() > LONGEST || !matcher.matches()) {
            return Optional.empty();
        }
        String chart = matcher.group(1);
        return Optional.of(new StudyWords(
                CHARTS.getOrDefault(folded(chart), chart), number(matcher.group(2)), number(matcher.group(3))));
    }

    private static Optional<Integer> number(@Nullable String digits) {
        return Optional.ofNullable(digits).map(Integer::valueOf);
    }

    private static String folded(String name) {
        return name.toLowerCase(Locale.ROOT)
                .replace("x\u0304", "xbar")
                .replaceAll("\\b(?:and|und|chart|karte)\\b", "")
                .replaceAll("[^\\p{L}]", "");
    }
}
