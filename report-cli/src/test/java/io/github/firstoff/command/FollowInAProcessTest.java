package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real program follows a folder and a file in a process of its own, until Ctrl-C ends it. */
class FollowInAProcessTest {
    private static final int INTERRUPTED = 130;
    private static final String PLAN = """
            { "schema": "firstoff-plan-1", "part": { "number": "HQ-077", "revision": "B" }, "unit": "mm",
              "characteristics": [ { "number": "1", "feature": "pin diameter", "requirement": "12 0/-0.2",
                "study": { "chart": "xbar-r", "subgroup": 5 } } ] }
            """;

    @TempDir
    private Path folder = Path.of("");

    private final List<Process> started = new ArrayList<>();
    private Path plan = Path.of("");
    private Path out = Path.of("");
    private Path err = Path.of("");
    private Path temporary = Path.of("");

    @BeforeEach
    void prepare() throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/kill")), "signals are sent as Unix sends them");
        plan = Files.writeString(folder.resolve("plan.json"), PLAN);
        out = folder.resolve("out.txt");
        err = folder.resolve("err.txt");
        temporary = Files.createDirectory(folder.resolve("temporary"));
    }

    @AfterEach
    void end() {
        started.forEach(Process::destroyForcibly);
    }

    private Process start(Object... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                "io.github.firstoff.command.Firstoff"));
        Stream.of(arguments).map(Object::toString).forEach(command::add);
        Process process = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        started.add(process);
        return process;
    }

    private int interrupt(Process process) throws IOException, InterruptedException {
        assertThat(new ProcessBuilder("/bin/kill", "-INT", Long.toString(process.pid()))
                        .start()
                        .waitFor())
                .isZero();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).as("it ends").isTrue();
        return process.exitValue();
    }

    private static void await(BooleanSupplier happened) throws InterruptedException {
        for (int i = 0; i < 1200 && !happened.getAsBoolean(); i++) {
            Thread.sleep(25);
        }
        assertThat(happened.getAsBoolean()).isTrue();
    }

    private static String text(Path path) {
        try {
            return Files.exists(path) ? Files.readString(path) : "";
        } catch (IOException fault) {
            throw new java.io.UncheckedIOException(fault);
        }
    }

    private static String rows(int from, int to) {
        StringBuilder rows = new StringBuilder(from == 0 ? "part,1\n" : "");
        for (int i = from; i < to; i++) {
            rows.append(String.format(Locale.ROOT, "S%d,%.4f%n", i, 11.85 + i * 0.0009 + ((i * 37) % 11) * 0.0007)
                    .replace("\r", ""));
        }
        return rows.toString();
    }

    private static String pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private void assertThatNothingIsLeft(Path place) throws IOException {
        assertThat(text(err)).doesNotContain("Exception", "\tat ");
        try (Stream<Path> files = Files.list(temporary)) {
            // The Java platform's own record of performance lies there while it runs.
            assertThat(files.filter(each -> !each.getFileName().toString().startsWith("hsperfdata")))
                    .isEmpty();
        }
        try (Stream<Path> files = Files.list(place)) {
            assertThat(files.filter(each -> each.toString().endsWith(".part"))).isEmpty();
        }
    }

    @Test
    @Tag("slow")
    void aFolder_isFollowedThroughWhateverHappensInIt_untilCtrlC() throws Exception {
        Path comes = Files.createDirectory(folder.resolve("comes"));
        Path pdf = folder.resolve("sheet.pdf");
        Process process = start("batch", "--plan", plan, "--follow", comes, "--out", pdf);
        Path first = Files.writeString(comes.resolve("a.csv"), rows(0, 10));
        await(() -> text(out).contains("on 10 pieces"));

        // Written in halves: what is there of it in between is no file of readings yet, or one with a fault.
        Path second = comes.resolve("b.csv");
        String whole = "part,1\n" + rows(10, 20);
        for (int i = 0; i < whole.length(); i += 40) {
            Files.writeString(
                    second,
                    whole.substring(i, Math.min(whole.length(), i + 40)),
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
            Thread.sleep(100);
        }
        await(() -> text(out).contains("on 20 pieces"));
        assertThat(text(out).lines().filter(line -> line.matches(".* on 1[1-9] pieces.*")))
                .as("half a file was never on the sheet")
                .isEmpty();
        assertThat(text(err)).doesNotContain("found");

        Path replacement = Files.writeString(folder.resolve("replacement"), "part,1\n" + rows(30, 35));
        Files.move(replacement, second, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        await(() -> text(out).contains("on 15 pieces"));
        assertThat(text(err)).contains("b.csv was changed and is read anew");
        Files.delete(first);
        await(() -> text(out).contains("on 5 pieces"));
        assertThat(text(err)).contains("a.csv is not in the folder any more; its readings leave the sheet");

        Path away = Files.move(comes, folder.resolve("away"));
        await(() -> text(err).contains("is not there any more; the sheet stays as it was"));
        assertThat(text(err)).doesNotContain("b.csv is not in the folder");
        Files.move(away, comes);
        await(() -> text(err).contains("is there again"));
        Files.writeString(comes.resolve("c.csv"), "part,1\n" + rows(40, 42));
        await(() -> text(out).contains("on 7 pieces"));

        assertThat(interrupt(process)).isEqualTo(INTERRUPTED);
        assertThat(pages(pdf)).contains("HQ-077").contains("7 pieces");
        assertThatNothingIsLeft(folder);
    }

    @Test
    void ctrlCInTheMidstOfARenewal_leavesAWholeSheet() throws Exception {
        Path comes = Files.createDirectory(folder.resolve("comes"));
        Path pdf = folder.resolve("sheet.pdf");
        Files.writeString(comes.resolve("a.csv"), rows(0, 200));
        Process process = start("batch", "--plan", plan, "--follow", comes, "--out", pdf);
        await(() -> Files.exists(pdf));
        for (int round = 0; round < 3; round++) {
            Files.writeString(
                    comes.resolve("b" + round + ".csv"), "part,1\n" + rows(200 + round * 100, 220 + round * 100));
        }
        await(() -> {
            try (Stream<Path> files = Files.list(folder)) {
                return files.anyMatch(each -> each.toString().endsWith(".part"))
                        || text(out).contains("260 pieces");
            } catch (IOException fault) {
                throw new java.io.UncheckedIOException(fault);
            }
        });

        assertThat(interrupt(process)).isEqualTo(INTERRUPTED);
        assertThat(pages(pdf)).contains("HQ-077");
        assertThat(text(out)).endsWith("\n");
        assertThatNothingIsLeft(folder);
    }

    @Test
    void aFileThatGrows_isFollowed_andCtrlCLeavesTheLastStateOnTheSheet() throws Exception {
        Path file = folder.resolve("lot.csv");
        Path pdf = folder.resolve("drift.pdf");
        Process process = start("drift", "--plan", plan, "--follow", file, "--out", pdf);
        await(() -> text(err).contains("lot.csv is not there; waiting for it"));
        Files.writeString(file, rows(0, 40) + "S40,11.8");
        await(() -> text(out).lines().count() > 2);
        assertThat(text(err)).doesNotContain("found");
        Files.writeString(file, "999\n" + rows(41, 60), StandardCharsets.UTF_8, StandardOpenOption.APPEND);
        long before = text(out).lines().count();
        await(() -> text(out).lines().count() > before);

        Files.delete(file);
        await(() ->
                text(err).indexOf("is not there; waiting for it") < text(err).lastIndexOf("is not there; waiting"));
        Files.writeString(file, rows(0, 30));
        await(() -> text(err).contains("is shorter than it was, so it is followed anew from its beginning"));

        assertThat(interrupt(process)).isEqualTo(INTERRUPTED);
        assertThat(pages(pdf)).contains("HQ-077");
        assertThatNothingIsLeft(folder);
    }

    @Test
    void ctrlCBeforeAnythingCame_saysSo_andWritesNothing() throws Exception {
        Path comes = Files.createDirectory(folder.resolve("comes"));
        Process process = start("batch", "--plan", plan, "--follow", comes, "--out", folder.resolve("s.pdf"));
        Thread.sleep(1500);
        assertThat(interrupt(process)).isEqualTo(INTERRUPTED);
        assertThat(text(err)).contains("no file of readings came");
        assertThat(folder.resolve("s.pdf")).doesNotExist();
        assertThatNothingIsLeft(folder);
    }
}
