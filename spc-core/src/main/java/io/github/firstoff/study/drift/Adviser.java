package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.stats.FittedLine;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Works out what to do about a drift.
 *
 * <p>With limits L and U, slope b per piece, spread s about the line and the required index C: a tool that begins at L + 3Cs (a falling line: at
 * U − 3Cs) keeps the index at every moment for (U − L − 6Cs)/|b| pieces. Each piece costs |b|/(3s) of the index at its moment. (From
 * Cpk = distance/(3s); ISO 22514-2 for the index, the rest follows.)
 */
final class Adviser {
    private final DriftData data;
    private final DriftSettings settings;
    private final Scale scale;
    private final BigDecimal increment;
    private final List<Remark> notes = new ArrayList<>();

    Adviser(DriftData data, DriftSettings settings) {
        this.data = data;
        this.settings = settings;
        scale = data.sample().scale();
        increment = settings.incrementFor(scale.unit());
    }

    Advice advise(Drift.Segment current, Optional<FittedLine> known, boolean sloping) {
        Optional<BigDecimal> target = data.drawing().aim();
        if (known.isEmpty() || known.get().deviation() == 0) {
            notes.add(Remark.of(
                    "advice.nothing-known",
                    "Too few readings, or readings without spread, say nothing about where the process is."));
            return new Advice(
                    target,
                    OptionalDouble.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalLong.empty(),
                    settings.requiredIndex(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    increment,
                    notes);
        }
        FittedLine line = known.get();
        double next = current.lastPiece() + 1.0;
        double level = line.at(next);
        Optional<BigDecimal> offset = target.map(aim -> offset(line, next, aim));
        if (sloping && offset.isPresent() && offset.get().signum() == (int) Math.signum(line.slope())) {
            long reached = pieces(next + (steps(target.orElseThrow()) - level) / line.slope());
            notes.add(Remark.of(
                    "advice.drifts-to-target",
                    "The drift itself leads to the target and is there about piece {0}; left alone, the tool lasts longer.",
                    reached));
        }
        if (target.isEmpty()) {
            notes.add(
                    Remark.of(
                            "advice.no-target",
                            "There is no target: the requirement has one limit and the plan states none, so no offset is advised."));
        }
        Life life = sloping ? life(line, level) : Life.none();
        if (!sloping) {
            notes.add(Remark.of(
                    "advice.no-slope", "Without a slope that is shown there is no tool life to plan by drift."));
        }
        Optional<BigDecimal> recentreOffset = life.start.map(start -> multiple(steps(start) - level));
        double distance = distance(level);
        return new Advice(
                target,
                OptionalDouble.of(scale.value(level)),
                offset,
                life.start,
                recentreOffset,
                life.pieces,
                settings.requiredIndex(),
                Double.isFinite(distance)
                        ? OptionalDouble.of(distance / (3 * line.deviation()))
                        : OptionalDouble.empty(),
                sloping ? OptionalDouble.of(Math.abs(line.slope()) / (3 * line.deviation())) : OptionalDouble.empty(),
                increment,
                notes);
    }

    private double steps(BigDecimal size) {
        return scale.deviation(size);
    }

    /** From a level to the nearer limit of the drawing, in steps; infinite without one. */
    private double distance(double level) {
        Bounds drawing = data.drawing();
        double below =
                drawing.requiredLower().map(lower -> level - steps(lower)).orElse(Double.POSITIVE_INFINITY);
        double above = drawing.upper().map(upper -> steps(upper) - level).orElse(Double.POSITIVE_INFINITY);
        return Math.min(below, above);
    }

    private BigDecimal offset(FittedLine line, double next, BigDecimal aim) {
        double target = steps(aim);
        ConfidenceInterval where = line.meanInterval(next, settings.level());
        if (where.lower() <= target && target <= where.upper()) {
            notes.add(Remark.of(
                    "advice.on-target",
                    "The process is not distinguishable from its target: leave the offset alone."
                            + " Correcting what is chance widens the spread."));
            return BigDecimal.ZERO.setScale(Math.max(0, increment.scale()));
        }
        BigDecimal offset = multiple(target - line.at(next));
        if (offset.signum() == 0) {
            notes.add(Remark.of(
                    "advice.less-than-a-step",
                    "The process is off its target by less than half a step of the machine's offset."));
        }
        return offset;
    }

    /** A length in steps as a multiple of the increment, halves to even. */
    private BigDecimal multiple(double steps) {
        return new BigDecimal(steps)
                .movePointLeft(scale.places())
                .divide(increment, 0, RoundingMode.HALF_EVEN)
                .multiply(increment);
    }

    /** Where a tool should begin and how many pieces it then makes. */
    private record Life(Optional<BigDecimal> start, OptionalLong pieces) {
        static Life none() {
            return new Life(Optional.empty(), OptionalLong.empty());
        }
    }

    private Life life(FittedLine line, double level) {
        Bounds drawing = data.drawing();
        double kept = 3 * settings.requiredIndex() * line.deviation();
        double wear = Math.abs(line.slope());
        if (!drawing.isTwoSided()) {
            Optional<BigDecimal> ahead = line.slope() > 0 ? drawing.upper() : drawing.requiredLower();
            if (ahead.isEmpty()) {
                notes.add(Remark.of(
                        "advice.drifts-away", "The drift leads away from the only limit; it ends no tool life."));
                return Life.none();
            }
            notes.add(
                    Remark.of(
                            "advice.one-limit",
                            "With one limit there is no middle to begin at; the tool life counts the pieces left from now on."));
            double room = Math.abs(steps(ahead.get()) - level);
            boolean inside = line.slope() > 0 ? level < steps(ahead.get()) : level > steps(ahead.get());
            return new Life(Optional.empty(), OptionalLong.of(inside ? Math.max(0, pieces((room - kept) / wear)) : 0));
        }
        double lower = steps(drawing.requiredLower().orElseThrow());
        double upper = steps(drawing.upper().orElseThrow());
        double travel = upper - lower - 2 * kept;
        if (travel <= 0) {
            notes.add(Remark.of(
                    "advice.too-wide",
                    "The spread about the line alone is too wide for the required index; no tool life keeps it."));
            return new Life(Optional.empty(), OptionalLong.of(0));
        }
        long life = pieces(travel / wear);
        double middle = (lower + upper) / 2;
        double start = middle - line.slope() * life / 2.0;
        BigDecimal size = multiple(start - scale.deviation(BigDecimal.ZERO));
        return new Life(Optional.of(size), OptionalLong.of(life));
    }

    private static long pieces(double many) {
        return (long) Math.floor(Math.min(many, 1e15));
    }
}
