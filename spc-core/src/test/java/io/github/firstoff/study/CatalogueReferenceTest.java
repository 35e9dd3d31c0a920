package io.github.firstoff.study;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.ReferenceFile;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.chart.ChartCatalogue;
import io.github.firstoff.study.chart.ChartMethod;
import io.github.firstoff.study.chart.RuleCatalogue;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.SpreadEstimator;
import io.github.firstoff.study.chart.SpreadEstimators;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every chart, test, estimator and distribution of the catalogues is checked against a published or independently computed value:
 * {@code reference/catalogue.csv} names file, case and test, and a new entry without a line fails here.
 */
class CatalogueReferenceTest {
    private static final Path RESOURCES = Path.of("src", "test", "resources", "reference");
    private static final Path TESTS = Path.of("src", "test", "java");

    static List<Map<String, String>> listed() {
        return ReferenceFile.rows("catalogue.csv");
    }

    private static List<String> entries() {
        List<String> entries = new ArrayList<>();
        Stream.of(ChartCatalogue.measured(), ChartCatalogue.families(), ChartCatalogue.counted())
                .flatMap(List::stream)
                .map(ChartMethod::kind)
                .forEach(kind -> entries.add("chart " + kind));
        RuleCatalogue.rules().stream().map(RunRule::id).forEach(id -> entries.add("test " + id));
        SpreadEstimators.all().stream().map(SpreadEstimator::name).forEach(name -> entries.add("estimator " + name));
        CapabilityMethod.CATALOGUE.stream().map(CapabilityMethod::word).forEach(word -> entries.add("family " + word));
        return entries;
    }

    @Test
    void everyEntryOfEveryCatalogueIsListedOnce() {
        assertThat(listed().stream().map(row -> row.get("catalogue") + " " + row.get("entry")))
                .containsExactlyInAnyOrderElementsOf(entries());
    }

    @ParameterizedTest
    @MethodSource("listed")
    void whatIsListedExistsAndIsUsed(Map<String, String> row) throws IOException {
        String reference = Files.readString(RESOURCES.resolve(row.get("file")));
        assertThat(reference).contains(row.get("case"));
        // where the values come from
        assertThat(reference).containsPattern("\"source\"|# source:");
        String test = "";
        try (Stream<Path> files = Files.walk(TESTS)) {
            for (Path file :
                    files.filter(f -> f.endsWith(row.get("test") + ".java")).toList()) {
                test = Files.readString(file);
            }
        }
        String name = row.get("file").substring(row.get("file").lastIndexOf('/') + 1);
        assertThat(test).as(row.get("test") + " reads the file").contains(name);
    }
}
