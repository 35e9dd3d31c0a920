package io.github.firstoff.samples;

import java.time.LocalDate;
import java.util.Map;

/**
 * The pawl carrier, drawing HQ-320: what takes more than a value in a column. The starboard plan is the mirror image of the port one.
 *
 * <p>The readings are written out, not drawn: each is there for what it shows.
 */
final class PawlCarrier {
    private static final String GAUGES = """
                { "id": "BG-5", "kind": "bore gauge", "resolution": "0.0005", "expandedUncertainty": "0.002", "calibrationDue": "2027-03-31", "certificate": "K-20884" },
                { "id": "CMM-1", "kind": "coordinate measuring machine", "resolution": "0.001", "calibrationDue": "2027-06-30", "certificate": "K-20911",
                  "budget": { "probability": "0.9545", "components": [
                    { "name": "calibration", "value": "0.003", "distribution": "normal", "divisor": "2" },
                    { "name": "repeatability, ten probings", "value": "0.0009", "distribution": "normal", "degreesOfFreedom": 9 },
                    { "name": "form of the stylus ball", "value": "0.0006", "distribution": "rectangular" },
                    { "name": "swing of the room's temperature", "value": "0.4", "distribution": "u-shaped", "sensitivity": "0.0012" } ] } },
                { "id": "MIC-8", "kind": "outside micrometer 150-175", "resolution": "0.001", "expandedUncertainty": "0.005", "calibrationDue": "2027-02-28", "certificate": "K-20879" },
                { "id": "BP-1", "kind": "bevel protractor", "unit": "degree", "resolution": "0.05", "expandedUncertainty": "0.1", "calibrationDue": "2027-05-31", "certificate": "K-20904" },
                { "id": "TG-5", "kind": "thread plug gauge M5x0.8-6H", "calibrationDue": "2027-04-30", "certificate": "K-20893" },
                { "id": "FX-320", "kind": "detent fixture", "calibrationDue": "2027-06-30", "certificate": "K-20916" }""";

    private static final String HEADING =
            "part,characteristic,value,x,y,setting,temperature,time,operator,gauge,machine\n";

    private PawlCarrier() {}

    static void writeTo(Map<String, String> files) {
        files.put("hq-320-p.plan.json", port());
        files.put("hq-320-s.plan.json", starboard());
        LocalDate first = LocalDate.of(2026, 11, 24);
        files.put("first-article-hq-320-p.csv", portReadings(first));
        files.put("first-article-hq-320-p.job.json", job("J-1192", "B-2211", "HQ-320-P", "HQ320P-A-01", first));
        LocalDate second = LocalDate.of(2026, 11, 25);
        files.put("first-article-hq-320-s.csv", starboardReadings(second));
        files.put("first-article-hq-320-s.job.json", job("J-1193", "B-2212", "HQ-320-S", "HQ320S-A-01", second));
    }

    private static String port() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-320-P", "name": "Pawl carrier, port", "drawing": "HQ-320", "revision": "A",
                            "hand": "port", "counterpart": "HQ-320-S", "material": "EN AW-6061 T6" },
                  "unit": "mm",
                  "temperature": { "gaugeExpansion": "0.0000115" },
                  "gauges": [
                %s
                  ],
                  "characteristics": [
                    { "number": "1", "feature": "pawl bore", "requirement": "Ø12 H7", "class": "critical", "gauge": "BG-5" },
                    { "number": "2", "feature": "pawl bore, across", "requirement": "31.5 ±0.05", "class": "major", "gauge": "CMM-1", "axis": "x" },
                    { "number": "3", "feature": "spring hole", "requirement": "position Ø0.2 A B", "class": "major", "gauge": "CMM-1", "at": { "x": "12.5", "y": "-30" } },
                    { "number": "4", "feature": "base length", "requirement": "160 ±0.03", "class": "major", "gauge": "MIC-8" },
                    { "number": "5", "feature": "lead-in angle", "requirement": "45° ±30'", "class": "minor", "gauge": "BP-1" },
                    { "number": "6", "feature": "cover thread", "requirement": "M5x0.8-6H go/no-go", "class": "major", "gauge": "TG-5", "settings": ["go end", "no-go end"] },
                    { "number": "7", "feature": "detents", "requirement": "function: holds under 40 N", "class": "critical", "gauge": "FX-320", "settings": ["low", "middle", "high"] }
                  ]
                }
                """.formatted(GAUGES.indent(4).stripTrailing());
    }

    private static String starboard() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-320-S", "name": "Pawl carrier, starboard", "hand": "starboard", "counterpart": "HQ-320-P" },
                  "mirrorOf": "hq-320-p.plan.json",
                  "mirrorAxis": "x"
                }
                """;
    }

    /** The base of the second piece shows 160.036 at 24.5 °C, beyond its limit, and is 160.027 at 20 °C. */
    private static String portReadings(LocalDate day) {
        Rows rows = new Rows("2211", day);
        rows.piece(1)
                .value("1", "12.0075", "BG-5")
                .value("2", "31.512", "CMM-1")
                .place("3", "12.530", "-29.960")
                .warm("4", "160.011", "24.5")
                .value("5", "45°12'", "BP-1")
                .at("6", "go end", "pass", "TG-5")
                .at("6", "no-go end", "pass", "TG-5")
                .at("7", "low", "pass", "FX-320")
                .at("7", "middle", "pass", "FX-320")
                .at("7", "high", "pass", "FX-320");
        rows.piece(2)
                .value("1", "12.0110", "BG-5")
                .value("2", "31.487", "CMM-1")
                .place("3", "12.487", "-30.021")
                .warm("4", "160.036", "24.5")
                .value("5", "44°48'", "BP-1")
                .at("6", "go end", "pass", "TG-5")
                .at("6", "no-go end", "pass", "TG-5")
                .at("7", "low", "pass", "FX-320")
                .at("7", "middle", "pass", "FX-320")
                .at("7", "high", "pass", "FX-320");
        return rows.text();
    }

    /** Across and the place of the spring hole are negative here. The detents were not tried at the highest setting. */
    private static String starboardReadings(LocalDate day) {
        Rows rows = new Rows("2212", day);
        rows.piece(1)
                .value("1", "12.0095", "BG-5")
                .value("2", "-31.506", "CMM-1")
                .place("3", "-12.522", "-30.013")
                .warm("4", "159.998", "19.0")
                .value("5", "45°06'", "BP-1")
                .at("6", "go end", "pass", "TG-5")
                .at("6", "no-go end", "pass", "TG-5")
                .at("7", "low", "pass", "FX-320")
                .at("7", "middle", "pass", "FX-320");
        return rows.text();
    }

    private static String job(String job, String batch, String part, String program, LocalDate day) {
        return new JobText(job, batch, batch.equals("B-2211") ? 2 : 1, "PO 7810", day)
                .part(part)
                .material("EN AW-6061 T6", "H55241", "MC-90181")
                .made("mill 3", program)
                .firstArticle("full", "new part")
                .toJson();
    }

    /** Rows of one file. */
    private static final class Rows {
        private final StringBuilder text = new StringBuilder(HEADING);
        private final String batch;
        private final LocalDate day;
        private String serial = "";
        private int minute;

        Rows(String batch, LocalDate day) {
            this.batch = batch;
            this.day = day;
        }

        Rows piece(int number) {
            serial = batch + "-" + number;
            return this;
        }

        Rows value(String characteristic, String value, String gauge) {
            return row(characteristic, value, "", "", "", "", gauge);
        }

        Rows place(String characteristic, String x, String y) {
            return row(characteristic, "", x, y, "", "", "CMM-1");
        }

        Rows warm(String characteristic, String value, String temperature) {
            return row(characteristic, value, "", "", "", temperature, "MIC-8");
        }

        Rows at(String characteristic, String setting, String value, String gauge) {
            return row(characteristic, value, "", "", setting, "", gauge);
        }

        private Rows row(
                String characteristic,
                String value,
                String x,
                String y,
                String setting,
                String temperature,
                String gauge) {
            text.append(String.join(
                            ",",
                            serial,
                            characteristic,
                            value,
                            x,
                            y,
                            setting,
                            temperature,
                            day.atTime(9, minute++).toString(),
                            "A. Quill",
                            gauge,
                            "mill 3"))
                    .append('\n');
            return this;
        }

        String text() {
            return text.toString();
        }
    }
}
