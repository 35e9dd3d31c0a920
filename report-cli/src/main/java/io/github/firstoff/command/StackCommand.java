package io.github.firstoff.command;

import io.github.firstoff.intake.StackFile;
import io.github.firstoff.report.kind.StackReport;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.sheet.StackJson;
import io.github.firstoff.sheet.StackSheet;
import io.github.firstoff.sheet.StackWords;
import io.github.firstoff.study.stack.StackResult;
import io.github.firstoff.study.stack.StackStudy;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code firstoff stack}. */
@Command(
        name = "stack",
        description = {"A loop of dimensions: the gap it leaves at worst and usually, and which member matters."},
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class StackCommand extends StudyCommand {
    @Parameters(paramLabel = "MEMBERS", description = "The members of the loop (JSON, see docs/stack.md).")
    private @Nullable Path members;

    StackCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Path path = Objects.requireNonNull(members);
        keep(List.of(path));
        StackFile file = StackFile.read(path);
        StackResult result = StackStudy.of(file.loop());
        StackSheet sheet = new StackSheet(
                result,
                lines(file.notices()),
                provenance(
                        List.of(file.name()),
                        List.of(file.sha256()),
                        result.members().size()));
        return tell(
                sheet.notices(),
                paper -> new StackReport().compose(sheet, paper),
                target -> StackJson.write(sheet, target),
                summary(sheet),
                sheet.accepted());
    }

    private static List<String> summary(StackSheet sheet) {
        StackResult result = sheet.result();
        StackWords words = new StackWords(result);
        String unit = " " + result.loop().unit().symbol();
        List<String> lines = new ArrayList<>();
        lines.add(words.answer());
        result.worst().ifPresent(worst -> lines.add("Worst case: " + StackWords.plain(worst) + unit));
        result.rootSumSquare()
                .ifPresent(around -> lines.add("Root sum square: " + words.length(around.middle() - around.half())
                        + " to " + words.length(around.middle() + around.half()) + unit));
        lines.add("99.73 % of " + result.drawn().draws() + " drawn: "
                + words.length(result.drawn().low()) + " to "
                + words.length(result.drawn().high()) + unit);
        for (StackResult.Contribution each : result.members()) {
            lines.add("  " + each.member().name() + ": "
                    + FitWords.rounded(100 * each.ofVariance(), 1, RoundingMode.HALF_EVEN)
                    + " % of the variance");
        }
        return lines.stream().map(line -> line.replace('\u00A0', ' ')).toList();
    }
}
