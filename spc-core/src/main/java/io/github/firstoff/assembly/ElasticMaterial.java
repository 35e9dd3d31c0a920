package io.github.firstoff.assembly;

import java.math.BigDecimal;

/**
 * What a material does under load and heat.
 *
 * @param name its name on sheets
 * @param youngsModulus Young's modulus in MPa, greater than 0
 * @param poissonsRatio Poisson's ratio, from 0 to below 0.5
 * @param expansion linear expansion per kelvin
 * @param yield the stress up to which it is elastic, in MPa (yield point, 0.2 % proof stress), greater than 0
 * @param source where the values come from, ready to print
 */
public record ElasticMaterial(
        String name,
        BigDecimal youngsModulus,
        BigDecimal poissonsRatio,
        BigDecimal expansion,
        BigDecimal yield,
        String source) {
    private static final BigDecimal HALF = new BigDecimal("0.5");

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a value is outside its range
     */
    public ElasticMaterial {
        if (youngsModulus.signum() <= 0 || yield.signum() <= 0) {
            throw new IllegalArgumentException("Young's modulus and yield of " + name + " must be greater than 0");
        }
        if (poissonsRatio.signum() < 0 || poissonsRatio.compareTo(HALF) >= 0) {
            throw new IllegalArgumentException(
                    "Poisson's ratio of " + name + " lies from 0 to below 0.5, not " + poissonsRatio.toPlainString());
        }
    }
}
