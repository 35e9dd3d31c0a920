package io.github.firstoff.study.chart;

import java.util.function.Consumer;

/** A test of steps under watch: each point is compared with the one before it. */
final class StepWatch implements RunRule.Watch {
    private final String id;
    private final PanelKind panel;
    private final RunRule.StepMemory steps;
    private final PointNumbers numbers;
    private final int length;
    private boolean any;
    private double last;
    private int memory;

    StepWatch(String id, PanelKind panel, RunRule.StepMemory steps, int length) {
        this.id = id;
        this.panel = panel;
        this.steps = steps;
        this.length = length;
        numbers = new PointNumbers(length);
    }

    @Override
    public void next(Panel chunk, int i, Consumer<Signal> signals) {
        double value = chunk.value(i);
        numbers.add(chunk.number(i));
        memory = steps.next(memory, any ? Double.compare(value, last) : 0);
        any = true;
        last = value;
        if (steps.signals(memory)) {
            signals.accept(new Signal(id, panel, steps.side(memory), chunk.number(i), numbers.last(length)));
        }
    }

    @Override
    public void restart() {
        any = false;
        memory = 0;
    }
}
