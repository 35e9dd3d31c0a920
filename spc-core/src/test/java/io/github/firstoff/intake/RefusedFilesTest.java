package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every malformed file under {@code resources/intake} is refused with exactly the words that stand beside it in a file of the same name
 * with {@code .expected} at its end. There {@code {any}} stands for words that another package is free to choose.
 */
class RefusedFilesTest {
    private static final Path FOLDER = Path.of("src/test/resources/intake");
    private static final int FEWEST = 300;

    @TestFactory
    Stream<DynamicTest> everyMalformedFileIsRefusedInTheseWords() throws IOException {
        ResolvedPlan plan = plan();
        return malformed().stream()
                .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> {
                    List<String> expected = Files.readAllLines(file.resolveSibling(file.getFileName() + ".expected"));
                    assertThat(expected).as("what is accepted is not malformed").doesNotContain("accepted");
                    assertThat(refusal(file, plan)).satisfies(lines -> assertThatLinesMatch(lines, expected));
                }));
    }

    @Test
    void thereAreManyMalformedFiles_soAnEmptyFolderCannotPass() throws IOException {
        assertThat(malformed()).hasSizeGreaterThan(FEWEST);
    }

    @Test
    void noWordsOfARefusalCanMoveATerminal() throws IOException {
        ResolvedPlan plan = plan();
        for (Path file : malformed()) {
            for (String line : refusal(file, plan)) {
                assertThat(line.chars().filter(Character::isISOControl))
                        .as(line)
                        .isEmpty();
                assertThat(line).doesNotContain("Exception");
            }
        }
    }

    private static ResolvedPlan plan() {
        return PlanFile.read(FOLDER.resolve("plan.json")).resolve();
    }

    private static List<Path> malformed() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(file -> file.getFileName().toString().contains("-invalid-"))
                    .filter(file -> !file.toString().endsWith(".expected"))
                    .sorted()
                    .toList();
        }
    }

    private static List<String> refusal(Path file, ResolvedPlan plan) throws IOException {
        String name = file.getFileName().toString();
        try (InputStream stream = Files.newInputStream(file)) {
            Input input = Input.stream(name, stream);
            if (name.startsWith("plan-")) {
                PlanFile.read(input).resolve();
            } else if (name.startsWith("table-")) {
                PlanDraft.of(input, List.of(), Map.of());
            } else if (name.startsWith("job-")) {
                JobFile.read(input);
            } else if (name.startsWith("mapping-")) {
                Mapping.read(input);
            } else if (name.startsWith("cell-")) {
                Mapping mapping = Mapping.read(Input.file(FOLDER.resolve("cell.mapping.json")));
                ReadingFiles.readInputs(plan, List.of(input), IntakeSettings.USUAL.withMapping(mapping))
                        .recordOrRefuse();
            } else if (name.startsWith("places-")) {
                ResolvedPlan places =
                        PlanFile.read(FOLDER.resolve("places.json")).resolve();
                ReadingFiles.readInputs(places, List.of(input)).recordOrRefuse();
            } else {
                ReadingFiles.readInputs(plan, List.of(input)).recordOrRefuse();
            }
            return List.of("accepted");
        } catch (InputRefused refused) {
            return refused.lines();
        }
    }

    private static void assertThatLinesMatch(List<? extends String> lines, List<String> expected) {
        List<String> shown = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            boolean matches = i < expected.size() && matches(lines.get(i), expected.get(i));
            shown.add(matches ? expected.get(i) : lines.get(i));
        }
        assertThat(shown).isEqualTo(expected);
    }

    private static boolean matches(String line, String expected) {
        int from = 0;
        int end = line.length();
        String[] pieces = expected.split("\\{any\\}", -1);
        for (int i = 0; i < pieces.length; i++) {
            String piece = pieces[i];
            boolean last = i == pieces.length - 1;
            int at = last && pieces.length > 1 ? Math.max(from, end - piece.length()) : line.indexOf(piece, from);
            if (at < 0 || !line.startsWith(piece, at) || (i == 0 && at != 0)) {
                return false;
            }
            from = at + piece.length();
        }
        return from == end;
    }
}
