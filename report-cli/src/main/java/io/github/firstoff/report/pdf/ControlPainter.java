package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.ControlFigure.Band;
import io.github.firstoff.report.figure.ControlFigure.Panel;
import io.github.firstoff.report.figure.ControlFigure.PhaseBreak;
import io.github.firstoff.report.figure.ControlFigure.Point;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Thinning;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Draws control charts: panels under one another on one axis of points, with everything that is said beside them. */
final class ControlPainter {
    private static final int TICKS = 6;
    /** Between a panel and the name of the next. */
    private static final double BETWEEN = 6;
    /** From the right end of a panel to the names of its lines. */
    private static final double REACH = 6;

    private static final Stroke LANE_STROKE = new BasicStroke(1.6f);

    /** Rings closer than this that say the same share one number. */
    private static final double CLOSE = 13;
    /** A band narrower than this many points of type cannot be named even upwards. */
    private static final double NARROWEST_BAND = 8;
    /** Between a number and whatever stands beside it. */
    private static final double NUMBER_GAP = 3;
    /** How many places above and below a ring are tried for its number where it is still near, and where it must stand somewhere. */
    private static final int NEAR = 4;

    private static final int FAR = 10;

    private final Pen pen;
    private final Graphics2D g;
    private final ControlFigure figure;
    private final Run run;

    ControlPainter(Pen pen, ControlFigure figure) {
        this.pen = pen;
        this.g = pen.graphics();
        this.figure = figure;
        this.run = new Run(figure);
    }

    /** Where points stand along the axis, in widths of a point; a break that interrupts the run opens a gap. */
    private static final class Run {
        private static final double LEAST_GAP = 0.6;
        private static final double GAP_OF_WHOLE = 0.018;
        private static final double GAPS_OF_WHOLE = 0.2;

        private final double[] middles;
        private final boolean[] starts;
        private final double gap;
        private final double length;

        Run(ControlFigure figure) {
            int count = figure.location().points().size();
            starts = new boolean[count];
            int gaps = 0;
            for (PhaseBreak phase : figure.breaks()) {
                if (phase.gap() && phase.before() > 1 && phase.before() <= count && !starts[phase.before() - 1]) {
                    starts[phase.before() - 1] = true;
                    gaps++;
                }
            }
            gap = gaps == 0 ? 0 : Math.min(Math.max(LEAST_GAP, count * GAP_OF_WHOLE), count * GAPS_OF_WHOLE / gaps);
            middles = new double[count];
            double at = 0;
            for (int i = 0; i < count; i++) {
                at += starts[i] ? gap : 0;
                middles[i] = at + 0.5;
                at++;
            }
            length = at;
        }

        double middle(int i) {
            return middles[i];
        }

        /** Where a phase that starts at point {@code i} (from 0) has its line. */
        double start(int i) {
            return middles[i] - 0.5 - (starts[i] ? gap / 2 : 0);
        }

        double x(double place, Rectangle2D area) {
            return area.getX() + place / length * area.getWidth();
        }

        double pitch(Rectangle2D area) {
            return area.getWidth() / length;
        }
    }

    void paint(double width, double height) {
        List<Panel> panels = figure.panels();
        Optional<HistogramFigure> aside = figure.histogram();
        List<Axis> axes = new ArrayList<>();
        for (Panel panel : panels) {
            axes.add(axis(panel, axes.isEmpty() ? aside : Optional.empty()));
        }
        double left = pen.widest(axes.stream().mapToDouble(this::labelWidth)) + Pen.TICK_GAP + 2;
        double right = pen.widest(DoubleStream.concat(
                        panels.stream()
                                .flatMap(panel -> panel.lines().stream())
                                .mapToDouble(line -> pen.width(pen.label(line))),
                        figure.bands().stream()
                                .mapToDouble(band -> pen.width(pen.faces().fit(band.word())))))
                + REACH
                + 1;
        double asideWidth = aside.isPresent() ? Math.max(70, width * 0.17) : 0;
        double asideGap = aside.isPresent() ? 10 : 0;
        double plotWidth = width - left - right - asideWidth - asideGap;
        Rectangle2D probe = new Rectangle2D.Double(left, 0, plotWidth, 1);
        Bands bands = new Bands(probe);
        BreakWords words = new BreakWords(probe);
        double top = Pen.TITLE + words.height();
        double foot = Pen.FOOT + bands.height();
        double plots = height - foot - top - (panels.size() - 1) * (Pen.TITLE + BETWEEN);
        List<Rectangle2D> areas = new ArrayList<>();
        double y = top;
        for (int i = 0; i < panels.size(); i++) {
            double share = plots * share(i, panels.size());
            areas.add(new Rectangle2D.Double(left, y, plotWidth, share));
            y += share + BETWEEN + Pen.TITLE;
        }
        List<Rectangle2D> taken = words.draw(areas);
        for (int i = 0; i < panels.size(); i++) {
            panel(panels.get(i), axes.get(i), areas.get(i), i == 0 ? taken : List.of());
        }
        Rectangle2D lowest = areas.get(areas.size() - 1);
        domainAxis(lowest, bands.height());
        bands.draw(lowest);
        if (aside.isPresent()) {
            Rectangle2D area = new Rectangle2D.Double(
                    width - asideWidth, top, asideWidth, areas.get(0).getHeight());
            new HistogramPainter(pen, aside.get()).turned(axes.get(0), area);
        }
    }

    /** The location takes most of the height. */
    private static double share(int panel, int panels) {
        return switch (panels) {
            case 1 -> 1;
            case 2 -> panel == 0 ? 0.62 : 0.38;
            default -> panel == 0 ? 0.44 : 0.56 / (panels - 1);
        };
    }

    private void panel(Panel panel, Axis axis, Rectangle2D area, List<Rectangle2D> taken) {
        boolean[] drawn = Thinning.drawn(panel.points());
        int count = 0;
        for (boolean one : drawn) {
            count += one ? 1 : 0;
        }
        boolean dense = count > 60;
        double weight = count <= 60 ? 0.8 : count <= 250 ? 0.55 : 0.35;
        double radius = count <= 60 ? 1.7 : count <= 250 ? 1.15 : 0.75;
        pen.title(panel.name(), panel.unit(), area);
        Plots.Lines lines = new Plots.Lines();
        if (panel.zones()) {
            for (int third = 1; third <= 2; third++) {
                int k = third;
                lines.add(steps(panel, p -> p.centre() + (p.upper() - p.centre()) * k / 3), Pen.ZONE, Ink.GREY);
                lines.add(steps(panel, p -> p.centre() + (p.lower() - p.centre()) * k / 3), Pen.ZONE, Ink.GREY);
            }
        }
        lines.add(steps(panel, Point::upper), Pen.CONTROL, Ink.BLACK);
        lines.add(steps(panel, Point::lower), Pen.CONTROL, Ink.BLACK);
        lines.add(steps(panel, Point::centre), Pen.CENTRE, Ink.GREY);
        if (!panel.second().isEmpty()) {
            Stroke dashed = new BasicStroke(
                    (float) weight, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {2, 1}, 0);
            int series = lines.add(values(panel.second(), Thinning.drawn(panel.second())), dashed, Ink.BLUE);
            lines.dots(series, radius, false, true);
        }
        Stroke line = new BasicStroke((float) weight, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        lines.dots(lines.add(values(panel.points(), drawn), line, Ink.BLUE), radius, true, true);
        for (ControlFigure.Trend trend : panel.trends()) {
            lines.add(
                    new double[][] {
                        {run.middle(trend.from() - 1), run.middle(trend.to() - 1)}, {trend.start(), trend.end()}
                    },
                    Pen.TREND,
                    Ink.BLACK);
        }
        for (LevelLine level : panel.lines()) {
            double at = axis.place(level.at(), area);
            boolean across =
                    level.kind() == LevelLine.Kind.SPECIFICATION_LIMIT || level.kind() == LevelLine.Kind.TARGET;
            if (across && Pen.inside(at, area)) {
                pen.line(area.getX(), at, area.getMaxX(), at, Pen.stroke(level.kind()), Ink.BLACK);
            }
        }
        lines.draw(g, 0, run.length, axis.low, axis.high, area);
        pen.rangeAxis(axis, area);
        lineLabels(panel.lines(), axis, area);
        List<Rectangle2D> obstacles = new ArrayList<>(taken);
        double heading = pen.width(pen.titleOf(panel.name(), panel.unit()));
        obstacles.add(new Rectangle2D.Double(area.getX(), area.getY() - Pen.TITLE, heading, Pen.TITLE - 2));
        double mark = dense ? radius : radius + 0.2;
        Lanes lanes = lanes(panel, axis, area);
        marks(panel.points(), axis, area, mark, obstacles, lanes);
        if (!panel.second().isEmpty()) {
            marks(panel.second(), axis, area, mark, obstacles, lanes);
        }
    }

    // ---------------------------------------------------------------- points that speak

    /** Rings, numbers and shapes over the points that need them. */
    private void marks(
            List<Point> points, Axis axis, Rectangle2D area, double radius, List<Rectangle2D> obstacles, Lanes lanes) {
        double ring = radius + (radius > 1 ? 1.9 : 1.5);
        List<Ring> rings = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get(i);
            double y = axis.place(point.value(), area);
            if (Double.isNaN(point.value()) || !Pen.inside(y, area)) {
                continue;
            }
            double x = run.x(run.middle(i), area);
            shape(point.shape(), x, y, radius);
            if (!point.marks().isEmpty()) {
                g.setPaint(Ink.BLACK.colour());
                g.setStroke(new BasicStroke(0.75f));
                g.draw(new Ellipse2D.Double(x - ring, y - ring, 2 * ring, 2 * ring));
                boolean above = Double.isNaN(point.centre()) || point.value() >= point.centre();
                rings.add(new Ring(pen.faces().fit(point.marks()), x, y, above));
            }
        }
        rings.forEach(one -> obstacles.add(new Rectangle2D.Double(one.x - ring, one.y - ring, 2 * ring, 2 * ring)));
        for (Ring one : speakers(rings)) {
            number(one, ring, area, obstacles, lanes);
        }
    }

    private void shape(ControlFigure.Shape shape, double x, double y, double radius) {
        switch (shape) {
            case ORDINARY -> {}
            case SIGNAL -> {
                double half = radius + 0.9;
                Path2D diamond = new Path2D.Double();
                diamond.moveTo(x, y - half);
                diamond.lineTo(x + half, y);
                diamond.lineTo(x, y + half);
                diamond.lineTo(x - half, y);
                diamond.closePath();
                g.setPaint(Ink.BLACK.colour());
                g.fill(diamond);
            }
            case OUT_OF_SPECIFICATION -> {
                double half = radius + 1;
                g.setPaint(Ink.RED.colour());
                g.fill(new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half));
                g.setPaint(Ink.WHITE.colour());
                g.fill(new Rectangle2D.Double(x - half * 0.5, y - half * 0.5, half, half));
            }
            case EXCLUDED -> {
                double half = radius + 1.2;
                g.setPaint(Ink.WHITE.colour());
                g.fill(new Ellipse2D.Double(x - half, y - half, 2 * half, 2 * half));
                Stroke cross = new BasicStroke(0.9f);
                pen.line(x - half, y - half, x + half, y + half, cross, Ink.GREY);
                pen.line(x - half, y + half, x + half, y - half, cross, Ink.GREY);
            }
        }
    }

    private record Ring(String mark, double x, double y, boolean above) {
        boolean outside(Ring other) {
            return above ? y < other.y : y > other.y;
        }
    }

    /** Neighbours that say the same share one number, at the ring that lies furthest out. */
    private static List<Ring> speakers(List<Ring> rings) {
        List<Ring> speakers = new ArrayList<>();
        Ring before = null;
        for (Ring ring : rings) {
            int last = speakers.size() - 1;
            boolean sameRun = before != null && ring.mark.equals(before.mark) && ring.x - before.x < CLOSE;
            if (!sameRun) {
                speakers.add(ring);
            } else if (ring.above == speakers.get(last).above && ring.outside(speakers.get(last))) {
                speakers.set(last, ring);
            }
            before = ring;
        }
        return speakers;
    }

    /**
     * Sets a number as near to its ring as there is room: above or below, then further off, then aside. A place on no line at all is
     * looked for first, then one that the run of the points does not cross, and only then any that is free of other marks.
     */
    private void number(Ring of, double ring, Rectangle2D area, List<Rectangle2D> taken, Lanes lanes) {
        for (Predicate<Rectangle2D> clear : List.<Predicate<Rectangle2D>>of(lanes::isClear, lanes::isOffTheRun)) {
            if (number(of, ring, area, taken, clear, NEAR)) {
                return;
            }
        }
        number(of, ring, area, taken, box -> true, FAR);
    }

    private boolean number(
            Ring of,
            double ring,
            Rectangle2D area,
            List<Rectangle2D> taken,
            Predicate<Rectangle2D> clear,
            int attempts) {
        double width = pen.width(of.mark);
        double capitals = Pen.SIZE * Type.CAPITALS;
        for (double aside : new double[] {0, 1, -1, 2, -2}) {
            double middle = of.x + aside * (ring + width / 2 + NUMBER_GAP);
            for (int attempt = 0; attempt < attempts; attempt++) {
                boolean up = of.above == (attempt % 2 == 0);
                int step = attempt / 2;
                double shift = step * Pen.LABEL_STEP - (aside == 0 ? 0 : ring + capitals / 2);
                double baseline = up ? of.y - ring - 1.4 - shift : of.y + ring + 1.4 + capitals + shift;
                Rectangle2D box = new Rectangle2D.Double(
                        middle - width / 2 - NUMBER_GAP / 2,
                        baseline - capitals - 0.6,
                        width + NUMBER_GAP,
                        capitals + 1.2);
                boolean free = box.getY() > area.getY() - Pen.TITLE
                        && box.getMaxY() < area.getMaxY()
                        && box.getX() > area.getX()
                        && box.getMaxX() < area.getMaxX() + REACH - 1
                        && taken.stream().noneMatch(box::intersects)
                        && clear.test(box);
                if (free) {
                    taken.add(box);
                    pen.text(of.mark, middle - width / 2, baseline, true, Ink.BLACK);
                    return true;
                }
            }
        }
        return false;
    }

    /** What is drawn as a line through a panel, for numbers that keep off it. */
    private record Lanes(List<Line2D> run, List<Line2D> levels) {
        boolean isOffTheRun(Rectangle2D box) {
            return run.stream().noneMatch(line -> line.intersects(box));
        }

        boolean isClear(Rectangle2D box) {
            return isOffTheRun(box) && levels.stream().noneMatch(line -> line.intersects(box));
        }
    }

    private Lanes lanes(Panel panel, Axis axis, Rectangle2D area) {
        List<Line2D> runs = new ArrayList<>(joined(panel.points(), axis, area));
        runs.addAll(joined(panel.second(), axis, area));
        List<Line2D> levels = new ArrayList<>();
        for (int i = 0; i < panel.points().size(); i++) {
            Point point = panel.points().get(i);
            double from = run.x(run.middle(i) - 0.5, area);
            double to = run.x(run.middle(i) + 0.5, area);
            for (double level : new double[] {point.upper(), point.centre(), point.lower()}) {
                if (!Double.isNaN(level)) {
                    double y = axis.place(level, area);
                    levels.add(new Line2D.Double(from, y, to, y));
                }
            }
        }
        return new Lanes(runs, levels);
    }

    private List<Line2D> joined(List<Point> points, Axis axis, Rectangle2D area) {
        List<Line2D> lines = new ArrayList<>();
        int before = -1;
        for (int i = 0; i < points.size(); i++) {
            before = run.starts[i] ? -1 : before;
            if (points.get(i).shape() == ControlFigure.Shape.EXCLUDED
                    || Double.isNaN(points.get(i).value())) {
                continue;
            }
            if (before >= 0) {
                lines.add(new Line2D.Double(
                        run.x(run.middle(before), area),
                        axis.place(points.get(before).value(), area),
                        run.x(run.middle(i), area),
                        axis.place(points.get(i).value(), area)));
            }
            before = i;
        }
        return lines;
    }

    // ---------------------------------------------------------------- what stands beside

    private void lineLabels(List<LevelLine> lines, Axis axis, Rectangle2D area) {
        List<LevelLine> sorted = lines.stream()
                .filter(line -> Pen.inside(axis.place(line.at(), area), area))
                .sorted(Comparator.comparingDouble(LevelLine::at).reversed())
                .toList();
        double[] places = Spread.apart(
                sorted.stream().mapToDouble(line -> axis.place(line.at(), area)).toArray(),
                Pen.LABEL_STEP,
                area.getY() - 2,
                area.getMaxY() + 2);
        for (int i = 0; i < sorted.size(); i++) {
            LevelLine line = sorted.get(i);
            double at = axis.place(line.at(), area);
            if (Math.abs(places[i] - at) > 0.5) {
                pen.line(area.getMaxX(), at, area.getMaxX() + REACH - 1, places[i], Pen.HAIR, Ink.GREY);
            }
            pen.text(
                    pen.label(line),
                    area.getMaxX() + REACH,
                    places[i] + Pen.SIZE * Type.CAPITALS / 2,
                    line.kind() == LevelLine.Kind.SPECIFICATION_LIMIT,
                    line.kind() == LevelLine.Kind.NAME ? Ink.BLUE : Ink.BLACK);
        }
    }

    /** The words at the breaks, over the first panel, on as many lines as they need. */
    private final class BreakWords {
        private final List<Word> words = new ArrayList<>();
        private final double headingEnd;
        private int levels;

        private record Word(String text, double x, int level) {}

        BreakWords(Rectangle2D area) {
            Panel first = figure.location();
            headingEnd = area.getX() + pen.width(pen.titleOf(first.name(), first.unit()));
            List<Double> ends = new ArrayList<>(List.of(headingEnd));
            for (PhaseBreak phase : figure.breaks()) {
                String word = pen.faces().fit(phase.word());
                double x = run.x(run.start(phase.before() - 1), area);
                double at = Math.max(area.getX(), Math.min(x + 3, area.getMaxX() - pen.width(word)));
                int level = 0;
                while (level < ends.size() && ends.get(level) + 4 > at) {
                    level++;
                }
                if (level == ends.size()) {
                    ends.add(0.0);
                }
                ends.set(level, at + pen.width(word));
                words.add(new Word(word, at, level));
                levels = word.isEmpty() ? levels : Math.max(levels, level);
            }
        }

        double height() {
            return levels * Pen.LABEL_STEP;
        }

        List<Rectangle2D> draw(List<Rectangle2D> areas) {
            List<Rectangle2D> taken = new ArrayList<>();
            Rectangle2D first = areas.get(0);
            for (int i = 0; i < words.size(); i++) {
                PhaseBreak phase = figure.breaks().get(i);
                Word word = words.get(i);
                double x = run.x(run.start(phase.before() - 1), first);
                Stroke stroke = phase.gap() ? Pen.HAIR : Pen.ZONE;
                for (Rectangle2D area : areas) {
                    pen.line(x, area.getY(), x, area.getMaxY(), stroke, Ink.GREY);
                }
                double baseline = first.getY() - 4 - word.level * Pen.LABEL_STEP;
                if (!word.text.isEmpty()) {
                    boolean overHeading = word.level > 0 && x < headingEnd + 1;
                    double foot = overHeading ? first.getY() - Pen.TITLE + 1 : first.getY();
                    pen.line(x, baseline - 4, x, foot, stroke, Ink.GREY);
                    pen.text(word.text, word.x, baseline, false, Ink.BLACK);
                    taken.add(new Rectangle2D.Double(word.x, baseline - Pen.SIZE, pen.width(word.text), Pen.SIZE + 2));
                }
            }
            return taken;
        }
    }

    private void domainAxis(Rectangle2D area, double bands) {
        List<String> labels = figure.labels().stream().map(pen.faces()::fit).toList();
        double pitch = run.pitch(area);
        double widest = pen.widest(labels.stream().mapToDouble(pen::width));
        int step = labelStep((widest + 5) / pitch);
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < labels.size(); i++) {
            boolean due = step == 1 || i == 0 || (i + 1) % step == 0;
            double x = run.x(run.middle(i), area);
            double half = pen.width(labels.get(i)) / 2;
            boolean firstWouldCrowd = i == 0 && step > 1 && (step - 1) * pitch < widest + 5;
            if (due && !firstWouldCrowd && x - half > before + 2) {
                pen.line(x, area.getMaxY(), x, area.getMaxY() + 2, Pen.HAIR, Ink.GREY);
                pen.text(labels.get(i), x - half, area.getMaxY() + 2.5 + Pen.SIZE, false, Ink.GREY);
                before = x + half;
            }
        }
        double from = area.getX();
        for (int i = 1; i < labels.size(); i++) {
            if (run.starts[i]) {
                double end = run.x(run.middle(i - 1) + 0.5, area);
                pen.line(from, area.getMaxY(), end, area.getMaxY(), Pen.HAIR, Ink.GREY);
                from = run.x(run.middle(i) - 0.5, area);
            }
        }
        pen.line(from, area.getMaxY(), area.getMaxX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
        String name = pen.faces().fit(figure.axisName());
        double baseline = area.getMaxY() + 2.5 + 2 * Pen.SIZE + 2 + bands;
        pen.text(name, Math.max(0, area.getMaxX() - pen.width(name)), baseline, false, Ink.BLACK);
    }

    private static int labelStep(double least) {
        for (int power = 1; power <= 1_000_000; power *= 10) {
            for (int factor : new int[] {1, 2, 5}) {
                if (factor * power >= least) {
                    return factor * power;
                }
            }
        }
        return 1_000_000;
    }

    /**
     * The names of bands under the axis: along where all have room, else upwards; where bands are too narrow for either, a lane for each
     * name, with a stroke under every point that belongs to it.
     */
    private final class Bands {
        private static final double ALONG = 9;
        private static final double LANE = 7.5;

        private final List<String> names;
        private final boolean along;
        private final boolean upwards;
        private final double widest;

        Bands(Rectangle2D area) {
            double narrowest = Double.POSITIVE_INFINITY;
            boolean fits = true;
            double most = 0;
            for (Band band : figure.bands()) {
                double width = end(band, area) - start(band, area);
                double word = pen.width(pen.faces().fit(band.word()));
                fits &= word + 2 <= width;
                narrowest = Math.min(narrowest, width);
                most = Math.max(most, word);
            }
            along = fits;
            upwards = !fits && narrowest >= NARROWEST_BAND;
            widest = most;
            names = figure.bands().stream().map(Band::word).distinct().toList();
        }

        private double start(Band band, Rectangle2D area) {
            return run.x(run.middle(band.from() - 1) - 0.5, area) + inset(area);
        }

        private double end(Band band, Rectangle2D area) {
            return run.x(run.middle(band.to() - 1) + 0.5, area) - inset(area);
        }

        private double inset(Rectangle2D area) {
            return Math.min(0.8, run.pitch(area) / 6);
        }

        double height() {
            if (figure.bands().isEmpty()) {
                return 0;
            }
            return along ? ALONG + 1 : upwards ? widest + 5 : names.size() * LANE + 1;
        }

        void draw(Rectangle2D area) {
            double top = area.getMaxY() + 2.5 + Pen.SIZE + 3;
            for (Band band : figure.bands()) {
                double from = start(band, area);
                double to = end(band, area);
                String word = pen.faces().fit(band.word());
                double middle = (from + to) / 2;
                double capitals = Pen.SIZE * Type.CAPITALS;
                if (!along && !upwards) {
                    double lane = top + names.indexOf(band.word()) * LANE + LANE / 2;
                    pen.line(from, lane, to, lane, LANE_STROKE, Ink.BLACK);
                    continue;
                }
                pen.line(from, top, to, top, Pen.CENTRE, Ink.GREY);
                if (upwards) {
                    pen.textUpwards(word, middle + capitals / 2, top + 2.5 + pen.width(word), Ink.BLACK);
                } else {
                    pen.text(word, middle - pen.width(word) / 2, top + 1.5 + Pen.SIZE, false, Ink.BLACK);
                }
            }
            if (!along && !upwards) {
                for (int i = 0; i < names.size(); i++) {
                    double baseline = top + i * LANE + LANE / 2 + Pen.SIZE * Type.CAPITALS / 2;
                    pen.text(pen.faces().fit(names.get(i)), area.getMaxX() + REACH, baseline, false, Ink.BLACK);
                }
            }
        }
    }

    // ---------------------------------------------------------------- paths

    private interface Level {
        double of(Point point);
    }

    /** A line that holds its level over the whole width of a point, and is interrupted where the run is. */
    private double[][] steps(Panel panel, Level level) {
        List<double[]> path = new ArrayList<>();
        double before = Double.NaN;
        for (int i = 0; i < panel.points().size(); i++) {
            double value = level.of(panel.points().get(i));
            double from = run.middle(i) - 0.5;
            if (run.starts[i]) {
                path.add(new double[] {from, Double.NaN});
            }
            if (!run.starts[i] && value == before) {
                path.get(path.size() - 1)[0] = from + 1;
            } else {
                path.add(new double[] {from, value});
                path.add(new double[] {from + 1, value});
            }
            before = value;
        }
        return columns(path);
    }

    /** The line through the points; it passes by what was excluded. */
    private double[][] values(List<Point> points, boolean[] drawn) {
        List<double[]> path = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (run.starts[i]) {
                path.add(new double[] {run.middle(i) - 0.5, Double.NaN});
            }
            if (drawn[i] && points.get(i).shape() != ControlFigure.Shape.EXCLUDED) {
                path.add(new double[] {run.middle(i), points.get(i).value()});
            }
        }
        return columns(path);
    }

    private static double[][] columns(List<double[]> path) {
        double[][] columns = new double[2][path.size()];
        for (int i = 0; i < path.size(); i++) {
            columns[0][i] = path.get(i)[0];
            columns[1][i] = path.get(i)[1];
        }
        return columns;
    }

    private static Axis axis(Panel panel, Optional<HistogramFigure> aside) {
        if (panel.scale().isPresent()) {
            return Axis.between(panel.scale().get(), TICKS);
        }
        DoubleStream values = Stream.concat(panel.points().stream(), panel.second().stream())
                .flatMapToDouble(p -> DoubleStream.of(p.value(), p.lower(), p.centre(), p.upper()));
        DoubleStream lines = panel.lines().stream().mapToDouble(LevelLine::at);
        DoubleStream bins = aside.stream()
                .flatMap(histogram -> histogram.bins().stream())
                .flatMapToDouble(bin -> DoubleStream.of(bin.from(), bin.to()));
        DoubleStream trends = panel.trends().stream().flatMapToDouble(t -> DoubleStream.of(t.start(), t.end()));
        return Axis.around(
                DoubleStream.concat(DoubleStream.concat(values, trends), DoubleStream.concat(lines, bins))
                        .toArray(),
                TICKS);
    }

    private double labelWidth(Axis axis) {
        return DoubleStream.of(axis.ticks())
                .map(value -> pen.width(axis.label(value)))
                .max()
                .orElse(0);
    }
}
