package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads what stands behind a geometric characteristic: shape, tolerance, modifiers and datums. */
final class FrameNotation {
    private static final Set<GeometricCharacteristic> FORM = EnumSet.of(
            GeometricCharacteristic.STRAIGHTNESS,
            GeometricCharacteristic.FLATNESS,
            GeometricCharacteristic.ROUNDNESS,
            GeometricCharacteristic.CYLINDRICITY);
    private static final Set<GeometricCharacteristic> PROFILE =
            EnumSet.of(GeometricCharacteristic.LINE_PROFILE, GeometricCharacteristic.SURFACE_PROFILE);
    private static final Set<GeometricCharacteristic> WITHOUT_DIAMETER = EnumSet.of(
            GeometricCharacteristic.FLATNESS,
            GeometricCharacteristic.ROUNDNESS,
            GeometricCharacteristic.CYLINDRICITY,
            GeometricCharacteristic.LINE_PROFILE,
            GeometricCharacteristic.SURFACE_PROFILE,
            GeometricCharacteristic.SYMMETRY,
            GeometricCharacteristic.RUN_OUT,
            GeometricCharacteristic.TOTAL_RUN_OUT);
    /** Those that limit a derived feature of a feature of size (ISO 2692:2021, clause 4). */
    private static final Set<GeometricCharacteristic> WITH_MATERIAL = EnumSet.of(
            GeometricCharacteristic.STRAIGHTNESS,
            GeometricCharacteristic.FLATNESS,
            GeometricCharacteristic.PARALLELISM,
            GeometricCharacteristic.PERPENDICULARITY,
            GeometricCharacteristic.ANGULARITY,
            GeometricCharacteristic.POSITION,
            GeometricCharacteristic.COAXIALITY,
            GeometricCharacteristic.SYMMETRY);

    private static final Set<GeometricCharacteristic> NEEDS_DATUM = EnumSet.of(
            GeometricCharacteristic.PARALLELISM,
            GeometricCharacteristic.PERPENDICULARITY,
            GeometricCharacteristic.ANGULARITY,
            GeometricCharacteristic.COAXIALITY,
            GeometricCharacteristic.SYMMETRY,
            GeometricCharacteristic.RUN_OUT,
            GeometricCharacteristic.TOTAL_RUN_OUT);

    private final Scanner in;
    private final GeometricCharacteristic characteristic;
    private GeometricTolerance.ZoneShape shape = GeometricTolerance.ZoneShape.WIDTH;
    private Optional<MaterialModifier> material = Optional.empty();
    private Optional<UnequalDisposition> unequal = Optional.empty();
    private final List<String> notes = new ArrayList<>();
    private final List<DatumReference> datums = new ArrayList<>();

    FrameNotation(Scanner in, GeometricCharacteristic characteristic) {
        this.in = in;
        this.characteristic = characteristic;
    }

    GeometricTolerance read() {
        bars();
        readShape();
        int at = skipped();
        if (in.peek() == '-' || in.peek() == '+' || in.peek() == '±') {
            throw in.fault(
                    "a geometric tolerance is the width of a zone and has no sign", characteristic.word() + " 0.02");
        }
        BigDecimal tolerance = in.number();
        in.acceptUnit();
        readExtent();
        in.acceptWord("max");
        readModifiers(tolerance);
        readDatums();
        check(at, tolerance);
        return new GeometricTolerance(characteristic, shape, tolerance, material, unequal, notes, datums, in.unit());
    }

    private int skipped() {
        in.skipSpace();
        return in.position();
    }

    private void bars() {
        while (in.accept("|")) {
            // a bar between two cells
        }
    }

    private void readShape() {
        int at = skipped();
        if (in.accept("SØ") || in.acceptWord("sphere dia")) {
            shape = GeometricTolerance.ZoneShape.SPHERE;
        } else if (in.accept("Ø") || in.acceptWord("dia.") || in.acceptWord("dia") || in.acceptWord("diameter")) {
            shape = GeometricTolerance.ZoneShape.DIAMETER;
        }
        if (shape != GeometricTolerance.ZoneShape.WIDTH && WITHOUT_DIAMETER.contains(characteristic)) {
            throw in.fault(
                    at,
                    "the zone of " + characteristic.word() + " has a width, never a diameter",
                    "without " + shape.sign());
        }
        if (shape == GeometricTolerance.ZoneShape.SPHERE && characteristic != GeometricCharacteristic.POSITION) {
            throw in.fault(at, "only a position has a spherical zone", "position SØ0.1 A B C");
        }
    }

    private Optional<String> circledLetter() {
        int start = skipped();
        for (Map.Entry<String, String> letter : GeometricNotation.CIRCLED.entrySet()) {
            if (in.accept(letter.getValue())) {
                return Optional.of(letter.getKey());
            }
        }
        if (in.accept("(")) {
            in.skipSpace();
            String letters = in.letters().toUpperCase(Locale.ROOT);
            if (in.accept(")") && GeometricNotation.CIRCLED.containsKey(letters)) {
                return Optional.of(letters);
            }
            in.back(start);
            throw in.fault(start, Scanner.quoted(in.nextWord()) + " is no modifier", "(M), (L), (F), (T), (P), (U)");
        }
        return Optional.empty();
    }

    /** The tolerance over any restricted length or area (ISO 1101:2017, 8.2.2.2): {@code 0.1/100}, {@code 0.1/100x50}. */
    private void readExtent() {
        if (!in.accept("/")) {
            return;
        }
        StringBuilder extent = new StringBuilder("/").append(in.number().toPlainString());
        if (in.accept("x") || in.accept("X")) {
            extent.append('x').append(in.number().toPlainString());
        }
        notes.add(extent.toString());
    }

    private void readModifiers(BigDecimal tolerance) {
        while (true) {
            in.acceptWord("RFS");
            int at = skipped();
            if (in.acceptWord("MMC") || in.acceptWord("MMR")) {
                setMaterial(at, MaterialModifier.MAXIMUM);
            } else if (in.acceptWord("LMC") || in.acceptWord("LMR")) {
                setMaterial(at, MaterialModifier.LEAST);
            } else if (in.acceptWord("CZ")) {
                notes.add("CZ");
            } else if (in.acceptWord("SZ")) {
                notes.add("SZ");
            } else if (in.isNext("UZ") || in.isNext("uz")) {
                in.accept(in.isNext("UZ") ? "UZ" : "uz");
                readOffset(at);
            } else {
                Optional<String> letter = circledLetter();
                if (letter.isEmpty()) {
                    return;
                }
                modify(at, letter.get(), tolerance);
            }
        }
    }

    private void modify(int at, String letter, BigDecimal tolerance) {
        switch (letter) {
            case "M" -> setMaterial(at, MaterialModifier.MAXIMUM);
            case "L" -> setMaterial(at, MaterialModifier.LEAST);
            case "S" -> {
                // regardless of feature size: what holds without any modifier (ASME Y14.5-2018, 6.3.1)
            }
            case "F", "T" -> notes.add("(" + letter + ")");
            case "P" -> notes.add(in.startsNumber() ? "(P) " + in.number().toPlainString() : "(P)");
            case "U" -> readOutward(at, tolerance);
            case "R" ->
                throw in.fault(
                        at,
                        "reciprocity (R) lets the size limits move with the measured deviation; such parts are not judged here",
                        "without (R)");
            default -> throw in.fault(at, "(" + letter + ") has no meaning in a geometric tolerance", "(M) or (L)");
        }
    }

    private void setMaterial(int at, MaterialModifier modifier) {
        if (material.isPresent()) {
            throw in.fault(
                    at,
                    "one tolerance has one material modifier",
                    material.get().text());
        }
        if (!WITH_MATERIAL.contains(characteristic)) {
            throw in.fault(
                    at,
                    characteristic.word() + " does not depend on the size of a feature, so " + modifier.text()
                            + " has no meaning",
                    "without " + modifier.text());
        }
        material = Optional.of(modifier);
    }

    private void requireProfile(int at) {
        if (!PROFILE.contains(characteristic)) {
            throw in.fault(at, "only a profile zone can lie unequally", "surface profile 0.2 (U) 0.05 A");
        }
        if (unequal.isPresent()) {
            throw in.fault(at, "the zone's disposition is stated twice", "");
        }
    }

    private void readOutward(int at, BigDecimal tolerance) {
        requireProfile(at);
        int start = skipped();
        BigDecimal outward = in.number();
        if (outward.compareTo(tolerance) > 0) {
            throw in.fault(
                    start,
                    "of a zone " + tolerance.toPlainString() + " wide no more than that can lie outside the material",
                    "0 to " + tolerance.toPlainString());
        }
        unequal = Optional.of(new UnequalDisposition(UnequalDisposition.Style.ASME_U, outward));
    }

    private void readOffset(int at) {
        requireProfile(at);
        boolean outwards = in.accept("+");
        if (!outwards && !in.accept("-")) {
            throw in.fault("the offset behind UZ has a sign: + out of the material, - into it", "0.2 UZ-0.05");
        }
        BigDecimal offset = in.number();
        unequal = Optional.of(
                new UnequalDisposition(UnequalDisposition.Style.ISO_UZ, outwards ? offset : offset.negate()));
    }

    private void readDatums() {
        // the last character read: a space or bar, or else something stands directly against the tolerance
        boolean separated = in.peek(-1) == ' ' || in.peek(-1) == '|' || in.peek() == '|';
        bars();
        Set<String> seen = new HashSet<>();
        while (!in.atEnd()) {
            int at = in.position();
            if (datums.isEmpty() && !separated && Character.isLetter(in.peek())) {
                throw in.fault(
                        "a letter stands directly behind the tolerance: a datum, or a modifier?",
                        "0.1 (M) A for maximum material, 0.1 M A for a datum M");
            }
            String letters = datumLetter(at);
            while (in.accept("-")) {
                letters += "-" + datumLetter(in.position());
            }
            for (String letter : letters.split("-", -1)) {
                if (!seen.add(letter)) {
                    throw in.fault(at, "the datum " + letter + " is named twice", "");
                }
            }
            datums.add(new DatumReference(letters, datumModifier()));
            if (datums.size() > 3) {
                throw in.fault(at, "a tolerance refers to at most three datums", "A B C");
            }
            bars();
        }
    }

    private String datumLetter(int at) {
        in.skipSpace();
        String letters = in.letters();
        boolean doubled = letters.length() == 2 && letters.charAt(0) == letters.charAt(1);
        boolean capital = letters.chars().allMatch(each -> each >= 'A' && each <= 'Z');
        if (letters.isEmpty() || !(letters.length() == 1 || doubled) || !capital) {
            in.back(at);
            in.skipSpace();
            String found = in.nextWord();
            boolean small = found.length() == 1 && Character.isLowerCase(found.charAt(0));
            throw in.fault(
                    "a datum is one capital letter, not " + Scanner.quoted(found),
                    small ? found.toUpperCase(Locale.ROOT) : "A B C, or A-B for a common datum");
        }
        if (Scanner.isDigit(in.peek())) {
            throw in.fault("datum targets such as A1 stand at the feature, not in the tolerance", letters);
        }
        return letters;
    }

    private Optional<MaterialModifier> datumModifier() {
        int at = skipped();
        Optional<String> letter = circledLetter();
        if (letter.isEmpty() || letter.get().equals("S")) {
            return Optional.empty();
        }
        return switch (letter.get()) {
            case "M" -> Optional.of(MaterialModifier.MAXIMUM);
            case "L" -> Optional.of(MaterialModifier.LEAST);
            default -> throw in.fault(at, "(" + letter.get() + ") has no meaning on a datum", "(M) or (L)");
        };
    }

    private void check(int at, BigDecimal tolerance) {
        if (tolerance.signum() == 0 && material.isEmpty()) {
            throw in.fault(at, "a zone of width 0 lets nothing pass; only (M) or (L) can widen it", "0 (M)");
        }
        if (!datums.isEmpty() && FORM.contains(characteristic)) {
            throw in.fault(
                    original().lastIndexOf(datums.get(0).letters()),
                    characteristic.word() + " is a matter of the feature alone and has no datum",
                    characteristic.word() + " " + tolerance.toPlainString());
        }
        if (datums.isEmpty() && NEEDS_DATUM.contains(characteristic)) {
            throw in.fault(
                    original().length(),
                    characteristic.word() + " is always towards a datum, and none is named",
                    original().strip() + " A");
        }
    }

    private String original() {
        return in.original();
    }
}
