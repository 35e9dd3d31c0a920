package io.github.firstoff.tolerance;

/** The material requirement on a tolerance or a datum (ISO 2692:2021; ASME Y14.5-2018, 6.3). */
public enum MaterialModifier {
    /** Maximum material requirement, written (M) or Ⓜ. */
    MAXIMUM("(M)", "Ⓜ", "maximum material"),
    /** Least material requirement, written (L) or Ⓛ. */
    LEAST("(L)", "Ⓛ", "least material");

    private final String text;
    private final String symbol;
    private final String words;

    MaterialModifier(String text, String symbol, String words) {
        this.text = text;
        this.symbol = symbol;
        this.words = words;
    }

    /** As a keyboard writes it. */
    public String text() {
        return text;
    }

    /** As a drawing sets it: one circled letter. */
    public String symbol() {
        return symbol;
    }

    /** In words, for example {@code maximum material}. */
    public String words() {
        return words;
    }
}
