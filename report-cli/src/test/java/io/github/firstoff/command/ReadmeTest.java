package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Walks README.md from top to bottom as a reader does: saves what it says to save, runs what it says to run. */
class ReadmeTest {
    private static final Pattern FENCE = Pattern.compile("(?ms)^```(\\w+)\\n(.*?)^```$");
    private static final Pattern SAVE_AS = Pattern.compile("Save this as `([^`]+)`:\\s*$");
    private static final Pattern WORDS = Pattern.compile("\\s+");
    private static final String LAUNCHER = "report-cli/bin/firstoff ";

    @TempDir
    private Path folder;

    @Test
    void walk_everyFileAndCommand_doesWhatTheReadmeSays() throws IOException {
        String readme = Files.readString(Path.of("..", "README.md")).replace("\r\n", "\n");
        Matcher fences = FENCE.matcher(readme);
        int end = 0;
        int commands = 0;
        Optional<String> said = Optional.empty();
        while (fences.find()) {
            String before = readme.substring(end, fences.start());
            String body = fences.group(2);
            Matcher save = SAVE_AS.matcher(before);
            if (save.find()) {
                Files.writeString(folder.resolve(save.group(1)), body);
            } else if (fences.group(1).equals("sh") && body.startsWith(LAUNCHER)) {
                said = Optional.of(run(body.substring(LAUNCHER.length()).strip()));
                commands++;
            } else if (fences.group(1).equals("text")) {
                assertThat(said.orElseThrow()).isEqualTo(body);
            }
            end = fences.end();
        }
        assertThat(commands).isEqualTo(3);
        assertThat(folder.resolve("pin-first-article.pdf")).isNotEmptyFile();
        assertThat(folder.resolve("pin-batch.pdf")).isNotEmptyFile();
        assertThat(folder.resolve("pin-certificate.pdf")).isNotEmptyFile();
    }

    /** Runs a command line with every file in the test's own folder; what it says names the files as the README does. */
    private String run(String line) {
        List<String> arguments = new ArrayList<>();
        for (String word : WORDS.split(line, -1)) {
            arguments.add(word.contains(".") ? folder.resolve(word).toString() : word);
        }
        Samples.Run run = Samples.run(arguments.toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
        return run.out().replace(System.lineSeparator(), "\n").replace(folder + java.io.File.separator, "");
    }
}
