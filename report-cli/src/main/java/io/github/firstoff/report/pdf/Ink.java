package io.github.firstoff.report.pdf;

import java.awt.Color;

/** The inks of a sheet. Every meaning survives without them, because it is also a word and a shape. */
enum Ink {
    /** Text, limits, rules. */
    BLACK(0, 0, 0),
    /** The one grey: labels, notes, axes. Dark enough for a photocopy. */
    GREY(92, 92, 92),
    /** Hairlines. */
    HAIRLINE(168, 168, 168),
    /** Fill of bars. */
    TINT(222, 225, 230),
    /** Our own lines and points. */
    BLUE(24, 58, 112),
    /** Only for what is out; dark, so that a photocopy shows it as black as the text. */
    RED(118, 6, 14),
    /** Paper. */
    WHITE(255, 255, 255);

    private final Color colour;

    Ink(int red, int green, int blue) {
        colour = new Color(red, green, blue);
    }

    Color colour() {
        return colour;
    }
}
