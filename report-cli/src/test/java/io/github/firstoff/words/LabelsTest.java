package io.github.firstoff.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.remark.TextPattern;
import io.github.firstoff.stats.SigmaEstimators;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.chart.ChartCatalogue;
import io.github.firstoff.study.chart.PanelNature;
import io.github.firstoff.study.chart.Side;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class LabelsTest {
    private static final Path MAIN = Path.of("src", "main", "java", "io", "github", "firstoff");

    private static final Path LIBRARY = Path.of("..", "spc-core", "src", "main", "java", "io", "github", "firstoff");

    /** Lists whose keys are put together from a code of the program. */
    private static final Pattern FAMILY = Pattern.compile("word\\(\\s*\"([a-z.-]+?)\\.?\"");

    /** A remark of the program: its key, and its English with or without a plus between its parts. */
    private static final Pattern REMARK = Pattern.compile(
            "Remark\\.of\\(\\s*\"([^\"]+)\"\\s*,\\s*(\"(?:[^\"\\\\\\n]|\\\\.)*\"(?:\\s*\\+\\s*\"(?:[^\"\\\\\\n]|\\\\.)*\")*)");

    private static final Pattern KEY = Pattern.compile("\"([a-z][a-z0-9-]*(?:\\.[a-z0-9-]+)+)\"");

    /** A string literal in Java. */
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");

    private static final Pattern TWO_WORDS = Pattern.compile("[A-Za-z]{2,} +[A-Za-z]{2,}");

    private static Labels german() {
        return Labels.of("de").orElseThrow();
    }

    @Test
    void aPlaceIsFilledAndAWordingChosenByNumberOrTruth() {
        assertThat(Labels.text("counted.pieces", 1)).isEqualTo("1 piece");
        assertThat(Labels.text("counted.pieces", 3L)).isEqualTo("3 pieces");
        assertThat(Labels.text("counts.sizes", true, 4, 4)).isEqualTo(", of 4 each,");
        assertThat(Labels.text("counts.sizes", false, 4, 7)).isEqualTo(", of 4 to 7 each,");
        assertThat(german().speaking(() -> Labels.text("counted.pieces", 2))).isEqualTo("2 Teile");
        assertThat(Labels.text("counted.pieces", 2)).as("afterwards").isEqualTo("2 pieces");
    }

    @Test
    void anUnknownKeyOrAMissingArgumentIsAFaultOfTheProgram() {
        assertThatThrownBy(() -> Labels.text("no.such-key")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Labels.text("counted.pieces")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void germanIsOneFileAndIsFound() {
        assertThat(Labels.languages()).startsWith("en").contains("de");
        assertThat(Labels.of("xx")).isEmpty();
        assertThat(Labels.of("../labels")).isEmpty();
    }

    @Test
    void everyLanguageHasEveryTextAndNoOther() {
        Set<String> english = Labels.ENGLISH.keys();
        for (String language : Labels.languages()) {
            Labels labels = Labels.of(language).orElseThrow();
            assertThat(labels.keys()).as(language).containsAll(english);
            Set<String> own = new TreeSet<>(labels.keys());
            own.removeAll(english);
            assertThat(own).as("only in " + language).isEmpty();
        }
    }

    /** A translation may leave out an argument only where the note says why; it never has one that English lacks. */
    @Test
    void translationsHaveThePlacesOfTheOriginal() {
        // German needs no choice of words there: "erfüllt" and "entschieden" fit both.
        Set<String> excepted = Set.of("headline.accepted-ruled", "past.performance");
        for (String language : Labels.languages()) {
            Labels labels = Labels.of(language).orElseThrow();
            for (String key : Labels.ENGLISH.keys()) {
                if (excepted.contains(key)) {
                    continue;
                }
                assertThat(places(labels.raw(key).orElseThrow()))
                        .as(language + " " + key)
                        .isEqualTo(places(Labels.ENGLISH.raw(key).orElseThrow()));
            }
        }
    }

    /** A place that is not closed, or a choice of one wording, would print something else than its writer thought. */
    @Test
    void everyPlaceOfEveryTextIsWellFormed() {
        List<String> arguments = Collections.nCopies(20, "x");
        for (String language : Labels.languages()) {
            Labels labels = Labels.of(language).orElseThrow();
            for (String key : labels.keys()) {
                TextPattern pattern = new TextPattern(labels.raw(key).orElseThrow());
                assertThatCode(() -> pattern.filled(arguments))
                        .as(language + " " + key)
                        .doesNotThrowAnyException();
            }
        }
    }

    private static Set<String> places(String text) {
        Matcher matcher = Pattern.compile("\\{(\\d+)").matcher(text);
        Set<String> found = new TreeSet<>();
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    @Test
    void everyTextIsUsedAndEveryTextUsedIsThere() {
        String all = everySource();
        Set<String> used = matches(KEY, all);
        Set<String> families = matches(FAMILY, all);
        Set<String> unused = new TreeSet<>(Labels.ENGLISH.keys());
        unused.removeAll(used);
        unused.removeIf(key -> families.stream().anyMatch(family -> key.startsWith(family + ".")));
        assertThat(unused).as("texts that nothing uses").isEmpty();
        Set<String> asked = matches(Pattern.compile("Labels\\.text\\(\\s*\"([a-z0-9.-]+)\""), all);
        assertThat(Labels.ENGLISH.keys()).containsAll(asked);
        assertThat(asked).hasSizeGreaterThan(200);
    }

    private static String everySource() {
        StringBuilder all = new StringBuilder();
        sources(MAIN).forEach(file -> all.append(read(file)));
        sources(LIBRARY).forEach(file -> all.append(read(file)));
        return all.toString();
    }

    /** The library says in English what the file says: whoever translates the file translates every remark. */
    @Test
    void everyRemarkOfTheLibraryIsInTheFileWordForWord() {
        Matcher matcher = REMARK.matcher(everySource());
        Set<String> found = new TreeSet<>();
        while (matcher.find()) {
            found.add(matcher.group(1));
            StringBuilder english = new StringBuilder();
            Matcher literal = LITERAL.matcher(matcher.group(2));
            while (literal.find()) {
                english.append(literal.group(1).replace("\\\"", "\""));
            }
            assertThat(Labels.ENGLISH.raw(matcher.group(1)))
                    .as(matcher.group(1))
                    .contains(english.toString());
        }
        assertThat(found).hasSizeGreaterThan(200);
    }

    /** Words of lists that no single sheet shows all of. */
    @Test
    void closedListsAreComplete() {
        List<Remark> words = new ArrayList<>();
        Stream.of(ChartCatalogue.measured(), ChartCatalogue.counted(), ChartCatalogue.families())
                .flatMap(List::stream)
                .map(method -> method.kind())
                .forEach(kind -> {
                    words.add(Remark.word("chart-title", kind));
                    words.add(Remark.word("chart-in-title", kind));
                });
        CapabilityMethod.CATALOGUE.forEach(method -> words.add(method.family().remark()));
        Stream.of(PanelNature.values()).forEach(nature -> words.add(nature.remark()));
        Stream.of(Side.values()).forEach(side -> words.add(Remark.word("side", side.word())));
        Stream.of(Unit.values()).forEach(unit -> words.add(Remark.word("unit-word", unit.word())));
        Stream.of(Importance.values()).forEach(each -> words.add(Remark.word("class", each.word())));
        Stream.of(Hand.values()).forEach(hand -> words.add(Remark.word("hand", hand.word())));
        for (String estimator : List.of(
                SigmaEstimators.MEAN_RANGE,
                SigmaEstimators.MEAN_STANDARD_DEVIATION,
                SigmaEstimators.POOLED,
                SigmaEstimators.POOLED_UNBIASED,
                SigmaEstimators.MEDIAN_RANGE,
                SigmaEstimators.MEDIAN_MOVING_RANGE,
                SigmaEstimators.MEAN_MOVING_RANGE,
                SigmaEstimators.SAMPLE)) {
            words.add(Remark.word("estimator", estimator));
            words.add(Remark.word("spread-by", estimator));
        }
        assertThat(words).hasSizeGreaterThan(70);
        assertThat(words).allSatisfy(word -> assertThat(Labels.ENGLISH.keys()).contains(word.key()));
    }

    @Test
    void noSectionHasASentenceOfItsOwn() {
        List<String> found = new ArrayList<>();
        Stream.concat(sources(MAIN.resolve("report/section")), sources(MAIN.resolve("report/kind")))
                .forEach(file -> sentences(file, found));
        assertThat(found).isEmpty();
    }

    private static void sentences(Path file, List<String> found) {
        String source = read(file).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)//.*$", "");
        // Messages to programmers, which no sheet shows, and beginnings of notes that are recognised, not printed.
        source = source.replaceAll("(?s)throw new [A-Za-z]+\\(.*?;", "")
                .replaceAll("(?s)private boolean isToldHere\\(.*?\\n    }\\n", "")
                .replaceAll("\\.replace\\([^)]*\\)", "");
        Matcher matcher = LITERAL.matcher(source);
        while (matcher.find()) {
            boolean date = matcher.group(1).startsWith("uuuu");
            if (!date && TWO_WORDS.matcher(matcher.group(1)).find()) {
                found.add(file.getFileName() + ": " + matcher.group(1));
            }
        }
    }

    private static Stream<Path> sources(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".java")).toList().stream();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static Set<String> matches(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
