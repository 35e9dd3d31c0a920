package io.github.firstoff.conformance;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.tolerance.ToleranceZone.Allowed;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * The verdict on one reading with everything it rests on.
 *
 * @param part the piece
 * @param reading what was read
 * @param allowed the limits that judged it, with any bonus
 * @param verdict the verdict
 * @param departure how far the value lies outside the limits: positive above the upper, negative below the lower, in the unit of
 *     the limits; empty inside and for attributes
 * @param inside how far the value lies inside the nearer limit, in the unit of the limits; empty outside, for attributes and
 *     where there is no limit
 * @param uncertainty the expanded uncertainty that was used, in the unit of the limits; empty if none was
 * @param correction what brought the value to 20 °C before it was judged; empty if nothing did
 * @param gaugeId the gauge that was used; empty if unknown
 */
public record Judgement(
        String part,
        Reading reading,
        Allowed allowed,
        Verdict verdict,
        Optional<BigDecimal> departure,
        Optional<BigDecimal> inside,
        Optional<BigDecimal> uncertainty,
        Optional<ThermalCorrection> correction,
        Optional<String> gaugeId) {}
