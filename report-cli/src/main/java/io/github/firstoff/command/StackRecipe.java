package io.github.firstoff.command;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.inspection.House;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.intake.StackFile;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.PrintedFigures;
import io.github.firstoff.proof.ReadingLines;
import io.github.firstoff.report.kind.StackReport;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.StackJson;
import io.github.firstoff.sheet.StackSheet;
import io.github.firstoff.sheet.StackWords;
import io.github.firstoff.study.stack.StackResult;
import io.github.firstoff.study.stack.StackStudy;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Sheets of dimension loops: one file with their members. */
final class StackRecipe implements SheetRecipe {
    private static final String COMMAND = "stack";

    @Override
    public String command() {
        return COMMAND;
    }

    @Override
    public MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        Sources sources = new Sources();
        StackFile file =
                StackFile.read(shelf.open(Role.STACK, 1, from.first(Role.STACK).orElse("stack.json")));
        sources.add(file.name(), file.sha256());
        sources.add(file.notices());
        Optional<House> house = sources.house(from, shelf);
        StackResult result = StackStudy.of(file.loop());
        return new Made(
                new StackSheet(
                        result,
                        sources.notices(),
                        sources.provenance(
                                now, RowCounts.allUsed(result.members().size()))),
                house);
    }

    private record Made(StackSheet sheet, Optional<House> house) implements MadeStudy {
        @Override
        public String command() {
            return COMMAND;
        }

        @Override
        public void write(Writer target) {
            StackJson.write(sheet, target);
        }

        /** The readings of members that were measured, so that a check can name the one that was changed. */
        @Override
        public Optional<ReadingLines> readings() {
            List<List<String>> lines = new ArrayList<>();
            String unit = sheet.result().loop().unit().word();
            for (DimensionLoop.Member member : sheet.result().loop().members()) {
                if (member.distribution() instanceof DimensionLoop.Measured measured) {
                    int number = 0;
                    for (BigDecimal reading : measured.readings()) {
                        number++;
                        lines.add(List.of(member.name(), Integer.toString(number), reading.toPlainString(), unit));
                    }
                }
            }
            return ReadingLines.ofSizes(
                    "Every size of a member as it was taken", List.of("member", "reading", "value", "unit"), lines);
        }

        @Override
        public PrintedFigures printed() {
            return PrintedFigures.at("worstCase.minimum", "worstCase.maximum", "members[].name")
                    .andSentencesAt("answer");
        }

        @Override
        public ReportModel compose(PaperSize paper) {
            return new StackReport().compose(sheet, paper);
        }

        @Override
        public List<String> lines() {
            StackResult result = sheet.result();
            StackWords words = new StackWords(result);
            String unit = " " + result.loop().unit().symbol();
            List<String> lines = new ArrayList<>();
            lines.add(words.answer());
            result.worst().ifPresent(worst -> lines.add("Worst case: " + StackWords.plain(worst) + unit));
            result.rootSumSquare()
                    .ifPresent(around -> lines.add("Root sum square: " + words.length(around.middle() - around.half())
                            + " to " + words.length(around.middle() + around.half()) + unit));
            lines.add("99.73 % of " + Phrases.count(result.drawn().draws()) + " drawn: "
                    + words.length(result.drawn().low()) + " to "
                    + words.length(result.drawn().high()) + unit);
            for (StackResult.Contribution each : result.members()) {
                lines.add("  " + each.member().name() + ": "
                        + FitWords.rounded(100 * each.ofVariance(), 1, RoundingMode.HALF_EVEN)
                        + " % of the variance");
            }
            return lines;
        }

        @Override
        public boolean accepted() {
            return sheet.accepted();
        }
    }
}
