package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However a file is damaged, it is read or refused in words; nothing else ever comes out. The seeds are fixed. */
class MutatedFilesTest {
    private static final Path FOLDER = Path.of("src/test/resources/intake");
    private static final int ROUNDS = 1500;
    private static final String[] PIECES = {
        "\"",
        ",",
        ":",
        "{",
        "}",
        "[",
        "]",
        "\\",
        "\\u00",
        "null",
        "-1",
        "1e99",
        "NaN",
        "\n",
        "\r",
        "\u0000",
        "Ø",
        "±",
        "\uFEFF",
        "é",
        "9".repeat(50),
        "part",
        "value",
        "0x",
        "..",
        "(M)",
        " ",
        "\t",
        "𝕏"
    };

    @ParameterizedTest
    @ValueSource(strings = {"plan.json", "plan-full.json", "job.json", "long.csv", "wide.csv", "readings.json"})
    void aDamagedFile_isReadOrRefusedInWords(String name) throws IOException {
        ResolvedPlan plan = PlanFile.read(FOLDER.resolve("plan.json")).resolve();
        byte[] whole = Files.readAllBytes(FOLDER.resolve(name));
        int refused = 0;
        for (int seed = 0; seed < ROUNDS; seed++) {
            byte[] damaged = damaged(whole, new Random(seed));
            try {
                read(name, damaged, plan);
            } catch (InputRefused refusal) {
                refused++;
                assertThat(refusal.lines()).as("seed %d", seed).isNotEmpty();
                assertThat(refusal.lines().get(0)).as("seed %d", seed).startsWith(name);
                assertThat(refusal.lines())
                        .as("seed %d", seed)
                        .noneMatch(line -> line.contains("this is no JSON") || line.contains("this is no CSV"));
            } catch (RuntimeException broken) {
                throw new AssertionError("seed " + seed + " of " + name, broken);
            }
        }
        // Most damage hits something that matters.
        assertThat(refused).isGreaterThan(ROUNDS / 4);
    }

    private static void read(String name, byte[] bytes, ResolvedPlan plan) {
        Input input = Input.stream(name, new ByteArrayInputStream(bytes));
        if (name.startsWith("plan")) {
            PlanFile.read(input).resolve();
        } else if (name.startsWith("job")) {
            JobFile.read(input);
        } else {
            ReadingFiles.readInputs(plan, List.of(input)).recordOrRefuse();
        }
    }

    private static byte[] damaged(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        int wounds = 1 + random.nextInt(3);
        for (int i = 0; i < wounds; i++) {
            int at = random.nextInt(bytes.length);
            bytes = switch (random.nextInt(5)) {
                case 0 -> withByte(bytes, at, (byte) random.nextInt(256));
                case 1 -> without(bytes, at, 1 + random.nextInt(20));
                case 2 -> java.util.Arrays.copyOf(bytes, Math.max(1, at));
                case 3 -> with(bytes, at, PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8));
                default -> with(bytes, at, piece(bytes, random));
            };
        }
        return bytes;
    }

    private static byte[] piece(byte[] bytes, Random random) {
        int from = random.nextInt(bytes.length);
        return java.util.Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + random.nextInt(60)));
    }

    private static byte[] withByte(byte[] bytes, int at, byte other) {
        byte[] changed = bytes.clone();
        changed[at] = other;
        return changed;
    }

    private static byte[] without(byte[] bytes, int at, int count) {
        int end = Math.min(bytes.length, at + count);
        if (end - at >= bytes.length) {
            return bytes;
        }
        byte[] shorter = new byte[bytes.length - (end - at)];
        System.arraycopy(bytes, 0, shorter, 0, at);
        System.arraycopy(bytes, end, shorter, at, bytes.length - end);
        return shorter;
    }

    private static byte[] with(byte[] bytes, int at, byte[] more) {
        byte[] longer = new byte[bytes.length + more.length];
        System.arraycopy(bytes, 0, longer, 0, at);
        System.arraycopy(more, 0, longer, at, more.length);
        System.arraycopy(bytes, at, longer, at + more.length, bytes.length - at);
        return longer;
    }
}
