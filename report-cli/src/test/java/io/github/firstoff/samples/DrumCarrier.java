package io.github.firstoff.samples;

import io.github.firstoff.samples.Checked.Inspected;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The winch drum carrier, drawing HQ-310 revision C, in its two hands.
 *
 * <p>The seat takes a 6205 bearing (25 × 52 × 15, ISO 15) whose outer ring turns with the load, hence P7; the clearance holes
 * are the medium series of ISO 273 for M6. Each expanded uncertainty is between a fiftieth and a sixth of its tolerance.
 */
enum DrumCarrier {
    PORT("HQ-310-P", "HQ-310-S", "port", "P"),
    STARBOARD("HQ-310-S", "HQ-310-P", "starboard", "S");

    private static final String GAUGES = """
                { "id": "BG-3", "kind": "bore gauge", "resolution": "0.0005", "expandedUncertainty": "0.0025", "calibrationDue": "2027-03-31", "certificate": "K-20881" },
                { "id": "MIC-3", "kind": "outside micrometer 50-75", "resolution": "0.001", "expandedUncertainty": "0.003", "calibrationDue": "2027-02-28", "certificate": "K-20874" },
                { "id": "MIC-1", "kind": "outside micrometer 0-25", "resolution": "0.001", "expandedUncertainty": "0.002", "calibrationDue": "2027-02-28", "certificate": "K-20872" },
                { "id": "DM-2", "kind": "depth micrometer", "resolution": "0.001", "expandedUncertainty": "0.006", "calibrationDue": "2027-04-30", "certificate": "K-20890" },
                { "id": "HG-1", "kind": "height gauge", "resolution": "0.01", "expandedUncertainty": "0.02", "calibrationDue": "2027-01-31", "certificate": "K-20859" },
                { "id": "CAL-4", "kind": "digital calliper", "resolution": "0.01", "expandedUncertainty": "0.03", "calibrationDue": "2027-05-31", "certificate": "K-20902" },
                { "id": "CMM-1", "kind": "coordinate measuring machine", "resolution": "0.001", "expandedUncertainty": "0.003", "calibrationDue": "2027-06-30", "certificate": "K-20911" },
                { "id": "RT-1", "kind": "roughness tester", "unit": "µm", "resolution": "0.01", "expandedUncertainty": "0.05", "calibrationDue": "2027-03-31", "certificate": "K-20883" },
                { "id": "PP-1", "kind": "profile projector", "resolution": "0.01", "expandedUncertainty": "0.03", "calibrationDue": "2027-01-31", "certificate": "K-20861" },
                { "id": "BP-1", "kind": "bevel protractor", "unit": "degree", "resolution": "0.05", "expandedUncertainty": "0.1", "calibrationDue": "2027-05-31", "certificate": "K-20904" },
                { "id": "TG-5", "kind": "thread plug gauge M5x0.8-6H", "calibrationDue": "2027-04-30", "certificate": "K-20893" },
                { "id": "FX-310", "kind": "detent fixture", "calibrationDue": "2027-06-30", "certificate": "K-20915" }""";

    private final String number;
    private final String counterpart;
    private final String hand;
    private final String mark;

    DrumCarrier(String number, String counterpart, String hand, String mark) {
        this.number = number;
        this.counterpart = counterpart;
        this.hand = hand;
        this.mark = mark;
    }

    String number() {
        return number;
    }

    /** The plan file; with another decision rule than the simple one, if one is named. */
    String plan(Optional<String> decisionRule) {
        String rule = decisionRule
                .map(word -> "  \"decisionRule\": \"" + word + "\",\n")
                .orElse("");
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "%s", "name": "Winch drum carrier, %s", "drawing": "HQ-310", "revision": "C",
                            "hand": "%s", "counterpart": "%s", "material": "EN AW-6061 T6" },
                  "unit": "mm",
                  "generalTolerance": "ISO 2768-mK",
                %s  "gauges": [
                %s
                  ],
                  "characteristics": [
                %s
                  ]
                }
                """.formatted(
                number,
                hand,
                hand,
                counterpart,
                rule,
                GAUGES.indent(4).stripTrailing(),
                characteristics().stream().map(each -> "    " + each.toJson()).collect(Collectors.joining(",\n")));
    }

    /** The same requirements as a table, as they leave a spreadsheet: with a head above the heading, parted by semicolons. */
    String table() {
        StringBuilder table = new StringBuilder("Hollin Quay Deck Gear;list of requirements\n");
        table.append("Part number;").append(number).append(";Revision;C;Drawing;HQ-310\n");
        table.append("Part name;Winch drum carrier, ")
                .append(hand)
                .append(";Hand;")
                .append(hand)
                .append('\n');
        table.append("Unit;mm;General tolerance;ISO 2768-mK;Material;EN AW-6061 T6\n\n");
        table.append("No.;Feature;Requirement;Class;Gauge;Size feature;Study\n");
        for (Checked each : characteristics()) {
            String study = switch (each.number()) {
                case "1" -> "xbar-r 5 baseline 10";
                case "4" -> "individuals";
                case "5" -> "xbar-s 5";
                default -> "";
            };
            table.append(String.join(
                            ";",
                            each.number(),
                            each.feature(),
                            each.requirement(),
                            each.importance().orElse(""),
                            each.gauge().orElse(""),
                            each.number().equals("11") ? "10" : "",
                            study))
                    .append('\n');
        }
        return table.toString();
    }

    List<Checked> characteristics() {
        // The seat is bored a little above the middle on purpose: a boring bar that wears makes the seat smaller.
        String seat = ", \"target\": \"51.966\", \"study\": "
                + (this == PORT
                        ? "{ \"chart\": \"xbar-r\", \"subgroup\": 5, \"baseline\": 10 }"
                        : "{ \"chart\": \"individuals\" }");
        String spigot = ", \"study\": { \"chart\": \"individuals\" }";
        String flange = this == PORT
                ? ", \"study\": { \"chart\": \"xbar-s\", \"subgroup\": 5 }"
                : ", \"study\": { \"chart\": \"individuals\" }";
        return List.of(
                every("1", "bearing seat, datum B", "Ø52 P7", "critical", "BG-3", seat, "51.9665", "0.0013", "0.0005"),
                sample("2", "bearing seat depth", "15.1 +0.06/0", "major", "DM-2", "15.128", "0.006", "0.001"),
                sample("3", "bearing seat, roughness", "Ra 0.8 max", "major", "RT-1", "0.46", "0.04", "0.01"),
                every("4", "spigot", "Ø64 g6", "critical", "MIC-3", spigot, "63.9805", "0.0018", "0.001"),
                every("5", "flange thickness", "12.5 ±0.05", "major", "MIC-1", flange, "12.503", "0.008", "0.001"),
                sample("6", "flange face, datum A", "flatness 0.02", "major", "CMM-1", "0.009", "0.0015", "0.001"),
                sample(
                        "7",
                        "bearing seat axis",
                        "perpendicularity Ø0.03 A",
                        "major",
                        "CMM-1",
                        "0.011",
                        "0.002",
                        "0.001"),
                sample("8", "hub step height", "18.20..18.35", "major", "HG-1", "18.275", "0.012", "0.01"),
                sample("9", "pawl pocket, floor thickness", "5 min", "critical", "CAL-4", "5.14", "0.025", "0.01"),
                sample(
                        "10",
                        "bolt hole, least favourable of 4",
                        "Ø6.6 H13",
                        "minor",
                        "CMM-1",
                        "6.702",
                        "0.012",
                        "0.001"),
                new Checked(
                        "11",
                        "bolt hole, the same, to pattern",
                        "position Ø0.2 (M) A B",
                        Optional.of("major"),
                        Optional.of("CMM-1"),
                        ", \"sizeFeature\": \"10\"",
                        Inspected.SAMPLE,
                        Optional.of(Machining.of("0.084", "0.020", "0.001"))),
                unjudged("12", "bolt circle diameter", "[Ø88]", Optional.empty(), Inspected.NEVER, Optional.empty()),
                unjudged(
                        "13",
                        "overall height",
                        "(52.5)",
                        Optional.of("HG-1"),
                        Inspected.FIRST_ARTICLE_ONLY,
                        Optional.of(Machining.of("52.54", "0.03", "0.01"))),
                sample("14", "flange rim radius", "R3", "minor", "PP-1", "3.02", "0.03", "0.01"),
                sample("15", "bearing seat, lead-in chamfer", "C1", "minor", "PP-1", "1.03", "0.03", "0.01"),
                sample("16", "hub length", "40", "minor", "HG-1", "40.04", "0.03", "0.01"),
                sample("17", "pawl pocket, flank angle", "30° ±0.5°", "major", "BP-1", "30.05", "0.08", "0.05"),
                attribute(
                        "18", "drum stop thread", "M5x0.8-6H go/no-go", "major", Optional.of("TG-5"), Inspected.SAMPLE),
                attribute(
                        "19",
                        "detents",
                        "function: bearing turns freely at every detent",
                        "critical",
                        Optional.of("FX-310"),
                        Inspected.EVERY_PIECE),
                attribute(
                        "20",
                        "edges",
                        "visual: no burrs, edges broken 0.2 max",
                        "major",
                        Optional.empty(),
                        Inspected.EVERY_PIECE),
                attribute(
                        "21",
                        "marking",
                        "visual: part number, revision and batch legible",
                        "minor",
                        Optional.empty(),
                        Inspected.SAMPLE),
                attribute(
                        "22",
                        "hand mark",
                        "visual: hand mark " + mark + " on the flange, and correct",
                        "critical",
                        Optional.empty(),
                        Inspected.EVERY_PIECE));
    }

    private static Checked every(
            String number,
            String feature,
            String requirement,
            String importance,
            String gauge,
            String more,
            String mean,
            String spread,
            String step) {
        return new Checked(
                number,
                feature,
                requirement,
                Optional.of(importance),
                Optional.of(gauge),
                more,
                Inspected.EVERY_PIECE,
                Optional.of(Machining.of(mean, spread, step)));
    }

    private static Checked sample(
            String number,
            String feature,
            String requirement,
            String importance,
            String gauge,
            String mean,
            String spread,
            String step) {
        return new Checked(
                number,
                feature,
                requirement,
                Optional.of(importance),
                Optional.of(gauge),
                "",
                Inspected.SAMPLE,
                Optional.of(Machining.of(mean, spread, step)));
    }

    private static Checked unjudged(
            String number,
            String feature,
            String requirement,
            Optional<String> gauge,
            Inspected inspected,
            Optional<Machining> machining) {
        return new Checked(number, feature, requirement, Optional.empty(), gauge, "", inspected, machining);
    }

    private static Checked attribute(
            String number,
            String feature,
            String requirement,
            String importance,
            Optional<String> gauge,
            Inspected inspected) {
        return new Checked(
                number, feature, requirement, Optional.of(importance), gauge, "", inspected, Optional.empty());
    }
}
