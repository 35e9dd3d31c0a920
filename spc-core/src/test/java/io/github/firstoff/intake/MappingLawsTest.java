package io.github.firstoff.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;

/** The laws of all formats, for lines that a mapping explains: columns by place, columns that something parts, lines with labels. */
class MappingLawsTest {

    private static Mapping mapping(String text) {
        return Mapping.read(Input.text("mapping.json", text));
    }

    @Nested
    class ColumnsThatTabsPart extends ReadingFormatLaws {
        @Override
        IntakeSettings settings() {
            return IntakeSettings.USUAL.withMapping(mapping("""
                    { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "tab",
                      "rows": { "part": 1, "name": 2, "actual": 3, "unit": 4, "time": 5, "operator": 6, "note": 7 },
                      "prefix": "K" }
                    """));
        }

        @Override
        byte[] file(List<Line> lines) {
            return lines.stream()
                    .map(line -> String.join("\t", withName(line, "K00")) + "\r\n")
                    .collect(Collectors.joining())
                    .getBytes(StandardCharsets.UTF_8);
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.MAPPED;
        }
    }

    private static List<String> withName(ReadingFormatLaws.Line line, String prefix) {
        List<String> fields = new ArrayList<>(line.all());
        fields.set(1, prefix + line.characteristic());
        return fields;
    }

    @Nested
    class ColumnsByTheirPlaceWithDecimalCommas extends ReadingFormatLaws {
        @Override
        IntakeSettings settings() {
            return IntakeSettings.USUAL.withMapping(mapping("""
                    { "schema": "firstoff-mapping-1", "layout": "columns", "decimalMark": "comma",
                      "rows": { "name": "1-10", "actual": "11-30", "unit": "31-36", "time": "37-60", "operator": "61-75",
                                "note": "76-110", "part": "111-500" },
                      "names": { "bore 1": "1", "flange 2": 2, "pattern 3": "3", "hole 4": "4", "face 7": "7", "edges 9": "9" } }
                    """));
        }

        @Override
        byte[] file(List<Line> lines) {
            return lines.stream()
                    .map(line -> String.format(
                            Locale.ROOT,
                            "%-10s%-20s%-6s%-24s%-15s%-35s%s\n",
                            name(line.characteristic()),
                            line.value().matches("\\d+\\.\\d+") ? line.value().replace('.', ',') : line.value(),
                            line.unit(),
                            line.time(),
                            line.operator(),
                            line.note(),
                            line.part()))
                    .collect(Collectors.joining())
                    .getBytes(StandardCharsets.UTF_8);
        }

        private static String name(String number) {
            return switch (number) {
                case "1" -> "bore 1";
                case "2" -> "flange 2";
                case "3" -> "pattern 3";
                case "4" -> "hole 4";
                case "7" -> "face 7";
                case "9" -> "edges 9";
                default -> number;
            };
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.MAPPED;
        }
    }

    @Nested
    class LinesWithLabels extends ReadingFormatLaws {
        @Override
        IntakeSettings settings() {
            return IntakeSettings.USUAL.withMapping(mapping("""
                    { "schema": "firstoff-mapping-1", "layout": "labels",
                      "rows": { "name": "item", "part": "serial", "actual": "is", "unit": "in", "time": "taken",
                                "operator": "by", "note": "remark" },
                      "skip": [ { "begins": "==" } ] }
                    """));
        }

        @Override
        byte[] file(List<Line> lines) {
            return lines.stream()
                    .map(line -> "item = " + line.characteristic() + "\n serial = " + line.part() + "\n is = "
                            + line.value()
                            + "\n in = " + line.unit() + "\n taken = " + line.time() + "\n by = " + line.operator()
                            + "\n remark = " + line.note() + "\n== end of item\n\n")
                    .collect(Collectors.joining("", "== bench\n", ""))
                    .getBytes(StandardCharsets.UTF_8);
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.MAPPED;
        }
    }
}
