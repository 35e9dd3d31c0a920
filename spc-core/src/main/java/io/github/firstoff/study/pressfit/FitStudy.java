package io.github.firstoff.study.pressfit;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.assembly.Piece;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.Moments;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * Will it hold hot, stay whole cold, and leave the bearing room: from limits, from measured sizes, or from measured pairs.
 *
 * <p>The interference of a pair at 20 °C is U = ring − bore on the diameter; at temperature T of both parts it is effective with
 * U − G + d(αᵢ − α₀)(T − 20), where G = f(Rz₀ + Rzᵢ) is smoothed away ({@link io.github.firstoff.assembly.Smoothing}). What that does
 * is {@link ElasticJoint}. All of it rises with U, so minimum and maximum are those of U: exact decimals of limits (ISO 286-1, 3.3), of all
 * pairs of measured pieces, or of measured pairs.
 *
 * <p>Probabilities: measured sizes are taken as normal with their mean and standard deviation, sizes known by limits as spread evenly
 * between them (the widest that is not a worst case), both as independent; see {@link Spread}. Beside that a simulation with a fixed seed goes through
 * the whole chain for every pair. For one more pair of measured sizes, T_ν((ū − u)/√(s² + s₀²/n₀ + sᵢ²/nᵢ)) with the degrees of freedom of
 * Welch and Satterthwaite allows for few readings. Fewer than two readings of a part are refused.
 */
public final class FitStudy {
    /** Pairs drawn: the standard error of a share of 0.999 is then 0.00007. */
    static final int DRAWS = 200_000;

    private static final long SEED = 20261125L;
    private static final double USUAL_SHARE = 0.999;
    private static final int SIMPSON = 400;
    private static final int PROFILE_POINTS = 161;
    private static final int MOST_PLACES = 7;
    private static final long MOST_MATCHED = 100_000_000L;
    private static final double ABSOLUTE_ZERO = -273.15;
    private static final double MICROMETRES = 1000;

    /** No interference is as large as that, in mm; keeps bounds that are infinite countable. */
    private static final double FARTHEST = 1e4;

    private final Joint joint;
    private final ElasticJoint model;
    private final double smoothing;
    private final double leastFriction;
    private final double greatestFriction;
    private final double[] temperatures;
    private final OptionalDouble leastClearance;
    private final OptionalDouble greatestClearance;
    private final double lossPerPressure;
    private final double lossByWarmth;

    private FitStudy(Joint joint) {
        this.joint = joint;
        model = new ElasticJoint(
                number(joint.nominal()),
                number(joint.length()),
                body(joint.outer()),
                body(joint.inner()),
                joint.criterion());
        smoothing = number(joint.smoothingLoss());
        leastFriction = number(joint.friction().least());
        greatestFriction = number(joint.friction().greatest());
        temperatures = new double[] {
            number(joint.temperature().assembly()),
            number(joint.temperature().minimum()),
            number(joint.temperature().maximum())
        };
        Optional<Limits> clearance = joint.bearing().flatMap(Joint.Bearing::clearance);
        leastClearance = value(clearance.flatMap(Limits::lower));
        greatestClearance = value(clearance.flatMap(Limits::upper));
        boolean ringOnShaft = joint.outer().bearing().isPresent();
        lossPerPressure = MICROMETRES * (ringOnShaft ? model.outsideGrowth(1) : model.insideShrinkage(1));
        ElasticJoint.Body ring = ringOnShaft ? model.outer() : model.inner();
        lossByWarmth = joint.bearing()
                .map(bearing -> MICROMETRES * ring.expansion() * ring.farDiameter() * number(bearing.ringDifference()))
                .orElse(0.0);
    }

    /**
     * The mechanics of a joint alone.
     *
     * @throws IllegalArgumentException if its diameters are not in order
     */
    public static ElasticJoint model(Joint joint) {
        return new FitStudy(joint).model;
    }

    /**
     * Studies a joint.
     *
     * @param bores measured bores; empty to take the limits of the outer part
     * @param rings measured sizes of what goes in; empty to take its limits
     * @throws IllegalArgumentException if a part has neither, if a part has only one piece, or if pairs name pieces that are not there
     */
    public static FitResult of(Joint joint, Optional<List<Piece>> bores, Optional<List<Piece>> rings) {
        return new FitStudy(joint).study(bores, rings);
    }

    private static double number(BigDecimal value) {
        return Ratio.of(value, BigDecimal.ONE);
    }

    private static OptionalDouble value(Optional<BigDecimal> value) {
        return value.map(each -> OptionalDouble.of(number(each))).orElse(OptionalDouble.empty());
    }

    private static ElasticJoint.Body body(Joint.Member member) {
        return new ElasticJoint.Body(
                number(member.farDiameter()),
                number(member.material().youngsModulus()),
                number(member.material().poissonsRatio()),
                number(member.material().expansion()),
                number(member.material().yield()));
    }

    private FitResult study(Optional<List<Piece>> bores, Optional<List<Piece>> rings) {
        Sizes outer = sizes(joint.outer(), bores, "bore");
        Sizes inner = sizes(joint.inner(), rings, "ring");
        boolean bothMeasured = bores.isPresent() && rings.isPresent();
        boolean paired = bothMeasured && joint.pairs().isKnown();
        List<BigDecimal> pairs = paired ? paired(bores.orElseThrow(), rings.orElseThrow()) : List.of();
        Basis basis = paired
                ? Basis.PAIRED
                : bothMeasured ? Basis.MEASURED : bores.isPresent() || rings.isPresent() ? Basis.MIXED : Basis.LIMITS;
        Spread spread = paired ? ofPairs(pairs) : together(outer, inner);
        BigDecimal least = paired
                ? pairs.stream().min(BigDecimal::compareTo).orElseThrow()
                : inner.least().subtract(outer.greatest());
        BigDecimal greatest = paired
                ? pairs.stream().max(BigDecimal::compareTo).orElseThrow()
                : inner.greatest().subtract(outer.least());
        List<State> states = new ArrayList<>();
        for (State.Moment moment : State.Moment.values()) {
            states.add(state(moment, number(least), spread.mean(), number(greatest)));
        }
        Bounds bounds = bounds();
        Chances chances = new Chances(
                shares(bounds, spread::atMost, spread::above),
                drawn(spread),
                paired || bothMeasured ? Optional.of(nextPair(bounds, spread, outer, inner, pairs)) : Optional.empty(),
                paired
                        ? Optional.of(count(bounds, pairs))
                        : bothMeasured
                                ? Optional.of(count(bounds, bores.orElseThrow(), rings.orElseThrow()))
                                : Optional.empty());
        double share = value(joint.demand().share()).orElse(basis == Basis.LIMITS ? 1 : USUAL_SHARE);
        boolean matchable = basis == Basis.MEASURED
                && (long) bores.orElseThrow().size() * rings.orElseThrow().size() <= MOST_MATCHED;
        return new FitResult(
                joint,
                basis,
                outer,
                inner,
                least,
                greatest,
                spread.mean(),
                spread.deviation(),
                smoothing,
                states,
                bounds,
                chances,
                share,
                verdicts(bounds, chances, number(least), number(greatest), share, paired),
                joining(number(greatest)),
                basis == Basis.LIMITS ? number(least) : spread.quantile(1 - USUAL_SHARE),
                matchable ? Optional.of(matching(bounds, bores.orElseThrow(), rings.orElseThrow())) : Optional.empty(),
                profile(spread, pairs),
                model);
    }

    // ------------------------------------------------------------------ sizes

    private Sizes sizes(Joint.Member member, Optional<List<Piece>> measured, String noun) {
        if (measured.isPresent()) {
            List<Piece> pieces = measured.get();
            if (pieces.size() < 2) {
                throw new IllegalArgumentException(
                        "a sample needs at least two pieces, and there is " + pieces.size() + " " + noun);
            }
            BigDecimal first = pieces.get(0).size();
            BigDecimal nominal = joint.nominal();
            double[] from = new double[pieces.size()];
            BigDecimal least = first;
            BigDecimal greatest = first;
            for (int i = 0; i < from.length; i++) {
                BigDecimal size = pieces.get(i).size();
                from[i] = number(size.subtract(nominal));
                least = least.min(size);
                greatest = greatest.max(size);
            }
            Moments moments = Moments.of(from);
            return new Sizes(
                    true,
                    from.length,
                    least,
                    greatest,
                    number(nominal) + moments.mean(),
                    moments.mean(),
                    moments.standardDeviation());
        }
        Limits limits = member.limits()
                .orElseThrow(() -> new IllegalArgumentException("the size of the " + noun + " is not known"));
        BigDecimal least = limits.lower().orElseThrow();
        BigDecimal greatest = limits.upper().orElseThrow();
        double half = number(greatest.subtract(least)) / 2;
        BigDecimal sum = least.add(greatest);
        return new Sizes(
                false,
                0,
                least,
                greatest,
                number(sum) / 2,
                number(sum.subtract(joint.nominal()).subtract(joint.nominal())) / 2,
                half / Math.sqrt(3));
    }

    private static Spread together(Sizes outer, Sizes inner) {
        double mean = inner.offset() - outer.offset();
        double outerHalf = outer.measured() ? 0 : outer.deviation() * Math.sqrt(3);
        double innerHalf = inner.measured() ? 0 : inner.deviation() * Math.sqrt(3);
        double sigma = Math.hypot(outer.measured() ? outer.deviation() : 0, inner.measured() ? inner.deviation() : 0);
        return new Spread(mean, sigma, Math.max(outerHalf, innerHalf), Math.min(outerHalf, innerHalf));
    }

    private static Spread ofPairs(List<BigDecimal> pairs) {
        if (pairs.size() < 2) {
            throw new IllegalArgumentException("a sample needs at least two pairs, and there is " + pairs.size());
        }
        Moments moments =
                Moments.of(pairs.stream().mapToDouble(FitStudy::number).toArray());
        return new Spread(moments.mean(), moments.standardDeviation(), 0, 0);
    }

    private List<BigDecimal> paired(List<Piece> bores, List<Piece> rings) {
        Map<String, Piece> byName = new HashMap<>();
        rings.forEach(ring -> byName.put(ring.name(), ring));
        List<BigDecimal> pairs = new ArrayList<>();
        if (joint.pairs().byPart()) {
            for (Piece bore : bores) {
                Piece ring = Optional.ofNullable(byName.get(bore.name()))
                        .orElseThrow(() -> new IllegalArgumentException("no ring is called " + bore.name()));
                pairs.add(ring.size().subtract(bore.size()));
            }
            return pairs;
        }
        Map<String, Piece> boresByName = new HashMap<>();
        bores.forEach(bore -> boresByName.put(bore.name(), bore));
        for (Joint.Couple couple : joint.pairs().listed()) {
            Piece bore = Optional.ofNullable(boresByName.get(couple.outer()))
                    .orElseThrow(() -> new IllegalArgumentException("no bore is called " + couple.outer()));
            Piece ring = Optional.ofNullable(byName.get(couple.inner()))
                    .orElseThrow(() -> new IllegalArgumentException("no ring is called " + couple.inner()));
            pairs.add(ring.size().subtract(bore.size()));
        }
        return pairs;
    }

    // ------------------------------------------------------------------ states

    private double effective(double interference, double temperature) {
        return interference - smoothing + model.thermalInterference(temperature);
    }

    private State state(State.Moment moment, double least, double mean, double greatest) {
        double temperature = switch (moment) {
            case ASSEMBLY -> temperatures[0];
            case COLDEST -> temperatures[1];
            case HOTTEST -> temperatures[2];
        };
        double warmth = moment == State.Moment.ASSEMBLY ? 0 : lossByWarmth;
        double[] e = {effective(least, temperature), effective(mean, temperature), effective(greatest, temperature)};
        double[] p = Arrays.stream(e).map(model::pressure).toArray();
        double middle = (leastFriction + greatestFriction) / 2;
        boolean solid = model.inner().farDiameter() == 0;
        double innerRadius = solid ? model.diameter() / 2 : model.inner().farDiameter() / 2;
        Range loss = range(p, each -> lossPerPressure * each + warmth);
        Optional<Range> left = leastClearance.isEmpty()
                ? Optional.empty()
                : Optional.of(new Range(
                        leastClearance.getAsDouble() - loss.maximum(),
                        (leastClearance.getAsDouble() + greatestClearance.getAsDouble()) / 2 - loss.mean(),
                        greatestClearance.getAsDouble() - loss.minimum()));
        return new State(
                moment,
                temperature,
                new Range(e[0], e[1], e[2]),
                new Range(p[0], p[1], p[2]),
                range(p, model::outerEquivalent),
                range(p, model::innerEquivalent),
                range(p, each -> model.outerHoop(model.diameter() / 2, each)),
                range(p, each -> model.innerHoop(innerRadius, each)),
                new Range(
                        model.axialForce(p[0], leastFriction),
                        model.axialForce(p[1], middle),
                        model.axialForce(p[2], greatestFriction)),
                new Range(
                        model.torque(p[0], leastFriction),
                        model.torque(p[1], middle),
                        model.torque(p[2], greatestFriction)),
                range(p, model::boreGrowth),
                range(p, model::seatShrinkage),
                range(p, model::outsideGrowth),
                range(p, model::insideShrinkage),
                loss,
                left);
    }

    private static Range range(double[] pressures, DoubleUnaryOperator of) {
        return new Range(
                of.applyAsDouble(pressures[0]), of.applyAsDouble(pressures[1]), of.applyAsDouble(pressures[2]));
    }

    // ------------------------------------------------------------------ probabilities

    private double neededToGrip() {
        double pressure = model.pressureToHold(
                value(joint.demand().force()).orElse(0),
                value(joint.demand().torque()).orElse(0),
                leastFriction);
        return model.interferenceFor(pressure);
    }

    /** The highest raw interference at which every temperature from index {@code from} on stays within an effective one. */
    private double rawUpTo(double effective, int from) {
        double bound = Double.POSITIVE_INFINITY;
        for (int i = from; i < temperatures.length; i++) {
            bound = Math.min(bound, effective + smoothing - model.thermalInterference(temperatures[i]));
        }
        return bound;
    }

    private Bounds bounds() {
        double needed = neededToGrip();
        double grip = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < temperatures.length; i++) {
            grip = Math.max(grip, needed + smoothing - model.thermalInterference(temperatures[i]));
        }
        return new Bounds(
                grip,
                needed > 0,
                rawUpTo(model.interferenceFor(model.yieldPressure()), 0),
                leastClearance.isPresent()
                        ? OptionalDouble.of(clearanceBound(leastClearance.getAsDouble()))
                        : OptionalDouble.empty());
    }

    /** Up to which raw interference a bearing that had this clearance keeps what is asked. */
    private double clearanceBound(double clearance) {
        double spare = clearance - number(joint.demand().leastClearance()) - lossByWarmth;
        if (spare < 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return lossPerPressure == 0
                ? Double.POSITIVE_INFINITY
                : rawUpTo(model.interferenceFor(spare / lossPerPressure), 1);
    }

    private Chances.Shares shares(Bounds bounds, DoubleUnaryOperator atMost, DoubleUnaryOperator above) {
        return new Chances.Shares(
                above.applyAsDouble(bounds.grip()), atMost.applyAsDouble(bounds.yield()), clearanceShare(atMost));
    }

    /** P(clearance left ≥ asked): the clearance of the bearings spread evenly over its group, by Simpson's rule. */
    private OptionalDouble clearanceShare(DoubleUnaryOperator atMost) {
        if (leastClearance.isEmpty()) {
            return OptionalDouble.empty();
        }
        double low = leastClearance.getAsDouble();
        double step = (greatestClearance.getAsDouble() - low) / SIMPSON;
        double sum = 0;
        for (int i = 0; i <= SIMPSON; i++) {
            double bound = clearanceBound(low + i * step);
            double share = bound == Double.NEGATIVE_INFINITY
                    ? 0
                    : bound == Double.POSITIVE_INFINITY ? 1 : atMost.applyAsDouble(bound);
            sum += share * (i == 0 || i == SIMPSON ? 1 : i % 2 == 1 ? 4 : 2);
        }
        return OptionalDouble.of(Math.max(0, Math.min(1, sum / (3 * SIMPSON))));
    }

    private Chances.Drawn drawn(Spread spread) {
        SplittableRandom random = new SplittableRandom(SEED);
        double force = value(joint.demand().force()).orElse(0);
        double around = 2 * value(joint.demand().torque()).orElse(0) * MICROMETRES / model.diameter();
        double load = Math.hypot(force, around);
        double asked = number(joint.demand().leastClearance());
        int grips = 0;
        int whole = 0;
        int clear = 0;
        Moments moments = Moments.EMPTY;
        for (int draw = 0; draw < DRAWS; draw++) {
            double interference = spread.draw(random);
            double clearance = leastClearance.isEmpty()
                    ? 0
                    : leastClearance.getAsDouble()
                            + (greatestClearance.getAsDouble() - leastClearance.getAsDouble()) * random.nextDouble();
            boolean holds = true;
            boolean elastic = true;
            boolean keeps = true;
            for (int i = 0; i < temperatures.length; i++) {
                double pressure = model.pressure(effective(interference, temperatures[i]));
                elastic &= model.outerEquivalent(pressure) <= model.outer().yield()
                        && model.innerEquivalent(pressure) <= model.inner().yield();
                if (i > 0) {
                    holds &= pressure > 0 && model.axialForce(pressure, leastFriction) >= load;
                    keeps &= clearance - lossPerPressure * pressure - lossByWarmth >= asked;
                }
            }
            grips += holds ? 1 : 0;
            whole += elastic ? 1 : 0;
            clear += keeps ? 1 : 0;
            moments = moments.plus(effective(interference, temperatures[0]));
        }
        return new Chances.Drawn(
                DRAWS,
                SEED,
                new Chances.Shares(
                        (double) grips / DRAWS,
                        (double) whole / DRAWS,
                        leastClearance.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of((double) clear / DRAWS)),
                moments.mean(),
                moments.standardDeviation());
    }

    private Chances.Shares nextPair(Bounds bounds, Spread spread, Sizes outer, Sizes inner, List<BigDecimal> pairs) {
        double freedom;
        double ofMean;
        if (pairs.isEmpty()) {
            double a = outer.deviation() * outer.deviation() / outer.count();
            double b = inner.deviation() * inner.deviation() / inner.count();
            ofMean = a + b;
            double va = outer.deviation() * outer.deviation();
            double vb = inner.deviation() * inner.deviation();
            double whole = va + vb;
            double parts = va * va / (outer.count() - 1) + vb * vb / (inner.count() - 1);
            freedom = parts > 0 ? whole * whole / parts : outer.count() + inner.count() - 2.0;
        } else {
            ofMean = spread.sigma() * spread.sigma() / pairs.size();
            freedom = pairs.size() - 1.0;
        }
        double scale = Math.sqrt(spread.sigma() * spread.sigma() + ofMean);
        DoubleUnaryOperator atMost = x ->
                scale > 0 ? Distributions.studentT((x - spread.mean()) / scale, freedom) : x >= spread.mean() ? 1 : 0;
        return shares(bounds, atMost, x -> 1 - atMost.applyAsDouble(x));
    }

    private static Chances.Counted count(Bounds bounds, List<BigDecimal> pairs) {
        long grip = 0;
        long whole = 0;
        for (BigDecimal pair : pairs) {
            double interference = number(pair);
            grip += holds(bounds, interference) ? 1 : 0;
            whole += interference <= bounds.yield() ? 1 : 0;
        }
        return new Chances.Counted(pairs.size(), grip, whole);
    }

    private static boolean holds(Bounds bounds, double interference) {
        return bounds.gripItselfHolds() ? interference >= bounds.grip() : interference > bounds.grip();
    }

    /** Counts over all pairs by two walks over the sorted sizes. */
    private static Chances.Counted count(Bounds bounds, List<Piece> bores, List<Piece> rings) {
        BigDecimal reference = bores.get(0).size();
        double[] b = sorted(bores, reference);
        double[] r = sorted(rings, reference);
        long grip = 0;
        long whole = 0;
        int holding = 0;
        int elastic = 0;
        for (double ring : r) {
            while (holding < b.length && holds(bounds, ring - b[holding])) {
                holding++;
            }
            while (elastic < b.length && ring - b[elastic] > bounds.yield()) {
                elastic++;
            }
            grip += holding;
            whole += b.length - elastic;
        }
        return new Chances.Counted((long) b.length * r.length, grip, whole);
    }

    private static double[] sorted(List<Piece> pieces, BigDecimal reference) {
        return pieces.stream()
                .mapToDouble(piece -> number(piece.size().subtract(reference)))
                .sorted()
                .toArray();
    }

    private static FitResult.Verdicts verdicts(
            Bounds bounds, Chances chances, double least, double greatest, double share, boolean paired) {
        boolean worstHolds = holds(bounds, least);
        boolean worstStands = greatest <= bounds.yield();
        boolean worstClears = greatest <= bounds.clearance().orElse(Double.POSITIVE_INFINITY);
        if (share >= 1) {
            return new FitResult.Verdicts(worstHolds, worstStands, worstClears);
        }
        Chances.Shares shares = chances.reckoned();
        // A pair that was measured and fails is no matter of probability.
        return new FitResult.Verdicts(
                shares.grip() >= share && (!paired || worstHolds),
                shares.noOverstress() >= share && (!paired || worstStands),
                shares.clearance().orElse(1) >= share);
    }

    // ------------------------------------------------------------------ joining, matching, picture

    private FitResult.Joining joining(double greatest) {
        double room = temperatures[0];
        double interference = greatest + model.thermalInterference(room);
        double gap = number(joint.gap());
        double cooling = model.coolingTo(interference, gap, room);
        return new FitResult.Joining(
                gap,
                interference,
                Math.max(room, model.heatingTo(interference, gap, room)),
                cooling > ABSOLUTE_ZERO ? OptionalDouble.of(Math.min(room, cooling)) : OptionalDouble.empty());
    }

    private Matching matching(Bounds bounds, List<Piece> bores, List<Piece> rings) {
        int places = Math.min(
                MOST_PLACES,
                Math.max(
                        bores.stream()
                                .mapToInt(piece -> piece.size().scale())
                                .max()
                                .orElse(0),
                        rings.stream()
                                .mapToInt(piece -> piece.size().scale())
                                .max()
                                .orElse(0)));
        int kept = Math.max(0, places);
        BigDecimal reference = bores.get(0).size();
        long[] b = steps(bores, reference, kept);
        long[] r = steps(rings, reference, kept);
        double perMillimetre = Math.pow(10, kept);
        double bottom = Math.max(bounds.grip(), -FARTHEST) * perMillimetre;
        long least = (long) Math.ceil(bottom);
        if (least == bottom && !bounds.gripItselfHolds()) {
            least++;
        }
        long greatest = (long) Math.floor(Math.max(-FARTHEST, Math.min(bounds.upper(), FARTHEST)) * perMillimetre);
        double wanted =
                value(joint.demand().wanted()).orElseGet(() -> ofLimits().orElse((bounds.grip() + bounds.upper()) / 2));
        long twice = Math.round(2 * wanted * perMillimetre);
        int[] partner = PairMatching.match(b, r, least, greatest, twice);
        List<Matching.Pair> pairs = new ArrayList<>();
        List<Matching.Left> left = new ArrayList<>();
        boolean[] taken = new boolean[r.length];
        double squares = 0;
        for (int i = 0; i < b.length; i++) {
            if (partner[i] < 0) {
                left.add(left(bores.get(i), true, b[i], r, least, greatest, rings));
            } else {
                taken[partner[i]] = true;
                Matching.Pair pair = pair(bores.get(i), rings.get(partner[i]));
                pairs.add(pair);
                double off = number(pair.interference()) - wanted;
                squares += off * off;
            }
        }
        for (int j = 0; j < r.length; j++) {
            if (!taken[j]) {
                left.add(left(rings.get(j), false, r[j], b, least, greatest, bores));
            }
        }
        return new Matching(
                wanted,
                bounds.grip(),
                bounds.upper(),
                pairs,
                left,
                pairs.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / pairs.size())));
    }

    private OptionalDouble ofLimits() {
        Optional<Limits> outer = joint.outer().limits();
        Optional<Limits> inner = joint.inner().limits();
        if (outer.isEmpty() || inner.isEmpty()) {
            return OptionalDouble.empty();
        }
        BigDecimal twice = inner.get()
                .lower()
                .orElseThrow()
                .add(inner.get().upper().orElseThrow())
                .subtract(outer.get().lower().orElseThrow())
                .subtract(outer.get().upper().orElseThrow());
        return OptionalDouble.of(number(twice) / 2);
    }

    private static long[] steps(List<Piece> pieces, BigDecimal reference, int places) {
        return pieces.stream()
                .mapToLong(piece -> piece.size()
                        .subtract(reference)
                        .setScale(places, RoundingMode.HALF_EVEN)
                        .unscaledValue()
                        .longValueExact())
                .toArray();
    }

    private Matching.Pair pair(Piece bore, Piece ring) {
        BigDecimal interference = ring.size().subtract(bore.size());
        double raw = number(interference);
        double atAssembly = effective(raw, temperatures[0]);
        double holding = Double.POSITIVE_INFINITY;
        for (int i = 1; i < temperatures.length; i++) {
            holding =
                    Math.min(holding, model.axialForce(model.pressure(effective(raw, temperatures[i])), leastFriction));
        }
        return new Matching.Pair(
                bore,
                ring,
                interference,
                atAssembly,
                model.axialForce(model.pressure(atAssembly), greatestFriction),
                holding);
    }

    private static Matching.Left left(
            Piece piece, boolean bore, long own, long[] others, long least, long greatest, List<Piece> partners) {
        boolean loose = false;
        boolean tight = false;
        boolean possible = false;
        long nearestOff = Long.MAX_VALUE;
        int nearest = 0;
        for (int i = 0; i < others.length; i++) {
            long interference = bore ? others[i] - own : own - others[i];
            long off =
                    interference < least ? least - interference : interference > greatest ? interference - greatest : 0;
            loose |= interference < least;
            tight |= interference > greatest;
            possible |= off == 0;
            if (off < nearestOff) {
                nearestOff = off;
                nearest = i;
            }
        }
        Matching.Why why = possible
                ? Matching.Why.LEFT_OVER
                : loose && tight ? Matching.Why.BETWEEN : loose ? Matching.Why.TOO_LOOSE : Matching.Why.TOO_TIGHT;
        BigDecimal partner = partners.get(nearest).size();
        return new Matching.Left(
                piece,
                bore,
                why,
                bore ? partner.subtract(piece.size()) : piece.size().subtract(partner));
    }

    private static FitResult.Profile profile(Spread spread, List<BigDecimal> pairs) {
        double reach = spread.first() + spread.second() + 3.5 * spread.sigma();
        List<Double> at = new ArrayList<>();
        List<Double> density = new ArrayList<>();
        if (reach > 0) {
            for (int i = 0; i < PROFILE_POINTS; i++) {
                double x = spread.mean() - reach + 2 * reach * i / (PROFILE_POINTS - 1);
                at.add(x);
                density.add(Math.max(0, spread.density(x)));
            }
        }
        return new FitResult.Profile(
                at, density, pairs.stream().map(FitStudy::number).toList());
    }
}
