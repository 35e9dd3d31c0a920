package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.jar.JarOutputStream;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The real program behind a pseudo-terminal: what a person sees, and that a killed session loses nothing that it had confirmed. */
class MeasureInATerminalTest {
    private static final String PLAN = """
            { "schema": "firstoff-plan-1",
              "part": { "number": "HQ-900-P", "name": "trial ring", "drawing": "HQ-900", "revision": "A", "hand": "port",
                        "counterpart": "HQ-900-S" },
              "unit": "mm",
              "gauges": [ { "id": "MIC-1", "kind": "micrometer", "resolution": "0.001", "expandedUncertainty": "0.002",
                            "calibrationDue": "2099-12-31", "certificate": "K-1" } ],
              "characteristics": [
                { "number": "1", "feature": "outside diameter", "requirement": "Ø40 ±0.05", "gauge": "MIC-1" },
                { "number": "2", "feature": "edges", "requirement": "visual: no burrs" } ] }
            """;

    /** A prompt, or the verdict that confirms what was typed. */
    private static final Pattern SAID = Pattern.compile(
            "(P\\d+), ([12])(?: in mm|, pass or fail): |(conforms|over by|under by|failed)|Everything is measured");

    @TempDir
    private static Path shared;

    private static String program;
    private static Path archive;

    @TempDir
    private Path folder;

    /**
     * An archive of the classes that a start needs halves the time that the kills take. It wants archives on the class path, so the
     * program's own folders are packed first.
     */
    @BeforeAll
    static void makeClassArchive() throws IOException, InterruptedException {
        List<String> entries = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
            Path path = Path.of(entry);
            if (!Files.isDirectory(path)) {
                entries.add(entry);
            } else if (path.endsWith("classes")) {
                entries.add(pack(path, shared.resolve("packed-" + entries.size() + ".jar")));
            }
        }
        program = String.join(File.pathSeparator, entries);
        archive = shared.resolve("classes.jsa");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:ArchiveClassesAtExit=" + archive,
                        "-XX:+UseSerialGC",
                        "-cp",
                        program,
                        "io.github.firstoff.command.Firstoff",
                        "measure",
                        "--plan",
                        Files.writeString(shared.resolve("plan.json"), PLAN).toString(),
                        "--out",
                        shared.resolve("r.csv").toString(),
                        "--count",
                        "1")
                .redirectErrorStream(true)
                .redirectInput(Files.writeString(shared.resolve("in"), "40.01\npass\nstop\n")
                        .toFile())
                .redirectOutput(shared.resolve("out").toFile())
                .start();
        assertThat(process.waitFor())
                .as(Files.readString(shared.resolve("out")))
                .isZero();
    }

    private static String pack(Path classes, Path jar) throws IOException {
        try (Stream<Path> walk = Files.walk(classes);
                JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
            for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
                out.putNextEntry(
                        new ZipEntry(classes.relativize(file).toString().replace(File.separatorChar, '/')));
                Files.copy(file, out);
                out.closeEntry();
            }
        }
        return jar.toString();
    }

    private PtySession start(Path out, Map<String, String> environment, String... more) throws IOException {
        return start(out, 200, environment, more);
    }

    private PtySession start(Path out, int columns, Map<String, String> environment, String... more)
            throws IOException {
        List<String> arguments = new ArrayList<>(List.of(
                "measure",
                "--plan",
                Files.writeString(folder.resolve("plan.json"), PLAN).toString(),
                "--out",
                out.toString()));
        arguments.addAll(List.of(more));
        return PtySession.start(program, archive, columns, environment, arguments);
    }

    @Test
    void aPerson_seesVerdictsInSignsWordsAndColours() throws IOException, InterruptedException {
        Path out = folder.resolve("r.csv");
        try (PtySession pty = start(out, Map.of(), "--pieces", "P1")) {
            pty.await(Pattern.compile("P1, 1 in mm: "));
            pty.type("40.012");
            pty.await(Pattern.compile("P1, 2, pass or fail: "));
            pty.type("fail");
            pty.await(Pattern.compile("stop ends: "));
            pty.type("stop");
            assertThat(pty.exitCode()).isEqualTo(ExitCodes.NOT_ACCEPTED);
            assertThat(pty.raw())
                    .contains("\u001B[32m✓ conforms, 0.038 mm inside\u001B[0m")
                    .contains("\u001B[1;31m✗ failed\u001B[0m");
            assertThat(pty.text())
                    .contains(" 1  outside diameter: Ø40 ±0.05  (39.95 to 40.05 mm)  gauge MIC-1, micrometer\n")
                    .contains(
                            "  P1, 1 in mm: 40.012\n    ✓ conforms, 0.038 mm inside   39.95     │                ┊   ●            │     40.05\n");
        }
        assertThat(Files.readAllLines(out)).hasSize(3);
    }

    @Test
    void withoutColoursAndWithoutUnicode_theSameIsSaid() throws IOException, InterruptedException {
        try (PtySession pty =
                start(folder.resolve("r.csv"), Map.of("NO_COLOR", "1", "LC_ALL", "C"), "--pieces", "P1")) {
            pty.await(Pattern.compile("P1, 1 in mm: "));
            pty.type("40.062");
            pty.await(Pattern.compile("P1, 2, pass or fail: "));
            pty.type("stop");
            pty.exitCode();
            assertThat(pty.raw()).doesNotContain("\u001B").contains("dia 40 +/-0.05");
            String dialogue = pty.text().substring(0, pty.text().indexOf("pass or fail"));
            assertThat(dialogue)
                    .contains(
                            "    [X] over by 0.012 mm (+0.012)   39.95     |                :                |   o 40.05\n")
                    .matches("\\p{ASCII}*");
        }
    }

    /** On a pocket terminal of forty columns nothing is left to the terminal to break, and the answer has room behind its question. */
    @ParameterizedTest
    @CsvSource({"40,C.UTF-8", "40,C", "28,C", "60,C.UTF-8"})
    void onANarrowTerminal_theProgramBreaksTheLines(int columns, String language)
            throws IOException, InterruptedException {
        Path out = folder.resolve("r.csv");
        Map<String, String> environment = Map.of("LC_ALL", language, "TERM", "dumb");
        try (PtySession pty = start(out, columns, environment, "--pieces", "P1,P2")) {
            Pattern prompt = Pattern.compile("(?:in mm|fail|keyed?|anew|ends): $");
            for (String typed : List.of("40.012", "fail", "40.062", "list", "chart", "help", "pass", "stop")) {
                pty.await(prompt);
                pty.type(typed);
            }
            assertThat(pty.exitCode()).isEqualTo(ExitCodes.NOT_ACCEPTED);
            assertThat(pty.raw()).doesNotContain("\u001B");
            List<String> lines = pty.text().replace("\0", "").lines().toList();
            assertThat(lines.subList(1, lines.size()))
                    .filteredOn(line -> !line.contains(out.toString()))
                    .allMatch(line -> line.length() <= columns);
            assertThat(pty.text()).containsPattern(language.equals("C") ? "\\|[ :o.]+\\|" : "│[ ┊●·]+│");
            assertThat(language.equals("C") ? pty.text() : "").matches("\\p{ASCII}*");
        }
    }

    /** Ctrl-C and Ctrl-D, at an empty question and within a line: what was confirmed is there, and what was not is not. */
    @ParameterizedTest
    @CsvSource({"'\u0003', 130", "'40.0\u0003', 130", "'\u0004', 1", "'40.0\u0004\u0004', 1"})
    void theKeysThatEnd_leaveWhatWasConfirmed(String keys, int code) throws IOException, InterruptedException {
        Path out = folder.resolve("r.csv");
        try (PtySession pty = start(out, Map.of(), "--pieces", "P1,P2")) {
            pty.await(Pattern.compile("P1, 1 in mm: "));
            pty.type("40.012");
            pty.await(Pattern.compile("P1, 2, pass or fail: "));
            pty.type("pass");
            pty.await(Pattern.compile("P2, 1 in mm: "));
            pty.press(keys);
            assertThat(pty.exitCode()).isEqualTo(code);
            // What follows stands on a line of its own.
            assertThat(pty.text()).doesNotContainPattern("P2, 1 in mm: [^\\n]*(?:Measured|The input)");
        }
        assertThat(kept(out)).containsExactly(new Value("P1", "1", "40.012"), new Value("P1", "2", "pass"));
        try (PtySession pty = start(out, Map.of())) {
            pty.await(Pattern.compile("goes on where it stood: 2 readings on 2 pieces"));
            pty.await(Pattern.compile("P2, 1 in mm: "));
        }
    }

    @Test
    void twoSessions_cannotWriteOneFile() throws IOException, InterruptedException {
        Path out = folder.resolve("r.csv");
        try (PtySession first = start(out, Map.of(), "--pieces", "P1")) {
            first.await(Pattern.compile("P1, 1 in mm: "));
            try (PtySession second = start(out, Map.of(), "--pieces", "P1")) {
                assertThat(second.exitCode()).isEqualTo(ExitCodes.OUTPUT);
                assertThat(second.text()).contains("is in use by another session");
            }
            Path other = Files.createLink(folder.resolve("other.csv"), out);
            try (PtySession second = start(other, Map.of(), "--pieces", "P1")) {
                assertThat(second.exitCode()).as(second.text()).isIn(ExitCodes.OUTPUT, ExitCodes.INPUT);
            }
            first.type("40.0");
            first.await(Pattern.compile("conforms"));
        }
    }

    @Test
    void killedAtRandom_nothingConfirmedIsLost_andItGoesOnWhereItStood() throws IOException, InterruptedException {
        kill(4, 1);
    }

    @Test
    @Tag("slow")
    void killedAtRandomOften_nothingConfirmedIsLost() throws IOException, InterruptedException {
        kill(120, 2);
    }

    /** What the session has said of one value. */
    private record Value(String part, String characteristic, String typed) {}

    private void kill(int kills, long seed) throws IOException, InterruptedException {
        Random random = new Random(seed);
        Path out = folder.resolve("r.csv");
        List<Value> confirmed = new ArrayList<>();
        Optional<Value> inFlight = Optional.empty();
        int confirmedInAll = 0;
        for (int life = 0; life <= kills; life++) {
            try (PtySession pty = start(out, Map.of(), "--count", "400", "--prefix", "P")) {
                Matcher said = pty.await(SAID);
                List<Value> kept = kept(out);
                List<Value> withOneMore = new ArrayList<>(confirmed);
                inFlight.ifPresent(withOneMore::add);
                assertThat(kept)
                        .as("life %d: all that was confirmed, and what was typed last wholly or not at all", life)
                        .isIn(confirmed, withOneMore);
                confirmed = kept;
                requireNext(said, kept.size(), life);
                for (int values = random.nextInt(6); values > 0; values--) {
                    Value value = type(pty, said, random);
                    assertThat(pty.await(SAID).group(3)).as("life %d", life).isNotNull();
                    confirmed.add(value);
                    confirmedInAll++;
                    said = pty.await(SAID);
                    requireNext(said, confirmed.size(), life);
                }
                Value last = type(pty, said, random);
                // Anywhere between the key and a little after the verdict, which takes a few milliseconds.
                long wait = System.nanoTime() + random.nextInt(8_000_000);
                while (System.nanoTime() < wait) {
                    Thread.onSpinWait();
                }
                pty.kill();
                if (pty.saidSince(SAID)) {
                    confirmed.add(last);
                    inFlight = Optional.empty();
                } else {
                    inFlight = Optional.of(last);
                }
            }
        }
        assertThat(confirmedInAll).isGreaterThan(kills);
    }

    private static Value type(PtySession pty, Matcher said, Random random) throws IOException {
        boolean size = said.group(2).equals("1");
        String typed = size ? "40.0" + (10 + random.nextInt(60)) : random.nextInt(5) == 0 ? "fail" : "pass";
        pty.type(typed);
        return new Value(said.group(1), said.group(2), typed);
    }

    private static void requireNext(Matcher said, int kept, int life) {
        assertThat(said.group(1) + ", " + said.group(2))
                .as("life %d: what is asked for after %d values", life, kept)
                .isEqualTo(String.format("P%03d, %d", kept / 2 + 1, kept % 2 + 1));
    }

    private static List<Value> kept(Path out) throws IOException {
        List<Value> values = new ArrayList<>();
        for (String line : Files.readString(out).lines().skip(1).toList()) {
            String[] fields = line.split(",", -1);
            values.add(new Value(fields[0], fields[1], fields[2]));
        }
        return values;
    }
}
