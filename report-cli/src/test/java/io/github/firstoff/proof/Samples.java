package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.command.Firstoff;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The sheets that the samples make, and the runs of the program that make them. */
public final class Samples {
    public static final Path FOLDER = Path.of("..", "sample-measurements");

    private Samples() {}

    /** A sheet that the samples make, of whatever kind. */
    public interface Made {
        String command();

        List<String> arguments();

        /** The files that it is made from, by the names under which it carries them. */
        Map<String, Path> inputs();

        /** Makes the sheet and returns what the command put on standard output. */
        default Run make(Path pdf, String... more) {
            List<String> arguments = new ArrayList<>(arguments());
            arguments.addAll(List.of("--out", pdf.toString()));
            arguments.addAll(List.of(more));
            return run(arguments.toArray(String[]::new));
        }
    }

    /**
     * A study of the samples.
     *
     * @param command its command
     * @param arguments the command line
     * @param inputs the files by the names under which the sheet carries them
     */
    public record Study(String command, List<String> arguments, Map<String, Path> inputs) implements Made {
        @Override
        public String toString() {
            return String.join(" ", arguments).replace(FOLDER + java.io.File.separator, "");
        }
    }

    /** A sheet of an inspection: its command, its plan, and the name that its job and its readings share. */
    public record Sample(String command, String plan, String name) implements Made {
        @Override
        public List<String> arguments() {
            return List.of(
                    command,
                    "--plan",
                    FOLDER.resolve(plan + ".plan.json").toString(),
                    "--job",
                    FOLDER.resolve(name + ".job.json").toString(),
                    FOLDER.resolve(name + ".csv").toString());
        }

        @Override
        public Map<String, Path> inputs() {
            return Map.of(
                    "plan-" + plan + ".plan.json",
                    FOLDER.resolve(plan + ".plan.json"),
                    "job-" + name + ".job.json",
                    FOLDER.resolve(name + ".job.json"),
                    "readings-01-" + name + ".csv",
                    FOLDER.resolve(name + ".csv"));
        }

        @Override
        public String toString() {
            return command + " " + name;
        }
    }

    /** What a run of the program said and how it ended. */
    public record Run(int code, String out, String err) {
        /** What it put on standard output, read as JSON. */
        public JsonNode json() throws IOException {
            return new ObjectMapper().readTree(out);
        }
    }

    /** Runs the program with nothing to read. */
    public static Run run(String... arguments) {
        return runWith(InputStream.nullInputStream(), (Object[]) arguments);
    }

    /** The same with arguments of any kind, such as paths, each as it prints. */
    public static Run run(Object... arguments) {
        return runWith(InputStream.nullInputStream(), arguments);
    }

    /** Runs the program with something keyed or piped in. */
    public static Run runWith(InputStream in, Object... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Firstoff.run(
                in,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                Stream.of(arguments).map(Object::toString).toArray(String[]::new));
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Every job of the samples with readings of its name, as each kind of sheet that it can be: found, not listed, so that none is left out. */
    public static Stream<Sample> all() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            List<Sample> samples = files.map(path -> path.getFileName().toString())
                    .filter(name -> name.endsWith(".job.json"))
                    .map(name -> name.substring(0, name.length() - ".job.json".length()))
                    .filter(name -> Files.exists(FOLDER.resolve(name + ".csv")))
                    .sorted()
                    .flatMap(Samples::sheets)
                    .toList();
            assertThat(samples).hasSizeGreaterThan(10);
            return samples.stream();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** The sheets of every kind that the samples make. */
    public static Stream<Made> everyKind() {
        return Stream.concat(all(), studies());
    }

    /** One sample for each kind of sheet, for checks that take too long to be made of every sample each time. */
    public static Stream<Made> oneOfEachKind() {
        return Stream.of(
                new Sample("first-article", "hq-310-p", "first-article-rejected"),
                new Sample("batch", "hq-331", "batch-2214"),
                new Sample("certificate", "hq-310-s", "batch-2209"),
                drift(),
                history(),
                pawlBush(),
                studies()
                        .filter(each -> each.command().equals("stack"))
                        .findFirst()
                        .orElseThrow());
    }

    /** Every assembly and every loop of the samples, with the readings that belong to it. */
    public static Stream<Study> studies() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            List<Study> studies = files.map(path -> path.getFileName().toString())
                    .sorted()
                    .flatMap(name -> name.endsWith(".assembly.json")
                            ? fits(name)
                            : name.endsWith(".stack.json")
                                    ? Stream.of(study("stack", Map.of("", name), Map.of("", "stack-")))
                                    : Stream.empty())
                    .toList();
            assertThat(studies).hasSizeGreaterThan(4);
            return Stream.concat(studies.stream(), Stream.of(drift(), history()));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static Stream<Study> fits(String assembly) {
        Map<String, String> roles = Map.of("", "assembly-", "--bores", "readings-bores-", "--rings", "readings-rings-");
        return switch (assembly) {
            case "hq-310-p-seat.assembly.json" ->
                Stream.of(
                        study("fit", Map.of("", assembly), roles),
                        study("fit", Map.of("", assembly, "--bores", "batch-2207.csv"), roles));
            case "pawl-bush-p.assembly.json" -> Stream.of(pawlBush());
            default -> Stream.of(study("fit", Map.of("", assembly), roles));
        };
    }

    /** The press fit of which both parts were measured. */
    public static Study pawlBush() {
        return study(
                "fit",
                Map.of(
                        "",
                        "pawl-bush-p.assembly.json",
                        "--bores",
                        "pawl-bush-p.bores.csv",
                        "--rings",
                        "pawl-bush.rings.csv"),
                Map.of("", "assembly-", "--bores", "readings-bores-", "--rings", "readings-rings-"));
    }

    /** The study of how the tools of a batch wear. */
    public static Study drift() {
        Sample batch = new Sample("drift", "hq-340-p", "batch-2216");
        return new Study(batch.command(), batch.arguments(), batch.inputs());
    }

    /** The seats of two batches beside one another. */
    public static Study history() {
        Map<String, Path> inputs = new TreeMap<>();
        inputs.put("plan-hq-310-p.plan.json", FOLDER.resolve("hq-310-p.plan.json"));
        inputs.put("job-batch-2207.job.json", FOLDER.resolve("batch-2207.job.json"));
        inputs.put("job-02-batch-2208.job.json", FOLDER.resolve("batch-2208.job.json"));
        inputs.put("readings-01-batch-2207.csv", FOLDER.resolve("batch-2207.csv"));
        inputs.put("readings-02-batch-2208.csv", FOLDER.resolve("batch-2208.csv"));
        return new Study(
                "history",
                List.of(
                        "history",
                        "--plan",
                        FOLDER.resolve("hq-310-p.plan.json").toString(),
                        "--characteristic",
                        "1",
                        FOLDER.resolve("batch-2207.csv").toString(),
                        FOLDER.resolve("batch-2208.csv").toString()),
                inputs);
    }

    /** A study by its files, each under its option, and the beginnings of the names under which the sheet carries them. */
    private static Study study(String command, Map<String, String> files, Map<String, String> beginnings) {
        List<String> arguments = new ArrayList<>(List.of(command));
        Map<String, Path> inputs = new TreeMap<>();
        new TreeMap<>(files).forEach((option, name) -> {
            if (!option.isEmpty()) {
                arguments.add(option);
            }
            arguments.add(FOLDER.resolve(name).toString());
            inputs.put(beginnings.get(option) + name, FOLDER.resolve(name));
        });
        return new Study(command, arguments, inputs);
    }

    private static Stream<Sample> sheets(String name) {
        String plan = planOf(name);
        if (name.startsWith("first-article")) {
            return Stream.of(new Sample("first-article", plan, name));
        }
        return name.startsWith("batch")
                ? Stream.of(new Sample("batch", plan, name), new Sample("certificate", plan, name))
                : Stream.empty();
    }

    /** The plan of the part that the job names, or that the samples' own README names for a job. */
    private static String planOf(String name) {
        String part;
        try {
            part = new ObjectMapper()
                    .readTree(FOLDER.resolve(name + ".job.json").toFile())
                    .path("part")
                    .asText()
                    .toLowerCase(Locale.ROOT);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        if (Files.exists(FOLDER.resolve(part + ".plan.json"))) {
            return part;
        }
        return switch (name) {
            case "batch-2209" -> "hq-310-s";
            case "first-article-guarded" -> "hq-310-p-guarded";
            default -> {
                String own = name.replaceFirst("^first-article-", "");
                yield Files.exists(FOLDER.resolve(own + ".plan.json")) ? own : "hq-310-p";
            }
        };
    }

    /** The sheet of a small batch with charts. */
    public static Sample batch() {
        return new Sample("batch", "hq-310-p", "batch-2207");
    }
}
