package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.MappedRow.Text;
import io.github.firstoff.intake.Mapping.Find;
import io.github.firstoff.intake.Mapping.Item;
import io.github.firstoff.intake.Mapping.Layout;
import io.github.firstoff.intake.Mapping.Place;
import io.github.firstoff.intake.Mapping.Skip;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Readings as a measuring machine writes them in lines of text, understood by a {@link Mapping}. Every line that holds anything is a row,
 * says something of the rows below it, or is skipped because the mapping says so; any other line is refused.
 */
final class MappedReadings implements ReadingSource {
    private static final int PLACES_NAMED = 5;
    private static final int MOST_NAMES_COUNTED = 1000;

    /** Never by itself: only a mapping tells what such lines mean. */
    @Override
    public boolean recognises(Beginning beginning) {
        return false;
    }

    @Override
    public boolean isOfLines() {
        return true;
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        String file = bytes.input().name();
        Mapping mapping = check.sink()
                .settings()
                .mapping()
                .orElseThrow(() -> new IllegalStateException("lines are read by a mapping, and there is none"));
        TextReader text = TextReader.of(bytes);
        Pass pass = new Pass(file, mapping, check);
        LimitedLines lines = new LimitedLines(file, text);
        try {
            StringBuilder line = new StringBuilder();
            long number = 1;
            int next = lines.read();
            boolean afterReturn = false;
            while (next >= 0) {
                boolean end = next == '\n' || next == '\r';
                if (end && !(next == '\n' && afterReturn)) {
                    pass.line(number++, line.toString());
                    line.setLength(0);
                } else if (!end) {
                    line.append((char) next);
                }
                afterReturn = next == '\r';
                next = lines.read();
            }
            pass.line(number, line.toString());
        } finally {
            pass.finish();
        }
        text.notice().ifPresent(notice -> check.sink().notice(notice.where(), notice.remark()));
    }

    /** Texts that together name a characteristic: runs of blanks count as one. */
    static String joined(List<String> texts) {
        return String.join(" ", texts).strip().replaceAll("\\s+", " ");
    }

    /** A count and the first few lines. */
    private static final class Lines {
        private final List<String> first = new ArrayList<>();
        private long count;

        void add(long line) {
            count++;
            if (first.size() < PLACES_NAMED) {
                first.add(Long.toString(line));
            }
        }

        Remark remark() {
            return Remark.of(
                    "notice.lines",
                    "{0|line|lines} {1}",
                    count,
                    String.join(", ", first) + (count > first.size() ? ", …" : ""));
        }
    }

    /** One reading of one file. */
    private static final class Pass {
        private final String file;
        private final Mapping mapping;
        private final RowCheck check;
        private final Rows sink;
        private final MappedLimits limits;
        private final Map<ReadingColumn, Text> heads = new EnumMap<>(ReadingColumn.class);
        private final Map<Skip, Lines> skipped = new LinkedHashMap<>();
        private final Map<String, Lines> others = new LinkedHashMap<>();
        private final Map<Item, Text> record = new EnumMap<>(Item.class);
        private final StringBuilder recordLines = new StringBuilder();
        private long recordLine;
        private int lineOfPiece;

        Pass(String file, Mapping mapping, RowCheck check) {
            this.file = file;
            this.mapping = mapping;
            this.check = check;
            this.sink = check.sink();
            this.limits = new MappedLimits(check);
        }

        void line(long number, String raw) {
            // A form feed begins a page; it stands alone or before the first line of the page.
            String line = raw.indexOf('\f') < 0 ? raw : raw.replace('\f', ' ');
            lineOfPiece++;
            if (line.isBlank()) {
                return;
            }
            for (Skip skip : mapping.skips()) {
                if (skip.matches(line)) {
                    skipped.computeIfAbsent(skip, key -> new Lines()).add(number);
                    Preamble.checkLine(
                            new Where(file, number, 0, ""), line, check.plan().part(), sink);
                    return;
                }
            }
            boolean understood =
                    mapping.piece().filter(line.strip()::startsWith).isPresent();
            if (understood) {
                endRecord();
                heads.clear();
                lineOfPiece = 1;
            }
            understood |= heads(number, line);
            if (mapping.layout() == Layout.LABELS) {
                understood |= labels(number, line);
            }
            if (!understood) {
                row(number, line);
            }
        }

        private boolean heads(long number, String line) {
            boolean any = false;
            for (Map.Entry<ReadingColumn, Find> entry : mapping.heads().entrySet()) {
                Find find = entry.getValue();
                Optional<Text> text = find.label().isPresent()
                        ? behind(
                                find.label().get(), number, line, entry.getKey().word())
                        : find.line() == lineOfPiece
                                ? Optional.of(between(
                                        number,
                                        line,
                                        find.from(),
                                        find.to(),
                                        entry.getKey().word()))
                                : Optional.empty();
                if (text.isPresent()) {
                    any = true;
                    if (entry.getKey() == ReadingColumn.PART) {
                        endRecord();
                    }
                    heads.put(entry.getKey(), text.get());
                }
            }
            return any;
        }

        private Text between(long number, String line, int from, int to, String field) {
            int start = Math.min(from - 1, line.length());
            return new Text(
                    line.substring(start, Math.max(start, Math.min(to, line.length())))
                            .strip(),
                    new Where(file, number, from, field));
        }

        /** What stands behind a label: up to two blanks in a row, a tab, what parts the columns, or the end of the line. */
        private Optional<Text> behind(String label, long number, String line, String field) {
            int at = line.indexOf(label);
            while (at >= 0 && !standsAlone(line, at, label)) {
                at = line.indexOf(label, at + 1);
            }
            if (at < 0) {
                return Optional.empty();
            }
            int from = at + label.length();
            char delimiter = mapping.delimiter().orElse('\t');
            while (from < line.length()
                    && (" \t:=".indexOf(line.charAt(from)) >= 0 || line.charAt(from) == delimiter)) {
                from++;
            }
            int to = from;
            while (to < line.length()
                    && line.charAt(to) != '\t'
                    && line.charAt(to) != delimiter
                    && !line.startsWith("  ", to)) {
                to++;
            }
            return Optional.of(new Text(line.substring(from, to).strip(), new Where(file, number, from + 1, field)));
        }

        private static boolean standsAlone(String line, int at, String label) {
            boolean before = at == 0 || !Character.isLetterOrDigit(line.charAt(at - 1));
            int end = at + label.length();
            char last = label.charAt(label.length() - 1);
            boolean behind = end >= line.length()
                    || !Character.isLetterOrDigit(last)
                    || !Character.isLetterOrDigit(line.charAt(end));
            return before && behind;
        }

        private boolean labels(long number, String line) {
            Map<Item, Text> found = new EnumMap<>(Item.class);
            for (Map.Entry<Item, List<Place>> entry : mapping.rows().entrySet()) {
                List<String> texts = new ArrayList<>();
                Where where = null;
                for (Place place : entry.getValue()) {
                    Optional<Text> text =
                            behind(place.label(), number, line, entry.getKey().key());
                    if (text.isPresent()) {
                        texts.add(text.get().text());
                        where = where == null ? text.get().where() : where;
                    }
                }
                if (where != null) {
                    found.put(entry.getKey(), new Text(String.join(" ", texts), where));
                }
            }
            if (found.isEmpty()) {
                return false;
            }
            boolean again = found.keySet().stream().anyMatch(record::containsKey);
            if (found.containsKey(Item.NAME) || again) {
                endRecord();
            }
            if (record.isEmpty()) {
                recordLine = number;
                recordLines.setLength(0);
            }
            recordLines.append(recordLines.length() == 0 ? "" : " / ").append(line.strip());
            record.putAll(found);
            return true;
        }

        private void endRecord() {
            if (!record.isEmpty()) {
                judge(new MappedRow(
                        new Where(file, recordLine, 0, ""),
                        recordLines.toString(),
                        mapping.marks(),
                        new EnumMap<>(record),
                        heads));
                record.clear();
            }
        }

        private void row(long number, String line) {
            Where where = new Where(file, number, 0, "");
            Map<Item, Text> own = new EnumMap<>(Item.class);
            List<String> fields = mapping.layout() == Layout.DELIMITED ? split(line) : List.of();
            mapping.rows().forEach((item, places) -> {
                List<String> texts = new ArrayList<>();
                for (Place place : places) {
                    if (mapping.layout() == Layout.COLUMNS) {
                        texts.add(between(number, line, place.from(), place.to(), item.key())
                                .text());
                    } else if (mapping.layout() == Layout.DELIMITED && place.from() <= fields.size()) {
                        texts.add(fields.get(place.from() - 1));
                    }
                }
                int column = mapping.layout() == Layout.COLUMNS ? places.get(0).from() : 0;
                own.put(item, new Text(joined(texts), new Where(file, number, column, item.key())));
            });
            judge(new MappedRow(where, line.strip(), mapping.marks(), own, heads));
        }

        private List<String> split(String line) {
            List<String> fields = new ArrayList<>();
            if (mapping.delimiter().isEmpty()) {
                for (String field : line.strip().split("\\s+", -1)) {
                    fields.add(field);
                }
                return fields;
            }
            char delimiter = mapping.delimiter().get();
            int from = 0;
            int at = line.indexOf(delimiter);
            while (at >= 0) {
                fields.add(line.substring(from, at).strip());
                from = at + 1;
                at = line.indexOf(delimiter, from);
            }
            fields.add(line.substring(from).strip());
            return fields;
        }

        private void judge(MappedRow row) {
            sink.begin(row);
            String name = joined(List.of(row.text(Item.NAME)));
            String number = mapping.number(name);
            // A row that is refused, whatever for, says all that is understood of it.
            row.means(number);
            time(row);
            if (mapping.isOther(name)) {
                if (others.size() < MOST_NAMES_COUNTED || others.containsKey(name)) {
                    others.computeIfAbsent(name, key -> new Lines()).add(row.line());
                }
            } else if (isNoRow(row, number)) {
                sink.refuse(Fault.of(
                        FaultKind.SYNTAX,
                        row.where(),
                        "the mapping does not say what this line is",
                        Echo.quoted(row.asItStood()),
                        "a row with a name and a value, a label of the mapping, or an entry under \"skip\""));
            } else {
                read(row, name, number);
            }
            sink.end();
        }

        private boolean isNoRow(MappedRow row, String number) {
            boolean known = check.plan().find(number).isPresent();
            String actual = row.text(Item.ACTUAL);
            boolean value = actual.chars().anyMatch(Character::isDigit)
                    || PassOrFail.parse(actual).isPresent();
            return !known && !value;
        }

        private void read(MappedRow row, String name, String number) {
            Optional<ResolvedCharacteristic> characteristic = characteristic(row, name, number);
            characteristic.ifPresentOrElse(
                    found -> state(row, found), () -> mapping.unit().ifPresent(unit -> row.isIn(unit.word())));
            Optional<RowCheck.Head> head = check.head(row);
            boolean agrees = characteristic.isEmpty() || limits.agree(row, characteristic.get());
            if (check.values().hasOneReading(row) && head.isPresent() && characteristic.isPresent() && agrees) {
                check.values().ofRow(head.get(), characteristic.get(), row);
            }
        }

        private Optional<ResolvedCharacteristic> characteristic(MappedRow row, String name, String number) {
            if (number.isEmpty()
                    || check.leavesOthersAlone()
                    || check.plan().find(number).isPresent()) {
                return check.characteristic(number, row.where(Item.NAME));
            }
            Optional<String> near = Nearest.to(name, mapping.names());
            String said = name.equals(number)
                    ? "neither the plan nor the mapping has such a name"
                    : "the mapping says that this is characteristic " + Echo.plain(number)
                            + ", which the plan does not have";
            sink.refuse(Fault.of(
                    FaultKind.UNKNOWN_CHARACTERISTIC,
                    row.where(Item.NAME),
                    said
                            + near.map(each -> "; perhaps " + Echo.quoted(each) + " is meant")
                                    .orElse(""),
                    Echo.quoted(name),
                    "a name under \"names\", or under \"notInPlan\""));
            return Optional.empty();
        }

        /** The unit of the mapping is that of lengths on the drawing; a roughness or an angle keeps the plan's. */
        private void state(MappedRow row, ResolvedCharacteristic characteristic) {
            Unit planUnit = check.plan().plan().unit();
            boolean length = !characteristic.isAttribute()
                    && planUnit.kind() == Unit.Kind.LENGTH
                    && characteristic.characteristic().requirement().readingUnit(planUnit) == planUnit;
            if (length) {
                mapping.unit().ifPresent(unit -> row.isIn(unit.word()));
            }
        }

        private void time(MappedRow row) {
            String text = row.text(ReadingColumn.TIME);
            if (!text.isEmpty() && mapping.timeForm().isPresent()) {
                // A text of another form stays as it is, and is refused as no time.
                mapping.timeForm().get().iso(text).ifPresent(row::at);
            }
        }

        void finish() {
            endRecord();
            skipped.forEach((skip, lines) -> sink.notice(
                    Where.inFile(file),
                    Remark.of(
                            "notice.lines-skipped",
                            "{0} {0|line was|lines were} skipped because the mapping skips lines that {1} ({2})",
                            lines.count,
                            skip.remark(),
                            lines.remark())));
            others.forEach((name, lines) -> sink.notice(
                    Where.inFile(file),
                    Remark.of(
                            "notice.not-of-the-plan",
                            "{0} is not of the plan, as the mapping says, and was not used ({1})",
                            Echo.quoted(name),
                            lines.remark())));
        }
    }
}
