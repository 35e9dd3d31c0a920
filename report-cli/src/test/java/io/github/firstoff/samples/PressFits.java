package io.github.firstoff.samples;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/** Assemblies that are pressed, and a loop of dimensions: of the drum carrier, the winch spindle and the pawl carrier. */
final class PressFits {
    private static final long BUSH_BORES = 3201;
    private static final long BUSHES = 3206;
    private static final int PIECES = 24;

    private PressFits() {}

    static void writeTo(Map<String, String> files) {
        files.put("hq-310-p-seat.assembly.json", seat());
        files.put("spindle-bearing.assembly.json", spindle());
        files.put("pawl-bush-p.assembly.json", bush());
        files.put("pawl-bush-p.bores.csv", bores());
        files.put("pawl-bush.rings.csv", bushes());
        files.put("drum-play.stack.json", stack());
    }

    /** A bearing in the aluminium carrier: the story is that aluminium and a bearing want opposite things. */
    private static String seat() {
        return """
                {
                  "schema": "firstoff-assembly-1",
                  "name": "bearing in the winch drum carrier, port",
                  "part": "HQ-310-P",
                  "hand": "port",
                  "joint": {
                    "nominal": "52", "length": "15", "friction": { "minimum": 0.08, "maximum": 0.14 },
                    "smoothing": "din-7190-1-2017", "criterion": "von-mises", "gap": "0.03"
                  },
                  "outer": {
                    "part": "HQ-310-P", "material": "EN AW-6061 T6", "outsideDiameter": "72",
                    "requirement": "Ø52 P7", "characteristic": "1", "roughnessRz": "3.2"
                  },
                  "inner": {
                    "part": "deep groove bearing 25 × 52 × 15", "material": "100Cr6", "insideDiameter": "46",
                    "bearing": { "class": "normal", "clearanceGroup": "C3", "bore": "25" }, "roughnessRz": "1"
                  },
                  "temperature": { "assembly": 20, "minimum": -10, "maximum": 60 }
                }
                """;
    }

    /** The same bearing on its stainless spindle: the inner ring is the outer part of that joint. */
    private static String spindle() {
        return """
                {
                  "schema": "firstoff-assembly-1",
                  "name": "bearing on the winch spindle",
                  "part": "HQ-330",
                  "joint": { "nominal": "25", "length": "15", "friction": { "minimum": 0.08, "maximum": 0.14 } },
                  "outer": {
                    "part": "deep groove bearing 25 × 52 × 15", "material": "100Cr6", "outsideDiameter": "31",
                    "bearing": { "class": "normal", "clearanceGroup": "C4" }, "roughnessRz": "1"
                  },
                  "inner": {
                    "part": "HQ-331", "material": "1.4057", "insideDiameter": "0",
                    "requirement": "Ø25 m5", "roughnessRz": "2.5"
                  },
                  "temperature": { "assembly": 20, "minimum": -10, "maximum": 60 }
                }
                """;
    }

    /** Bronze bushes for the port pawl carrier, to be paired by size. */
    private static String bush() {
        return """
                {
                  "schema": "firstoff-assembly-1",
                  "name": "bush in the pawl carrier, port",
                  "part": "HQ-320-P",
                  "hand": "port",
                  "joint": {
                    "nominal": "25", "length": "20", "friction": { "minimum": 0.07, "maximum": 0.15 },
                    "requiredTorque": "12", "wantedInterference": "0.036"
                  },
                  "outer": {
                    "part": "HQ-320-P", "material": "EN AW-6082 T6", "outsideDiameter": "48",
                    "requirement": "Ø25 H7", "roughnessRz": "4"
                  },
                  "inner": {
                    "part": "HQ-322", "material": "CuSn12", "insideDiameter": "20",
                    "requirement": "Ø25 s6", "roughnessRz": "4"
                  },
                  "temperature": { "assembly": 20, "minimum": -10, "maximum": 50 }
                }
                """;
    }

    private static String bores() {
        SplittableRandom random = new SplittableRandom(BUSH_BORES);
        Machining boring = Machining.of("25.010", "0.003", "0.0005");
        StringBuilder text = new StringBuilder("part,hand,characteristic,value\n");
        for (int i = 1; i <= PIECES; i++) {
            text.append(String.format(Locale.ROOT, "P%02d,port,7,%s%n", i, boring.next(random, BigDecimal.ZERO)));
        }
        return text.toString().replace("\r\n", "\n");
    }

    /** Two more than there are bores; one was turned too small. */
    private static String bushes() {
        SplittableRandom random = new SplittableRandom(BUSHES);
        Machining turning = Machining.of("25.0425", "0.0022", "0.0005");
        StringBuilder text = new StringBuilder("part,value,characteristic\n");
        for (int i = 1; i <= PIECES + 2; i++) {
            String value = i == 17 ? "25.0120" : turning.next(random, BigDecimal.ZERO);
            text.append(String.format(Locale.ROOT, "K%02d,%s,1%n", i, value));
        }
        return text.toString().replace("\r\n", "\n");
    }

    private static String stack() {
        return """
                {
                  "schema": "firstoff-stack-1",
                  "name": "end play of the winch drum",
                  "part": "HQ-310-P",
                  "hand": "port",
                  "unit": "mm",
                  "gap": "0.1..0.6",
                  "members": [
                    { "name": "carrier, shoulder to cover", "requirement": "40 +0.25/+0.1", "direction": "+" },
                    { "name": "bearing, width", "requirement": "15 0/-0.12", "direction": "-", "distribution": "uniform" },
                    { "name": "spacer", "requirement": "9.6 ±0.05", "direction": "-",
                      "readings": ["9.612", "9.605", "9.598", "9.621", "9.609", "9.604", "9.617", "9.601", "9.596", "9.611", "9.607", "9.615"] },
                    { "name": "bearing, width, far side", "requirement": "15 0/-0.12", "direction": "-", "distribution": "uniform" },
                    { "name": "circlip, as a wedge of 1 in 2", "requirement": "0.6 ±0.06", "direction": "-", "sensitivity": "0.5" }
                  ]
                }
                """;
    }
}
