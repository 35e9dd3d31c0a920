package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Tables of sheets as CSV (RFC 4180, UTF-8, comma, decimal point) with the figures of the JSON result. Limits and readings are the exact decimals,
 * statistics are written out without exponents. A text that a spreadsheet would take for a formula stands behind an apostrophe.
 */
public final class TableCsv {
    private static final List<String> INDICES = List.of("Cp", "Cpk", "Pp", "Ppk", "Cpm");

    /** Counts and statistics, of which every table has these. */
    private static final List<String> FIGURES = List.of(
            "count", "nonconforming", "inconclusive", "missing", "minimum", "mean", "maximum", "standardDeviation");

    private TableCsv() {}

    /** The characteristics of a sheet, a line each. */
    public static String characteristics(Sheet sheet) {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(
                List.of("number", "feature", "requirement", "class", "unit", "lower", "upper", "gauge", "verdict"));
        head.addAll(FIGURES);
        head.add("control");
        INDICES.forEach(name -> head.add(name.toLowerCase(Locale.ROOT)));
        rows.add(head);
        for (Finding finding : sheet.findings()) {
            CharacteristicResult result = finding.result();
            Characteristic characteristic = result.characteristic().characteristic();
            Limits limits = result.characteristic().limits();
            List<String> row = new ArrayList<>(List.of(
                    text(finding.number()),
                    text(characteristic.feature()),
                    text(characteristic.printed()),
                    characteristic.importance().word(),
                    result.characteristic().unit().word(),
                    decimal(limits.lower()),
                    decimal(limits.upper()),
                    text(characteristic.gauge().orElse("")),
                    result.characteristic().isJudged() ? result.verdict().word() : ""));
            row.addAll(figures(finding));
            row.add(finding.study()
                    .map(study -> study.assessment().control())
                    .map(ControlState::word)
                    .orElse(""));
            INDICES.forEach(name -> row.add(index(finding, name)));
            rows.add(row);
        }
        return lines(rows);
    }

    /** The index by its definition, as the JSON result gives it. */
    private static String index(Finding finding, String name) {
        return finding.study()
                .flatMap(ProcessStudy::indices)
                .flatMap(indices -> indices.byDefinition().indices().stream()
                        .filter(each -> each.name().equals(name))
                        .findFirst())
                .map(each -> number(each.value()))
                .orElse("");
    }

    /** The batches of a history, a line each. */
    public static String batches(HistorySheet sheet) {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of("batch", "file", "verdict"));
        head.addAll(FIGURES);
        head.addAll(List.of("control", "cpk", "cpkLower", "cpkUpper"));
        rows.add(head);
        for (HistorySheet.Batch batch : sheet.batches()) {
            Optional<Index> shown = batch.cpk().filter(index -> batch.showsCpk());
            List<String> row = new ArrayList<>(List.of(
                    text(batch.name()),
                    text(batch.file()),
                    batch.finding().result().verdict().word()));
            row.addAll(figures(batch.finding()));
            row.addAll(List.of(
                    batch.control().map(ControlState::word).orElse(""),
                    shown.map(index -> number(index.value())).orElse(""),
                    shown.flatMap(Index::interval)
                            .map(each -> number(OptionalDouble.of(each.lower())))
                            .orElse(""),
                    shown.flatMap(Index::interval)
                            .map(each -> number(OptionalDouble.of(each.upper())))
                            .orElse("")));
            rows.add(row);
        }
        return lines(rows);
    }

    /** What {@link #FIGURES} names, of one characteristic. */
    private static List<String> figures(Finding finding) {
        CharacteristicResult result = finding.result();
        Optional<Summary> summary = finding.summary();
        return List.of(
                Integer.toString(result.judgements().size()),
                Integer.toString(result.count(Verdict.NONCONFORMING)),
                Integer.toString(result.count(Verdict.INCONCLUSIVE)),
                Long.toString(result.missingCount()),
                decimal(summary.map(Summary::minimum)),
                summary.map(each -> number(OptionalDouble.of(each.mean()))).orElse(""),
                decimal(summary.map(Summary::maximum)),
                summary.map(each -> number(each.standardDeviation())).orElse(""));
    }

    private static String decimal(Optional<BigDecimal> value) {
        return value.map(BigDecimal::toPlainString).orElse("");
    }

    /** A statistic with the digits of the JSON result, without an exponent. */
    private static String number(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble())
                ? BigDecimal.valueOf(value.getAsDouble()).toPlainString()
                : "";
    }

    /** A text that no spreadsheet takes for a formula. */
    private static String text(String text) {
        boolean formula = !text.isEmpty() && "=+-@\t\r\n".indexOf(text.charAt(0)) >= 0;
        return formula ? "'" + text : text;
    }

    private static String lines(List<List<String>> rows) {
        return rows.stream()
                .map(row -> row.stream().map(TableCsv::quoted).collect(Collectors.joining(",", "", "\r\n")))
                .collect(Collectors.joining());
    }

    private static String quoted(String field) {
        boolean plain = field.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return plain ? field : '"' + field.replace("\"", "\"\"") + '"';
    }
}
