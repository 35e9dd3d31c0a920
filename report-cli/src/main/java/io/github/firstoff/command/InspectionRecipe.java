package io.github.firstoff.command;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.Claim;
import io.github.firstoff.report.kind.ReportCatalogue;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Sheets of inspections: plan, job and readings. */
record InspectionRecipe(SheetKind kind) implements SheetRecipe {
    @Override
    public String command() {
        return kind.command();
    }

    /** Inputs as these ingredients name them. */
    static Inputs inputs(Ingredients from, Inputs.Shelf shelf) {
        Inputs inputs = new Inputs(
                        from.first(Role.PLAN).orElse("plan.json"), from.first(Role.JOB), from.all(Role.READINGS), shelf)
                .choosing(ReadingChoices.of(from.options()));
        from.first(Role.HOUSE).ifPresent(inputs::ofHouse);
        from.first(Role.MAPPING).ifPresent(inputs::byMapping);
        return inputs;
    }

    @Override
    public Made make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        Inputs inputs = inputs(from, shelf);
        return new Made(inputs.sheet(kind, now), inputs.house());
    }

    /**
     * A sheet of an inspection.
     *
     * @param sheet what it says
     * @param house whose paper it is printed on
     */
    record Made(Sheet sheet, Optional<House> house) implements MadeSheet {
        @Override
        public Claim claim() {
            return Claim.of(sheet);
        }

        @Override
        public List<String> notices() {
            return sheet.notices();
        }

        @Override
        public List<String> refusals() {
            return sheet.refusals();
        }

        @Override
        public ReportModel pages(Stationery stationery) {
            return ReportCatalogue.compose(sheet, stationery);
        }

        @Override
        public Optional<Job.Person> named() {
            return sheet.job().inspector();
        }

        @Override
        public List<String> lines() {
            return new TextSummary(sheet, null).lines();
        }

        @Override
        public boolean accepted() {
            return sheet.result().verdict() == SheetVerdict.ACCEPTED
                    && sheet.refusals().isEmpty();
        }
    }
}
