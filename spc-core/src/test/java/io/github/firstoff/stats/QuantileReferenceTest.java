package io.github.firstoff.stats;

import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** Quantiles and tails against base R; tolerances as the cases state them. */
class QuantileReferenceTest {
    private static final String FILE = "stats/distributions.json";

    @Test
    void student() {
        JsonNode c = reference(FILE, "student-t-quantiles");
        JsonNode p = c.path("input").path("p");
        for (int i = 0; i < c.path("input").path("df").size(); i++) {
            double df = c.path("input").path("df").get(i).asDouble();
            for (int k = 0; k < p.size(); k++) {
                close(
                        Distributions.studentTQuantile(p.get(k).asDouble(), df),
                        c.path("expected").path("rows_by_df").get(i).get(k),
                        1e-9);
            }
        }
    }

    @Test
    void chiSquared() {
        JsonNode c = reference(FILE, "chi-square-quantiles");
        JsonNode p = c.path("input").path("p");
        for (int i = 0; i < c.path("input").path("df").size(); i++) {
            double df = c.path("input").path("df").get(i).asDouble();
            for (int k = 0; k < p.size(); k++) {
                close(
                        Distributions.chiSquaredQuantile(p.get(k).asDouble(), df),
                        c.path("expected").path("rows_by_df").get(i).get(k),
                        1e-9);
            }
        }
    }

    @Test
    void fisher() {
        JsonNode c = reference(FILE, "f-quantiles");
        JsonNode df = c.path("input").path("df");
        JsonNode p = c.path("input").path("p");
        JsonNode f = c.path("input").path("f");
        for (int i = 0; i < df.size(); i++) {
            double one = df.get(i).get(0).asDouble();
            double two = df.get(i).get(1).asDouble();
            for (int k = 0; k < p.size(); k++) {
                close(
                        Distributions.fisherFQuantile(p.get(k).asDouble(), one, two),
                        c.path("expected").path("quantiles").get(i).get(k),
                        1e-9);
            }
            for (int k = 0; k < f.size(); k++) {
                double above = 1 - Distributions.fisherF(f.get(k).asDouble(), one, two);
                assertThat(above)
                        .isCloseTo(
                                c.path("expected")
                                        .path("upper_tail")
                                        .get(i)
                                        .get(k)
                                        .asDouble(),
                                within(1e-12));
            }
        }
    }

    @Test
    void normal() {
        JsonNode c = reference(FILE, "normal-tail");
        for (int i = 0; i < c.path("input").path("z").size(); i++) {
            double z = c.path("input").path("z").get(i).asDouble();
            close(Distributions.normalAbove(z), c.path("expected").path("upper").get(i), 1e-12);
            close(
                    Math.exp(NormalFamily.INSTANCE.of(0, 1).logDensity(z)),
                    c.path("expected").path("density").get(i),
                    1e-12);
        }
        for (int i = 0; i < c.path("input").path("p").size(); i++) {
            double expected = c.path("expected").path("quantile").get(i).asDouble();
            assertThat(Distributions.normalQuantile(
                            c.path("input").path("p").get(i).asDouble()))
                    .isCloseTo(expected, within(1e-12 * Math.abs(expected) + 1e-15));
        }
    }

    @Test
    void noncentralT() {
        JsonNode c = reference(FILE, "noncentral-t-cdf-a");
        for (int i = 0; i < c.path("input").path("t_df_ncp").size(); i++) {
            JsonNode in = c.path("input").path("t_df_ncp").get(i);
            assertThat(NoncentralT.probability(
                            in.get(0).asDouble(),
                            in.get(1).asDouble(),
                            in.get(2).asDouble()))
                    .isCloseTo(c.path("expected").path("cdf").get(i).asDouble(), within(1e-11));
        }
        JsonNode q = reference(FILE, "noncentral-t-quantile");
        for (int i = 0; i < q.path("input").path("p_df_ncp").size(); i++) {
            JsonNode in = q.path("input").path("p_df_ncp").get(i);
            double p = in.get(0).asDouble();
            double df = in.get(1).asDouble();
            double delta = in.get(2).asDouble();
            double t = NoncentralT.quantile(p, df, delta);
            close(t, q.path("expected").path("quantile").get(i), 1e-9);
            assertThat(NoncentralT.noncentralityFor(t, df, p)).isCloseTo(delta, within(1e-9));
        }
    }

    private static void close(double value, JsonNode expected, double relative) {
        assertThat(value).isCloseTo(expected.asDouble(), within(relative * Math.abs(expected.asDouble())));
    }
}
