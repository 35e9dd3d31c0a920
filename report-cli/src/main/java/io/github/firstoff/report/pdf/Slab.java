package io.github.firstoff.report.pdf;

import org.jspecify.annotations.Nullable;

/**
 * A strip of the page that is never split: a line of text, a row of a table, a picture.
 *
 * @param space        white space before it, dropped at the head of a page, in points
 * @param height       its height in points
 * @param keepWithNext whether it must stand on the page of the slab that follows
 * @param repeat       what stands above it when it comes first on a page (the head of its table), if anything
 * @param paint        draws it
 */
record Slab(
        double space,
        double height,
        boolean keepWithNext,
        @Nullable Slab repeat,
        Paint paint) {
    /** What follows stands on a new page. */
    static final Slab BREAK = new Slab(0, 0, false, null, (canvas, x, y) -> {});

    /** Draws a slab with its top left corner at the given place. */
    @FunctionalInterface
    interface Paint {
        void at(Canvas canvas, double x, double y);
    }

    static Slab of(double space, double height, Paint paint) {
        return new Slab(space, height, false, null, paint);
    }

    boolean isBreak() {
        return equals(BREAK);
    }

    Slab kept() {
        return kept(true);
    }

    Slab kept(boolean keep) {
        return new Slab(space, height, keep, repeat, paint);
    }

    Slab after(double newSpace) {
        return new Slab(newSpace, height, keepWithNext, repeat, paint);
    }

    Slab under(Slab head) {
        return new Slab(space, height, keepWithNext, head, paint);
    }
}
