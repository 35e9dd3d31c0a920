package io.github.firstoff.report.section;

import io.github.firstoff.report.figure.DriftFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sheet.DriftFinding;
import io.github.firstoff.sheet.DriftWords;
import io.github.firstoff.stats.FittedLine;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.chart.RuleCatalogue;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.drift.Advice;
import io.github.firstoff.study.drift.Drift;
import io.github.firstoff.study.drift.Forecast;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One characteristic that drifts: the offset to enter, the picture, what happened, what it means and what it does not. */
public final class DriftSection {
    private static final double PICTURE = 92;
    private static final int MOST_MARKS = 12;
    /** Readings are thinned evenly above this many; those of signals stay. */
    private static final int MOST_POINTS = 3000;

    private final DriftFinding finding;
    private final Drift drift;
    private final DriftWords words;
    private final Scale scale;

    /** The section of one finding. */
    public DriftSection(DriftFinding finding) {
        this.finding = finding;
        this.drift = finding.drift();
        this.words = new DriftWords(finding);
        this.scale = drift.data().sample().scale();
    }

    /** The offset and the picture. */
    public List<Block> answer() {
        List<Block> blocks = new ArrayList<>();
        Advice advice = drift.advice();
        advice.offset()
                .ifPresent(offset -> blocks.add(new Block.KeyFigure(
                        Text.of(
                                offset.signum() == 0
                                        ? Labels.text("drift.key.none", words.name())
                                        : Labels.text(
                                                "drift.key",
                                                words.name(),
                                                advice.increment().toPlainString())),
                        offset.signum() == 0 ? "0" : DriftWords.sign(offset),
                        finding.unit().symbol())));
        blocks.add(new Block.FigureBlock(figure(), PICTURE, alternative()));
        return blocks;
    }

    /** What happened, what it means, what it does not, and what to do. */
    public List<Block> story() {
        List<Block> blocks = new ArrayList<>();
        told(blocks, Labels.text("drift.happened"), words.whatHappened());
        List<Block.MarkedItem> signals = signals();
        if (!signals.isEmpty()) {
            blocks.add(new Block.MarkedList(signals));
            if (places().size() > signals.size()) {
                blocks.add(
                        new Block.Note(Text.of(Labels.text("drift.latest-signals", places().size(), signals.size()))));
            }
        }
        told(blocks, Labels.text("drift.means"), words.whatItMeans());
        told(blocks, Labels.text("drift.may-be-done"), words.whatToDo());
        told(blocks, Labels.text("drift.does-not-say"), List.of(words.whatItDoesNot()));
        if (drift.advice().offset().filter(offset -> offset.signum() != 0).isPresent()) {
            blocks.add(new Block.Caution(Text.of(DriftWords.caution())));
        }
        return blocks;
    }

    private static void told(List<Block> blocks, String head, List<String> sentences) {
        if (!sentences.isEmpty()) {
            blocks.add(new Block.Paragraph(Text.bold(head + ". ").plain(String.join(" ", sentences))));
        }
    }

    /** The figures behind it: stretches, indices, conditions. */
    public List<Block> details() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.KeepTogether(List.of(
                new Block.Heading(
                        Labels.text("drift.title.stretches", words.name(), words.batch()), Block.Level.SUBSECTION),
                table())));
        List<IndexMark> marks = new ArrayList<>();
        finding.indices().potential().forEach(index -> add(marks, index));
        finding.indices().wholeLife().forEach(index -> add(marks, index));
        add(marks, finding.indices().worst());
        if (!marks.isEmpty()) {
            blocks.add(new Block.KeepTogether(List.of(
                    new Block.Heading(Labels.text("drift.title.indices"), Block.Level.SUBSECTION),
                    new Block.IndexScale(
                            marks,
                            OptionalDouble.of(drift.settings().requiredIndex()),
                            Text.of(Labels.text(
                                    "drift.indices.conditions",
                                    drift.segments().size(),
                                    drift.spread().stream()
                                            .mapToObj(words::amount)
                                            .findFirst()
                                            .orElse(Figures.DASH)))))));
        }
        List<String> notes = new ArrayList<>();
        finding.remarks().forEach(each -> notes.add(Labels.text(each)));
        finding.indices().remarks().forEach(each -> notes.add(Labels.text(each)));
        notes.add(Labels.text("drift.indices.note"));
        notes.forEach(note -> blocks.add(new Block.Note(Text.of(note))));
        return blocks;
    }

    private static void add(List<IndexMark> marks, Index index) {
        if (index.value().isPresent() && Double.isFinite(index.value().getAsDouble())) {
            marks.add(CapabilitySection.mark(index));
        }
    }

    private Block table() {
        List<Column> columns = List.of(
                Column.narrow(Labels.text("drift.column.pieces")),
                Column.text(Labels.text("drift.column.stretch"), 2.4),
                Column.text(Labels.text("drift.column.slope"), 1.5),
                Column.narrow("p"),
                Column.narrow(Labels.text("drift.column.spread")),
                Column.text(Labels.text("drift.column.residuals"), 1.6));
        List<TableRow> rows = new ArrayList<>();
        for (Drift.Segment segment : drift.segments()) {
            Optional<Drift.Trend> trend = segment.trend();
            rows.add(TableRow.of(
                    Cell.text(segment.firstPiece() + "–" + segment.lastPiece()),
                    Cell.text(words.label(segment) + ". " + words.evidence(segment) + "."),
                    Cell.text(trend.map(each -> words.amounts(each.slopeInterval()))
                            .orElseGet(() -> Labels.text("drift.too-few"))),
                    Cell.text(
                            trend.map(each -> probability(each.significance())).orElse(Figures.DASH)),
                    Cell.text(trend.map(each -> words.amount(each.residualStandardDeviation()))
                            .orElse(Figures.DASH)),
                    Cell.text(trend.map(each -> Labels.text(
                                    "drift.runs",
                                    each.runs().runs(),
                                    Figures.rounded(each.runs().expected(), 0),
                                    DriftWords.probability(each.runs().significance())))
                            .orElse(Figures.DASH))));
        }
        return new Block.Table(columns, rows);
    }

    private static String probability(double p) {
        return DriftWords.probability(p).replace("p = ", "").replace("p ", "");
    }

    private String alternative() {
        return Labels.text("drift.alternative", words.name(), words.forecastInShort());
    }

    private DriftFigure figure() {
        Map<Integer, String> marks = marks();
        List<DriftFigure.Point> points = new ArrayList<>();
        int every = Math.max(1, drift.data().sample().size() / MOST_POINTS);
        for (int i = 0; i < drift.data().sample().size(); i++) {
            String mark = marks.getOrDefault(i + 1, "");
            boolean edge = i == 0 || i + 1 == drift.data().sample().size();
            if (i % every == 0 || edge || !mark.isEmpty()) {
                points.add(new DriftFigure.Point(
                        drift.data().piece(i), drift.data().sample().value(i), mark));
            }
        }
        double spread = drift.spread().orElse(0);
        List<DriftFigure.Stretch> stretches = drift.segments().stream()
                .map(segment -> new DriftFigure.Stretch(
                        segment.firstPiece(),
                        segment.lastPiece(),
                        words.label(segment),
                        segment.trend()
                                .map(trend -> height(trend.line(), segment.firstPiece()))
                                .orElse(Double.NaN),
                        segment.trend()
                                .map(trend -> height(trend.line(), segment.lastPiece()))
                                .orElse(Double.NaN),
                        3 * spread))
                .toList();
        return new DriftFigure(
                finding.result().characteristic().characteristic().feature(),
                finding.unit().symbol(),
                points,
                stretches,
                continued(),
                lines());
    }

    private double height(FittedLine line, long piece) {
        return scale.value(line.at((double) piece));
    }

    private Optional<DriftFigure.Continued> continued() {
        Forecast forecast = drift.forecast();
        if (forecast.piece().isEmpty()) {
            return Optional.empty();
        }
        FittedLine line = forecast.line().orElseThrow();
        return Optional.of(new DriftFigure.Continued(
                forecast.lastPiece(),
                height(line, forecast.lastPiece()),
                scale.length(line.slope()),
                drift.settings().sigmas() * scale.length(line.deviation()),
                scale.value(scale.deviation(forecast.limit().orElseThrow())),
                forecast.piece().orElseThrow(),
                forecast.interval().orElseThrow().lower(),
                forecast.interval().orElseThrow().upper(),
                Labels.text("drift.met-at", forecast.lastGoodPiece(), DriftWords.bounds(forecast))));
    }

    private List<LevelLine> lines() {
        List<LevelLine> lines = new ArrayList<>();
        boolean guarded = finding.guard().signum() > 0;
        drift.data()
                .drawing()
                .requiredLower()
                .ifPresent(limit -> lines.add(line(Labels.text("line.lower-limit"), limit)));
        drift.data().drawing().upper().ifPresent(limit -> lines.add(line(Labels.text("line.upper-limit"), limit)));
        if (guarded) {
            drift.data().allowed().requiredLower().ifPresent(limit -> lines.add(guardLine(limit)));
            drift.data().allowed().upper().ifPresent(limit -> lines.add(guardLine(limit)));
        }
        drift.data()
                .drawing()
                .aim()
                .ifPresent(aim -> lines.add(new LevelLine(
                        LevelLine.Kind.TARGET,
                        Labels.text("line.target"),
                        Figures.of(aim.stripTrailingZeros()),
                        place(aim))));
        return lines;
    }

    private LevelLine line(String name, BigDecimal limit) {
        return new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, name, Figures.of(limit), place(limit));
    }

    private LevelLine guardLine(BigDecimal limit) {
        return new LevelLine(
                LevelLine.Kind.CONTROL_LIMIT, Labels.text("drift.less-guard-band"), Figures.of(limit), place(limit));
    }

    private double place(BigDecimal value) {
        return scale.value(scale.deviation(value));
    }

    /** The latest signals get a number; several at one reading share it. */
    private Map<Integer, String> marks() {
        List<Integer> places = places();
        Map<Integer, String> marks = new LinkedHashMap<>();
        for (int place : places.subList(Math.max(0, places.size() - MOST_MARKS), places.size())) {
            marks.put(place, Integer.toString(marks.size() + 1));
        }
        return marks;
    }

    /** The readings (from 1) at which tests signal, in order. */
    private List<Integer> places() {
        return finding.signals().stream().map(Signal::at).distinct().sorted().toList();
    }

    private List<Block.MarkedItem> signals() {
        List<Block.MarkedItem> items = new ArrayList<>();
        for (Map.Entry<Integer, String> mark : marks().entrySet()) {
            List<String> tests = finding.signals().stream()
                    .filter(signal -> signal.at() == mark.getKey())
                    .map(signal ->
                            Labels.text("drift.signal-side", test(signal.test()), ChartWords.side(signal.side())))
                    .toList();
            items.add(new Block.MarkedItem(
                    mark.getValue(),
                    Text.of(Labels.text(
                            "drift.signal",
                            drift.data().piece(mark.getKey() - 1),
                            finding.judgements().get(mark.getKey() - 1).part(),
                            String.join("; ", tests)))));
        }
        return items;
    }

    private static String test(String id) {
        return RuleCatalogue.rule(id).map(rule -> Labels.text(rule.remark())).orElse(id);
    }

    /** The row of the table of those that need attention first. */
    public static TableRow row(DriftFinding finding) {
        DriftWords words = new DriftWords(finding);
        Forecast forecast = finding.drift().forecast();
        return TableRow.of(
                Cell.text(finding.number()),
                new Cell.Requirement(
                        Wording.feature(finding.result().characteristic()),
                        Notations.of(finding.result().characteristic().characteristic())),
                Cell.text(words.batch()),
                Cell.text(finding.drift()
                        .current()
                        .trend()
                        .map(trend -> words.amounts(trend.slopeInterval()))
                        .orElse(Figures.DASH)),
                Cell.text(
                        forecast.piece().isEmpty()
                                ? Labels.text("drift.no-forecast-word")
                                : forecast.isReached()
                                        ? Labels.text("drift.reached")
                                        : Labels.text(
                                                "drift.pieces-left",
                                                forecast.remaining(),
                                                forecast.lastGoodPiece(),
                                                DriftWords.bounds(forecast))),
                Cell.text(finding.drift()
                        .advice()
                        .offset()
                        .map(offset -> offset.signum() == 0 ? Labels.text("drift.none") : words.signed(offset))
                        .orElse(Figures.DASH)));
    }

    /** The columns of that table. */
    public static List<Column> columns() {
        return List.of(
                Column.narrow(Labels.text("column.number")),
                TableParts.requirement(1.6),
                Column.text(Labels.text("drift.column.batch"), 1),
                Column.text(Labels.text("drift.column.slope"), 1.2),
                Column.text(Labels.text("drift.column.pieces-left"), 1.3),
                Column.narrow(Labels.text("drift.column.offset-now")));
    }
}
