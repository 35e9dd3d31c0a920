package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bytes that nobody would write, given to the readers of QIF: whatever they are, each measurement is accounted for, every message is one
 * line that cannot move a terminal, and nothing but a refusal comes out.
 *
 * <p>Run by itself with the environment variable {@code JAZZER_FUZZ=1} and {@code -Dgroups=fuzz -Dtest.excludedGroups=}; without the
 * variable only the seeds are tried.
 */
@Tag("fuzz")
class QifFuzzTest {
    private static final long LONGEST_SEED = 8000;
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    /** The files of the corpus that have such a beginning, so that the search begins where others had trouble. */
    static List<byte[]> filesOfTheCorpus(String beginning) throws IOException {
        List<byte[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/intake"))) {
            for (Path file : files.sorted().toList()) {
                String name = file.getFileName().toString();
                if (name.startsWith(beginning) && !name.endsWith(".expected") && Files.size(file) <= LONGEST_SEED) {
                    all.add(Files.readAllBytes(file));
                }
            }
        }
        return all;
    }

    static List<byte[]> documents() throws IOException {
        return filesOfTheCorpus("qif-");
    }

    @MethodSource("documents")
    @FuzzTest(maxDuration = "5m")
    void results(byte[] anything) {
        byte[] data = asXml(anything);
        Intake again = ReadingFiles.readInputs(PLAN, List.of(Input.bytes("f.qif", data, relative -> Optional.empty())));
        Intake once = ReadingFiles.readInputs(PLAN, List.of(Input.stream("f.qif", new ByteArrayInputStream(data))));

        assertThat(once.rows()).isEqualTo(again.rows());
        assertThat(once.refused().lines()).isEqualTo(again.refused().lines());
        assertThat(once.parts()).hasSameSizeAs(again.parts());
        assertThat(once.rows().read())
                .isEqualTo(
                        once.rows().used() + once.rows().refused() + once.rows().explained());
        assertThat(once.refused().count() > 0 || once.rows().used() > 0).isTrue();
        once.refused().lines().forEach(QifFuzzTest::assertHarmless);
        once.notices().forEach(notice -> assertHarmless(notice.line()));
    }

    @MethodSource("documents")
    @FuzzTest(maxDuration = "5m")
    void plans(byte[] anything) {
        byte[] data = asXml(anything);
        try {
            PlanDraft draft =
                    PlanDraft.of(Input.bytes("f.qif", data, relative -> Optional.empty()), List.of(), Map.of());
            assertThat(PlanFile.read(Input.text("f.json", draft.text()))
                            .resolve()
                            .characteristics())
                    .hasSameSizeAs(draft.plan().characteristics());
            draft.notices().forEach(notice -> assertHarmless(notice.line()));
        } catch (InputRefused refused) {
            assertThat(refused.lines()).isNotEmpty();
            refused.lines().forEach(QifFuzzTest::assertHarmless);
        }
    }

    /** What does not begin as XML goes to other readers, which are tried elsewhere: here it would only take time. */
    private static byte[] asXml(byte[] data) {
        if (new QifReadings()
                .recognises(Beginning.of(Arrays.copyOf(data, Math.min(data.length, Beginning.MOST)), true))) {
            return data;
        }
        byte[] xml = new byte[data.length + 1];
        xml[0] = '<';
        System.arraycopy(data, 0, xml, 1, data.length);
        return xml;
    }

    private static void assertHarmless(String line) {
        assertThat(line.chars().noneMatch(Character::isISOControl)).as(line).isTrue();
    }
}
