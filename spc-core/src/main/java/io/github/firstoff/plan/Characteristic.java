package io.github.firstoff.plan;

import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.Requirement;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * One numbered characteristic of the drawing.
 *
 * @param number its balloon number: the key by which readings name it
 * @param feature what it is about, in words
 * @param requirement what the drawing requires
 * @param printed the requirement exactly as the plan wrote it
 * @param importance critical, major or minor
 * @param gauge the number of the gauge that the plan foresees
 * @param study how it is followed through a batch
 * @param options what else the plan says of it
 */
public record Characteristic(
        String number,
        String feature,
        Requirement requirement,
        String printed,
        Importance importance,
        Optional<String> gauge,
        Optional<Study> study,
        Options options) {

    /** The same on the counterpart that is the mirror image across the plane square to the axis. */
    Characteristic mirrored(Axis axis) {
        boolean coordinate = options.axis().filter(axis::equals).isPresent();
        // What has no mirrored form is no coordinate, and the plan is refused for it when it is resolved.
        Optional<Requirement> opposite = coordinate ? requirement.mirrored() : Optional.empty();
        return new Characteristic(
                number,
                feature,
                opposite.orElse(requirement),
                opposite.map(Requirement::text).orElse(printed),
                importance,
                gauge,
                opposite.isPresent() ? study.map(Study::mirrored) : study,
                options.mirrored(axis, opposite.isPresent()));
    }

    /**
     * What few characteristics need.
     *
     * @param form hole or shaft, where the requirement does not tell
     * @param target where the process aims, if not at the middle
     * @param sizeFeature the number of the feature of size that gives a bonus
     * @param decision what differs from the plan's decision rule
     * @param extent whether every piece or only a sample is inspected for it
     * @param repeated whether it may be measured several times on one piece
     * @param settings the settings at which an attribute must be checked, each with a result of its own; empty if there is one result
     * @param coordinates where the feature should be, for a position whose readings are coordinates; empty if they are deviations
     * @param axis the axis along which the requirement is a coordinate: its sign flips on a mirrored part
     * @param shorterLeg the length of the shorter leg of an angle that takes the general tolerance, in the plan's unit
     */
    public record Options(
            Optional<Drawing.Form> form,
            Optional<BigDecimal> target,
            Optional<String> sizeFeature,
            DecisionChoice.Change decision,
            Extent extent,
            boolean repeated,
            List<String> settings,
            Optional<Coordinates> coordinates,
            Optional<Axis> axis,
            Optional<BigDecimal> shorterLeg) {

        /** Nothing out of the ordinary. */
        public static final Options NONE = new Options(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                DecisionChoice.Change.NONE,
                Extent.EVERY_PIECE,
                false,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());

        /** Copies the list. */
        public Options {
            settings = List.copyOf(settings);
        }

        Options mirrored(Axis mirror, boolean flipsSign) {
            return new Options(
                    form,
                    flipsSign ? target.map(BigDecimal::negate) : target,
                    sizeFeature,
                    decision,
                    extent,
                    repeated,
                    settings,
                    coordinates.map(place -> place.mirrored(mirror)),
                    axis,
                    shorterLeg);
        }
    }

    /** How many pieces are inspected for a characteristic. */
    public enum Extent {
        /** Every piece that readings name: one without a reading leaves the sheet incomplete. */
        EVERY_PIECE("every"),
        /** A sample: at least one piece; others may lack it. */
        SAMPLE("sample");

        private final String word;

        Extent(String word) {
            this.word = word;
        }

        /** The word in plan files. */
        public String word() {
            return word;
        }
    }
}
