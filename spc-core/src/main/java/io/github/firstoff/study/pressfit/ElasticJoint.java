package io.github.firstoff.study.pressfit;

import io.github.firstoff.assembly.Criterion;

/**
 * Two thick-walled elastic cylinders pressed into one another: pressure, stresses and displacements from the interference.
 *
 * <p>With the joint diameter d, the outside diameter D of the outer part, the inside diameter dᵢ of the inner part, Young's moduli E and
 * Poisson's ratios ν, and the effective interference δ on the diameter, the pressure is
 * p = δ/(d(K₀ + Kᵢ)) with K₀ = ((D² + d²)/(D² − d²) + ν₀)/E₀ and Kᵢ = ((d² + dᵢ²)/(d² − dᵢ²) − νᵢ)/Eᵢ.
 * Stresses at radius r: σr = p·d²/(D² − d²)·(1 − D²/4r²), σθ with a plus sign, and for the inner part
 * σr = −p·d²/(d² − dᵢ²)·(1 − dᵢ²/4r²), σθ alike.
 *
 * <p>Source: Lamé 1852; in every textbook of machine design (Shigley, chapter on stresses in cylinders and press fits) and in DIN 7190-1.
 * Assumes: both parts as long as the joint, plane stress, no axial stress, linear elasticity, round and straight parts at rest. Not for
 * joints beyond yield, for bosses of uneven section, or for high speed. Lengths in mm, stresses in MPa, forces in N, torques in N·m.
 */
public final class ElasticJoint {
    private static final double TO_NEWTON_METRES = 1000;
    private static final double MODIFIED_SHEAR = Math.sqrt(3) / 2;

    private final double diameter;
    private final double length;
    private final Body outer;
    private final Body inner;
    private final Criterion criterion;

    /**
     * A cylinder.
     *
     * @param farDiameter outside of the outer part; inside of the inner one, 0 if it is solid
     * @param youngsModulus in MPa
     * @param poissonsRatio from 0 to below 0.5
     * @param expansion per kelvin
     * @param yield in MPa
     */
    public record Body(
            double farDiameter, double youngsModulus, double poissonsRatio, double expansion, double yield) {}

    /**
     * A joint.
     *
     * @param diameter the joint diameter, greater than the inside of the inner part and less than the outside of the outer one
     * @param length its length, greater than 0
     * @throws IllegalArgumentException if the diameters are not in order or the length is not greater than 0
     */
    public ElasticJoint(double diameter, double length, Body outer, Body inner, Criterion criterion) {
        if (!(inner.farDiameter >= 0 && inner.farDiameter < diameter && diameter < outer.farDiameter)) {
            throw new IllegalArgumentException("diameters grow outwards from the inside of the inner part: "
                    + inner.farDiameter + ", " + diameter + ", " + outer.farDiameter);
        }
        if (!(length > 0)) {
            throw new IllegalArgumentException("a joint has a length greater than 0, not " + length);
        }
        this.diameter = diameter;
        this.length = length;
        this.outer = outer;
        this.inner = inner;
        this.criterion = criterion;
    }

    /** The joint diameter in mm. */
    public double diameter() {
        return diameter;
    }

    /** The outer part. */
    public Body outer() {
        return outer;
    }

    /** The inner part. */
    public Body inner() {
        return inner;
    }

    /** What one MPa of pressure opens the bore by, as a share of the diameter. */
    public double outerCompliance() {
        return (sumOverDifference(outer.farDiameter, diameter) + outer.poissonsRatio) / outer.youngsModulus;
    }

    /** What one MPa of pressure closes the inner part by, as a share of the diameter. */
    public double innerCompliance() {
        return (sumOverDifference(diameter, inner.farDiameter) - inner.poissonsRatio) / inner.youngsModulus;
    }

    private static double sumOverDifference(double large, double small) {
        return (large * large + small * small) / ((large - small) * (large + small));
    }

    /** The pressure in the joint of an effective interference on the diameter; 0 where there is none. */
    public double pressure(double effective) {
        return Math.max(0, effective) / (diameter * (outerCompliance() + innerCompliance()));
    }

    /** The effective interference that a pressure needs. */
    public double interferenceFor(double pressure) {
        return pressure * diameter * (outerCompliance() + innerCompliance());
    }

    /** What a temperature of both parts adds to the interference at 20 °C: d(αᵢ − α₀)(T − 20). */
    public double thermalInterference(double temperature) {
        return diameter * (inner.expansion - outer.expansion) * (temperature - 20);
    }

    /** The radial stress of the outer part at a radius within it. */
    public double outerRadial(double radius, double pressure) {
        return pressure * outerFactor() * (1 - square(outer.farDiameter / (2 * radius)));
    }

    /** The tangential stress of the outer part at a radius within it. */
    public double outerHoop(double radius, double pressure) {
        return pressure * outerFactor() * (1 + square(outer.farDiameter / (2 * radius)));
    }

    /** The radial stress of the inner part at a radius within it. */
    public double innerRadial(double radius, double pressure) {
        return -pressure * innerFactor() * (1 - holeAt(radius));
    }

    /** The tangential stress of the inner part at a radius within it. */
    public double innerHoop(double radius, double pressure) {
        return -pressure * innerFactor() * (1 + holeAt(radius));
    }

    private double holeAt(double radius) {
        return inner.farDiameter == 0 ? 0 : square(inner.farDiameter / (2 * radius));
    }

    private double outerFactor() {
        return square(diameter) / ((outer.farDiameter - diameter) * (outer.farDiameter + diameter));
    }

    private double innerFactor() {
        return square(diameter) / ((diameter - inner.farDiameter) * (diameter + inner.farDiameter));
    }

    private static double square(double x) {
        return x * x;
    }

    /** The greatest equivalent stress of the outer part, at its bore, by the criterion. */
    public double outerEquivalent(double pressure) {
        return equivalent(outerHoop(diameter / 2, pressure), outerRadial(diameter / 2, pressure));
    }

    /** The greatest equivalent stress of the inner part by the criterion: at its bore, or all through if it is solid. */
    public double innerEquivalent(double pressure) {
        double atJoint = equivalent(innerHoop(diameter / 2, pressure), innerRadial(diameter / 2, pressure));
        if (inner.farDiameter == 0) {
            return atJoint;
        }
        return Math.max(atJoint, equivalent(innerHoop(inner.farDiameter / 2, pressure), 0));
    }

    private double equivalent(double one, double two) {
        double shear = Math.max(Math.abs(one - two), Math.max(Math.abs(one), Math.abs(two)));
        return switch (criterion) {
            case VON_MISES -> Math.sqrt(one * one - one * two + two * two);
            case TRESCA -> shear;
            case DIN_7190 -> MODIFIED_SHEAR * shear;
        };
    }

    /** The pressure at which the first of both parts reaches its yield. */
    public double yieldPressure() {
        return Math.min(outer.yield / outerEquivalent(1), inner.yield / innerEquivalent(1));
    }

    /** The force along the axis at which the joint slips: F = π·d·L·p·µ. */
    public double axialForce(double pressure, double friction) {
        return Math.PI * diameter * length * pressure * friction;
    }

    /** The torque at which the joint slips: F·d/2. */
    public double torque(double pressure, double friction) {
        return axialForce(pressure, friction) * diameter / 2 / TO_NEWTON_METRES;
    }

    /** The pressure needed to hold a force along the axis and a torque (N·m) together. */
    public double pressureToHold(double force, double torque, double friction) {
        double around = 2 * torque * TO_NEWTON_METRES / diameter;
        return Math.hypot(force, around) / axialForce(1, friction);
    }

    /** By how much the bore of the outer part grows, on the diameter. */
    public double boreGrowth(double pressure) {
        return pressure * diameter * outerCompliance();
    }

    /** By how much the inner part shrinks at the joint, on the diameter. */
    public double seatShrinkage(double pressure) {
        return pressure * diameter * innerCompliance();
    }

    /** By how much the outside of the outer part grows, on the diameter. */
    public double outsideGrowth(double pressure) {
        return 2 * pressure * outerFactor() * outer.farDiameter / outer.youngsModulus;
    }

    /** By how much the bore of the inner part shrinks, on the diameter; 0 if it is solid. */
    public double insideShrinkage(double pressure) {
        return 2 * pressure * innerFactor() * inner.farDiameter / inner.youngsModulus;
    }

    /**
     * The temperature to which the outer part must be heated to slip over with a gap, the inner one staying where it is.
     *
     * @param interference on the diameter at {@code room}
     * @param gap the clearance wanted on the diameter
     */
    public double heatingTo(double interference, double gap, double room) {
        return room + (interference + gap) / (outer.expansion * diameter);
    }

    /** The temperature to which the inner part must be cooled to slip in with a gap, the outer one staying where it is. */
    public double coolingTo(double interference, double gap, double room) {
        return room - (interference + gap) / (inner.expansion * diameter);
    }
}
