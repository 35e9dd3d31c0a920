package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import java.math.BigInteger;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Builds the location panel of means (individuals are means of one) or medians with three-sigma limits. */
final class LocationPanel {
    private final Subgroups data;
    private final String statistic;
    private final boolean medians;
    private long[] members = {};

    LocationPanel(Subgroups data, String statistic) {
        this(data, statistic, false);
    }

    private LocationPanel(Subgroups data, String statistic, boolean medians) {
        this.data = data;
        this.statistic = statistic;
        this.medians = medians;
    }

    static LocationPanel ofMedians(Subgroups data) {
        return new LocationPanel(data, "median", true);
    }

    /** The mean of the subgroups that set limits, every reading (or every median) with equal weight. */
    ExactCentre centre(Basis basis) {
        BigInteger total = BigInteger.ZERO;
        long partial = 0;
        long count = 0;
        for (int i = 0; i < basis.count(); i++) {
            int g = basis.group(i);
            long sum = sum(g);
            long next = partial + sum;
            if (((partial ^ next) & (sum ^ next)) < 0) {
                total = total.add(BigInteger.valueOf(partial));
                next = sum;
            }
            partial = next;
            count += divisor(g);
        }
        return new ExactCentre(total.add(BigInteger.valueOf(partial)), count);
    }

    /** The point is {@link #sum} over {@link #divisor}, both whole. */
    private long sum(int group) {
        if (medians) {
            if (members.length < data.size(group)) {
                members = new long[data.size(group)];
            }
            return Spread.twiceMedian(data, group, members);
        }
        long sum = 0;
        for (int m = 0; m < data.size(group); m++) {
            sum = Math.addExact(sum, data.deviation(group, m));
        }
        return sum;
    }

    private long divisor(int group) {
        return medians ? 2 : data.size(group);
    }

    Panel withoutLines() {
        Panel.Builder panel = builder();
        for (int g = 0; g < data.count(); g++) {
            panel.add(g, data.sample().scale().mean(sum(g), divisor(g)), data.size(g));
        }
        return panel.build();
    }

    /** About a centre that is a mean of readings; {@code sigma} gives, by subgroup size, the sigma of the points. */
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
                    double sigma = sigmaOfSize.applyAsDouble(n);
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
            long divisor = divisor(g);
            double value = (double) sum / divisor;
            int side = exact != null ? exact.side(sum, divisor) : LineJudge.compare(value, centreSteps, line.sigma);
            int zone = LineJudge.zone(value, centreSteps, line.sigma, side);
            panel.addZoned(g, means.of(sum, divisor), size, line.lines, side, zone);
        }
        return panel.build();
    }

    private Panel.Builder builder() {
        return new Panel.Builder(PanelKind.LOCATION, PanelNature.NORMAL, statistic, data, data.count());
    }

    /** The lines for one subgroup size, with the sigma of its points in steps. */
    private record Line(int size, double sigma, Lines lines) {}
}
