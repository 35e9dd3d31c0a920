package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Breaks running text into lines. */
final class TextSetter {
    private static final char NO_BREAK_SPACE = '\u00A0';
    private static final Set<String> SIGNS = Set.of("=", "<", ">", "\u2264", "\u2265", "\u00B1", "\u00D7");
    /** Words that a line does not end with when a figure follows. */
    private static final Set<String> LEADS = Set.of("U", "k", "n", "by");

    private static final Set<String> UNITS = Set.of(
            "mm", "\u00B5m", "\u03BCm", "inch", "\u00B0C", "\u00B0", "%", "N", "N\u00B7m", "MPa", "kN", "UTC", "pt");

    private final Faces faces;
    private final NotationSetter notations;

    TextSetter(Faces faces, NotationSetter notations) {
        this.faces = faces;
        this.notations = notations;
    }

    /** Sets text into lines no wider than the given width; only a single sign that is wider than it may stick out. */
    SetText set(Text text, double width, Type type) {
        List<Group> groups = groups(text, type);
        List<Line> lines = new ArrayList<>();
        List<Placed> current = new ArrayList<>();
        double at = 0;
        double space = faces.width(" ", type.strong(), type.size());
        for (Group group : groups) {
            double before = current.isEmpty() || !group.spaceBefore ? 0 : space;
            if (group.newLine || (!current.isEmpty() && at + before + group.width > width + 0.01)) {
                lines.add(line(current, type));
                current = new ArrayList<>();
                at = 0;
                before = 0;
            }
            for (Group part : group.width > width ? broken(group, width, type) : List.of(group)) {
                if (!current.isEmpty() && at + before + part.width > width + 0.01) {
                    lines.add(line(current, type));
                    current = new ArrayList<>();
                    at = 0;
                    before = 0;
                }
                at += before;
                boolean first = true;
                for (Atom atom : part.atoms) {
                    current.add(new Placed(atom, at, first && before > 0));
                    at += atom.width();
                    first = false;
                }
                before = 0;
            }
        }
        if (!current.isEmpty()) {
            lines.add(line(current, type));
        }
        return new SetText(lines, notations, faces);
    }

    /** Width of the text on one line (on its widest line where it holds line feeds). */
    double naturalWidth(Text text, Type type) {
        return set(text, 1e6, type).width();
    }

    /** Width of the widest stretch that must not be broken. */
    double leastWidth(Text text, Type type) {
        return groups(text, type).stream()
                .mapToDouble(group -> group.width)
                .max()
                .orElse(0);
    }

    private Line line(List<Placed> placed, Type type) {
        double height = type.leading();
        double width = 0;
        for (Placed one : placed) {
            if (one.atom instanceof Requirement requirement) {
                height = Math.max(height, notations.height(requirement.notation, type));
            }
            width = Math.max(width, one.x + one.atom.width());
        }
        return new Line(List.copyOf(placed), width, height, type);
    }

    private List<Group> groups(Text text, Type type) {
        List<Group> groups = new ArrayList<>();
        List<Atom> current = new ArrayList<>();
        boolean space = false;
        boolean newLine = false;
        for (Text.Run run : text.runs()) {
            if (run instanceof Text.Inline inline) {
                current.add(new Requirement(inline.notation(), notations.inlineWidth(inline.notation(), type)));
            } else if (run instanceof Text.Ringed ringed) {
                String mark = faces.fit(ringed.mark());
                current.add(new Ring(mark, SymbolPainter.ringWidth(faces, mark, type.size())));
            } else {
                boolean strong = type.strong() || run instanceof Text.Strong;
                String words = faces.fit(run instanceof Text.Strong heavy ? heavy.text() : ((Text.Plain) run).text());
                StringBuilder word = new StringBuilder();
                for (int i = 0; i <= words.length(); i++) {
                    char c = i < words.length() ? words.charAt(i) : '\0';
                    boolean end = i == words.length();
                    boolean joined = c == ' ' && isJoined(words, i);
                    if (!end && c != '\n' && (c != ' ' || joined)) {
                        word.append(joined ? NO_BREAK_SPACE : c);
                        continue;
                    }
                    if (!word.isEmpty()) {
                        current.add(word(word.toString(), strong, type));
                        word.setLength(0);
                    }
                    if (!end) {
                        if (!current.isEmpty()) {
                            groups.add(new Group(current, space, newLine));
                            current = new ArrayList<>();
                            newLine = false;
                        }
                        space = true;
                        newLine |= c == '\n';
                    }
                }
            }
        }
        if (!current.isEmpty()) {
            groups.add(new Group(current, space, newLine));
        }
        return groups;
    }

    /**
     * Whether a line must not end at this space: between a figure and its unit, after "U" and "by", and around signs such
     * as "≤".
     */
    private static boolean isJoined(String words, int space) {
        int start = words.lastIndexOf(' ', space - 1) + 1;
        int end = space + 1;
        while (end < words.length() && " \n".indexOf(words.charAt(end)) < 0) {
            end++;
        }
        String before = words.substring(start, space);
        String after = words.substring(space + 1, end);
        boolean figure = !before.isEmpty() && Character.isDigit(before.charAt(before.length() - 1));
        String unit = after.replaceAll("[.,;:)]+$", "");
        boolean leads = LEADS.contains(before.replaceAll("^[(\u201C]+", ""))
                && !after.isEmpty()
                && Character.isDigit(after.charAt(0));
        return leads || SIGNS.contains(before) || SIGNS.contains(after) || (figure && UNITS.contains(unit));
    }

    private Word word(String text, boolean strong, Type type) {
        return new Word(text, strong, faces.width(text, strong, type.size()));
    }

    /** A stretch that is too wide for any line, in pieces that are not: a long serial number must not leave its column. */
    private List<Group> broken(Group group, double width, Type type) {
        List<Group> pieces = new ArrayList<>();
        for (Atom atom : group.atoms) {
            if (!(atom instanceof Word word) || word.width <= width) {
                pieces.add(new Group(List.of(atom), false, false));
                continue;
            }
            StringBuilder piece = new StringBuilder();
            for (int i = 0; i < word.text.length(); i++) {
                String longer = piece.toString() + word.text.charAt(i);
                if (!piece.isEmpty() && faces.width(longer, word.strong, type.size()) > width) {
                    pieces.add(new Group(List.of(word(piece.toString(), word.strong, type)), false, false));
                    piece.setLength(0);
                }
                piece.append(word.text.charAt(i));
            }
            pieces.add(new Group(List.of(word(piece.toString(), word.strong, type)), false, false));
        }
        return pieces;
    }

    private static final class Group {
        private final List<Atom> atoms;
        private final boolean spaceBefore;
        private final boolean newLine;
        private final double width;

        Group(List<Atom> atoms, boolean spaceBefore, boolean newLine) {
            this.atoms = atoms;
            this.spaceBefore = spaceBefore;
            this.newLine = newLine;
            width = atoms.stream().mapToDouble(Atom::width).sum();
        }
    }

    private sealed interface Atom permits Word, Requirement, Ring {
        double width();
    }

    private record Word(String text, boolean strong, double width) implements Atom {}

    private record Requirement(Notation notation, double width) implements Atom {}

    private record Ring(String mark, double width) implements Atom {}

    private record Placed(Atom atom, double x, boolean afterSpace) {}

    private record Line(List<Placed> atoms, double width, double height, Type type) {}

    /** Text in lines, ready to draw. */
    static final class SetText {
        private final List<Line> lines;
        private final NotationSetter notations;
        private final Faces faces;

        private SetText(List<Line> lines, NotationSetter notations, Faces faces) {
            this.lines = lines;
            this.notations = notations;
            this.faces = faces;
        }

        double width() {
            return lines.stream().mapToDouble(Line::width).max().orElse(0);
        }

        /** How much lower the first baseline lies than that of a line of plain text. */
        double firstDrop() {
            return lines.isEmpty()
                    ? 0
                    : (lines.get(0).height - lines.get(0).type.leading()) / 2;
        }

        double height() {
            return lines.stream().mapToDouble(Line::height).sum();
        }

        /** Each line as a text of its own, so that a page may end between them. */
        List<SetText> split() {
            return lines.stream()
                    .map(line -> new SetText(List.of(line), notations, faces))
                    .toList();
        }

        void paint(Canvas canvas, double x, double y) {
            double top = y;
            for (Line line : lines) {
                Type type = line.type;
                double baseline = top + (line.height - type.leading()) / 2 + type.baseline();
                paint(canvas, line, x, baseline);
                top += line.height;
            }
        }

        private void paint(Canvas canvas, Line line, double x, double baseline) {
            Type type = line.type;
            // Words of one weight go out as one string: extracted text then has its spaces.
            StringBuilder run = new StringBuilder();
            double start = 0;
            boolean strong = false;
            for (Placed placed : line.atoms) {
                if (placed.atom instanceof Word word) {
                    if (!run.isEmpty() && word.strong != strong) {
                        canvas.text(run.toString(), x + start, baseline, type.size(), strong, type.ink());
                        run.setLength(0);
                    }
                    if (run.isEmpty()) {
                        start = placed.x;
                        strong = word.strong;
                    } else if (placed.afterSpace) {
                        run.append(' ');
                    }
                    run.append(word.text);
                } else {
                    canvas.text(run.toString(), x + start, baseline, type.size(), strong, type.ink());
                    run.setLength(0);
                    if (placed.atom instanceof Requirement requirement) {
                        notations.paint(canvas, requirement.notation, x + placed.x, baseline, type);
                    } else if (placed.atom instanceof Ring ring) {
                        new SymbolPainter(canvas)
                                .ring(ring.mark, ring.mark, x + placed.x, baseline, type.size(), type.ink());
                    }
                }
            }
            canvas.text(run.toString(), x + start, baseline, type.size(), strong, type.ink());
        }
    }
}
