package io.github.firstoff.report.kind;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Grouping;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.capability.CapabilityStudy;
import io.github.firstoff.study.capability.TrendedCapability;
import io.github.firstoff.study.capability.TrendedStudy;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.Baseline;
import io.github.firstoff.study.chart.ChartCatalogue;
import io.github.firstoff.study.chart.ChartRequest;
import io.github.firstoff.study.chart.ChartSettings;
import io.github.firstoff.study.chart.FrozenLimits;
import io.github.firstoff.study.chart.LimitsFrom;
import io.github.firstoff.study.chart.RuleCatalogue;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/** A batch sheet for every kind of chart and every thing that can be said of one, from made-up readings. */
public final class StudyCases {
    private static final Map<String, Sheet> ALL = make();

    private StudyCases() {}

    /** The names of the cases. */
    public static List<String> names() {
        return List.copyOf(ALL.keySet());
    }

    /** Every case by its name, in the order in which sheets are looked at. */
    public static Map<String, Sheet> all() {
        return ALL;
    }

    private static Map<String, Sheet> make() {
        Map<String, Sheet> cases = new LinkedHashMap<>();
        cases.put("xbar-r in control", measured(125, 5, 0.010, i -> 0, ChartRequest.of("xbar-r")));
        cases.put(
                "xbar-s drift, nelson",
                measured(240, 8, 0.008, i -> i > 150 ? (i - 150) * 0.0002 : 0, tests("xbar-s", "nelson")));
        cases.put("median-r unnatural trend", measured(125, 5, 0.004, i -> i * 0.0003, tests("median-r", "unnatural")));
        cases.put(
                "individuals stratified",
                measured(90, 1, 0.01, i -> i % 2 == 0 ? 0.03 : -0.03, tests("individuals", "nelson")));
        cases.put(
                "between-within",
                measured(
                        125,
                        5,
                        0.004,
                        i -> new Random(i / 5).nextGaussian() * 0.006,
                        ChartRequest.of("between-within")));
        cases.put("ewma", measured(40, 1, 0.01, i -> i > 25 ? 0.012 : 0, ChartRequest.of("ewma")));
        cases.put(
                "ewma breaks",
                measured(
                        150,
                        5,
                        0.01,
                        i -> 0,
                        ChartRequest.of("ewma")
                                .with(
                                        List.of(
                                                new Break(11, "insert 2", "insert changed"),
                                                new Break(21, "insert 3", "insert changed")),
                                        List.of())));
        cases.put("cusum", measured(60, 1, 0.01, i -> i > 35 ? 0.011 : 0, ChartRequest.of("cusum")));
        cases.put(
                "cusum head start",
                measured(
                        200,
                        5,
                        0.01,
                        i -> -0.006,
                        ChartRequest.of("cusum")
                                .with(ChartSettings.USUAL.withSums(0.5, 4, 0.5).withTarget(new BigDecimal("12.5")))));
        cases.put(
                "stages",
                measured(
                        150,
                        5,
                        0.006,
                        i -> i < 60 ? 0 : 0.012,
                        ChartRequest.of("xbar-r")
                                .with(LimitsFrom.eachPhase("new insert after wear, verified by the setter"))
                                .with(
                                        List.of(new Break(13, "insert 2", "insert changed")),
                                        List.of(new Exclusion(5, "chip under the part, seen by the operator")))));
        cases.put("frozen", frozen());
        cases.put(
                "baseline",
                measured(
                        125,
                        5,
                        0.006,
                        i -> i > 100 ? 0.01 : 0,
                        ChartRequest.of("xbar-r").with(LimitsFrom.baseline(new Baseline(1, 12)))));
        cases.put("unequal", unequal());
        cases.put(
                "thousand",
                measured(1000, 1, 0.01, i -> i > 700 && i < 740 ? 0.02 : 0, ChartRequest.of("individuals")));
        cases.put("family deviation", family("deviation", 3));
        cases.put("family standardised", family("standardised-deviation", 3));
        cases.put("family alternating", family("deviation", 1));
        cases.put("p", counts("p", 0.05, 1.0));
        cases.put("np", counts("np", 0.05, 1.0));
        cases.put("c", counts("c", 0.08, 1.0));
        cases.put("u overdispersed", counts("u", 0.08, 3.0));
        cases.put("tool wear", toolWear());
        cases.put("bounded", bounded());
        return java.util.Collections.unmodifiableMap(cases);
    }

    private static ChartRequest tests(String chart, String set) {
        return ChartRequest.of(chart).with(RuleCatalogue.set(set).orElseThrow());
    }

    private static String value(double value) {
        return new BigDecimal(value).setScale(3, RoundingMode.HALF_EVEN).toPlainString();
    }

    private static Sheet sheet(int count, String requirement, IntToDoubleFunction value) {
        MadeUp made = MadeUp.plan().requires("1", requirement).readings("part,1");
        for (int i = 0; i < count; i++) {
            made.readings(String.format("2207-%03d,", i + 1) + value(value.applyAsDouble(i)));
        }
        return made.sheet(SheetKind.BATCH);
    }

    static Sheet measured(int count, int size, double sigma, IntToDoubleFunction move, ChartRequest request) {
        Random random = new Random(11);
        Sheet sheet = sheet(count, "12.5 ±0.05", i -> 12.5 + random.nextGaussian() * sigma + move.applyAsDouble(i));
        Sample sample = sheet.findings().get(0).summary().orElseThrow().sample();
        Subgroups groups = size == 1 ? sample.asIndividuals() : sample.inSubgroupsOf(size);
        return with(sheet, request, groups);
    }

    private static Sheet frozen() {
        FrozenLimits limits = new FrozenLimits("xbar-r", 12.502, 0.008, "R̄/d2", 90, Unit.MILLIMETRE);
        Random random = new Random(3);
        Sheet sheet = sheet(100, "12.5 ±0.05", i -> 12.508 + random.nextGaussian() * 0.008);
        Subgroups groups =
                sheet.findings().get(0).summary().orElseThrow().sample().inSubgroupsOf(5);
        ChartRequest request = ChartRequest.of("xbar-r").with(LimitsFrom.frozen(limits));
        return with(
                sheet,
                request,
                groups,
                Optional.of("batch B-2206, 25 subgroups"),
                Optional.empty(),
                CapabilityStudy.withDefaults());
    }

    private static Sheet unequal() {
        Random random = new Random(8);
        Sheet sheet = sheet(118, "12.5 ±0.05", i -> 12.5 + random.nextGaussian() * 0.01);
        Sample sample = sheet.findings().get(0).summary().orElseThrow().sample();
        List<String> labels = new ArrayList<>();
        int[] sizes = {5, 3, 4, 6};
        for (int g = 0; labels.size() < 118; g++) {
            for (int m = 0; m < sizes[g % 4] && labels.size() < 118; m++) {
                labels.add(String.format("%02d:%02d", 6 + g / 2, g % 2 * 30));
            }
        }
        Subgroups groups = Grouping.labelled(labels).keepingIncomplete().of(sample);
        ChartRequest request = ChartRequest.of("xbar-s");
        return with(sheet, request, groups);
    }

    private static Sheet family(String kind, int together) {
        Random random = new Random(4);
        Sheet sheet = sheet(80, "12.5 ±0.05", i -> 12.5 + random.nextGaussian() * 0.01);
        List<String> labels = new ArrayList<>();
        List<BigDecimal> deviations = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        List<String> of = new ArrayList<>();
        String[] numbers = {"4", "9", "12"};
        int count = together == 1 ? 90 : 27;
        for (int g = 0; g < count; g++) {
            String number = numbers[g / together % 3];
            double sigma = kind.equals("deviation") ? 0.006 : number.equals("9") ? 0.02 : 0.005;
            for (int m = 0; m < 4; m++) {
                labels.add(number + ": " + (g + 1));
                deviations.add(new BigDecimal(value(random.nextGaussian() * sigma + (g > count - 5 ? 0.012 : 0))));
                parts.add(String.format("2207-%03d", g * 4 + m + 1));
            }
            of.add(number);
        }
        Subgroups groups = Grouping.labelled(labels)
                .keepingIncomplete()
                .of(Sample.of(deviations, BigDecimal.ZERO, Unit.MILLIMETRE));
        ChartRequest request = ChartRequest.of(kind);
        Assessment assessment = request.assess(new Family(groups, of));
        return with(
                sheet,
                request,
                groups,
                assessment,
                Optional.empty(),
                Optional.empty(),
                CapabilityStudy.withDefaults(),
                parts);
    }

    private static Sheet counts(String kind, double rate, double over) {
        Random random = new Random(6);
        boolean pieces = kind.equals("p") || kind.equals("np");
        MadeUp made = pieces
                ? MadeUp.plan().requires("1", "visual: no burrs").readings("part,1")
                : MadeUp.plan().requires("1", "12.5 ±0.05").readings("part,1");
        List<BigDecimal> values = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        long[] counts = new long[24];
        List<BigDecimal> sizes = new ArrayList<>();
        int piece = 0;
        for (int g = 0; g < 24; g++) {
            int n = kind.equals("np") || kind.equals("c") ? 120 : 80 + random.nextInt(80);
            double here = rate * (over == 1.0 ? 1 : Math.exp(random.nextGaussian() * 0.6)) * (g == 17 ? 3 : 1);
            for (int m = 0; m < n; m++) {
                piece++;
                boolean fails = random.nextDouble() < here;
                counts[g] += fails ? 1 : 0;
                parts.add(String.format("2207-%04d", piece));
                labels.add("day " + (g + 1));
                values.add(fails ? BigDecimal.ONE : BigDecimal.ZERO);
                made.readings(String.format("2207-%04d,", piece) + (pieces ? fails ? "fail" : "pass" : "12.5"));
            }
            sizes.add(BigDecimal.valueOf(n));
        }
        Subgroups groups =
                Grouping.labelled(labels).keepingIncomplete().of(Sample.of(values, BigDecimal.ZERO, Unit.NONE));
        ChartRequest request = ChartRequest.of(kind);
        Assessment assessment = request.assess(pieces ? Counts.ofFailures(groups) : Counts.of(counts, sizes));
        Sheet sheet = made.sheet(SheetKind.BATCH);
        Finding finding = sheet.findings().get(0);
        ProcessStudy study = new ProcessStudy(
                title(kind),
                request,
                groups,
                assessment,
                request.falseSignals(),
                Optional.empty(),
                Optional.empty(),
                assessment.remarks(),
                parts);
        return replaced(sheet, finding, study);
    }

    private static Sheet toolWear() {
        Random random = new Random(9);
        Sheet sheet = sheet(120, "12.5 ±0.05", i -> 12.475 + (i % 40) * 0.0011 + random.nextGaussian() * 0.004);
        Sample sample = sheet.findings().get(0).summary().orElseThrow().sample();
        ChartRequest request = ChartRequest.of("individuals")
                .with(
                        List.of(new Break(41, "tool 2", "tool changed"), new Break(81, "tool 3", "tool changed")),
                        List.of());
        Subgroups groups = sample.asIndividuals();
        TrendedCapability trended = TrendedStudy.withDefaults().analyse(sample, bounds(sheet), List.of(40, 80));
        return with(sheet, request, groups, Optional.empty(), Optional.of(trended), CapabilityStudy.withDefaults());
    }

    private static Sheet bounded() {
        Random random = new Random(2);
        Sheet sheet = sheet(125, "flatness 0.08", i -> Math.abs(random.nextGaussian() * 0.018));
        Sample sample = sheet.findings().get(0).summary().orElseThrow().sample();
        ChartRequest request = ChartRequest.of("xbar-r");
        Subgroups groups = sample.inSubgroupsOf(5);
        return with(sheet, request, groups);
    }

    /** The same readings with a distribution that the plan fixes. */
    static Sheet fixed(CapabilityMethod method) {
        Random random = new Random(12);
        Sheet sheet = sheet(125, "12.5 ±0.05", i -> 12.5 + random.nextGaussian() * 0.01);
        ChartRequest request = ChartRequest.of("xbar-r");
        Subgroups groups =
                sheet.findings().get(0).summary().orElseThrow().sample().inSubgroupsOf(5);
        return with(
                sheet,
                request,
                groups,
                Optional.empty(),
                Optional.empty(),
                CapabilityStudy.withDefaults().with(method));
    }

    private static Bounds bounds(Sheet sheet) {
        CharacteristicResult result = sheet.findings().get(0).result();
        Limits limits = result.characteristic().limits();
        return new Bounds(
                limits.lower(), limits.upper(), result.characteristic().target(), limits.naturalLower());
    }

    private static String title(String kind) {
        return ChartCatalogue.measured(kind)
                .map(each -> each.title())
                .or(() -> ChartCatalogue.counted(kind, ChartSettings.USUAL).map(each -> each.title()))
                .or(() -> ChartCatalogue.families(kind, ChartSettings.USUAL).map(each -> each.title()))
                .orElseThrow();
    }

    /** The usual study of these subgroups: nothing frozen, no trend. */
    private static Sheet with(Sheet sheet, ChartRequest request, Subgroups groups) {
        return with(sheet, request, groups, Optional.empty(), Optional.empty(), CapabilityStudy.withDefaults());
    }

    private static Sheet with(
            Sheet sheet,
            ChartRequest request,
            Subgroups groups,
            Optional<String> frozen,
            Optional<TrendedCapability> trended,
            CapabilityStudy study) {
        List<String> parts = new ArrayList<>();
        for (Judgement judgement : sheet.findings().get(0).result().judgements()) {
            if (judgement.reading() instanceof Reading.Measured) {
                parts.add(judgement.part());
            }
        }
        return with(sheet, request, groups, request.assess(groups), frozen, trended, study, parts);
    }

    private static Sheet with(
            Sheet sheet,
            ChartRequest request,
            Subgroups groups,
            Assessment assessment,
            Optional<String> frozen,
            Optional<TrendedCapability> trended,
            CapabilityStudy settings,
            List<String> parts) {
        Finding finding = sheet.findings().get(0);
        Capability capability = settings.analyse(
                finding.summary().orElseThrow().sample(),
                bounds(sheet),
                assessment.chart().sigmaWithin(),
                assessment.chart().data().commonSize(),
                assessment.control());
        ProcessStudy study = new ProcessStudy(
                title(request.kind()),
                request,
                groups,
                assessment,
                request.falseSignals(),
                Optional.of(new ProcessStudy.Indices(capability, capability, trended)),
                frozen,
                assessment.remarks(),
                parts);
        return replaced(sheet, finding, study);
    }

    private static Sheet replaced(Sheet sheet, Finding finding, ProcessStudy study) {
        Finding studied = new Finding(
                finding.result(),
                finding.summary(),
                Optional.of(study),
                finding.gauges(),
                finding.doubts(),
                finding.notes());
        return new Sheet(
                sheet.kind(),
                sheet.result(),
                List.of(studied),
                sheet.job(),
                sheet.refusals(),
                sheet.remarks(),
                sheet.provenance());
    }
}
