package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a table of refused rows looks like: the columns of a table of readings, and behind them where each row was refused, why, and what
 * stood there. Such a table is read like any other once its rows were put right.
 *
 * <p>Some faults do not show in the columns, such as a nominal that is not the plan's. So the place of a row carries a mark of what stood
 * in it, and a row that still says the same and still bears its reason is refused again.
 */
public final class RefusedTable implements AutoCloseable {
    /** The column of the place: file, line or row, and the mark. */
    static final String PLACE = "refused in";

    /** The column of the reason. */
    static final String REASON = "refused because";

    /** The column of what stood in the file, of formats that are no tables. */
    static final String AS_IT_STOOD = "refused as it stood";

    private static final Pattern PLACE_NAME =
            Pattern.compile(Pattern.quote(PLACE) + "(?: \\(numbers with a decimal (point|comma)\\))?");
    private static final Pattern MARKED_PLACE = Pattern.compile("(?s).*\\[([0-9a-f]{10})]");
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,40}(?:[.,]\\d{1,40})?");
    private static final Pattern ESCAPED = Pattern.compile("(?s)'+[=+\\-@].*");

    private final Path temporary;
    private final DataOutputStream rows;
    private final Map<String, Integer> places = new HashMap<>();
    private final List<String> names = new ArrayList<>();
    private Optional<DecimalMark> mark = Optional.empty();
    private boolean open;
    private boolean asItStood;
    private int count;

    /**
     * A table without rows. They are kept in a temporary file until the table is written.
     *
     * @throws IOException if there can be no such file
     */
    public RefusedTable() throws IOException {
        temporary = Files.createTempFile("firstoff-" + ProcessHandle.current().pid() + "-", ".refused.csv");
        rows = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(temporary)));
    }

    /**
     * Takes the next row.
     *
     * @param row the row
     * @throws IOException if it cannot be kept
     */
    public void add(RefusedRow row) throws IOException {
        List<String> fields = row.fields();
        int columns = row.heading().size();
        List<String> reasons =
                new ArrayList<>(row.faults().stream().map(RefusedTable::reason).toList());
        if (fields.size() > columns) {
            // There is no column for them; what stands in them is not lost all the same.
            reasons.add("further fields: "
                    + fields.subList(columns, fields.size()).stream().collect(Collectors.joining(" | ")));
        }
        mark = mark.or(row::decimalMark);
        open |= row.isOpen();
        asItStood |= !row.asItStood().isEmpty();
        int[] into = placesOf(row.heading());
        int stated = Math.min(columns, fields.size());
        rows.writeInt(stated);
        for (int i = 0; i < stated; i++) {
            rows.writeInt(into[i]);
            writeText(fields.get(i));
        }
        writeText(placeOf(row));
        writeText(String.join("; ", reasons));
        writeText(row.asItStood());
        count++;
    }

    /** Columns of one name are one column, in whatever order rows have them; of columns without a name there may be several. */
    private int[] placesOf(List<String> heading) {
        int[] into = new int[heading.size()];
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 0; i < into.length; i++) {
            String name = heading.get(i);
            String key = seen.merge(name, 1, Integer::sum) + " " + name;
            into[i] = places.computeIfAbsent(key, added -> {
                names.add(name);
                return names.size() - 1;
            });
        }
        return into;
    }

    private void writeText(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        rows.writeInt(bytes.length);
        rows.write(bytes);
    }

    private static String readText(DataInputStream from) throws IOException {
        return new String(from.readNBytes(from.readInt()), StandardCharsets.UTF_8);
    }

    /**
     * Writes the table of all rows so far.
     *
     * @param stream takes the table as UTF-8; it is left open
     * @throws IOException if it cannot be written
     */
    public void write(OutputStream stream) throws IOException {
        rows.flush();
        // Who writes decimal commas will write one when putting the row right.
        boolean comma = mark.filter(DecimalMark.COMMA::equals).isPresent();
        String delimiter = comma || (open && mark.isEmpty()) ? ";" : ",";
        Writer writer = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
        List<String> heading = new ArrayList<>(names);
        heading.addAll(furtherColumns(mark, asItStood));
        write(writer, heading, delimiter);
        try (DataInputStream from = new DataInputStream(new BufferedInputStream(Files.newInputStream(temporary)))) {
            for (int i = 0; i < count; i++) {
                List<String> line = new ArrayList<>(Collections.nCopies(names.size(), ""));
                int stated = from.readInt();
                for (int j = 0; j < stated; j++) {
                    line.set(from.readInt(), readText(from));
                }
                line.add(readText(from));
                line.add(readText(from));
                String stood = readText(from);
                if (asItStood) {
                    line.add(stood);
                }
                write(writer, line, delimiter);
            }
        }
        writer.flush();
    }

    private static void write(Writer writer, List<String> fields, String delimiter) throws IOException {
        writer.write(fields.stream().map(SafeText::csvField).collect(Collectors.joining(delimiter)));
        writer.write("\r\n");
    }

    private static String reason(Fault fault) {
        String line = fault.line();
        String place = fault.where().toString();
        String field = fault.where().field();
        String said = line.startsWith(place + ": ") ? line.substring(place.length() + 2) : line;
        return field.isEmpty() ? said : field + ": " + said;
    }

    /** Removes what is temporary. */
    @Override
    public void close() {
        try (DataOutputStream closing = rows) {
            closing.flush();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        } finally {
            try {
                Files.deleteIfExists(temporary);
            } catch (IOException left) {
                // A temporary file is left behind in the folder for temporary files; nobody's work suffers.
                temporary.toFile().deleteOnExit();
            }
        }
    }

    /**
     * The names of the columns behind those of the readings.
     *
     * @param mark the decimal mark of the numbers; empty if it is not known
     * @param asItStood whether what stood in the file has a column
     */
    private static List<String> furtherColumns(Optional<DecimalMark> mark, boolean asItStood) {
        List<String> names = new ArrayList<>();
        names.add(PLACE
                + mark.map(each -> " (numbers with a decimal " + each.word() + ")")
                        .orElse(""));
        names.add(REASON);
        if (asItStood) {
            names.add(AS_IT_STOOD);
        }
        return names;
    }

    /**
     * The place of a row with the mark of what stood in it.
     *
     * @param row the row
     */
    static String placeOf(RefusedRow row) {
        return place(row.where(), markOf(row.heading(), row.fields()));
    }

    /** What a file holds that stands where a table of refused rows is to go. */
    public enum State {
        /** Refused rows as they were written, so that the file may be written anew. */
        AS_WRITTEN,
        /** Refused rows of which some were changed. */
        PUT_RIGHT,
        /** Anything else. */
        SOMETHING_ELSE
    }

    /**
     * What a file holds.
     *
     * @param path the file; one that cannot be read holds something else
     */
    public static State stateOf(Path path) {
        if (!Files.isRegularFile(path)) {
            return State.SOMETHING_ELSE;
        }
        try (InputBytes bytes = new InputBytes(Input.file(path), Long.MAX_VALUE)) {
            String first = bytes.beginning().text().lines().findFirst().orElse("");
            Optional<Character> separator = separatorIn(first);
            if (separator.isEmpty()) {
                return State.SOMETHING_ELSE;
            }
            return wasTouched(separator.get(), TextReader.of(bytes)) ? State.PUT_RIGHT : State.AS_WRITTEN;
        } catch (IOException | UncheckedIOException | CsvParseException unreadable) {
            return State.SOMETHING_ELSE;
        }
    }

    private static boolean wasTouched(char separator, Reader text) throws IOException {
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .allowMissingFields(true)
                .allowExtraFields(true)
                .ofCsvRecord(text)) {
            List<String> names = List.of();
            for (CsvRecord record : reader) {
                List<String> fields = record.getFields();
                if (names.isEmpty()) {
                    names = fields.stream().map(String::strip).toList();
                    continue;
                }
                List<String> own = new ArrayList<>();
                List<String> ownNames = new ArrayList<>();
                String place = "";
                String reason = "";
                for (int i = 0; i < Math.min(names.size(), fields.size()); i++) {
                    String name = names.get(i);
                    if (isPlace(name)) {
                        place = fields.get(i);
                    } else if (name.equals(REASON)) {
                        reason = fields.get(i);
                    } else if (!name.equals(AS_IT_STOOD)) {
                        ownNames.add(name);
                        own.add(unescaped(fields.get(i).strip()));
                    }
                }
                if (reason.isBlank() || !markIn(place).equals(Optional.of(markOf(ownNames, own)))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether a line is the heading of such a table. */
    static boolean isHeading(String line) {
        return separatorIn(line).isPresent();
    }

    /** What parts the columns in a heading of such a table; empty if the line is none. */
    private static Optional<Character> separatorIn(String line) {
        for (char separator : CsvDialect.SEPARATORS) {
            List<String> fields = CsvDialect.split(line, separator);
            if (fields.stream().anyMatch(RefusedTable::isPlace) && fields.contains(REASON)) {
                return Optional.of(separator);
            }
        }
        return Optional.empty();
    }

    /** Whether a text begins as such a table does. */
    static boolean begins(Beginning beginning) {
        return beginning.text().lines().limit(CsvDialect.LINES_LOOKED_AT).anyMatch(RefusedTable::isHeading);
    }

    static boolean isPlace(String name) {
        return PLACE_NAME.matcher(name).matches();
    }

    /** What the name of the column of places says of the numbers: such a table may hold too few of them to show it. */
    static Marks marksOf(String placeName) {
        Matcher matcher = PLACE_NAME.matcher(placeName);
        if (!matcher.matches() || matcher.group(1) == null) {
            return Marks.UNKNOWN;
        }
        return matcher.group(1).equals(DecimalMark.COMMA.word()) ? Marks.COMMA : Marks.POINT;
    }

    /** The place of a row and its mark, by which the row is known in the file from which it was refused. */
    static String place(Fault.Where where, String mark) {
        String file = where.file();
        String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
        String sheet = where.sheet().isEmpty() ? "" : "sheet " + Echo.quoted(where.sheet()) + ", ";
        return Echo.plain(name) + ", " + sheet + where.spot() + " [" + mark + "]";
    }

    /** The mark in the text of a place; empty if somebody took it away. */
    static Optional<String> markIn(String place) {
        Matcher matcher = MARKED_PLACE.matcher(place);
        return matcher.matches() ? Optional.of(matcher.group(1)) : Optional.empty();
    }

    /**
     * A mark of what stands in a row: the same for the same texts and numbers under the same names, in any order and however a spreadsheet
     * writes a number.
     */
    static String markOf(List<String> heading, List<String> fields) {
        TreeMap<String, String> said = new TreeMap<>();
        for (int i = 0; i < Math.min(heading.size(), fields.size()); i++) {
            String text = Blanks.strip(Echo.plain(Blanks.strip(fields.get(i))));
            if (!text.isEmpty()) {
                said.merge(ReadingColumn.folded(Echo.plain(heading.get(i))), plainNumber(text), (a, b) -> a + "\n" + b);
            }
        }
        return InputBytes.sha256Of(said.toString()).substring(0, 10).toLowerCase(Locale.ROOT);
    }

    private static String plainNumber(String text) {
        return NUMBER.matcher(text).matches()
                ? new BigDecimal(text.replace(',', '.')).stripTrailingZeros().toPlainString()
                : text;
    }

    /** A field as it was before {@link SafeText#csvField} kept it from being taken for a formula. */
    static String unescaped(String field) {
        return ESCAPED.matcher(field).matches() ? field.substring(1) : field;
    }
}
