package io.github.firstoff.assembly;

import io.github.firstoff.plan.MaterialTable;
import io.github.firstoff.quantity.SourcedTable;
import io.github.firstoff.quantity.SourcedTable.Marked;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A small table of materials that shops press into one another. It lies beside this class with its sources; every value there is typical
 * and from memory of standards and handbooks, and says so: what a certificate states goes before it.
 *
 * <p>Names are compared as {@link MaterialTable} compares them. A name that is not in the table is not guessed.
 */
public final class ElasticMaterials {
    private static final int NAME = 0;
    private static final int YOUNG = 2;
    private static final int POISSON = 3;
    private static final int EXPANSION = 4;
    private static final int YIELD = 5;
    private static final int NOTE = 6;
    private static final int MILLIONTHS = 6;
    private static final MaterialTable<ElasticMaterial> TABLE =
            MaterialTable.of(SourcedTable.of(ElasticMaterials.class, "elastic.csv", ';'), ElasticMaterials::material);

    private ElasticMaterials() {}

    /** Every material of the table, in its order. */
    public static List<ElasticMaterial> all() {
        return TABLE.all();
    }

    /** The material of that name; empty if the table has none. */
    public static Optional<ElasticMaterial> find(String name) {
        return TABLE.named(name);
    }

    private static ElasticMaterial material(List<String> cells) {
        return new ElasticMaterial(
                cells.get(NAME),
                value(cells.get(YOUNG)),
                value(cells.get(POISSON)),
                value(cells.get(EXPANSION)).movePointLeft(MILLIONTHS),
                value(cells.get(YIELD)),
                "typical values from memory of handbooks (" + cells.get(NOTE) + ")");
    }

    private static BigDecimal value(String marked) {
        return Marked.of(marked).value();
    }
}
