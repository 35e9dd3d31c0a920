package io.github.firstoff.tolerance;

import java.util.Optional;

/**
 * One datum cell of a tolerance indicator.
 *
 * @param letters a single datum such as {@code A}, or a common datum such as {@code A-B} (ISO 5459:2011, 7.4)
 * @param modifier the material requirement on the datum; it allows the datum feature to shift, and adds nothing to the tolerance
 */
public record DatumReference(String letters, Optional<MaterialModifier> modifier) {

    /** As a keyboard writes it, for example {@code B (M)}. */
    public String text() {
        return modifier.map(material -> letters + " " + material.text()).orElse(letters);
    }

    /** As a drawing sets it, for example {@code B Ⓜ}. */
    public String set() {
        return modifier.map(material -> letters + " " + material.symbol()).orElse(letters);
    }
}
