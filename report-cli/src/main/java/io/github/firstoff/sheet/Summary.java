package io.github.firstoff.sheet;

import io.github.firstoff.sample.Sample;
import java.math.BigDecimal;
import java.util.OptionalDouble;

/**
 * The measured values of one characteristic over all pieces, in the unit of its limits.
 *
 * @param sample the values in production order
 * @param minimum the least, as read
 * @param maximum the greatest, as read
 * @param mean their mean
 * @param standardDeviation over all of them, with n − 1; empty for one value
 */
public record Summary(
        Sample sample, BigDecimal minimum, BigDecimal maximum, double mean, OptionalDouble standardDeviation) {

    /** How many values. */
    public int count() {
        return sample.size();
    }
}
