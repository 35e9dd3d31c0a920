package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.DispersionCheck;
import io.github.firstoff.study.chart.FrozenLimits;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.RuleSet;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.chart.Stage;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/** A control chart in the JSON result. */
final class ChartJson {
    private static final String LIMITS = "-limits";

    private final JsonGenerator out;
    private final ProcessStudy study;
    private final ControlChart chart;
    private final String origin;

    /**
     * The chart of a study.
     *
     * @param origin from which batch limits come that the chart set itself, in words
     */
    ChartJson(JsonGenerator out, ProcessStudy study, String origin) {
        this.out = out;
        this.study = study;
        this.chart = study.chart();
        this.origin = study.frozenFrom().orElse(origin);
    }

    void write() throws IOException {
        Assessment assessment = study.assessment();
        out.writeObjectFieldStart("chart");
        out.writeStringField("kind", chart.kind());
        out.writeStringField("control", assessment.control().word());
        out.writeNumberField("points", chart.location().count());
        out.writeNumberField("limitsFrom", chart.limitsFrom());
        if (study.frozenFrom().isPresent()) {
            out.writeStringField("limitsSetBy", study.frozenFrom().get());
        }
        panel("location", Optional.of(chart.location()));
        panel("dispersion", chart.dispersion());
        if (chart.panel(PanelKind.BETWEEN).isPresent()) {
            out.writeObjectFieldStart("panels");
            for (Panel panel : chart.panels()) {
                panel(panel.kind().word(), Optional.of(panel));
            }
            out.writeEndObject();
        }
        signals(assessment);
        tests();
        estimates();
        out.writeObjectFieldStart("falseSignals");
        Figures.write(out, "average", study.falseSignals().average());
        out.writeBooleanField("exact", study.falseSignals().exact());
        out.writeStringField("sentence", study.falseSignals().sentence());
        out.writeEndObject();
        marks();
        stages();
        out.writeFieldName("frozen");
        frozen(chart.frozen(), origin);
        out.writeEndObject();
    }

    private void signals(Assessment assessment) throws IOException {
        // two chosen tests may both look at the limits of a panel of spread: there that is one finding
        Set<Signal> named = new LinkedHashSet<>();
        for (Signal signal : assessment.signals()) {
            named.add(new Signal(testName(signal), signal.panel(), signal.side(), signal.at(), signal.points()));
        }
        out.writeArrayFieldStart("signals");
        for (Signal signal : named) {
            out.writeStartObject();
            out.writeStringField("test", signal.test());
            out.writeStringField("chart", signal.panel().word());
            out.writeStringField("side", signal.side().word());
            out.writeNumberField("at", signal.at());
            out.writeArrayFieldStart("points");
            for (int point : signal.points()) {
                out.writeNumber(point);
            }
            out.writeEndArray();
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeObjectFieldStart("signalCounts");
        for (Map.Entry<String, Integer> count : signalCounts(assessment, named).entrySet()) {
            out.writeNumberField(count.getKey(), count.getValue());
        }
        out.writeEndObject();
    }

    /**
     * The tests are tests of the location: what lies beyond a limit of another panel has a name of its own, so that a count
     * of a zone test is the count that its definition gives on the means.
     */
    private static String testName(Signal signal) {
        return signal.panel() == PanelKind.LOCATION
                ? signal.test()
                : signal.panel().word() + LIMITS;
    }

    /** Tests that judge nothing here are left out, but for the four zone tests where nobody chose: scripts look for them. */
    private Map<String, Integer> signalCounts(Assessment assessment, Set<Signal> named) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        if (study.request().tests().equals(RuleSet.westernElectric())) {
            study.request().tests().rules().forEach(rule -> counts.put(rule.id(), 0));
        }
        assessment.signalCounts().keySet().forEach(test -> counts.put(test, 0));
        for (Panel panel : chart.panels()) {
            if (panel.kind() != PanelKind.LOCATION) {
                counts.put(panel.kind().word() + LIMITS, 0);
            }
        }
        named.forEach(signal -> counts.merge(signal.test(), 1, Integer::sum));
        return counts;
    }

    private void tests() throws IOException {
        out.writeObjectFieldStart("tests");
        for (RunRule rule : study.request().tests().rules()) {
            out.writeStringField(rule.id(), rule.description());
        }
        out.writeEndObject();
    }

    private void estimates() throws IOException {
        Optional<String> estimator = chart.sigmaWithin()
                .map(sigma -> sigma.estimator())
                .or(() -> chart.frozen().map(FrozenLimits::estimator));
        if (estimator.isPresent()) {
            out.writeStringField("estimator", estimator.get());
        } else {
            out.writeNullField("estimator");
        }
        if (chart.sigmaBetween().isPresent()) {
            Figures.write(out, "sigmaBetween", chart.sigmaBetween().get());
        }
        if (chart.dispersionCheck().isPresent()) {
            DispersionCheck check = chart.dispersionCheck().get();
            out.writeObjectFieldStart("dispersionCheck");
            Figures.write(out, "sigmaZ", check.sigmaZ());
            Figures.write(out, "lower", check.lower());
            Figures.write(out, "upper", check.upper());
            Figures.write(out, "chiSquared", check.chiSquared());
            Figures.write(out, "degreesOfFreedom", check.degreesOfFreedom());
            Figures.write(out, "p", check.p());
            out.writeBooleanField("applied", check.applied());
            out.writeEndObject();
        }
    }

    private void marks() throws IOException {
        out.writeArrayFieldStart("breaks");
        for (Break each : chart.data().breaks()) {
            out.writeStartObject();
            out.writeNumberField("before", each.number());
            out.writeStringField("label", each.label());
            out.writeStringField("reason", each.reason());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("exclusions");
        for (Exclusion each : chart.data().exclusions()) {
            out.writeStartObject();
            out.writeNumberField("point", each.number());
            out.writeStringField("reason", each.reason());
            out.writeArrayFieldStart("parts");
            for (String part : new LinkedHashSet<>(study.pieces(each.number() - 1))) {
                out.writeString(part);
            }
            out.writeEndArray();
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void stages() throws IOException {
        out.writeArrayFieldStart("stages");
        for (Stage stage : chart.stages()) {
            out.writeStartObject();
            out.writeStringField("label", stage.label());
            out.writeNumberField("from", stage.from());
            out.writeNumberField("to", stage.to());
            out.writeNumberField("limitsFrom", stage.limitsFrom());
            if (stage.reason().isPresent()) {
                out.writeStringField("reason", stage.reason().get());
            } else {
                out.writeNullField("reason");
            }
            out.writeFieldName("frozen");
            frozen(stage.frozen(), origin + ", " + stage.label());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    /** In the form in which a plan takes limits that were set before. */
    private void frozen(Optional<FrozenLimits> limits, String from) throws IOException {
        if (limits.isEmpty()) {
            out.writeNull();
            return;
        }
        FrozenLimits frozen = limits.get();
        out.writeStartObject();
        out.writeStringField("kind", frozen.kind());
        Figures.write(out, "centre", frozen.centre());
        Figures.write(out, "sigma", frozen.sigma());
        out.writeStringField("estimator", frozen.estimator());
        Figures.write(out, "degreesOfFreedom", frozen.degreesOfFreedom());
        out.writeStringField("unit", frozen.unit().word());
        if (frozen.pointSigma().isPresent()) {
            Figures.write(out, "pointSigma", frozen.pointSigma());
        }
        if (!frozen.partSigmas().isEmpty()) {
            out.writeObjectFieldStart("partSigmas");
            for (Map.Entry<String, Double> part : frozen.partSigmas().entrySet()) {
                Figures.write(out, part.getKey(), part.getValue());
            }
            out.writeEndObject();
        }
        out.writeStringField("from", from);
        out.writeEndObject();
    }

    private void panel(String name, Optional<Panel> panel) throws IOException {
        if (panel.isEmpty() || !panel.get().hasLines()) {
            out.writeNullField(name);
            return;
        }
        Optional<Lines> common = panel.get().commonLines();
        out.writeObjectFieldStart(name);
        line("centre", common.map(Lines::centre).or(() -> commonCentre(panel.get())));
        line("lower", common.map(Lines::lower));
        line("upper", common.map(Lines::upper));
        out.writeStringField("statistic", panel.get().statistic());
        if (common.isEmpty()) {
            out.writeStringField("note", "The limits differ from point to point; they stand in limitsByPoint.");
            limitsByPoint(panel.get());
        }
        out.writeEndObject();
    }

    /** The centre line of a panel whose limits differ from point to point, where that is one for all. */
    private static Optional<Double> commonCentre(Panel panel) {
        List<Double> centres = IntStream.range(0, panel.count())
                .mapToObj(panel::lines)
                .flatMap(Optional::stream)
                .map(Lines::centre)
                .distinct()
                .limit(2)
                .toList();
        return centres.size() == 1 ? Optional.of(centres.get(0)) : Optional.empty();
    }

    private void line(String name, Optional<Double> value) throws IOException {
        Figures.write(out, name, value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty));
    }

    private void limitsByPoint(Panel panel) throws IOException {
        out.writeArrayFieldStart("limitsByPoint");
        for (int i = 0; i < panel.count(); i++) {
            Optional<Lines> lines = panel.lines(i);
            out.writeStartObject();
            out.writeNumberField("point", panel.number(i));
            line("centre", lines.map(Lines::centre));
            line("lower", lines.map(Lines::lower));
            line("upper", lines.map(Lines::upper));
            out.writeEndObject();
        }
        out.writeEndArray();
    }
}
