package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import io.github.firstoff.report.model.ReportModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every kind of sheet in every language, on both papers, with a firm's house file and without: made again, and held against its figures. */
class SheetsOfEveryKindTest {
    /** How a difference on a page is told; charts are pictures of their own beside the drawing of the page. */
    private static final Pattern ON_A_PAGE =
            Pattern.compile("Page \\d+ prints|the drawing of page \\d+|a picture on page \\d+");

    /** Where else a changed text may be found: it need not stand on a page. */
    private static final Pattern ANYWHERE = Pattern.compile(ON_A_PAGE + "|structure for reading aloud|the outline");

    @TempDir
    private static Path folder;

    /** A sheet of a kind, on a paper, in a language. */
    record Printed(Samples.Made sample, String language, String paper, boolean house) {
        byte[] made() throws IOException {
            Path pdf = Files.createTempDirectory(folder, "sheet").resolve("sheet.pdf");
            List<String> more = new ArrayList<>(List.of("--language", language, "--paper", paper));
            if (house) {
                more.addAll(List.of(
                        "--house",
                        Samples.FOLDER.resolve("hollin-quay.house.json").toString()));
            }
            Samples.Run run = sample.make(pdf, more.toArray(String[]::new));
            assertThat(run.code()).as(run.err()).isLessThanOrEqualTo(ExitCodes.NOT_ACCEPTED);
            return Files.readAllBytes(pdf);
        }

        @Override
        public String toString() {
            return sample + " " + language + " " + paper + (house ? " house" : "");
        }
    }

    static Stream<Samples.Made> kinds() {
        return Samples.oneOfEachKind();
    }

    static Stream<Printed> inBothLanguages() {
        return kinds().flatMap(sample ->
                Stream.of(new Printed(sample, "en", "a4", false), new Printed(sample, "de", "letter", true)));
    }

    static Stream<Printed> inEveryWay() {
        return kinds().flatMap(sample -> Stream.of("en", "de")
                .flatMap(language -> Stream.of("a4", "letter")
                        .flatMap(paper ->
                                Stream.of(true, false).map(house -> new Printed(sample, language, paper, house)))));
    }

    private static Samples.Run verify(byte[] file) throws IOException {
        Samples.Run run = Samples.run(
                "verify", Files.write(folder.resolve("checked.pdf"), file).toString());
        assertThat(run.err()).isEmpty();
        return run;
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("inEveryWay")
    void verify_everyKindInEveryWay_isTheSameFile(Printed sheet) throws IOException {
        Samples.Run run = verify(sheet.made());
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out()).contains("the same file to the last byte");
    }

    /** A handful of figures of each sheet, drawn by chance with a fixed seed. */
    @ParameterizedTest
    @MethodSource("inBothLanguages")
    void verify_aFigureChangedOnThePage_isNamed(Printed sheet) throws IOException {
        byte[] file = sheet.made();
        assertThat(verify(file).code()).isZero();
        Forger forger = new Forger(file);
        int count = OneFigureChanged.count(forger.model());
        assertThat(count).isGreaterThan(20);
        new Random(20261125).ints(3, 0, count).forEach(place -> changed(forger, place));
    }

    /** Each figure of each sheet, one after the other. */
    @Tag("slow")
    @ParameterizedTest
    @MethodSource("inBothLanguages")
    void verify_eachFigureChangedOnThePage_isNamed(Printed sheet) throws IOException {
        Forger forger = new Forger(sheet.made());
        int count = OneFigureChanged.count(forger.model());
        // Charts have thousands of points; beyond so many every n-th is enough.
        int step = Math.max(1, count / 150);
        int named = 0;
        for (int place = 0; place < count; place += step) {
            named += changed(forger, place) ? 1 : 0;
        }
        assertThat(named).isGreaterThan(Math.min(100, count / step / 2));
    }

    /**
     * One figure changed in what is printed and nowhere else.
     *
     * @return whether the page changed at all: a figure may be that of a picture that shows no difference
     */
    private static boolean changed(Forger forger, int place) {
        List<String> said = new ArrayList<>();
        ReportModel lie = OneFigureChanged.at(forger.model(), place, said);
        if (lie.equals(forger.model())) {
            return false;
        }
        try {
            byte[] forged = forger.forged(lie);
            Samples.Run run = verify(forged);
            assertThat(run.code()).as(said + run.out()).isEqualTo(ExitCodes.NOT_ACCEPTED);
            // A number of a picture may move nothing that is drawn: a nought by too little, a mark that stands beyond
            // the end of its scale.
            // The file is another all the same.
            if (!said.toString().startsWith("[number")) {
                assertThat(run.out()).as(said.toString()).containsPattern(ANYWHERE);
            }
            return ON_A_PAGE.matcher(run.out()).find();
        } catch (IOException | IllegalArgumentException fault) {
            throw new AssertionError(said.toString(), fault);
        }
    }

    private static String older(String manifest) {
        return manifest.replace("\"program\" : \"" + ProgramVersion.text() + "\"", "\"program\" : \"firstoff 0.0.9\"");
    }

    /** A sheet of an older version: its version is said, and it is checked by the figures that it carries. */
    @ParameterizedTest
    @MethodSource("inBothLanguages")
    void verify_aSheetOfAnOlderVersion_isCheckedByItsFigures(Printed sheet) throws IOException {
        Forger forger = new Forger(sheet.made());
        Samples.Run run = verify(forger.forged(forger.model(), Map.of("manifest.json", SheetsOfEveryKindTest::older)));
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out())
                .contains("The sheet was made by firstoff 0.0.9; this is " + ProgramVersion.text())
                .containsPattern("All [1-9]\\d* figures of its result that it prints as they are stand on its pages");
    }

    /** What the older version reckoned in another way is named with both figures. */
    @ParameterizedTest
    @MethodSource("kinds")
    void verify_aSheetOfAnOlderVersionThatReckonedOtherwise_namesTheFigure(Samples.Made sample) throws IOException {
        Forger forger = new Forger(new Printed(sample, "en", "a4", false).made());
        List<String> changed = new ArrayList<>();
        byte[] otherwise = forger.forged(
                forger.model(), Map.of("manifest.json", SheetsOfEveryKindTest::older, "result.json", text -> {
                    Matcher figure = Pattern.compile("\\b(\\d)(\\.\\d{3,})\\b").matcher(text);
                    assertThat(figure.find()).isTrue();
                    changed.add(figure.group(1).equals("9") ? "8" + figure.group(2) : "9" + figure.group(2));
                    return text.substring(0, figure.start()) + changed.get(0) + text.substring(figure.end());
                }));
        Samples.Run run = verify(otherwise);
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out())
                .contains("The sheet was made by firstoff 0.0.9")
                .containsPattern(Pattern.quote(changed.get(0)) + ".*when reckoned again");
    }

    /** What the older version said in other words, with the same figures, is not taken for another result. */
    @ParameterizedTest
    @MethodSource("kinds")
    void verify_aSheetOfAnOlderVersionThatSpokeOtherwise_saysSo(Samples.Made sample) throws IOException {
        Forger forger = new Forger(new Printed(sample, "en", "a4", false).made());
        List<String> words = new ArrayList<>();
        UnaryOperator<String> otherwise = text -> {
            // The first text of several words that is not what an entry is known by.
            Matcher sentence = Pattern.compile(
                            "\"(?!number|outer|name|moment|part|gauge|test|program|batch)(\\w+)\" : \"([^\"]* [^\"]*)\"")
                    .matcher(text);
            assertThat(sentence.find()).isTrue();
            words.add(sentence.group(2));
            return text.substring(0, sentence.start(2)) + "In short: " + text.substring(sentence.start(2));
        };
        Samples.Run reworded = verify(forger.forged(
                forger.model(), Map.of("manifest.json", SheetsOfEveryKindTest::older, "result.json", otherwise)));
        assertThat(reworded.out()).contains("in other words, with the same figures");
        assertThat(reworded.out()).doesNotContain("In short: ".concat(words.get(0)) + "\u201D on the sheet");
        // The same version never says the same thing in two ways.
        Samples.Run same = verify(forger.forged(forger.model(), Map.of("result.json", otherwise)));
        assertThat(same.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(same.out()).contains("In short");
    }
}
