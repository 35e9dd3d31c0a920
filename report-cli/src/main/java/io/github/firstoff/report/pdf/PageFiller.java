package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets blocks on pages. Between two breaks that the model asks for, pictures are drawn a little smaller, and rows of tables stand a little
 * closer, where that spares the reader a last page with little on it. Where nothing spares it, the page before hands some of its content on.
 */
final class PageFiller {
    /** A last page filled less than this is worth smaller pictures. */
    private static final double LITTLE = 0.45;

    /** How much smaller, in the order in which it is tried. */
    private static final double[] SHARES = {0.92, 0.84, 0.76, 0.68};

    /** A last page filled less than this is worth rows that stand closer, or takes over from the page before. */
    private static final double HARDLY_ANYTHING = 0.25;

    /** How much of the air in the rows of tables is left, in the order in which it is tried. */
    private static final double[] ROWS = {0.7, 0.45, 0.2};

    /** How far pages are filled, in the order in which it is tried, so that the last gets more. */
    private static final double[] FILLED = {0.92, 0.84, 0.76, 0.68, 0.6};

    private final Faces faces;
    private final double pageHeight;
    private final double measure;

    PageFiller(Faces faces, double pageHeight, double measure) {
        this.faces = faces;
        this.pageHeight = pageHeight;
        this.measure = measure;
    }

    List<List<Paginator.Placed>> pages(List<Block> blocks) {
        List<List<Paginator.Placed>> pages = new ArrayList<>();
        List<Block> stretch = new ArrayList<>();
        for (Block block : blocks) {
            if (block instanceof Block.PageBreak) {
                pages.addAll(fitted(stretch));
                stretch = new ArrayList<>();
            } else {
                stretch.add(block);
            }
        }
        pages.addAll(fitted(stretch));
        return pages;
    }

    private List<List<Paginator.Placed>> fitted(List<Block> stretch) {
        List<List<Paginator.Placed>> loose = set(stretch, 1, 1, 1);
        if (loose.size() < 2 || filled(loose.get(loose.size() - 1)) > LITTLE) {
            return loose;
        }
        for (double share : SHARES) {
            List<List<Paginator.Placed>> tighter = set(stretch, share, 1, 1);
            if (tighter.size() < loose.size()) {
                return tighter;
            }
        }
        return filled(loose.get(loose.size() - 1)) < HARDLY_ANYTHING ? tightened(stretch, loose) : loose;
    }

    private List<List<Paginator.Placed>> tightened(List<Block> stretch, List<List<Paginator.Placed>> loose) {
        double smallest = SHARES[SHARES.length - 1];
        for (double rows : ROWS) {
            List<List<Paginator.Placed>> tighter = set(stretch, smallest, rows, 1);
            if (tighter.size() < loose.size()) {
                return tighter;
            }
        }
        for (double filled : FILLED) {
            List<List<Paginator.Placed>> shared = set(stretch, 1, 1, filled);
            if (shared.size() == loose.size() && filled(shared.get(shared.size() - 1)) >= HARDLY_ANYTHING) {
                return shared;
            }
        }
        return loose;
    }

    private List<List<Paginator.Placed>> set(List<Block> stretch, double pictures, double rows, double filled) {
        Paginator paginator = new Paginator(pageHeight * filled, faces);
        return paginator.pages(new BlockSetter(faces, new FigurePainter(faces), pictures, rows).set(stretch, measure));
    }

    private double filled(List<Paginator.Placed> page) {
        Paginator.Placed last = page.get(page.size() - 1);
        return (last.y() + last.slab().height()) / pageHeight;
    }
}
