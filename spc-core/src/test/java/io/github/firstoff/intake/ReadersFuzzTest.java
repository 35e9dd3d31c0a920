package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Coverage-guided search for bytes that a reader does not get over. Whatever comes in, it is read or refused in words, and every row is
 * accounted for. To search: {@code JAZZER_FUZZ=1 mvn test -pl spc-core -Dtest.excludedGroups= -Dtest=ReadersFuzzTest#csv}, one target at a
 * time; without the variable only the empty input is tried.
 */
@Tag("fuzz")
class ReadersFuzzTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    private static final String BUDGET = "5m";

    static List<byte[]> tables() throws IOException {
        return QifFuzzTest.filesOfTheCorpus("readings-");
    }

    static List<byte[]> plans() throws IOException {
        return QifFuzzTest.filesOfTheCorpus("plan");
    }

    @MethodSource("tables")
    @FuzzTest(maxDuration = BUDGET)
    void csv(byte[] data) {
        read(data);
        read(after("part;characteristic;value;unit;time\nS1;2;12,5;;2026-11-20\n", data));
    }

    @FuzzTest(maxDuration = BUDGET)
    void wideCsv(byte[] data) {
        read(after("part,1,2,9,temperature\n", data));
    }

    @MethodSource("tables")
    @FuzzTest(maxDuration = BUDGET)
    void json(byte[] data) {
        read(data);
        read(after("[{\"part\": \"S1\", \"2\": 12.5},", data));
        read(after("{", data));
    }

    @FuzzTest(maxDuration = BUDGET)
    void jsonLines(byte[] data) {
        read(after("{\"part\": \"S1\", \"2\": 12.5}\n{\"part\": \"S2\", \"2\": 12.5}\n", data));
    }

    @MethodSource("plans")
    @FuzzTest(maxDuration = BUDGET)
    void plan(byte[] data) {
        try {
            PlanFile.read(Input.bytes("plan", data, relative -> Optional.empty()))
                    .resolve();
        } catch (InputRefused refused) {
            assertHarmless(refused.lines());
        }
    }

    private static byte[] after(String head, byte[] data) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.writeBytes(head.getBytes(StandardCharsets.UTF_8));
        bytes.writeBytes(data);
        return bytes.toByteArray();
    }

    private static void read(byte[] data) {
        Intake intake =
                ReadingFiles.readInputs(PLAN, List.of(Input.bytes("readings", data, relative -> Optional.empty())));
        assertHarmless(intake.refused().lines());
        assertHarmless(intake.notices().stream().map(Notice::line).toList());
        assertThat(intake.rows().read())
                .isEqualTo(intake.rows().used()
                        + intake.rows().refused()
                        + intake.rows().explained());
        if (intake.refused().isEmpty()) {
            assertThat(intake.recordOrRefuse().readingCount()).isPositive();
            assertThat(intake.rows().refused()).isZero();
            assertThat(intake.rows().used()).isPositive();
        }
    }

    private static void assertHarmless(List<String> lines) {
        for (String line : lines) {
            assertThat(line.chars().filter(Character::isISOControl)).as(line).isEmpty();
            assertThat(line).doesNotContain("Exception").doesNotContain("\u202e");
        }
    }
}
