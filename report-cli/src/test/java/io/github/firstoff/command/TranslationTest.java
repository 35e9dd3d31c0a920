package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.assembly.ElasticMaterials;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.Samples;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.kind.ReportCatalogue;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.kind.StudyCases;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.words.Labels;
import io.github.firstoff.words.Printed;
import io.github.firstoff.words.PseudoLanguage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That a translation is one file: every sheet is composed in a language whose every word is marked, and whatever is not marked must be the
 * user's, a figure, a unit or a symbol. Blocks, tables, pictures with their labels, heads and feet are all looked at.
 */
class TranslationTest {
    private static final Path SAMPLES = Path.of("..", "sample-measurements");
    private static final Instant NOW = Instant.parse("2026-11-20T09:30:00Z");
    private static final Labels MARKED = PseudoLanguage.labels();
    private static final Stationery PLAIN = new Stationery(PaperSize.A4, MARKED, Optional.empty());
    private static final String[] PAGES = {"io.github.firstoff.report.model.", "io.github.firstoff.report.figure."};

    /** Keys whose values are words of the program and not of the user. */
    private static final Set<String> CODED = Set.of(
            "schema",
            "chart",
            "rule",
            "class",
            "form",
            "hand",
            "unit",
            "language",
            "paper",
            "inspect",
            "tests",
            "test",
            "spread",
            "decisionRule",
            "breaks",
            "subgroupBy",
            "distribution",
            "axis");

    /** Words of the program that files may hold as values. */
    private static final Set<String> CODES = Set.of(
            "critical",
            "major",
            "minor",
            "sample",
            "simple",
            "guarded",
            "pass",
            "fail",
            "mm",
            "port",
            "starboard",
            "left",
            "right",
            "full",
            "partial",
            "delta",
            "part",
            "tool",
            "time",
            "value",
            "characteristic",
            "note",
            "operator",
            "machine",
            "gauge",
            "subgroup",
            "phase",
            "individuals",
            "deviation",
            "median-r",
            "c",
            "u",
            "p",
            "np",
            "mean",
            "normal",
            "measured",
            "none",
            "batch");

    private static final String ODD_PLAN = """
            { "schema": "firstoff-plan-1", "colour": "grey",
              "part": { "number": "HQ-900", "name": "Fairlead", "drawing": "HQ-900", "revision": "B", "hand": "port" },
              "unit": "mm",
              "gauges": [
                { "id": "K1", "kind": "calliper", "resolution": "0.1", "expandedUncertainty": "0.03", "calibrationDue": "2026-01-31" },
                { "id": "K2", "kind": "outside micrometer", "resolution": "0.05", "expandedUncertainty": "0.001" } ],
              "demands": { "critical": { "minimumIndices": { "cpk": "1.67" }, "inspect": "every piece" } },
              "characteristics": [
                { "number": "1", "feature": "eye width", "requirement": "12.5 ±0.05", "class": "critical", "gauge": "K1",
                  "decisionRule": "guarded", "study": { "chart": "individuals", "breaks": ["tool"] } },
                { "number": "2", "feature": "eye", "requirement": "Ø6.6 H13", "form": "hole", "gauge": "K2",
                  "study": { "chart": "xbar-r", "subgroup": 3, "breaks": ["tool"],
                             "exclude": [ { "point": 2, "reason": "chip under the anvil" } ] } },
                { "number": "3", "feature": "eye axis", "requirement": "position Ø0.2 (M) A B", "sizeFeature": "2" },
                { "number": "4", "feature": "edges", "requirement": "visual: no burrs" },
                { "number": "5", "feature": "reach", "requirement": "40 ±0.1", "inspect": "sample" } ] }
            """;

    private static final String ODD_JOB = """
            { "schema": "firstoff-job-1", "job": "J-77", "batch": "B-9", "quantity": 60, "date": "2026-11-03",
              "firstArticle": { "kind": "delta", "reason": "new fixture" } }
            """;

    private static final String ODD_ROWS = """
            part;1;2;3;4;tool;time;temperature;gauge;colour
            P-001;12,50;6,61;0,21;pass;B1;2026-11-02T08:00;20,0;K1;
            P-002;125,2;6,70;0,25;fail;B1;2026-11-02T08:05;23,5;K1;
            P-003;12,53;6,95;0,45;pass;B1;2026-11-02T08:10;20,0;K2;
            P-004;12,5x;6,61;0,10;pass;B1;2026-11-02T08:15;20,0;K2;
            P-005;12,548;6,604;;pass;B1;2026-11-02T08:20;20,0;K2;
            P-006;12,61;6,62;0,30;;B1;2026-11-02T08:25;20,0;K2;
            """;

    /** A sheet to make: the command and its files. */
    record Made(String name, String command, Ingredients from) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Made> samples() {
        List<Made> all = new ArrayList<>();
        Samples.all()
                .map(each -> new Made(each.toString(), each.command(), inspection(each.plan(), each.name())))
                .forEach(all::add);
        all.add(new Made(
                "history",
                "history",
                Ingredients.NONE
                        .with(Role.PLAN, SAMPLES.resolve("hq-310-p.plan.json"))
                        .with(Role.READINGS, SAMPLES.resolve("batch-2207.csv"))
                        .with(Role.READINGS, SAMPLES.resolve("batch-2208.csv"))
                        .choosing(Map.of("characteristic", "1"))));
        all.add(new Made("drift", "drift", inspection("hq-340-p", "batch-2216")));
        for (String assembly : List.of("hq-310-p-seat", "spindle-bearing")) {
            all.add(new Made(
                    "fit " + assembly,
                    "fit",
                    Ingredients.NONE.with(Role.ASSEMBLY, SAMPLES.resolve(assembly + ".assembly.json"))));
        }
        all.add(new Made(
                "fit pawl-bush",
                "fit",
                Ingredients.NONE
                        .with(Role.ASSEMBLY, SAMPLES.resolve("pawl-bush-p.assembly.json"))
                        .with(Role.BORES, SAMPLES.resolve("pawl-bush-p.bores.csv"))
                        .with(Role.RINGS, SAMPLES.resolve("pawl-bush.rings.csv"))));
        all.add(new Made("stack", "stack", Ingredients.NONE.with(Role.STACK, SAMPLES.resolve("drum-play.stack.json"))));
        return all.stream();
    }

    /** A plan of the samples, and the job and the readings that share a name. */
    private static Ingredients inspection(String plan, String name) {
        return Ingredients.NONE
                .with(Role.PLAN, SAMPLES.resolve(plan + ".plan.json"))
                .with(Role.JOB, SAMPLES.resolve(name + ".job.json"))
                .with(Role.READINGS, SAMPLES.resolve(name + ".csv"));
    }

    private static MadeSheet make(String command, Ingredients from) {
        return SheetRecipes.of(command)
                .orElseThrow()
                .make(from, new FileShelf(false, InputStream.nullInputStream()), NOW);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everyWordOfASampleSheet_isOfTheFileOrTheUsers(Made made) {
        MadeSheet sheet = make(made.command(), made.from());
        if (!sheet.refusals().isEmpty()) {
            return;
        }
        Set<String> own = new HashSet<>();
        for (Path file : made.from().paths()) {
            own.add(file.getFileName().toString());
            own.add(file.getFileName().toString().replaceAll("\\.[a-z]+$", ""));
            own.addAll(values(file));
        }
        // the plan of the other hand, which a mirrored plan is made from
        own.addAll(values(SAMPLES.resolve("hq-310-p.plan.json")));
        own.addAll(values(SAMPLES.resolve("hq-320-p.plan.json")));
        own.add(ProgramVersion.text());
        // materials are called what the table of materials calls them, whichever of their names the assembly states
        ElasticMaterials.all().forEach(each -> own.add(each.name()));
        check(sheet.pages(PLAIN), atTheHead(own));
    }

    /** The same, and each as it begins a sentence. */
    private static Set<String> atTheHead(Set<String> own) {
        Set<String> both = new HashSet<>(own);
        own.stream()
                .filter(each -> !each.isEmpty())
                .forEach(each -> both.add(each.substring(0, 1).toUpperCase(Locale.ROOT) + each.substring(1)));
        return both;
    }

    static Stream<String> cases() {
        return StudyCases.names().stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void everyWordOfAStudy_isOfTheFileOrTheUsers(String name) {
        Sheet sheet = StudyCases.all().get(name);
        check(ReportCatalogue.compose(sheet, PLAIN), own(sheet));
    }

    /** What people wrote in the plan, the job and the readings of a sheet that no files lie behind. */
    private static Set<String> own(Sheet sheet) {
        Set<String> own = new HashSet<>(Printed.texts(
                List.of(
                        sheet.plan().plan(),
                        sheet.job(),
                        sheet.result().record().parts(),
                        sheet.provenance()),
                "io.github.firstoff.plan.",
                "io.github.firstoff.inspection.",
                "io.github.firstoff.sheet.Provenance"));
        sheet.plan()
                .characteristics()
                .forEach(each -> own.addAll(words(each.characteristic().printed())));
        sheet.findings().stream().flatMap(each -> each.study().stream()).forEach(study -> {
            study.chart().data().breaks().forEach(each -> own.addAll(written(List.of(each.name(), each.cause()))));
            study.chart().data().exclusions().forEach(each -> own.add(each.reason()));
            study.chart()
                    .stages()
                    .forEach(each -> own.addAll(each.reason().stream().toList()));
            study.request().tests().rules().forEach(each -> own.add(each.id()));
            own.addAll(study.frozenFrom().stream().toList());
            own.addAll(study.parts());
        });
        own.removeAll(CODES);
        return own;
    }

    /** Of remarks those that are somebody's own words. */
    private static List<String> written(List<Remark> remarks) {
        return remarks.stream()
                .filter(each -> each.key().isEmpty())
                .map(Remark::english)
                .toList();
    }

    /** Hard cases at once: what is odd in inputs, gauges, readings and requirements. */
    @ParameterizedTest
    @ValueSource(strings = {"first-article", "batch"})
    void everyWordOfAnOddSheet_isOfTheFileOrTheUsers(String command, @TempDir Path folder) throws IOException {
        Path plan = Files.writeString(folder.resolve("odd.plan.json"), ODD_PLAN);
        Path job = Files.writeString(folder.resolve("odd.job.json"), ODD_JOB);
        StringBuilder rows = new StringBuilder(ODD_ROWS);
        for (int i = 7; i <= 40; i++) {
            rows.append("P-%03d;12,5%d;6,6%d;0,2%d;pass;%s;2026-11-02T10:%02d;20,%d;K2;%s%n"
                    .formatted(
                            i, i % 8, i % 9, i % 5, i > 20 ? "B2" : "B1", i, i % 3, i % 11 == 0 ? "seen twice" : ""));
        }
        Path readings = Files.writeString(folder.resolve("odd.csv"), rows.toString());
        Ingredients from = Ingredients.NONE
                .with(Role.PLAN, plan)
                .with(Role.JOB, job)
                .with(Role.READINGS, readings)
                .choosing(Map.of("keep-going", "true"));
        MadeSheet sheet = make(command, from);
        assertThat(sheet.notices()).hasSizeGreaterThan(3);
        Set<String> own = new HashSet<>();
        for (Path file : from.paths()) {
            own.add(file.getFileName().toString());
            own.addAll(values(file));
        }
        own.add(ProgramVersion.text());
        // a place in a file is named as messages about files name it, for who wants to find it there
        own.add("column");
        check(sheet.pages(PLAIN), own);
    }

    private static void check(ReportModel model, Set<String> own) {
        List<String> texts = new ArrayList<>(Printed.texts(model.blocks(), PAGES));
        texts.addAll(Printed.texts(
                List.of(model.kind(), model.number(), model.head(), model.foot(), model.document()), PAGES));
        assertThat(texts).anyMatch(text -> PseudoLanguage.WORD.matcher(text).find());
        assertThat(Printed.strangers(texts, own)).isEmpty();
    }

    /** What stands in a file as the value of a key or in a field of a table. */
    private static Set<String> values(Path file) {
        Set<String> values = new HashSet<>();
        try {
            if (file.toString().endsWith(".json")) {
                collect("", new ObjectMapper().readTree(file.toFile()), values);
            } else {
                for (String line : Files.readAllLines(file)) {
                    for (String field : line.split("[,;]", -1)) {
                        values.addAll(words(field.strip()));
                    }
                }
            }
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        values.removeAll(CODES);
        return values;
    }

    private static void collect(String key, JsonNode node, Set<String> values) {
        if (node.isTextual() && !CODED.contains(key)) {
            values.addAll(words(node.asText()));
        }
        node.properties().forEach(each -> collect(each.getKey(), each.getValue(), values));
        if (node.isArray()) {
            node.forEach(each -> collect(key, each, values));
        }
    }

    /** A text as a whole and, of a requirement, the parts that a drawing sets apart. */
    private static List<String> words(String text) {
        List<String> all = new ArrayList<>(List.of(text));
        all.addAll(Arrays.stream(text.split("[: ]+", -1))
                .filter(each -> each.matches("[A-Z]{1,2}|.*\\d.*|visual|function"))
                .toList());
        int colon = text.indexOf(": ");
        if (colon > 0) {
            all.add(text.substring(colon + 2));
        }
        return all;
    }
}
