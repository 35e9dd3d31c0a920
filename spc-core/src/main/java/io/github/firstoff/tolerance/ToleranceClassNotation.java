package io.github.firstoff.tolerance;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Reads the tolerance class behind a size: {@code P7}, {@code g6}, or the pair {@code H7/p6}. */
final class ToleranceClassNotation {
    private static final Set<String> LEFT_OUT = Set.of("I", "L", "O", "Q", "W");

    private final Scanner in;

    ToleranceClassNotation(Scanner in) {
        this.in = in;
    }

    Requirement read(Dimension dimension) {
        if (dimension.isAngle() || dimension.chamferAngle().isPresent()) {
            throw in.fault("an angle has no tolerance class of ISO 286", dimension.text() + " ±0.5°");
        }
        if (dimension.nominal().value().signum() <= 0) {
            throw in.fault(0, "ISO 286 begins above 0", "52 H7");
        }
        if (dimension.isRadiusOrChamfer()) {
            throw in.fault(
                    "ISO 286 is for features of size (cylinders and pairs of parallel faces), not for "
                            + dimension.prefix().symbol().sign(),
                    dimension.text() + " ±0.1");
        }
        int at = in.position();
        ToleranceClass first = one(dimension);
        if (!in.accept("/")) {
            return new ClassedSize(dimension, first);
        }
        in.skipSpace();
        ToleranceClass second = one(dimension);
        if (!first.isHole() && second.isHole()) {
            throw in.fault(
                    at, "a fit names the hole first", dimension.text() + " " + second.text() + "/" + first.text());
        }
        if (first.isHole() == second.isHole()) {
            throw in.fault(
                    at,
                    "a fit is a hole and a shaft; " + first + " and " + second + " are both "
                            + (first.isHole() ? "holes" : "shafts"),
                    dimension.text() + " H7/p6");
        }
        return new FitPair(dimension, first, second);
    }

    private ToleranceClass one(Dimension dimension) {
        int at = in.position();
        String letters = in.letters();
        String digits = in.digits();
        String written = letters + digits;
        String size = dimension.text() + " ";
        if (letters.isEmpty()) {
            throw in.fault(at, "a tolerance class begins with a letter", size + "H7");
        }
        String capital = letters.toUpperCase(Locale.ROOT);
        if (capital.equals("IT")) {
            throw in.fault(
                    at,
                    written + " is the width of a zone, not where it lies",
                    size + "H" + digits + " or " + size + "js" + digits);
        }
        if (LEFT_OUT.contains(capital)) {
            throw in.fault(
                    at,
                    "ISO 286 has no fundamental deviation " + letters + "; the letters I, L, O, Q and W are left out",
                    size + (letters.equals(capital) ? "P" : "p") + digits);
        }
        if (ToleranceClass.isIdentifierInMixedCase(letters)) {
            throw in.fault(
                    at,
                    letters + " mixes capital and small letters; a hole has capitals, a shaft small ones",
                    size + capital + digits + " or " + size + letters.toLowerCase(Locale.ROOT) + digits);
        }
        if (!ToleranceClass.isIdentifier(letters)) {
            throw in.fault(
                    at,
                    "after " + Scanner.quoted(dimension.text()) + ", " + Scanner.quoted(written) + " is no tolerance",
                    size + "H7, " + size + "±0.05 or " + size + "max");
        }
        if (digits.isEmpty()) {
            throw in.fault("the grade is missing behind " + letters, size + letters + "7");
        }
        Optional<StandardGrade> grade = StandardGrade.of(digits);
        if (grade.isEmpty()) {
            throw in.fault(
                    at + letters.length(),
                    "ISO 286 has no grade " + digits + "; the grades are 01, 0 and 1 to 18",
                    size + letters + "7");
        }
        return new ToleranceClass(letters, grade.get());
    }
}
