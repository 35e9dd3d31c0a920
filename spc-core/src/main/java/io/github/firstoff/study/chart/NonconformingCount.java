package io.github.firstoff.study.chart;

/** The np chart: the number of nonconforming pieces. Of samples that differ in size every point has its own centre line; a p chart is then easier to read. See {@link AttributeChart} for formulas. */
public final class NonconformingCount extends AttributeChart {
    /** With limits that follow the dispersion check. */
    public NonconformingCount() {
        this(DispersionPolicy.CHECK);
    }

    /** With another policy for counts that spread otherwise than their distribution. */
    public NonconformingCount(DispersionPolicy policy) {
        super(true, false, policy);
    }

    @Override
    public String kind() {
        return "np";
    }

    @Override
    public String title() {
        return "Number nonconforming";
    }

    @Override
    String statistic() {
        return "number nonconforming";
    }
}
