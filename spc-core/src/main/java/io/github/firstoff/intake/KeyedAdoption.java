package io.github.firstoff.intake;

import io.github.firstoff.intake.KeyedEvent.Kind;
import io.github.firstoff.intake.KeyedLayout.Taken;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Goes on with a readings file whose journal is gone: writes the journal that would have made it. The file may have been edited and saved
 * with the line ends of another system; its readings are taken, and the line ends made those of a session again.
 */
final class KeyedAdoption {
    private static final long LARGEST = 64L * 1024 * 1024;

    private KeyedAdoption() {}

    /**
     * Writes the journal, unless another session was quicker.
     *
     * @throws InputRefused if the file is none of a session of this plan; nothing is written then
     * @throws IOException if a file cannot be read or written, or another session is about the same
     */
    static void adopt(ResolvedPlan plan, String planHash, Path csv, Path journal, List<String> repairs)
            throws IOException {
        Path part = beside(journal);
        try (DurableFile prepared = DurableFile.OnDisk.locked(part)) {
            if (!Files.exists(journal)) {
                byte[] events = KeyedFiles.journalOf(events(plan, planHash, csv, repairs));
                prepared.truncate(0);
                prepared.write(0, events);
                prepared.force();
                Files.move(part, journal, StandardCopyOption.ATOMIC_MOVE);
                DurableFile.OnDisk.forceFolderOf(journal);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static Path beside(Path file) {
        return file.resolveSibling(file.getFileName() + ".part");
    }

    private static List<KeyedEvent> events(ResolvedPlan plan, String planHash, Path csv, List<String> repairs)
            throws IOException {
        String name = csv.toString();
        String text = SourceText.of(Input.file(csv), LARGEST).text().replace("\r\n", "\n");
        String heading = KeyedLayout.heading(plan);
        if (!text.startsWith(heading + "\n")) {
            throw KeyedLayout.notOurs(name, "its heading is not " + heading);
        }
        int end = text.lastIndexOf('\n') + 1;
        String rest = text.substring(end);
        String whole = text.substring(0, end) + (isWhole(rest, plan) ? rest + '\n' : "");
        List<String> rows = whole.lines().skip(1).toList();
        List<KeyedEvent> events = new ArrayList<>();
        events.add(KeyedLayout.begin(plan, planHash));
        if (!rows.isEmpty()) {
            Set<String> pieces = new HashSet<>();
            List<Taken> readings = KeyedLayout.readingsOf(plan, name, whole, rows.size());
            for (int i = 0; i < rows.size(); i++) {
                Taken each = readings.get(i);
                if (pieces.add(each.part())) {
                    events.add(KeyedEvent.of(Kind.GIVEN, each.part()));
                }
                events.add(KeyedEvent.of(
                        Kind.READING,
                        each.part(),
                        each.reading().characteristic(),
                        each.reading().context().setting().orElse(""),
                        rows.get(i)));
            }
        }
        if (!rest.isEmpty() && !isWhole(rest, plan)) {
            repairs.add("The last line of " + Echo.plain(name) + " is not whole (" + Echo.quoted(rest)
                    + ") and was removed; measure that again.");
        }
        renew(csv, whole.getBytes(StandardCharsets.UTF_8));
        repairs.add(Echo.plain(name) + " has no journal beside it; its " + rows.size()
                + (rows.size() == 1 ? " reading was" : " readings were") + " taken as they stand.");
        return events;
    }

    /** A row ends with the part and its revision: what has them was not cut short, though an editor left the last line end out. */
    private static boolean isWhole(String rest, ResolvedPlan plan) {
        KeyedRow last = new KeyedRow();
        last.set(ReadingColumn.PART_NUMBER, plan.part().number());
        last.set(ReadingColumn.REVISION, plan.part().revision());
        String ending = ReadingColumn.PART_NUMBER.word() + "," + ReadingColumn.REVISION.word();
        return rest.endsWith("," + last.csv(ending));
    }

    /** The file as a session would have left it; the old one stays until the new one is on the disk. */
    private static void renew(Path csv, byte[] bytes) throws IOException {
        if (Arrays.equals(Files.readAllBytes(csv), bytes)) {
            return;
        }
        Path part = beside(csv);
        try {
            Files.write(
                    part,
                    bytes,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.TRUNCATE_EXISTING,
                    StandardOpenOption.WRITE,
                    StandardOpenOption.DSYNC);
            Files.move(part, csv, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
        DurableFile.OnDisk.forceFolderOf(csv);
    }
}
