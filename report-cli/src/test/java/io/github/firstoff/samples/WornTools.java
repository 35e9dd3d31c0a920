package io.github.firstoff.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * A batch of bearing caps, whose bore is cut by a boring bar that wears 0.3 µm a piece: two tool changes, one offset. The spigot is turned with
 * another tool and does not drift. Among so many readings the four zone tests signal falsely once or twice, and do so here.
 */
final class WornTools {
    private static final long SEED = 2216;
    private static final int COUNT = 150;
    private static final double WEAR = 0.3;
    private static final double BORE_SPREAD = 1.3;
    private static final double SPIGOT_SPREAD = 1.6;
    /** Half a micrometre, the step of the bore gauge. */
    private static final BigDecimal STEP = new BigDecimal("0.0005");

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private WornTools() {}

    static void writeTo(Map<String, String> files) {
        LocalDate date = LocalDate.of(2026, 12, 1);
        files.put("hq-340-p.plan.json", plan());
        files.put("batch-2216.csv", readings(date.atTime(7, 0)));
        files.put(
                "batch-2216.job.json",
                new JobText("J-1199", "B-2216", COUNT, "PO 7822", date)
                        .part("HQ-340-P")
                        .material("EN AW-6061 T6", "H55340", "MC-90203")
                        .made("lathe 2", "HQ340P-A-03")
                        .toJson());
    }

    private static String plan() {
        return """
                {
                  "schema": "firstoff-plan-1",
                  "part": { "number": "HQ-340-P", "name": "Bearing cap, port", "drawing": "HQ-340", "revision": "A",
                            "hand": "port", "counterpart": "HQ-340-S", "material": "EN AW-6061 T6" },
                  "unit": "mm",
                  "decisionRule": "guarded",
                  "gauges": [
                    { "id": "BG-3", "kind": "bore gauge", "resolution": "0.0005", "expandedUncertainty": "0.0016", "calibrationDue": "2027-03-31", "certificate": "K-20881" },
                    { "id": "MIC-11", "kind": "outside micrometer 50-75", "resolution": "0.0005", "expandedUncertainty": "0.002", "calibrationDue": "2027-02-28", "certificate": "K-20925" }
                  ],
                  "characteristics": [
                    { "number": "1", "feature": "bearing bore", "requirement": "Ø52 N7", "class": "critical", "gauge": "BG-3",
                      "study": { "chart": "xbar-r", "subgroup": 5, "breaks": ["tool", "offset"], "trended": true } },
                    { "number": "2", "feature": "spigot", "requirement": "Ø60 h7", "class": "major", "gauge": "MIC-11",
                      "study": { "chart": "xbar-r", "subgroup": 5 } }
                  ]
                }
                """;
    }

    private static String readings(LocalDateTime start) {
        SplittableRandom bore = new SplittableRandom(SEED);
        SplittableRandom spigot = new SplittableRandom(SEED + 1);
        StringBuilder csv = new StringBuilder("part,characteristic,value,tool,offset,time,operator\n");
        double level = 0;
        for (int i = 1; i <= COUNT; i++) {
            // where the bar begins, in micrometres under 52: new tools at pieces 1, 57 and 113, an offset of 0.008
            // before piece 86
            level = i == 1 ? -15.5 : i == 57 ? -18 : i == 113 ? -14.5 : level - WEAR + (i == 86 ? 8 : 0);
            String tool = i < 57 ? "B1" : i < 113 ? "B2" : "B3";
            String offset = i >= 86 && i < 113 ? "0.008" : "0";
            String part = "2216-%03d".formatted(i);
            String rest = TIME.format(start.plusMinutes(4L * i)) + ",A. Quill\n";
            csv.append("%s,1,%s,%s,%s,%s"
                    .formatted(part, size("52", level + BORE_SPREAD * gaussian(bore)), tool, offset, rest));
            csv.append("%s,2,%s,T4,,%s".formatted(part, size("60", -14.6 + SPIGOT_SPREAD * gaussian(spigot)), rest));
        }
        return csv.toString();
    }

    private static String size(String nominal, double micrometres) {
        BigDecimal steps = BigDecimal.valueOf(micrometres)
                .movePointLeft(3)
                .divide(STEP, 0, RoundingMode.HALF_EVEN)
                .multiply(STEP);
        return new BigDecimal(nominal).add(steps).setScale(4).toPlainString();
    }

    /** The sum of twelve uniform numbers less six: near enough to normal for a picture, and the same on every Java. */
    private static double gaussian(SplittableRandom random) {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return sum;
    }
}
