package io.github.firstoff.samples;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Two batches whose plans say more of their studies: sheave pins, made before and after a new set-up, with a point excluded and tests
 * chosen; and coated sheave covers, whose nonconformities are counted.
 *
 * <p>The seed of the pins was chosen, among others that do as well, so that the process of the first set-up is in control.
 */
final class FollowedBatches {
    private static final long PINS = 2213;
    private static final long COVERS = 2214;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");
    private static final int PIN_COUNT = 120;
    private static final int COVER_COUNT = 150;
    /** The last pin of the first set-up. */
    private static final int FIRST_SET_UP = 80;

    private FollowedBatches() {}

    static void writeTo(Map<String, String> files) {
        files.put("hq-330.plan.json", pinPlan());
        files.put("hq-331.plan.json", coverPlan());
        LocalDate pins = LocalDate.of(2026, 11, 26);
        files.put("batch-2213.csv", pins(pins.atTime(7, 0)));
        files.put(
                "batch-2213.job.json",
                new JobText("J-1195", "B-2213", PIN_COUNT, "PO 7815", pins)
                        .part("HQ-330")
                        .material("AISI 316", "H60431", "MC-90188")
                        .made("lathe 4", "HQ330-B-02")
                        .toJson());
        LocalDate covers = LocalDate.of(2026, 11, 27);
        files.put("batch-2214.csv", covers(covers.atTime(7, 0)));
        files.put(
                "batch-2214.job.json",
                new JobText("J-1196", "B-2214", COVER_COUNT, "PO 7815", covers)
                        .part("HQ-331")
                        .material("EN AW-5754 H111", "H55302", "MC-90190")
                        .made("coating line 1", "HQ331-A-01")
                        .toJson());
    }

    private static String pinPlan() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-330", "name": "Sheave pin", "drawing": "HQ-330", "revision": "B", "material": "AISI 316" },
                  "unit": "mm",
                  "gauges": [
                    { "id": "MIC-9", "kind": "outside micrometer 0-25", "resolution": "0.0005", "expandedUncertainty": "0.002", "calibrationDue": "2027-02-28", "certificate": "K-20921" }
                  ],
                  "characteristics": [
                    { "number": "1", "feature": "journal", "requirement": "Ø16 -0.006/-0.026", "class": "critical", "gauge": "MIC-9",
                      "study": { "chart": "xbar-r", "subgroup": 4, "baseline": { "phase": "1" }, "breaks": ["phase", "tool"],
                        "exclude": [ { "part": "2213-041", "reason": "chip between anvil and pin; the pin was read again and conforms" } ],
                        "tests": ["western-electric", { "test": "unnatural-trend", "length": 6 }] } }
                  ]
                }
                """;
    }

    private static String coverPlan() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-331", "name": "Sheave cover, coated", "drawing": "HQ-331", "revision": "A", "material": "EN AW-5754 H111" },
                  "unit": "mm",
                  "characteristics": [
                    { "number": "1", "feature": "coating", "requirement": "nonconformities 4 max: runs and pits", "class": "minor",
                      "study": { "chart": "u", "subgroup": 5 } },
                    { "number": "2", "feature": "edges", "requirement": "visual: coated all round", "class": "minor",
                      "study": { "chart": "p", "subgroup": 25 } }
                  ]
                }
                """;
    }

    /** Pin 41 was read over a chip: within the limits, but no reading of the process. After the new set-up pins are a little larger. */
    private static String pins(LocalDateTime start) {
        SplittableRandom random = new SplittableRandom(PINS);
        Machining lathe = Machining.of("15.9836", "0.0018", "0.0005");
        StringBuilder text =
                new StringBuilder("part,characteristic,value,time,operator,gauge,machine,phase,tool,note\n");
        for (int i = 1; i <= PIN_COUNT; i++) {
            boolean first = i <= FIRST_SET_UP;
            String value = lathe.next(random, new BigDecimal(first ? "0" : "0.0024"));
            String note = i == FIRST_SET_UP + 1 ? "first pin after new set-up" : "";
            if (i == 41) {
                value = "15.9935";
                note = "chip";
            }
            text.append(String.join(
                            ",",
                            "2213-%03d".formatted(i),
                            "1",
                            value,
                            TIME.format(start.plusMinutes(3L * (i - 1))),
                            first ? "M. Thorne" : "R. Sallow",
                            "MIC-9",
                            "lathe 4",
                            first ? "1" : "2",
                            i <= 40 ? "T7" : first ? "T8" : "T9",
                            note))
                    .append('\n');
        }
        return text.toString();
    }

    /** Counts of nonconformities on covers of two sizes; the coating ran thin for a while. Two covers lack coating at an edge. */
    private static String covers(LocalDateTime start) {
        SplittableRandom random = new SplittableRandom(COVERS);
        StringBuilder text = new StringBuilder("part,characteristic,value,size,time,operator,machine\n");
        for (int i = 1; i <= COVER_COUNT; i++) {
            boolean large = i % 5 == 0;
            int tries = large ? 6 : 4;
            int chance = i > 100 && i <= 120 ? 45 : 15;
            int count = 0;
            for (int k = 0; k < tries; k++) {
                count += random.nextInt(100) < chance ? 1 : 0;
            }
            String time = TIME.format(start.plusMinutes(2L * (i - 1)));
            String part = "2214-%03d".formatted(i);
            text.append(String.join(
                            ",",
                            part,
                            "1",
                            Integer.toString(Math.min(count, 4)),
                            large ? "1.5" : "1",
                            time,
                            "A. Quill",
                            "coating line 1"))
                    .append('\n');
            text.append(String.join(
                            ",",
                            part,
                            "2",
                            i == 37 || i == 112 ? "fail" : "pass",
                            "",
                            time,
                            "A. Quill",
                            "coating line 1"))
                    .append('\n');
        }
        return text.toString();
    }
}
