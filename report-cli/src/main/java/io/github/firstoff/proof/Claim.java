package io.github.firstoff.proof;

import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetJson;
import java.io.Writer;
import java.util.Optional;

/** What a sheet claims, of whatever kind it is: a result, where it comes from, and the readings that it rests on. */
public interface Claim {
    /** The command that makes such sheets. */
    String command();

    /** What the sheet was made from and by. */
    Provenance provenance();

    /** Writes the result as the command prints it with {@code --json}; the writer stays open. */
    void write(Writer target);

    /** The readings as they were taken; empty where it rests on none. */
    Optional<ReadingLines> readings();

    /** Which figures of the result stand on the pages as they are: what a sheet of another version is checked by. */
    PrintedFigures printed();

    /** What the sheet of an inspection claims. */
    static Claim of(Sheet sheet) {
        return new Claim() {
            @Override
            public String command() {
                return sheet.kind().command();
            }

            @Override
            public Provenance provenance() {
                return sheet.provenance();
            }

            @Override
            public void write(Writer target) {
                SheetJson.write(sheet, target);
            }

            @Override
            public Optional<ReadingLines> readings() {
                return Optional.of(JudgedReadings.of(sheet));
            }

            @Override
            public PrintedFigures printed() {
                return PrintedFigures.ofInspection();
            }
        };
    }
}
