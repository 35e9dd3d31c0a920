package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/**
 * What holds for every format of readings, on generated files with random faults: each row is accounted for, the good rows give what they
 * give in a clean file, and all formats give the same. A format joins by a subclass that writes a table in it. The seed of each round
 * is its number.
 */
abstract class ReadingFormatLaws {
    static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final List<String> NUMBERS = List.of("1", "2", "3", "4", "7", "9");

    /** Never three decimals: with a decimal comma such numbers are open, and a small table may show nothing else. */
    private static final List<String> DECIMALS = List.of("5", "50", "07", "1250", "0031", "00001");

    /** A reading as any format can write it; an empty text is not stated. */
    record Line(
            String part, String characteristic, String value, String unit, String time, String operator, String note) {
        Line withPart(String other) {
            return new Line(other, characteristic, value, unit, time, operator, note);
        }

        Line withCharacteristic(String other) {
            return new Line(part, other, value, unit, time, operator, note);
        }

        Line withValue(String other) {
            return new Line(part, characteristic, other, unit, time, operator, note);
        }

        Line withUnit(String other) {
            return new Line(part, characteristic, value, other, time, operator, note);
        }

        Line withTime(String other) {
            return new Line(part, characteristic, value, unit, other, operator, note);
        }

        Line withOperator(String other) {
            return new Line(part, characteristic, value, unit, time, other, note);
        }

        /** Everything in the order part, characteristic, value, unit, time, operator, note. */
        List<String> all() {
            return List.of(part, characteristic, value, unit, time, operator, note);
        }

        static final List<String> NAMES =
                List.of("part", "characteristic", "value", "unit", "time", "operator", "note");
    }

    /** The bytes of a file of the format with one row per line, in this order. */
    abstract byte[] file(List<Line> lines);

    /** What is said beside the file. */
    IntakeSettings settings() {
        return IntakeSettings.USUAL;
    }

    /** The format that the file must be recognised as. */
    abstract ReadingFormat format();

    private static List<Line> table(Random random) {
        List<Line> lines = new ArrayList<>();
        int pieces = 1 + random.nextInt(12);
        for (int i = 0; i < pieces; i++) {
            for (String number : NUMBERS) {
                if (random.nextInt(4) > 0) {
                    lines.add(line("S" + i, number, lines.size(), random));
                }
            }
        }
        if (lines.isEmpty()) {
            lines.add(line("S0", "2", 0, random));
        }
        return lines;
    }

    private static Line line(String part, String number, int place, Random random) {
        String value = number.equals("9")
                ? (random.nextBoolean() ? "pass" : "n.i.O.")
                : random.nextInt(60) + "." + DECIMALS.get(random.nextInt(DECIMALS.size()));
        boolean inch = number.equals("2") && random.nextInt(5) == 0;
        return new Line(
                part,
                number,
                value,
                inch ? "inch" : "",
                String.format(Locale.ROOT, "2026-11-20T%02d:%02d:%02d", 8 + place / 3600, place / 60 % 60, place % 60),
                random.nextBoolean() ? "A. Quill" : "",
                random.nextInt(6) == 0 ? "Ø with \"burr\", µ; 12|5" : "");
    }

    private static Line damaged(Line line, Random random) {
        return switch (random.nextInt(8)) {
            case 0 -> line.withPart("");
            case 1 -> line.withCharacteristic("99");
            case 2 -> line.withValue("forty");
            case 3 -> line.withValue("");
            case 4 -> line.withUnit("thou");
            case 5 -> line.withTime("yesterday");
            case 6 -> line.withOperator("A.\u202eQuill");
            default -> line.withPart("x".repeat(300));
        };
    }

    /** A reading without its place, which differs from format to format. */
    private static String said(String part, Reading reading) {
        Reading.Context context = reading.context();
        String value = reading instanceof Reading.Measured measured
                ? measured.value().toPlainString() + " " + measured.unit().word()
                : Boolean.toString(((Reading.Observed) reading).pass());
        return String.join(
                "|",
                part,
                reading.characteristic(),
                value,
                context.time().toString(),
                context.operator().toString(),
                context.note().toString(),
                context.gauge().toString(),
                context.setting().toString());
    }

    static List<String> said(List<PartRecord> parts) {
        List<String> all = new ArrayList<>();
        for (PartRecord part : parts) {
            part.readings().values().forEach(list -> list.forEach(reading -> all.add(said(part.serial(), reading))));
        }
        return all;
    }

    private Intake read(byte[] bytes, List<RefusedRow> refused) {
        return read(bytes, settings().withRefusedRows(refused::add));
    }

    private static Intake read(byte[] bytes, IntakeSettings settings) {
        return ReadingFiles.readInputs(
                PLAN, List.of(Input.bytes("readings", bytes, relative -> Optional.empty())), settings);
    }

    @RepeatedTest(40)
    void everyRowIsAccountedFor_andGoodRowsAreThoseOfTheCleanFile(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        List<Line> clean = table(random);
        List<Line> written = new ArrayList<>();
        List<Line> good = new ArrayList<>();
        Set<Integer> bad = new TreeSet<>();
        for (Line line : clean) {
            int fate = random.nextInt(6);
            if (fate == 0) {
                bad.add(written.size());
                written.add(damaged(line, random));
            } else {
                good.add(line);
                written.add(line);
                if (fate == 1) {
                    // The same thing measured again, which the plan does not allow.
                    bad.add(written.size());
                    written.add(line);
                }
            }
        }
        List<RefusedRow> refused = new ArrayList<>();

        Intake intake = read(file(written), refused);

        assertThat(intake.files().get(0).format()).isEqualTo(format());
        assertThat(intake.rows()).isEqualTo(new RowCounts(written.size(), good.size(), bad.size(), 0));
        assertThat(refused).hasSize(bad.size());
        int next = 0;
        for (int index : bad) {
            RefusedRow row = refused.get(next++);
            assertThat(row.faults()).as("row %d", index).isNotEmpty();
            assertThat(String.join("|", row.fields()) + row.asItStood())
                    .contains(written.get(index).characteristic());
        }
        assertThat(intake.faultsOfFiles()).isZero();
        if (!good.isEmpty()) {
            assertThat(intake.recordOfTheGoodRows().refusedRows()).isEqualTo(bad.size());
            assertThat(said(intake.parts()))
                    .isEqualTo(said(
                            read(file(good), new ArrayList<>()).recordOrRefuse().parts()));
        }
    }

    @RepeatedTest(30)
    void refusedRowsPutRight_besideTheFileTheyWereRefusedFrom_giveTheReadingsOfTheCleanFile(RepetitionInfo round)
            throws IOException {
        Random random = new Random(3000 + round.getCurrentRepetition());
        List<Line> clean = table(random);
        List<Line> written = new ArrayList<>(clean);
        List<Line> meant = new ArrayList<>();
        for (int i = 0; i < clean.size(); i++) {
            if (random.nextInt(3) == 0 || i == 0) {
                written.set(i, damaged(clean.get(i), random));
                meant.add(clean.get(i));
            }
        }
        Input damaged = input("lot", file(written));
        byte[] refused;
        try (RefusedTable table = new RefusedTable()) {
            ReadingFiles.readInputs(PLAN, List.of(damaged), settings().withRefusedRows(row -> add(row, table)));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            table.write(bytes);
            refused = bytes.toByteArray();
        }

        Intake asItIs = ReadingFiles.readInputs(PLAN, List.of(damaged, input("lot.refused.csv", refused)), settings());
        assertThat(asItIs.rows())
                .as("nothing was put right")
                .isEqualTo(new RowCounts(
                        clean.size() + meant.size(), clean.size() - meant.size(), meant.size(), meant.size()));

        Intake mended = ReadingFiles.readInputs(
                PLAN, List.of(damaged, input("lot.refused.csv", mended(refused, meant))), settings());
        assertThat(mended.refused().lines()).isEmpty();
        assertThat(mended.rows()).isEqualTo(new RowCounts(clean.size() + meant.size(), clean.size(), 0, meant.size()));
        assertThat(said(mended.recordOrRefuse().parts()))
                .isEqualTo(said(
                        read(file(clean), new ArrayList<>()).recordOrRefuse().parts()));
    }

    private static Input input(String name, byte[] bytes) {
        return Input.bytes(name, bytes, relative -> Optional.empty());
    }

    private static void add(RefusedRow row, RefusedTable table) {
        try {
            table.add(row);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** The table of refused rows, with every row as it was meant; the reasons are left where they stand. */
    private static byte[] mended(byte[] refused, List<Line> meant) throws IOException {
        String text = new String(refused, StandardCharsets.UTF_8);
        String heading = text.lines().findFirst().orElseThrow();
        char separator = heading.contains(";") ? ';' : ',';
        boolean comma = heading.contains("numbers with a decimal comma");
        StringBuilder mended = new StringBuilder(heading).append("\r\n");
        try (CsvReader<CsvRecord> reader =
                CsvReader.builder().fieldSeparator(separator).ofCsvRecord(text)) {
            List<CsvRecord> records = reader.stream().toList();
            List<String> names = records.get(0).getFields();
            assertThat(records).hasSize(meant.size() + 1);
            for (int i = 0; i < meant.size(); i++) {
                List<String> fields = new ArrayList<>(records.get(i + 1).getFields());
                for (int j = 0; j < Line.NAMES.size(); j++) {
                    int at = names.indexOf(Line.NAMES.get(j));
                    String value = meant.get(i).all().get(j);
                    if (at >= 0) {
                        fields.set(at, j == 2 && comma && value.matches("[\\d.]+") ? value.replace('.', ',') : value);
                    }
                }
                fields.replaceAll(field -> '"' + field.replace("\"", "\"\"") + '"');
                mended.append(String.join(String.valueOf(separator), fields)).append("\r\n");
            }
        }
        return mended.toString().getBytes(StandardCharsets.UTF_8);
    }

    @RepeatedTest(20)
    void theReadingsAreThoseOfPlainCsv_whateverTheOrderOfTheRows(RepetitionInfo round) {
        Random random = new Random(1000 + round.getCurrentRepetition());
        List<Line> lines = table(random);
        Collections.shuffle(lines, random);

        List<PartRecord> here =
                read(file(lines), new ArrayList<>()).recordOrRefuse().parts();
        List<PartRecord> plain = read(separated(lines, ",", '.').getBytes(StandardCharsets.UTF_8), IntakeSettings.USUAL)
                .recordOrRefuse()
                .parts();

        assertThat(said(here)).isEqualTo(said(plain));
    }

    @RepeatedTest(20)
    void aFileCutAnywhere_losesNoRowWithoutAWord(RepetitionInfo round) {
        Random random = new Random(2000 + round.getCurrentRepetition());
        List<Line> lines = table(random);
        byte[] whole = file(lines);
        byte[] cut = java.util.Arrays.copyOf(whole, random.nextInt(whole.length));

        Intake intake = read(cut, new ArrayList<>());

        // What was handed on stands in the whole file too, in its order, unless the last value itself was cut.
        List<String> all = said(read(whole, new ArrayList<>()).recordOrRefuse().parts());
        List<String> found = said(intake.parts());
        long strangers = found.stream().filter(each -> !all.contains(each)).count();
        assertThat(strangers).isLessThanOrEqualTo(1);
        assertThat(intake.rows().read())
                .isEqualTo(intake.rows().used()
                        + intake.rows().refused()
                        + intake.rows().explained());
    }

    /** Delimited text with every field in quotation marks. */
    static String separated(List<Line> lines, String separator, char decimalMark) {
        StringBuilder text = new StringBuilder(String.join(separator, Line.NAMES)).append("\r\n");
        for (Line line : lines) {
            List<String> fields = new ArrayList<>(line.all());
            if (fields.get(2).matches("\\d+\\.\\d+")) {
                fields.set(2, fields.get(2).replace('.', decimalMark));
            }
            fields.replaceAll(field -> '"' + field.replace("\"", "\"\"") + '"');
            text.append(String.join(separator, fields)).append("\r\n");
        }
        return text.toString();
    }
}
