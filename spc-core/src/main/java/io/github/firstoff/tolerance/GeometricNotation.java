package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads {@code position Ø0.1 (M) A B C} and its like. Bars between the cells are taken as spaces. */
final class GeometricNotation {
    private static final Map<String, GeometricCharacteristic> WORDS = words();
    static final Map<String, String> CIRCLED =
            Map.of("M", "Ⓜ", "L", "Ⓛ", "S", "Ⓢ", "P", "Ⓟ", "F", "Ⓕ", "T", "Ⓣ", "U", "Ⓤ", "R", "Ⓡ", "E", "Ⓔ", "I", "Ⓘ");

    private GeometricNotation() {}

    private static Map<String, GeometricCharacteristic> words() {
        Map<String, GeometricCharacteristic> words = new LinkedHashMap<>();
        for (GeometricCharacteristic each : GeometricCharacteristic.values()) {
            words.put(each.word(), each);
            words.put(each.symbol(), each);
        }
        Map<String, GeometricCharacteristic> others = Map.ofEntries(
                Map.entry("circularity", GeometricCharacteristic.ROUNDNESS),
                Map.entry("concentricity", GeometricCharacteristic.COAXIALITY),
                Map.entry("squareness", GeometricCharacteristic.PERPENDICULARITY),
                Map.entry("true position", GeometricCharacteristic.POSITION),
                Map.entry("runout", GeometricCharacteristic.RUN_OUT),
                Map.entry("run out", GeometricCharacteristic.RUN_OUT),
                Map.entry("circular run-out", GeometricCharacteristic.RUN_OUT),
                Map.entry("circular runout", GeometricCharacteristic.RUN_OUT),
                Map.entry("circular run out", GeometricCharacteristic.RUN_OUT),
                Map.entry("total runout", GeometricCharacteristic.TOTAL_RUN_OUT),
                Map.entry("total run out", GeometricCharacteristic.TOTAL_RUN_OUT),
                Map.entry("profile of a line", GeometricCharacteristic.LINE_PROFILE),
                Map.entry("profile of a surface", GeometricCharacteristic.SURFACE_PROFILE),
                Map.entry("profile of line", GeometricCharacteristic.LINE_PROFILE),
                Map.entry("profile of surface", GeometricCharacteristic.SURFACE_PROFILE),
                Map.entry("profile line", GeometricCharacteristic.LINE_PROFILE),
                Map.entry("profile surface", GeometricCharacteristic.SURFACE_PROFILE),
                Map.entry("profile any line", GeometricCharacteristic.LINE_PROFILE),
                Map.entry("profile any surface", GeometricCharacteristic.SURFACE_PROFILE),
                Map.entry("—", GeometricCharacteristic.STRAIGHTNESS),
                Map.entry("▱", GeometricCharacteristic.FLATNESS),
                Map.entry("◯", GeometricCharacteristic.ROUNDNESS),
                Map.entry("⫽", GeometricCharacteristic.PARALLELISM),
                Map.entry("//", GeometricCharacteristic.PARALLELISM),
                Map.entry("⊥", GeometricCharacteristic.PERPENDICULARITY),
                Map.entry("∡", GeometricCharacteristic.ANGULARITY),
                Map.entry("⊕", GeometricCharacteristic.POSITION),
                Map.entry("⌾", GeometricCharacteristic.COAXIALITY),
                Map.entry("⊚", GeometricCharacteristic.COAXIALITY),
                Map.entry("⇗", GeometricCharacteristic.TOTAL_RUN_OUT));
        words.putAll(others);
        return words;
    }

    static String circled(String note) {
        String set = note;
        for (Map.Entry<String, String> letter : CIRCLED.entrySet()) {
            set = set.replace("(" + letter.getKey() + ")", letter.getValue());
        }
        return set;
    }

    /** Steps over a geometric characteristic, if one stands here. */
    static Optional<GeometricCharacteristic> characteristic(Scanner in) {
        int start = in.position();
        while (in.accept("|")) {
            // a bar opens the frame
        }
        Optional<String> word = WORDS.keySet().stream()
                .sorted(Comparator.comparingInt(String::length).reversed())
                .filter(each -> Character.isLetter(each.charAt(0)) ? in.acceptWord(each) : in.accept(each))
                .findFirst();
        if (word.isPresent()) {
            return Optional.of(WORDS.get(word.get()));
        }
        in.skipSpace();
        int at = in.position();
        String written = in.letters();
        if (written.length() >= 5) {
            Optional<String> meant = Words.nearest(written.toLowerCase(Locale.ROOT), WORDS.keySet());
            if (meant.isPresent()) {
                throw in.fault(
                        at,
                        Scanner.quoted(written) + " is no geometric characteristic; " + meant.get() + " is",
                        meant.get() + in.rest());
            }
            if (written.equalsIgnoreCase("profile")) {
                throw in.fault(
                        in.position(),
                        "a profile is that of a line or of a surface",
                        "surface profile" + in.rest() + " or line profile" + in.rest());
            }
        }
        in.back(start);
        return Optional.empty();
    }

    static Requirement read(Scanner in, GeometricCharacteristic characteristic) {
        if (in.acceptWord("general")) {
            return general(in, characteristic);
        }
        return new FrameNotation(in, characteristic).read();
    }

    private static Requirement general(Scanner in, GeometricCharacteristic characteristic) {
        String example = characteristic.word() + " general";
        if (!GeneralGeometric.isTabled(characteristic)) {
            throw in.fault(
                    "ISO 2768-2 has no table of " + characteristic.word(),
                    characteristic.word() + " with its tolerance");
        }
        Optional<BigDecimal> length = Optional.empty();
        if (GeneralGeometric.needsLength(characteristic)) {
            example += " (length 120)";
            if (!in.accept("(") || !in.acceptWord("length")) {
                throw in.fault("the table is entered with a length, which is not stated", example);
            }
            length = Optional.of(in.number());
            in.acceptUnit();
            if (!in.accept(")")) {
                throw in.fault("the closing ) is missing", example);
            }
            if (length.get().signum() == 0) {
                throw in.fault(0, "a length of 0 has no tolerance", example);
            }
        }
        GeneralGeometric read = new GeneralGeometric(characteristic, length, in.unit());
        in.expectEnd(before -> read.text());
        return read;
    }
}
