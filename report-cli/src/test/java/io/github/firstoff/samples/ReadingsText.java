package io.github.firstoff.samples;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Readings as text in the long and in the wide form. */
final class ReadingsText {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private ReadingsText() {}

    /** One line per reading. The note of a piece stands on its first reading. */
    static String longForm(List<Piece> pieces, List<Checked> characteristics, String machine) {
        Map<String, String> gauges = characteristics.stream()
                .collect(Collectors.toMap(Checked::number, each -> each.gauge().orElse("")));
        boolean noted = pieces.stream().anyMatch(piece -> !piece.note().isEmpty());
        StringBuilder text = new StringBuilder("part,characteristic,value,time,operator,gauge,machine");
        text.append(noted ? ",note\n" : "\n");
        for (Piece piece : pieces) {
            String note = piece.note();
            for (Map.Entry<String, String> reading : piece.readings().entrySet()) {
                text.append(String.join(
                        ",",
                        piece.serial(),
                        reading.getKey(),
                        reading.getValue(),
                        TIME.format(piece.time()),
                        piece.operator(),
                        gauges.get(reading.getKey()),
                        machine));
                text.append(noted ? "," + note + "\n" : "\n");
                note = "";
            }
        }
        return text.toString();
    }

    /** One line per piece, one column per characteristic that any piece has; what was not measured is left empty. */
    static String wideForm(List<Piece> pieces, List<Checked> characteristics, String machine) {
        List<String> numbers = characteristics.stream()
                .map(Checked::number)
                .filter(number ->
                        pieces.stream().anyMatch(piece -> piece.readings().containsKey(number)))
                .toList();
        StringBuilder text = new StringBuilder("part,time,operator,machine,");
        text.append(String.join(",", numbers)).append('\n');
        for (Piece piece : pieces) {
            text.append(String.join(",", piece.serial(), TIME.format(piece.time()), piece.operator(), machine));
            for (String number : numbers) {
                text.append(',').append(piece.readings().getOrDefault(number, ""));
            }
            text.append('\n');
        }
        return text.toString();
    }
}
