package io.github.firstoff.intake;

import java.util.List;

/** An input cannot be used. Carries every fault that was found, not only the first, ready to print. */
public final class InputRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Refusals refusals;

    /** The faults that make the input unusable. */
    public InputRefused(Refusals refusals) {
        super(String.join(System.lineSeparator(), refusals.lines()));
        this.refusals = refusals;
    }

    static InputRefused because(Fault fault) {
        FaultCollector collector = new FaultCollector();
        collector.refuse(fault);
        return new InputRefused(collector.refusals());
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
