package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/** The same readings are the same, whatever file they come in. The seed of each round is its number. */
class ReadingLawsTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final List<String> NUMBERS = List.of("1", "2", "3", "4", "7", "9");

    private record One(String part, String characteristic, String value) {}

    private static Map<String, Map<String, String>> pieces(Random random) {
        Map<String, Map<String, String>> pieces = new LinkedHashMap<>();
        int count = 1 + random.nextInt(20);
        for (int i = 0; i < count; i++) {
            Map<String, String> values = new LinkedHashMap<>();
            for (String number : NUMBERS) {
                if (random.nextInt(5) > 0) {
                    values.put(
                            number,
                            number.equals("9")
                                    ? (random.nextBoolean() ? "pass" : "fail")
                                    : String.format(Locale.ROOT, "%.4f", random.nextDouble() * 60));
                }
            }
            values.putIfAbsent("2", "12.500");
            pieces.put("S" + i, values);
        }
        return pieces;
    }

    private static List<One> flat(Map<String, Map<String, String>> pieces) {
        List<One> all = new ArrayList<>();
        pieces.forEach((part, values) -> values.forEach((number, value) -> all.add(new One(part, number, value))));
        return all;
    }

    private static String longCsv(List<One> readings, Random random) {
        List<String> columns = new ArrayList<>(List.of("Part", "CHARACTERISTIC", "value", "note"));
        Collections.shuffle(columns, random);
        StringBuilder text = new StringBuilder(String.join(",", columns)).append("\r\n");
        for (One one : readings) {
            text.append(columns.stream()
                            .map(column -> switch (column) {
                                case "Part" -> one.part();
                                case "CHARACTERISTIC" -> "\"" + one.characteristic() + "\"";
                                case "value" -> " " + one.value() + " ";
                                default -> "";
                            })
                            .collect(Collectors.joining(",")))
                    .append("\r\n");
        }
        return text.toString();
    }

    private static String wideCsv(Map<String, Map<String, String>> pieces, Random random) {
        List<String> columns = new ArrayList<>(NUMBERS);
        columns.add("part");
        Collections.shuffle(columns, random);
        StringBuilder text = new StringBuilder(String.join(",", columns)).append('\n');
        pieces.forEach((part, values) -> text.append(columns.stream()
                        .map(column -> column.equals("part") ? part : values.getOrDefault(column, ""))
                        .collect(Collectors.joining(",")))
                .append('\n'));
        return text.toString();
    }

    private static String json(List<One> readings, Random random) {
        return readings.stream()
                .map(one -> {
                    boolean asNumber =
                            random.nextBoolean() && !one.characteristic().equals("9");
                    String value = asNumber ? one.value() : '"' + one.value() + '"';
                    return String.format(
                            Locale.ROOT,
                            "{\"characteristic\": \"%s\", \"value\": %s, \"part\": \"%s\"}",
                            one.characteristic(),
                            value,
                            one.part());
                })
                .collect(Collectors.joining(",\n", "{\"readings\": [", "]}"));
    }

    /** Each piece with its readings by characteristic, as text. */
    private static Map<String, Map<String, String>> read(String... texts) {
        List<Input> inputs = new ArrayList<>();
        for (String text : texts) {
            inputs.add(Input.text("r" + inputs.size(), text));
        }
        Map<String, Map<String, String>> found = new LinkedHashMap<>();
        for (PartRecord part :
                ReadingFiles.readInputs(PLAN, inputs).recordOrRefuse().parts()) {
            Map<String, String> values = new LinkedHashMap<>();
            part.readings().forEach((number, readings) -> {
                assertThat(readings).hasSize(1);
                values.put(
                        number,
                        readings.get(0) instanceof Reading.Measured measured
                                ? measured.value().toPlainString()
                                : ((Reading.Observed) readings.get(0)).pass() ? "pass" : "fail");
            });
            found.put(part.serial(), values);
        }
        return found;
    }

    @RepeatedTest(50)
    void longWideAndJson_sayTheSame(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        Map<String, Map<String, String>> pieces = pieces(random);
        List<One> readings = flat(pieces);

        assertThat(read(longCsv(readings, random))).isEqualTo(pieces);
        assertThat(read(wideCsv(pieces, random))).isEqualTo(pieces);
        assertThat(read(json(readings, random))).isEqualTo(pieces);
    }

    @RepeatedTest(50)
    void aFileCutInTwo_saysTheSameAsWhole(RepetitionInfo round) {
        Random random = new Random(1000 + round.getCurrentRepetition());
        Map<String, Map<String, String>> pieces = pieces(random);
        List<One> readings = flat(pieces);
        readings.add(new One("last", "2", "12.500"));
        pieces.put("last", Map.of("2", "12.500"));
        int cut = 1 + random.nextInt(readings.size() - 1);

        Map<String, Map<String, String>> found =
                read(longCsv(readings.subList(0, cut), random), json(readings.subList(cut, readings.size()), random));

        assertThat(found).isEqualTo(pieces);
        assertThat(new ArrayList<>(found.keySet())).isEqualTo(new ArrayList<>(pieces.keySet()));
    }

    @RepeatedTest(20)
    void shuffledRowsWithTimes_comeBackInTheOrderOfTheTimes(RepetitionInfo round) {
        Random random = new Random(2000 + round.getCurrentRepetition());
        List<String> rows = new ArrayList<>();
        List<String> inOrder = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            inOrder.add("S" + i);
            rows.add(String.format(Locale.ROOT, "S%d,12.5,2026-11-20T%02d:%02d", i, 8 + i / 10, i % 10));
        }
        Collections.shuffle(rows, random);

        assertThat(read("part,2,time\n" + String.join("\n", rows)).keySet()).containsExactlyElementsOf(inOrder);
    }
}
