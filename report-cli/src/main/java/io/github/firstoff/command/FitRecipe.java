package io.github.firstoff.command;

import io.github.firstoff.assembly.Piece;
import io.github.firstoff.inspection.House;
import io.github.firstoff.intake.AssemblyFile;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.PrintedFigures;
import io.github.firstoff.proof.ReadingLines;
import io.github.firstoff.report.kind.FitReport;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.FitJson;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.study.pressfit.FitResult;
import io.github.firstoff.study.pressfit.FitStudy;
import io.github.firstoff.study.pressfit.Matching;
import java.io.Writer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Sheets of press fits: an assembly, and what was measured of its parts. */
final class FitRecipe implements SheetRecipe {
    private static final String COMMAND = "fit";

    @Override
    public String command() {
        return COMMAND;
    }

    @Override
    public MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        Sources sources = new Sources();
        AssemblyFile file = AssemblyFile.read(
                shelf.open(Role.ASSEMBLY, 1, from.first(Role.ASSEMBLY).orElse("assembly.json")));
        sources.add(file.name(), file.sha256());
        AssemblyFile.Measured measured = file.withReadings(
                opened(Role.BORES, from, shelf), opened(Role.RINGS, from, shelf), sources.settings(from, shelf));
        List<Role> roles = Stream.of(Role.BORES, Role.RINGS)
                .filter(role -> from.first(role).isPresent())
                .toList();
        for (int i = 0; i < roles.size(); i++) {
            Intake.ReadFile each = measured.files().get(i);
            sources.add(each.name(), each.sha256());
            shelf.wasRead(roles.get(i), 1, each.sha256());
        }
        sources.add(measured.notices());
        Optional<House> house = sources.house(from, shelf);
        FitResult result = FitStudy.of(measured.joint(), measured.bores(), measured.rings());
        RowCounts rows = measured.files().stream().map(Intake.ReadFile::rows).reduce(RowCounts.NONE, RowCounts::plus);
        return new Made(
                new FitSheet(result, measured.hand(), sources.notices(), sources.provenance(now, rows)),
                sizes(measured),
                house);
    }

    private static Optional<Input> opened(Role role, Ingredients from, Inputs.Shelf shelf) {
        return from.first(role).map(name -> shelf.open(role, 1, name));
    }

    /** The sizes as they were taken, so that a check can name the piece whose size was changed. */
    private static Optional<ReadingLines> sizes(AssemblyFile.Measured measured) {
        List<List<String>> lines = new ArrayList<>();
        measured.bores().ifPresent(pieces -> add("bore", pieces, lines));
        measured.rings().ifPresent(pieces -> add("ring", pieces, lines));
        return ReadingLines.ofSizes("Every size as it was taken", List.of("measured", "piece", "value", "unit"), lines);
    }

    private static void add(String measured, List<Piece> pieces, List<List<String>> lines) {
        for (Piece piece : pieces) {
            lines.add(List.of(measured, piece.name(), piece.size().toPlainString(), "mm"));
        }
    }

    private record Made(FitSheet sheet, Optional<ReadingLines> sizes, Optional<House> house) implements MadeStudy {
        @Override
        public String command() {
            return COMMAND;
        }

        @Override
        public void write(Writer target) {
            FitJson.write(sheet, target);
        }

        @Override
        public Optional<ReadingLines> readings() {
            return sizes;
        }

        @Override
        public PrintedFigures printed() {
            return PrintedFigures.at(
                            "outer.minimum",
                            "outer.maximum",
                            "inner.minimum",
                            "inner.maximum",
                            "matching.pairs[].outer",
                            "matching.pairs[].inner",
                            "matching.left[].name",
                            "matching.left[].size")
                    .andSentencesAt("answer", "decisions[]");
        }

        @Override
        public ReportModel compose(PaperSize paper) {
            return new FitReport().compose(sheet, paper);
        }

        @Override
        public List<String> lines() {
            FitWords words = new FitWords(sheet.result());
            List<String> lines = new ArrayList<>();
            lines.add(sheet.name() + (sheet.part().isEmpty() ? "" : ", " + sheet.part()));
            lines.add(words.answer());
            lines.addAll(words.decisions());
            lines.add(words.basis());
            sheet.result().matching().ifPresent(matching -> {
                lines.add("Pairs:");
                for (Matching.Pair pair : matching.pairs()) {
                    lines.add("  " + pair.outer().name() + " with "
                            + pair.inner().name() + ", " + FitWords.micrometres(pair.interference()) + " µm");
                }
                for (Matching.Left left : matching.left()) {
                    lines.add(
                            "  " + left.piece().name() + " stays: " + left.why().words());
                }
            });
            if (sizes.isPresent()) {
                lines.add(provenance().rows() + ".");
            }
            return lines;
        }

        @Override
        public boolean accepted() {
            return sheet.result().verdicts().accepted();
        }
    }
}
