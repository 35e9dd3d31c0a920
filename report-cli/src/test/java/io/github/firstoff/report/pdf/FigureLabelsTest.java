package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.figure.Figure;
import io.github.firstoff.report.kind.ReportCatalogue;
import io.github.firstoff.report.kind.StudyCases;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** In the pictures of every kind of chart no label leaves the picture, and no two stand in one another. */
class FigureLabelsTest {
    /** The widths of strong type are reckoned for all labels, so that boxes are a little wider than the ink. */
    private static final double ROUNDING = 0.05;

    private record Placed(Figure figure, double width, double height) {}

    static Stream<String> cases() {
        return StudyCases.names().stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void labelsStayInsideAndApart(String name) {
        for (Placed placed : figures(name)) {
            for (double share : new double[] {1, 0.68}) {
                double height = placed.height * share;
                List<Pen.Label> labels = labels(placed.figure, placed.width, height);
                assertThat(labels).isNotEmpty();
                for (int i = 0; i < labels.size(); i++) {
                    Pen.Label label = labels.get(i);
                    Rectangle2D box = label.box();
                    assertThat(box.getX() >= -ROUNDING
                                    && box.getMaxX() <= placed.width + ROUNDING
                                    && box.getY() >= -ROUNDING
                                    && box.getMaxY() <= height + ROUNDING)
                            .as(name + ": " + label)
                            .isTrue();
                    for (Pen.Label other : labels.subList(i + 1, labels.size())) {
                        assertThat(box.intersects(other.box()))
                                .as(name + ": " + label + " in " + other)
                                .isFalse();
                    }
                }
            }
        }
    }

    private static List<Pen.Label> labels(Figure figure, double width, double height) {
        Graphics2D g = new BufferedImage(1000, 1000, BufferedImage.TYPE_INT_RGB).createGraphics();
        try {
            Pen pen = new Pen(g, new Faces());
            FigurePainter.paint(pen, figure, width, height);
            return pen.labels();
        } finally {
            g.dispose();
        }
    }

    private static List<Placed> figures(String name) {
        double measure = PaperSize.A4.widthMm() * Type.MM - 2 * PageFrame.MARGIN;
        List<Placed> figures = new ArrayList<>();
        collect(ReportCatalogue.compose(StudyCases.all().get(name)).blocks(), measure, figures);
        assertThat(figures).isNotEmpty();
        return figures;
    }

    private static void collect(List<Block> blocks, double measure, List<Placed> figures) {
        for (Block block : blocks) {
            if (block instanceof Block.FigureBlock figure) {
                figures.add(new Placed(figure.figure(), measure, figure.heightMm() * Type.MM));
            } else if (block instanceof Block.SideBySide side) {
                side.parts().forEach(part -> collect(part.blocks(), BlockSetter.span(part.span(), measure), figures));
            }
        }
    }
}
