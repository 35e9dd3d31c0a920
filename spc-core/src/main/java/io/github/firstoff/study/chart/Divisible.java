package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Subgroups;
import java.util.function.UnaryOperator;

/** How data of one kind are marked and cut; one for each kind that charts are made of. */
interface Divisible<D> {
    /** The subgroups, for their marks. */
    Subgroups subgroups(D data);

    /** The same data with other marks. */
    D marked(D data, UnaryOperator<Subgroups> marking);

    /** The subgroups {@code from} (inclusive) to {@code to} (exclusive). */
    D part(D data, int from, int to);

    /** Measured values. */
    Divisible<Subgroups> MEASURED = new Divisible<>() {
        @Override
        public Subgroups subgroups(Subgroups data) {
            return data;
        }

        @Override
        public Subgroups marked(Subgroups data, UnaryOperator<Subgroups> marking) {
            return marking.apply(data);
        }

        @Override
        public Subgroups part(Subgroups data, int from, int to) {
            return data.part(from, to);
        }
    };

    /** Attributes. */
    Divisible<Counts> COUNTED = new Divisible<>() {
        @Override
        public Subgroups subgroups(Counts data) {
            return data.data();
        }

        @Override
        public Counts marked(Counts data, UnaryOperator<Subgroups> marking) {
            return data.withData(marking);
        }

        @Override
        public Counts part(Counts data, int from, int to) {
            return data.part(from, to);
        }
    };

    /** Families of part numbers. */
    Divisible<Family> FAMILY = new Divisible<>() {
        @Override
        public Subgroups subgroups(Family data) {
            return data.deviations();
        }

        @Override
        public Family marked(Family data, UnaryOperator<Subgroups> marking) {
            return data.withData(marking);
        }

        @Override
        public Family part(Family data, int from, int to) {
            return data.part(from, to);
        }
    };
}
