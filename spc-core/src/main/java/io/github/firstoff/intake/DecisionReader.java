package io.github.firstoff.intake;

import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.DecisionChoice.Comparison;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads how readings are decided: {@code "decisionRule"} and {@code "comparison"}, which a plan and each characteristic may have. */
final class DecisionReader {
    private static final String RULE = "decisionRule";
    private static final String FRACTION = "fraction";
    private static final BigDecimal GREATEST_FRACTION = BigDecimal.TEN;

    private DecisionReader() {}

    static DecisionChoice.Change read(Fields fields) {
        Optional<RuleChoice> rule = Optional.empty();
        Optional<BigDecimal> fraction = Optional.empty();
        if (fields.value(RULE).orElse(null) instanceof JsonValue.Obj) {
            Fields inner = fields.object(RULE).orElseThrow();
            rule = inner.required("rule", rule(inner, "rule"), "simple or guarded");
            fraction = fraction(inner, rule);
            inner.finish();
        } else {
            rule = rule(fields, RULE);
        }
        List<String> words =
                Arrays.stream(Comparison.values()).map(Comparison::word).toList();
        Optional<Comparison> comparison = fields.word(
                "comparison",
                word -> Arrays.stream(Comparison.values())
                        .filter(each -> each.word().equalsIgnoreCase(word))
                        .findFirst(),
                words);
        return new DecisionChoice.Change(rule, fraction, comparison);
    }

    private static Optional<RuleChoice> rule(Fields fields, String key) {
        List<String> words =
                Arrays.stream(RuleChoice.values()).map(RuleChoice::word).toList();
        return fields.word(
                key,
                word -> Arrays.stream(RuleChoice.values())
                        .filter(choice -> choice.word().equalsIgnoreCase(word))
                        .findFirst(),
                words);
    }

    private static Optional<BigDecimal> fraction(Fields fields, Optional<RuleChoice> rule) {
        Optional<BigDecimal> fraction = fields.decimal(FRACTION, false);
        if (fraction.isEmpty()) {
            return fraction;
        }
        if (rule.filter(RuleChoice.SIMPLE::equals).isPresent()) {
            fields.refuse(
                    FRACTION,
                    FaultKind.CONTRADICTION,
                    "simple acceptance has no guard band",
                    fraction.get().toPlainString(),
                    "the rule guarded, or no fraction");
            return Optional.empty();
        }
        if (fraction.get().compareTo(GREATEST_FRACTION) > 0) {
            fields.refuse(
                    FRACTION,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "it is a fraction of the expanded uncertainty, not a per cent",
                    fraction.get().toPlainString(),
                    "a number above 0 and at most 10, such as 0.825");
            return Optional.empty();
        }
        return fraction;
    }
}
