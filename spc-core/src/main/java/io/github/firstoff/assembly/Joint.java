package io.github.firstoff.assembly;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Two parts pressed into one another, as an assembly file states them. Lengths in millimetres, roughness in micrometres, temperatures in
 * degrees Celsius; sizes hold at 20 °C (ISO 1).
 *
 * @param name what the assembly is called
 * @param part its part number
 * @param nominal the joint diameter
 * @param length the length of the joint
 * @param friction its coefficient of friction
 * @param smoothing what smoothing takes of the interference
 * @param criterion by which equivalent stress the parts are held against their yield
 * @param demand what the joint must do
 * @param outer the part with the hole
 * @param inner the part that goes in
 * @param temperature of assembly and service
 * @param gap the clearance wanted when parts are joined warm or cold, on the diameter
 * @param pairs how measured pieces belong together, if they do
 */
public record Joint(
        Optional<String> name,
        Optional<String> part,
        BigDecimal nominal,
        BigDecimal length,
        Friction friction,
        Smoothing smoothing,
        Criterion criterion,
        Demand demand,
        Member outer,
        Member inner,
        Temperatures temperature,
        BigDecimal gap,
        Pairing pairs) {

    /**
     * Bounds of the coefficient of friction: the upper one decides what pressing takes, the lower one what holds.
     *
     * @param least the lower bound
     * @param greatest the upper bound
     */
    public record Friction(BigDecimal least, BigDecimal greatest) {}

    /**
     * What is asked of the joint.
     *
     * @param force the axial force that it must hold, in N
     * @param torque the torque that it must hold, in N·m
     * @param wanted the interference wanted on the diameter, in millimetres, before smoothing; empty for the middle of what is allowed
     * @param leastClearance what must be left of the bearing's clearance, in micrometres
     * @param share the share of pairs that must do all of it; empty for every pair within limits, or 0.999 of measured ones
     */
    public record Demand(
            Optional<BigDecimal> force,
            Optional<BigDecimal> torque,
            Optional<BigDecimal> wanted,
            BigDecimal leastClearance,
            Optional<BigDecimal> share) {}

    /**
     * One of the two parts.
     *
     * @param part its part number
     * @param hand the hand it is made for
     * @param material what it is made of
     * @param farDiameter the diameter away from the joint: the outside of the outer part, the bore of the inner one (0 if solid); of a
     *     bearing ring, the raceway
     * @param limits the limits of its size at the joint, where it is known by them
     * @param stated what these limits are, as printed
     * @param bearing the bearing whose ring it is
     * @param roughness Rz of its surface
     * @param characteristic the number under which readings give its size
     */
    public record Member(
            Optional<String> part,
            Optional<Hand> hand,
            ElasticMaterial material,
            BigDecimal farDiameter,
            Optional<Limits> limits,
            Remark stated,
            Optional<Bearing> bearing,
            BigDecimal roughness,
            Optional<String> characteristic) {}

    /**
     * A rolling bearing.
     *
     * @param toleranceClass of ISO 492
     * @param bore the bore of the bearing, where it is known
     * @param group the clearance group of ISO 5753-1
     * @param clearance the radial internal clearance before mounting, in micrometres; empty if group or bore are not known
     * @param ringDifference by how many kelvins the inner ring is warmer than the outer one in service
     * @param fromMemory whether any value used was written down from memory
     */
    public record Bearing(
            String toleranceClass,
            Optional<BigDecimal> bore,
            Optional<String> group,
            Optional<Limits> clearance,
            BigDecimal ringDifference,
            boolean fromMemory) {}

    /**
     * Temperatures of both parts together.
     *
     * @param assembly at which they are pressed
     * @param minimum the coldest in service
     * @param maximum the hottest in service
     */
    public record Temperatures(BigDecimal assembly, BigDecimal minimum, BigDecimal maximum) {}

    /**
     * How measured pieces belong together.
     *
     * @param byPart whether a bore and a ring of the same name are a pair
     * @param listed pairs by name: bore, ring
     */
    public record Pairing(boolean byPart, List<Couple> listed) {
        /** Pieces are not paired yet. */
        public static final Pairing NONE = new Pairing(false, List.of());

        /** Copies the list. */
        public Pairing {
            listed = List.copyOf(listed);
        }

        /** Whether pairs are known. */
        public boolean isKnown() {
            return byPart || !listed.isEmpty();
        }
    }

    /**
     * A bore and a ring that are, or should be, joined.
     *
     * @param outer the name of the piece with the bore
     * @param inner the name of the piece that goes in
     */
    public record Couple(String outer, String inner) {}

    /** The ring of a bearing in this joint, whichever part it is. */
    public Optional<Bearing> bearing() {
        return inner.bearing().or(outer::bearing);
    }

    /** The hand of the assembly: that of either part. */
    public Optional<Hand> hand() {
        return outer.hand().or(inner::hand);
    }

    /** What smoothing takes of the interference, in millimetres. */
    public BigDecimal smoothingLoss() {
        return smoothing.loss(outer.roughness(), inner.roughness());
    }
}
