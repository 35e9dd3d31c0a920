package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import java.math.BigInteger;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Builds the location panel of means (or individuals, means of one) with three-sigma limits. */
final class LocationPanel {
    private final Subgroups data;
    private final String statistic;

    LocationPanel(Subgroups data, String statistic) {
        this.data = data;
        this.statistic = statistic;
    }

    /** The mean of the first {@code baseline} subgroups, every reading with equal weight. */
    ExactCentre centre(int baseline) {
        int groups = Math.min(baseline, data.count());
        BigInteger total = BigInteger.ZERO;
        long partial = 0;
        long count = 0;
        for (int g = 0; g < groups; g++) {
            long sum = sum(g);
            long next = partial + sum;
            if (((partial ^ next) & (sum ^ next)) < 0) {
                total = total.add(BigInteger.valueOf(partial));
                next = sum;
            }
            partial = next;
            count += data.size(g);
        }
        return new ExactCentre(total.add(BigInteger.valueOf(partial)), count);
    }

    private long sum(int group) {
        long sum = 0;
        for (int m = 0; m < data.size(group); m++) {
            sum = Math.addExact(sum, data.deviation(group, m));
        }
        return sum;
    }

    Panel withoutLines() {
        Panel.Builder panel = builder();
        for (int g = 0; g < data.count(); g++) {
            panel.add(data.sample().scale().mean(sum(g), data.size(g)), data.size(g));
        }
        return panel.build();
    }

    /** About a centre that is a mean of readings; {@code sigma} gives, by subgroup size, the sigma of single readings. */
    Panel about(ExactCentre centre, IntToDoubleFunction sigma) {
        Scale scale = data.sample().scale();
        return build(centre, centre.deviation(), scale.mean(centre.sum(), centre.count()), sigma);
    }

    /** About a centre that was stated, in the unit of the readings. */
    Panel about(double centre, IntToDoubleFunction sigma) {
        return build(null, data.sample().scale().deviation(centre), centre, sigma);
    }

    private Panel build(
            @Nullable ExactCentre exact, double centreSteps, double centre, IntToDoubleFunction sigmaOfSize) {
        Scale scale = data.sample().scale();
        Panel.Builder panel = builder();
        Scale.Means means = scale.means();
        Map<Integer, Line> known = new HashMap<>();
        Line line = null;
        for (int g = 0; g < data.count(); g++) {
            int size = data.size(g);
            if (line == null || line.size != size) {
                line = known.computeIfAbsent(size, n -> {
                    double sigma = sigmaOfSize.applyAsDouble(n) / Math.sqrt(n);
                    return new Line(
                            n,
                            sigma,
                            new Lines(
                                    centre,
                                    scale.value(centreSteps - 3 * sigma),
                                    scale.value(centreSteps + 3 * sigma),
                                    OptionalDouble.of(scale.length(sigma))));
                });
            }
            long sum = sum(g);
            double value = (double) sum / size;
            int side = exact != null ? exact.side(sum, size) : LineJudge.compare(value, centreSteps, line.sigma);
            int zone = LineJudge.zone(value, centreSteps, line.sigma, side);
            panel.addZoned(means.of(sum, size), size, line.lines, side, zone);
        }
        return panel.build();
    }

    private Panel.Builder builder() {
        return new Panel.Builder(PanelKind.LOCATION, statistic, 1, data.count(), data::label);
    }

    /** The lines for one subgroup size, with the sigma of its mean in steps. */
    private record Line(int size, double sigma, Lines lines) {}
}
