package io.github.firstoff.stats;

import java.util.function.DoubleSupplier;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The run length of a chain whose state remembers in which of several cells the last of independent values lay and whether values
 * rose or fell, the density of the last value within its cell being carried along.
 *
 * <p>With t from 0 to 1 the probability, within its cell, of a value below the last one, and h(t) the density of a state, a value in
 * another cell of probability p takes the whole mass, h'(t) = p∫h; in the same cell the larger values take h'(t) = p∫₀ᵗh and the smaller
 * h'(t) = p∫ₜ¹h. Densities are polynomials of t (each stay in a cell adds a degree), held by their values on 20 Gauss and Legendre nodes and
 * integrated as polynomials, exactly up to degree 19 and to rounding beyond. This is the imbedding of Brook and Evans 1972 with the value
 * itself kept in the state; that runs up and down do not depend on the distribution goes back to Wolfowitz 1944 (Annals of Mathematical
 * Statistics 15).
 */
public final class StepChain {
    private static final int NODES = 20;

    private StepChain() {}

    /**
     * The run length; state 0 is the start, before any value.
     *
     * @param up for each state and cell the state after a larger value in that cell, or {@link RunLength#SIGNAL}
     * @param down the same after a smaller value; for the start the same as {@code up}
     * @param cellOf for each state the cell of the last value; −1 for the start
     * @param probabilities of the cells, in their order; they sum to 1
     */
    public static RunLength runLength(int[][] up, int[][] down, int[] cellOf, double[] probabilities) {
        return RunLength.of(new Carrier(up, down, cellOf, probabilities));
    }

    private static final class Carrier implements DoubleSupplier {
        private final int[][] up;
        private final int[][] down;
        private final int[] cellOf;
        private final double[] probabilities;
        private final double[] weight = new double[NODES];
        private final double[][] below = new double[NODES][NODES];
        private double[][] density;
        private double[][] next;
        private boolean started;

        Carrier(int[][] up, int[][] down, int[] cellOf, double[] probabilities) {
            this.up = up;
            this.down = down;
            this.cellOf = cellOf;
            this.probabilities = probabilities;
            density = new double[up.length][NODES];
            next = new double[up.length][NODES];
            GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES);
            for (int j = 0; j < NODES; j++) {
                weight[j] = rule.getWeight(j) / 2;
                double[] atNode = legendre(rule.getPoint(j));
                for (int i = 0; i < NODES; i++) {
                    // the polynomial that is 1 at node j and 0 at the others, in Legendre polynomials, integrated from
                    // −1 to node i
                    double[] p = legendre(rule.getPoint(i));
                    double sum = 1 + rule.getPoint(i);
                    for (int k = 1; k < NODES; k++) {
                        sum += atNode[k] * (p[k + 1] - p[k - 1]);
                    }
                    below[i][j] = weight[j] / 2 * sum;
                }
            }
        }

        private static double[] legendre(double x) {
            double[] p = new double[NODES + 1];
            p[0] = 1;
            p[1] = x;
            for (int k = 1; k < NODES; k++) {
                p[k + 1] = ((2 * k + 1) * x * p[k] - k * p[k - 1]) / (k + 1);
            }
            return p;
        }

        @Override
        public double getAsDouble() {
            for (double[] row : next) {
                java.util.Arrays.fill(row, 0);
            }
            if (started) {
                double[] part = new double[NODES];
                for (int state = 1; state < density.length; state++) {
                    step(state, part);
                }
            } else {
                started = true;
                for (int cell = 0; cell < probabilities.length; cell++) {
                    add(up[0][cell], probabilities[cell]);
                }
            }
            double[][] swap = density;
            density = next;
            next = swap;
            double left = 0;
            for (double[] row : density) {
                left += mass(row);
            }
            return left;
        }

        private double mass(double[] row) {
            double sum = 0;
            for (int j = 0; j < NODES; j++) {
                sum += weight[j] * row[j];
            }
            return sum;
        }

        private void add(int target, double constant) {
            if (target == RunLength.SIGNAL) {
                return;
            }
            double[] row = next[target];
            for (int j = 0; j < NODES; j++) {
                row[j] += constant;
            }
        }

        private void step(int state, double[] part) {
            double[] from = density[state];
            double mass = mass(from);
            if (mass == 0) {
                return;
            }
            int own = cellOf[state];
            for (int cell = 0; cell < probabilities.length; cell++) {
                if (cell != own) {
                    add(cell > own ? up[state][cell] : down[state][cell], mass * probabilities[cell]);
                }
            }
            int larger = up[state][own];
            int smaller = down[state][own];
            if (larger == RunLength.SIGNAL && smaller == RunLength.SIGNAL) {
                return;
            }
            for (int i = 0; i < NODES; i++) {
                double sum = 0;
                for (int j = 0; j < NODES; j++) {
                    sum += below[i][j] * from[j];
                }
                part[i] = probabilities[own] * sum;
            }
            double whole = probabilities[own] * mass;
            for (int i = 0; i < NODES; i++) {
                if (larger != RunLength.SIGNAL) {
                    next[larger][i] += part[i];
                }
                if (smaller != RunLength.SIGNAL) {
                    next[smaller][i] += whole - part[i];
                }
            }
        }
    }
}
