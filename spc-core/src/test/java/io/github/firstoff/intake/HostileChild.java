package io.github.firstoff.intake;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Reads hostile inputs one after the other in a small heap and says what came of each; run by {@link HostileInputTest}. */
public final class HostileChild {
    private static final long HUNDRED_MEGABYTES = 100_000_000L;

    private HostileChild() {}

    /** A head, and then a piece over and over until so many bytes were given; bytes are made when they are read. */
    private static final class Generated extends InputStream {
        private final byte[] head;
        private final byte[] piece;
        private final byte[] tail;
        private final long repeated;
        private long at;

        Generated(String head, String piece, long bytes, String tail) {
            this.head = head.getBytes(StandardCharsets.UTF_8);
            this.piece = piece.getBytes(StandardCharsets.UTF_8);
            this.tail = tail.getBytes(StandardCharsets.UTF_8);
            this.repeated = bytes / this.piece.length * this.piece.length;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            int count = 0;
            while (count < length) {
                long inside = at - head.length;
                byte next;
                if (inside < 0) {
                    next = head[(int) at];
                } else if (inside < repeated) {
                    next = piece[(int) (inside % piece.length)];
                } else if (inside - repeated < tail.length) {
                    next = tail[(int) (inside - repeated)];
                } else {
                    break;
                }
                buffer[offset + count++] = next;
                at++;
            }
            return count == 0 && length > 0 ? -1 : count;
        }
    }

    /** Rows that are all different, so that nothing that is kept by name stays small by chance. */
    private static final class Rows extends InputStream {
        private final String head;
        private final String form;
        private final String tail;
        private final int rows;
        private int row = -1;
        private byte[] line = new byte[0];
        private int at;

        Rows(String head, String form, int rows, String tail) {
            this.head = head;
            this.form = form;
            this.rows = rows;
            this.tail = tail;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            if (at == line.length) {
                if (row > rows) {
                    return -1;
                }
                String next = row < 0 ? head : row < rows ? form.replace("#", Integer.toString(row)) : tail;
                row++;
                line = next.getBytes(StandardCharsets.UTF_8);
                at = 0;
                if (line.length == 0) {
                    return read(buffer, offset, length);
                }
            }
            int count = Math.min(length, line.length - at);
            System.arraycopy(line, at, buffer, offset, count);
            at += count;
            return count;
        }
    }

    private static Map<String, InputStream> inputs() {
        String heading = "part,characteristic,value\n";
        Map<String, InputStream> all = new LinkedHashMap<>();
        all.put("a line of 100 MB", new Generated(heading, "x", HUNDRED_MEGABYTES, "\n"));
        all.put("a heading of 100 MB", new Generated("", "x", HUNDRED_MEGABYTES, "\n"));
        all.put("a million columns", new Generated("part", ",c", 2_000_000, "\n"));
        all.put("a million empty columns", new Generated(heading, ",", 1_000_000, "\n"));
        all.put("a quoted field without end", new Generated(heading + "S1,2,\"", "a\n", HUNDRED_MEGABYTES, ""));
        all.put("quoted line ends without end", new Generated(heading, "\"\n\",", HUNDRED_MEGABYTES, ""));
        all.put("quotation marks without end", new Generated(heading, "\"", HUNDRED_MEGABYTES, ""));
        all.put("NUL bytes", new Generated("", "\0", HUNDRED_MEGABYTES, ""));
        all.put("NUL bytes in a row", new Generated(heading, "S1,2,\0\0\n", HUNDRED_MEGABYTES, ""));
        all.put("UTF-16 without a line end", new Generated("", "x\0", HUNDRED_MEGABYTES, ""));
        all.put("1e999999 in CSV", new Generated(heading, "S1,2,1e999999\n", 14, ""));
        all.put("1e999999 in JSON", new Generated("[", "{\"part\": \"S1\", \"2\": 1e999999}", 29, "]"));
        all.put("ten thousand digits in CSV", new Generated(heading + "S1,2,", "7", 10_000, "\n"));
        all.put("ten thousand digits in JSON", new Generated("[{\"part\": \"S1\", \"2\": ", "7", 10_000, "}]"));
        all.put("a number of 100 MB", new Generated("[{\"part\": \"S1\", \"2\": ", "7", HUNDRED_MEGABYTES, "}]"));
        all.put("lists ten thousand deep", new Generated("", "[", 10_000, ""));
        all.put("objects ten thousand deep", new Generated("", "{\"a\":", 50_000, ""));
        all.put("a JSON text of 100 MB", new Generated("[{\"part\": \"", "x", HUNDRED_MEGABYTES, "\"}]"));
        all.put("a JSON key of 100 MB", new Generated("[{\"", "x", HUNDRED_MEGABYTES, "\": 1}]"));
        all.put("an object of a million keys", new Rows("[{\"part\": \"S1\"", ", \"k#\": 1", 1_000_000, "}]"));
        all.put(
                "a document of a million keys",
                new Rows("{\"part number\": \"HQ-310-P\"", ", \"k#\": 1", 1_000_000, "}"));
        all.put("a list within a reading", new Generated("[{\"part\": \"S1\", \"2\": [", "1,", 10_000_000, "1]}]"));
        all.put(
                "a JSON line of 100 MB",
                new Generated("{\"part\": \"S1\", \"2\": 12.5}\n{\"part\": \"", "x", HUNDRED_MEGABYTES, "\"}\n"));
        all.put("unknown characteristics by the hundred thousand", new Rows(heading, "S#,c#,12.5\n", 200_000, ""));
        all.put(
                "unknown keys by the hundred thousand",
                new Rows("[", "{\"part\": \"S#\", \"2\": 12.5, \"key #\": 1},\n", 200_000, "{}]"));
        all.put("rows without end and open numbers", new Rows("part;2\n", "S#;12,500\n", 400_000, ""));
        all.put("many rows of CSV", new Rows(heading, "S#,2,12.5\n", 400_000, ""));
        all.put(
                "many rows of JSON",
                new Rows("[", "{\"part\": \"S#\", \"2\": 12.5},\n", 400_000, "{\"part\": \"last\", \"2\": 12.5}]"));
        all.put("many JSON lines", new Rows("", "{\"part\": \"S#\", \"2\": 12.5}\n", 400_000, ""));
        return all;
    }

    /** Prints a line per input: its name, the seconds it took, and the first line of what was said of it. */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        ResolvedPlan plan =
                PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
        inputs().forEach((name, stream) -> {
            long from = System.nanoTime();
            Intake intake = ReadingFiles.readBlocks(
                    plan, List.of(Input.stream("r", stream)), IntakeSettings.USUAL, block -> {});
            long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - from);
            List<String> lines = intake.refused().lines();
            out.println(name + "|" + seconds + "|" + (lines.isEmpty() ? intake.rows() : lines.get(0)));
        });
    }
}
