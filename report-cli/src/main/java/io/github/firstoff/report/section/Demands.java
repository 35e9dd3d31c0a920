package io.github.firstoff.report.section;

import io.github.firstoff.plan.Demand;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.Shortfall;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The least indices that the plan demands of a characteristic's class, held against those that may be presented. */
final class Demands {
    private final Map<String, BigDecimal> least;
    private final List<Shortfall> missed;

    Demands(Sheet sheet, Finding finding) {
        this.missed = Shortfall.of(sheet.plan(), finding);
        Demand demand = sheet.plan()
                .plan()
                .demands()
                .get(finding.result().characteristic().characteristic().importance());
        this.least = demand == null ? Map.of() : demand.minimumIndices();
    }

    /** A demand that is not met, in words. */
    record Missed(String actual, String byHowMuch) {}

    /** The demands that the presented indices do not meet, or cannot show to be met. */
    List<Missed> shortfalls() {
        return missed.stream().map(Demands::inWords).toList();
    }

    private static Missed inWords(Shortfall each) {
        Index index = each.index();
        String actual = index.value().isEmpty()
                ? Labels.text("demand.none", index.name(), lower(Labels.text(index.why())))
                : index.name() + " " + CapabilitySection.figures(index);
        return new Missed(actual, Labels.text("demand.at-least", Figures.of(each.least())));
    }

    /** The demand for the mark on a scale of indices: what all demands agree on, else that for Cpk or Ppk. */
    OptionalDouble mark() {
        List<BigDecimal> different = least.values().stream()
                .map(BigDecimal::stripTrailingZeros)
                .distinct()
                .toList();
        Optional<BigDecimal> one = different.size() == 1
                ? Optional.of(different.get(0))
                : Optional.ofNullable(least.get("cpk")).or(() -> Optional.ofNullable(least.get("ppk")));
        return one.map(value -> OptionalDouble.of(Places.of(value))).orElse(OptionalDouble.empty());
    }

    private static String lower(String sentence) {
        String text = sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
        return text.isEmpty() ? text : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
