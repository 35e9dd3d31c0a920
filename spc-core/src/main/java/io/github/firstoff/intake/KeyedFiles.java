package io.github.firstoff.intake;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * The two files of a session: the journal, which is the truth, and the readings file, which is made from it line by line.
 *
 * <p>Each event is written to the journal and forced to the disk, then the readings file is brought after it and forced too; only then
 * is it confirmed. After a power cut the journal therefore holds every confirmed event and at most a torn line behind them, and the
 * readings file lies between the state before the last event and the state after it. Whatever else it holds was written by somebody
 * else and is left alone.
 *
 * <p>A line of the journal is a CRC-32 in eight hexadecimal digits, a tab and the event. The sum goes over the line before it too, so
 * that no line can be lost, doubled or exchanged unnoticed. It guards against accidents, not against forgery.
 */
final class KeyedFiles implements Closeable {
    private static final String NO_SUM = "00000000";
    private static final int SUM_LENGTH = 8;

    private final String csvName;
    private final String journalName;
    private final DurableFile journal;
    private final DurableFile csv;
    private final List<String> repairs = new ArrayList<>();
    private KeyedState state = new KeyedState();
    private String lastSum = NO_SUM;
    private long journalSize;
    private long csvSize;
    private boolean broken;

    KeyedFiles(String csvName, DurableFile journal, DurableFile csv) {
        this.csvName = csvName;
        this.journalName = csvName + ".journal";
        this.journal = journal;
        this.csv = csv;
    }

    KeyedState state() {
        return state;
    }

    /** What was found and mended when the files were opened, in sentences. */
    List<String> repairs() {
        return List.copyOf(repairs);
    }

    /**
     * Reads both files and mends what a crash has left between them.
     *
     * @return the bytes of a readings file that has no journal; empty if there is a session or nothing at all
     * @throws InputRefused if either file was damaged or changed by somebody else
     */
    Optional<byte[]> open() throws IOException {
        byte[] written = journal.read();
        byte[] before = new byte[0];
        int at = 0;
        int line = 0;
        while (at < written.length) {
            int end = indexOf(written, (byte) '\n', at);
            Optional<KeyedEvent> event = end < 0 ? Optional.empty() : event(written, at, end);
            if (event.isEmpty()) {
                refuseUnlessTorn(written, at, end, line + 1);
                break;
            }
            line++;
            before = state.file();
            apply(event.get(), line);
            at = end + 1;
        }
        journalSize = at;
        byte[] found = csv.read();
        csvSize = found.length;
        if (state.hasBegun()) {
            requireBetween(found, before);
        }
        // Nothing is written before it is clear that nothing will be refused.
        if (at < written.length) {
            journal.truncate(at);
            journal.force();
            repairs.add("The last line of " + Echo.plain(journalName)
                    + " was cut short by a crash; it had not been confirmed and was removed.");
        }
        if (!state.hasBegun()) {
            return found.length == 0 ? Optional.empty() : Optional.of(found);
        }
        bring(found, before);
        return Optional.empty();
    }

    /**
     * A write that was cut short leaves a line without its end, or one with zeros where a block was not yet written, and nothing behind
     * it. Anything else was damaged later.
     */
    private void refuseUnlessTorn(byte[] written, int at, int end, int line) {
        if (end < 0) {
            return;
        }
        int zero = indexOf(written, (byte) 0, at);
        boolean isLast = end == written.length - 1 || onlyZeros(written, end + 1);
        if (zero >= 0 && zero < end && isLast) {
            return;
        }
        throw InputRefused.because(Fault.of(
                FaultKind.SYNTAX,
                new Fault.Where(journalName, line, 0, ""),
                "this line of the journal was damaged or changed",
                "",
                "the journal as it was written; without it (move it away) the readings file is taken as it stands"));
    }

    private static boolean onlyZeros(byte[] bytes, int from) {
        for (int i = from; i < bytes.length; i++) {
            if (bytes[i] != 0) {
                return false;
            }
        }
        return true;
    }

    private Optional<KeyedEvent> event(byte[] written, int at, int end) {
        String line;
        try {
            line = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(written, at, end - at))
                    .toString();
        } catch (CharacterCodingException torn) {
            return Optional.empty();
        }
        if (line.length() < SUM_LENGTH + 2 || line.charAt(SUM_LENGTH) != '\t') {
            return Optional.empty();
        }
        String text = line.substring(SUM_LENGTH + 1);
        String sum = sum(lastSum, text);
        if (!line.startsWith(sum)) {
            return Optional.empty();
        }
        Optional<KeyedEvent> event = KeyedEvent.parse(text);
        if (event.isPresent()) {
            lastSum = sum;
        }
        return event;
    }

    private void apply(KeyedEvent event, int line) {
        try {
            state.apply(event);
        } catch (KeyedState.Impossible fault) {
            String message = fault.getMessage();
            throw InputRefused.because(Fault.of(
                    FaultKind.CONTRADICTION,
                    new Fault.Where(journalName, line, 0, ""),
                    message == null ? "" : message,
                    "",
                    "a journal that this program has written"));
        }
    }

    private void requireBetween(byte[] found, byte[] before) {
        byte[] after = state.file();
        if (found.length > 0 && !isBetween(found, before, after)) {
            throw changed(found, after);
        }
    }

    /** Brings the readings file, which lies between the state before the last event and the state after it, to the latter. */
    private void bring(byte[] found, byte[] before) throws IOException {
        byte[] after = state.file();
        if (Arrays.equals(found, after)) {
            return;
        }
        write(found, after);
        if (found.length == 0 && before.length > 0) {
            repairs.add(
                    Echo.plain(csvName) + " was missing and was written again from " + Echo.plain(journalName) + ", "
                            + state.rows().size()
                            + (state.rows().size() == 1 ? " reading." : " readings.")
                            + " To begin anew, move both files away.");
        } else if (before.length > 0) {
            repairs.add("The last line of " + Echo.plain(csvName)
                    + " was cut short by a crash; it was completed from " + Echo.plain(journalName)
                    + ", and nothing is lost.");
        }
    }

    /** Whether each byte is that of one state or the other, or a zero of a block that was not yet written. */
    private static boolean isBetween(byte[] found, byte[] before, byte[] after) {
        int shared = shared(before, after);
        if (found.length < shared || found.length > Math.max(before.length, after.length)) {
            return false;
        }
        for (int i = 0; i < found.length; i++) {
            boolean fits = (i < before.length && found[i] == before[i])
                    || (i < after.length && found[i] == after[i])
                    || (i >= shared && found[i] == 0);
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    private InputRefused changed(byte[] found, byte[] after) {
        int same = shared(found, after);
        long line = 1;
        for (int i = 0; i < same; i++) {
            if (found[i] == '\n') {
                line++;
            }
        }
        return InputRefused.because(Fault.of(
                FaultKind.CONTRADICTION,
                new Fault.Where(csvName, line, 0, ""),
                "the file was changed since it was measured, so it does not agree with " + Echo.plain(journalName)
                        + "; nothing was written",
                Echo.quoted(lineAt(found, same)),
                Echo.quoted(lineAt(after, same))
                        + "; put it back, or move the journal away, and the file is taken as it stands"));
    }

    private static String lineAt(byte[] bytes, int at) {
        int start = at;
        while (start > 0 && bytes[start - 1] != '\n') {
            start--;
        }
        int end = indexOf(bytes, (byte) '\n', start);
        return new String(bytes, start, (end < 0 ? bytes.length : end) - start, StandardCharsets.UTF_8);
    }

    private static int indexOf(byte[] bytes, byte wanted, int from) {
        for (int i = from; i < bytes.length; i++) {
            if (bytes[i] == wanted) {
                return i;
            }
        }
        return -1;
    }

    private static int shared(byte[] a, byte[] b) {
        int different = Arrays.mismatch(a, b);
        return different < 0 ? a.length : different;
    }

    private void write(byte[] from, byte[] to) throws IOException {
        int shared = shared(from, to);
        if (to.length > shared) {
            csv.write(shared, Arrays.copyOfRange(to, shared, to.length));
        }
        if (from.length > to.length) {
            csv.truncate(to.length);
        }
        csv.force();
        csvSize = to.length;
    }

    /**
     * Decides something; it is on the disk when this returns.
     *
     * @throws IOException if it cannot be written; it is then not decided, and the session must be opened anew
     */
    void add(KeyedEvent event) throws IOException {
        if (broken) {
            throw new KeyedFault("the session ended when " + csvName + " could not be written; begin it again");
        }
        requireUntouched();
        byte[] before = state.file();
        String text = event.text();
        String sum = sum(lastSum, text);
        byte[] line = (sum + '\t' + text + '\n').getBytes(StandardCharsets.UTF_8);
        try {
            writeEvent(line);
            state.apply(event);
            journalSize += line.length;
            lastSum = sum;
            write(before, state.file());
        } catch (KeyedState.Impossible fault) {
            broken = true;
            throw new IllegalStateException("an event that cannot be was decided", fault);
        } catch (IOException failure) {
            broken = true;
            throw failure;
        }
    }

    /**
     * Looks whether both files are as this session has left them.
     *
     * @throws KeyedFault if another program has changed, removed or replaced one; nothing more is written then
     */
    void requireUntouched() throws IOException {
        String what = journal.size() != journalSize || csv.size() != csvSize
                ? "changed"
                : journal.isInPlace() && csv.isInPlace() ? "" : "removed or replaced";
        if (!what.isEmpty()) {
            broken = true;
            boolean ofCsv = csv.size() != csvSize || !csv.isInPlace();
            throw new KeyedFault((ofCsv ? csvName : journalName) + " was " + what
                    + " by another program during the session; nothing more was written");
        }
    }

    private void writeEvent(byte[] line) throws IOException {
        try {
            journal.write(journalSize, line);
            journal.force();
        } catch (IOException failure) {
            try {
                journal.truncate(journalSize);
            } catch (IOException again) {
                // The half line that stays is found and removed when the session is opened next.
                failure.addSuppressed(again);
            }
            throw failure;
        }
    }

    /** The bytes of a journal that holds these events. */
    static byte[] journalOf(List<KeyedEvent> events) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String last = NO_SUM;
        for (KeyedEvent event : events) {
            String text = event.text();
            last = sum(last, text);
            out.writeBytes((last + '\t' + text + '\n').getBytes(StandardCharsets.UTF_8));
        }
        return out.toByteArray();
    }

    private static String sum(String last, String text) {
        CRC32 crc = new CRC32();
        crc.update((last + text).getBytes(StandardCharsets.UTF_8));
        return String.format(java.util.Locale.ROOT, "%08x", crc.getValue());
    }

    @Override
    public void close() throws IOException {
        try (journal) {
            csv.close();
        }
    }
}
