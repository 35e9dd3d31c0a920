package io.github.firstoff.report.section;

import io.github.firstoff.assembly.ElasticMaterial;
import io.github.firstoff.assembly.Joint;
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
        blocks.add(Block.Heading.of("What needs a decision"));
        List<String> open = words.decisions();
        if (open.isEmpty()) {
            blocks.add(new Block.Paragraph(Text.of("Nothing: the joint does what was asked of it.")));
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
        lines.add(line(LevelLine.Kind.CENTRE, "least", UM * number(result.least())));
        lines.add(line(LevelLine.Kind.CENTRE, "mean", UM * result.mean()));
        lines.add(line(LevelLine.Kind.CENTRE, "greatest", UM * number(result.greatest())));
        addBound(lines, scale, "holds from", UM * result.bounds().grip(), RoundingMode.CEILING);
        addBound(lines, scale, "elastic to", UM * result.bounds().yield(), RoundingMode.FLOOR);
        result.bounds()
                .clearance()
                .ifPresent(at -> addBound(lines, scale, "clearance to", UM * at, RoundingMode.FLOOR));
        List<ConsequenceFigure.Place> curve = new ArrayList<>();
        for (int i = 0; i < result.profile().at().size(); i++) {
            curve.add(new ConsequenceFigure.Place(
                    UM * result.profile().at().get(i),
                    result.profile().density().get(i)));
        }
        ConsequenceFigure figure = new ConsequenceFigure(
                "interference at 20 °C",
                "µm",
                scale,
                curve,
                result.profile().measured().stream().map(each -> UM * each).toList(),
                lines,
                ladders());
        return together(
                Block.Heading.of("Interference and what follows from it"),
                new Block.FigureBlock(
                        figure,
                        FIGURE_HEIGHT,
                        "Distribution of the interference from " + UM * number(result.least()) + " to "
                                + UM * number(result.greatest())
                                + " micrometres, over scales of what each interference leads to."),
                new Block.Note(Text.of("Interference is ring less bore on the diameter, before smoothing (which takes "
                        + FitWords.micrometres(result.smoothing()) + "\u00A0µm: "
                        + joint.smoothing().source()
                        + "). Read straight down: each scale says what that interference comes to. A red bar on a scale is its limit. "
                        + words.basis())));
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
        String room = " at " + FitWords.degrees(assembly.temperature());
        ladders.add(new Ladder("pressure" + room, "MPa", zero(assembly.temperature()), 0, perMicrometre, Double.NaN));
        ladders.add(new Ladder(
                "to press in" + room + ", at most",
                "kN",
                zero(assembly.temperature()),
                0,
                model.axialForce(perMicrometre, number(joint.friction().greatest())) / KILO,
                Double.NaN));
        ladders.add(new Ladder(
                "held at " + FitWords.degrees(weakest.temperature()) + ", at least",
                "kN",
                zero(weakest.temperature()),
                0,
                model.axialForce(perMicrometre, number(joint.friction().least())) / KILO,
                joint.demand().force().map(force -> number(force) / KILO).orElse(Double.NaN)));
        String tight = " at " + FitWords.degrees(tightest.temperature());
        ladders.add(new Ladder(
                words.outer() + tight,
                "% of yield",
                zero(tightest.temperature()),
                0,
                100 * model.outerEquivalent(perMicrometre) / model.outer().yield(),
                100));
        if (!words.inner().equals("bearing ring")) {
            ladders.add(new Ladder(
                    words.inner() + tight,
                    "% of yield",
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
                "clearance left at " + FitWords.degrees(worst.temperature()) + ", at least",
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
                .ifPresent(force -> asked.add(
                        new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, "asked", "", number(force) / KILO)));
        panels.add(new BandFigure.Panel(
                "held along the axis",
                "kN",
                band(cold, hot, p -> new double[] {
                    model.axialForce(p[0], least) / KILO,
                    model.axialForce(p[1], (least + greatest) / 2) / KILO,
                    model.axialForce(p[2], greatest) / KILO
                }),
                asked));
        panels.add(new BandFigure.Panel(
                words.outer() + " stress",
                "% of yield",
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
                    "bearing clearance left",
                    "µm",
                    band(cold, hot, p -> new double[] {low - per * p[2], middle - per * p[1], high - per * p[0]}),
                    List.of(new LevelLine(
                            LevelLine.Kind.SPECIFICATION_LIMIT,
                            "at least",
                            joint.demand().leastClearance().toPlainString(),
                            number(joint.demand().leastClearance())))));
        } else {
            panels.add(new BandFigure.Panel(
                    words.inner() + " stress",
                    "% of yield",
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
                Block.Heading.of("From cold to hot"),
                new Block.FigureBlock(
                        new BandFigure("temperature of both parts, °C", panels),
                        BAND_HEIGHT,
                        "Holding force, stress and clearance between " + cold + " and " + hot + " degrees Celsius."),
                new Block.Note(Text.of(
                        "Bands run from the least to the greatest interference (and friction, where force is shown), the line is the mean."
                                + " Both parts are taken to have the same temperature.")));
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
        columns.add(Column.text("Quantity", 3));
        columns.add(Column.narrow("Unit"));
        columns.add(Column.figure("least", "pressed, " + FitWords.degrees(assembly.temperature())));
        columns.add(Column.figure("mean", ""));
        columns.add(Column.figure("greatest", ""));
        columns.add(Column.figure("least", "cold, " + FitWords.degrees(cold.temperature())));
        columns.add(Column.figure("greatest", ""));
        columns.add(Column.figure("least", "hot, " + FitWords.degrees(hot.temperature())));
        columns.add(Column.figure("greatest", ""));
        List<TableRow> rows = new ArrayList<>();
        rows.add(row("interference after smoothing", "µm", State::interference, FitSection::micrometres));
        rows.add(row("pressure", "MPa", State::pressure, FitSection::plain));
        rows.add(row("slips along the axis at", "kN", State::axial, FitSection::thousandth));
        rows.add(row("slips around the axis at", "N·m", State::torque, FitSection::plain));
        String criterion = ", " + joint.criterion().title();
        rows.add(row(words.outer() + criterion, "MPa", State::outerStress, FitSection::plain));
        rows.add(row(words.outer() + ", around its bore", "MPa", State::outerHoop, FitSection::plain));
        rows.add(row(words.inner() + criterion, "MPa", State::innerStress, FitSection::plain));
        rows.add(row(words.inner() + ", around", "MPa", State::innerHoop, FitSection::plain));
        rows.add(row("bore opens by", "µm", State::boreGrowth, FitSection::micrometres));
        rows.add(row("outside grows by", "µm", State::outsideGrowth, FitSection::micrometres));
        if (joint.inner().farDiameter().signum() > 0) {
            rows.add(row(
                    joint.inner().bearing().isPresent() ? "raceway shrinks by" : "inside shrinks by",
                    "µm",
                    State::insideShrinkage,
                    FitSection::micrometres));
        }
        if (joint.bearing().isPresent()) {
            rows.add(row("bearing loses of its clearance", "µm", State::clearanceLoss, FitSection::plain));
        }
        if (assembly.clearanceLeft().isPresent()) {
            rows.add(row("clearance left", "µm", state -> state.clearanceLeft().orElseThrow(), FitSection::plain));
        }
        return List.of(
                Block.Heading.of("Figures"),
                new Block.Table(columns, rows),
                new Block.Note(Text.of("Forces: least with friction "
                        + joint.friction().least().toPlainString()
                        + ", greatest with " + joint.friction().greatest().toPlainString()
                        + "; pressing in takes at most the greatest at the temperature of pressing, pushing out begins where the joint slips."
                        + " Yield: " + words.outer() + " "
                        + plainYield(joint.outer().material()) + ", "
                        + words.inner() + " " + plainYield(joint.inner().material()) + ".")));
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
                "joint",
                "Ø\u00A0" + joint.nominal().toPlainString() + "\u00A0mm, "
                        + joint.length().toPlainString() + "\u00A0mm long"));
        about.add(Block.Fact.of(
                "friction",
                joint.friction().least().compareTo(joint.friction().greatest()) == 0
                        ? joint.friction().least().toPlainString()
                        : joint.friction().least().toPlainString() + " to "
                                + joint.friction().greatest().toPlainString()));
        about.add(Block.Fact.of("criterion", joint.criterion().title()));
        joint.demand()
                .force()
                .ifPresent(force ->
                        about.add(Block.Fact.of("must hold", force.toPlainString() + "\u00A0N along the axis")));
        joint.demand()
                .torque()
                .ifPresent(torque ->
                        about.add(Block.Fact.of("must hold", torque.toPlainString() + "\u00A0N·m around it")));
        about.add(Block.Fact.of(
                "wanted of", result.share() >= 1 ? "every pair within limits" : FitWords.shareAsked(result.share())));
        Chances.Shares shares = result.chances().reckoned();
        Chances.Drawn drawn = result.chances().drawn();
        List<Block.Fact> chances = new ArrayList<>();
        chances.add(Block.Fact.of("holds", chance(shares.grip(), drawn.shares().grip())));
        chances.add(Block.Fact.of(
                "below yield", chance(shares.noOverstress(), drawn.shares().noOverstress())));
        if (shares.clearance().isPresent() && drawn.shares().clearance().isPresent()) {
            chances.add(Block.Fact.of(
                    "clearance",
                    chance(
                            shares.clearance().getAsDouble(),
                            drawn.shares().clearance().getAsDouble())));
        }
        result.chances()
                .nextPair()
                .ifPresent(next -> chances.add(Block.Fact.of(
                        "next pair",
                        "holds with " + FitWords.percent(next.grip()) + ", allowing for how few were measured")));
        result.chances()
                .counted()
                .ifPresent(counted -> chances.add(Block.Fact.of(
                        "counted",
                        counted.grip() + " of " + counted.pairs() + " pairs hold, " + counted.noOverstress()
                                + " stay below yield")));
        return new Block.Facts(List.of(
                new Block.FactGroup("Joint", about),
                new Block.FactGroup("Parts", parts()),
                new Block.FactGroup("Probability (reckoned; drawn)", chances)));
    }

    private List<Block.Fact> parts() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Block.Fact.of(words.outer(), part(joint.outer(), result.outer(), "outside")));
        facts.add(Block.Fact.of(words.inner(), part(joint.inner(), result.inner(), "inside")));
        joint.bearing()
                .ifPresent(bearing -> facts.add(Block.Fact.of(
                        "bearing",
                        "class " + bearing.toleranceClass()
                                + bearing.group()
                                        .map(group -> ", group " + group)
                                        .orElse("")
                                + bearing.clearance()
                                        .map(limits -> " ("
                                                + limits.lower().orElseThrow().toPlainString() + " to "
                                                + limits.upper().orElseThrow().toPlainString() + "\u00A0µm unmounted)")
                                        .orElse("")
                                + (bearing.fromMemory()
                                        ? "; table values from memory, check them in the maker's catalogue"
                                        : ""))));
        return facts;
    }

    private static String part(Joint.Member member, Sizes sizes, String far) {
        return member.part().map(part -> part + ", ").orElse("")
                + member.material().name()
                + (member.farDiameter().signum() == 0
                        ? ", solid"
                        : ", " + far + " Ø\u00A0" + member.farDiameter().toPlainString() + "\u00A0mm")
                + "; "
                + (sizes.measured()
                        ? sizes.count() + " measured, " + Figures.of(sizes.least()) + " to "
                                + Figures.of(sizes.greatest()) + "\u00A0mm"
                        : (member.stated().isEmpty() ? "" : member.stated() + ": ") + Figures.of(sizes.least()) + " to "
                                + Figures.of(sizes.greatest()) + "\u00A0mm")
                + "; Rz\u00A0" + member.roughness().toPlainString() + "\u00A0µm";
    }

    private static String chance(double reckoned, double drawn) {
        return FitWords.percent(reckoned) + "; " + FitWords.rounded(100 * drawn, 2, RoundingMode.HALF_EVEN) + "\u00A0%";
    }

    /** How to join without force. */
    public List<Block> joining() {
        FitResult.Joining joining = result.joining();
        String heat = "Heated to " + FitWords.degrees(Math.ceil(joining.heating())) + ", the " + words.outer()
                + " slips over the tightest " + words.inner() + " with "
                + FitWords.rounded(joining.gap(), 3, RoundingMode.HALF_EVEN) + "\u00A0mm to spare on the diameter";
        String cool = joining.cooling().isPresent()
                ? "; cooled to " + FitWords.degrees(Math.floor(joining.cooling().getAsDouble())) + ", the "
                        + words.inner() + " does so instead."
                : "; no cold is deep enough to do it with the " + words.inner() + " alone.";
        boolean tooHot = joint.outer().bearing().isPresent() && joining.heating() > MOST_BEARINGS_STAND;
        String bearing = joint.bearing().isPresent()
                ? (tooHot
                                ? " That is more heat than most bearings stand: press it, cool the other part, or choose a smaller gap."
                                : "")
                        + " Many bearings must not be heated above 120\u00A0°C or cooled below what their grease and cage stand (common practice; the maker's"
                        + " figures decide)."
                : "";
        return List.of(
                Block.Heading.of("Joining without force"),
                new Block.Paragraph(Text.of(heat + cool
                        + " The other part stays at "
                        + FitWords.degrees(result.at(State.Moment.ASSEMBLY).temperature())
                        + ". Parts lose heat while they are carried: allow for it." + bearing)));
    }

    /** Where the figures end. */
    public List<Block> limits() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of("Where these figures end"));
        blocks.add(new Block.Paragraph(Text.of(
                "Reckoned for two round elastic cylinders as long as the joint (Lamé, plane stress), at rest, both at one temperature, with expansion"
                        + " that does not change with temperature. Flanges, webs, chamfers, speed, creep, fretting and repeated load are not in it, and near the ends"
                        + " of a joint the pressure is higher. Expansion and yield are typical values unless the assembly states them. Where a failure could hurt"
                        + " somebody, the joint is for a qualified engineer to decide and to prove.")));
        for (String notice : sheet.notices()) {
            blocks.add(new Block.Note(Text.of("Note: " + notice)));
        }
        return blocks;
    }

    private static double number(BigDecimal value) {
        return Ratio.of(value, BigDecimal.ONE);
    }
}
