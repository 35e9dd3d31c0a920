package io.github.firstoff.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Coverage factors t<sub>p</sub>(ν) of Student's distribution for the probabilities of JCGM 100:2008, Table G.2.
 *
 * <p>Kept as decimals beside this class, for every whole ν up to 200 and a few beyond, to nine places, so that an expanded uncertainty
 * needs no binary arithmetic. Degrees of freedom between two rows take the row below, whose factor is greater.
 */
public final class StudentFactors {
    private static final StudentFactors LOADED = load();

    private final List<BigDecimal> probabilities;
    private final TreeMap<BigInteger, List<BigDecimal>> rows;
    private final List<BigDecimal> infinite;

    private StudentFactors(
            List<BigDecimal> probabilities, Map<BigInteger, List<BigDecimal>> rows, List<BigDecimal> infinite) {
        this.probabilities = List.copyOf(probabilities);
        this.rows = new TreeMap<>(rows);
        this.infinite = List.copyOf(infinite);
    }

    /** The probabilities of which there are factors, from least to greatest: 0.6827, 0.90, 0.95, 0.9545, 0.99, 0.9973. */
    public static List<BigDecimal> probabilities() {
        return LOADED.probabilities;
    }

    /** Whether there are factors for the probability, whatever its trailing zeros. */
    public static boolean has(BigDecimal probability) {
        return LOADED.columnOf(probability) >= 0;
    }

    static String inWords() {
        return probabilities().stream().map(BigDecimal::toPlainString).collect(Collectors.joining(", "));
    }

    /**
     * The factor for whole degrees of freedom.
     *
     * @param degreesOfFreedom at least 1; empty for infinite
     * @param probability one of {@link #probabilities()}
     * @throws IllegalArgumentException if there is no factor
     */
    public static BigDecimal factor(Optional<BigInteger> degreesOfFreedom, BigDecimal probability) {
        int column = LOADED.columnOf(probability);
        if (column < 0) {
            throw new IllegalArgumentException(
                    "a coverage probability is one of " + inWords() + ", not " + probability.toPlainString());
        }
        if (degreesOfFreedom.isEmpty()) {
            return LOADED.infinite.get(column);
        }
        Map.Entry<BigInteger, List<BigDecimal>> row = LOADED.rows.floorEntry(degreesOfFreedom.get());
        if (row == null) {
            throw new IllegalArgumentException("degrees of freedom are at least 1, not " + degreesOfFreedom.get());
        }
        return row.getValue().get(column);
    }

    private int columnOf(BigDecimal probability) {
        for (int i = 0; i < probabilities.size(); i++) {
            if (probabilities.get(i).compareTo(probability) == 0) {
                return i;
            }
        }
        return -1;
    }

    private static StudentFactors load() {
        SourcedTable table = SourcedTable.of(StudentFactors.class, "jcgm-100/2008/student-t.csv", ',');
        Map<BigInteger, List<BigDecimal>> rows = new TreeMap<>();
        List<BigDecimal> infinite = new ArrayList<>();
        for (List<String> cells : table.rows()) {
            if (cells.get(0).equals("infinite")) {
                infinite.addAll(behindTheFirst(cells));
            } else {
                rows.put(new BigInteger(cells.get(0)), behindTheFirst(cells));
            }
        }
        if (infinite.isEmpty() || !rows.containsKey(BigInteger.ONE)) {
            throw table.damaged("it lacks its first or last row");
        }
        return new StudentFactors(behindTheFirst(table.headings()), rows, infinite);
    }

    private static List<BigDecimal> behindTheFirst(List<String> cells) {
        return cells.stream().skip(1).map(BigDecimal::new).toList();
    }
}
