package io.github.firstoff.plan;

import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.UncertaintyBudget;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A gauge that the plan lists.
 *
 * @param id its number in the shop
 * @param kind what it is
 * @param unit the unit of its resolution and uncertainty
 * @param resolution the smallest step it shows
 * @param uncertainty its expanded uncertainty
 * @param budget the budget from which the uncertainty follows, if the plan states it so
 * @param calibrationDue the last day on which its calibration is good
 * @param certificate the number of its calibration certificate
 */
public record Gauge(
        String id,
        Optional<String> kind,
        Unit unit,
        Optional<BigDecimal> resolution,
        Optional<Uncertainty> uncertainty,
        Optional<UncertaintyBudget> budget,
        Optional<LocalDate> calibrationDue,
        Optional<String> certificate) {

    /** A gauge whose uncertainty, if any, is stated without a budget. */
    public Gauge(
            String id,
            Optional<String> kind,
            Unit unit,
            Optional<BigDecimal> resolution,
            Optional<Uncertainty> uncertainty,
            Optional<LocalDate> calibrationDue,
            Optional<String> certificate) {
        this(id, kind, unit, resolution, uncertainty, Optional.empty(), calibrationDue, certificate);
    }

    /** Whether the calibration had run out on that day; the due date itself is still good. */
    public boolean isOutOfCalibrationOn(LocalDate day) {
        return calibrationDue.isPresent() && day.isAfter(calibrationDue.get());
    }
}
