package io.github.firstoff.command;

import io.github.firstoff.intake.RefusedRow;
import io.github.firstoff.intake.RefusedTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Puts refused rows, with the reason, into a CSV file per file of readings, so that they can be put right and read again. The rows go to
 * temporary files while readings are read, and to their places when everything else went well.
 */
final class RefusedFiles implements Consumer<RefusedRow>, AutoCloseable {
    private static final String SUFFIX = ".refused.csv";

    private final @Nullable Path out;
    private final List<Path> inputs;
    private final Map<Kind, RefusedTable> tables = new LinkedHashMap<>();

    /** Rows of one file and one kind. */
    private record Kind(String file, boolean isLong) {}

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

    @Override
    public void accept(RefusedRow row) {
        try {
            // Rows of a reading and rows of a piece, as JSON may have side by side, do not go under one heading.
            Kind kind = new Kind(row.where().file(), row.isLong());
            RefusedTable table = tables.get(kind);
            if (table == null) {
                table = new RefusedTable();
                tables.put(kind, table);
            }
            table.add(row);
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
        for (Map.Entry<Kind, RefusedTable> entry : tables.entrySet()) {
            Path target = target(entry.getKey().file(), taken);
            requireOurs(target);
            RefusedTable table = entry.getValue();
            OutputFile.write(target, table::write);
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
        RefusedTable.State state = RefusedTable.stateOf(target);
        if (state == RefusedTable.State.SOMETHING_ELSE) {
            throw new OutputFault(target + " is there already and holds something else than refused rows; move it");
        }
        if (state == RefusedTable.State.PUT_RIGHT) {
            throw new OutputFault(target + " is there already and rows in it were put right; read it together with the"
                    + " readings, or move it");
        }
    }

    /** Removes what is temporary. */
    @Override
    public void close() {
        tables.values().forEach(RefusedTable::close);
    }
}
