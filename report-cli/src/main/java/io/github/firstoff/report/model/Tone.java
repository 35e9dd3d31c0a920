package io.github.firstoff.report.model;

/**
 * What a phrase amounts to. It decides weight and shape of the print, never its meaning: the words must say the same, because
 * a photocopy keeps only the words.
 */
public enum Tone {
    /** Neither good nor bad. */
    PLAIN,
    /** Conforms, accepted. Set quietly: an accepted sheet needs no shouting. */
    GOOD,
    /** Not proven, not measured, incomplete: somebody must decide or finish. Set in bold. */
    OPEN,
    /** Outside, nonconforming, rejected. Set in bold and in dark red. */
    OUT
}
