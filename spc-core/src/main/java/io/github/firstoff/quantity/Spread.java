package io.github.firstoff.quantity;

/** How the value of one source of uncertainty is spread, and with it what its stated value means (JCGM 100:2008, 4.3). */
public enum Spread {
    /** Normal; the value is a standard uncertainty, or an expanded one with its coverage factor (4.3.3). */
    NORMAL("normal"),
    /** Anywhere between two bounds with equal probability; the value is the half-width (4.3.7). */
    RECTANGULAR("rectangular"),
    /** Between two bounds, the middle most probable; the value is the half-width (4.3.9, β = 0). */
    TRIANGULAR("triangular"),
    /** Swinging between two bounds as a sine does, the bounds most probable; the value is the half-width (H.1.3.4). */
    U_SHAPED("u-shaped"),
    /** Between two bounds with sloping sides; the value is the half-width of the base (4.3.9). */
    TRAPEZOIDAL("trapezoidal");

    private final String word;

    Spread(String word) {
        this.word = word;
    }

    /** The word in files and on sheets. */
    public String word() {
        return word;
    }
}
