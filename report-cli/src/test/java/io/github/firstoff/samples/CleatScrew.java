package io.github.firstoff.samples;

import io.github.firstoff.samples.Checked.Inspected;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The cleat screw, drawing HQ-045 revision A: a part without a hand, drawn in inches. */
final class CleatScrew {

    private CleatScrew() {}

    static String plan() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-045", "name": "Cleat screw", "drawing": "HQ-045", "revision": "A", "material": "AISI 316" },
                  "unit": "inch",
                  "gauges": [
                    { "id": "MIC-7", "kind": "outside micrometer 0-1 in", "resolution": "0.0001", "expandedUncertainty": "0.0002", "calibrationDue": "2027-02-28", "certificate": "K-20876" },
                    { "id": "CAL-6", "kind": "digital calliper", "resolution": "0.0005", "expandedUncertainty": "0.001", "calibrationDue": "2027-05-31", "certificate": "K-20906" },
                    { "id": "RT-1", "kind": "roughness tester", "unit": "µin", "resolution": "1", "expandedUncertainty": "2", "calibrationDue": "2027-03-31", "certificate": "K-20883" },
                    { "id": "TR-4", "kind": "thread ring gauge 1/4-20 UNC-2A", "calibrationDue": "2027-04-30", "certificate": "K-20895" }
                  ],
                  "characteristics": [
                %s
                  ]
                }
                """.formatted(
                characteristics().stream().map(each -> "    " + each.toJson()).collect(Collectors.joining(",\n")));
    }

    static List<Checked> characteristics() {
        return List.of(
                measured("1", "shank", "Ø0.312 +0.000/-0.002", "major", "MIC-7", "0.3111", "0.0002", "0.0001"),
                measured("2", "head diameter", "Ø0.500 ±0.005", "minor", "CAL-6", "0.5005", "0.0008", "0.0005"),
                measured("3", "length under head", "1.250 ±0.010", "major", "CAL-6", "1.2510", "0.0015", "0.0005"),
                measured("4", "slot depth", "0.060..0.070", "minor", "CAL-6", "0.0650", "0.0008", "0.0005"),
                measured("5", "shank, roughness", "Ra 63 max", "minor", "RT-1", "38", "3", "1"),
                checked("6", "thread", "1/4-20 UNC-2A go/no-go", "major", Optional.of("TR-4")),
                checked("7", "edges", "visual: no burrs", "minor", Optional.empty()));
    }

    private static Checked measured(
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
                Inspected.EVERY_PIECE,
                Optional.of(Machining.of(mean, spread, step)));
    }

    private static Checked checked(
            String number, String feature, String requirement, String importance, Optional<String> gauge) {
        return new Checked(
                number,
                feature,
                requirement,
                Optional.of(importance),
                gauge,
                "",
                Inspected.EVERY_PIECE,
                Optional.empty());
    }
}
