package io.github.firstoff.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures of the result of an inspection that its sheet prints as they are: limits, readings, the least and the greatest. */
final class InspectionFigures {
    private InspectionFigures() {}

    static List<PrintedFigures.Figure> of(Object result) {
        Optional<String> command = Json.text(result, "command");
        List<PrintedFigures.Figure> figures = new ArrayList<>();
        for (Object characteristic : Json.list(result, "characteristics")) {
            // Angles are printed in degrees, minutes and seconds; a certificate leaves out what is not judged.
            boolean judged = Json.text(characteristic, "verdict").isPresent();
            if (!judged || Json.text(characteristic, "unit").equals(Optional.of("degree"))) {
                continue;
            }
            String name =
                    "characteristic " + Json.text(characteristic, "number").orElse("without a number");
            if (!command.equals(Optional.of("certificate"))) {
                if (Json.text(characteristic, "naturalBound").isEmpty()) {
                    add(figures, name + ", lower limit,", characteristic, "lower");
                }
                add(figures, name + ", upper limit,", characteristic, "upper");
            }
            if (command.equals(Optional.of("first-article"))) {
                for (Object reading : Json.list(characteristic, "readings")) {
                    if (Json.text(reading, "unit").isPresent()) {
                        continue; // in another unit than the limits, and so perhaps an angle in minutes
                    }
                    String place = name + ", part " + Json.text(reading, "part").orElse("") + ",";
                    // Pass and fail are said in the words of the sheet's language.
                    Json.text(reading, "value")
                            .ifPresent(written -> figures.add(new PrintedFigures.Figure(
                                    place, written, !written.isEmpty() && Character.isLetter(written.charAt(0)))));
                }
            } else {
                add(figures, name + ", least value,", characteristic, "minimum");
                add(figures, name + ", greatest value,", characteristic, "maximum");
            }
        }
        return figures;
    }

    private static void add(List<PrintedFigures.Figure> figures, String place, Object from, String name) {
        Json.text(from, name).ifPresent(written -> figures.add(new PrintedFigures.Figure(place, written)));
    }
}
