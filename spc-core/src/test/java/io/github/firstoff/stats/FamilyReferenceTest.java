package io.github.firstoff.stats;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.ReferenceFile;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Fits against public data sets fitted elsewhere, and quantiles and tails of given members. */
class FamilyReferenceTest {
    /** As the files state: simplex and quasi-Newton searches elsewhere stop at a flat maximum. */
    private static final double OPTIMISER = 1e-6;

    private static final double LIKELIHOOD = 1e-9;

    private static final Map<String, double[]> INVENTED = Map.of(
            "flatness",
            new double[] {
                3.1, 4.4, 0.8, 6.2, 5.0, 2.7, 7.9, 1.6, 3.9, 4.1, 2.2, 9.3, 0.3, 5.6, 3.3, 4.8, 1.2, 6.9, 2.5, 3.6, 5.3,
                0.9, 2.0, 4.6, 8.4, 1.9, 3.0, 5.9, 4.0, 2.9
            },
            "runout",
            new double[] {
                0.2, 1.1, 0.5, 2.9, 0.1, 0.7, 4.8, 0.4, 1.9, 0.3, 0.9, 1.4, 0.6, 3.3, 0.05, 2.2, 0.8, 1.2, 0.15, 5.6
            },
            "far",
            new double[] {10.2, 9.7, 11.1, 10.5, 8.9, 9.4, 10.0, 10.8, 9.9, 10.3});

    @ParameterizedTest
    @ValueSource(strings = {"trees_volume", "cars_dist", "precip", "trees_girth"})
    void fitsOfPublicData(String name) {
        JsonNode c = reference("stats/fits.json", "fit-" + name);
        double[] x = sorted(doubles(c.path("input").path("values")));
        JsonNode e = c.path("expected");
        FittedDistribution weibull = WeibullFamily.INSTANCE.fit(x);
        close(weibull.parameters()[0], e.path("weibull").path("shape"), OPTIMISER);
        close(weibull.parameters()[1], e.path("weibull").path("scale"), OPTIMISER);
        close(weibull.logLikelihood(x), e.path("weibull").path("loglik"), LIKELIHOOD);
        FittedDistribution gamma = GammaFamily.INSTANCE.fit(x);
        close(gamma.parameters()[0], e.path("gamma").path("shape"), OPTIMISER);
        close(1 / gamma.parameters()[1], e.path("gamma").path("rate"), OPTIMISER);
        close(gamma.logLikelihood(x), e.path("gamma").path("loglik"), LIKELIHOOD);
        FittedDistribution lognormal = LognormalFamily.INSTANCE.fit(x);
        close(lognormal.parameters()[0], e.path("lognormal").path("meanlog"), 1e-12);
        close(lognormal.parameters()[1], e.path("lognormal").path("sdlog_ml"), 1e-12);
        close(lognormal.logLikelihood(x), e.path("lognormal").path("loglik"), LIKELIHOOD);
        FittedDistribution boxCox = BoxCoxFamily.INSTANCE.fit(x);
        assertThat(boxCox.parameters()[0])
                .isCloseTo(e.path("boxcox").path("lambda").asDouble(), within(1e-5));
        close(
                BoxCoxFamily.logLikelihood(x, boxCox.parameters()[0]),
                e.path("boxcox").path("loglik"),
                LIKELIHOOD);
        double[] interval = BoxCoxFamily.lambdaInterval(x, 0.95);
        assertThat(interval[0]).isCloseTo(e.path("boxcox").path("ci95").get(0).asDouble(), within(1e-5));
        assertThat(interval[1]).isCloseTo(e.path("boxcox").path("ci95").get(1).asDouble(), within(1e-5));
    }

    @Test
    void boxCoxOfTheHandbook() {
        JsonNode c = reference("stats/fits.json", "STAT-BOXCOX-NIST-6.5.2");
        double[] x = sorted(doubles(c.path("inputs").path("values")));
        JsonNode e = c.path("expected");
        assertThat(BoxCoxFamily.INSTANCE.fit(x).parameters()[0])
                .isCloseTo(e.path("lambda_hat").asDouble(), within(1e-5));
        for (String lambda : List.of("0", "0.3", "0.5", "1")) {
            assertThat(BoxCoxFamily.logLikelihood(x, Double.parseDouble(lambda)))
                    .isCloseTo(e.path("loglik_at_" + lambda).asDouble(), within(1e-7));
        }
        double[] interval = BoxCoxFamily.lambdaInterval(x, 0.95);
        assertThat(interval[0]).isCloseTo(e.path("lambda_CI95_lower").asDouble(), within(1e-6));
        assertThat(interval[1]).isCloseTo(e.path("lambda_CI95_upper").asDouble(), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("optimised")
    void fitsFoundByOptimisation(Map<String, String> row) {
        double[] x = sorted(INVENTED.get(row.get("data")).clone());
        DistributionFamily family = switch (row.get("family")) {
            case "folded normal" -> FoldedNormalFamily.INSTANCE;
            case "Rayleigh" -> RayleighFamily.INSTANCE;
            default -> WeibullFamily.INSTANCE;
        };
        FittedDistribution fitted = family.fit(x);
        assertThat(fitted.parameters()[0])
                .isCloseTo(Double.parseDouble(row.get("first")), within(1e-5 * fitted.parameters()[0] + 1e-9));
        if (!row.get("second").isEmpty()) {
            assertThat(fitted.parameters()[1])
                    .isCloseTo(Double.parseDouble(row.get("second")), within(1e-5 * fitted.parameters()[1]));
        }
        double loglik = Double.parseDouble(row.get("loglik"));
        assertThat(fitted.logLikelihood(x)).isCloseTo(loglik, within(1e-9 * Math.abs(loglik)));
        double a2 = Double.parseDouble(row.get("a2"));
        assertThat(AndersonDarling.statistic(x, fitted)).isCloseTo(a2, within(1e-4 * a2));
    }

    static Stream<Map<String, String>> optimised() {
        return ReferenceFile.rows("stats/families.csv").stream();
    }

    static Stream<FittedDistribution> members() {
        return Stream.of(
                NormalFamily.INSTANCE.of(-3, 0.5),
                LognormalFamily.INSTANCE.of(0.2, 0.4),
                WeibullFamily.INSTANCE.of(1.7, 48),
                GammaFamily.INSTANCE.of(2.4, 18),
                RayleighFamily.INSTANCE.of(0.012),
                FoldedNormalFamily.INSTANCE.of(0, 0.01),
                FoldedNormalFamily.INSTANCE.of(0.02, 0.01),
                BoxCoxFamily.INSTANCE.of(0.5, 3, 0.4),
                BoxCoxFamily.INSTANCE.of(0, 3, 0.4),
                JohnsonFamily.INSTANCE.of(0, 0.6, 1.4, -2, 7),
                JohnsonFamily.INSTANCE.of(1, 0.6, 1.4, -2, 1),
                JohnsonFamily.INSTANCE.of(1, 0.6, 1.4, -2, -1),
                JohnsonFamily.INSTANCE.of(2, 0.6, 1.4, -2, 7));
    }

    /** The density is the derivative of the distribution, the quantile its inverse, and both tails sum to 1. */
    @ParameterizedTest
    @MethodSource("members")
    void membersAreConsistent(FittedDistribution d) {
        for (double p : new double[] {0.00135, 0.05, 0.3, 0.5, 0.8, 0.99865}) {
            double x = d.quantile(p);
            assertThat(d.probability(x)).isCloseTo(p, within(1e-10 * Math.max(p, 1e-2)));
            assertThat(d.probability(x) + d.survival(x)).isCloseTo(1, within(1e-14));
            double h = 1e-5 * (d.quantile(0.6) - d.quantile(0.4));
            double slope = (d.probability(x + h) - d.probability(x - h)) / (2 * h);
            assertThat(Math.exp(d.logDensity(x))).isCloseTo(slope, within(2e-5 * slope));
        }
    }

    /** Drawn values follow the distribution they are drawn from: A² of a given distribution, limiting p-value not tiny. */
    @ParameterizedTest
    @MethodSource("members")
    void drawnValuesFollowTheirDistribution(FittedDistribution d) {
        java.util.SplittableRandom random = new java.util.SplittableRandom(4711);
        double[] x = new double[20_000];
        for (int i = 0; i < x.length; i++) {
            x[i] = d.sample(random);
        }
        Arrays.sort(x);
        assertThat(AndersonDarling.known(AndersonDarling.statistic(x, d))).isGreaterThan(1e-3);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,0.6,1.4,-2,7",
                "2,0.6,1.4,-2,7",
                "2,-1.1,2.2,10,0.3",
                "0,-0.4,0.9,0,1",
                "1,0.6,1.4,-2,1",
                "1,0.6,1.4,-2,-1"
            })
    void fourExactPercentilesGiveBackTheirJohnsonCurve(String parameters) {
        double[] given = Arrays.stream(parameters.split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
        FittedDistribution truth = JohnsonFamily.INSTANCE.of(given);
        // a sample whose percentiles by nP + 1/2 are the exact ones
        int n = 40_000;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = truth.quantile((i + 0.5) / n);
        }
        FittedDistribution found = java.util.Objects.requireNonNull(JohnsonFamily.through(x, 0.5));
        for (int k = 0; k < given.length; k++) {
            assertThat(found.parameters()[k]).as("parameter %d", k).isCloseTo(given[k], within(2e-4));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1, 25.4, 1e5})
    void fitsScaleWithTheUnit(double factor) {
        double[] x = sorted(INVENTED.get("flatness").clone());
        double[] scaled = Arrays.stream(x).map(v -> v * factor).toArray();
        for (DistributionFamily family : List.of(
                NormalFamily.INSTANCE,
                LognormalFamily.INSTANCE,
                WeibullFamily.INSTANCE,
                GammaFamily.INSTANCE,
                RayleighFamily.INSTANCE,
                FoldedNormalFamily.INSTANCE,
                BoxCoxFamily.INSTANCE)) {
            double q = family.fit(x).quantile(0.99865);
            // the search for λ stops at 1e-9, the others at the last digits
            double tolerance = family == BoxCoxFamily.INSTANCE ? 1e-6 : 1e-10;
            assertThat(family.fit(scaled).quantile(0.99865))
                    .as(family.name())
                    .isCloseTo(q * factor, within(tolerance * q * factor));
        }
    }

    @Test
    void whatCannotBeFittedSaysWhy() {
        double[] withZero = {0, 1, 2};
        assertThat(WeibullFamily.INSTANCE.obstacle(withZero))
                .hasValueSatisfying(why -> assertThat(why.english()).contains("Weibull"));
        assertThat(FoldedNormalFamily.INSTANCE.obstacle(withZero)).isEmpty();
        assertThat(RayleighFamily.INSTANCE.obstacle(new double[] {0, 0})).isPresent();
        assertThat(GammaFamily.INSTANCE.obstacle(new double[] {1})).isPresent();
        assertThat(LognormalFamily.INSTANCE.obstacle(new double[] {2, 2, 2})).isPresent();
        assertThat(JohnsonFamily.INSTANCE.obstacle(new double[] {1, 2, 3})).isPresent();
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> WeibullFamily.INSTANCE.fit(withZero))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static double[] sorted(double[] x) {
        Arrays.sort(x);
        return x;
    }

    private static void close(double value, JsonNode expected, double relative) {
        assertThat(value).isCloseTo(expected.asDouble(), within(relative * Math.abs(expected.asDouble())));
    }
}
