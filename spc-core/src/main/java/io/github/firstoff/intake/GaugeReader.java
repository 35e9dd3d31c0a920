package io.github.firstoff.intake;

import io.github.firstoff.plan.Gauge;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.UncertaintyBudget;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the gauges of a plan. */
final class GaugeReader {
    private static final BigDecimal USUAL_COVERAGE_FACTOR = new BigDecimal("2");
    private final FaultCollector faults;
    private final Unit planUnit;

    GaugeReader(FaultCollector faults, Unit planUnit) {
        this.faults = faults;
        this.planUnit = planUnit;
    }

    List<Gauge> read(Fields document) {
        List<Gauge> gauges = new ArrayList<>();
        Map<String, Fields> seen = new HashMap<>();
        for (Fields entry : document.objects("gauges", "a gauge, which is an object { … }")) {
            Optional<String> id = entry.requiredName("id", "the gauge's number in the shop");
            Fields fields =
                    id.map(known -> entry.called("gauge " + Echo.plain(known))).orElse(entry);
            if (id.isPresent()) {
                fields.name("id");
                Fields first = seen.putIfAbsent(id.get(), fields);
                if (first != null) {
                    fields.refuse(
                            "id",
                            FaultKind.CONTRADICTION,
                            "two gauges have the id " + Echo.plain(id.get()) + " (the first in line "
                                    + first.where("id").line() + ")",
                            "",
                            "an id of its own for each gauge");
                    id = Optional.empty();
                }
            }
            Optional<Gauge> gauge = gauge(fields, id);
            gauge.ifPresent(gauges::add);
        }
        return gauges;
    }

    private Optional<Gauge> gauge(Fields fields, Optional<String> id) {
        Optional<String> kind = fields.text("kind");
        Unit unit = fields.word(
                        "unit",
                        word -> Unit.parse(word).filter(parsed -> parsed != Unit.NONE),
                        List.of("mm", "inch", "µm", "degree"))
                .orElse(planUnit);
        Optional<BigDecimal> resolution = fields.decimal("resolution", false);
        Optional<BigDecimal> expanded = fields.decimal("expandedUncertainty", true);
        Optional<BigDecimal> factor = fields.decimal("coverageFactor", false);
        Optional<BigDecimal> perLength = fields.decimal("uncertaintyPerLength", true);
        Optional<LocalDate> due = fields.date("calibrationDue");
        Optional<String> certificate = fields.text("certificate");
        if (!fields.has("expandedUncertainty")) {
            for (String key : List.of("coverageFactor", "uncertaintyPerLength")) {
                if (fields.has(key)) {
                    fields.refuse(
                            key,
                            FaultKind.CONTRADICTION,
                            "it belongs to an expanded uncertainty, and none is stated",
                            "",
                            "\"expandedUncertainty\" beside it");
                }
            }
        }
        Optional<UncertaintyBudget> budget =
                fields.object("budget").flatMap(inner -> new BudgetReader(faults, unit).read(inner));
        if (fields.value("budget").isPresent()
                && fields.value("expandedUncertainty").isPresent()) {
            fields.refuse(
                    "budget",
                    FaultKind.CONTRADICTION,
                    "the expanded uncertainty is stated and follows from a budget too",
                    "",
                    "one of \"expandedUncertainty\" and \"budget\"");
        }
        fields.finish();
        Optional<Uncertainty> uncertainty = expanded.<Uncertainty>map(constant -> new Uncertainty(
                        constant, perLength.orElse(BigDecimal.ZERO), factor.orElse(USUAL_COVERAGE_FACTOR), unit))
                .or(() -> budget.map(known -> known.evaluate().uncertainty()));
        return id.map(known -> new Gauge(known, kind, unit, resolution, uncertainty, budget, due, certificate));
    }
}
