package io.github.firstoff.study.chart;

/** The p chart: the proportion of nonconforming pieces, of samples whose sizes may differ. See {@link AttributeChart} for formulas. */
public final class NonconformingShare extends AttributeChart {
    /** With limits that follow the dispersion check. */
    public NonconformingShare() {
        this(DispersionPolicy.CHECK);
    }

    /** With another policy for counts that spread otherwise than their distribution. */
    public NonconformingShare(DispersionPolicy policy) {
        super(true, true, policy);
    }

    @Override
    public String kind() {
        return "p";
    }

    @Override
    public String title() {
        return "Proportion nonconforming";
    }

    @Override
    String statistic() {
        return "proportion";
    }
}
