package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.model.Width;
import java.util.ArrayList;
import java.util.List;

/** Sets tables: finds the widths of the columns, then makes one slab per row. */
final class TableSetter {
    private static final double ROW_AIR = 2.1;
    /** A requirement up to this width, in points, is not broken into lines as long as smaller type spares it. */
    private static final double SHORT_REQUIREMENT = 65 * Type.MM;
    /** Sizes and gutters to try, widest first: a table that does not fit is set smaller before words are broken. */
    private static final double[][] SETTINGS = {{8.5, 9.5}, {8.5, 6.5}, {8, 6}, {7.5, 5.5}, {7, 4.5}};

    private final Faces faces;
    private final NotationSetter notations;
    private final TextSetter texts;
    private final double air;

    /** A setter that leaves a share of the usual air in its rows. */
    TableSetter(Faces faces, NotationSetter notations, TextSetter texts, double share) {
        this.air = ROW_AIR * share;
        this.faces = faces;
        this.notations = notations;
        this.texts = texts;
    }

    List<Slab> set(Block.Table table, double measure, double space) {
        List<Slab> best = List.of();
        double size = 0;
        for (double[] setting : SETTINGS) {
            boolean last = setting[0] == SETTINGS[SETTINGS.length - 1][0];
            if (!best.isEmpty() && setting[0] < size) {
                break;
            }
            Grid grid = new Grid(table, measure, setting[0], setting[1]);
            if (grid.fits || last) {
                List<Slab> slabs = grid.slabs(space);
                if (grid.narrowed && best.isEmpty()) {
                    faces.say("a table of " + table.columns().size()
                            + " columns is too wide for the sheet; its columns were narrowed");
                }
                // Closer columns are worth it only where they save lines.
                if (best.isEmpty() || height(slabs) < 0.97 * height(best)) {
                    best = slabs;
                    size = setting[0];
                }
            }
        }
        return best;
    }

    private static double height(List<Slab> slabs) {
        return slabs.stream().mapToDouble(Slab::height).sum();
    }

    private static Type tone(Type type, Tone tone) {
        return switch (tone) {
            case PLAIN, GOOD -> type;
            case OPEN -> type.heavy(true);
            case OUT -> type.heavy(true).in(Ink.RED);
        };
    }

    /** One table at one size of type. */
    private final class Grid {
        private final Block.Table table;
        private final Type type;
        private final Type head;
        private final double gutter;
        private final double[] width;
        /** Widths before and after the decimal mark, per column. */
        private final double[] whole;

        private final double[] rest;
        private final boolean fits;
        private boolean narrowed;
        private final double total;
        private final Tag structure = Tag.of("Table");

        Grid(Block.Table table, double measure, double size, double gutter) {
            this.table = table;
            type = Type.BODY.scaled(size);
            head = Type.LABEL.scaled(Math.min(7, size)).in(Ink.BLACK);
            this.gutter = gutter;
            int count = table.columns().size();
            width = new double[count];
            whole = new double[count];
            rest = new double[count];
            double[] least = new double[count];
            double taken = gutter * (count - 1);
            double[] wanted = new double[count];
            double weights = 0;
            double leastShares = 0;
            for (int i = 0; i < count; i++) {
                Width rule = table.columns().get(i).width();
                double natural = measureColumn(i, false);
                switch (rule.kind()) {
                    case FIXED -> width[i] = Math.max(rule.value() * Type.MM, 1);
                    case NATURAL -> width[i] = natural;
                    case SHARE -> {
                        least[i] = measureColumn(i, true);
                        wanted[i] = Math.max(least[i], natural);
                        weights += rule.value();
                        leastShares += least[i];
                    }
                }
                taken += width[i];
            }
            double left = measure - taken;
            fits = left >= leastShares - 0.01;
            if (fits) {
                share(left, weights, least, wanted);
            } else {
                squeeze(measure, least);
            }
            double sum = gutter * (count - 1);
            for (double one : width) {
                sum += one;
            }
            total = sum;
        }

        /**
         * Shares what is left by weight, but gives every column its least, and none more than it can use while another
         * column has to wrap.
         */
        private void share(double left, double weights, double[] least, double[] wanted) {
            double needed = 0;
            for (int i = 0; i < width.length; i++) {
                needed += isShare(i) ? wanted[i] : 0;
            }
            if (needed <= left) {
                // Nothing wraps; what is over goes to all by weight.
                for (int i = 0; i < width.length; i++) {
                    if (isShare(i)) {
                        double part = table.columns().get(i).width().value() / weights;
                        width[i] = wanted[i] + (left - needed) * part;
                    }
                }
                return;
            }
            boolean[] settled = new boolean[width.length];
            double room = left;
            double weight = weights;
            boolean narrowest = true;
            while (true) {
                int next = -1;
                for (int i = 0; i < width.length && next < 0; i++) {
                    double part = room * table.columns().get(i).width().value() / weight;
                    boolean open = isShare(i) && !settled[i];
                    if (open && (narrowest ? part < least[i] : part > wanted[i])) {
                        next = i;
                    }
                }
                if (next < 0 && narrowest) {
                    narrowest = false;
                    continue;
                }
                double others = weight
                        - (next < 0 ? 0 : table.columns().get(next).width().value());
                if (next < 0 || others < 1e-9) {
                    break;
                }
                width[next] = narrowest ? least[next] : wanted[next];
                settled[next] = true;
                room -= width[next];
                weight = others;
            }
            for (int i = 0; i < width.length; i++) {
                if (isShare(i) && !settled[i]) {
                    width[i] = room * table.columns().get(i).width().value() / weight;
                }
            }
        }

        private boolean isShare(int column) {
            return table.columns().get(column).width().kind() == Width.Kind.SHARE;
        }

        /** No setting fits: columns of words give way, then all do. */
        private void squeeze(double measure, double[] least) {
            double sum = 0;
            for (int i = 0; i < width.length; i++) {
                width[i] = Math.max(width[i], Math.min(least[i], 40));
                sum += width[i];
            }
            double room = measure - gutter * (width.length - 1);
            double lacking = 0;
            for (int i = 0; i < width.length; i++) {
                lacking += Math.max(0, least[i] - width[i]);
            }
            if (sum < room && lacking > 0) {
                // What is left goes to the columns whose words are broken.
                double share = Math.min(1, (room - sum) / lacking);
                for (int i = 0; i < width.length; i++) {
                    width[i] += Math.max(0, least[i] - width[i]) * share;
                }
                return;
            }
            double factor = Math.min(1, room / sum);
            for (int i = 0; i < width.length; i++) {
                width[i] *= factor;
            }
            narrowed = factor < 1;
        }

        private double measureColumn(int column, boolean least) {
            Column rule = table.columns().get(column);
            double widest = 0;
            for (TableRow row : table.rows()) {
                if (!(row instanceof TableRow.Cells cells)) {
                    continue;
                }
                Cell cell = cells.cells().get(column);
                if (cell instanceof Cell.Figure figure) {
                    for (String line : lines(faces.figure(figure.figure()))) {
                        Type set = tone(type, figure.tone());
                        double all = faces.width(line, set.strong(), set.size());
                        if (DecimalMark.isFigure(line)) {
                            double before = wholeWidth(line, set);
                            whole[column] = Math.max(whole[column], before);
                            rest[column] = Math.max(rest[column], all - before);
                        } else {
                            // Words among figures wrap, so that "not measured" does not widen the column.
                            widest = Math.max(widest, texts.leastWidth(Text.of(line), set));
                        }
                    }
                } else {
                    widest = Math.max(widest, least ? leastWidth(cell) : naturalWidth(cell));
                }
            }
            Text heading = Text.of(rule.head());
            double headWidth =
                    Math.max(texts.leastWidth(heading, head), texts.naturalWidth(Text.of(rule.unit()), head));
            return Math.max(Math.max(widest, whole[column] + rest[column]), headWidth) + 0.1;
        }

        private double wholeWidth(String line, Type set) {
            return faces.width(line.substring(0, DecimalMark.in(line)), set.strong(), set.size());
        }

        private double naturalWidth(Cell cell) {
            if (cell instanceof Cell.Words words) {
                return texts.naturalWidth(words.text(), type);
            } else if (cell instanceof Cell.Verdict verdict) {
                return texts.naturalWidth(Text.of(verdict.phrase()), tone(type, verdict.tone()));
            } else if (cell instanceof Cell.Requirement requirement) {
                return Math.max(
                        texts.naturalWidth(Text.of(requirement.feature()), type),
                        notations.width(requirement.requirement(), type));
            } else if (cell instanceof Cell.Line) {
                return StripPainter.LENGTH + 14;
            }
            return 0;
        }

        private double leastWidth(Cell cell) {
            if (cell instanceof Cell.Words words) {
                return texts.leastWidth(words.text(), type);
            } else if (cell instanceof Cell.Verdict verdict) {
                return texts.leastWidth(Text.of(verdict.phrase()), tone(type, verdict.tone()));
            } else if (cell instanceof Cell.Requirement requirement) {
                return Math.max(
                        texts.leastWidth(Text.of(requirement.feature()), type), leastWidth(requirement.requirement()));
            }
            return naturalWidth(cell);
        }

        /** A short requirement stays whole; one that is a sentence wraps, so that it does not crowd out the columns beside it. */
        private double leastWidth(Notation requirement) {
            double whole = notations.width(requirement, type);
            return Math.min(whole, Math.max(SHORT_REQUIREMENT, texts.leastWidth(wrapping(requirement), type)));
        }

        List<Slab> slabs(double space) {
            List<Slab> slabs = new ArrayList<>();
            Slab heading = heading();
            slabs.add(heading.after(space).kept());
            List<TableRow> rows = table.rows();
            for (int r = 0; r < rows.size(); r++) {
                TableRow row = rows.get(r);
                boolean last = r == rows.size() - 1;
                Slab slab;
                if (row instanceof TableRow.Cells cells) {
                    slab = row(cells, last);
                    // Never one row alone at the foot or the head of a page.
                    slab = slab.kept((r == 0 && !last) || r == rows.size() - 2);
                } else {
                    slab = group(((TableRow.Group) row).label()).kept(!last);
                }
                slabs.add(slab.under(heading));
            }
            return slabs;
        }

        private Slab heading() {
            int count = width.length;
            List<TextSetter.SetText> heads = new ArrayList<>();
            double height = 0;
            for (int i = 0; i < count; i++) {
                Column column = table.columns().get(i);
                Text text = Text.of(column.head());
                if (!column.unit().isEmpty()) {
                    text = text.plain("\n" + column.unit());
                }
                TextSetter.SetText set = texts.set(text, width[i], head);
                heads.add(set);
                height = Math.max(height, set.height());
            }
            double inner = height;
            double all = inner + 5.5;
            Tag row = structure.within("TR");
            List<Tag> cells = heads.stream().map(each -> row.columnHead()).toList();
            return Slab.of(0, all, (canvas, x, y) -> {
                canvas.line(x, y, x + total, y, 0.8, Ink.BLACK);
                double left = x;
                for (int i = 0; i < count; i++) {
                    int column = i;
                    double start = left;
                    double top = y + 2.4 + inner - heads.get(i).height();
                    canvas.taggedOnce(cells.get(i), () -> head(canvas, heads.get(column), column, start, top));
                    left += width[i] + gutter;
                }
                canvas.line(x, y + all, x + total, y + all, 0.4, Ink.BLACK);
            });
        }

        private void head(Canvas canvas, TextSetter.SetText set, int column, double left, double top) {
            if (table.columns().get(column).kind() == Column.Kind.FIGURE) {
                double line = top;
                for (TextSetter.SetText one : set.split()) {
                    one.paint(canvas, left + width[column] - one.width(), line);
                    line += one.height();
                }
            } else if (table.columns().get(column).kind() == Column.Kind.STRIP) {
                set.paint(canvas, left + (width[column] - stripLength(width[column])) / 2, top);
            } else {
                set.paint(canvas, left, top);
            }
        }

        private Slab group(String label) {
            TextSetter.SetText set = texts.set(Text.bold(label), total, type);
            double height = set.height() + 2 * air + 2;
            Tag cell = structure.within("TR").within("TD").over(width.length);
            return Slab.of(0, height, (canvas, x, y) -> {
                canvas.tagged(cell, () -> set.paint(canvas, x, y + air + 2));
                canvas.line(x, y + height, x + total, y + height, 0.25, Ink.HAIRLINE);
            });
        }

        private Slab row(TableRow.Cells row, boolean last) {
            List<Content> contents = new ArrayList<>();
            double drop = 0;
            for (int i = 0; i < width.length; i++) {
                Content content = content(row.cells().get(i), i);
                contents.add(content);
                drop = Math.max(drop, content.drop);
            }
            // First lines share a baseline: beside a frame, which is higher than text, text moves down.
            double deepest = drop;
            double height = type.leading();
            for (Content content : contents) {
                height = Math.max(height, content.height + deepest - content.drop);
            }
            double inner = height;
            double all = inner + 2 * air;
            Tag parts = structure.within("TR");
            return Slab.of(0, all, (canvas, x, y) -> {
                double left = x;
                for (int i = 0; i < width.length; i++) {
                    Content content = contents.get(i);
                    double down = content.floats ? 0 : deepest - content.drop;
                    double start = left;
                    canvas.tagged(parts.within("TD"), () -> content.paint.at(canvas, start, y + air + down, inner));
                    left += width[i] + gutter;
                }
                canvas.line(x, y + all, x + total, y + all, last ? 0.8 : 0.25, last ? Ink.BLACK : Ink.HAIRLINE);
            });
        }

        private Content content(Cell cell, int column) {
            if (cell instanceof Cell.Words words) {
                return words(words.text(), type, column);
            } else if (cell instanceof Cell.Verdict verdict) {
                return words(Text.of(verdict.phrase()), tone(type, verdict.tone()), column);
            } else if (cell instanceof Cell.Requirement requirement) {
                return requirement(requirement, column);
            } else if (cell instanceof Cell.Figure figure) {
                return figure(figure, column);
            } else if (cell instanceof Cell.Line line) {
                double length = stripLength(width[column]);
                double inset = (width[column] - length) / 2;
                double height = StripPainter.height(line.strip());
                return Content.floating(
                        height,
                        (canvas, x, y, row) -> new StripPainter(canvas)
                                .paint(line.strip(), x + inset, y + row / 2 + (height - Type.LINE) / 3, length));
            }
            throw new IllegalArgumentException("no setting for " + cell);
        }

        private double stripLength(double columnWidth) {
            return Math.min(StripPainter.LENGTH, columnWidth - 14);
        }

        private Content words(Text text, Type set, int column) {
            TextSetter.SetText lines = texts.set(text, width[column], set);
            return new Content(lines.height(), lines.firstDrop(), (canvas, x, y, row) -> lines.paint(canvas, x, y));
        }

        private Content requirement(Cell.Requirement requirement, int column) {
            TextSetter.SetText feature = texts.set(Text.of(requirement.feature()), width[column], type);
            Notation notation = requirement.requirement();
            Text asText = notation.pieces().isEmpty() ? Text.NONE : requirementText(notation, column);
            TextSetter.SetText below = texts.set(asText, width[column], type);
            double drop = feature.height() > 0 ? feature.firstDrop() : below.firstDrop();
            return new Content(feature.height() + below.height(), drop, (canvas, x, y, row) -> {
                feature.paint(canvas, x, y);
                below.paint(canvas, x, y + feature.height());
            });
        }

        private Text requirementText(Notation notation, int column) {
            return notations.width(notation, type) <= width[column] ? Text.of(notation) : wrapping(notation);
        }

        /** The words of a requirement may wrap; frames and deviations stay whole. */
        private static Text wrapping(Notation notation) {
            Text text = Text.NONE;
            for (Notation.Piece piece : notation.pieces()) {
                text = text.isEmpty() ? text : text.plain(" ");
                text = piece instanceof Notation.Words words && !NotationSetter.hasRing(words.text())
                        ? text.plain(words.text())
                        : text.notation(new Notation(List.of(piece)));
            }
            return text;
        }

        private Content figure(Cell.Figure figure, int column) {
            Type set = tone(type, figure.tone());
            List<String> rows = new ArrayList<>();
            for (String line : lines(faces.figure(figure.figure()))) {
                if (DecimalMark.isFigure(line) || faces.width(line, set.strong(), set.size()) <= width[column]) {
                    rows.add(line);
                } else {
                    rows.addAll(List.of(line.split(" ", -1)));
                }
            }
            return new Content(rows.size() * type.leading(), 0, (canvas, x, y, row) -> {
                double baseline = y + set.baseline();
                double right = x + width[column];
                for (String line : rows) {
                    if (DecimalMark.isFigure(line)) {
                        canvas.text(line, right - rest[column] - wholeWidth(line, set), baseline, set);
                    } else {
                        canvas.textRight(line, right, baseline, set);
                    }
                    baseline += type.leading();
                }
            });
        }

        private List<String> lines(String text) {
            return text.lines().toList();
        }
    }

    private interface CellPaint {
        void at(Canvas canvas, double x, double y, double rowHeight);
    }

    private static final class Content {
        private final double height;
        /** How much lower the first baseline lies than that of a plain line. */
        private final double drop;
        /** Whether the content has no baseline and places itself in the row. */
        private final boolean floats;

        private final CellPaint paint;

        Content(double height, double drop, CellPaint paint) {
            this(height, drop, false, paint);
        }

        private Content(double height, double drop, boolean floats, CellPaint paint) {
            this.height = height;
            this.drop = drop;
            this.floats = floats;
            this.paint = paint;
        }

        static Content floating(double height, CellPaint paint) {
            return new Content(height, 0, true, paint);
        }
    }
}
