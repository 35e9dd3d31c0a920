package io.github.firstoff.intake;

import io.github.firstoff.plan.Study;
import io.github.firstoff.plan.Study.Baseline;
import io.github.firstoff.plan.Study.Breaks;
import io.github.firstoff.plan.Study.Excluded;
import io.github.firstoff.plan.Study.Exclusion;
import io.github.firstoff.plan.Study.Frozen;
import io.github.firstoff.plan.Study.LimitSource;
import io.github.firstoff.plan.Study.Model;
import io.github.firstoff.plan.Study.Settings;
import io.github.firstoff.plan.Study.Subgrouping;
import io.github.firstoff.plan.Study.TestChoice;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.CountedRequirement;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.tolerance.Requirement.Nature;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Reads the study of a characteristic. What its charts, tests and estimators do, the studies know; here are their names. */
final class StudyReader {
    /** The charts of measured values. */
    static final List<String> CHARTS_OF_VALUES = List.of(
            "individuals",
            "xbar-r",
            "xbar-s",
            "median-r",
            "between-within",
            "ewma",
            "cusum",
            "deviation",
            "standardised-deviation");

    /** The charts of pieces that pass or fail. */
    static final List<String> CHARTS_OF_PIECES = List.of("p", "np");
    /** The charts of nonconformities that are counted. */
    static final List<String> CHARTS_OF_COUNTS = List.of("c", "u");
    /** The charts that need more than one reading in a subgroup. */
    private static final List<String> CHARTS_OF_SUBGROUPS =
            List.of("xbar-r", "xbar-s", "median-r", "between-within", "p", "np");

    private static final List<String> CHARTS_OF_SHORT_RUNS = List.of("deviation", "standardised-deviation");

    /** The estimators of spread. */
    static final List<String> ESTIMATORS = List.of(
            "mean-range",
            "mean-standard-deviation",
            "pooled-standard-deviation",
            "median-range",
            "mean-moving-range",
            "median-moving-range",
            "overall-standard-deviation");

    /** The sets of tests and the tests. */
    static final List<String> TESTS = List.of(
            "western-electric",
            "unnatural",
            "nelson",
            "western-electric-1",
            "western-electric-2",
            "western-electric-3",
            "western-electric-4",
            "unnatural-trend",
            "unnatural-stratification",
            "unnatural-mixture",
            "unnatural-systematic",
            "nelson-1",
            "nelson-2",
            "nelson-3",
            "nelson-4",
            "nelson-5",
            "nelson-6",
            "nelson-7",
            "nelson-8");

    /** The distributions. */
    static final List<String> DISTRIBUTIONS =
            List.of("normal", "lognormal", "weibull", "gamma", "folded-normal", "rayleigh", "box-cox", "johnson");

    /** What counts do that spread otherwise than their distribution. */
    static final List<String> DISPERSIONS = List.of("distribution", "check", "observed");

    private static final String AUTOMATIC = "automatic";
    private static final List<String> GROUPING_COLUMNS =
            List.of("subgroup", "operator", "machine", "gauge", "tool", "phase", "offset");
    private static final List<String> BREAK_COLUMNS =
            List.of("phase", "tool", "offset", "machine", "operator", "gauge");
    private static final int MOST_POINTS = 1_000_000;
    private static final int LARGEST_SUBGROUP = 1000;
    private static final int LONGEST_PATTERN = 62;
    private static final BigDecimal HALF = new BigDecimal("0.5");
    private static final BigDecimal GREATEST_FACTOR = new BigDecimal("1000");

    private final Fields fields;
    private final Optional<Requirement> requirement;

    StudyReader(Fields fields, Optional<Requirement> requirement) {
        this.fields = fields;
        this.requirement = requirement;
    }

    /** The study; empty if its chart is not known. */
    Optional<Study> read() {
        List<String> charts = new ArrayList<>(CHARTS_OF_VALUES);
        charts.addAll(CHARTS_OF_PIECES);
        charts.addAll(CHARTS_OF_COUNTS);
        Optional<String> chart = fields.required("chart", word("chart", charts), Words.oneOf(charts));
        Subgrouping grouping = grouping();
        LimitSource limits = limits();
        Breaks breaks = breaks();
        List<Exclusion> exclusions = exclusions();
        List<TestChoice> tests = tests();
        Settings settings = settings();
        Model model = model();
        fields.finish();
        if (chart.isEmpty()) {
            return Optional.empty();
        }
        checkSubgroups(chart.get(), grouping);
        checkRequirement(chart.get());
        checkKeys(chart.get());
        checkLimits(chart.get(), limits, breaks);
        return Optional.of(new Study(chart.get(), grouping, limits, breaks, exclusions, tests, settings, model));
    }

    private Optional<String> word(String key, List<String> words) {
        return word(fields, key, words);
    }

    private static Optional<String> word(Fields in, String key, List<String> words) {
        return in.word(key, text -> Optional.of(text.toLowerCase(Locale.ROOT)).filter(words::contains), words);
    }

    private Subgrouping grouping() {
        OptionalInt size = fields.count("subgroup", 1, LARGEST_SUBGROUP);
        Optional<String> column = word("subgroupBy", GROUPING_COLUMNS);
        Optional<Duration> window = window();
        boolean keep = word("incomplete", List.of("keep", "leave"))
                .filter("keep"::equals)
                .isPresent();
        int ways = (size.isPresent() ? 1 : 0) + (column.isPresent() ? 1 : 0) + (window.isPresent() ? 1 : 0);
        if (ways > 1) {
            contradiction(
                    column.isPresent() ? "subgroupBy" : "window",
                    "subgroups are cut in one way, and the study states " + ways,
                    "one of subgroup, subgroupBy and window");
        }
        return new Subgrouping(size, column, window, keep);
    }

    private Optional<Duration> window() {
        Optional<String> text = fields.text("window");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String expected = "a duration of ISO 8601 above zero, such as PT1H or PT30M";
        try {
            Duration window = Duration.parse(text.get());
            if (!window.isNegative() && !window.isZero()) {
                return Optional.of(window);
            }
        } catch (DateTimeParseException unreadable) {
            // told below, like a duration that is not above zero
        }
        fields.refuse("window", FaultKind.NOT_A_DATE, "", Echo.quoted(text.get()), expected);
        return Optional.empty();
    }

    private LimitSource limits() {
        Optional<Baseline> baseline;
        if (fields.value("baseline").orElse(null) instanceof JsonValue.Obj) {
            baseline = fields.object("baseline").flatMap(StudyReader::stretch);
        } else {
            OptionalInt first = fields.count("baseline", 2, MOST_POINTS);
            baseline = first.isPresent()
                    ? Optional.of(new Baseline(1, first.getAsInt(), Optional.empty()))
                    : Optional.empty();
        }
        Optional<Frozen> frozen = fields.object("limits").flatMap(StudyReader::frozen);
        return new LimitSource(baseline, frozen);
    }

    private static Optional<Baseline> stretch(Fields in) {
        OptionalInt from = in.count("from", 1, MOST_POINTS);
        OptionalInt to = in.count("to", 2, MOST_POINTS);
        Optional<String> phase = in.name("phase");
        in.finish();
        if (phase.isPresent() && (from.isPresent() || to.isPresent())) {
            in.refuse("phase", FaultKind.CONTRADICTION, "the baseline is stated twice", "", "a phase, or from and to");
            return Optional.empty();
        }
        if (phase.isPresent()) {
            return Optional.of(new Baseline(1, MOST_POINTS, phase));
        }
        if (from.isEmpty() && to.isEmpty()) {
            in.refuse("from", FaultKind.MISSING, "the baseline names no points", "", "from and to, or phase");
            return Optional.empty();
        }
        int first = from.orElse(1);
        int last = to.orElse(MOST_POINTS);
        if (last <= first) {
            in.refuse(
                    "to",
                    FaultKind.CONTRADICTION,
                    "the baseline ends at point " + last + " and begins at point " + first,
                    "",
                    "at least two points");
            return Optional.empty();
        }
        return Optional.of(new Baseline(first, last, Optional.empty()));
    }

    private static Optional<Frozen> frozen(Fields in) {
        List<String> charts = new ArrayList<>(CHARTS_OF_VALUES);
        charts.addAll(CHARTS_OF_PIECES);
        charts.addAll(CHARTS_OF_COUNTS);
        Optional<String> kind = in.required("kind", word(in, "kind", charts), Words.oneOf(charts));
        Optional<BigDecimal> centre = in.required("centre", in.decimal("centre"), ExactNumber.EXAMPLE);
        Optional<BigDecimal> sigma = in.required("sigma", in.decimal("sigma", true), ExactNumber.EXAMPLE);
        Optional<String> estimator =
                in.requiredText("estimator", "how sigma was estimated, such as \"mean range / d2\"");
        Optional<BigDecimal> freedom = in.required(
                "degreesOfFreedom", in.decimal("degreesOfFreedom", false), "the degrees of freedom of sigma");
        List<String> units = List.of("mm", "inch", "µm", "µin", "degree", "arc-minute", "arc-second", "none");
        Optional<String> unit = in.required(
                "unit", in.word("unit", text -> Unit.parse(text).map(Unit::word), units), Words.oneOf(units));
        Optional<BigDecimal> pointSigma = in.decimal("pointSigma", true);
        Map<String, BigDecimal> parts =
                in.object("partSigmas").map(StudyReader::sigmas).orElseGet(Map::of);
        Optional<String> from = in.requiredText("from", "from which batch the limits come, such as \"batch B-2207\"");
        in.finish();
        if (kind.isEmpty()
                || centre.isEmpty()
                || sigma.isEmpty()
                || estimator.isEmpty()
                || freedom.isEmpty()
                || unit.isEmpty()
                || from.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Frozen(
                kind.get(),
                centre.get(),
                sigma.get(),
                estimator.get(),
                freedom.get(),
                unit.get(),
                pointSigma,
                parts,
                from.get()));
    }

    private static Map<String, BigDecimal> sigmas(Fields in) {
        Map<String, BigDecimal> sigmas = new LinkedHashMap<>();
        for (String part : in.object().members().keySet()) {
            in.decimal(part, false).ifPresent(sigma -> sigmas.put(part, sigma));
        }
        in.finish();
        return sigmas;
    }

    private Breaks breaks() {
        JsonValue value = fields.value("breaks").orElse(null);
        if (value == null) {
            return Breaks.USUAL;
        }
        if (value instanceof JsonValue.Array) {
            return new Breaks(columns(fields, "breaks"), Optional.empty());
        }
        return fields.object("breaks").map(StudyReader::breaks).orElse(Breaks.USUAL);
    }

    private static Breaks breaks(Fields in) {
        Optional<List<String>> columns = in.value("at").isPresent() ? columns(in, "at") : Optional.empty();
        Optional<String> limits = word(in, "limits", List.of("keep", "recalculate"));
        Optional<String> reason = in.text("reason");
        in.finish();
        boolean again = limits.filter("recalculate"::equals).isPresent();
        if (again && reason.isEmpty()) {
            in.refuse(
                    "limits",
                    FaultKind.MISSING,
                    "limits are not recalculated without a written reason, which the sheet prints",
                    "",
                    "\"reason\" beside it");
        }
        if (!again && reason.isPresent()) {
            in.refuse(
                    "reason",
                    FaultKind.CONTRADICTION,
                    "a reason for recalculating, and the limits are kept",
                    "",
                    "\"limits\": \"recalculate\", or no reason");
        }
        return new Breaks(columns, again ? reason : Optional.empty());
    }

    private static Optional<List<String>> columns(Fields in, String key) {
        List<String> names = in.names(key, "a list of columns such as [\"phase\", \"tool\"]").stream()
                .map(name -> name.toLowerCase(Locale.ROOT))
                .distinct()
                .toList();
        for (String name : names) {
            if (!BREAK_COLUMNS.contains(name)) {
                in.refuse(
                        key,
                        FaultKind.UNKNOWN_WORD,
                        nearest(name, BREAK_COLUMNS),
                        Echo.quoted(name),
                        Words.oneOf(BREAK_COLUMNS));
            }
        }
        return Optional.of(names);
    }

    private static String nearest(String name, List<String> words) {
        return Nearest.to(name, words)
                .map(near -> "perhaps " + near + " is meant")
                .orElse("");
    }

    private List<Exclusion> exclusions() {
        List<Exclusion> exclusions = new ArrayList<>();
        for (Fields each : fields.objects("exclude", "an exclusion, which is an object { … } with a reason")) {
            exclusion(each).ifPresent(exclusions::add);
        }
        return exclusions;
    }

    private static Optional<Exclusion> exclusion(Fields in) {
        List<Exclusion> named = new ArrayList<>();
        Optional<String> reason = in.requiredText("reason", "why it does not count, in words; the sheet prints them");
        for (Excluded what : Excluded.values()) {
            Optional<String> name = what == Excluded.POINT ? number(in) : in.name(what.word());
            name.ifPresent(text -> named.add(new Exclusion(what, text, reason.orElse(""))));
        }
        in.finish();
        if (named.size() != 1) {
            in.refuse(
                    "part",
                    named.isEmpty() ? FaultKind.MISSING : FaultKind.CONTRADICTION,
                    named.isEmpty() ? "the exclusion names nothing" : "the exclusion names more than one thing",
                    "",
                    "one of part, subgroup and point");
            return Optional.empty();
        }
        return reason.map(stated -> named.get(0));
    }

    private static Optional<String> number(Fields in) {
        OptionalInt point = in.count(Excluded.POINT.word(), 1, MOST_POINTS);
        return point.isPresent() ? Optional.of(Integer.toString(point.getAsInt())) : Optional.empty();
    }

    private List<TestChoice> tests() {
        Optional<JsonValue> value = fields.value("tests");
        if (value.isEmpty()) {
            return List.of();
        }
        String expected = "a list of tests such as [\"western-electric\", { \"test\": \"nelson-3\", \"length\": 7 }]";
        if (!(value.get() instanceof JsonValue.Array array)) {
            fields.refuse("tests", FaultKind.WRONG_TYPE, "", value.get().described(), expected);
            return List.of();
        }
        if (array.items().isEmpty()) {
            fields.refuse("tests", FaultKind.EMPTY, "", "an empty list", expected);
        }
        List<TestChoice> tests = new ArrayList<>();
        int place = 0;
        for (JsonValue item : array.items()) {
            place++;
            if (item instanceof JsonValue.Obj object) {
                test(fields.within(object, "tests, entry " + place)).ifPresent(tests::add);
            } else if (item instanceof JsonValue.Text text
                    && TESTS.contains(text.text().strip().toLowerCase(Locale.ROOT))) {
                tests.add(new TestChoice(
                        text.text().strip().toLowerCase(Locale.ROOT), OptionalInt.empty(), OptionalInt.empty()));
            } else {
                String hint = item instanceof JsonValue.Text text ? nearest(text.text(), TESTS) : "";
                fields.refuseAt(
                        item,
                        "tests, entry " + place,
                        FaultKind.UNKNOWN_WORD,
                        hint,
                        item.described(),
                        Words.oneOf(TESTS));
            }
        }
        return tests;
    }

    private static Optional<TestChoice> test(Fields in) {
        Optional<String> name = in.required("test", word(in, "test", TESTS), Words.oneOf(TESTS));
        OptionalInt length = in.count("length", 1, LONGEST_PATTERN);
        OptionalInt points = in.count("points", 1, LONGEST_PATTERN);
        OptionalInt of = in.count("of", 1, LONGEST_PATTERN);
        in.finish();
        boolean window = points.isPresent() && of.isPresent();
        if ((points.isPresent() != of.isPresent()) || (window && length.isPresent())) {
            in.refuse(
                    length.isPresent() ? "length" : points.isPresent() ? "points" : "of",
                    FaultKind.CONTRADICTION,
                    "a pattern has a length, or so many points of so many",
                    "",
                    "length alone, or points and of together");
            return Optional.empty();
        }
        return name.map(known -> new TestChoice(known, window ? points : length, window ? of : length));
    }

    private Settings settings() {
        Optional<BigDecimal> headStart;
        if (fields.value("fastInitialResponse").orElse(null) instanceof JsonValue.Word word) {
            headStart = word.word().equals("true") ? Optional.of(HALF) : Optional.empty();
        } else {
            headStart = between("fastInitialResponse", HALF, true);
        }
        return new Settings(
                word("estimator", ESTIMATORS),
                fields.decimal("centre"),
                between("weight", BigDecimal.ONE, false),
                between("width", GREATEST_FACTOR, false),
                between("reference", GREATEST_FACTOR, true),
                between("decision", GREATEST_FACTOR, false),
                headStart,
                word("dispersion", DISPERSIONS));
    }

    private Optional<BigDecimal> between(String key, BigDecimal most, boolean mayBeZero) {
        Optional<BigDecimal> number = fields.decimal(key);
        if (number.isEmpty()) {
            return number;
        }
        int sign = number.get().signum();
        if (sign < 0 || (sign == 0 && !mayBeZero) || number.get().compareTo(most) > 0) {
            fields.refuse(
                    key,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "",
                    number.get().toPlainString(),
                    "a number " + (mayBeZero ? "from 0" : "above 0 and at most") + (mayBeZero ? " to " : " ")
                            + most.toPlainString());
            return Optional.empty();
        }
        return number;
    }

    private Model model() {
        List<String> words = new ArrayList<>(List.of(AUTOMATIC));
        words.addAll(DISTRIBUTIONS);
        Optional<String> distribution = word("distribution", words).filter(word -> !word.equals(AUTOMATIC));
        boolean trended = fields.flag("trended").orElse(false);
        List<String> family =
                fields.names("family", "a list of the numbers of characteristics, such as [\"1\", \"2\"]");
        return new Model(distribution, trended, family);
    }

    private void checkSubgroups(String chart, Subgrouping grouping) {
        if (CHARTS_OF_SUBGROUPS.contains(chart)
                && grouping.size().isPresent()
                && grouping.size().getAsInt() < 2) {
            fields.refuse(
                    "subgroup",
                    FaultKind.CONTRADICTION,
                    CHARTS_OF_PIECES.contains(chart)
                            ? "a subgroup of one piece has no share for the chart " + chart
                            : "a subgroup of one has no spread for the chart " + chart,
                    "1",
                    CHARTS_OF_PIECES.contains(chart)
                            ? "a subgroup of 2 or more"
                            : "a subgroup of 2 or more, or the chart individuals");
        }
        boolean grouped = grouping.size().isPresent() && grouping.size().getAsInt() > 1;
        if (chart.equals("individuals") && grouped) {
            fields.refuse(
                    "subgroup",
                    FaultKind.CONTRADICTION,
                    "the chart individuals has no subgroups",
                    Integer.toString(grouping.size().getAsInt()),
                    "no subgroup, or a chart of subgroups such as xbar-r");
        }
        if (chart.equals("individuals")
                && (grouping.column().isPresent() || grouping.window().isPresent())) {
            contradiction(
                    grouping.column().isPresent() ? "subgroupBy" : "window",
                    "the chart individuals has no subgroups",
                    "no subgroups, or a chart of subgroups such as xbar-r");
        }
    }

    private void checkRequirement(String chart) {
        if (requirement.isEmpty()) {
            return;
        }
        boolean attribute = requirement.get().nature() == Nature.ATTRIBUTE;
        boolean counted = requirement.get() instanceof CountedRequirement;
        List<String> fitting = attribute ? CHARTS_OF_PIECES : counted ? CHARTS_OF_COUNTS : CHARTS_OF_VALUES;
        if (fitting.contains(chart)) {
            return;
        }
        String what = attribute
                ? "the requirement is judged by pass or fail, and the chart needs "
                        + (CHARTS_OF_COUNTS.contains(chart) ? "counts of nonconformities" : "values")
                : counted
                        ? "the requirement is a count of nonconformities, and the chart needs "
                                + (CHARTS_OF_PIECES.contains(chart) ? "pass or fail" : "measured values")
                        : "the requirement is measured, and the chart counts";
        fields.refuse("chart", FaultKind.CONTRADICTION, what, Echo.quoted(chart), Words.oneOf(fitting));
    }

    /** A key that the chart has no use for would be a choice that nobody follows. */
    private void checkKeys(String chart) {
        Map<String, List<String>> belongs = new LinkedHashMap<>();
        List<String> counting = new ArrayList<>(CHARTS_OF_PIECES);
        counting.addAll(CHARTS_OF_COUNTS);
        belongs.put("weight", List.of("ewma"));
        belongs.put("width", List.of("ewma"));
        belongs.put("reference", List.of("cusum"));
        belongs.put("decision", List.of("cusum"));
        belongs.put("fastInitialResponse", List.of("cusum"));
        belongs.put("centre", List.of("ewma", "cusum"));
        belongs.put("dispersion", counting);
        belongs.put("estimator", CHARTS_OF_VALUES);
        belongs.put("distribution", CHARTS_OF_VALUES);
        belongs.put("trended", CHARTS_OF_VALUES);
        belongs.put("family", CHARTS_OF_SHORT_RUNS);
        belongs.forEach((key, charts) -> {
            if (fields.value(key).isPresent() && !charts.contains(chart)) {
                contradiction(key, "the chart " + chart + " has no use for it", "the chart " + Words.oneOf(charts));
            }
        });
    }

    private void checkLimits(String chart, LimitSource limits, Breaks breaks) {
        Set<String> sources = new java.util.LinkedHashSet<>();
        limits.baseline().ifPresent(points -> sources.add("baseline"));
        limits.frozen().ifPresent(frozen -> sources.add("limits"));
        breaks.recalculate().ifPresent(reason -> sources.add("breaks"));
        if (sources.size() > 1) {
            contradiction(
                    sources.iterator().next(),
                    "the limits come from one source, and the study states " + sources.size(),
                    "one of baseline, limits, and breaks with \"limits\": \"recalculate\"");
        }
        if (limits.frozen().isPresent() && !limits.frozen().get().kind().equals(chart)) {
            contradiction(
                    "limits",
                    "limits of a chart " + limits.frozen().get().kind() + " do not fit a chart " + chart,
                    "limits that a chart " + chart + " set");
        }
        if (limits.frozen().isPresent()
                && Set.of("ewma", "cusum").contains(chart)
                && fields.value("centre").isPresent()) {
            contradiction("centre", "the limits state a centre already", "the centre of the limits alone");
        }
    }

    private void contradiction(String key, String message, String expected) {
        fields.refuse(key, FaultKind.CONTRADICTION, message, "", expected);
    }
}
