package io.github.firstoff.report.model;

import java.util.Arrays;
import java.util.Objects;

/** The mark of a firm, as a picture that a sheet may hold: shapes in plain colours (SVG) or dots (PNG). */
public final class Logo {
    private final boolean vector;
    private final byte[] bytes;

    /**
     * A mark.
     *
     * @param vector whether it is SVG; else it is PNG
     * @param bytes  the picture; copied
     */
    public Logo(boolean vector, byte[] bytes) {
        this.vector = vector;
        this.bytes = bytes.clone();
    }

    /** Whether it is drawn (SVG); else it is made of dots (PNG). */
    public boolean isVector() {
        return vector;
    }

    /** The picture, a copy. */
    public byte[] bytes() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Logo logo && vector == logo.vector && Arrays.equals(bytes, logo.bytes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(vector, Arrays.hashCode(bytes));
    }

    /** Names the picture by its bytes: equal sheets must read alike. */
    @Override
    public String toString() {
        return "Logo[" + (vector ? "SVG " : "PNG ") + bytes.length + " " + Arrays.hashCode(bytes) + "]";
    }
}
