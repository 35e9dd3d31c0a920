package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Modifier;
import io.github.firstoff.report.model.Notation;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Measures and draws requirements as a drawing sets them, on one baseline. */
final class NotationSetter {
    /** Size of stacked deviations, as a share of the size of the nominal. */
    private static final double SMALL = 0.74;

    private static final double FRAME_WEIGHT = 0.45;

    /** Before and after every letter in a ring. */
    private static final Pattern RINGED = Pattern.compile("(?=[\u24B6-\u24CF])|(?<=[\u24B6-\u24CF])");

    private final Faces faces;

    NotationSetter(Faces faces) {
        this.faces = faces;
    }

    double width(Notation notation, Type type) {
        double width = 0;
        boolean first = true;
        for (Notation.Piece piece : notation.pieces()) {
            width += (first ? 0 : gap(piece, type)) + width(piece, type);
            first = false;
        }
        return width;
    }

    /** Whether a letter in a ring stands in this text. */
    static boolean hasRing(String text) {
        return Stream.of(RINGED.split(text, -1))
                .anyMatch(part -> Modifier.of(part).isPresent());
    }

    /** Width inside a sentence: a frame keeps a little air before the comma that may follow it. */
    double inlineWidth(Notation notation, Type type) {
        List<Notation.Piece> pieces = notation.pieces();
        boolean boxedEnd = !pieces.isEmpty() && isBoxed(pieces.get(pieces.size() - 1));
        return width(notation, type) + (boxedEnd ? type.size() * 0.2 : 0);
    }

    private static boolean isBoxed(Notation.Piece piece) {
        return piece instanceof Notation.Frame || piece instanceof Notation.Exact;
    }

    /** Height of the line that holds the notation with air above and below. */
    double height(Notation notation, Type type) {
        boolean boxed = notation.pieces().stream().anyMatch(NotationSetter::isBoxed);
        return boxed ? Math.max(type.leading(), frameHeight(type) + 3) : type.leading();
    }

    void paint(Canvas canvas, Notation notation, double x, double baseline, Type type) {
        double at = x;
        boolean first = true;
        for (Notation.Piece piece : notation.pieces()) {
            at += first ? 0 : gap(piece, type);
            first = false;
            paint(canvas, piece, at, baseline, type);
            at += width(piece, type);
        }
    }

    private static double gap(Notation.Piece piece, Type type) {
        return piece instanceof Notation.Deviations ? type.size() * 0.16 : type.size() * 0.3;
    }

    private static double frameHeight(Type type) {
        return type.size() * 1.42;
    }

    private static double padding(Type type) {
        return type.size() * 0.34;
    }

    private double width(Notation.Piece piece, Type type) {
        if (piece instanceof Notation.Words words) {
            return ringedWidth(words.text(), type);
        } else if (piece instanceof Notation.Deviations deviations) {
            Stack stack = new Stack(deviations, type);
            return stack.whole + stack.rest;
        } else if (piece instanceof Notation.Exact exact) {
            return textWidth(exact.text(), type) + 2 * padding(type);
        } else if (piece instanceof Notation.Bracketed bracketed) {
            return textWidth("(" + bracketed.text() + ")", type);
        } else if (piece instanceof Notation.Sign) {
            return type.size() * SymbolPainter.SYMBOL;
        } else if (piece instanceof Notation.Frame frame) {
            double width = symbolCell(type);
            for (Notation.Cell cell : frame.cells()) {
                width += cellWidth(cell, type);
            }
            return width;
        }
        throw new IllegalArgumentException("no setting for " + piece);
    }

    private void paint(Canvas canvas, Notation.Piece piece, double x, double baseline, Type type) {
        if (piece instanceof Notation.Words words) {
            ringed(canvas, words.text(), x, baseline, type);
        } else if (piece instanceof Notation.Deviations deviations) {
            new Stack(deviations, type).paint(canvas, x, baseline);
        } else if (piece instanceof Notation.Exact exact) {
            double height = frameHeight(type);
            double top = baseline - type.size() * Type.CAPITALS / 2 - height / 2;
            canvas.strokeRectangle(x, top, width(piece, type), height, FRAME_WEIGHT, type.ink());
            canvas.text(faces.fit(exact.text()), x + padding(type), baseline, type);
        } else if (piece instanceof Notation.Bracketed bracketed) {
            canvas.text(faces.fit("(" + bracketed.text() + ")"), x, baseline, type);
        } else if (piece instanceof Notation.Sign sign) {
            new SymbolPainter(canvas).sign(sign.sign(), x, baseline, type.size(), type.ink());
        } else if (piece instanceof Notation.Frame frame) {
            paintFrame(canvas, frame, x, baseline, type);
        }
    }

    private void paintFrame(Canvas canvas, Notation.Frame frame, double x, double baseline, Type type) {
        SymbolPainter symbols = new SymbolPainter(canvas);
        double height = frameHeight(type);
        double top = baseline - type.size() * Type.CAPITALS / 2 - height / 2;
        canvas.strokeRectangle(x, top, width(frame, type), height, FRAME_WEIGHT, type.ink());
        double inset = (symbolCell(type) - type.size() * SymbolPainter.SYMBOL) / 2;
        symbols.symbol(frame.symbol(), x + inset, baseline, type.size(), type.ink());
        double at = x + symbolCell(type);
        for (Notation.Cell cell : frame.cells()) {
            canvas.line(at, top, at, top + height, FRAME_WEIGHT, type.ink());
            ringed(canvas, cell.text(), at + padding(type), baseline, type);
            double letter = at + padding(type) + ringedWidth(cell.text(), type) + modifierGap(type);
            for (Modifier modifier : cell.modifiers()) {
                symbols.modifier(modifier, letter, baseline, type.size(), type.ink());
                letter += type.size() * SymbolPainter.RING + modifierGap(type);
            }
            at += cellWidth(cell, type);
        }
    }

    private static double symbolCell(Type type) {
        return type.size() * 1.6;
    }

    private static double modifierGap(Type type) {
        return type.size() * 0.15;
    }

    private double cellWidth(Notation.Cell cell, Type type) {
        return ringedWidth(cell.text(), type)
                + cell.modifiers().size() * (type.size() * SymbolPainter.RING + modifierGap(type))
                + 2 * padding(type);
    }

    /** Text, with letters in rings wherever the characters of modifiers stand in it. */
    private void ringed(Canvas canvas, String text, double x, double baseline, Type type) {
        SymbolPainter symbols = new SymbolPainter(canvas);
        double at = x;
        for (String part : RINGED.split(text, -1)) {
            Optional<Modifier> modifier = Modifier.of(part);
            if (modifier.isPresent()) {
                symbols.modifier(modifier.get(), at, baseline, type.size(), type.ink());
            } else if (!part.isEmpty()) {
                canvas.text(faces.fit(part), at, baseline, type);
            }
            at += partWidth(part, type);
        }
    }

    private double ringedWidth(String text, Type type) {
        double width = 0;
        for (String part : RINGED.split(text, -1)) {
            width += partWidth(part, type);
        }
        return width;
    }

    private double partWidth(String part, Type type) {
        return Modifier.of(part).isPresent() ? type.size() * SymbolPainter.RING : textWidth(part, type);
    }

    private double textWidth(String text, Type type) {
        return faces.width(faces.fit(text), type.strong(), type.size());
    }

    /** Two deviations on their decimal marks. */
    private final class Stack {
        private final Type small;
        private final Type type;
        private final String upper;
        private final String lower;
        private final double whole;
        private final double rest;

        Stack(Notation.Deviations deviations, Type type) {
            this.type = type;
            small = type.scaled(type.size() * SMALL);
            upper = faces.figure(deviations.upper());
            lower = faces.figure(deviations.lower());
            whole = Math.max(wholeWidth(upper), wholeWidth(lower));
            rest = Math.max(
                    faces.width(upper, small.strong(), small.size()) - wholeWidth(upper),
                    faces.width(lower, small.strong(), small.size()) - wholeWidth(lower));
        }

        private double wholeWidth(String text) {
            return faces.width(text.substring(0, DecimalMark.in(text)), small.strong(), small.size());
        }

        void paint(Canvas canvas, double x, double baseline) {
            double middle = baseline - type.size() * Type.CAPITALS / 2;
            double capitals = small.size() * Type.CAPITALS;
            canvas.text(upper, x + whole - wholeWidth(upper), middle - 0.55, small);
            canvas.text(lower, x + whole - wholeWidth(lower), middle + 0.75 + capitals, small);
        }
    }
}
