package io.github.firstoff.assembly;

import io.github.firstoff.remark.Remark;
import java.util.Locale;
import java.util.Optional;

/** Which equivalent stress is held against the yield of a material. */
public enum Criterion {
    /** Shape change energy, plane stress: σᵥ = √(σ₁² − σ₁σ₂ + σ₂²). */
    VON_MISES("von-mises", Remark.of("criterion.von-mises", "von Mises")),
    /** Greatest shear stress: σᵥ = greatest less least principal stress, the free third one 0 among them. */
    TRESCA("tresca", Remark.of("criterion.tresca", "Tresca")),
    /** Modified shear stress hypothesis of DIN 7190-1: √3/2 times Tresca. */
    DIN_7190("din-7190", Remark.of("criterion.din-7190", "DIN 7190-1 (√3/2 of Tresca)"));

    private final String word;
    private final Remark remark;

    Criterion(String word, Remark remark) {
        this.word = word;
        this.remark = remark;
    }

    /** The word in files. */
    public String word() {
        return word;
    }

    /** What sheets call it. */
    public Remark remark() {
        return remark;
    }

    /** The criterion that a word means; empty if none. */
    public static Optional<Criterion> parse(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
        for (Criterion each : values()) {
            if (each.word.equals(wanted)) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }
}
