package io.github.firstoff.intake;

import java.util.List;
import java.util.Optional;

/** An input cannot be used. Carries every fault that was found, not only the first, ready to print. */
public final class InputRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Refusals refusals;
    private final transient Optional<RowCounts> rows;

    /** The faults that make the input unusable. */
    public InputRefused(Refusals refusals) {
        this(refusals, Optional.empty());
    }

    /**
     * The faults that make readings unusable.
     *
     * @param refusals the faults
     * @param rows what became of the rows of readings; empty if the input holds no readings
     */
    public InputRefused(Refusals refusals, Optional<RowCounts> rows) {
        super(String.join(System.lineSeparator(), refusals.lines()));
        this.refusals = refusals;
        this.rows = rows;
    }

    static InputRefused because(Fault fault) {
        FaultCollector collector = new FaultCollector();
        collector.refuse(fault);
        return new InputRefused(collector.refusals());
    }

    /** What became of the rows of readings that were read; empty if the input holds no readings. */
    public Optional<RowCounts> rows() {
        return rows;
    }

    /**
     * The same where other readings were read before these.
     *
     * @param before what became of their rows
     * @return the same faults, with the rows of all; this where the input holds no readings
     */
    public InputRefused after(RowCounts before) {
        return rows.map(own -> new InputRefused(refusals, Optional.of(before.plus(own))))
                .orElse(this);
    }

    /** The faults with their count. */
    public Refusals refusals() {
        return refusals;
    }

    /** The faults in the order of the input; where there are very many, the first of each sort at least. */
    public List<Fault> faults() {
        return refusals.faults();
    }

    /** What to print: a line per fault, a repeated one once with its count and first places, 20 at most. */
    public List<String> lines() {
        return refusals.lines();
    }
}
