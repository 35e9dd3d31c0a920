package io.github.firstoff.proof;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Every reading as it was judged, one line each, in the order of the plan and of production: what lets a check name the piece whose reading
 * was changed, where the result only holds means. Carried as {@value #NAME}.
 */
final class JudgedReadings {
    static final String NAME = "judged.csv";
    static final String HEADING = "characteristic,part,setting,value,unit,verdict,says";

    private JudgedReadings() {}

    static byte[] csv(Sheet sheet) {
        StringBuilder csv = new StringBuilder(HEADING).append('\n');
        for (Finding finding : sheet.findings()) {
            for (Judgement judgement : finding.result().judgements()) {
                field(csv, finding.number()).append(',');
                field(csv, judgement.part()).append(',');
                field(csv, judgement.reading().context().setting().orElse("")).append(',');
                if (judgement.reading() instanceof Reading.Measured measured) {
                    csv.append(measured.value().toPlainString())
                            .append(',')
                            .append(measured.unit().word());
                } else if (judgement.reading() instanceof Reading.Observed observed) {
                    csv.append(observed.pass() ? "pass" : "fail").append(',');
                }
                csv.append(',').append(judgement.verdict().word()).append(',');
                field(csv, Phrases.of(judgement)).append('\n');
            }
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static StringBuilder field(StringBuilder csv, String text) {
        boolean quoted = text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return quoted ? csv.append('"').append(text.replace("\"", "\"\"")).append('"') : csv.append(text);
    }

    /** The lines without the heading. */
    static List<String> lines(byte[] csv) {
        List<String> lines =
                new ArrayList<>(new String(csv, StandardCharsets.UTF_8).lines().toList());
        if (!lines.isEmpty() && lines.get(0).equals(HEADING)) {
            lines.remove(0);
        }
        return lines;
    }

    /** A line in words: {@code characteristic 1, part S003: 51.964 mm, conforms}. */
    static String inWords(String line) {
        List<String> fields = fields(line);
        if (fields.size() != HEADING.split(",", -1).length) {
            return "\u201C" + line + "\u201D";
        }
        return place(line) + ": " + fields.get(3) + (fields.get(4).isEmpty() ? "" : " " + fields.get(4)) + ", "
                + fields.get(6);
    }

    /** Whose reading a line is: {@code characteristic 1, part S003}. */
    static String place(String line) {
        List<String> fields = fields(line);
        if (fields.size() < 3) {
            return "\u201C" + line + "\u201D";
        }
        return "characteristic " + fields.get(0) + ", part " + fields.get(1)
                + (fields.get(2).isEmpty() ? "" : ", setting " + fields.get(2));
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                if (quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                    field.append('"');
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
