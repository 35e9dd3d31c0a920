package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.words.Labels;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** On what a sheet is printed. What the command line says goes before what the house file says. */
final class StationeryOptions {
    private static final String PAPER = "paper";
    private static final String LANGUAGE = "language";

    @Option(
            names = "--house",
            paramLabel = "HOUSE",
            description = "How your firm's sheets look: name, logo, paper, language (JSON, see docs/house.md).")
    private @Nullable Path house;

    @Option(
            names = "--paper",
            paramLabel = "PAPER",
            description = "The paper, a4 or letter; a4 unless the house says so.")
    private House.@Nullable Paper paper;

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            description =
                    "The language of labels and sentences on the sheet, such as en or de. Results as JSON stay English.")
    private @Nullable String language;

    /** The house file. */
    Optional<Path> house() {
        return Optional.ofNullable(house);
    }

    /** Refuses a language that there is no file of labels for. */
    void requireKnownLanguage(CommandLine line) {
        if (language != null && Labels.of(language).isEmpty()) {
            throw new ParameterException(
                    line,
                    "--language " + language + " is not known; there are labels for "
                            + String.join(", ", Labels.languages()));
        }
    }

    /** What the command line chose, by name, as a sheet carries it. */
    Map<String, String> options() {
        Map<String, String> options = new LinkedHashMap<>();
        if (paper != null) {
            options.put(PAPER, paper.word());
        }
        if (language != null) {
            options.put(LANGUAGE, language);
        }
        return options;
    }

    /** The stationery by the house and the choices of the command line, by name. */
    static Stationery stationery(Optional<House> house, Map<String, String> options) {
        Optional<House.Paper> chosen = Arrays.stream(House.Paper.values())
                .filter(each -> each.word().equals(options.get(PAPER)))
                .findFirst();
        Labels labels = Optional.ofNullable(options.get(LANGUAGE))
                .or(() -> house.flatMap(House::language))
                .flatMap(Labels::of)
                .orElse(Labels.ENGLISH);
        House.Paper paper = chosen.or(() -> house.flatMap(House::paper)).orElse(House.Paper.A4);
        return new Stationery(Stationery.size(paper), labels, house);
    }
}
