package io.github.firstoff.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed sample files are exactly what the generator writes, and the folder's README names each of them. */
class SampleGeneratorTest {

    private static final Path COMMITTED = Path.of("..", "sample-measurements");
    private static final String README = "README.md";
    /** Drawn and written by hand, as a firm does it: nothing in them is reckoned. */
    private static final Set<String> BY_HAND = Set.of(README, "hollin-quay.house.json", "hollin-quay.svg");

    @Test
    void writesTheCommittedFilesByteForByte(@TempDir Path folder) throws IOException {
        SampleGenerator.writeTo(folder);

        Set<String> written = namesIn(folder);
        Set<String> committed = namesIn(COMMITTED);
        committed.removeAll(BY_HAND);
        assertThat(written).isEqualTo(committed);
        for (String name : written) {
            assertThat(folder.resolve(name))
                    .as("%s, against what the generator writes", name)
                    .hasSameBinaryContentAs(COMMITTED.resolve(name));
        }
    }

    @Test
    void readmeNamesEveryFile() throws IOException {
        String readme = Files.readString(COMMITTED.resolve(README));

        assertThat(SampleGenerator.files().keySet())
                .allSatisfy(name -> assertThat(readme).contains("`" + name + "`"));
    }

    private static Set<String> namesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }
}
