package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.QifWriter.Measurement;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/**
 * Nothing of a QIF document is lost: each measurement is used, refused or explained, and whatever faults are strewn among them, the good
 * ones come out as they do of the document without the bad ones. The seed of each round is its number.
 */
class QifConservationTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final List<String> NUMBERS = List.of("1", "2", "3", "4", "7", "9");

    private record Drawn(List<Measurement> good, List<Measurement> all, int bad, int explained) {}

    private static Drawn draw(Random random) {
        List<Measurement> good = new ArrayList<>();
        List<Measurement> all = new ArrayList<>();
        int bad = 0;
        int explained = 0;
        int pieces = 1 + random.nextInt(12);
        for (int piece = 0; piece < pieces; piece++) {
            for (String number : NUMBERS) {
                Measurement sound = Measurement.of("S" + piece, number, value(number, random));
                switch (random.nextInt(8)) {
                    case 0 -> {
                        all.add(broken(sound, random));
                        bad++;
                    }
                    case 1 -> {
                        all.add(
                                new Measurement(
                                        sound.part(),
                                        number,
                                        "<Status><CharacteristicStatusEnum>INDETERMINATE</CharacteristicStatusEnum></Status>{item}"));
                        explained++;
                    }
                    case 2 -> {
                        // Not measured, and not spoken of.
                    }
                    default -> {
                        all.add(sound);
                        good.add(sound);
                    }
                }
            }
        }
        Measurement last = Measurement.of("S-last", "2", "12.500");
        all.add(last);
        good.add(last);
        return new Drawn(good, all, bad, explained);
    }

    private static String value(String number, Random random) {
        if (number.equals("9")) {
            return random.nextBoolean() ? "pass" : "fail";
        }
        return String.format(Locale.ROOT, "%.4f", random.nextDouble() * 60);
    }

    private static Measurement broken(Measurement sound, Random random) {
        String inside = sound.inside();
        String changed = switch (random.nextInt(7)) {
            case 0 -> inside.replaceAll(">[0-9.]+</(Value|Rough)", ">1O.5</$1");
            case 1 -> inside.replaceAll(">[0-9.]+</(Value|Rough)", ">12,5</$1");
            case 2 -> inside.replace("{item}", "<CharacteristicItemId>999</CharacteristicItemId>");
            case 3 -> inside.replace("{item}", "");
            case 4 -> inside.replaceAll("<CharacteristicStatusEnum>.*?</", "<CharacteristicStatusEnum>PERHAPS</");
            case 5 -> inside.replace("{item}", "{item}<ActualComponentId>4</ActualComponentId>");
            default -> inside.replaceAll("<(Value|RoughnessAverageValue)>", "<$1 linearUnit=\"cubit\">");
        };
        boolean untouched = changed.equals(inside);
        return new Measurement(sound.part(), sound.number(), untouched ? inside.replace("{item}", "") : changed);
    }

    private static Intake read(String text) {
        return ReadingFiles.readInputs(PLAN, List.of(Input.text("drawn.qif", text)));
    }

    /** Everything that a reading says but the line it stands in. */
    private static Map<String, List<String>> content(Intake intake) {
        Map<String, List<String>> content = new LinkedHashMap<>();
        for (PartRecord part : intake.parts()) {
            List<String> readings = new ArrayList<>();
            part.readings().values().forEach(list -> list.forEach(reading -> readings.add(words(reading))));
            content.put(part.serial(), readings);
        }
        return content;
    }

    private static String words(Reading reading) {
        return reading.characteristic() + " "
                + (reading instanceof Reading.Measured measured
                        ? measured.value().toPlainString() + " " + measured.unit()
                        : ((Reading.Observed) reading).pass());
    }

    @RepeatedTest(300)
    void eachMeasurement_isUsedRefusedOrExplained_andTheGoodOnesAreUnmoved(RepetitionInfo round) {
        Drawn drawn = draw(new Random(round.getCurrentRepetition()));

        Intake dirty = read(QifWriter.together(drawn.all()));
        Intake clean = read(QifWriter.together(drawn.good()));

        assertThat(dirty.rows())
                .isEqualTo(new RowCounts(drawn.all().size(), drawn.good().size(), drawn.bad(), drawn.explained()));
        assertThat(clean.rows())
                .isEqualTo(new RowCounts(drawn.good().size(), drawn.good().size(), 0, 0));
        assertThat(content(dirty)).isEqualTo(content(clean));
        Set<Long> lines = new HashSet<>();
        dirty.refused().faults().forEach(fault -> lines.add(fault.where().line()));
        assertThat(dirty.refused().count()).isGreaterThanOrEqualTo(drawn.bad());
        assertThat(lines.isEmpty()).isEqualTo(drawn.bad() == 0);
    }

    @RepeatedTest(60)
    void splitOrTogether_orAsCsv_theReadingsAreTheSame(RepetitionInfo round) {
        Drawn drawn = draw(new Random(1000 + round.getCurrentRepetition()));
        List<String> split = QifWriter.split(drawn.good());
        StringBuilder csv = new StringBuilder("part,characteristic,value,unit\n");
        for (Measurement each : drawn.good()) {
            String value = each.number().equals("9")
                    ? (each.inside().contains(">PASS<") ? "pass" : "fail")
                    : each.inside().replaceAll("(?s).*<(?:Value|RoughnessAverageValue)>([0-9.]+)<.*", "$1");
            boolean rough = each.number().equals("7");
            csv.append(String.join(
                            ",",
                            each.part(),
                            each.number(),
                            rough
                                    ? new java.math.BigDecimal(value)
                                            .movePointRight(3)
                                            .toPlainString()
                                    : value,
                            each.number().equals("9") ? "" : rough ? "um" : "mm"))
                    .append('\n');
        }

        Map<String, List<String>> together = content(read(QifWriter.together(drawn.good())));
        Map<String, List<String>> apart = content(ReadingFiles.readInputs(
                PLAN, List.of(Input.text("r.qif", split.get(1)), Input.text("p.qif", split.get(0)))));
        Map<String, List<String>> asCsv =
                content(ReadingFiles.readInputs(PLAN, List.of(Input.text("drawn.csv", csv.toString()))));

        assertThat(apart).isEqualTo(together);
        assertThat(asCsv).isEqualTo(together);
    }
}
