package io.github.firstoff.intake;

import io.github.firstoff.quantity.Coverage;
import io.github.firstoff.quantity.Spread;
import io.github.firstoff.quantity.StudentFactors;
import io.github.firstoff.quantity.UncertaintyBudget;
import io.github.firstoff.quantity.UncertaintySource;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads the uncertainty budget of a gauge: {@code "budget"}. */
final class BudgetReader {
    private static final String COMPONENTS = "components";
    private static final String DIVISOR = "divisor";
    private static final String TOP_TO_BASE = "topToBase";
    private static final String PROBABILITY = "probability";
    private static final String FACTOR = "coverageFactor";
    private static final String DEGREES = "degreesOfFreedom";

    private final FaultCollector faults;
    private final Unit unit;

    /**
     * A reader of the budget of one gauge.
     *
     * @param unit the unit of the gauge, in which the budget comes out
     */
    BudgetReader(FaultCollector faults, Unit unit) {
        this.faults = faults;
        this.unit = unit;
    }

    /** The budget; empty if anything in it is wrong. */
    Optional<UncertaintyBudget> read(Fields fields) {
        long before = faults.count();
        fields.required(COMPONENTS, fields.value(COMPONENTS), "a list of sources of uncertainty");
        List<UncertaintySource> sources = new ArrayList<>();
        for (Fields entry : fields.objects(COMPONENTS, "a source of uncertainty, which is an object { … }")) {
            component(entry).ifPresent(sources::add);
        }
        Coverage coverage = coverage(fields);
        fields.finish();
        if (faults.count() > before) {
            return Optional.empty();
        }
        boolean contributes = sources.stream()
                .anyMatch(source ->
                        source.value().signum() != 0 && source.sensitivity().signum() != 0);
        if (!contributes) {
            fields.refuse(
                    COMPONENTS,
                    FaultKind.EMPTY,
                    "",
                    sources.isEmpty() ? "an empty list" : "sources that contribute nothing",
                    "at least one source with a value above 0");
            return Optional.empty();
        }
        return Optional.of(new UncertaintyBudget(unit, sources, coverage));
    }

    private Optional<UncertaintySource> component(Fields entry) {
        long before = faults.count();
        Optional<String> name = entry.requiredText("name", "what the source is, such as \"calibration\"");
        Fields fields = name.map(known -> entry.renamed(Echo.plain(known))).orElse(entry);
        Optional<BigDecimal> value = fields.required("value", fields.decimal("value", true), ExactNumber.EXAMPLE);
        List<String> words = Arrays.stream(Spread.values()).map(Spread::word).toList();
        Optional<Spread> spread = fields.required(
                "distribution",
                fields.word(
                        "distribution",
                        word -> Arrays.stream(Spread.values())
                                .filter(each -> each.word().equalsIgnoreCase(word))
                                .findFirst(),
                        words),
                Words.oneOf(words));
        Optional<BigDecimal> divisor = fields.decimal(DIVISOR, false);
        Optional<BigDecimal> topToBase = fields.decimal(TOP_TO_BASE, true);
        BigDecimal sensitivity = fields.decimal("sensitivity").orElse(BigDecimal.ONE);
        Optional<BigDecimal> degrees = fields.decimal(DEGREES, false);
        if (degrees.filter(known -> known.compareTo(BigDecimal.ONE) < 0).isPresent()) {
            fields.refuse(
                    DEGREES,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "",
                    degrees.get().toPlainString(),
                    "1 or more, or none stated where the value is taken as exactly known");
        }
        spread.ifPresent(known -> checkShape(fields, known, divisor, topToBase));
        fields.finish();
        if (faults.count() > before || name.isEmpty() || value.isEmpty() || spread.isEmpty()) {
            return Optional.empty();
        }
        UncertaintySource source = switch (spread.get()) {
            case NORMAL ->
                divisor.map(factor -> UncertaintySource.expanded(name.get(), value.get(), factor))
                        .orElseGet(() -> UncertaintySource.standard(name.get(), value.get()));
            case RECTANGULAR -> UncertaintySource.rectangular(name.get(), value.get());
            case TRIANGULAR -> UncertaintySource.triangular(name.get(), value.get());
            case U_SHAPED -> UncertaintySource.uShaped(name.get(), value.get());
            case TRAPEZOIDAL -> UncertaintySource.trapezoidal(name.get(), value.get(), topToBase.orElseThrow());
        };
        UncertaintySource scaled = source.times(sensitivity);
        return Optional.of(degrees.map(scaled::withDegreesOfFreedom).orElse(scaled));
    }

    private static void checkShape(
            Fields fields, Spread spread, Optional<BigDecimal> divisor, Optional<BigDecimal> topToBase) {
        if (divisor.isPresent() && spread != Spread.NORMAL) {
            fields.refuse(
                    DIVISOR,
                    FaultKind.CONTRADICTION,
                    "the divisor of a " + spread.word() + " distribution follows from its shape",
                    divisor.get().toPlainString(),
                    "no divisor, or the distribution normal");
        }
        if (spread == Spread.TRAPEZOIDAL) {
            fields.required(TOP_TO_BASE, topToBase, "the width of the top over that of the base, from 0 to 1");
        }
        if (topToBase.isPresent() && spread != Spread.TRAPEZOIDAL) {
            fields.refuse(
                    TOP_TO_BASE,
                    FaultKind.CONTRADICTION,
                    "only a trapezoidal distribution has a top and a base",
                    topToBase.get().toPlainString(),
                    "no \"topToBase\", or the distribution trapezoidal");
        } else if (topToBase.filter(beta -> beta.compareTo(BigDecimal.ONE) > 0).isPresent()) {
            fields.refuse(
                    TOP_TO_BASE,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "",
                    topToBase.get().toPlainString(),
                    "a number from 0 to 1");
        }
    }

    private static Coverage coverage(Fields fields) {
        Optional<BigDecimal> probability = fields.decimal(PROBABILITY, false);
        Optional<BigDecimal> factor = fields.decimal(FACTOR, false);
        if (probability.isPresent() && factor.isPresent()) {
            fields.refuse(
                    FACTOR,
                    FaultKind.CONTRADICTION,
                    "the coverage factor follows from the probability",
                    factor.get().toPlainString(),
                    "one of \"probability\" and \"coverageFactor\"");
        }
        if (probability.isPresent() && !StudentFactors.has(probability.get())) {
            fields.refuse(
                    PROBABILITY,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "there is no table for it",
                    probability.get().toPlainString(),
                    Words.oneOf(StudentFactors.probabilities().stream()
                            .map(BigDecimal::toPlainString)
                            .toList()));
            return Coverage.USUAL;
        }
        if (probability.isPresent()) {
            return new Coverage.Probability(probability.get());
        }
        return factor.<Coverage>map(Coverage.Factor::new).orElse(Coverage.USUAL);
    }
}
