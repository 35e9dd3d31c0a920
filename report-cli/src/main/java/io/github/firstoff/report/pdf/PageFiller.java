package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets blocks on pages. Between two breaks that the model asks for, pictures are drawn a little smaller where that spares the reader a
 * last page with little on it.
 */
final class PageFiller {
    /** A last page filled less than this is worth smaller pictures. */
    private static final double LITTLE = 0.45;

    /** How much smaller, in the order in which it is tried. */
    private static final double[] SHARES = {0.92, 0.84, 0.76, 0.68};

    private final Faces faces;
    private final Paginator paginator;
    private final double pageHeight;
    private final double measure;

    PageFiller(Faces faces, double pageHeight, double measure) {
        this.faces = faces;
        this.pageHeight = pageHeight;
        this.measure = measure;
        this.paginator = new Paginator(pageHeight, faces);
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
        List<List<Paginator.Placed>> loose = set(stretch, 1);
        if (loose.size() < 2 || filled(loose.get(loose.size() - 1)) > LITTLE) {
            return loose;
        }
        for (double share : SHARES) {
            List<List<Paginator.Placed>> tighter = set(stretch, share);
            if (tighter.size() < loose.size()) {
                return tighter;
            }
        }
        return loose;
    }

    private List<List<Paginator.Placed>> set(List<Block> stretch, double share) {
        return paginator.pages(new BlockSetter(faces, new FigurePainter(faces), share).set(stretch, measure));
    }

    private double filled(List<Paginator.Placed> page) {
        Paginator.Placed last = page.get(page.size() - 1);
        return (last.y() + last.slab().height()) / pageHeight;
    }
}
