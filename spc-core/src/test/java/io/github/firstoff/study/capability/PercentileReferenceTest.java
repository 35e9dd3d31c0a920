package io.github.firstoff.study.capability;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.file;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.stats.BoxCoxFamily;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.FoldedNormalFamily;
import io.github.firstoff.stats.GammaFamily;
import io.github.firstoff.stats.LognormalFamily;
import io.github.firstoff.stats.Moments;
import io.github.firstoff.stats.NormalFamily;
import io.github.firstoff.stats.RayleighFamily;
import io.github.firstoff.stats.WeibullFamily;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Percentile indices of given distributions, and parts per million, against two independent computations. */
class PercentileReferenceTest {
    /** One collection takes 0.135 %, the other the tail beyond z = 3 exactly; quantiles hold ten digits. */
    private static final double RELATIVE = 1e-8;

    static Stream<JsonNode> cases() {
        return StreamSupport.stream(
                        file("capability/percentiles.json").path("cases").spliterator(), false)
                .filter(c -> !c.path("id").asText().equals("CAP-BOXCOX")
                        && !c.path("id").asText().endsWith("exponential"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void percentilesAndIndices(JsonNode c) {
        JsonNode in = c.has("inputs") ? c.path("inputs") : c.path("input");
        boolean exactTail = c.path("id").asText().startsWith("CAP-PCT");
        JsonNode parameters = in.has("parameters") ? in.path("parameters") : in;
        FittedDistribution d = member(parameters);
        JsonNode e = c.path("expected");
        double tail = exactTail ? Distributions.normal(-3) : PercentileIndices.USUAL_TAIL;
        PercentileIndices indices = new PercentileIndices(limit(in, "L", "lsl"), limit(in, "U", "usl"), tail);
        close(d.quantile(tail), either(e, "X0.135", "x0135"));
        close(d.quantile(0.5), either(e, "X50", "x50"));
        close(d.quantile(1 - tail), either(e, "X99.865", "x99865"));
        closeIfGiven(() -> indices.both(d), either(e, "P_p", "Pp"));
        closeIfGiven(() -> indices.above(d), either(e, "P_pkU", "Ppu"));
        closeIfGiven(() -> indices.below(d), either(e, "P_pkL", "Ppl"));
        closeIfGiven(() -> indices.least(d), either(e, "P_pk", "Ppk"));
        closeIfGiven(() -> 1e6 * d.survival(indices.upper().orElseThrow()), e.path("ppm_above"));
        closeIfGiven(() -> d.survival(indices.upper().orElseThrow()), e.path("fraction_above"));
        closeIfGiven(() -> 1e6 * d.probability(indices.lower().orElseThrow()), e.path("ppm_below"));
        if (!e.path("fraction_out").isMissingNode()) {
            close(Distributions.normalAbove(indices.scoreOutside(d)), e.path("fraction_out"));
        }
    }

    private static FittedDistribution member(JsonNode p) {
        if (p.has("meanlog")) {
            return LognormalFamily.INSTANCE.of(
                    p.path("meanlog").asDouble(), p.path("sdlog").asDouble());
        }
        if (p.has("rate")) {
            return GammaFamily.INSTANCE.of(
                    p.path("shape").asDouble(), 1 / p.path("rate").asDouble());
        }
        if (p.has("shape")) {
            return WeibullFamily.INSTANCE.of(
                    p.path("shape").asDouble(), p.path("scale").asDouble());
        }
        if (p.has("mu")) {
            return FoldedNormalFamily.INSTANCE.of(
                    p.path("mu").asDouble(), p.path("sigma").asDouble());
        }
        if (p.has("sigma")) {
            return RayleighFamily.INSTANCE.of(p.path("sigma").asDouble());
        }
        return NormalFamily.INSTANCE.of(p.path("mean").asDouble(), p.path("sd").asDouble());
    }

    /** The handbook's data with λ held at 0.28: the limit carried through the transform, mean and s (n − 1) of the transformed. */
    @Test
    void limitsThroughTheTransform() {
        JsonNode c = reference("capability/percentiles.json", "CAP-BOXCOX");
        JsonNode e = c.path("expected");
        double lambda = c.path("inputs").path("lambda").asDouble();
        double[] y = java.util.Arrays.stream(doubles(c.path("inputs").path("values")))
                .map(x -> BoxCoxFamily.transform(x, lambda))
                .toArray();
        Moments m = Moments.of(y);
        double limit = BoxCoxFamily.transform(c.path("inputs").path("USL").asDouble(), lambda);
        close(limit, e.path("USL_transformed"));
        close(m.mean(), e.path("mean_transformed"));
        close(m.standardDeviation(), e.path("sd_transformed"));
        FittedDistribution d = BoxCoxFamily.INSTANCE.of(lambda, m.mean(), m.standardDeviation());
        close(d.survival(c.path("inputs").path("USL").asDouble()), e.path("fraction_above"));
        close(-Distributions.normalQuantile(d.survival(0.5)) / 3, e.path("Ppu"));
    }

    @Test
    void partsPerMillionOfTheTables() {
        for (JsonNode c : file("capability/fractions.json").path("cases")) {
            double score = 3 * c.path("inputs").path("Cp").asDouble();
            close(Scores.partsPerMillion(score), c.path("expected").path("ppm_one_side"));
            double both = Scores.ofShare(2 * Distributions.normalAbove(score));
            close(Scores.partsPerMillion(both), c.path("expected").path("ppm_centred_two_sided"));
        }
    }

    private static OptionalDouble limit(JsonNode in, String one, String other) {
        JsonNode limit = either(in, one, other);
        return limit.isMissingNode() ? OptionalDouble.empty() : OptionalDouble.of(limit.asDouble());
    }

    private static JsonNode either(JsonNode in, String one, String other) {
        return in.has(one) ? in.path(one) : in.path(other);
    }

    private static void closeIfGiven(java.util.function.DoubleSupplier value, JsonNode expected) {
        if (!expected.isMissingNode()) {
            close(value.getAsDouble(), expected);
        }
    }

    private static void close(double value, JsonNode expected) {
        assertThat(value).isCloseTo(expected.asDouble(), within(RELATIVE * Math.abs(expected.asDouble())));
    }
}
