package io.github.firstoff.report.section;

import io.github.firstoff.assembly.ElasticMaterial;
import io.github.firstoff.assembly.Joint;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.figure.BandFigure;
import io.github.firstoff.report.figure.ConsequenceFigure;
import io.github.firstoff.report.figure.ConsequenceFigure.Ladder;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Scale;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.study.pressfit.Chances;
import io.github.firstoff.study.pressfit.ElasticJoint;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.Range;
import io.github.firstoff.study.pressfit.Sizes;
import io.github.firstoff.study.pressfit.State;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/** What the sheet of a press fit says, apart from the pairs. */
public final class FitSection {
    private static final double UM = 1000;
    private static final double KILO = 1000;
    private static final int STEPS = 40;
    private static final double MOST_BEARINGS_STAND = 120;
    private static final double FIGURE_HEIGHT = 72;
    private static final double BAND_HEIGHT = 42;

    private final FitSheet sheet;
    private final FitResult result;
    private final Joint joint;
    private final FitWords words;
    private final ElasticJoint model;

    /** The section of one sheet. */
    public FitSection(FitSheet sheet) {
        this.sheet = sheet;
        this.result = sheet.result();
        this.joint = result.joint();
        this.words = new FitWords(result);
        this.model = result.model();
    }

    /** The answer in one sentence. */
    public Block headline() {
        return new Block.Headline(Text.of(words.answer()), result.verdicts().accepted() ? Tone.GOOD : Tone.OUT);
    }

    /** What needs a decision. */
    public List<Block> decisions() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(Labels.text("exceptions.title")));
        List<String> open = words.decisions();
        if (open.isEmpty()) {
            blocks.add(new Block.Paragraph(Text.of(Labels.text("press.nothing-open"))));
        }
        open.forEach(each -> blocks.add(new Block.Paragraph(Text.of(each))));
        return blocks;
    }

    // ------------------------------------------------------------------ the two pictures

    /** The interference with all its consequences. */
    public List<Block> interference() {
        double low = UM * Math.min(number(result.least()), first());
        double high = UM * Math.max(number(result.greatest()), last());
        double air = Math.max(0.06 * (high - low), 0.5);
        Scale scale = new Scale(low - air, high + air);
        List<LevelLine> lines = new ArrayList<>();
        lines.add(line(LevelLine.Kind.CENTRE, Labels.text("press.least"), UM * number(result.least())));
        lines.add(line(LevelLine.Kind.CENTRE, Labels.text("press.mean"), UM * result.mean()));
        lines.add(line(LevelLine.Kind.CENTRE, Labels.text("press.greatest"), UM * number(result.greatest())));
        addBound(
                lines,
                scale,
                Labels.text("press.holds-from"),
                UM * result.bounds().grip(),
                RoundingMode.CEILING);
        addBound(
                lines,
                scale,
                Labels.text("press.elastic-to"),
                UM * result.bounds().yield(),
                RoundingMode.FLOOR);
        result.bounds()
                .clearance()
                .ifPresent(
                        at -> addBound(lines, scale, Labels.text("press.clearance-to"), UM * at, RoundingMode.FLOOR));
        List<ConsequenceFigure.Place> curve = new ArrayList<>();
        for (int i = 0; i < result.profile().at().size(); i++) {
            curve.add(new ConsequenceFigure.Place(
                    UM * result.profile().at().get(i),
                    result.profile().density().get(i)));
        }
        ConsequenceFigure figure = new ConsequenceFigure(
                Labels.text("press.interference-at"),
                "µm",
                scale,
                curve,
                result.profile().measured().stream().map(each -> UM * each).toList(),
                lines,
                ladders());
        return together(
                Block.Heading.of(Labels.text("press.title.interference")),
                new Block.FigureBlock(
                        figure,
                        FIGURE_HEIGHT,
                        Labels.text(
                                "press.interference.alternative",
                                UM * number(result.least()),
                                UM * number(result.greatest()))),
                new Block.Note(Text.of(Labels.text(
                                "press.interference.note",
                                FitWords.micrometres(result.smoothing()),
                                joint.smoothing().origin())
                        + " " + words.basis())));
    }

    /** What the criterion of stress is called. */
    public String criterion() {
        return Labels.text(joint.criterion().remark());
    }

    private double first() {
        return result.profile().at().isEmpty()
                ? number(result.least())
                : result.profile().at().get(0);
    }

    private double last() {
        List<Double> at = result.profile().at();
        return at.isEmpty() ? number(result.greatest()) : at.get(at.size() - 1);
    }

    /** A bound is rounded to its safe side. */
    private static void addBound(List<LevelLine> lines, Scale scale, String name, double at, RoundingMode rounding) {
        if (at > scale.low() && at < scale.high()) {
            lines.add(new LevelLine(
                    LevelLine.Kind.SPECIFICATION_LIMIT, name, FitWords.minus(FitWords.rounded(at, 1, rounding)), at));
        }
    }

    private static LevelLine line(LevelLine.Kind kind, String name, double at) {
        return new LevelLine(kind, name, FitWords.minus(FitWords.rounded(at, 1, RoundingMode.HALF_EVEN)), at);
    }

    /** Where on the scale, in µm, the parts begin to touch at a temperature. */
    private double zero(double temperature) {
        return UM * (result.smoothing() - model.thermalInterference(temperature));
    }

    private List<Ladder> ladders() {
        List<Ladder> ladders = new ArrayList<>();
        State assembly = result.at(State.Moment.ASSEMBLY);
        State weakest = result.weakest();
        State tightest = result.tightest();
        double perMicrometre = model.pressure(1) / UM;
        String room = FitWords.degrees(assembly.temperature());
        ladders.add(new Ladder(
                Labels.text("press.ladder.pressure", room),
                "MPa",
                zero(assembly.temperature()),
                0,
                perMicrometre,
                Double.NaN));
        ladders.add(new Ladder(
                Labels.text("press.ladder.press-in", room),
                "kN",
                zero(assembly.temperature()),
                0,
                model.axialForce(perMicrometre, number(joint.friction().greatest())) / KILO,
                Double.NaN));
        ladders.add(new Ladder(
                Labels.text("press.ladder.held", FitWords.degrees(weakest.temperature())),
                "kN",
                zero(weakest.temperature()),
                0,
                model.axialForce(perMicrometre, number(joint.friction().least())) / KILO,
                joint.demand().force().map(force -> number(force) / KILO).orElse(Double.NaN)));
        String tight = FitWords.degrees(tightest.temperature());
        ladders.add(new Ladder(
                Labels.text("press.ladder.part", words.outer(), tight),
                Labels.text("press.of-yield"),
                zero(tightest.temperature()),
                0,
                100 * model.outerEquivalent(perMicrometre) / model.outer().yield(),
                100));
        if (joint.inner().bearing().isEmpty()) {
            ladders.add(new Ladder(
                    Labels.text("press.ladder.part", words.inner(), tight),
                    Labels.text("press.of-yield"),
                    zero(tightest.temperature()),
                    0,
                    100 * model.innerEquivalent(perMicrometre) / model.inner().yield(),
                    100));
        }
        clearanceLadder().ifPresent(ladders::add);
        return ladders;
    }

    private Optional<Ladder> clearanceLadder() {
        State worst = worstClearance();
        if (worst.clearanceLeft().isEmpty() || perPressure() == 0) {
            return Optional.empty();
        }
        double start = worst.clearanceLeft().get().minimum()
                + perPressure() * worst.pressure().maximum();
        return Optional.of(new Ladder(
                Labels.text("press.ladder.clearance", FitWords.degrees(worst.temperature())),
                "µm",
                zero(worst.temperature()),
                start,
                -perPressure() * model.pressure(1) / UM,
                number(joint.demand().leastClearance())));
    }

    private double perPressure() {
        return UM * (joint.outer().bearing().isPresent() ? model.outsideGrowth(1) : model.insideShrinkage(1));
    }

    private State worstClearance() {
        State cold = result.at(State.Moment.COLDEST);
        State hot = result.at(State.Moment.HOTTEST);
        return cold.clearanceLoss().maximum() >= hot.clearanceLoss().maximum() ? cold : hot;
    }

    /** Cold to hot; empty where there is only one temperature. */
    public List<Block> coldToHot() {
        double cold = result.at(State.Moment.COLDEST).temperature();
        double hot = result.at(State.Moment.HOTTEST).temperature();
        if (!(cold < hot)) {
            return List.of();
        }
        double least = number(joint.friction().least());
        double greatest = number(joint.friction().greatest());
        List<BandFigure.Panel> panels = new ArrayList<>();
        List<LevelLine> asked = new ArrayList<>();
        joint.demand()
                .force()
                .ifPresent(force -> asked.add(new LevelLine(
                        LevelLine.Kind.SPECIFICATION_LIMIT, Labels.text("press.asked"), "", number(force) / KILO)));
        panels.add(new BandFigure.Panel(
                Labels.text("press.held-along"),
                "kN",
                band(cold, hot, p -> new double[] {
                    model.axialForce(p[0], least) / KILO,
                    model.axialForce(p[1], (least + greatest) / 2) / KILO,
                    model.axialForce(p[2], greatest) / KILO
                }),
                asked));
        panels.add(new BandFigure.Panel(
                Labels.text("press.stress", words.outer()),
                Labels.text("press.of-yield"),
                band(
                        cold,
                        hot,
                        p -> scaled(
                                p,
                                100 * model.outerEquivalent(1) / model.outer().yield())),
                List.of()));
        Optional<Range> left = result.at(State.Moment.COLDEST).clearanceLeft();
        if (left.isPresent()) {
            State state = result.at(State.Moment.COLDEST);
            double per = perPressure();
            double low = left.get().minimum() + per * state.pressure().maximum();
            double middle = left.get().mean() + per * state.pressure().mean();
            double high = left.get().maximum() + per * state.pressure().minimum();
            panels.add(new BandFigure.Panel(
                    Labels.text("press.bearing-clearance-left"),
                    "µm",
                    band(cold, hot, p -> new double[] {low - per * p[2], middle - per * p[1], high - per * p[0]}),
                    List.of(new LevelLine(
                            LevelLine.Kind.SPECIFICATION_LIMIT,
                            Labels.text("press.at-least"),
                            joint.demand().leastClearance().toPlainString(),
                            number(joint.demand().leastClearance())))));
        } else {
            panels.add(new BandFigure.Panel(
                    Labels.text("press.stress", words.inner()),
                    Labels.text("press.of-yield"),
                    band(
                            cold,
                            hot,
                            p -> scaled(
                                    p,
                                    100
                                            * model.innerEquivalent(1)
                                            / model.inner().yield())),
                    List.of()));
        }
        return together(
                Block.Heading.of(Labels.text("press.title.cold-to-hot")),
                new Block.FigureBlock(
                        new BandFigure(Labels.text("press.temperature-axis"), panels),
                        BAND_HEIGHT,
                        Labels.text("press.cold-to-hot.alternative", cold, hot)),
                new Block.Note(Text.of(Labels.text("press.cold-to-hot.note"))));
    }

    private static List<Block> together(Block... blocks) {
        return List.of(Block.KeepTogether.of(blocks));
    }

    private static double[] scaled(double[] pressures, double factor) {
        return new double[] {pressures[0] * factor, pressures[1] * factor, pressures[2] * factor};
    }

    private List<BandFigure.Point> band(double cold, double hot, Function<double[], double[]> of) {
        List<BandFigure.Point> points = new ArrayList<>();
        double[] raw = {number(result.least()), result.mean(), number(result.greatest())};
        for (int i = 0; i <= STEPS; i++) {
            double temperature = cold + (hot - cold) * i / STEPS;
            double[] pressures = new double[raw.length];
            for (int k = 0; k < raw.length; k++) {
                pressures[k] = model.pressure(raw[k] - result.smoothing() + model.thermalInterference(temperature));
            }
            double[] values = of.apply(pressures);
            points.add(new BandFigure.Point(temperature, values[0], values[1], values[2]));
        }
        return points;
    }

    // ------------------------------------------------------------------ figures

    /** All results in figures. */
    public List<Block> figures() {
        State assembly = result.at(State.Moment.ASSEMBLY);
        State cold = result.at(State.Moment.COLDEST);
        State hot = result.at(State.Moment.HOTTEST);
        List<Column> columns = new ArrayList<>();
        String least = Labels.text("press.least");
        String greatest = Labels.text("press.greatest");
        columns.add(Column.text(Labels.text("press.column.quantity"), 3));
        columns.add(Column.narrow(Labels.text("press.column.unit")));
        String pressed = Labels.text("press.column.pressed", FitWords.degrees(assembly.temperature()));
        String whenCold = Labels.text("press.column.cold", FitWords.degrees(cold.temperature()));
        String whenHot = Labels.text("press.column.hot", FitWords.degrees(hot.temperature()));
        columns.add(Column.figure(pressed, least));
        columns.add(Column.figure(pressed, Labels.text("press.mean")));
        columns.add(Column.figure(pressed, greatest));
        columns.add(Column.figure(whenCold, least));
        columns.add(Column.figure(whenCold, greatest));
        columns.add(Column.figure(whenHot, least));
        columns.add(Column.figure(whenHot, greatest));
        List<TableRow> rows = new ArrayList<>();
        rows.add(row(Labels.text("press.row.effective"), "µm", State::interference, FitSection::micrometres));
        rows.add(row(Labels.text("press.row.pressure"), "MPa", State::pressure, FitSection::plain));
        rows.add(row(Labels.text("press.row.slips-along"), "kN", State::axial, FitSection::thousandth));
        rows.add(row(Labels.text("press.row.slips-around"), "N·m", State::torque, FitSection::plain));
        rows.add(row(
                Labels.text("press.row.equivalent", words.outer(), criterion()),
                "MPa",
                State::outerStress,
                FitSection::plain));
        rows.add(row(Labels.text("press.row.hoop-bore", words.outer()), "MPa", State::outerHoop, FitSection::plain));
        rows.add(row(
                Labels.text("press.row.equivalent", words.inner(), criterion()),
                "MPa",
                State::innerStress,
                FitSection::plain));
        rows.add(row(Labels.text("press.row.hoop", words.inner()), "MPa", State::innerHoop, FitSection::plain));
        rows.add(row(Labels.text("press.row.bore-opens"), "µm", State::boreGrowth, FitSection::micrometres));
        rows.add(row(Labels.text("press.row.outside-grows"), "µm", State::outsideGrowth, FitSection::micrometres));
        if (joint.inner().farDiameter().signum() > 0) {
            rows.add(row(
                    Labels.text(
                            joint.inner().bearing().isPresent()
                                    ? "press.row.raceway-shrinks"
                                    : "press.row.inside-shrinks"),
                    "µm",
                    State::insideShrinkage,
                    FitSection::micrometres));
        }
        if (joint.bearing().isPresent()) {
            rows.add(row(Labels.text("press.row.clearance-lost"), "µm", State::clearanceLoss, FitSection::plain));
        }
        if (assembly.clearanceLeft().isPresent()) {
            rows.add(row(
                    Labels.text("press.row.clearance-left"),
                    "µm",
                    state -> state.clearanceLeft().orElseThrow(),
                    FitSection::plain));
        }
        return List.of(
                Block.Heading.of(Labels.text("press.title.figures")),
                new Block.Table(columns, rows),
                new Block.Note(Text.of(Labels.text(
                        "press.figures.note",
                        joint.friction().least().toPlainString(),
                        joint.friction().greatest().toPlainString(),
                        words.outer(),
                        plainYield(joint.outer().material()),
                        words.inner(),
                        plainYield(joint.inner().material())))));
    }

    private static String plainYield(ElasticMaterial material) {
        return material.yield().toPlainString() + "\u00A0MPa";
    }

    private static String plain(double value) {
        return FitWords.minus(FitWords.rounded(value, 1, RoundingMode.HALF_EVEN));
    }

    private static String micrometres(double value) {
        return plain(UM * value);
    }

    private static String thousandth(double value) {
        return FitWords.rounded(value / KILO, 2, RoundingMode.HALF_EVEN);
    }

    private TableRow row(String name, String unit, Function<State, Range> quantity, DoubleFunction<String> figure) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.text(name));
        cells.add(Cell.text(unit));
        Range assembly = quantity.apply(result.at(State.Moment.ASSEMBLY));
        cells.add(Cell.figure(figure.apply(assembly.minimum())));
        cells.add(Cell.figure(figure.apply(assembly.mean())));
        cells.add(Cell.figure(figure.apply(assembly.maximum())));
        for (State.Moment moment : List.of(State.Moment.COLDEST, State.Moment.HOTTEST)) {
            Range range = quantity.apply(result.at(moment));
            cells.add(Cell.figure(figure.apply(range.minimum())));
            cells.add(Cell.figure(figure.apply(range.maximum())));
        }
        return new TableRow.Cells(cells);
    }

    /** The joint, its parts, and the probabilities. */
    public Block facts() {
        List<Block.Fact> about = new ArrayList<>();
        about.add(Block.Fact.of(
                Labels.text("press.fact.joint"),
                Labels.text(
                        "press.fact.joint-size",
                        joint.nominal().toPlainString(),
                        joint.length().toPlainString())));
        about.add(Block.Fact.of(
                Labels.text("press.fact.friction"),
                joint.friction().least().compareTo(joint.friction().greatest()) == 0
                        ? joint.friction().least().toPlainString()
                        : span(
                                joint.friction().least().toPlainString(),
                                joint.friction().greatest().toPlainString())));
        about.add(Block.Fact.of(Labels.text("press.fact.criterion"), criterion()));
        joint.demand()
                .force()
                .ifPresent(force -> about.add(Block.Fact.of(
                        Labels.text("press.fact.must-hold"),
                        Labels.text("press.fact.along", force.toPlainString() + "\u00A0N"))));
        joint.demand()
                .torque()
                .ifPresent(torque -> about.add(Block.Fact.of(
                        Labels.text("press.fact.must-hold"),
                        Labels.text("press.fact.around", torque.toPlainString() + "\u00A0N·m"))));
        about.add(Block.Fact.of(Labels.text("press.fact.wanted-of"), FitWords.shareAsked(result.share())));
        Chances.Shares shares = result.chances().reckoned();
        Chances.Drawn drawn = result.chances().drawn();
        List<Block.Fact> chances = new ArrayList<>();
        chances.add(Block.Fact.of(
                Labels.text("press.fact.holds"),
                chance(shares.grip(), drawn.shares().grip())));
        chances.add(Block.Fact.of(
                Labels.text("press.fact.below-yield"),
                chance(shares.noOverstress(), drawn.shares().noOverstress())));
        if (shares.clearance().isPresent() && drawn.shares().clearance().isPresent()) {
            chances.add(Block.Fact.of(
                    Labels.text("press.fact.clearance"),
                    chance(
                            shares.clearance().getAsDouble(),
                            drawn.shares().clearance().getAsDouble())));
        }
        result.chances()
                .nextPair()
                .ifPresent(next -> chances.add(Block.Fact.of(
                        Labels.text("press.fact.next-pair"),
                        Labels.text("press.fact.next-pair-holds", FitWords.percent(next.grip())))));
        result.chances()
                .counted()
                .ifPresent(counted -> chances.add(Block.Fact.of(
                        Labels.text("press.fact.counted"),
                        Labels.text(
                                "press.fact.counted-pairs", counted.grip(), counted.pairs(), counted.noOverstress()))));
        return new Block.Facts(List.of(
                new Block.FactGroup(Labels.text("press.facts.joint"), about),
                new Block.FactGroup(Labels.text("press.facts.parts"), parts()),
                new Block.FactGroup(Labels.text("press.facts.chances"), chances)));
    }

    private static String span(String low, String high) {
        return Labels.text("figures.span", low, high);
    }

    private List<Block.Fact> parts() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Block.Fact.of(words.outer(), part(joint.outer(), result.outer(), "press.part.outside")));
        facts.add(Block.Fact.of(words.inner(), part(joint.inner(), result.inner(), "press.part.inside")));
        joint.bearing()
                .ifPresent(bearing -> facts.add(Block.Fact.of(Labels.text("press.fact.bearing"), told(bearing))));
        return facts;
    }

    private static String told(Joint.Bearing bearing) {
        StringBuilder told = new StringBuilder(
                Labels.text("press.bearing.class", Labels.word("ring-class", bearing.toleranceClass())));
        bearing.group().ifPresent(group -> told.append(", ").append(Labels.text("press.bearing.group", group)));
        bearing.clearance()
                .ifPresent(limits -> told.append(" (")
                        .append(Labels.text(
                                "press.bearing.unmounted",
                                span(
                                        limits.lower().orElseThrow().toPlainString(),
                                        limits.upper().orElseThrow().toPlainString())))
                        .append(')'));
        if (bearing.fromMemory()) {
            told.append("; ").append(Labels.text("press.bearing.from-memory"));
        }
        return told.toString();
    }

    private static String part(Joint.Member member, Sizes sizes, String far) {
        String range = span(Figures.of(sizes.least()), Figures.of(sizes.greatest())) + "\u00A0mm";
        return member.part().map(part -> part + ", ").orElse("")
                + member.material().name()
                + ", "
                + (member.farDiameter().signum() == 0
                        ? Labels.text("press.part.solid")
                        : Labels.text(far, member.farDiameter().toPlainString()))
                + "; "
                + (sizes.measured()
                        ? Labels.text("press.part.measured", sizes.count(), range)
                        : (member.stated().isEmpty() ? "" : Labels.text(member.stated()) + ": ") + range)
                + "; Rz\u00A0" + member.roughness().toPlainString() + "\u00A0µm";
    }

    private static String chance(double reckoned, double drawn) {
        return FitWords.percent(reckoned) + "; " + FitWords.rounded(100 * drawn, 2, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    /** How to join without force. */
    public List<Block> joining() {
        FitResult.Joining joining = result.joining();
        String heat = FitWords.degrees(Math.ceil(joining.heating()));
        String gap = FitWords.rounded(joining.gap(), 3, RoundingMode.HALF_EVEN);
        String told = joining.cooling().isPresent()
                ? Labels.text(
                        "press.joining",
                        heat,
                        words.theOuter(),
                        words.overTightestInner(),
                        gap,
                        FitWords.degrees(Math.floor(joining.cooling().getAsDouble())),
                        words.theInner())
                : Labels.text(
                        "press.joining-no-cold",
                        heat,
                        words.theOuter(),
                        words.overTightestInner(),
                        gap,
                        words.theInner());
        told += " "
                + Labels.text(
                        "press.joining-other",
                        FitWords.degrees(result.at(State.Moment.ASSEMBLY).temperature()));
        if (joint.bearing().isPresent()) {
            boolean tooHot = joint.outer().bearing().isPresent() && joining.heating() > MOST_BEARINGS_STAND;
            told += (tooHot ? " " + Labels.text("press.joining-too-hot") : "") + " "
                    + Labels.text("press.joining-bearing");
        }
        return List.of(Block.Heading.of(Labels.text("press.title.joining")), new Block.Paragraph(Text.of(told)));
    }

    /** Where the figures end. */
    public List<Block> limits() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(Labels.text("press.title.limits")));
        blocks.add(new Block.Paragraph(Text.of(Labels.text("press.limits"))));
        for (Remark notice : sheet.remarks()) {
            blocks.add(new Block.Note(Text.of(Labels.text("notice.line", notice))));
        }
        return blocks;
    }

    private static double number(BigDecimal value) {
        return Ratio.of(value, BigDecimal.ONE);
    }
}
