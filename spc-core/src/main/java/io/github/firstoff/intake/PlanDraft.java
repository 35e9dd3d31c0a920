package io.github.firstoff.intake;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A plan file made from a table or from QIF. The text that would be written is read back by the reader of plan files and resolved before
 * anybody sees it, so that a plan that was made reads and resolves like one that was written by hand; what is wrong with it is told with
 * the place in the source.
 */
public final class PlanDraft {
    /** A chart, then the size of its subgroups, then how many first points set the limits. */
    private static final Pattern DECIMAL_COMMA = Pattern.compile("(?<=\\d),(?=\\d)");

    private static final Pattern STUDY = Pattern.compile(
            "(?i)([a-z][a-z\\-]*)(?:\\s*[,;(]?\\s*(?:n\\s*=\\s*|subgroup\\s*)?(\\d{1,4})\\s*\\)?)?(?:\\s*[,;]?\\s*baseline\\s*(\\d{1,7}))?");

    private static final List<PlanColumn> TEXTS = List.of(
            PlanColumn.CLASS,
            PlanColumn.GAUGE,
            PlanColumn.FORM,
            PlanColumn.SIZE_FEATURE,
            PlanColumn.TARGET,
            PlanColumn.INSPECT);

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
        return of(source, companions, stated, Optional.empty(), DecimalMark.POINT);
    }

    /**
     * Makes a plan.
     *
     * @param source the table, the workbook or the QIF document
     * @param companions documents to which it refers, where it is QIF
     * @param stated what the user says of part and drawing; goes before what the source says
     * @param sheet the sheet of a workbook that holds the characteristics; empty to take the only one that can
     * @param mark the decimal mark of the requirements in a table; the plan that is made has points
     * @return the plan
     * @throws InputRefused with everything in the source that makes no plan, and its place
     */
    public static PlanDraft of(
            Input source,
            List<Input> companions,
            Map<PlanFact, String> stated,
            Optional<String> sheet,
            DecimalMark mark) {
        FaultCollector faults = new FaultCollector();
        List<Input> all = new ArrayList<>(companions);
        all.add(0, source);
        QifLibrary library = new QifLibrary(all);
        String word = "";
        PlanTable table = new PlanTable(Map.of(), List.of());
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
        } catch (TextRefused refused) {
            faults.refuse(refused.fault());
        } catch (IOException failure) {
            faults.refuse(source.unreadable(failure));
        }
        Writing writing = new Writing(source.name(), table, stated, mark, faults);
        writing.write();
        faults.inFileOrder().throwIfAny();
        try {
            PlanFile file = PlanFile.read(Input.text(source.name(), writing.text()));
            ResolvedPlan resolved = file.resolve();
            file.notices().forEach(notice -> faults.notice(writing.place(notice.where()), notice.remark()));
            return new PlanDraft(writing.text(), resolved, word, writing.characteristicPlaces(), faults.notices());
        } catch (InputRefused refused) {
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
        private final DecimalMark mark;
        private final FaultCollector faults;
        private final StringBuilder out = new StringBuilder();
        private final List<Span> spans = new ArrayList<>();
        private final Map<String, Where> characteristics = new LinkedHashMap<>();
        private int line = 1;
        private int lineStart;

        /** A stretch of a line of the text, where it came from, and what was said there. */
        private record Span(int line, int from, int to, Where where, String said) {}

        Writing(String file, PlanTable table, Map<PlanFact, String> stated, DecimalMark mark, FaultCollector faults) {
            this.mark = mark;
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
            Map<String, Where> numbers = new HashMap<>();
            for (int i = 0; i < table.rows().size(); i++) {
                PlanTable.Row row = table.rows().get(i);
                if (isComplete(row) && isFirst(row, numbers)) {
                    characteristic(row, i + 1 < table.rows().size());
                }
            }
            out.append("  ]\n}\n");
        }

        private boolean isComplete(PlanTable.Row row) {
            boolean complete = true;
            for (PlanColumn column : List.of(PlanColumn.NUMBER, PlanColumn.FEATURE, PlanColumn.REQUIREMENT)) {
                if (row.text(column).isEmpty()) {
                    complete = false;
                    faults.refuse(Fault.of(FaultKind.BLANK, row.where(column), "", "nothing", "the " + column.word()));
                }
            }
            return complete;
        }

        private boolean isFirst(PlanTable.Row row, Map<String, Where> numbers) {
            PlanTable.Text number = row.text(PlanColumn.NUMBER).orElseThrow();
            Where first = numbers.putIfAbsent(number.text(), number.where());
            if (first != null) {
                faults.refuse(Fault.of(
                        FaultKind.CONTRADICTION,
                        number.where(),
                        "two characteristics have the number " + Echo.plain(number.text()) + " (the first in "
                                + first.spot() + ")",
                        "",
                        "a number of its own for each characteristic"));
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
            next("requirement", withPoints(row.text(PlanColumn.REQUIREMENT).orElseThrow()));
            for (PlanColumn column : TEXTS) {
                row.text(column)
                        .ifPresent(
                                found -> next(column.key(), column == PlanColumn.TARGET ? withPoints(found) : found));
            }
            row.text(PlanColumn.STUDY).ifPresent(this::study);
            out.append(more ? " },\n" : " }\n");
            spans.add(new Span(line, 0, out.length() - start, row.where(), ""));
            newLine();
        }

        /** The text with a decimal point where the user says that a comma stands for one; words behind a colon stay as they are. */
        private PlanTable.Text withPoints(PlanTable.Text text) {
            if (mark == DecimalMark.POINT) {
                return text;
            }
            int colon = text.text().indexOf(':');
            int end = colon < 0 ? text.text().length() : colon;
            String numbers = text.text().substring(0, end);
            return new PlanTable.Text(
                    DECIMAL_COMMA.matcher(numbers).replaceAll(".") + text.text().substring(end), text.where());
        }

        private void study(PlanTable.Text text) {
            Matcher matcher = STUDY.matcher(text.text());
            if (!matcher.matches()) {
                faults.refuse(Fault.of(
                        FaultKind.UNKNOWN_WORD,
                        text.where(),
                        "",
                        Echo.quoted(text.text()),
                        "a chart, and the size of its subgroups where it has any, such as xbar-r 5"));
                return;
            }
            int from = column();
            out.append(", \"study\": { \"chart\": \"").append(matcher.group(1)).append('"');
            if (matcher.group(2) != null) {
                out.append(", \"subgroup\": ").append(Integer.parseInt(matcher.group(2)));
            }
            if (matcher.group(3) != null) {
                out.append(", \"baseline\": ").append(Integer.parseInt(matcher.group(3)));
            }
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

        /** The fault as one of the source, with a mark under the place in what is said there. */
        Fault place(Fault fault) {
            Optional<Span> span = span(fault.where());
            boolean comma = mark == DecimalMark.POINT
                    && DECIMAL_COMMA.matcher(fault.found()).find();
            Fault placed = Fault.of(
                    fault.kind(),
                    place(fault.where()),
                    fault.message(),
                    fault.found(),
                    fault.expected() + (comma ? ", or --decimal-mark comma" : ""));
            Optional<Span> told = span.filter(found -> !found.said().isEmpty()
                    && fault.where().column() > found.from()
                    && fault.where().column() - found.from() <= found.said().length());
            return told.map(found -> placed.with(new Fault.Excerpt(
                            Echo.plain(found.said()), fault.where().column() - found.from())))
                    .orElse(placed);
        }
    }
}
