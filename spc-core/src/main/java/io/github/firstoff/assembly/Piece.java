package io.github.firstoff.assembly;

import java.math.BigDecimal;

/**
 * The size of one piece as it was measured.
 *
 * @param name its serial number or name
 * @param size in millimetres, at 20 °C
 */
public record Piece(String name, BigDecimal size) {}
