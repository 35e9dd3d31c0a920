package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.chart.ChartCatalogue;
import io.github.firstoff.study.chart.DispersionPolicy;
import io.github.firstoff.study.chart.RuleCatalogue;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.SpreadEstimator;
import io.github.firstoff.study.chart.SpreadEstimators;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Intake may not know the studies, so it has their names a second time; here the two are held together. */
class StudyNamesTest {
    @Test
    void chartsAreThoseOfTheCatalogue() {
        assertThat(StudyReader.CHARTS_OF_VALUES)
                .containsExactlyInAnyOrderElementsOf(Stream.concat(
                                ChartCatalogue.measured().stream().map(method -> method.kind()),
                                ChartCatalogue.families().stream().map(method -> method.kind()))
                        .toList());
        assertThat(Stream.concat(StudyReader.CHARTS_OF_PIECES.stream(), StudyReader.CHARTS_OF_COUNTS.stream()))
                .containsExactlyInAnyOrderElementsOf(ChartCatalogue.counted().stream()
                        .map(method -> method.kind())
                        .toList());
    }

    @Test
    void testsEstimatorsAndDistributionsAreThoseOfTheirCatalogues() {
        assertThat(StudyReader.TESTS)
                .containsExactlyElementsOf(Stream.concat(
                                Stream.of("western-electric", "unnatural", "nelson"),
                                RuleCatalogue.rules().stream().map(RunRule::id))
                        .toList());
        assertThat(StudyReader.TESTS.subList(0, 3))
                .allMatch(name -> RuleCatalogue.set(name).isPresent());
        assertThat(StudyReader.ESTIMATORS)
                .containsExactlyInAnyOrderElementsOf(SpreadEstimators.all().stream()
                        .map(SpreadEstimator::name)
                        .toList());
        assertThat(StudyReader.DISTRIBUTIONS)
                .containsExactlyElementsOf(CapabilityMethod.CATALOGUE.stream()
                        .map(CapabilityMethod::word)
                        .toList());
        assertThat(StudyReader.DISPERSIONS)
                .containsExactlyElementsOf(Arrays.stream(DispersionPolicy.values())
                        .map(DispersionPolicy::word)
                        .toList());
    }
}
