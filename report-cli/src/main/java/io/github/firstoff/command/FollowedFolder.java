package io.github.firstoff.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A folder into which files of readings come while a batch runs. A file counts as complete when its size and time stayed the same from
 * one look to the next, so that one that is being copied is not read by halves.
 */
final class FollowedFolder {
    private final Path folder;
    private final Set<Path> others;
    private Map<Path, State> before = new HashMap<>();
    private Map<Path, State> complete = new HashMap<>();
    private boolean missing;
    private List<Path> gone = List.of();
    private List<Path> changed = List.of();

    /**
     * A folder.
     *
     * @param folder the folder
     * @param others files in it that are no readings: plan, job, sheet
     */
    FollowedFolder(Path folder, Set<Path> others) {
        this.folder = folder;
        this.others = others;
    }

    private record State(long size, FileTime changed) {}

    /**
     * Looks at the folder again.
     *
     * @return whether the complete files are others than at the last look
     * @throws OutputFault if the folder cannot be looked at any more
     */
    boolean look() {
        Map<Path, State> now = new HashMap<>();
        try (Stream<Path> entries = Files.list(folder)) {
            for (Path entry : entries.toList()) {
                if (mayBeReadings(entry)) {
                    BasicFileAttributes attributes = Files.readAttributes(entry, BasicFileAttributes.class);
                    now.put(entry, new State(attributes.size(), attributes.lastModifiedTime()));
                }
            }
        } catch (NoSuchFileException gone) {
            // A file went away between two glances, and the next look shows what is there; or the folder itself did.
            missing = !Files.isDirectory(folder);
            return false;
        } catch (UncheckedIOException fault) {
            throw unreadable(fault.getCause());
        } catch (IOException fault) {
            throw unreadable(fault);
        }
        missing = false;
        Map<Path, State> settled = new HashMap<>(now);
        settled.entrySet().retainAll(before.entrySet());
        // A file that was complete and is being changed keeps the sheet waiting, not the file out of it.
        boolean moving =
                now.keySet().stream().anyMatch(path -> complete.containsKey(path) && !settled.containsKey(path));
        // One that is gone while another comes was perhaps renamed: a sheet without either would be wrong.
        boolean renamed = !now.keySet().containsAll(complete.keySet()) && settled.size() < now.size();
        before = now;
        if (moving || renamed || settled.equals(complete)) {
            return false;
        }
        gone = complete.keySet().stream()
                .filter(path -> !settled.containsKey(path))
                .sorted()
                .toList();
        changed = complete.entrySet().stream()
                .filter(each -> settled.containsKey(each.getKey())
                        && !settled.get(each.getKey()).equals(each.getValue()))
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
        complete = settled;
        return true;
    }

    private OutputFault unreadable(IOException fault) {
        return new OutputFault(folder + " cannot be followed: " + Faults.reason(fault), fault);
    }

    /** Whether the folder itself was not there at the last look; what was complete in it counts as it was. */
    boolean isMissing() {
        return missing;
    }

    /** The files that were complete before the last look and are not there any more. */
    List<Path> gone() {
        return gone;
    }

    /** The files that were complete before the last look and hold something else now. */
    List<Path> changed() {
        return changed;
    }

    private boolean mayBeReadings(Path entry) {
        String name = entry.getFileName().toString().toLowerCase(Locale.ROOT);
        return !name.startsWith(".")
                && !name.endsWith(".refused.csv")
                && !name.endsWith(".part")
                && !name.endsWith(".tmp")
                && !name.endsWith(".pdf")
                && Files.isRegularFile(entry)
                && !others.contains(entry.toAbsolutePath().normalize());
    }

    /** The complete files by the time of their last change; where that is the same, by name. */
    List<Path> files() {
        List<Path> files = new ArrayList<>(complete.keySet());
        files.sort(Comparator.comparing((Path path) -> complete.get(path).changed())
                .thenComparing(Path::toString));
        return files;
    }
}
