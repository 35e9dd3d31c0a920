package io.github.firstoff.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;

/** The laws of all formats, for text: each delimiter, decimal mark and encoding, JSON and JSON lines. */
class TextFormatLawsTest {

    @Nested
    class Commas extends ReadingFormatLaws {
        @Override
        byte[] file(List<Line> lines) {
            return separated(lines, ",", '.').getBytes(StandardCharsets.UTF_8);
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.CSV;
        }
    }

    @Nested
    class TabsInUtf16WithAMark extends Commas {
        @Override
        byte[] file(List<Line> lines) {
            return ("\uFEFF" + separated(lines, "\t", '.')).getBytes(StandardCharsets.UTF_16LE);
        }
    }

    @Nested
    class BarsInUtf16WithoutAMark extends Commas {
        @Override
        byte[] file(List<Line> lines) {
            return separated(lines, "|", '.').getBytes(StandardCharsets.UTF_16BE);
        }
    }

    @Nested
    class CommasAfterLinesOfAnExport extends Commas {
        @Override
        byte[] file(List<Line> lines) {
            return ("\uFEFFMeasuring machine \"4\r\nPart number: HQ-310-P; rev. C\r\n\r\n" + separated(lines, ",", '.'))
                    .getBytes(StandardCharsets.UTF_8);
        }
    }

    @Nested
    class SemicolonsAndDecimalCommas extends Commas {
        @Override
        byte[] file(List<Line> lines) {
            return separated(lines, ";", ',').getBytes(StandardCharsets.UTF_8);
        }
    }

    @Nested
    class TabsAndDecimalCommasInWindows1252 extends Commas {
        @Override
        byte[] file(List<Line> lines) {
            return separated(lines, "\t", ',').replace("\u202e", "\u007f").getBytes(Charset.forName("windows-1252"));
        }
    }

    @Nested
    class Json extends ReadingFormatLaws {
        @Override
        byte[] file(List<Line> lines) {
            return lines.stream()
                    .map(TextFormatLawsTest::object)
                    .collect(Collectors.joining(",\n  ", "{\"readings\": [\n  ", "\n]}"))
                    .getBytes(StandardCharsets.UTF_8);
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.JSON;
        }
    }

    @Nested
    class JsonLinesOfText extends ReadingFormatLaws {
        @Override
        byte[] file(List<Line> lines) {
            return lines.stream()
                    .map(TextFormatLawsTest::object)
                    .collect(Collectors.joining("\r\n", "", "\r\n"))
                    .getBytes(StandardCharsets.UTF_8);
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.JSON_LINES;
        }
    }

    private static String object(ReadingFormatLaws.Line line) {
        List<String> members = new ArrayList<>();
        for (int i = 0; i < ReadingFormatLaws.Line.NAMES.size(); i++) {
            String value = line.all().get(i);
            if (!value.isEmpty() || i < 3) {
                boolean number = i == 2 && value.matches("\\d+\\.\\d+");
                members.add(JsonValue.quoted(ReadingFormatLaws.Line.NAMES.get(i)) + ": "
                        + (number ? value : JsonValue.quoted(value)));
            }
        }
        return "{" + String.join(", ", members) + "}";
    }
}
