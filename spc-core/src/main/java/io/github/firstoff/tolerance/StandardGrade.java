package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/** The standard tolerance grades of ISO 286-1:2010, from the finest to the widest. */
public enum StandardGrade {
    /** IT01. */
    IT01("01"),
    /** IT0. */
    IT0("0"),
    /** IT1. */
    IT1("1"),
    /** IT2. */
    IT2("2"),
    /** IT3. */
    IT3("3"),
    /** IT4. */
    IT4("4"),
    /** IT5. */
    IT5("5"),
    /** IT6. */
    IT6("6"),
    /** IT7. */
    IT7("7"),
    /** IT8. */
    IT8("8"),
    /** IT9. */
    IT9("9"),
    /** IT10. */
    IT10("10"),
    /** IT11. */
    IT11("11"),
    /** IT12. */
    IT12("12"),
    /** IT13. */
    IT13("13"),
    /** IT14. */
    IT14("14"),
    /** IT15. */
    IT15("15"),
    /** IT16. */
    IT16("16"),
    /** IT17. */
    IT17("17"),
    /** IT18. */
    IT18("18");

    private final String number;

    StandardGrade(String number) {
        this.number = number;
    }

    /** The digits behind the letters, for example {@code 7} or {@code 01}. */
    public String number() {
        return number;
    }

    /** The grade that these digits mean; empty if there is none. */
    public static Optional<StandardGrade> of(String digits) {
        return Arrays.stream(values())
                .filter(grade -> grade.number.equals(digits))
                .findFirst();
    }

    /**
     * The standard tolerance at a nominal size, both in millimetres (ISO 286-1:2010, Table 1).
     *
     * @throws RequirementFault if the standard has no value there
     */
    public BigDecimal toleranceAt(BigDecimal nominal) {
        return Iso286.standardTolerance(nominal, this);
    }

    /** Whether this grade is finer than the other, or the same. */
    public boolean isUpTo(StandardGrade other) {
        return compareTo(other) <= 0;
    }
}
