package io.github.firstoff.study.chart;

/** The u chart: nonconformities per unit of size or area, which may differ from point to point. See {@link AttributeChart} for formulas. */
public final class NonconformitiesPerUnit extends AttributeChart {
    /** With limits that follow the dispersion check. */
    public NonconformitiesPerUnit() {
        this(DispersionPolicy.CHECK);
    }

    /** With another policy for counts that spread otherwise than their distribution. */
    public NonconformitiesPerUnit(DispersionPolicy policy) {
        super(false, true, policy);
    }

    @Override
    public String kind() {
        return "u";
    }

    @Override
    public String title() {
        return "Nonconformities per unit";
    }

    @Override
    String statistic() {
        return "nonconformities per unit";
    }
}
