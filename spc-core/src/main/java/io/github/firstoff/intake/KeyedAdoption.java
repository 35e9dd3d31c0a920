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
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Goes on with a readings file whose journal is gone. */
final class KeyedAdoption {
    private KeyedAdoption() {}

    /** Takes a readings file whose journal is gone: writes the journal that would have made it. */
    static void adopt(ResolvedPlan plan, String planHash, Path csv, Path journal, List<String> repairs)
            throws IOException {
        String name = csv.toString();
        String text = SourceText.of(Input.file(csv), 64L * 1024 * 1024).text();
        String heading = KeyedLayout.heading(plan);
        if (!text.startsWith(heading + "\n")) {
            throw KeyedLayout.notOurs(name, "its heading is not " + heading);
        }
        int end = text.lastIndexOf('\n') + 1;
        String whole = text.substring(0, end);
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
        if (end < text.length()) {
            repairs.add("The last line of " + Echo.plain(name) + " is not whole (" + Echo.quoted(text.substring(end))
                    + ") and was removed; measure that again.");
            try (DurableFile file = DurableFile.OnDisk.shared(csv)) {
                file.truncate(whole.getBytes(StandardCharsets.UTF_8).length);
                file.force();
            }
        }
        Path part = journal.resolveSibling(journal.getFileName() + ".part");
        Files.write(
                part,
                KeyedFiles.journalOf(events),
                StandardOpenOption.CREATE,
                StandardOpenOption.TRUNCATE_EXISTING,
                StandardOpenOption.WRITE,
                StandardOpenOption.DSYNC);
        Files.move(part, journal, StandardCopyOption.ATOMIC_MOVE);
        DurableFile.OnDisk.forceFolderOf(journal);
        repairs.add(Echo.plain(name) + " has no journal beside it; its " + rows.size()
                + (rows.size() == 1 ? " reading was" : " readings were") + " taken as they stand.");
    }
}
