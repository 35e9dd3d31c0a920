package io.github.firstoff.plan;

import io.github.firstoff.quantity.SourcedTable;
import io.github.firstoff.quantity.SourcedTable.Marked;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The linear expansion of common materials by name or number, for the correction to 20 °C where a plan states none itself.
 *
 * <p>The table lies beside this class with its sources. Names are compared without spaces, hyphens and dots and whatever their letter case;
 * a leading EN and what follows a grade of temper or treatment (T6, T651, H111, +QT, +N) does not matter. A text with several names, as in
 * {@code 1.4301 (X5CrNi18-10)}, is found if all that are known mean the same material. What is not known for certain is not found: no name is
 * completed or corrected.
 */
public final class Materials {
    private static final int NAME = 0;
    private static final int EXPANSION = 2;
    private static final int HALF_WIDTH = 3;
    private static final int MILLIONTHS = 6;

    /** What may follow a grade: tempers of aluminium (EN 515), treatments and deliveries of steel (EN 10027-1). */
    private static final Pattern CONDITION =
            Pattern.compile("(T\\d{1,5}|H\\d{1,3}|O|F|QT|N|NT|A|AT|C|AR|SH|U|S|R\\d{3}|HARDENED|ANNEALED|TEMPERED)*");

    private static final Pattern DIVIDED = Pattern.compile("[(),;/]");
    private static final MaterialTable<Material> TABLE =
            MaterialTable.of(SourcedTable.of(Materials.class, "linear-expansion.csv", ';'), Materials::material);

    private Materials() {}

    /** Every material of the table, in its order. */
    public static List<Material> all() {
        return TABLE.all();
    }

    /** The material that a drawing or a plan means by the text; empty if that is not certain. */
    public static Optional<Material> find(String text) {
        Optional<Material> whole = named(text);
        if (whole.isPresent()) {
            return whole;
        }
        Set<Material> found = new LinkedHashSet<>();
        for (String piece : DIVIDED.split(text, -1)) {
            named(piece).ifPresent(found::add);
        }
        return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
    }

    /** By the longest name that the text begins with, so that CuSn12 is not taken for a CuSn1 in some condition. */
    private static Optional<Material> named(String text) {
        return TABLE.named(text).or(() -> TABLE.begunBy(text, CONDITION));
    }

    private static Material material(List<String> cells) {
        String name = cells.get(NAME);
        BigDecimal expansion = Marked.of(cells.get(EXPANSION)).value();
        BigDecimal halfWidth = new BigDecimal(cells.get(HALF_WIDTH));
        return new Material(
                name,
                expansion.movePointLeft(MILLIONTHS),
                halfWidth.movePointLeft(MILLIONTHS),
                Remark.of(
                        "expansion.typical",
                        "{0}: ({1} ± {2})·10⁻⁶ per kelvin, typical value of data sheets",
                        name,
                        expansion.toPlainString(),
                        halfWidth.toPlainString()));
    }
}
