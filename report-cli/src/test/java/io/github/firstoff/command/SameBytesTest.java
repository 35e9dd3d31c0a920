package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same inputs at the same time give the same file, wherever and under whatever settings the program runs. */
class SameBytesTest {
    private static final String TIME = "1795700000";

    @TempDir
    private static Path folder;

    static Stream<Samples.Made> kinds() {
        return Samples.oneOfEachKind();
    }

    /** The program in a process of its own. */
    private static String run(Path java, Path where, List<String> settings, List<String> arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(java.toString(), "-Djava.awt.headless=true"));
        command.addAll(settings);
        String classPath = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator, -1))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
        command.addAll(List.of("-cp", classPath, "io.github.firstoff.command.Firstoff"));
        command.addAll(arguments);
        ProcessBuilder builder =
                new ProcessBuilder(command).directory(where.toFile()).redirectErrorStream(true);
        builder.environment().put("SOURCE_DATE_EPOCH", TIME);
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isLessThanOrEqualTo(ExitCodes.NOT_ACCEPTED);
        return said;
    }

    private static Path own() {
        return Path.of(System.getProperty("java.home"), "bin", "java");
    }

    private static List<String> to(Path pdf, List<String> arguments) {
        List<String> all = new ArrayList<>(arguments);
        all.addAll(List.of("--out", pdf.toString()));
        return all;
    }

    /** The sample's command line with other folders in front of its files. */
    private static List<String> inFolder(Samples.Made sample, Path files) {
        return sample.arguments().stream()
                .map(each -> each.startsWith(Samples.FOLDER.toString())
                        ? files.resolve(Samples.FOLDER.relativize(Path.of(each)))
                                .toString()
                        : each)
                .toList();
    }

    private static Path copyOfSamples() throws IOException {
        Path copy = Files.createDirectories(folder.resolve("deep").resolve("er"));
        try (Stream<Path> files = Files.list(Samples.FOLDER)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = copy.resolve(file.getFileName());
                if (!Files.exists(target)) {
                    Files.copy(file, target);
                    Files.setLastModifiedTime(target, FileTime.from(Instant.parse("2020-02-02T02:02:02Z")));
                }
            }
        }
        return copy;
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("kinds")
    void sheet_underOtherSettings_isTheSameFile(Samples.Made sample) throws IOException, InterruptedException {
        Path here = folder.resolve("here.pdf").toAbsolutePath();
        Path there = folder.resolve("there.pdf").toAbsolutePath();
        run(own(), Path.of("").toAbsolutePath(), List.of(), to(here, sample.arguments()));
        Path copy = copyOfSamples();
        run(
                own(),
                copy,
                List.of(
                        "-Duser.language=tr",
                        "-Duser.country=TR",
                        "-Duser.timezone=Pacific/Chatham",
                        "-Dfile.encoding=ISO-8859-1"),
                to(there, inFolder(sample, Path.of(""))));
        assertThat(Files.readAllBytes(there)).isEqualTo(Files.readAllBytes(here));
    }

    /** Other runtimes pack in another way; a sheet of one holds under each of the others that are installed beside this one. */
    @Tag("slow")
    @ParameterizedTest
    @MethodSource("kinds")
    void sheet_ofThisRuntime_holdsUnderOthers(Samples.Made sample) throws IOException, InterruptedException {
        List<Path> others;
        try (Stream<Path> homes =
                Files.list(Path.of(System.getProperty("java.home")).toRealPath().getParent())) {
            others = homes.filter(home -> !Files.isSymbolicLink(home))
                    .map(home -> home.resolve("bin").resolve("java"))
                    .filter(Files::isExecutable)
                    .filter(java -> !java.startsWith(Path.of(System.getProperty("java.home"))))
                    .toList();
        }
        Assumptions.assumeFalse(others.isEmpty(), "not checked, because no other runtime is installed beside this one");
        Path pdf = folder.resolve("held.pdf").toAbsolutePath();
        run(own(), Path.of("").toAbsolutePath(), List.of(), to(pdf, sample.arguments()));
        for (Path java : others) {
            assertThat(run(java, folder, List.of(), List.of("verify", pdf.toString())))
                    .as(java.toString())
                    .contains("Everything that was checked holds.");
        }
    }
}
