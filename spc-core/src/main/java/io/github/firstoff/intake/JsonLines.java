package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonToken;
import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Readings as JSON lines: in each line an object with the keys of a JSON list of readings. Each line stands by itself, so that one that is
 * no JSON costs no other.
 */
final class JsonLines implements ReadingSource {
    private static final int LINES_LOOKED_AT = 20;

    /**
     * The first line is an object that names its piece and holds no list, or more than half of the first lines are an object each: what
     * is wrong further down does not make another format of the file.
     */
    @Override
    public boolean recognises(Beginning beginning) {
        if (beginning.firstCharacter() != '{') {
            return false;
        }
        String text = beginning.text();
        List<String> lines = text.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .limit(LINES_LOOKED_AT)
                .toList();
        if (!beginning.isWhole() && lines.size() > 1 && lines.size() < LINES_LOOKED_AT) {
            // The last of them is cut off where the beginning ends.
            lines = lines.subList(0, lines.size() - 1);
        }
        long objects = lines.stream()
                .filter(line -> line.charAt(0) == '{' && (line.endsWith("}") || line.endsWith("},")))
                .count();
        if (lines.size() == 1) {
            return objects == 1 && text.contains("\"part\"") && text.indexOf('[') < 0;
        }
        String first = lines.get(0);
        boolean list = first.contains("\"readings\"") || first.endsWith("[");
        boolean namesItsPiece = first.endsWith("}") && first.contains("\"part\"") && first.indexOf('[') < 0;
        return !list && (namesItsPiece || 2 * objects > lines.size());
    }

    @Override
    public boolean isOfLines() {
        return true;
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        String file = bytes.input().name();
        TextReader text = TextReader.of(bytes);
        LimitedLines lines = new LimitedLines(file, text);
        JsonRows rows = new JsonRows(file, check, Map.of());
        int first = lines.read();
        while (first >= 0) {
            long line = lines.line();
            if (first == '\n' || first == '\r') {
                first = lines.read();
                continue;
            }
            line(file, line, (char) first + lines.readLine(), rows, check);
            first = lines.read();
        }
        text.notice().ifPresent(notice -> check.sink().notice(notice.where(), notice.remark()));
    }

    private static void line(String file, long line, String text, JsonRows rows, RowCheck check) throws IOException {
        if (text.isBlank()) {
            return;
        }
        List<Fault> doubledKeys = new ArrayList<>();
        JsonValue value;
        try (JsonTree tree = new JsonTree(file, line - 1, new StringReader(text), doubledKeys::add)) {
            JsonToken token = tree.next();
            value = tree.row(token);
            tree.expectEnd();
        } catch (TextRefused refused) {
            check.sink().begin(new Unreadable(new Where(file, line, 0, ""), text));
            check.sink().refuse(refused.fault());
            check.sink().end();
            return;
        }
        rows.row(value, doubledKeys);
    }

    /** A line that is no JSON. */
    private record Unreadable(Where where, String text) implements LooseRow {
        @Override
        public Set<ReadingColumn> said() {
            return Set.of();
        }

        @Override
        public String asItStood() {
            return text;
        }

        @Override
        public Marks marks() {
            return Marks.UNKNOWN;
        }

        @Override
        public String text(ReadingColumn column) {
            return "";
        }

        @Override
        public Cell cell(ReadingColumn column) {
            return new Cell("", Cell.Form.TEXT, where);
        }

        @Override
        public String noun() {
            return "line";
        }

        @Override
        public Where where(ReadingColumn column) {
            return where;
        }
    }
}
