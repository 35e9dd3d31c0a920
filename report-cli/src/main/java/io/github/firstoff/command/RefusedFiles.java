package io.github.firstoff.command;

import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.RefusedRow;
import io.github.firstoff.intake.SafeText;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Puts refused rows, with the reason, into a CSV file per file of readings, so that they can be put right and read again. The rows go to
 * temporary files while readings are read, and to their places when everything else went well.
 */
final class RefusedFiles implements Consumer<RefusedRow>, AutoCloseable {
    private static final String PLACE = "refused in";
    private static final String REASON = "refused because";
    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d,\\d");
    private static final String SUFFIX = ".refused.csv";

    private final @Nullable Path out;
    private final List<Path> inputs;
    private final Map<String, Spool> spools = new LinkedHashMap<>();

    /**
     * Files of refused rows.
     *
     * @param out the sheet beside which they go; null to put each beside its file of readings
     * @param inputs what must not be overwritten
     */
    RefusedFiles(@Nullable Path out, List<Path> inputs) {
        this.out = out;
        this.inputs =
                inputs.stream().map(path -> path.toAbsolutePath().normalize()).toList();
    }

    /** The refused rows of one file, while it is read. */
    private static final class Spool {
        private final Path temporary;
        private final BufferedWriter writer;
        private final int columns;
        private final String delimiter;

        Spool(RefusedRow first) throws IOException {
            // Who writes decimal commas will write one when putting the row right.
            delimiter = first.fields().stream()
                            .anyMatch(field -> DECIMAL_COMMA.matcher(field).find())
                    ? ";"
                    : ",";
            temporary = Files.createTempFile("firstoff-", SUFFIX);
            writer = Files.newBufferedWriter(temporary, StandardCharsets.UTF_8);
            columns = first.heading().size();
            List<String> heading = new ArrayList<>(first.heading());
            heading.add(PLACE);
            heading.add(REASON);
            write(heading);
        }

        void add(RefusedRow row) throws IOException {
            List<String> fields = new ArrayList<>(row.fields());
            List<String> reasons = new ArrayList<>(
                    row.faults().stream().map(RefusedFiles::reason).toList());
            if (fields.size() > columns) {
                // There is no column for them; what stands in them is not lost all the same.
                reasons.add("further fields: "
                        + fields.subList(columns, fields.size()).stream().collect(Collectors.joining(" | ")));
            }
            while (fields.size() < columns) {
                fields.add("");
            }
            List<String> line = new ArrayList<>(fields.subList(0, columns));
            line.add(row.where().spot());
            line.add(String.join("; ", reasons));
            write(line);
        }

        private void write(List<String> fields) throws IOException {
            writer.write(fields.stream().map(SafeText::csvField).collect(Collectors.joining(delimiter)));
            writer.write("\r\n");
        }
    }

    private static String reason(Fault fault) {
        String line = fault.line();
        String place = fault.where().toString();
        String field = fault.where().field();
        String said = line.startsWith(place + ": ") ? line.substring(place.length() + 2) : line;
        return field.isEmpty() ? said : field + ": " + said;
    }

    @Override
    public void accept(RefusedRow row) {
        try {
            String file = row.where().file();
            Spool spool = spools.get(file);
            if (spool == null) {
                spool = new Spool(row);
                spools.put(file, spool);
            }
            spool.add(row);
        } catch (IOException fault) {
            throw new OutputFault("refused rows cannot be kept: " + Faults.reason(fault), fault);
        }
    }

    /**
     * Puts the files in their places.
     *
     * @return where they are
     * @throws OutputFault if one cannot be written, or would overwrite an input or a file that holds something else
     */
    List<Path> write() {
        List<Path> written = new ArrayList<>();
        Set<Path> taken = new HashSet<>();
        for (Map.Entry<String, Spool> entry : spools.entrySet()) {
            Path target = target(entry.getKey(), taken);
            requireOurs(target);
            Spool spool = entry.getValue();
            try {
                spool.writer.flush();
            } catch (IOException fault) {
                throw new OutputFault("refused rows cannot be kept: " + Faults.reason(fault), fault);
            }
            OutputFile.write(target, stream -> Files.copy(spool.temporary, stream));
            written.add(target);
        }
        return written;
    }

    private Path target(String file, Set<Path> taken) {
        boolean named = inputs.contains(Path.of(file).toAbsolutePath().normalize());
        String base = named ? Inputs.nameOf(file) : "standard-input";
        int dot = base.lastIndexOf('.');
        String stem = dot > 0 ? base.substring(0, dot) : base;
        Path beside = out != null ? out.toAbsolutePath() : Path.of(file).toAbsolutePath();
        Path target = beside.resolveSibling(stem + SUFFIX);
        for (int i = 2; !taken.add(target.normalize()); i++) {
            target = beside.resolveSibling(stem + "-" + i + SUFFIX);
        }
        return target;
    }

    private void requireOurs(Path target) {
        if (inputs.contains(target.toAbsolutePath().normalize())) {
            throw new OutputFault(
                    target + " is one of the inputs and would be overwritten with refused rows; rename it");
        }
        if (!Files.exists(target)) {
            return;
        }
        String heading = "";
        if (Files.isRegularFile(target)) {
            try (BufferedReader reader = Files.newBufferedReader(target, StandardCharsets.UTF_8)) {
                char[] first = new char[100_000];
                int count = Math.max(0, reader.read(first));
                heading = new String(first, 0, count).lines().findFirst().orElse("");
            } catch (IOException unreadable) {
                // It is not one that this program wrote.
                heading = "";
            }
        }
        if (!heading.endsWith(PLACE + "," + REASON) && !heading.endsWith(PLACE + ";" + REASON)) {
            throw new OutputFault(target + " is there already and holds something else than refused rows; move it");
        }
    }

    /** Removes what is temporary. */
    @Override
    public void close() {
        for (Spool spool : spools.values()) {
            try (Writer closing = spool.writer) {
                closing.flush();
            } catch (IOException fault) {
                throw new UncheckedIOException(fault);
            } finally {
                try {
                    Files.deleteIfExists(spool.temporary);
                } catch (IOException left) {
                    // A temporary file is left behind in the folder for temporary files; nobody's work suffers.
                    spool.temporary.toFile().deleteOnExit();
                }
            }
        }
    }
}
