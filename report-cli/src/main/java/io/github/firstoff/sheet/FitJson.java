package io.github.firstoff.sheet;

import io.github.firstoff.assembly.ElasticMaterial;
import io.github.firstoff.assembly.Joint;
import io.github.firstoff.study.pressfit.Chances;
import io.github.firstoff.study.pressfit.ElasticJoint;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.Matching;
import io.github.firstoff.study.pressfit.Range;
import io.github.firstoff.study.pressfit.Sizes;
import io.github.firstoff.study.pressfit.State;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The JSON result of a press fit (docs/schemas/fit-result.schema.json). Quantities have {@code minimum}, {@code mean}, {@code maximum} and
 * {@code unit}; at the top of the document they hold at the temperature of assembly, under {@code temperatures} at each.
 */
public final class FitJson {
    private static final double MICROMETRES = 1000;
    private static final String MICROMETRE = "µm";
    private static final String STRESS = "MPa";
    private static final String FORCE = "N";
    private static final String TORQUE = "N·m";

    private final JsonDocument out;
    private final FitSheet sheet;
    private final FitResult result;

    private FitJson(JsonDocument out, FitSheet sheet) {
        this.out = out;
        this.sheet = sheet;
        this.result = sheet.result();
    }

    /** Writes the document and a line end; the writer stays open. */
    public static void write(FitSheet sheet, Writer target) {
        JsonDocument.write(target, out -> new FitJson(out, sheet).document());
    }

    private void document() throws IOException {
        Joint joint = result.joint();
        out.text("command", "fit");
        out.text("name", joint.name());
        out.text("part", joint.part().or(() -> joint.outer().part()));
        out.text("hand", sheet.hand().map(hand -> hand.word()));
        out.text("verdict", result.verdicts().accepted() ? "accepted" : "rejected");
        out.text("answer", new FitWords(result).answer().replace('\u00A0', ' '));
        out.texts(
                "decisions",
                new FitWords(result)
                        .decisions().stream()
                                .map(text -> text.replace('\u00A0', ' '))
                                .toList());
        out.text("basis", result.basis().word());
        out.number("assemblyTemperature", result.at(State.Moment.ASSEMBLY).temperature());
        state(result.at(State.Moment.ASSEMBLY));
        out.object("interferenceBeforeSmoothing", () -> {
            out.decimal("minimum", result.least());
            out.number("mean", result.mean());
            out.decimal("maximum", result.greatest());
            out.number("standardDeviation", result.deviation());
            out.text("unit", "mm");
            out.text("note", "on the diameter, at 20 °C; minimum and maximum are exact");
        });
        out.object("smoothing", () -> {
            out.number("loss", MICROMETRES * result.smoothing());
            out.text("unit", MICROMETRE);
            out.text("rule", joint.smoothing().source());
        });
        probability();
        service();
        out.array("temperatures", () -> {
            for (State state : result.states()) {
                out.item(() -> {
                    out.text("moment", state.moment().word());
                    out.number("temperature", state.temperature());
                    state(state);
                });
            }
        });
        bounds();
        joining();
        part("outer", joint.outer(), result.outer());
        part("inner", joint.inner(), result.inner());
        matching();
        out.texts("notices", sheet.notices());
        out.provenance(sheet.provenance());
    }

    private void state(State state) throws IOException {
        range("interference", state.interference(), MICROMETRES, MICROMETRE);
        range("pressure", state.pressure(), 1, STRESS);
        range("pressInForce", state.axial(), 1, FORCE);
        stress(
                "outerStress",
                state.outerStress(),
                state.outerHoop(),
                result.model().outer());
        stress(
                "innerStress",
                state.innerStress(),
                state.innerHoop(),
                result.model().inner());
        range("clearanceLoss", state.clearanceLoss(), 1, MICROMETRE);
        if (state.clearanceLeft().isPresent()) {
            range("clearanceLeft", state.clearanceLeft().get(), 1, MICROMETRE);
        } else {
            out.nothing("clearanceLeft");
        }
        range("holdingForce", state.axial(), 1, FORCE);
        range("holdingTorque", state.torque(), 1, TORQUE);
        range("boreGrowth", state.boreGrowth(), MICROMETRES, MICROMETRE);
        range("seatShrinkage", state.seatShrinkage(), MICROMETRES, MICROMETRE);
        range("outsideGrowth", state.outsideGrowth(), MICROMETRES, MICROMETRE);
        range("insideShrinkage", state.insideShrinkage(), MICROMETRES, MICROMETRE);
    }

    private void range(String name, Range range, double factor, String unit) throws IOException {
        out.object(name, () -> {
            out.number("minimum", factor * range.minimum());
            out.number("mean", factor * range.mean());
            out.number("maximum", factor * range.maximum());
            out.text("unit", unit);
        });
    }

    private void stress(String name, Range range, Range hoop, ElasticJoint.Body body) throws IOException {
        out.object(name, () -> {
            out.number("minimum", range.minimum());
            out.number("mean", range.mean());
            out.number("maximum", range.maximum());
            out.text("unit", STRESS);
            out.text("criterion", result.joint().criterion().word());
            out.number("yield", body.yield());
            out.number("shareOfYield", range.maximum() / body.yield());
            out.number("safety", range.maximum() > 0 ? body.yield() / range.maximum() : Double.NaN);
            out.object("hoop", () -> {
                out.number("minimum", hoop.minimum());
                out.number("mean", hoop.mean());
                out.number("maximum", hoop.maximum());
                out.text("unit", STRESS);
            });
        });
    }

    private void probability() throws IOException {
        Chances chances = result.chances();
        out.object("probability", () -> {
            shares(chances.reckoned());
            out.number("required", result.share());
            out.object("monteCarlo", () -> {
                Chances.Drawn drawn = chances.drawn();
                shares(drawn.shares());
                out.whole("draws", drawn.draws());
                out.whole("seed", drawn.seed());
                out.number(
                        "gripStandardError",
                        drawn.standardError(chances.reckoned().grip()));
                out.number(
                        "noOverstressStandardError",
                        drawn.standardError(chances.reckoned().noOverstress()));
                out.object("interference", () -> {
                    out.number("mean", MICROMETRES * drawn.mean());
                    out.number("standardDeviation", MICROMETRES * drawn.deviation());
                    out.text("unit", MICROMETRE);
                });
            });
            optional("nextPair", chances.nextPair(), this::shares);
            optional("counted", chances.counted(), counted -> {
                out.whole("pairs", counted.pairs());
                out.whole("grip", counted.grip());
                out.whole("noOverstress", counted.noOverstress());
            });
        });
    }

    private interface Writing<T> {
        void write(T value) throws IOException;
    }

    private <T> void optional(String name, Optional<T> value, Writing<T> content) throws IOException {
        if (value.isPresent()) {
            out.object(name, () -> content.write(value.get()));
        } else {
            out.nothing(name);
        }
    }

    private void shares(Chances.Shares shares) throws IOException {
        out.number("grip", shares.grip());
        out.number("noOverstress", shares.noOverstress());
        out.number("clearance", shares.clearance());
    }

    private void service() throws IOException {
        State weakest = result.weakest();
        State tightest = result.tightest();
        out.object("service", () -> {
            out.object("leastHolding", () -> {
                out.number("force", weakest.axial().minimum());
                out.number("forceOf999In1000", new FitWords(result).ordinaryForce());
                out.number("torque", weakest.torque().minimum());
                out.number("temperature", weakest.temperature());
            });
            out.object("greatestStress", () -> {
                out.number("outer", tightest.outerStress().maximum());
                out.number("inner", tightest.innerStress().maximum());
                out.number("temperature", tightest.temperature());
            });
            OptionalDouble left = result.states().stream()
                    .filter(state -> state.moment() != State.Moment.ASSEMBLY)
                    .flatMap(state -> state.clearanceLeft().stream())
                    .mapToDouble(Range::minimum)
                    .min();
            out.number("leastClearance", left);
        });
    }

    private void bounds() throws IOException {
        out.object("bounds", () -> {
            out.number("grip", MICROMETRES * result.bounds().grip());
            out.number("yield", MICROMETRES * result.bounds().yield());
            out.number(
                    "clearance",
                    result.bounds().clearance().isPresent()
                            ? MICROMETRES * result.bounds().clearance().getAsDouble()
                            : Double.NaN);
            out.text("unit", MICROMETRE);
            out.text("note", "interference on the diameter at 20 °C before smoothing");
        });
    }

    private void joining() throws IOException {
        FitResult.Joining joining = result.joining();
        out.object("joining", () -> {
            out.number("gap", joining.gap());
            out.number("interference", joining.interference());
            out.text("unit", "mm");
            out.number("heatOuterTo", joining.heating());
            out.number("coolInnerTo", joining.cooling());
            out.text("temperatureUnit", "°C");
        });
    }

    private void part(String name, Joint.Member member, Sizes sizes) throws IOException {
        ElasticMaterial material = member.material();
        out.object(name, () -> {
            out.text("part", member.part());
            out.text("requirement", member.stated().english());
            out.flag("measured", sizes.measured());
            out.whole("count", sizes.count());
            out.decimal("minimum", sizes.least());
            out.number("mean", sizes.mean());
            out.decimal("maximum", sizes.greatest());
            out.number("standardDeviation", sizes.deviation());
            out.text("unit", "mm");
            out.object("material", () -> {
                out.text("name", material.name());
                out.decimal("youngsModulus", material.youngsModulus());
                out.decimal("poissonsRatio", material.poissonsRatio());
                out.decimal("expansion", material.expansion());
                out.decimal("yield", material.yield());
                out.text("source", material.source());
            });
        });
    }

    private void matching() throws IOException {
        optional("matching", result.matching(), matching -> {
            out.number("wanted", MICROMETRES * matching.wanted());
            out.number("least", MICROMETRES * matching.least());
            out.number("greatest", MICROMETRES * matching.greatest());
            out.number(
                    "rootMeanSquare",
                    matching.rootMeanSquare().isPresent()
                            ? MICROMETRES * matching.rootMeanSquare().getAsDouble()
                            : Double.NaN);
            out.text("unit", MICROMETRE);
            out.array("pairs", () -> {
                for (Matching.Pair pair : matching.pairs()) {
                    out.item(() -> {
                        out.text("outer", pair.outer().name());
                        out.text("inner", pair.inner().name());
                        out.decimal("interference", pair.interference());
                        out.number("effective", MICROMETRES * pair.effective());
                        out.number("pressInForce", pair.pressIn());
                        out.number("holdingForce", pair.holding());
                    });
                }
            });
            out.array("left", () -> {
                for (Matching.Left left : matching.left()) {
                    out.item(() -> {
                        out.text("name", left.piece().name());
                        out.text("part", left.bore() ? "outer" : "inner");
                        out.decimal("size", left.piece().size());
                        out.text("reason", left.why().words());
                        out.decimal("nearest", left.nearest());
                    });
                }
            });
        });
    }
}
