package io.github.firstoff.sheet;

import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.chart.Assessment;
import java.util.List;

/**
 * How a characteristic ran through the batch.
 *
 * @param chartTitle the chart as a sheet names it
 * @param subgroups the readings as they were grouped
 * @param assessment the chart and what the tests say of it
 * @param capability the indices by the distribution that fits, for the sheet
 * @param byDefinition the indices as their definitions state them, for the JSON result; the same unless the readings of a size refute
 *     the normal distribution
 * @param parts the piece of each reading, in production order
 */
public record ProcessStudy(
        String chartTitle,
        Subgroups subgroups,
        Assessment assessment,
        Capability capability,
        Capability byDefinition,
        List<String> parts) {
    /** Copies the list. */
    public ProcessStudy {
        parts = List.copyOf(parts);
    }
}
