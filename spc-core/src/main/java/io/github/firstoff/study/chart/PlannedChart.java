package io.github.firstoff.study.chart;

import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Ratio;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a plan asks of a chart, as a {@link ChartRequest}; breaks and exclusions, which need the readings, are added to that. */
public final class PlannedChart {
    private PlannedChart() {}

    /**
     * The chart that a study asks for. A baseline that names a phase is left to the caller, who knows the readings.
     *
     * @param study what the plan says
     * @param readingUnit the unit in which the plan states a centre
     * @param unit the unit of the readings on the chart
     * @throws IllegalArgumentException if there is no chart, test or estimator of a name, a setting is out of range, a test has no such
     *     length or stands twice, or frozen limits have another unit; the message says which
     */
    public static ChartRequest request(Study study, Unit readingUnit, Unit unit) {
        ChartSettings settings = settings(study.settings(), readingUnit, unit);
        requireKind(study.chart(), settings);
        return ChartRequest.of(study.chart())
                .with(settings)
                .with(limits(study, unit))
                .with(tests(study.tests()));
    }

    /** The title of a kind of chart, as a sheet prints it. */
    public static String title(String kind) {
        return requireKind(kind, ChartSettings.USUAL).title();
    }

    private static ChartMethod<?> requireKind(String kind, ChartSettings settings) {
        return ChartCatalogue.measured(kind, settings)
                .<ChartMethod<?>>map(method -> method)
                .or(() -> ChartCatalogue.counted(kind, settings))
                .or(() -> ChartCatalogue.families(kind, settings))
                .orElseThrow(() -> new IllegalArgumentException("no chart is called " + kind));
    }

    /**
     * The tests that a plan chooses; the four zone tests if it chooses none.
     *
     * @throws IllegalArgumentException if there is no such test, a set is given a length, a test has no such length, or stands twice
     */
    public static RuleSet tests(List<Study.TestChoice> choices) {
        if (choices.isEmpty()) {
            return RuleSet.westernElectric();
        }
        Map<String, RunRule> rules = new LinkedHashMap<>();
        for (Study.TestChoice choice : choices) {
            for (RunRule rule : rules(choice)) {
                if (rules.putIfAbsent(rule.id(), rule) != null) {
                    throw new IllegalArgumentException("the test " + rule.id() + " stands twice");
                }
            }
        }
        return new RuleSet(new ArrayList<>(rules.values()));
    }

    private static List<RunRule> rules(Study.TestChoice choice) {
        Optional<RuleSet> set = RuleCatalogue.set(choice.name());
        if (set.isPresent()) {
            if (choice.points().isPresent()) {
                throw new IllegalArgumentException(
                        choice.name() + " is a set of tests; a length belongs to one test, such as "
                                + set.get().rules().get(0).id());
            }
            return set.get().rules();
        }
        RunRule rule = RuleCatalogue.rule(choice.name())
                .orElseThrow(() -> new IllegalArgumentException("no test is called " + choice.name()));
        return List.of(
                choice.points().isPresent()
                        ? rule.withWindow(
                                choice.points().getAsInt(), choice.of().orElseThrow())
                        : rule);
    }

    private static ChartSettings settings(Study.Settings stated, Unit readingUnit, Unit unit) {
        stated.estimator().ifPresent(name -> {
            if (SpreadEstimators.named(name).isEmpty()) {
                throw new IllegalArgumentException("no estimator of spread is called " + name);
            }
        });
        return new ChartSettings(
                stated.estimator(),
                stated.centre().map(centre -> readingUnit.convert(centre, unit, MathContext.DECIMAL128)),
                number(stated.weight()),
                number(stated.width()),
                number(stated.reference()),
                number(stated.decision()),
                number(stated.headStart()),
                stated.dispersion().map(PlannedChart::policy).orElse(DispersionPolicy.CHECK));
    }

    private static DispersionPolicy policy(String word) {
        for (DispersionPolicy policy : DispersionPolicy.values()) {
            if (policy.word().equals(word)) {
                return policy;
            }
        }
        throw new IllegalArgumentException("no policy of dispersion is called " + word);
    }

    private static LimitsFrom limits(Study study, Unit unit) {
        if (study.limits().frozen().isPresent()) {
            return LimitsFrom.frozen(frozen(study.limits().frozen().get(), unit));
        }
        if (study.breaks().recalculate().isPresent()) {
            return LimitsFrom.eachPhase(study.breaks().recalculate().get());
        }
        return study.limits()
                .baseline()
                .filter(points -> points.phase().isEmpty())
                .map(points -> LimitsFrom.baseline(new Baseline(points.from(), points.to())))
                .orElseGet(LimitsFrom::allPoints);
    }

    private static FrozenLimits frozen(Study.Frozen stated, Unit unit) {
        Unit own = Unit.parse(stated.unit())
                .orElseThrow(() -> new IllegalArgumentException("no unit is called " + stated.unit()));
        if (own != unit) {
            throw new IllegalArgumentException("limits in " + own.word() + " do not fit readings in " + unit.word());
        }
        Map<String, Double> parts = new LinkedHashMap<>();
        stated.partSigmas().forEach((part, sigma) -> parts.put(part, number(sigma)));
        return new FrozenLimits(
                stated.kind(),
                number(stated.centre()),
                number(stated.sigma()),
                stated.estimator(),
                number(stated.degreesOfFreedom()),
                own,
                number(stated.pointSigma()),
                parts);
    }

    private static OptionalDouble number(Optional<BigDecimal> stated) {
        return stated.map(value -> OptionalDouble.of(number(value))).orElseGet(OptionalDouble::empty);
    }

    /** Rounded once; a decimal that was printed from a {@code double} is that {@code double} again. */
    private static double number(BigDecimal stated) {
        return Ratio.of(stated, BigDecimal.ONE);
    }
}
