package io.github.firstoff.command;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.proof.Claim;
import io.github.firstoff.proof.PrintedFigures;
import io.github.firstoff.proof.ProofRefused;
import io.github.firstoff.proof.ReadingLines;
import io.github.firstoff.report.kind.DriftReport;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.sheet.DriftFinding;
import io.github.firstoff.sheet.DriftJson;
import io.github.firstoff.sheet.DriftMaker;
import io.github.firstoff.sheet.DriftOptions;
import io.github.firstoff.sheet.DriftSheet;
import io.github.firstoff.sheet.DriftWords;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.study.drift.DriftSettings;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Sheets of studies of drift: plan, job and readings, and what is asked of them. */
final class DriftRecipe implements SheetRecipe {
    private static final String CHARACTERISTIC = "characteristic-";
    private static final String EVERY = "every";
    private static final String SIGMA = "sigma";
    private static final String INDEX = "index";
    private static final String INCREMENT = "increment";
    private static final String ACROSS_BATCHES = "across-batches";
    private static final String WATCHED = "watched";

    @Override
    public String command() {
        return SheetKind.DRIFT.command();
    }

    /** What is asked, by name, as a sheet carries it. */
    static Map<String, String> options(DriftOptions asked) {
        Map<String, String> options = new LinkedHashMap<>();
        int number = 0;
        for (String characteristic : asked.characteristics()) {
            number++;
            options.put(CHARACTERISTIC + number, characteristic);
        }
        options.put(EVERY, Integer.toString(asked.every()));
        options.put(SIGMA, Double.toString(asked.settings().sigmas()));
        asked.index().ifPresent(index -> options.put(INDEX, Double.toString(index)));
        asked.settings().increment().ifPresent(step -> options.put(INCREMENT, step.toPlainString()));
        if (asked.acrossBatches()) {
            options.put(ACROSS_BATCHES, "true");
        }
        if (!asked.detect()) {
            options.put(WATCHED, "true");
        }
        return options;
    }

    /**
     * What a sheet says was asked.
     *
     * @throws ProofRefused if nobody can have asked that
     */
    static DriftOptions asked(Map<String, String> options) {
        List<String> characteristics = new ArrayList<>();
        for (int number = 1; options.containsKey(CHARACTERISTIC + number); number++) {
            characteristics.add(options.get(CHARACTERISTIC + number));
        }
        try {
            DriftSettings settings = DriftSettings.withDefaults();
            if (options.containsKey(SIGMA)) {
                settings = settings.withSigmas(number(options.get(SIGMA)));
            }
            OptionalDouble index =
                    options.containsKey(INDEX) ? OptionalDouble.of(number(options.get(INDEX))) : OptionalDouble.empty();
            if (index.isPresent()) {
                settings = settings.withRequiredIndex(index.getAsDouble());
            }
            if (options.containsKey(INCREMENT)) {
                settings = settings.withIncrement(new BigDecimal(options.get(INCREMENT)));
            }
            return new DriftOptions(
                    characteristics,
                    Integer.parseInt(options.getOrDefault(EVERY, "1")),
                    options.containsKey(ACROSS_BATCHES),
                    !options.containsKey(WATCHED),
                    index,
                    settings);
        } catch (IllegalArgumentException fault) {
            throw new ProofRefused("what was asked of the study cannot be read from the sheet: " + fault.getMessage());
        }
    }

    private static double number(String written) {
        return Ratio.of(new BigDecimal(written), BigDecimal.ONE);
    }

    /** The inspection behind the study: what was read, and the verdicts on it. */
    static InspectionRecipe.Made inspection(Ingredients from, Inputs.Shelf shelf, Instant now) {
        return new InspectionRecipe(SheetKind.DRIFT).make(from, shelf, now);
    }

    /**
     * The study.
     *
     * @throws io.github.firstoff.sheet.DriftRefused if nothing can be followed
     */
    static Made study(InspectionRecipe.Made inspection, DriftOptions asked) {
        return new Made(DriftMaker.make(inspection.sheet(), asked), inspection.house());
    }

    /**
     * Makes one.
     *
     * @throws io.github.firstoff.sheet.DriftRefused if nothing can be followed
     */
    @Override
    public MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        return study(inspection(from, shelf, now), asked(from.options()));
    }

    /**
     * A study of drift.
     *
     * @param sheet what it says
     * @param house whose paper it is printed on
     */
    record Made(DriftSheet sheet, Optional<House> house) implements MadeStudy {
        @Override
        public String command() {
            return SheetKind.DRIFT.command();
        }

        @Override
        public void write(Writer target) {
            DriftJson.write(sheet, target);
        }

        @Override
        public Optional<ReadingLines> readings() {
            return Claim.of(sheet.sheet()).readings();
        }

        @Override
        public PrintedFigures printed() {
            return PrintedFigures.at(
                            "part",
                            "characteristics[].feature",
                            "characteristics[].batch",
                            "characteristics[].forecast.piece")
                    .andSentencesAt("notFollowed[].reason");
        }

        @Override
        public ReportModel compose(PaperSize paper) {
            return new DriftReport().compose(sheet, paper);
        }

        @Override
        public Optional<Job.Person> named() {
            return sheet.sheet().job().inspector();
        }

        @Override
        public List<String> lines() {
            List<String> lines = new ArrayList<>();
            for (DriftFinding finding : sheet.findings()) {
                lines.addAll(new DriftWords(finding).lines());
            }
            sheet.left().forEach(left -> lines.add("Not followed: " + left.number() + " " + left.reason() + "."));
            lines.add(provenance().rows() + ".");
            return lines;
        }

        @Override
        public boolean accepted() {
            return sheet.verdict() == SheetVerdict.ACCEPTED;
        }
    }
}
