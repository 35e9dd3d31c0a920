package io.github.firstoff.study.pressfit;

import java.math.BigDecimal;

/**
 * The sizes of one part at the joint.
 *
 * @param measured whether they were measured; otherwise they are known by limits
 * @param count how many were measured; 0 for limits
 * @param least the least, in mm
 * @param greatest the greatest, in mm
 * @param mean their mean; the middle of limits
 * @param offset the same from the joint diameter: means of large sizes that differ little are subtracted without loss
 * @param deviation their standard deviation; of limits, that of sizes spread evenly between them
 */
public record Sizes(
        boolean measured,
        int count,
        BigDecimal least,
        BigDecimal greatest,
        double mean,
        double offset,
        double deviation) {}
