package io.github.firstoff.report.pdf;

import java.util.ArrayList;
import java.util.List;

/** Deals slabs out to pages. */
final class Paginator {
    /** A last page filled less than this asks for a tighter setting. */
    private static final double NEARLY_EMPTY = 0.2;

    private final double pageHeight;
    private final Faces faces;

    Paginator(double pageHeight, Faces faces) {
        this.pageHeight = pageHeight;
        this.faces = faces;
    }

    /**
     * A slab on its page.
     *
     * @param slab the slab
     * @param y    its top, in points below the head of the type area
     */
    record Placed(Slab slab, double y) {}

    /** The pages; white space is taken in a little where that saves a page with hardly anything on it. */
    List<List<Placed>> pages(List<Slab> slabs) {
        List<List<Placed>> loose = deal(slabs, 1);
        if (loose.size() > 1 && filled(loose.get(loose.size() - 1)) < NEARLY_EMPTY) {
            for (double air : new double[] {0.85, 0.7, 0.55}) {
                List<List<Placed>> tighter = deal(slabs, air);
                if (tighter.size() < loose.size()) {
                    return tighter;
                }
            }
        }
        return loose;
    }

    private double filled(List<Placed> page) {
        Placed last = page.get(page.size() - 1);
        return (last.y + last.slab.height()) / pageHeight;
    }

    private List<List<Placed>> deal(List<Slab> slabs, double air) {
        List<List<Placed>> pages = new ArrayList<>();
        List<Placed> page = new ArrayList<>();
        double y = 0;
        int i = 0;
        while (i < slabs.size()) {
            Slab slab = slabs.get(i);
            if (slab.isBreak()) {
                if (!page.isEmpty()) {
                    pages.add(page);
                    page = new ArrayList<>();
                    y = 0;
                }
                i++;
                continue;
            }
            int end = chainEnd(slabs, i);
            double needed = height(slabs, i, end, page.isEmpty(), air);
            boolean fits = y + needed <= pageHeight + 0.01;
            boolean fitsOnAny = height(slabs, i, end, true, air) <= pageHeight + 0.01;
            if (!fits && !page.isEmpty() && (fitsOnAny || y + height(slabs, i, i + 1, false, air) > pageHeight)) {
                pages.add(page);
                page = new ArrayList<>();
                y = 0;
                continue;
            }
            // A chain that no page can hold is dealt out slab by slab.
            int until = fits ? end : i + 1;
            for (; i < until; i++) {
                Slab next = slabs.get(i);
                Slab head = next.repeat();
                if (page.isEmpty() && head != null) {
                    page.add(new Placed(head, 0));
                    y = head.height();
                } else if (!page.isEmpty()) {
                    y += next.space() * air;
                }
                if (next.height() > pageHeight) {
                    faces.say("something on the sheet is higher than a page and runs over its foot");
                }
                page.add(new Placed(next, y));
                y += next.height();
            }
        }
        if (!page.isEmpty()) {
            pages.add(page);
        }
        return pages;
    }

    private static int chainEnd(List<Slab> slabs, int start) {
        int end = start;
        while (end < slabs.size() - 1
                && slabs.get(end).keepWithNext()
                && !slabs.get(end + 1).isBreak()) {
            end++;
        }
        return end + 1;
    }

    private static double height(List<Slab> slabs, int start, int end, boolean onTop, double air) {
        double height = 0;
        for (int i = start; i < end; i++) {
            Slab slab = slabs.get(i);
            Slab head = slab.repeat();
            if (i == start && onTop) {
                height += head == null ? 0 : head.height();
            } else {
                height += slab.space() * air;
            }
            height += slab.height();
        }
        return height;
    }
}
