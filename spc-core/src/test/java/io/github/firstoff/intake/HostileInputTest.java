package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assumptions.assumeThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Input that is made to do harm, by somebody or by a broken machine: bounded time, bounded memory, and words. */
class HostileInputTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    /** The heap of the child: less than any of its inputs comes to when it is kept. */
    private static final String HEAP = "-Xmx40m";

    private static final long MINUTES = 10;

    @Test
    @Tag("slow")
    void hugeInputs_inASmallHeap_areRefusedInWordsOrReadThrough() throws Exception {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        HEAP,
                        "-cp",
                        System.getProperty("java.class.path"),
                        HostileChild.class.getName())
                .redirectErrorStream(true)
                .start();
        Map<String, String> said = new LinkedHashMap<>();
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] fields = line.split("\\|", 3);
                assertThat(fields).as(line).hasSize(3);
                said.put(fields[0], fields[2]);
            }
        }
        assertThat(child.waitFor(MINUTES, TimeUnit.MINUTES)).isTrue();
        assertThat(child.exitValue()).isZero();
        Path expected = Path.of("src/test/resources/intake-hostile.expected");
        assertThat(said.entrySet().stream()
                        .map(entry -> entry.getKey() + ": " + entry.getValue())
                        .toList())
                .isEqualTo(Files.readAllLines(expected));
    }

    private static List<String> refused(Input input) {
        Intake intake = ReadingFiles.readInputs(PLAN, List.of(input));
        return catchThrowableOfType(InputRefused.class, intake::recordOrRefuse).lines();
    }

    @Test
    void aDirectory_isNamed(@TempDir Path folder) {
        assertThat(refused(Input.file("readings", folder)))
                .containsExactly("readings: found a directory; expected a file with text in it");
    }

    @Test
    void aFileThatMayNotBeRead_isNamed(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("r.csv"), "part,2\nS1,12.5\n");
        assumeThat(Files.getFileStore(file).supportsFileAttributeView("posix")).isTrue();
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
        assumeThat(Files.isReadable(file))
                .as("the superuser may read everything")
                .isFalse();
        assertThat(refused(Input.file("r.csv", file)))
                .containsExactly("r.csv: the file may not be read by this user; expected a file that can be read");
    }

    @Test
    void aDeviceAndAPipe_areNotWaitedFor(@TempDir Path folder) throws Exception {
        Path zero = Path.of("/dev/zero");
        assumeThat(Files.exists(zero)).isTrue();
        Path pipe = folder.resolve("pipe");
        assumeThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        for (Path path : List.of(zero, pipe)) {
            assertThat(refused(Input.file("r", path)))
                    .containsExactly("r: found a device or a pipe; expected a file; readings from a pipe are read from "
                            + "standard input, which is called -");
        }
    }

    @Test
    void aFileThatGrowsWhileItIsRead_isRefused(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("r.csv"), "part,2\n" + "S1,12.5\n".repeat(20_000));
        Input input = Input.file("r.csv", file);
        try (InputBytes bytes = new InputBytes(input, Long.MAX_VALUE)) {
            assertThat(bytes.beginning().isWhole()).isFalse();
            Files.writeString(file, "S2,12.5\n".repeat(10), StandardOpenOption.APPEND);
            Fault fault =
                    catchThrowableOfType(TextRefused.class, bytes::skipToEnd).fault();
            assertThat(fault.line())
                    .isEqualTo("r.csv: the file grew while it was read; expected a file that is complete; "
                            + "try again when it is no longer written to");
        }
    }

    @Test
    void aFileThatIsChangedWhileItIsRead_isRefused(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("r.csv"), "part,2\n" + "S1,12.5\n".repeat(20_000));
        Input input = Input.file("r.csv", file);
        try (InputBytes bytes = new InputBytes(input, Long.MAX_VALUE)) {
            Files.writeString(file, "part,2\n");
            assertThat(catchThrowableOfType(TextRefused.class, bytes::skipToEnd)
                            .fault()
                            .line())
                    .contains("the file changed while it was read");
        }
    }

    @Test
    void aLimitOfLessThanAMebibyte_isNamedAsItIs() throws IOException {
        Input input = Input.text("house.json", "x".repeat(70_000));
        try (InputBytes bytes = new InputBytes(input, 64 << 10)) {
            assertThat(catchThrowableOfType(TextRefused.class, bytes::skipToEnd)
                            .fault()
                            .line())
                    .isEqualTo("house.json: found a file of more than 64 KiB; expected at most that; "
                            + "this is perhaps another file");
        }
    }

    @Test
    void namesWithPathsAndCommands_areOnlyNames() {
        Intake intake = ReadingFiles.readInputs(
                PLAN,
                List.of(Input.text("r.csv", "part,characteristic,value,note\n../../etc/passwd,2,12.5,$(rm -rf ~)\n")));
        assertThat(intake.recordOrRefuse().parts().get(0).serial()).isEqualTo("../../etc/passwd");
        Intake bad = ReadingFiles.readInputs(
                PLAN, List.of(Input.text("\u001b[2Jr\n.csv", "part,2\n\u202e=cmd|' /C calc'!A0,12.5\n")));
        assertThat(bad.refused().lines())
                .allSatisfy(line ->
                        assertThat(line.chars().filter(Character::isISOControl)).isEmpty())
                .noneMatch(line -> line.contains("\u202e"))
                .isNotEmpty();
    }

    @Test
    void textsForSpreadsheets_areNoFormulas() {
        assertThat(SafeText.csvField("=1+2")).isEqualTo("'=1+2");
        assertThat(SafeText.csvField("@SUM(A1)")).isEqualTo("'@SUM(A1)");
        assertThat(SafeText.csvField("-2+3")).isEqualTo("'-2+3");
        assertThat(SafeText.csvField("-0.005")).isEqualTo("-0.005");
        assertThat(SafeText.csvField("+12,5")).isEqualTo("\"+12,5\"");
        assertThat(SafeText.csvField("a\u202eb\tc")).isEqualTo("a\\u202Eb\\tc".replace("\\u202E", "\\u202E"));
        assertThat(SafeText.csvField("a \"b\"")).isEqualTo("\"a \"\"b\"\"\"");
    }
}
