package io.github.firstoff.intake;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A plan file made from a table or from QIF. The text that would be written is read back by the reader of plan files and resolved before
 * anybody sees it, so that a plan that was made reads and resolves like one that was written by hand; what is wrong with it is told with
 * the place in the source.
 */
public final class PlanDraft {
    private static final Pattern SPREADSHEET_POWER = Pattern.compile("\\d(?:[.,]\\d+)?[eE]\\+?\\d{1,3}");
    private static final Pattern ENDING_IN_ZERO = Pattern.compile("\\d+[.,]0");

    private static final List<PlanColumn> TEXTS =
            List.of(PlanColumn.GAUGE, PlanColumn.FORM, PlanColumn.SIZE_FEATURE, PlanColumn.TARGET, PlanColumn.INSPECT);

    /** The classes in German, as inspectors there write them. */
    private static final Map<String, String> CLASSES = Map.of(
            "kritisch", "critical",
            "kritisches merkmal", "critical",
            "hauptmerkmal", "major",
            "hauptfehler", "major",
            "nebenmerkmal", "minor",
            "nebenfehler", "minor");

    private static final Set<String> YES =
            Set.of("x", "yes", "y", "key", "k", "kc", "ja", "j", "\u2713", "\u2714", "true");
    private static final Set<String> NO = Set.of("no", "n", "nein", "-", "\u2013", "false");

    private final String text;
    private final ResolvedPlan plan;
    private final String source;
    private final Map<String, Where> places;
    private final List<Notice> notices;

    private PlanDraft(String text, ResolvedPlan plan, String source, Map<String, Where> places, List<Notice> notices) {
        this.text = text;
        this.plan = plan;
        this.source = source;
        this.places = places;
        this.notices = notices;
    }

    /**
     * Makes a plan.
     *
     * @param source the table or QIF document
     * @param companions documents to which it refers, where it is QIF
     * @param stated what the user says of part and drawing; goes before what the source says
     * @return the plan
     * @throws InputRefused with everything in the source that makes no plan, and its place
     */
    public static PlanDraft of(Input source, List<Input> companions, Map<PlanFact, String> stated) {
        return of(source, companions, stated, Optional.empty(), Optional.empty());
    }

    /**
     * Makes a plan.
     *
     * @param source the table, the workbook or the QIF document
     * @param companions documents to which it refers, where it is QIF
     * @param stated what the user says of part and drawing; goes before what the source says
     * @param sheet the sheet of a workbook that holds the characteristics; empty to take the only one that can
     * @param mark the decimal mark of the requirements in a table, empty to find it out; the plan that is made has points
     * @return the plan
     * @throws InputRefused with everything in the source that makes no plan, and its place
     */
    public static PlanDraft of(
            Input source,
            List<Input> companions,
            Map<PlanFact, String> stated,
            Optional<String> sheet,
            Optional<DecimalMark> mark) {
        FaultCollector faults = new FaultCollector();
        List<Input> all = new ArrayList<>(companions);
        all.add(0, source);
        QifLibrary library = new QifLibrary(all);
        String word = "";
        PlanTable table = new PlanTable(Map.of(), List.of());
        PlanFigures figures = new PlanFigures(table, Optional.empty(), faults);
        try (InputBytes bytes = new InputBytes(source, PlanFile.LARGEST)) {
            Optional<Fault> readings = OtherFile.readings(
                    source.name(),
                    bytes.beginning(),
                    "a table of what the drawing requires, with the columns number, feature and requirement, or QIF");
            if (readings.isPresent()) {
                throw InputRefused.because(readings.get());
            }
            PlanSource kind = PlanSources.of(bytes.beginning());
            word = kind.word();
            table = kind.read(bytes, library, sheet, faults);
            if (kind.isTable()) {
                PlanTable marked = PlanMark.withPoints(table, mark, faults);
                figures = new PlanFigures(marked, Optional.ofNullable(stated.get(PlanFact.UNIT)), faults);
                table = figures.table();
            }
        } catch (TextRefused refused) {
            faults.refuse(refused.fault());
        } catch (IOException failure) {
            faults.refuse(source.unreadable(failure));
        }
        Writing writing = new Writing(source.name(), table, stated, faults);
        writing.write();
        faults.inFileOrder().throwIfAny();
        try {
            PlanFile file = PlanFile.read(Input.text(source.name(), writing.text()));
            ResolvedPlan resolved = file.resolve();
            figures.compare(resolved, faults);
            faults.inFileOrder().throwIfAny();
            file.notices().forEach(notice -> faults.notice(writing.place(notice.where()), notice.remark()));
            return new PlanDraft(writing.text(), resolved, word, writing.characteristicPlaces(), faults.notices());
        } catch (InputRefused refused) {
            if (!faults.isEmpty()) {
                throw refused;
            }
            FaultCollector placed = new FaultCollector();
            refused.faults().forEach(fault -> placed.refuse(writing.place(fault)));
            throw new InputRefused(placed.inFileOrder().refusals());
        }
    }

    /** The plan file, ready to be written. */
    public String text() {
        return text;
    }

    /** The plan with the limits of every requirement, as they come of the text. */
    public ResolvedPlan plan() {
        return plan;
    }

    /** The kind of the source, for example {@code csv}. */
    public String source() {
        return source;
    }

    /** Where in the source a characteristic stands. */
    public Optional<Where> place(String number) {
        return Optional.ofNullable(places.get(number));
    }

    /** What does not hinder but should be known. */
    public List<Notice> notices() {
        return notices;
    }

    /** Writes the text and remembers what of it came from where. */
    private static final class Writing {
        private final String file;
        private final PlanTable table;
        private final Map<PlanFact, String> stated;
        private final FaultCollector faults;
        private final StringBuilder out = new StringBuilder();
        private final List<Span> spans = new ArrayList<>();
        private final Map<String, Where> characteristics = new LinkedHashMap<>();
        private int line = 1;
        private int lineStart;

        /** A stretch of a line of the text, where it came from, and what was said there. */
        private record Span(int line, int from, int to, Where where, String said) {}

        Writing(String file, PlanTable table, Map<PlanFact, String> stated, FaultCollector faults) {
            this.file = file;
            this.table = table;
            this.stated = stated;
            this.faults = faults;
        }

        String text() {
            return out.toString();
        }

        Map<String, Where> characteristicPlaces() {
            return characteristics;
        }

        void write() {
            out.append("{\n");
            newLine();
            out.append("  \"schema\": \"").append(PlanFile.SCHEMA).append("\",\n");
            newLine();
            out.append("  \"part\": { ");
            member(
                    "number",
                    fact(PlanFact.PART)
                            .orElseGet(() -> assumed(PlanFact.PART, stem(file), " from the name of the file")));
            fact(PlanFact.NAME).ifPresent(found -> next("name", found));
            fact(PlanFact.DRAWING).ifPresent(found -> next("drawing", found));
            next("revision", fact(PlanFact.REVISION).orElseGet(() -> assumed(PlanFact.REVISION, "-", "")));
            fact(PlanFact.HAND).ifPresent(found -> next("hand", found));
            fact(PlanFact.MATERIAL).ifPresent(found -> next("material", found));
            out.append(" },\n");
            newLine();
            out.append("  ");
            member("unit", fact(PlanFact.UNIT).orElseGet(() -> assumed(PlanFact.UNIT, "mm", "")));
            out.append(",\n");
            newLine();
            fact(PlanFact.GENERAL_TOLERANCE).ifPresent(found -> {
                out.append("  ");
                member("generalTolerance", found);
                out.append(",\n");
                newLine();
            });
            out.append("  \"characteristics\": [\n");
            newLine();
            tellNumbers();
            Map<String, Where> numbers = new HashMap<>();
            for (int i = 0; i < table.rows().size(); i++) {
                PlanTable.Row row = table.rows().get(i);
                if (isComplete(row) && isFirst(row, numbers)) {
                    characteristic(row, i + 1 < table.rows().size());
                }
            }
            out.append("  ]\n}\n");
        }

        private void tellNumbers() {
            List<PlanTable.Text> numbers = table.rows().stream()
                    .flatMap(row -> row.text(PlanColumn.NUMBER).stream())
                    .toList();
            if (!numbers.isEmpty()
                    && numbers.stream()
                            .allMatch(number ->
                                    ENDING_IN_ZERO.matcher(number.text()).matches())) {
                faults.noticeOfDraft(
                        numbers.get(0).where(),
                        "all numbers end in a zero behind the mark, such as "
                                + Echo.quoted(numbers.get(0).text())
                                + "; they were taken as they stand, and readings need them so");
            }
        }

        private boolean isComplete(PlanTable.Row row) {
            boolean complete = true;
            for (PlanColumn column : List.of(PlanColumn.NUMBER, PlanColumn.FEATURE, PlanColumn.REQUIREMENT)) {
                if (row.text(column).isEmpty()) {
                    complete = false;
                    faults.refuse(Fault.of(
                            FaultKind.BLANK,
                            row.where(column),
                            table.merged().why(row.where(column)),
                            "nothing",
                            "the " + column.word()
                                    + (column == PlanColumn.NUMBER ? " of the characteristic; each has its own" : "")));
                }
            }
            return complete;
        }

        private boolean isFirst(PlanTable.Row row, Map<String, Where> numbers) {
            PlanTable.Text number = row.text(PlanColumn.NUMBER).orElseThrow();
            if (PlanFigures.isDateOfASpreadsheet(number.text())) {
                faults.refuse(Fault.of(
                        FaultKind.WRONG_TYPE,
                        number.where(),
                        "this is a date; a spreadsheet has perhaps made it of what was typed, such as 1-2",
                        Echo.quoted(number.text()),
                        "the number of the balloon, in a cell that is formatted as text"));
                return false;
            }
            if (SPREADSHEET_POWER.matcher(number.text()).matches()) {
                faults.refuse(Fault.of(
                        FaultKind.WRONG_TYPE,
                        number.where(),
                        "a spreadsheet has perhaps made a power of ten of what was typed",
                        Echo.quoted(number.text()),
                        "the number of the balloon, in a cell that is formatted as text"));
                return false;
            }
            Where first = numbers.putIfAbsent(number.text(), number.where());
            if (first != null) {
                faults.refuse(Fault.of(
                        FaultKind.CONTRADICTION,
                        number.where(),
                        "two characteristics have the number " + Echo.plain(number.text()) + " (the first in "
                                + first.spot() + ")",
                        "",
                        number.isNumber() && number.text().indexOf('.') > 0
                                ? "a number of its own for each characteristic, in a cell that is formatted as text; a spreadsheet"
                                        + " stores the number 10.10 as 10.1"
                                : "a number of its own for each characteristic"));
            }
            return first == null;
        }

        private void characteristic(PlanTable.Row row, boolean more) {
            PlanTable.Text number = row.text(PlanColumn.NUMBER).orElseThrow();
            characteristics.put(number.text(), number.where());
            int start = out.length();
            out.append("    { ");
            member("number", number);
            next("feature", row.text(PlanColumn.FEATURE).orElseThrow());
            next("requirement", row.text(PlanColumn.REQUIREMENT).orElseThrow());
            importance(row).ifPresent(found -> next("class", found));
            for (PlanColumn column : TEXTS) {
                row.text(column).ifPresent(found -> next(column.key(), found));
            }
            row.text(PlanColumn.STUDY).ifPresent(this::study);
            out.append(more ? " },\n" : " }\n");
            spans.add(new Span(line, 0, out.length() - start, row.where(), ""));
            newLine();
        }

        /** The class, where a mark in the column key counts as critical, as KEY of QIF does. */
        private Optional<PlanTable.Text> importance(PlanTable.Row row) {
            Optional<PlanTable.Text> importance = row.text(PlanColumn.CLASS)
                    .map(text -> text.with(CLASSES.getOrDefault(text.text().toLowerCase(Locale.ROOT), text.text())));
            Optional<PlanTable.Text> key = row.text(PlanColumn.KEY)
                    .filter(text -> !NO.contains(text.text().toLowerCase(Locale.ROOT)));
            if (key.isEmpty()) {
                return importance;
            }
            if (!YES.contains(key.get().text().toLowerCase(Locale.ROOT))) {
                faults.refuse(Fault.of(
                        FaultKind.UNKNOWN_WORD,
                        key.get().where(),
                        "whether this is a key characteristic is not known",
                        Echo.quoted(key.get().text()),
                        "x, yes or key, or nothing"));
                return importance;
            }
            if (importance.isPresent() && !importance.get().text().equalsIgnoreCase("critical")) {
                faults.refuse(Fault.of(
                        FaultKind.CONTRADICTION,
                        key.get().where(),
                        "a key characteristic counts as critical, and its class is "
                                + Echo.quoted(importance.get().text()),
                        Echo.quoted(key.get().text()),
                        "the class critical, or no mark"));
            } else if (importance.isEmpty()) {
                faults.noticeOfDraft(key.get().where(), "the key characteristic was taken as critical");
            }
            return Optional.of(key.get().with("critical"));
        }

        private void study(PlanTable.Text text) {
            Optional<StudyWords> study = StudyWords.parse(text.text());
            if (study.isEmpty()) {
                faults.refuse(
                        Fault.of(
                                FaultKind.UNKNOWN_WORD,
                                text.where(),
                                "",
                                Echo.quoted(text.text()),
                                "a chart, and the size of its subgroups where it has any, such as individuals, xbar-r 5 or mean and range of 5"));
                return;
            }
            int from = column();
            out.append(", \"study\": { ");
            member("chart", text.with(study.get().chart()));
            study.get()
                    .subgroup()
                    .ifPresent(size -> out.append(", \"subgroup\": ").append(size));
            study.get()
                    .baseline()
                    .ifPresent(points -> out.append(", \"baseline\": ").append(points));
            out.append(" }");
            spans.add(new Span(line, from, column(), text.where(), ""));
        }

        private Optional<PlanTable.Text> fact(PlanFact fact) {
            PlanTable.Text found = table.facts().get(fact);
            String said = stated.get(fact);
            if (said == null) {
                return Optional.ofNullable(found);
            }
            if (found != null && !found.text().equals(said)) {
                faults.noticeOfDraft(
                        found.where(),
                        "the " + fact.word() + " is " + Echo.quoted(found.text()) + " here and " + Echo.quoted(said)
                                + " by " + fact.option() + ", which was taken");
            }
            return Optional.of(new PlanTable.Text(said, new Where(fact.option(), 0, 0, "")));
        }

        private PlanTable.Text assumed(PlanFact fact, String text, String origin) {
            faults.noticeOfDraft(
                    Where.inFile(file),
                    "no " + fact.word() + " is stated; " + Echo.quoted(text) + " was taken" + origin + ", and "
                            + fact.option() + " says another");
            return new PlanTable.Text(text, Where.inFile(file));
        }

        private static String stem(String file) {
            String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
            int dot = name.lastIndexOf('.');
            String stem = dot > 0 ? name.substring(0, dot) : name;
            return stem.isBlank() || stem.equals("-") ? "not stated" : stem;
        }

        private void next(String key, PlanTable.Text text) {
            out.append(", ");
            member(key, text);
        }

        private void member(String key, PlanTable.Text text) {
            int from = column();
            out.append('"').append(key).append("\": \"");
            int value = column();
            out.append(JsonStringEncoder.getInstance().quoteAsString(text.text()))
                    .append('"');
            spans.add(new Span(line, from, value, text.where(), ""));
            spans.add(new Span(line, value, column(), text.where(), text.text()));
        }

        /** The column of the next character, counted from 1. */
        private int column() {
            return out.length() - lineStart + 1;
        }

        private void newLine() {
            line++;
            lineStart = out.length();
        }

        private Optional<Span> span(Where where) {
            return spans.stream()
                    .filter(span ->
                            span.line() == where.line() && span.from() <= where.column() && where.column() <= span.to())
                    .findFirst();
        }

        /** The place in the source from which a place in the text came. */
        Where place(Where where) {
            return span(where).map(Span::where).orElse(Where.inFile(file));
        }

        /** There is no plan file yet: what would be a key of it stands above the heading, or on the command line. */
        private static String ofSource(String expected) {
            return expected.replace(
                            "\"generalTolerance\": \"ISO 2768-m\" in the plan",
                            "--general-tolerance \"ISO 2768-m\", or the same above the heading of a table")
                    .replace("\"unit\": \"mm\" in the plan", "--unit mm, or the same above the heading of a table");
        }

        /** The fault as one of the source, with a mark under the place in what is said there. */
        Fault place(Fault fault) {
            Optional<Span> span = span(fault.where());
            Fault placed = Fault.of(
                    fault.kind(), place(fault.where()), fault.message(), fault.found(), ofSource(fault.expected()));
            Optional<Span> told = span.filter(found -> !found.said().isEmpty()
                    && fault.where().column() > found.from()
                    && fault.where().column() - found.from() <= found.said().length());
            return told.map(found -> placed.with(new Fault.Excerpt(
                            Echo.plain(found.said()), fault.where().column() - found.from())))
                    .orElse(placed);
        }
    }
}
