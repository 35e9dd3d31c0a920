package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.model.Width;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/** Turns blocks into slabs for a given measure. The only place that knows how each kind of block looks. */
final class BlockSetter {
    /** Distance between the 12 columns of the grid. */
    static final double GRID_GUTTER = 4 * Type.MM;

    private static final String DASH = "\u2014";

    /** From the rule of a line to sign on to the foot of its label, in points. */
    private static final double SIGNATURE_LABEL = 11;

    private final Faces faces;
    private final TextSetter texts;
    private final TableSetter tables;
    private final FigurePainter figures;
    private final double pictures;

    /** A setter that draws pictures at a share of their height, and sets tables with a share of the air in their rows. */
    BlockSetter(Faces faces, FigurePainter figures, double pictures, double rows) {
        this.pictures = pictures;
        this.faces = faces;
        this.figures = figures;
        NotationSetter notations = new NotationSetter(faces);
        texts = new TextSetter(faces, notations);
        tables = new TableSetter(faces, notations, texts, rows);
    }

    List<Slab> set(List<Block> blocks, double measure) {
        List<Slab> slabs = new ArrayList<>();
        Block above = new Block.PageBreak();
        for (Block block : blocks) {
            if (explains(block, above) && !slabs.isEmpty()) {
                int last = slabs.size() - 1;
                slabs.set(last, slabs.get(last).kept());
            }
            slabs.addAll(set(block, measure));
            above = block;
        }
        return slabs;
    }

    /** A note or caution is about the table above it, a marked list about the picture above it: none is read on a page without that. */
    private static boolean explains(Block block, Block above) {
        return ((block instanceof Block.Note || block instanceof Block.Caution) && above instanceof Block.Table)
                || (block instanceof Block.MarkedList && above instanceof Block.FigureBlock);
    }

    /** Width of some columns of the 12-column grid. */
    static double span(int columns, double measure) {
        double column = (measure - 11 * GRID_GUTTER) / 12;
        return columns * column + (columns - 1) * GRID_GUTTER;
    }

    /** The width of running text: lines of small type over the full page read badly; columns are narrow enough. */
    private static double readable(double measure) {
        return measure > 135 * Type.MM ? span(10, measure) : measure;
    }

    private List<Slab> set(Block block, double measure) {
        if (block instanceof Block.Headline headline) {
            return headline(headline, measure);
        } else if (block instanceof Block.Letterhead letterhead) {
            return List.of(new LogoPainter(texts).slab(letterhead, measure));
        } else if (block instanceof Block.Facts facts) {
            return facts(facts, measure);
        } else if (block instanceof Block.Exceptions exceptions) {
            return exceptions(exceptions, measure);
        } else if (block instanceof Block.Heading heading) {
            return List.of(heading(heading, measure));
        } else if (block instanceof Block.Paragraph paragraph) {
            return lines(paragraph.text(), readable(measure), Type.BODY, 5);
        } else if (block instanceof Block.Note note) {
            return lines(note.text(), measure, Type.NOTE.in(Ink.GREY), 4);
        } else if (block instanceof Block.Caution caution) {
            return List.of(caution(caution, measure));
        } else if (block instanceof Block.MarkedList list) {
            return marked(list, measure);
        } else if (block instanceof Block.Table table) {
            return tables.set(table, measure, 7);
        } else if (block instanceof Block.SignOff signOff) {
            return signOff(signOff, measure);
        } else if (block instanceof Block.FigureBlock figure) {
            return List.of(figure(figure, measure));
        } else if (block instanceof Block.SideBySide side) {
            return List.of(sideBySide(side, measure));
        } else if (block instanceof Block.IndexScale scale) {
            return List.of(new IndexScalePainter(faces, texts).slab(scale, measure));
        } else if (block instanceof Block.KeyFigure key) {
            return List.of(keyFigure(key, measure));
        } else if (block instanceof Block.KeepTogether together) {
            return together(together, measure);
        } else if (block instanceof Block.PageBreak) {
            return List.of(Slab.BREAK);
        }
        throw new IllegalArgumentException("no setting for " + block);
    }

    private List<Slab> headline(Block.Headline headline, double measure) {
        Type type = headline.tone() == Tone.OUT ? Type.HEADLINE.in(Ink.RED) : Type.HEADLINE;
        return kept(lines(headline.sentence(), measure, type, 16, Tag.heading(1)), false);
    }

    private Slab heading(Block.Heading heading, double measure) {
        boolean section = heading.level() == Block.Level.SECTION;
        TextSetter.SetText set = texts.set(Text.of(heading.text()), measure, section ? Type.HEADING : Type.STRONG);
        Tag tag = Tag.heading(section ? 2 : 3);
        return Slab.of(section ? 17 : 9, set.height(), (canvas, x, y) -> {
                    if (section) {
                        canvas.marks().bookmark(heading.text(), x, canvas.up(y));
                    }
                    canvas.tagged(tag, () -> set.paint(canvas, x, y));
                })
                .kept();
    }

    private List<Slab> lines(Text text, double measure, Type type, double space) {
        return lines(text, measure, type, space, Tag.of("P"));
    }

    private List<Slab> lines(Text text, double measure, Type type, double space, Tag tag) {
        List<TextSetter.SetText> lines = texts.set(text, measure, type).split();
        List<Slab> slabs = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            TextSetter.SetText line = lines.get(i);
            // No line of a paragraph stands alone at the foot or the head of a page.
            boolean keep = i < lines.size() - 1 && (i == 0 || i == lines.size() - 2);
            slabs.add(Slab.of(
                            i == 0 ? space : 0,
                            line.height(),
                            (canvas, x, y) -> canvas.tagged(tag, () -> line.paint(canvas, x, y)))
                    .kept(keep));
        }
        return slabs;
    }

    private Slab caution(Block.Caution caution, double measure) {
        double indent = 8;
        Text text = Text.bold(Labels.text("caution.word")).plain(" ");
        for (Text.Run run : caution.text().runs()) {
            text = text.and(run);
        }
        TextSetter.SetText set = texts.set(text, measure - indent, Type.BODY);
        return Slab.of(8, set.height(), (canvas, x, y) -> {
            canvas.line(x + 1.1, y, x + 1.1, y + set.height(), 2.2, Ink.BLACK);
            canvas.tagged(Tag.of("P"), () -> set.paint(canvas, x + indent, y));
        });
    }

    private List<Slab> marked(Block.MarkedList list, double measure) {
        List<Slab> slabs = new ArrayList<>();
        double indent = list.items().stream()
                        .mapToDouble(item -> SymbolPainter.ringWidth(faces, faces.fit(item.mark()), Type.BODY.size()))
                        .max()
                        .orElse(0)
                + 5;
        Tag all = Tag.of("L");
        for (Block.MarkedItem item : list.items()) {
            Tag entry = all.within("LI");
            TextSetter.SetText mark = texts.set(Text.NONE.ringed(item.mark()), indent, Type.BODY);
            TextSetter.SetText set = texts.set(item.sentence(), measure - indent, Type.BODY);
            slabs.add(Slab.of(slabs.isEmpty() ? 6 : 1.5, Math.max(set.height(), mark.height()), (canvas, x, y) -> {
                        canvas.tagged(entry.within("Lbl"), () -> mark.paint(canvas, x, y));
                        canvas.tagged(entry.within("LBody"), () -> set.paint(canvas, x + indent, y));
                    })
                    .kept(slabs.size() < list.items().size() - 1));
        }
        return slabs;
    }

    private List<Slab> facts(Block.Facts facts, double measure) {
        List<Slab> slabs = new ArrayList<>();
        List<Block.FactGroup> groups = facts.groups();
        double width = span(4, measure);
        for (int start = 0; start < groups.size(); start += 3) {
            List<Block.FactGroup> row = groups.subList(start, Math.min(start + 3, groups.size()));
            List<List<Slab>> columns =
                    row.stream().map(group -> factGroup(group, width)).toList();
            slabs.add(columns(columns, i -> i * (width + GRID_GUTTER), start == 0 ? 14 : 9));
        }
        return slabs;
    }

    private List<Slab> factGroup(Block.FactGroup group, double width) {
        List<Slab> slabs = new ArrayList<>();
        double labels = group.facts().stream()
                .mapToDouble(fact -> texts.naturalWidth(Text.of(fact.label()), Type.LABEL))
                .max()
                .orElse(0);
        double indent = Math.min(labels + 6, width * 0.45);
        if (!group.title().isEmpty()) {
            TextSetter.SetText title = texts.set(Text.of(group.title()), width, Type.STRONG);
            slabs.add(Slab.of(0, title.height() + 3, (canvas, x, y) -> {
                canvas.tagged(Tag.of("P"), () -> title.paint(canvas, x, y));
                canvas.line(x, y + title.height() + 1, x + width, y + title.height() + 1, 0.4, Ink.BLACK);
            }));
        }
        Tag all = Tag.of("L");
        for (Block.Fact fact : group.facts()) {
            Tag entry = all.within("LI");
            // The label shares the baseline of the first line of its value.
            Type labelType = new Type(Type.LABEL.size(), Type.BODY.leading(), false, Ink.GREY);
            TextSetter.SetText label = texts.set(Text.of(fact.label()), indent - 4, labelType);
            Text value = fact.value().isEmpty() ? Text.of(DASH) : fact.value();
            TextSetter.SetText set = texts.set(value, width - indent, Type.BODY);
            double drop = Type.BODY.baseline() - labelType.baseline();
            slabs.add(Slab.of(0, Math.max(set.height(), label.height()), (canvas, x, y) -> {
                canvas.tagged(entry.within("Lbl"), () -> label.paint(canvas, x, y + drop));
                canvas.tagged(entry.within("LBody"), () -> set.paint(canvas, x + indent, y));
            }));
        }
        return slabs;
    }

    private List<Slab> exceptions(Block.Exceptions exceptions, double measure) {
        List<Slab> slabs = new ArrayList<>();
        slabs.add(heading(Block.Heading.of(exceptions.title()), measure));
        if (exceptions.items().isEmpty()) {
            slabs.addAll(lines(Text.of(exceptions.whenNone()), measure, Type.BODY, 2));
            return slabs;
        }
        List<Column> columns = List.of(
                Column.narrow(Labels.text("exceptions.column.number")),
                new Column(Labels.text("exceptions.column.requirement"), "", Column.Kind.NOTATION, Width.share(3)),
                Column.text(Labels.text("exceptions.column.actual"), 2.4),
                Column.verdict(Labels.text("exceptions.column.by-how-much"), 2.2),
                Column.text(Labels.text("exceptions.column.may-be-done"), 4));
        List<TableRow> rows = new ArrayList<>();
        for (Block.ExceptionItem item : exceptions.items()) {
            rows.add(TableRow.of(
                    new Cell.Words(Text.bold(item.number())),
                    new Cell.Requirement(item.feature(), item.requirement()),
                    new Cell.Words(item.actual()),
                    Cell.verdict(item.byHowMuch(), item.tone()),
                    new Cell.Words(item.mayBeDone())));
        }
        slabs.addAll(tables.set(new Block.Table(columns, rows), measure, 4));
        return slabs;
    }

    private List<Slab> signOff(Block.SignOff signOff, double measure) {
        List<Slab> slabs = new ArrayList<>();
        if (!signOff.statement().isEmpty()) {
            slabs.addAll(kept(lines(signOff.statement(), readable(measure), Type.BODY, 16), true));
        }
        double gap = GRID_GUTTER;
        double role = span(2, measure);
        double name = span(4, measure);
        double signature = span(4, measure);
        double date = span(2, measure);
        double usual = 12.5 * Type.MM;
        for (Block.SignLine line : signOff.lines()) {
            if (line.onlySigned()) {
                slabs.add(Slab.of(
                                0,
                                SignatureBlock.HEIGHT_WITH_ROLE,
                                (canvas, x, y) -> canvas.marks()
                                        .countersignature(
                                                line.role(),
                                                x + role + gap,
                                                canvas.up(y + SignatureBlock.HEIGHT_WITH_ROLE),
                                                name + gap + signature + gap + date,
                                                SignatureBlock.HEIGHT_WITH_ROLE))
                        .kept());
                continue;
            }
            TextSetter.SetText roleText = texts.set(Text.bold(line.role()), role, Type.BODY);
            // A long role stands over the rule like the name, in as many lines as it needs.
            double height = Math.max(usual, roleText.height() + SIGNATURE_LABEL + 3);
            TextSetter.SetText nameText = texts.set(Text.of(line.name()), name, Type.BODY);
            TextSetter.SetText dateText = texts.set(Text.of(line.date()), date, Type.BODY);
            slabs.add(Slab.of(slabs.isEmpty() ? 12 : 0, height, (canvas, x, y) -> {
                        double rule = y + height - SIGNATURE_LABEL;
                        double x2 = x + role + gap;
                        double x3 = x2 + name + gap;
                        double x4 = x3 + signature + gap;
                        canvas.tagged(Tag.of("P"), () -> {
                            roleText.paint(canvas, x, rule - roleText.height() - 1);
                            nameText.paint(canvas, x2, rule - nameText.height() - 1);
                            dateText.paint(canvas, x4, rule - dateText.height() - 1);
                            under(canvas, Labels.text("sign.name"), x2, name, rule);
                            under(canvas, Labels.text("sign.signature"), x3, signature, rule);
                            under(canvas, Labels.text("sign.date"), x4, date, rule);
                        });
                        canvas.marks()
                                .signature(
                                        line.role(),
                                        x3,
                                        canvas.up(rule - 0.5),
                                        signature,
                                        height - SIGNATURE_LABEL - 2);
                    })
                    .kept());
        }
        if (!slabs.isEmpty()) {
            int last = slabs.size() - 1;
            slabs.set(last, slabs.get(last).kept(false));
        }
        return slabs;
    }

    private static void under(Canvas canvas, String label, double x, double width, double rule) {
        canvas.line(x, rule, x + width, rule, 0.5, Ink.BLACK);
        canvas.text(label, x, rule + 8, Type.LABEL);
    }

    private Slab figure(Block.FigureBlock figure, double measure) {
        double height = figure.heightMm() * Type.MM * pictures;
        return Slab.of(
                9,
                height,
                (canvas, x, y) -> figures.paint(canvas, figure.figure(), figure.alternative(), x, y, measure, height));
    }

    private Slab sideBySide(Block.SideBySide side, double measure) {
        List<List<Slab>> columns = new ArrayList<>();
        List<Double> starts = new ArrayList<>();
        int used = 0;
        for (Block.Part part : side.parts()) {
            columns.add(set(part.blocks(), span(part.span(), measure)));
            starts.add(used == 0 ? 0 : span(used, measure) + GRID_GUTTER);
            used += part.span();
        }
        double space = columns.stream()
                .filter(column -> !column.isEmpty())
                .mapToDouble(column -> column.get(0).space())
                .max()
                .orElse(0);
        return columns(columns, starts::get, space);
    }

    private interface Start {
        double of(int column);
    }

    /** Stacks of slabs beside one another as one slab. */
    private static Slab columns(List<List<Slab>> columns, Start start, double space) {
        double height =
                columns.stream().mapToDouble(BlockSetter::stackHeight).max().orElse(0);
        return Slab.of(space, height, (canvas, x, y) -> {
            for (int i = 0; i < columns.size(); i++) {
                double top = y;
                boolean first = true;
                for (Slab slab : columns.get(i)) {
                    top += first ? 0 : slab.space();
                    first = false;
                    slab.paint().at(canvas, x + start.of(i), top);
                    top += slab.height();
                }
            }
        });
    }

    private static double stackHeight(List<Slab> stack) {
        double height = 0;
        boolean first = true;
        for (Slab slab : stack) {
            height += (first ? 0 : slab.space()) + slab.height();
            first = false;
        }
        return height;
    }

    private Slab keyFigure(Block.KeyFigure key, double measure) {
        TextSetter.SetText label = texts.set(key.label(), measure, Type.BODY);
        Type large = new Type(34, 38, true, Ink.BLACK);
        String figure = faces.figure(key.figure());
        String unit = faces.fit(key.unit());
        return Slab.of(12, label.height() + large.leading(), (canvas, x, y) -> {
            canvas.tagged(Tag.of("P"), () -> {
                label.paint(canvas, x, y);
                double baseline = y + label.height() + large.baseline();
                canvas.text(figure, x, baseline, large);
                canvas.text(
                        unit, x + faces.width(figure, true, large.size()) + 7, baseline, Type.HEADLINE.heavy(false));
            });
        });
    }

    private List<Slab> together(Block.KeepTogether together, double measure) {
        return kept(set(together.blocks(), measure), false);
    }

    /** Keeps slabs with one another; the last with what follows only where wanted. */
    private static List<Slab> kept(List<Slab> slabs, boolean lastToo) {
        List<Slab> kept = new ArrayList<>();
        for (int i = 0; i < slabs.size(); i++) {
            Slab slab = slabs.get(i);
            boolean keep = i < slabs.size() - 1 || lastToo;
            kept.add(slab.isBreak() ? slab : slab.kept(keep));
        }
        return kept;
    }
}
