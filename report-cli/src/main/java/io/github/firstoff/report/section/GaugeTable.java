package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.study.conformity.GaugeAssessment;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The gauges that were used, with what is known of their calibration. */
public final class GaugeTable {
    /** Ratios are printed towards zero: one just short of what is wanted is not shown as if it reached it. */
    private static final MathContext RATIO = new MathContext(2, RoundingMode.DOWN);

    private static final int MOST_REMARKS = 4;

    private final Sheet sheet;
    /** Gauge by number, with the characteristics it was used for. */
    private final Map<String, List<String>> uses = new LinkedHashMap<>();

    /** The gauges of one sheet. */
    public GaugeTable(Sheet sheet) {
        this.sheet = sheet;
        for (CharacteristicResult each : sheet.result().characteristics()) {
            if (!each.judgements().isEmpty()) {
                for (String gauge : new Readings(each).gauges()) {
                    uses.computeIfAbsent(gauge, id -> new ArrayList<>()).add(each.number());
                }
            }
        }
    }

    /** A heading and the table; nothing where no gauge is known. */
    public List<Block> blocks() {
        if (uses.isEmpty()) {
            return List.of(
                    Block.Heading.of(Labels.text("gauges.title")),
                    new Block.Paragraph(Text.of(Labels.text("gauges.not-stated"))));
        }
        List<Column> columns = List.of(
                Column.narrow(Labels.text("column.gauge")),
                Column.text(Labels.text("column.what"), 3),
                Column.figure(Labels.text("column.resolution"), ""),
                Column.figure(head(), ""),
                Column.narrow(Labels.text("column.unit")),
                Column.narrow(Labels.text("column.calibration-due")),
                Column.narrow(Labels.text("column.certificate")),
                Column.text(Labels.text("column.used-for"), 2));
        List<TableRow> rows = new ArrayList<>();
        uses.forEach((id, numbers) -> rows.add(row(id, numbers)));
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(Labels.text("gauges.title")));
        blocks.add(new Block.Table(columns, rows));
        remarks().ifPresent(text -> blocks.add(new Block.Note(Text.of(text))));
        checks(blocks);
        return blocks;
    }

    /** Whether the gauges are fine enough: a caution for each that is not, one note for those that are short of it. */
    private void checks(List<Block> blocks) {
        List<String> coarse = new ArrayList<>();
        List<String> further = new ArrayList<>();
        for (Finding finding : sheet.findings()) {
            for (GaugeAssessment each : finding.gauges()) {
                List<Remark> cautions = each.remarks();
                boolean graded = each.grade() == GaugeAssessment.Grade.TOO_COARSE
                        || each.grade() == GaugeAssessment.Grade.COARSE;
                if (each.grade() == GaugeAssessment.Grade.TOO_COARSE) {
                    blocks.add(new Block.Caution(Text.of(about(each) + Labels.text(cautions.get(0)) + ".")));
                } else if (each.grade() == GaugeAssessment.Grade.COARSE) {
                    coarse.add(Labels.text(
                            "gauges.on",
                            each.gauge(),
                            each.characteristic(),
                            each.ratio().orElseThrow().round(RATIO).toPlainString()));
                }
                cautions.stream()
                        .skip(graded ? 1 : 0)
                        .forEach(remark -> further.add(about(each) + Labels.text(remark) + "."));
            }
        }
        if (!coarse.isEmpty()) {
            blocks.add(new Block.Note(Text.of(Labels.text("gauges.coarse", String.join(", ", coarse)))));
        }
        further.stream().limit(MOST_REMARKS).forEach(text -> blocks.add(new Block.Note(Text.of(text))));
        if (further.size() > MOST_REMARKS) {
            blocks.add(new Block.Note(Text.of(Labels.text("gauges.more", further.size() - MOST_REMARKS))));
        }
    }

    private static String about(GaugeAssessment assessment) {
        return Labels.text("gauges.about", assessment.characteristic());
    }

    private TableRow row(String id, List<String> numbers) {
        Optional<Gauge> gauge = sheet.plan().gauge(id);
        if (gauge.isEmpty()) {
            return TableRow.of(
                    Cell.text(id),
                    Cell.text(Labels.text("gauges.unlisted")),
                    Cell.figure(Figures.DASH),
                    Cell.figure(Figures.DASH),
                    Cell.EMPTY,
                    Cell.text(Wording.notStated()),
                    Cell.text(Wording.notStated()),
                    Cell.text(String.join(", ", numbers)));
        }
        Gauge known = gauge.get();
        boolean measures = known.resolution().isPresent() || known.uncertainty().isPresent();
        return TableRow.of(
                Cell.text(id),
                Cell.text(Wording.orNotStated(known.kind())),
                Cell.figure(known.resolution().map(Figures::of).orElse(Figures.DASH)),
                Cell.figure(known.uncertainty().map(GaugeTable::uncertainty).orElse(Figures.DASH)),
                Cell.text(measures ? known.unit().symbol() : ""),
                Cell.text(known.calibrationDue().map(Object::toString).orElseGet(Wording::notStated)),
                Cell.text(Wording.orNotStated(known.certificate())),
                Cell.text(String.join(", ", numbers)));
    }

    private static String uncertainty(Uncertainty uncertainty) {
        String constant = Figures.of(uncertainty.constant());
        if (uncertainty.perLength().signum() == 0) {
            return constant;
        }
        return constant + " + " + Figures.of(uncertainty.perLength()) + " L";
    }

    /** The coverage factor in the head where all share one, else the sentence of {@link #remarks()}. */
    private String head() {
        return factors().size() == 1
                ? Labels.text("gauges.uncertainty-k", factors().get(0))
                : Labels.text("gauges.uncertainty");
    }

    private List<Uncertainty> uncertainties() {
        return uses.keySet().stream()
                .map(id -> sheet.plan().gauge(id))
                .flatMap(Optional::stream)
                .map(Gauge::uncertainty)
                .flatMap(Optional::stream)
                .toList();
    }

    /** A factor from an uncertainty budget has more digits than anybody needs. */
    private static String factor(Uncertainty uncertainty) {
        BigDecimal factor = uncertainty.coverageFactor();
        BigDecimal shown = factor.scale() > 2 ? factor.setScale(2, RoundingMode.HALF_EVEN) : factor;
        return shown.stripTrailingZeros().toPlainString();
    }

    private List<String> factors() {
        return uncertainties().stream().map(GaugeTable::factor).distinct().toList();
    }

    private Optional<String> remarks() {
        List<String> sentences = new ArrayList<>();
        if (factors().size() > 1) {
            sentences.add(Labels.text(
                    "gauges.factors",
                    uses.keySet().stream()
                            .map(id -> sheet.plan().gauge(id))
                            .flatMap(Optional::stream)
                            .filter(gauge -> gauge.uncertainty().isPresent())
                            .map(gauge -> gauge.id() + " "
                                    + factor(gauge.uncertainty().orElseThrow()))
                            .collect(Collectors.joining(", "))));
        }
        if (uncertainties().stream().anyMatch(each -> each.perLength().signum() != 0)) {
            sentences.add(Labels.text("gauges.length"));
        }
        return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
    }

    /** The same in running text, for a sheet with little room: gauge, certificate, due date; U where it decided. */
    public Block inShort() {
        if (uses.isEmpty()) {
            return new Block.Note(Text.of(Labels.text("gauges.short-none")));
        }
        boolean guarded = sheet.result().judged().stream()
                .anyMatch(each -> each.characteristic().rule() == RuleChoice.GUARDED);
        String text = uses.keySet().stream().map(id -> inShort(id, guarded)).collect(Collectors.joining("; "));
        return new Block.Note(Text.bold(Labels.text("gauges.title"))
                .plain(" " + Labels.text(guarded ? "gauges.short-guarded" : "gauges.short", text)));
    }

    private String inShort(String id, boolean withUncertainty) {
        Optional<Gauge> gauge = sheet.plan().gauge(id);
        if (gauge.isEmpty()) {
            return Labels.text("gauges.short-unlisted", id);
        }
        Gauge known = gauge.get();
        List<String> parts = new ArrayList<>();
        parts.add(known.certificate().orElseGet(() -> Labels.text("gauges.no-certificate")));
        parts.add(known.calibrationDue().map(Object::toString).orElseGet(() -> Labels.text("gauges.no-due-date")));
        known.uncertainty()
                .filter(each -> withUncertainty)
                .ifPresent(each -> parts.add("U " + Figures.with(uncertainty(each), known.unit())));
        return id + known.kind().map(kind -> " " + kind).orElse("") + " (" + String.join(", ", parts) + ")";
    }
}
