package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Reads a model as a person would: blocks flattened, text without its type. */
final class Printed {
    private final List<Block> blocks = new ArrayList<>();

    Printed(ReportModel model) {
        model.blocks().forEach(this::flatten);
    }

    private void flatten(Block block) {
        if (block instanceof Block.KeepTogether together) {
            together.blocks().forEach(this::flatten);
        } else if (block instanceof Block.SideBySide side) {
            side.parts().forEach(part -> part.blocks().forEach(this::flatten));
        } else {
            blocks.add(block);
        }
    }

    List<Block> blocks() {
        return blocks;
    }

    <B extends Block> List<B> all(Class<B> kind) {
        return blocks.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    <B extends Block> B first(Class<B> kind) {
        return all(kind).get(0);
    }

    String headline() {
        return text(first(Block.Headline.class).sentence());
    }

    /** The table under the heading "Characteristics", or of a certificate. */
    Block.Table characteristics() {
        return all(Block.Table.class).stream()
                .filter(table -> table.columns().get(0).head().equals("No."))
                .findFirst()
                .orElseThrow();
    }

    List<String> heads() {
        return characteristics().columns().stream().map(column -> column.head()).toList();
    }

    /** The cells of a characteristic, as text. */
    List<String> row(String number) {
        return cells(number).stream().map(Printed::text).toList();
    }

    List<Cell> cells(String number) {
        return characteristics().rows().stream()
                .filter(row -> row instanceof TableRow.Cells)
                .map(row -> ((TableRow.Cells) row).cells())
                .filter(cells -> text(cells.get(0)).equals(number))
                .findFirst()
                .orElseThrow();
    }

    /** The cell of a characteristic under a head. */
    String cell(String number, String head) {
        return row(number).get(heads().indexOf(head));
    }

    Cell.Line strip(String number) {
        return (Cell.Line) cells(number).stream()
                .filter(cell -> cell instanceof Cell.Line)
                .findFirst()
                .orElseThrow();
    }

    /** The value of a fact. */
    String fact(String label) {
        return all(Block.Facts.class).stream()
                .flatMap(facts -> facts.groups().stream())
                .flatMap(group -> group.facts().stream())
                .filter(fact -> fact.label().equals(label))
                .map(fact -> text(fact.value()))
                .findFirst()
                .orElseThrow();
    }

    /** Everything that runs as text: paragraphs, notes, cautions, list items. */
    String prose() {
        return blocks.stream().map(Printed::prose).collect(Collectors.joining("\n"));
    }

    private static String prose(Block block) {
        if (block instanceof Block.Paragraph paragraph) {
            return text(paragraph.text());
        } else if (block instanceof Block.Note note) {
            return text(note.text());
        } else if (block instanceof Block.Caution caution) {
            return text(caution.text());
        } else if (block instanceof Block.MarkedList list) {
            return list.items().stream()
                    .map(item -> item.mark() + " " + text(item.sentence()))
                    .collect(Collectors.joining("\n"));
        } else if (block instanceof Block.IndexScale scale) {
            return text(scale.conditions());
        } else if (block instanceof Block.SignOff signOff) {
            return text(signOff.statement());
        }
        return "";
    }

    static String text(Cell cell) {
        if (cell instanceof Cell.Words words) {
            return text(words.text());
        } else if (cell instanceof Cell.Figure figure) {
            return figure.figure();
        } else if (cell instanceof Cell.Verdict verdict) {
            return verdict.phrase();
        } else if (cell instanceof Cell.Requirement requirement) {
            return requirement.feature() + " " + text(requirement.requirement());
        }
        return "";
    }

    static String text(Text text) {
        StringBuilder all = new StringBuilder();
        for (Text.Run run : text.runs()) {
            if (run instanceof Text.Plain plain) {
                all.append(plain.text());
            } else if (run instanceof Text.Strong strong) {
                all.append(strong.text());
            } else if (run instanceof Text.Inline inline) {
                all.append(text(inline.notation()));
            } else if (run instanceof Text.Ringed ringed) {
                all.append(ringed.mark());
            }
        }
        return all.toString();
    }

    static String text(Notation notation) {
        StringBuilder all = new StringBuilder();
        for (Notation.Piece piece : notation.pieces()) {
            if (piece instanceof Notation.Words words) {
                all.append(words.text());
            } else if (piece instanceof Notation.Deviations deviations) {
                all.append(' ').append(deviations.upper()).append('/').append(deviations.lower());
            } else if (piece instanceof Notation.Frame frame) {
                all.append(frame.symbol().name());
                frame.cells()
                        .forEach(cell -> all.append('|').append(cell.text()).append(cell.modifiers()));
            } else if (piece instanceof Notation.Exact exact) {
                all.append('[').append(exact.text()).append(']');
            } else if (piece instanceof Notation.Bracketed bracketed) {
                all.append('(').append(bracketed.text()).append(')');
            }
        }
        return all.toString();
    }
}
