package io.github.firstoff.proof;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Every reading as it was judged, in the order of the plan and of production. Carried as {@value #NAME}. */
public final class JudgedReadings {
    static final String NAME = "judged.csv";

    private JudgedReadings() {}

    static ReadingLines of(Sheet sheet) {
        return of(
                "characteristic",
                sheet.findings().stream()
                        .map(finding -> Map.entry(finding.number(), finding))
                        .toList());
    }

    /**
     * The readings of several findings.
     *
     * @param column what tells them apart, such as {@code batch}
     * @param findings each with its name in that column
     */
    public static ReadingLines of(String column, List<Map.Entry<String, Finding>> findings) {
        List<List<String>> lines = new ArrayList<>();
        for (Map.Entry<String, Finding> entry : findings) {
            for (Judgement judgement : entry.getValue().result().judgements()) {
                String value = "";
                String unit = "";
                if (judgement.reading() instanceof Reading.Measured measured) {
                    value = measured.value().toPlainString();
                    unit = measured.unit().word();
                } else if (judgement.reading() instanceof Reading.Observed observed) {
                    value = observed.pass() ? "pass" : "fail";
                }
                lines.add(List.of(
                        entry.getKey(),
                        judgement.part(),
                        judgement.reading().context().setting().orElse(""),
                        value,
                        unit,
                        judgement.verdict().word(),
                        Phrases.of(judgement)));
            }
        }
        return new ReadingLines(
                NAME,
                "Every reading as it was judged",
                List.of(column, "part", "setting", "value", "unit", "verdict", "says"),
                lines);
    }
}
