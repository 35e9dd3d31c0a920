package io.github.firstoff.report.section;

import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.report.model.GeometricSymbol;
import io.github.firstoff.report.model.Modifier;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.tolerance.GeometricCharacteristic;
import io.github.firstoff.tolerance.Requirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Requirements as the drawing sets them, from the drawing's pieces to the sheet's. */
final class Notations {
    private Notations() {}

    /** The requirement of a characteristic. */
    static Notation of(Characteristic characteristic) {
        return of(
                characteristic.requirement().notation(),
                characteristic.requirement().nature());
    }

    static Notation of(io.github.firstoff.tolerance.Notation drawn, Requirement.Nature nature) {
        Notation set = Notation.NONE;
        for (io.github.firstoff.tolerance.Notation.Element element : drawn.elements()) {
            set = add(set, element, nature);
        }
        return set;
    }

    private static Notation add(
            Notation set, io.github.firstoff.tolerance.Notation.Element element, Requirement.Nature nature) {
        if (element instanceof io.github.firstoff.tolerance.Notation.Text text) {
            return nature == Requirement.Nature.REFERENCE
                    ? reference(set, text.text())
                    : set.words(signed(text.text()));
        } else if (element instanceof io.github.firstoff.tolerance.Notation.Stacked stacked) {
            return set.deviations(signed(stacked.upper()), signed(stacked.lower()));
        } else if (element instanceof io.github.firstoff.tolerance.Notation.Framed framed) {
            return set.and(new Notation.Frame(
                    symbol(framed.symbol()),
                    framed.cells().stream().map(Notations::cell).toList()));
        } else if (element instanceof io.github.firstoff.tolerance.Notation.Boxed boxed) {
            return set.and(new Notation.Exact(signed(boxed.text())));
        }
        throw new IllegalArgumentException("no setting for " + element);
    }

    /** The drawing's text brings its brackets; the sheet sets its own. */
    private static Notation reference(Notation set, String text) {
        boolean bracketed = text.startsWith("(") && text.endsWith(")");
        return bracketed
                ? set.and(new Notation.Bracketed(signed(text.substring(1, text.length() - 1))))
                : set.words(signed(text));
    }

    /** A hyphen directly before a figure, at the start or after a space or slash, is a minus. */
    private static String signed(String text) {
        return text.replaceAll("(?<=^|[ /])-(?=\\d)", "−");
    }

    /** Letters in rings at the end of a cell become modifiers; one that a figure follows, as in {@code 0.2 Ⓤ 0.05}, stays in its place. */
    private static Notation.Cell cell(String text) {
        List<String> words = new ArrayList<>(List.of(text.split(" ")));
        List<Modifier> modifiers = new ArrayList<>();
        Optional<Modifier> last = Modifier.of(words.get(words.size() - 1));
        while (words.size() > 1 && last.isPresent()) {
            modifiers.add(0, last.get());
            words.remove(words.size() - 1);
            last = Modifier.of(words.get(words.size() - 1));
        }
        return new Notation.Cell(words.stream().map(Notations::signed).collect(Collectors.joining(" ")), modifiers);
    }

    static GeometricSymbol symbol(GeometricCharacteristic characteristic) {
        return switch (characteristic) {
            case STRAIGHTNESS -> GeometricSymbol.STRAIGHTNESS;
            case FLATNESS -> GeometricSymbol.FLATNESS;
            case ROUNDNESS -> GeometricSymbol.ROUNDNESS;
            case CYLINDRICITY -> GeometricSymbol.CYLINDRICITY;
            case LINE_PROFILE -> GeometricSymbol.PROFILE_OF_LINE;
            case SURFACE_PROFILE -> GeometricSymbol.PROFILE_OF_SURFACE;
            case PARALLELISM -> GeometricSymbol.PARALLELISM;
            case PERPENDICULARITY -> GeometricSymbol.PERPENDICULARITY;
            case ANGULARITY -> GeometricSymbol.ANGULARITY;
            case POSITION -> GeometricSymbol.POSITION;
            case COAXIALITY -> GeometricSymbol.CONCENTRICITY;
            case SYMMETRY -> GeometricSymbol.SYMMETRY;
            case RUN_OUT -> GeometricSymbol.CIRCULAR_RUN_OUT;
            case TOTAL_RUN_OUT -> GeometricSymbol.TOTAL_RUN_OUT;
        };
    }
}
