package io.github.firstoff.assembly;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A loop of dimensions that closes in a gap: gap = Σ cᵢ·xᵢ, with cᵢ the direction (+1 or −1) times the sensitivity of a member.
 *
 * @param name what the gap is called
 * @param part the part number of the assembly
 * @param hand its hand
 * @param unit the unit of all dimensions
 * @param gap the limits that the gap must keep; without either if nothing is asked
 * @param printed what is asked of the gap, as the file writes it
 * @param members in the order of the loop
 */
public record DimensionLoop(
        String name,
        Optional<String> part,
        Optional<Hand> hand,
        Unit unit,
        Limits gap,
        Optional<String> printed,
        List<Member> members) {

    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException if there is no member
     */
    public DimensionLoop {
        members = List.copyOf(members);
        if (members.isEmpty()) {
            throw new IllegalArgumentException("a loop has at least one member");
        }
    }

    /**
     * One dimension of the loop.
     *
     * @param name what it is
     * @param coefficient direction times sensitivity, never 0
     * @param printed its requirement, as the file writes it; empty if it is known only by a distribution
     * @param nominal its nominal, where its requirement has one
     * @param limits its limits, both of them, where it has a requirement
     * @param distribution how its sizes are spread
     */
    public record Member(
            String name,
            BigDecimal coefficient,
            String printed,
            Optional<BigDecimal> nominal,
            Optional<Limits> limits,
            Distribution distribution) {}

    /** How sizes of a member are spread. */
    public sealed interface Distribution {
        /** What is known, in words. */
        String word();
    }

    /** Every size within the limits is equally likely. */
    public record Uniform() implements Distribution {
        @Override
        public String word() {
            return "uniform";
        }
    }

    /**
     * Normal about the middle of the limits with so many standard deviations to either limit: 3 is Cp = 1.
     *
     * @param sigmas standard deviations from the middle to a limit, greater than 0
     */
    public record WithinLimits(BigDecimal sigmas) implements Distribution {
        @Override
        public String word() {
            return "normal";
        }
    }

    /**
     * Normal with a mean and a standard deviation that were measured.
     *
     * @param mean in the unit of the loop
     * @param standardDeviation not negative
     */
    public record Stated(BigDecimal mean, BigDecimal standardDeviation) implements Distribution {
        @Override
        public String word() {
            return "stated";
        }
    }

    /**
     * Measured sizes; draws are made from them.
     *
     * @param readings at least two, in the unit of the loop
     */
    public record Measured(List<BigDecimal> readings) implements Distribution {
        /** Copies the list; refuses fewer than two readings. */
        public Measured {
            readings = List.copyOf(readings);
            if (readings.size() < 2) {
                throw new IllegalArgumentException("one reading is no sample");
            }
        }

        @Override
        public String word() {
            return "measured";
        }
    }
}
