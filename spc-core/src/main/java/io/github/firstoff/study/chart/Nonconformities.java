package io.github.firstoff.study.chart;

/** The c chart: the number of nonconformities on one size of sample or area. See {@link AttributeChart} for formulas. */
public final class Nonconformities extends AttributeChart {
    /** With limits that follow the dispersion check. */
    public Nonconformities() {
        this(DispersionPolicy.CHECK);
    }

    /** With another policy for counts that spread otherwise than their distribution. */
    public Nonconformities(DispersionPolicy policy) {
        super(false, false, policy);
    }

    @Override
    public String kind() {
        return "c";
    }

    @Override
    public String title() {
        return "Number of nonconformities";
    }

    @Override
    String statistic() {
        return "number of nonconformities";
    }
}
