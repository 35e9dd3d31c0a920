package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command that reads readings says what became of their rows, whether it could use them or not. */
class RowsAreCountedTest {
    private static final String PLAN =
            Samples.FOLDER.resolve("hq-310-p.plan.json").toString();
    private static final String JOB =
            Samples.FOLDER.resolve("batch-2207.job.json").toString();

    @TempDir
    private Path folder = Path.of("");

    private static String sample(String name) {
        return Samples.FOLDER.resolve(name).toString();
    }

    /** The sample with a word in place of one value, and a row of empty fields at its end. */
    private String withAFault(String name) throws IOException {
        List<String> lines = Files.readAllLines(Path.of(sample(name)));
        String heading = lines.get(0);
        String[] fields = lines.get(4).split(",");
        fields[List.of(heading.split(",")).indexOf("value")] = "oops";
        lines.set(4, String.join(",", fields));
        lines.add(heading.replaceAll("[^,]", ""));
        return Files.write(folder.resolve(name), lines).toString();
    }

    private static List<String> line(String command, String readings) {
        return switch (command) {
            case "history" -> List.of(command, "--plan", PLAN, "--characteristic", "1", readings);
            case "drift" -> List.of(command, "--plan", PLAN, readings);
            default -> List.of(command, "--plan", PLAN, "--job", JOB, readings);
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"first-article", "batch", "certificate", "drift", "history"})
    void commandsSayWhatBecameOfTheRows(String command) throws IOException {
        Samples.Run good = Samples.run(line(command, sample("batch-2207.csv")).toArray(String[]::new));
        assertThat(good.out()).contains("932 rows read: 932 used, 0 refused, 0 explained.");

        Samples.Run bad =
                Samples.run(line(command, withAFault("batch-2207.csv")).toArray(String[]::new));
        assertThat(bad.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(bad.err())
                .contains("found \"oops\"")
                .contains("933 rows read: 931 used, 1 refused, 1 explained")
                .contains("Nothing was judged");
        assertThat(bad.out()).isEmpty();
    }

    @Test
    void aHistoryCountsTheRowsOfAllItsBatches() throws IOException {
        Samples.Run bad = Samples.run(
                "history",
                "--plan",
                PLAN,
                "--characteristic",
                "1",
                sample("batch-2208.csv"),
                withAFault("batch-2207.csv"));
        assertThat(bad.err()).contains("1376 rows read: 1374 used, 1 refused, 1 explained");
    }

    @Test
    void aPressFitCountsTheRowsOfBothParts() throws IOException {
        String assembly = sample("pawl-bush-p.assembly.json");
        String bores = sample("pawl-bush-p.bores.csv");
        String rings = sample("pawl-bush.rings.csv");
        assertThat(Samples.run("fit", assembly, "--bores", bores, "--rings", rings)
                        .out())
                .contains("50 rows read: 50 used, 0 refused, 0 explained.");

        Samples.Run bad = Samples.run("fit", assembly, "--bores", bores, "--rings", withAFault("pawl-bush.rings.csv"));
        assertThat(bad.err()).contains("51 rows read: 49 used, 1 refused, 1 explained");
        assertThat(Samples.run("fit", assembly).out()).doesNotContain("rows read");
    }
}
