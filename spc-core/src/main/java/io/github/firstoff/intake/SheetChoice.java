package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToIntFunction;

/**
 * Finds the sheet of a workbook that holds what is wanted: the only one with a fitting heading among its first rows, or the one that the
 * user names. Where several fit, none is taken.
 *
 * @param name the name of the sheet
 * @param hidden whether the spreadsheet does not show it
 * @param place its place among the sheets of the workbook, counted from 0; two sheets may have one name
 * @param headingRow the row of its heading
 * @param unused the names of the other sheets that hold anything
 */
record SheetChoice(String name, boolean hidden, int place, long headingRow, List<String> unused) {
    private static final int ROWS_LOOKED_AT = 100;
    private static final int NAMED = 10;

    /** Scores of headings that surely are what is wanted begin here. */
    static final int SURE = 1000;

    SheetChoice {
        unused = List.copyOf(unused);
    }

    /** What was seen of a sheet. */
    private static final class Seen {
        private final String name;
        private final boolean hidden;
        private long firstRow;
        private long headingRow;
        private int score;
        private int rows;

        Seen(String name, boolean hidden) {
            this.name = name;
            this.hidden = hidden;
        }
    }

    /**
     * The sheet.
     *
     * @param score how well the fields of a row make the heading; 0 if they make none, {@link #SURE} and more if they surely do
     * @param example a heading that would fit, for messages
     */
    static SheetChoice of(
            String file, Workbook workbook, Optional<String> stated, ToIntFunction<List<String>> score, String example)
            throws IOException {
        List<Seen> sheets = new ArrayList<>();
        workbook.walk(new SheetTaker() {
            @Override
            public boolean begin(String name, boolean hidden) {
                sheets.add(new Seen(name, hidden));
                return true;
            }

            @Override
            public boolean row(SheetRow row) {
                Seen seen = sheets.get(sheets.size() - 1);
                if (seen.rows++ == 0) {
                    seen.firstRow = row.number();
                }
                int found = score.applyAsInt(row.texts());
                if (found > seen.score) {
                    seen.score = found;
                    seen.headingRow = row.number();
                }
                return seen.rows < ROWS_LOOKED_AT;
            }

            @Override
            public void end(Layout layout) {
                // The heading says enough.
            }
        });
        Seen chosen = stated.isPresent() ? named(file, sheets, stated.get()) : fitting(file, sheets, example);
        if (chosen.rows == 0) {
            throw new TextRefused(Fault.of(
                    FaultKind.EMPTY,
                    new Where(file, chosen.name, 0, 0, ""),
                    "",
                    "a sheet with nothing in it",
                    "a heading such as " + example + " and rows under it"));
        }
        return new SheetChoice(
                chosen.name,
                chosen.hidden,
                sheets.indexOf(chosen),
                chosen.score > 0 ? chosen.headingRow : chosen.firstRow,
                sheets.stream()
                        .filter(each -> each != chosen && each.rows > 0)
                        .map(each -> each.name)
                        .toList());
    }

    private static Seen named(String file, List<Seen> sheets, String stated) throws TextRefused {
        List<Seen> exact =
                sheets.stream().filter(each -> each.name.equals(stated)).toList();
        if (exact.size() > 1) {
            throw new TextRefused(Fault.of(
                    FaultKind.CONTRADICTION,
                    Where.inFile(file),
                    "several sheets have that name",
                    "--sheet " + Echo.quoted(stated),
                    "sheets with a name each"));
        }
        if (exact.size() == 1) {
            return exact.get(0);
        }
        List<Seen> folded = sheets.stream()
                .filter(each -> each.name.strip().equalsIgnoreCase(stated.strip()))
                .toList();
        if (folded.size() == 1) {
            return folded.get(0);
        }
        throw new TextRefused(Fault.of(
                FaultKind.MISSING,
                Where.inFile(file),
                "the workbook has no such sheet",
                "--sheet " + Echo.quoted(stated),
                "one of " + listed(sheets)));
    }

    private static Seen fitting(String file, List<Seen> sheets, String example) throws TextRefused {
        List<Seen> filled = sheets.stream().filter(each -> each.rows > 0).toList();
        if (filled.isEmpty()) {
            throw new TextRefused(Fault.of(
                    FaultKind.EMPTY,
                    Where.inFile(file),
                    "",
                    "a workbook with nothing in it",
                    "a heading such as " + example + " and rows under it"));
        }
        List<Seen> fitting = filled.stream().filter(each -> each.score >= SURE).toList();
        if (fitting.isEmpty()) {
            fitting = filled.stream().filter(each -> each.score > 0).toList();
        }
        if (fitting.size() > 1) {
            throw new TextRefused(Fault.of(
                    FaultKind.CONTRADICTION,
                    Where.inFile(file),
                    "several sheets have a heading that fits",
                    listed(fitting),
                    "--sheet NAME to say which"));
        }
        if (fitting.isEmpty() && filled.size() > 1) {
            throw new TextRefused(Fault.of(
                    FaultKind.MISSING,
                    Where.inFile(file),
                    "no sheet has a heading that fits",
                    listed(filled),
                    "a heading such as " + example + ", or --sheet NAME"));
        }
        return fitting.isEmpty() ? filled.get(0) : fitting.get(0);
    }

    private static String listed(List<Seen> sheets) {
        List<String> names = sheets.stream()
                .limit(NAMED)
                .map(each -> Echo.quoted(each.name) + (each.hidden ? " (hidden)" : ""))
                .toList();
        String more = sheets.size() > NAMED ? String.format(Locale.ROOT, " and %d more", sheets.size() - NAMED) : "";
        return (sheets.size() == 1 ? "the sheet " : "the sheets ") + String.join(", ", names) + more;
    }
}
