package io.github.firstoff.command;

import io.github.firstoff.intake.AssemblyFile;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.report.kind.FitReport;
import io.github.firstoff.sheet.FitJson;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.FitStudy;
import io.github.firstoff.study.pressfit.Matching;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code firstoff fit}. */
@Command(
        name = "fit",
        description = {
            "Two parts pressed into one another: does the joint hold hot, do the parts stay whole cold,",
            "what does the bearing keep, and which bore goes with which ring."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class FitCommand extends StudyCommand {
    @Parameters(paramLabel = "ASSEMBLY", description = "The joint, its parts and temperatures (JSON, see docs/fit.md).")
    private @Nullable Path assembly;

    @Option(names = "--bores", paramLabel = "READINGS", description = "Measured bores of the outer part (CSV or JSON).")
    private @Nullable Path bores;

    @Option(names = "--rings", paramLabel = "READINGS", description = "Measured sizes of what goes in (CSV or JSON).")
    private @Nullable Path rings;

    FitCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Path path = Objects.requireNonNull(assembly);
        List<Path> inputs = new ArrayList<>(List.of(path));
        Optional.ofNullable(bores).ifPresent(inputs::add);
        Optional.ofNullable(rings).ifPresent(inputs::add);
        keep(inputs);
        AssemblyFile file = AssemblyFile.read(path);
        AssemblyFile.Measured measured = file.with(Optional.ofNullable(bores), Optional.ofNullable(rings));
        FitResult result = FitStudy.of(measured.joint(), measured.bores(), measured.rings());
        List<String> hashes = new ArrayList<>(List.of(file.sha256()));
        List<String> names = new ArrayList<>(List.of(file.name()));
        for (Intake.ReadFile each : measured.files()) {
            hashes.add(each.sha256());
            names.add(each.name());
        }
        FitSheet sheet = new FitSheet(
                result,
                measured.hand(),
                lines(measured.notices()),
                provenance(
                        names,
                        hashes,
                        measured.files().stream()
                                .mapToLong(Intake.ReadFile::readings)
                                .sum()));
        return tell(
                sheet.notices(),
                paper -> new FitReport().compose(sheet, paper),
                target -> FitJson.write(sheet, target),
                summary(sheet),
                result.verdicts().accepted());
    }

    private static List<String> summary(FitSheet sheet) {
        FitWords words = new FitWords(sheet.result());
        List<String> lines = new ArrayList<>();
        lines.add(sheet.name() + (sheet.part().isEmpty() ? "" : ", " + sheet.part()));
        lines.add(words.answer());
        lines.addAll(words.decisions());
        lines.add(words.basis());
        sheet.result().matching().ifPresent(matching -> {
            lines.add("Pairs:");
            for (Matching.Pair pair : matching.pairs()) {
                lines.add("  " + pair.outer().name() + " with " + pair.inner().name() + ", "
                        + FitWords.micrometres(pair.interference()) + " µm");
            }
            for (Matching.Left left : matching.left()) {
                lines.add("  " + left.piece().name() + " stays: " + left.why().words());
            }
        });
        return lines.stream().map(line -> line.replace('\u00A0', ' ')).toList();
    }
}
