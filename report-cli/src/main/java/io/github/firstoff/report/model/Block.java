package io.github.firstoff.report.model;

import io.github.firstoff.report.figure.Figure;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One thing a sheet says. Blocks follow one another down the page over the full measure, unless they stand in
 * {@link SideBySide}. A heading is never left alone at the foot of a page.
 */
public sealed interface Block {
    /**
     * The one sentence that matters, in the largest type.
     *
     * @param sentence the sentence; it must hold the verdict in words
     * @param tone     what it amounts to
     */
    record Headline(Text sentence, Tone tone) implements Block {}

    /**
     * Whose sheet it is, at the head of the first page.
     *
     * @param name      the firm
     * @param address   its address, possibly in several lines, or empty
     * @param approvals what it is approved to, or empty
     * @param logo      its mark, if it has one
     */
    record Letterhead(String name, String address, String approvals, Optional<Logo> logo) implements Block {}

    /**
     * Who, what and when: groups of label and value, set in three columns.
     *
     * @param groups the groups, filled into the columns from left to right, one column per group as long as there are three or
     *               fewer
     */
    record Facts(List<FactGroup> groups) implements Block {
        /** Copies the list. */
        public Facts {
            groups = List.copyOf(groups);
        }
    }

    /**
     * Labels with values under one small title.
     *
     * @param title title, or empty
     * @param facts the facts, in order
     */
    record FactGroup(String title, List<Fact> facts) {
        /** Copies the list. */
        public FactGroup {
            facts = List.copyOf(facts);
        }

        /** A group. */
        public static FactGroup of(String title, Fact... facts) {
            return new FactGroup(title, List.of(facts));
        }
    }

    /**
     * One label and its value.
     *
     * @param label the label
     * @param value the value; a fact without a value prints a dash, so that a gap is seen
     */
    record Fact(String label, Text value) {
        /** A fact in ordinary text. */
        public static Fact of(String label, String value) {
            return new Fact(label, Text.of(value));
        }
    }

    /**
     * What needs a decision: only what does not simply conform.
     *
     * @param title    title, such as "What needs a decision"
     * @param items    the exceptions, worst first
     * @param whenNone the sentence that stands there when there are none
     */
    record Exceptions(String title, List<ExceptionItem> items, String whenNone) implements Block {
        /** Copies the list. */
        public Exceptions {
            items = List.copyOf(items);
        }
    }

    /**
     * One exception.
     *
     * @param number      number of the characteristic
     * @param feature     what it is
     * @param requirement the requirement as the drawing sets it
     * @param actual      what was found, with its unit and on which piece
     * @param byHowMuch   the verdict phrase with its amount
     * @param tone        {@link Tone#OUT} or {@link Tone#OPEN}
     * @param mayBeDone   what may be done about it
     */
    record ExceptionItem(
            String number,
            String feature,
            Notation requirement,
            Text actual,
            String byHowMuch,
            Tone tone,
            Text mayBeDone) {}

    /**
     * A heading; kept with what follows.
     *
     * @param text  its words
     * @param level its rank
     */
    record Heading(String text, Level level) implements Block {
        /** A heading of a section. */
        public static Heading of(String text) {
            return new Heading(text, Level.SECTION);
        }
    }

    /** Ranks of headings. */
    enum Level {
        /** 11 pt. */
        SECTION,
        /** Strong text at the size of text. */
        SUBSECTION
    }

    /**
     * Text at the ordinary size.
     *
     * @param text the text
     */
    record Paragraph(Text text) implements Block {}

    /**
     * A remark at the size of notes.
     *
     * @param text the text
     */
    record Note(Text text) implements Block {}

    /**
     * A warning at the ordinary size, never smaller than what it warns about, with a heavy rule beside it.
     *
     * @param text the text; the word "Caution" is set before it
     */
    record Caution(Text text) implements Block {}

    /**
     * Sentences numbered by marks, as the signals of a chart are.
     *
     * @param items the sentences, in order
     */
    record MarkedList(List<MarkedItem> items) implements Block {
        /** Copies the list. */
        public MarkedList {
            items = List.copyOf(items);
        }
    }

    /**
     * One numbered sentence.
     *
     * @param mark     the mark, as it stands in the chart
     * @param sentence the sentence
     */
    record MarkedItem(String mark, Text sentence) {}

    /**
     * A table: of characteristics, of gauges, of anything. Its head is repeated on every page; rows are never split.
     *
     * @param columns the columns
     * @param rows    the rows; each row of cells has one cell per column
     */
    record Table(List<Column> columns, List<TableRow> rows) implements Block {
        /** Copies the lists; refuses a row whose cells do not match the columns. */
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            if (columns.isEmpty()) {
                throw new IllegalArgumentException("a table has at least one column");
            }
            for (TableRow row : rows) {
                if (row instanceof TableRow.Cells cells && cells.cells().size() != columns.size()) {
                    throw new IllegalArgumentException("a row of "
                            + cells.cells().size() + " cells stands in a table of " + columns.size() + " columns");
                }
            }
        }
    }

    /**
     * Lines to sign on.
     *
     * @param statement what a signature means, or empty
     * @param lines     the lines
     */
    record SignOff(Text statement, List<SignLine> lines) implements Block {
        /** Copies the list. */
        public SignOff {
            lines = List.copyOf(lines);
        }
    }

    /**
     * One line to sign on.
     *
     * @param role     in what capacity, such as "Inspected by"
     * @param name     name and position where known, else empty: a line to write on is left
     * @param date     date where known, else empty: a line to write on is left
     * @param onlySigned whether it stays blank paper until somebody signs it digitally: nothing is printed then, and the signature itself
     *     says in what capacity it was given
     */
    record SignLine(String role, String name, String date, boolean onlySigned) {
        /** A line that is printed. */
        public SignLine(String role, String name, String date) {
            this(role, name, date, false);
        }

        /** A place for a further digital signature, with nothing on it until then. */
        public static SignLine onlySigned(String role) {
            return new SignLine(role, "", "", true);
        }
    }

    /**
     * A picture.
     *
     * @param figure   what it shows
     * @param heightMm its height in millimetres, 20 to 220
     * @param alternative what it shows in one sentence, for readers who cannot see it
     */
    record FigureBlock(Figure figure, double heightMm, String alternative) implements Block {
        /** Refuses heights that no page holds. */
        public FigureBlock {
            if (!(heightMm >= 20 && heightMm <= 220)) {
                throw new IllegalArgumentException("a figure is 20 mm to 220 mm high, not " + heightMm);
            }
        }
    }

    /**
     * Blocks beside one another on the 12-column grid, kept on one page.
     *
     * @param parts from left to right; spans add up to 12 at most
     */
    record SideBySide(List<Part> parts) implements Block {
        /** Copies the list; refuses spans that do not fit the grid. */
        public SideBySide {
            parts = List.copyOf(parts);
            int columns = parts.stream().mapToInt(Part::span).sum();
            if (parts.isEmpty() || columns > 12) {
                throw new IllegalArgumentException("parts beside one another share 12 columns, not " + columns);
            }
        }
    }

    /**
     * A stack of blocks in some columns of the grid.
     *
     * @param span   number of columns, 1 to 12
     * @param blocks what stands there, from the top
     */
    record Part(int span, List<Block> blocks) {
        /** Copies the list; refuses spans outside the grid. */
        public Part {
            blocks = List.copyOf(blocks);
            if (span < 1 || span > 12) {
                throw new IllegalArgumentException("a part spans 1 to 12 columns, not " + span);
            }
        }

        /** A stack. */
        public static Part of(int span, Block... blocks) {
            return new Part(span, List.of(blocks));
        }
    }

    /**
     * Indices on one common scale: a dot with its interval, the required value marked, the figures beside.
     *
     * @param marks      the indices, in order
     * @param required   the required value, if one is agreed
     * @param conditions n, estimator, distribution and control state, in one line
     */
    record IndexScale(List<IndexMark> marks, OptionalDouble required, Text conditions) implements Block {
        /** Copies the list. */
        public IndexScale {
            marks = List.copyOf(marks);
            if (marks.isEmpty()) {
                throw new IllegalArgumentException("a scale of indices has at least one index");
            }
        }
    }

    /**
     * One index.
     *
     * @param name    its name, such as "Ppk"
     * @param value   its value, finite
     * @param lower   lower end of its interval, if it has one
     * @param upper   upper end of its interval, if it has one
     * @param figures the same in figures, as printed, such as "1.41 (1.22 to 1.60)"
     */
    record IndexMark(String name, double value, OptionalDouble lower, OptionalDouble upper, String figures) {
        /** Refuses a value that has no place on a scale. */
        public IndexMark {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("an index without a finite value has no place on a scale");
            }
        }
    }

    /**
     * The largest figure on a page, such as an offset to enter.
     *
     * @param label  what it is
     * @param figure the figure with its sign
     * @param unit   its unit, or empty
     */
    record KeyFigure(Text label, String figure, String unit) implements Block {}

    /**
     * Blocks that stay on one page as long as one page can hold them.
     *
     * @param blocks the blocks, in order
     */
    record KeepTogether(List<Block> blocks) implements Block {
        /** Copies the list. */
        public KeepTogether {
            blocks = List.copyOf(blocks);
        }

        /** Blocks to keep together. */
        public static KeepTogether of(Block... blocks) {
            return new KeepTogether(List.of(blocks));
        }
    }

    /** What follows starts on a new page. Two breaks in a row, or one at either end, make no empty page. */
    record PageBreak() implements Block {}
}
