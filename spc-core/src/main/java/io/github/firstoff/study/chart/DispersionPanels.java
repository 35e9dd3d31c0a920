package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** The panels of spread: moving ranges, ranges, standard deviations. Without lines where sigma is not known. */
final class DispersionPanels {
    private static final ChartConstants OF_TWO = ChartConstants.of(2);

    private DispersionPanels() {}

    /** Lines in the unit, from steps. */
    private static Lines lines(Scale scale, double centre, double lower, double upper) {
        return new Lines(scale.length(centre), scale.length(lower), scale.length(upper), OptionalDouble.empty());
    }

    /**
     * Moving ranges of individuals, none across a break: centre d2σ or the exact mean, limits 0 and D4 times that.
     *
     * @param exact the mean moving range, if that is the centre
     * @param sigma in steps; below 0: there are no lines
     */
    static Panel movingRanges(Subgroups data, @Nullable ExactCentre exact, double sigma) {
        Scale scale = data.sample().scale();
        int count = 0;
        for (int g = 1; g < data.count(); g++) {
            count += data.startsSegment(g) ? 0 : 1;
        }
        Panel.Builder panel =
                new Panel.Builder(PanelKind.DISPERSION, PanelNature.DEPENDENT, "moving range", data, count);
        double middle = exact != null ? exact.deviation() : OF_TWO.d2() * Math.max(0, sigma);
        double upper = OF_TWO.bigD4() * middle;
        Lines lines = lines(scale, middle, 0, upper);
        boolean anyExcluded = !data.exclusions().isEmpty();
        for (int g = 1; g < data.count(); g++) {
            if (data.startsSegment(g)) {
                continue;
            }
            long range = Math.abs(data.deviation(g, 0) - data.deviation(g - 1, 0));
            double steps = (double) range;
            if (sigma < 0) {
                panel.add(g, scale.length(steps), 2);
            } else {
                int side = exact != null ? exact.side(range, 1) : LineJudge.compare(steps, middle, sigma);
                panel.add(g, scale.length(steps), 2, lines, side, LineJudge.beyond(steps, 0, upper, sigma));
            }
            if (anyExcluded && data.isExcluded(g - 1)) {
                panel.exclude();
            }
        }
        return panel.build();
    }

    /**
     * Ranges: centre d2σ or the exact mean, limits D3 and D4 times that.
     *
     * @param exact the mean range, if that is the centre
     * @param sigma in steps; below 0: there are no lines
     */
    static Panel ranges(Subgroups data, @Nullable ExactCentre exact, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel = new Panel.Builder(PanelKind.DISPERSION, PanelNature.SPREAD, "range", data, data.count());
        int sizeOfLines = 0;
        double centre = 0;
        double lower = 0;
        double upper = 0;
        Lines lines = lines(scale, 0, 0, 0);
        for (int g = 0; g < data.count(); g++) {
            int n = data.size(g);
            long range = Spread.range(data, g);
            double steps = (double) range;
            if (sigma < 0) {
                panel.add(g, scale.length(steps), n);
                continue;
            }
            if (n != sizeOfLines) {
                ChartConstants c = ChartConstants.of(n);
                centre = exact != null ? exact.deviation() : c.d2() * sigma;
                lower = c.bigD3() * centre;
                upper = c.bigD4() * centre;
                lines = lines(scale, centre, lower, upper);
                sizeOfLines = n;
            }
            panel.add(
                    g,
                    scale.length(steps),
                    n,
                    lines,
                    exact != null ? exact.side(range, 1) : LineJudge.compare(steps, centre, sigma),
                    LineJudge.beyond(steps, lower, upper, sigma));
        }
        return panel.build();
    }

    /**
     * Standard deviations: limits B3 and B4 times the centre.
     *
     * @param centreOfSize the centre line by subgroup size, in steps
     * @param sigma in steps; below 0: there are no lines
     */
    static Panel standardDeviations(Subgroups data, IntToDoubleFunction centreOfSize, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel =
                new Panel.Builder(PanelKind.DISPERSION, PanelNature.SPREAD, "standard deviation", data, data.count());
        int sizeOfLines = 0;
        double centre = 0;
        double lower = 0;
        double upper = 0;
        Lines lines = lines(scale, 0, 0, 0);
        for (int g = 0; g < data.count(); g++) {
            int n = data.size(g);
            double s = Spread.standardDeviation(data, g);
            if (sigma < 0) {
                panel.add(g, scale.length(s), n);
                continue;
            }
            if (n != sizeOfLines) {
                ChartConstants c = ChartConstants.of(n);
                centre = centreOfSize.applyAsDouble(n);
                lower = c.b3() * centre;
                upper = c.b4() * centre;
                lines = lines(scale, centre, lower, upper);
                sizeOfLines = n;
            }
            panel.add(
                    g,
                    scale.length(s),
                    n,
                    lines,
                    LineJudge.compare(s, centre, sigma),
                    LineJudge.beyond(s, lower, upper, sigma));
        }
        return panel.build();
    }
}
