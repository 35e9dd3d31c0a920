package io.github.firstoff.proof;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The figures of a result that a sheet prints as they are. */
@FunctionalInterface
public interface PrintedFigures {
    /**
     * A figure that must stand on the sheet.
     *
     * @param place whose it is, in words
     * @param written its digits, or its words
     * @param sentence whether it is English prose, which a sheet in another language says in its own words
     */
    record Figure(String place, String written, boolean sentence) {
        /** Digits, names and codes, which stand in every language as they are. */
        public Figure(String place, String written) {
            this(place, written, false);
        }
    }

    /**
     * Those of one result.
     *
     * @param result the JSON document
     * @throws IOException if it is none
     */
    List<Figure> of(byte[] result) throws IOException;

    /** Limits, readings, the least and the greatest of the characteristics of an inspection. */
    static PrintedFigures ofInspection() {
        return result -> InspectionFigures.of(Json.parse(result));
    }

    /**
     * What stands at these places of the document, texts and numbers as they are written; a place that is not there is left out.
     *
     * @param paths names of members with dots between them, such as {@code worstCase.minimum}; {@code []} behind the name of a list stands
     *     for each of its entries, such as {@code members[].name} or {@code decisions[]}
     */
    static PrintedFigures at(String... paths) {
        return at(List.of(paths), false);
    }

    /** These, and the sentences at these places, which only sheets in English print as the result has them. */
    default PrintedFigures andSentencesAt(String... paths) {
        PrintedFigures sentences = at(List.of(paths), true);
        return result -> {
            List<Figure> both = new ArrayList<>(of(result));
            both.addAll(sentences.of(result));
            return both;
        };
    }

    private static PrintedFigures at(List<String> all, boolean sentences) {
        return result -> {
            Object document = Json.parse(result);
            List<Figure> figures = new ArrayList<>();
            for (String path : all) {
                follow(document, List.of(path.split("\\.", -1)), "", sentences, figures);
            }
            return figures;
        };
    }

    private static void follow(Object value, List<String> steps, String place, boolean sentence, List<Figure> figures) {
        if (steps.isEmpty()) {
            if (value instanceof String || value instanceof Json.Figure) {
                figures.add(new Figure(place, value.toString(), sentence));
            }
            return;
        }
        List<String> rest = steps.subList(1, steps.size());
        String step = steps.get(0);
        boolean each = step.endsWith("[]");
        String name = each ? step.substring(0, step.length() - 2) : step;
        String here = place.isEmpty() ? name : place + ", " + name;
        if (each) {
            int number = 0;
            for (Object entry : Json.list(value, name)) {
                number++;
                follow(entry, rest, here + " " + number, sentence, figures);
            }
        } else {
            Json.member(value, name).ifPresent(found -> follow(found, rest, here, sentence, figures));
        }
    }
}
