package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Workbooks and machine texts that are made to do harm: bounded time, bounded memory, and words. */
class WorkbookHostileTest {
    /** The heap of the child: the most text that a workbook may share is 16 million characters, twice while the store grows. */
    private static final String HEAP = "-Xmx96m";

    /** On an idle machine of 2026 no input takes more than about ten seconds to read. */
    private static final long MOST_SECONDS = 120;

    @Test
    @Tag("slow")
    void hostileWorkbooks_inASmallHeap_areRefusedInWordsOrReadThrough(@TempDir Path folder) throws Exception {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        HEAP,
                        "-cp",
                        System.getProperty("java.class.path"),
                        WorkbookHostileChild.class.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .start();
        List<String> said = new ArrayList<>();
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] fields = line.split("\\|", 3);
                assertThat(fields).as(line).hasSize(3);
                assertThat(Long.parseLong(fields[1])).as(line).isLessThan(MOST_SECONDS);
                // How far a guard lets the parser come depends on the sizes of the platform's buffers.
                said.add(fields[0] + ": " + fields[2].replaceAll("row \\d{4,}", "row N"));
            }
        }
        assertThat(child.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(child.exitValue()).isZero();
        assertThat(said).isEqualTo(Files.readAllLines(Path.of("src/test/resources/workbooks-hostile.expected")));
    }
}
