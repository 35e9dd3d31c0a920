package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.command.Firstoff;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The sheets that the samples make. */
public final class Samples {
    public static final Path FOLDER = Path.of("..", "sample-measurements");

    private Samples() {}

    /** A sheet of the samples: its command, its plan, and the name that its job and its readings share. */
    public record Sample(String command, String plan, String name) {
        public List<String> arguments() {
            return List.of(
                    command,
                    "--plan",
                    FOLDER.resolve(plan + ".plan.json").toString(),
                    "--job",
                    FOLDER.resolve(name + ".job.json").toString(),
                    FOLDER.resolve(name + ".csv").toString());
        }

        /** Makes the sheet and returns what the command put on standard output. */
        public Run make(Path pdf, String... more) {
            List<String> arguments = new ArrayList<>(arguments());
            arguments.addAll(List.of("--out", pdf.toString()));
            arguments.addAll(List.of(more));
            return run(arguments.toArray(String[]::new));
        }

        @Override
        public String toString() {
            return command + " " + name;
        }
    }

    /** How a command ended. */
    public record Run(int code, String out, String err) {}

    public static Run run(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Firstoff.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                arguments);
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
