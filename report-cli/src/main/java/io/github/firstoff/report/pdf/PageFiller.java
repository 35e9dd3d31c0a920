package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;

/**
 * Sets blocks on pages. Between two breaks that the model asks for, pictures are drawn a little smaller, and rows of tables stand a little
 * closer, where that spares the reader a last page with little on it. Where nothing spares it, the pages before hand some of their content
 * on, at a place where no table is torn if there is one.
 */
final class PageFiller {
    /** A last page filled less than this is worth smaller pictures, or takes over from the pages before. */
    private static final double LITTLE = 0.45;

    /** How much smaller, in the order in which it is tried. */
    private static final double[] SHARES = {0.92, 0.84, 0.76, 0.68};

    /** A last page filled less than this is worth rows that stand closer. */
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
        if (filled(loose.get(loose.size() - 1)) < HARDLY_ANYTHING) {
            double smallest = SHARES[SHARES.length - 1];
            for (double rows : ROWS) {
                List<List<Paginator.Placed>> tighter = set(stretch, smallest, rows, 1);
                if (tighter.size() < loose.size()) {
                    return tighter;
                }
            }
        }
        return evened(stretch, loose);
    }

    /**
     * As many pages, with more on the last: rather none with hardly anything on it, then the lines to sign on the first page, then the
     * fewest torn tables, then the fullest of the emptiest pages.
     */
    private List<List<Paginator.Placed>> evened(List<Block> stretch, List<List<Paginator.Placed>> loose) {
        Comparator<Dealt> kindest = Comparator.<Dealt, Boolean>comparing(
                        dealt -> emptiest(dealt.pages) < HARDLY_ANYTHING)
                .thenComparing(dealt -> !dealt.signedFirst)
                .thenComparing(dealt -> tornTables(dealt.pages))
                .thenComparing(dealt -> -emptiest(dealt.pages));
        return DoubleStream.concat(DoubleStream.of(1), Arrays.stream(FILLED))
                .mapToObj(filled -> new Dealt(set(stretch, 1, 1, filled), signsFirst(stretch, filled)))
                .filter(dealt -> dealt.pages.size() == loose.size())
                .min(kindest)
                .map(Dealt::pages)
                .orElse(loose);
    }

    /** A way to deal the content out, and whether its lines to sign are on the first of the pages. */
    private record Dealt(List<List<Paginator.Placed>> pages, boolean signedFirst) {}

    private boolean signsFirst(List<Block> stretch, double filled) {
        for (int i = 0; i < stretch.size(); i++) {
            if (stretch.get(i) instanceof Block.SignOff) {
                return set(stretch.subList(0, i + 1), 1, 1, filled).size() == 1;
            }
        }
        return false;
    }

    /** How many pages begin in the middle of a table, under its head set once more. */
    private static long tornTables(List<List<Paginator.Placed>> pages) {
        return pages.stream()
                .filter(page -> page.size() > 1
                        && Objects.equals(
                                page.get(1).slab().repeat(), page.get(0).slab()))
                .count();
    }

    private double emptiest(List<List<Paginator.Placed>> pages) {
        return pages.stream().mapToDouble(this::filled).min().orElse(0);
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
