package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/**
 * What holds for every format with a row for a piece and a column, or a key, for a characteristic: each row is used, refused or explained,
 * a row with one bad cell is refused whole, and the good rows give what they give in a clean file. The seed of each round is its number.
 */
class WideFormatLawsTest {
    private static final List<String> NUMBERS = List.of("1", "2", "3", "4", "7", "9");

    /** A row; what was not measured has an empty text. */
    record Piece(String part, Map<String, String> values, String operator) {
        Piece withPart(String other) {
            return new Piece(other, values, operator);
        }

        Piece withOperator(String other) {
            return new Piece(part, values, other);
        }

        Piece withValue(String number, String other) {
            Map<String, String> changed = new LinkedHashMap<>(values);
            changed.put(number, other);
            return new Piece(part, changed, operator);
        }

        boolean isMeasured() {
            return values.values().stream().anyMatch(value -> !value.isEmpty());
        }

        List<String> fields() {
            List<String> fields = new ArrayList<>(List.of(part));
            fields.addAll(values.values());
            fields.add(operator);
            return fields;
        }
    }

    private static List<String> heading() {
        List<String> heading = new ArrayList<>(List.of("part"));
        heading.addAll(NUMBERS);
        heading.add("operator");
        return heading;
    }

    private static Piece piece(int place, Random random) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String number : NUMBERS) {
            boolean measured = random.nextInt(4) > 0;
            // Never three decimals, which would be open beside a decimal comma.
            String value = number.equals("9")
                    ? (random.nextBoolean() ? "pass" : "n.i.O.")
                    : random.nextInt(60) + "." + (1000 + random.nextInt(9000));
            values.put(number, measured ? value : "");
        }
        return new Piece("S" + place, values, random.nextBoolean() ? "A. Quill" : "");
    }

    private static Piece damaged(Piece piece, Random random) {
        String number = NUMBERS.get(random.nextInt(NUMBERS.size() - 1));
        return switch (random.nextInt(7)) {
            case 0 -> piece.withPart("");
            case 1 -> piece.withPart("x".repeat(300));
            case 2 -> piece.withOperator("A.\u202eQuill");
            case 3 -> piece.withValue(number, "forty");
            case 4 -> piece.withValue(number, "12 mm");
            case 5 -> piece.withValue(number, "1e999999");
            default -> piece.withValue("9", "perhaps");
        };
    }

    /** The laws; a format joins by a subclass that says how rows are written in it. */
    abstract static class Laws {
        private final ReadingFormat format;
        private final Function<List<Piece>, byte[]> writing;

        /**
         * @param format as what a file must be recognised
         * @param writing what makes a file with one row per piece, in this order
         */
        Laws(ReadingFormat format, Function<List<Piece>, byte[]> writing) {
            this.format = format;
            this.writing = writing;
        }

        private Intake read(List<Piece> pieces, List<RefusedRow> refused) {
            return ReadingFiles.readInputs(
                    ReadingFormatLaws.PLAN,
                    List.of(Input.bytes("readings", writing.apply(pieces), relative -> Optional.empty())),
                    IntakeSettings.USUAL.withRefusedRows(refused::add));
        }

        @RepeatedTest(60)
        void everyRowIsAccountedFor_andABadCellRefusesItsRowAlone(RepetitionInfo round) {
            Random random = new Random(round.getCurrentRepetition());
            List<Piece> written = new ArrayList<>();
            List<Piece> good = new ArrayList<>();
            List<Piece> bad = new ArrayList<>();
            int explained = 0;
            int count = 1 + random.nextInt(15);
            for (int i = 0; i < count; i++) {
                Piece piece = piece(i, random);
                int fate = random.nextInt(5);
                if (fate == 0) {
                    bad.add(damaged(piece.withValue("2", "12.51"), random));
                    written.add(bad.get(bad.size() - 1));
                    continue;
                }
                written.add(piece);
                if (!piece.isMeasured()) {
                    explained++;
                    continue;
                }
                good.add(piece);
                if (fate == 1) {
                    // Once more, which the plan does not allow.
                    bad.add(piece);
                    written.add(piece);
                }
            }
            List<RefusedRow> refused = new ArrayList<>();

            Intake intake = read(written, refused);

            assertThat(intake.files())
                    .allSatisfy(file -> assertThat(file.format()).isEqualTo(format));
            assertThat(intake.rows()).isEqualTo(new RowCounts(written.size(), good.size(), bad.size(), explained));
            assertThat(refused).hasSize(bad.size());
            for (int i = 0; i < bad.size(); i++) {
                assertThat(refused.get(i).faults()).isNotEmpty();
                if (!bad.get(i).part().isEmpty() && bad.get(i).part().length() < 10) {
                    assertThat(String.join("|", refused.get(i).fields()))
                            .contains(bad.get(i).part());
                }
            }
            if (!good.isEmpty()) {
                assertThat(intake.faultsOfFiles()).isZero();
                assertThat(ReadingFormatLaws.said(intake.parts()))
                        .isEqualTo(ReadingFormatLaws.said(
                                read(good, new ArrayList<>()).recordOrRefuse().parts()))
                        .hasSize(good.stream()
                                .mapToInt(each -> (int) each.values().values().stream()
                                        .filter(value -> !value.isEmpty())
                                        .count())
                                .sum());
            }
        }
    }

    private static byte[] separated(List<Piece> pieces, String separator, char mark) {
        return pieces.stream()
                .map(piece -> piece.fields().stream()
                        .map(field -> field.matches("\\d+\\.\\d+") ? field.replace('.', mark) : field)
                        .map(field -> '"' + field + '"')
                        .collect(Collectors.joining(separator)))
                .collect(Collectors.joining("\n", String.join(separator, heading()) + "\n", "\n"))
                .getBytes(StandardCharsets.UTF_8);
    }

    @Nested
    class Commas extends Laws {
        Commas() {
            super(ReadingFormat.CSV, pieces -> separated(pieces, ",", '.'));
        }
    }

    @Nested
    class SemicolonsAndDecimalCommas extends Laws {
        SemicolonsAndDecimalCommas() {
            super(ReadingFormat.CSV, pieces -> separated(pieces, ";", ','));
        }
    }

    private static String object(Piece piece) {
        List<String> members = new ArrayList<>(List.of("\"part\": " + JsonValue.quoted(piece.part())));
        piece.values().forEach((number, value) -> {
            if (!value.isEmpty()) {
                boolean plain = value.matches("\\d+\\.\\d+|1e9+");
                members.add(JsonValue.quoted(number) + ": " + (plain ? value : JsonValue.quoted(value)));
            }
        });
        if (!piece.operator().isEmpty()) {
            members.add("\"operator\": " + JsonValue.quoted(piece.operator()));
        }
        return "{" + String.join(", ", members) + "}";
    }

    private static byte[] objects(List<Piece> pieces, String between, String before, String after) {
        return pieces.stream()
                .map(WideFormatLawsTest::object)
                .collect(Collectors.joining(between, before, after))
                .getBytes(StandardCharsets.UTF_8);
    }

    @Nested
    class Json extends Laws {
        Json() {
            super(ReadingFormat.JSON, pieces -> objects(pieces, ",\n", "[", "]"));
        }
    }

    @Nested
    class JsonLinesOfPieces extends Laws {
        JsonLinesOfPieces() {
            // One object alone is a document as much as a line.
            super(ReadingFormat.JSON_LINES, pieces -> objects(pieces, "\n", "", "\n"));
        }
    }

    private static List<List<String>> table(List<Piece> pieces) {
        List<List<String>> table = new ArrayList<>(List.of(heading()));
        pieces.forEach(piece -> table.add(piece.fields()));
        return table;
    }

    @Nested
    class OfficeOpenXml extends Laws {
        OfficeOpenXml() {
            super(ReadingFormat.XLSX, pieces -> {
                XlsxWriter writer = new XlsxWriter();
                return writer.sheet("Readings", writer.table(table(pieces), true))
                        .bytes();
            });
        }
    }

    @Nested
    class OpenDocument extends Laws {
        OpenDocument() {
            super(
                    ReadingFormat.ODS,
                    pieces -> new OdsWriter()
                            .sheet("Readings", OdsWriter.table(table(pieces), true))
                            .bytes());
        }
    }
}
