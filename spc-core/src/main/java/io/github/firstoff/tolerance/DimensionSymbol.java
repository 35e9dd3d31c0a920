package io.github.firstoff.tolerance;

/** The symbols that stand before a dimension (ISO 129-1:2018, 9.2 and Table 4; C for a 45° chamfer by common practice). */
enum DimensionSymbol {
    NONE(""),
    DIAMETER("Ø"),
    SPHERE_DIAMETER("SØ"),
    RADIUS("R"),
    SPHERE_RADIUS("SR"),
    SQUARE("□"),
    CHAMFER("C");

    private final String sign;

    DimensionSymbol(String sign) {
        this.sign = sign;
    }

    String sign() {
        return sign;
    }
}
