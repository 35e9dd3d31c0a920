package io.github.firstoff.study.pressfit;

import java.util.Optional;

/**
 * What the joint does at one temperature of both parts. Lengths in mm on the diameter, stresses in MPa, forces in N, torques in N·m,
 * clearances in µm.
 *
 * @param moment when
 * @param temperature in degrees Celsius
 * @param interference effective after smoothing; negative where the parts are loose
 * @param pressure in the joint
 * @param outerStress the greatest equivalent stress of the outer part
 * @param innerStress the greatest equivalent stress of the inner part
 * @param outerHoop the tangential stress at the bore of the outer part
 * @param innerHoop the tangential stress of the inner part where it is greatest in amount: at its bore, or at the joint if it is solid
 * @param axial the force along the axis at which the joint slips, with the least, middle and greatest friction
 * @param torque the torque at which it slips
 * @param boreGrowth by how much the bore of the outer part grows
 * @param seatShrinkage by how much the inner part shrinks at the joint
 * @param outsideGrowth by how much the outside of the outer part grows
 * @param insideShrinkage by how much the bore of the inner part shrinks
 * @param clearanceLoss what a bearing loses of its radial internal clearance; of any other joint, by how much the inside shrinks
 * @param clearanceLeft what is left of it: the least, of the middle of the group at the mean, the greatest; empty without a bearing whose
 *     clearance is known
 */
public record State(
        Moment moment,
        double temperature,
        Range interference,
        Range pressure,
        Range outerStress,
        Range innerStress,
        Range outerHoop,
        Range innerHoop,
        Range axial,
        Range torque,
        Range boreGrowth,
        Range seatShrinkage,
        Range outsideGrowth,
        Range insideShrinkage,
        Range clearanceLoss,
        Optional<Range> clearanceLeft) {

    /** When a joint is looked at. */
    public enum Moment {
        /** When it is pressed. */
        ASSEMBLY("assembly"),
        /** At the coldest in service. */
        COLDEST("coldest"),
        /** At the hottest in service. */
        HOTTEST("hottest");

        private final String word;

        Moment(String word) {
            this.word = word;
        }

        /** The word in results. */
        public String word() {
            return word;
        }
    }
}
