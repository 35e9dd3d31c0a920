package io.github.firstoff.sheet;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.study.stack.StackResult;
import io.github.firstoff.tolerance.Limits;
import java.io.IOException;
import java.io.Writer;
import java.util.OptionalDouble;

/** The JSON result of a dimension loop (docs/schemas/stack-result.schema.json). Worst cases are decimal text, statistics numbers. */
public final class StackJson {
    private final JsonDocument out;
    private final StackSheet sheet;
    private final StackResult result;

    private StackJson(JsonDocument out, StackSheet sheet) {
        this.out = out;
        this.sheet = sheet;
        this.result = sheet.result();
    }

    /** Writes the document and a line end; the writer stays open. */
    public static void write(StackSheet sheet, Writer target) {
        JsonDocument.write(target, out -> new StackJson(out, sheet).document());
    }

    private void document() throws IOException {
        DimensionLoop loop = result.loop();
        out.text("command", "stack");
        out.text("name", loop.name());
        out.text("part", loop.part());
        out.text("hand", loop.hand().map(hand -> hand.word()));
        out.text("verdict", sheet.accepted() ? "accepted" : "rejected");
        out.text("answer", new StackWords(result).answer().replace('\u00A0', ' '));
        out.text("unit", loop.unit().word());
        Limits gap = loop.gap();
        out.object("wanted", () -> {
            out.text("requirement", loop.printed());
            out.decimal("minimum", gap.lower());
            out.decimal("maximum", gap.upper());
        });
        out.decimal("nominal", result.nominal());
        if (result.worst().isPresent()) {
            StackResult.Exact worst = result.worst().get();
            out.object("worstCase", () -> {
                out.decimal("minimum", worst.minimum());
                out.decimal("maximum", worst.maximum());
            });
        } else {
            out.nothing("worstCase");
        }
        if (result.rootSumSquare().isPresent()) {
            StackResult.Around around = result.rootSumSquare().get();
            out.object("rootSumSquare", () -> {
                out.number("middle", around.middle());
                out.number("half", around.half());
                out.number("minimum", around.middle() - around.half());
                out.number("maximum", around.middle() + around.half());
            });
        } else {
            out.nothing("rootSumSquare");
        }
        out.number("mean", result.mean());
        out.number("standardDeviation", result.deviation());
        StackResult.Drawn drawn = result.drawn();
        out.object("monteCarlo", () -> {
            out.whole("draws", drawn.draws());
            out.whole("seed", drawn.seed());
            out.number("mean", drawn.mean());
            out.number("standardDeviation", drawn.deviation());
            out.number("low", drawn.low());
            out.number("median", drawn.middle());
            out.number("high", drawn.high());
            out.text("range", "low and high leave 0.135 % of assemblies on either side");
        });
        outside();
        out.array("members", () -> {
            for (StackResult.Contribution each : result.members()) {
                out.item(() -> member(each));
            }
        });
        out.texts("notices", sheet.notices());
        out.provenance(sheet.provenance());
    }

    private void outside() throws IOException {
        StackResult.Drawn drawn = result.drawn();
        if (drawn.outside().isEmpty()) {
            out.nothing("outside");
            return;
        }
        StackResult.Outside outside = drawn.outside().get();
        out.object("outside", () -> {
            out.number("below", outside.below());
            out.number("above", outside.above());
            out.number("total", outside.total());
            out.number("upperBound95", drawn.upperBound());
            out.number(
                    "ifNormal",
                    result.normal()
                            .map(normal -> OptionalDouble.of(normal.total()))
                            .orElse(OptionalDouble.empty()));
        });
    }

    private void member(StackResult.Contribution each) throws IOException {
        DimensionLoop.Member member = each.member();
        out.text("name", member.name());
        out.text("requirement", member.printed());
        out.decimal("coefficient", member.coefficient());
        out.decimal("minimum", member.limits().flatMap(Limits::lower));
        out.decimal("maximum", member.limits().flatMap(Limits::upper));
        out.text("distribution", member.distribution().word());
        out.number("mean", each.mean());
        out.number("standardDeviation", each.deviation());
        out.number("shareOfVariance", each.ofVariance());
        out.number("shareOfWorstCase", each.ofWidth());
    }
}
