package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Holds what one row says against the plan and makes readings of it. A row or cell with any fault hands nothing on, but all its
 * faults are named.
 */
final class RowCheck {
    /** Rows that tables put above or below the pieces: a mean or a limit that passes for a piece would be judged as one. */
    private static final Pattern OF_COLUMNS = Pattern.compile("(?iu)(?:"
            + "(?:grand|sub)?[ -]?total|sum|count|number of .*|qty|quantity|results?"
            + "|(?:mean|average|avg\\.?|median|min(?:imum)?\\.?|max(?:imum)?\\.?|range|nominal|target|limit)(?: values?)?"
            + "|(?:std|st)\\.?[ _-]?dev\\.?|standard deviation|sigma|variance|[cp][pm]k?|x[ -]?bar|x[\u0304\u0305\u033F]|[\u00D8\u2300]"
            + "|(?:upper|lower|up|low|\\+|-|\u2212|\\+/-|\u00B1|plus|minus)?[ _-]*(?:spec(?:ification)?\\.?[ _-]*)?"
            + "(?:tol(?:erance)?|limit|dev(?:iation)?|spec(?:ification)?)\\.?[ _-]*(?:[+\u2212-]|\u00B1|upper|lower|plus|minus)?"
            + "|usl|lsl|ucl|lcl|units?"
            + "|mittelwert|mittel|durchschnitt|summe|zwischensumme|gesamt(?:summe)?|anzahl|spannweite|standardabweichung|stabw\\.?"
            + "|streuung|kleinstwert|gr\u00F6\u00DFtwert|soll(?:wert|ma\u00DF)?|nenn(?:wert|ma(?:\u00DF|ss))|toleranz(?:grenze)?|abweichung"
            + "|(?:ober|unter|eingriffs|warn|toleranz)grenze|(?:obere|untere|oberes|unteres)[ s] ?\\S*(?:grenze|grenzma\u00DF|abma\u00DF)"
            + "|[ou][stew]g|einheit)(?:\\s*[:=])?");

    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_NOTE = 2000;
    private static final int SIZE_PLACES = 6;
    private static final int SIZE_DIGITS = 9;
    private static final BigDecimal COLDEST = new BigDecimal("-50");
    private static final BigDecimal HOTTEST = new BigDecimal("200");

    private final ResolvedPlan plan;
    private final Rows sink;
    private final Optional<Leeway> leeway;
    private final boolean planListsGauges;
    private final List<String> gauges;
    private final List<String> numbers;
    private final ValueCheck values;
    private final QifLibrary library;
    private boolean readingsElsewhere;

    private String file = "";
    private Timestamp.@Nullable Kind timeKind;
    private String timesFrom = "";
    private String firstWithoutTime = "";
    private String firstWithTime = "";
    private boolean unlistedGaugeNoticed;
    private boolean uncorrectedNoticed;

    private final Map<ReadingColumn, Optional<String>> lastTexts = new EnumMap<>(ReadingColumn.class);
    private Optional<LocalDateTime> lastTime = Optional.empty();
    private boolean rowIsSound;

    RowCheck(ResolvedPlan plan, Rows sink, QifLibrary library) {
        this(plan, sink, library, Optional.empty());
    }

    /** With leeway, checks rows that say more than the plan asks. */
    RowCheck(ResolvedPlan plan, Rows sink, QifLibrary library, Optional<Leeway> leeway) {
        this.leeway = leeway;
        this.plan = plan;
        this.library = library;
        this.sink = sink;
        this.values = new ValueCheck(plan, sink);
        this.planListsGauges = !plan.plan().gauges().isEmpty();
        this.gauges = plan.plan().gauges().stream().map(gauge -> gauge.id()).toList();
        this.numbers = plan.characteristics().stream()
                .map(ResolvedCharacteristic::number)
                .toList();
    }

    /** Begins another file: whether rows have times is a question of each file, of which kind they are one of all. */
    void begin(String name) {
        file = name;
        readingsElsewhere = false;
        firstWithoutTime = "";
        firstWithTime = "";
    }

    ResolvedPlan plan() {
        return plan;
    }

    /** Keeps account of the rows and takes what is refused. */
    Rows sink() {
        return sink;
    }

    /** Whether characteristics that the plan does not have are left alone. */
    boolean leavesOthersAlone() {
        return leeway.isPresent();
    }

    ValueCheck values() {
        return values;
    }

    /** The QIF documents among all inputs, for references from one to another. */
    QifLibrary library() {
        return library;
    }

    /** Says that the file holds no readings and need not: it is there for others that refer to it. */
    void expectReadingsElsewhere() {
        readingsElsewhere = true;
    }

    /** Whether the file is only there for others that refer to it. */
    boolean expectsReadingsElsewhere() {
        return readingsElsewhere;
    }

    /**
     * What a row says apart from its value.
     *
     * @param part the piece
     * @param unit the unit that the row states
     * @param context the rest
     */
    record Head(String part, Optional<Unit> unit, Reading.Context context) {}

    /** Checks everything of a row but characteristic and value; empty if any of it is at fault. */
    Optional<Head> head(Row row) {
        rowIsSound = true;
        checkIdentity(row);
        String part = name(row, ReadingColumn.PART, LONGEST_NAME);
        if (part.isEmpty()) {
            refuse(
                    FaultKind.BLANK,
                    row.where(ReadingColumn.PART),
                    "",
                    "nothing",
                    "the serial number or name of the piece");
        }
        if (isHeading(part)) {
            refuse(
                    FaultKind.WRONG_READING,
                    row.where(ReadingColumn.PART),
                    "this is a heading once more, and no piece",
                    Echo.quoted(part),
                    "one heading and pieces under it; another table stands in a file or sheet of its own");
        } else if (namesNoPiece(part)) {
            refuse(
                    FaultKind.WRONG_READING,
                    row.where(ReadingColumn.PART),
                    "this names no piece but says what the row holds of its columns",
                    Echo.quoted(part),
                    "pieces alone; leave such a " + row.noun() + " out, or name the piece otherwise");
        }
        Optional<LocalDateTime> time = time(row);
        Optional<String> gauge = gauge(row);
        Optional<Unit> unit = unit(row);
        Optional<BigDecimal> temperature = temperature(row);
        Reading.Production production = production(row);
        Reading.Context context = new Reading.Context(
                time,
                optional(row, ReadingColumn.SUBGROUP),
                optional(row, ReadingColumn.OPERATOR),
                gauge,
                optional(row, ReadingColumn.MACHINE),
                temperature,
                optional(row, ReadingColumn.SETTING),
                remembered(ReadingColumn.NOTE, row.text(ReadingColumn.NOTE), LONGEST_NOTE, row),
                production,
                new Reading.Origin(file, row.line()));
        return rowIsSound ? Optional.of(new Head(part, unit, context)) : Optional.empty();
    }

    /** Whether a text in the column of pieces is what tables call a row about their columns, such as a mean. */
    static boolean namesNoPiece(String text) {
        return isHeading(text) || OF_COLUMNS.matcher(text).matches();
    }

    private static boolean isHeading(String text) {
        return ReadingColumn.named(text)
                .filter(column -> column == ReadingColumn.PART)
                .isPresent();
    }

    private Reading.Production production(Row row) {
        Optional<String> tool = optional(row, ReadingColumn.TOOL);
        Optional<String> phase = optional(row, ReadingColumn.PHASE);
        Optional<BigDecimal> offset = number(row, ReadingColumn.OFFSET);
        Optional<BigDecimal> size = size(row);
        if (tool.isEmpty() && phase.isEmpty() && offset.isEmpty() && size.isEmpty()) {
            return Reading.Production.NOT_STATED;
        }
        return new Reading.Production(tool, phase, offset, size);
    }

    private Optional<BigDecimal> size(Row row) {
        Optional<BigDecimal> size = number(row, ReadingColumn.SIZE);
        if (size.isEmpty()) {
            return size;
        }
        BigDecimal stated = size.get();
        boolean possible = stated.signum() > 0
                && stated.stripTrailingZeros().scale() <= SIZE_PLACES
                && stated.precision() - stated.scale() <= SIZE_DIGITS;
        if (!possible) {
            refuse(
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    row.where(ReadingColumn.SIZE),
                    "",
                    Echo.quoted(row.text(ReadingColumn.SIZE)),
                    "a size above 0, below a thousand million, with at most " + SIZE_PLACES + " decimal places");
            return Optional.empty();
        }
        return size;
    }

    private Optional<BigDecimal> number(Row row, ReadingColumn column) {
        Cell cell = row.cell(column);
        if (cell.text().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(cell.number());
        } catch (NumberRefused refused) {
            refuse(refused.kind(), cell.where(), refused.message(), Echo.quoted(cell.text()), refused.expected());
            return Optional.empty();
        }
    }

    private Optional<BigDecimal> temperature(Row row) {
        Optional<BigDecimal> temperature = number(row, ReadingColumn.TEMPERATURE);
        if (temperature.isEmpty()) {
            return temperature;
        }
        Where where = row.where(ReadingColumn.TEMPERATURE);
        boolean plausible =
                temperature.get().compareTo(COLDEST) >= 0 && temperature.get().compareTo(HOTTEST) <= 0;
        if (!plausible) {
            refuse(
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    where,
                    "no piece is measured at that temperature",
                    Echo.quoted(row.text(ReadingColumn.TEMPERATURE)),
                    "degrees Celsius from -50 to 200");
            return Optional.empty();
        }
        boolean away = temperature.get().compareTo(Thermal.REFERENCE) != 0;
        if (away && plan.plan().thermal().isEmpty() && !uncorrectedNoticed) {
            uncorrectedNoticed = true;
            sink.notice(
                    where,
                    leavesOthersAlone()
                            ? Remark.of(
                                    "notice.temperature-taken",
                                    "this reading and others away from 20 °C are taken as they are")
                            : Remark.of(
                                    "notice.temperature-uncorrected",
                                    "the plan has no {0}, so this reading and others away from 20 °C are not corrected",
                                    "\"temperature\""));
        }
        return temperature;
    }

    private Optional<String> optional(Row row, ReadingColumn column) {
        return remembered(column, row.text(column), LONGEST_NAME, row);
    }

    /** Operators, gauges and machines repeat from row to row: one text is kept for all of them, and is looked at once. */
    private Optional<String> remembered(ReadingColumn column, String text, int longest, Row row) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<String> before = lastTexts.getOrDefault(column, Optional.empty());
        if (before.isPresent() && before.get().equals(text)) {
            return before;
        }
        boolean soundSoFar = rowIsSound;
        rowIsSound = true;
        Optional<String> checked = Optional.of(name(row, column, longest));
        if (rowIsSound) {
            lastTexts.put(column, checked);
        }
        rowIsSound &= soundSoFar;
        return checked;
    }

    private String name(Row row, ReadingColumn column, int longest) {
        String text = row.text(column);
        if (text.length() > longest) {
            refuse(
                    FaultKind.TOO_LARGE,
                    row.where(column),
                    "",
                    "a text of " + text.length() + " characters",
                    "at most " + longest + " characters");
        }
        int harmful = Echo.firstHarmful(text);
        if (harmful >= 0) {
            char c = text.charAt(harmful);
            boolean lineEnd = c == '\n' || c == '\r';
            refuse(
                    FaultKind.UNREADABLE_TEXT,
                    row.where(column),
                    lineEnd && row.where(column).sheet().isEmpty() ? "a quotation mark is perhaps missing" : "",
                    (lineEnd ? "the end of a line" : Echo.character(c)) + " in " + Echo.quoted(text),
                    "one line of text without control characters");
        }
        return text;
    }

    private void refuse(FaultKind kind, Where where, String message, String found, String expected) {
        rowIsSound = false;
        sink.refuse(Fault.of(kind, where, message, found, expected));
    }

    private void checkIdentity(Row row) {
        String number = row.text(ReadingColumn.PART_NUMBER);
        boolean partStated = leeway.isEmpty() || !plan.part().number().isEmpty();
        if (partStated && !number.isEmpty() && !number.equals(plan.part().number())) {
            boolean counterpart =
                    plan.part().counterpart().filter(number::equals).isPresent();
            refuse(
                    FaultKind.OTHER_PART,
                    row.where(ReadingColumn.PART_NUMBER),
                    counterpart
                            ? "the readings are of the part of the other hand"
                            : "the readings are of another part than the plan",
                    Echo.quoted(number),
                    Echo.quoted(plan.part().number()));
        }
        String revision = row.text(ReadingColumn.REVISION);
        if (leeway.isEmpty()
                && !revision.isEmpty()
                && !revision.equals(plan.part().revision())) {
            refuse(
                    FaultKind.OTHER_PART,
                    row.where(ReadingColumn.REVISION),
                    "the readings are of another revision than the plan",
                    Echo.quoted(revision),
                    Echo.quoted(plan.part().revision()));
        }
        checkHand(row);
    }

    private void checkHand(Row row) {
        String word = row.text(ReadingColumn.HAND);
        if (word.isEmpty()) {
            return;
        }
        Where where = row.where(ReadingColumn.HAND);
        Optional<Hand> hand = Hand.parse(word);
        if (hand.isEmpty()) {
            refuse(FaultKind.UNKNOWN_WORD, where, "", Echo.quoted(word), "port, starboard, left or right");
        } else if (plan.part().hand().isEmpty() && leeway.isPresent()) {
            if (!leeway.get().passes(hand.get())) {
                refuse(
                        FaultKind.OTHER_PART,
                        where,
                        "the readings mix both hands",
                        Echo.quoted(word),
                        leeway.get().hand().orElseThrow().word() + ", as in the rows before");
            }
        } else if (plan.part().hand().isEmpty()) {
            refuse(
                    FaultKind.OTHER_PART,
                    where,
                    "the readings state a hand and the plan states none",
                    Echo.quoted(word),
                    "nothing, or a \"hand\" in the plan");
        } else if (plan.part().hand().get().isLeft() != hand.get().isLeft()) {
            refuse(
                    FaultKind.OTHER_PART,
                    where,
                    "the readings are of the other hand than the plan",
                    Echo.quoted(word),
                    plan.part().hand().get().word());
        }
    }

    private Optional<LocalDateTime> time(Row row) {
        String text = row.text(ReadingColumn.TIME);
        if (text.isEmpty()) {
            if (firstWithoutTime.isEmpty()) {
                firstWithoutTime = row.where().spot();
            }
            if (!firstWithTime.isEmpty()) {
                refuse(
                        FaultKind.UNEVEN_TIMES,
                        row.where(ReadingColumn.TIME),
                        "other rows state a time (the first in " + firstWithTime + "), so the order is not known",
                        "nothing",
                        "a time in every row, or in none");
            }
            return Optional.empty();
        }
        Where where = row.where(ReadingColumn.TIME);
        if (firstWithTime.isEmpty()) {
            firstWithTime = row.where().spot();
            if (!firstWithoutTime.isEmpty()) {
                refuse(
                        FaultKind.UNEVEN_TIMES,
                        where,
                        "earlier rows state no time (the first in " + firstWithoutTime + "), so the order is not known",
                        Echo.quoted(text),
                        "a time in every row, or in none");
            }
        }
        Optional<Timestamp> time = Timestamp.parse(text);
        if (time.isEmpty()) {
            refuse(FaultKind.NOT_A_DATE, where, "", Echo.quoted(text), Timestamp.EXPECTED);
            return Optional.empty();
        }
        if (timeKind == null) {
            timeKind = time.get().kind();
            timesFrom = row.where(ReadingColumn.TIME).sheet().isEmpty()
                    ? file + ":" + row.line()
                    : row.where().toString();
        } else if (timeKind != time.get().kind()) {
            refuse(
                    FaultKind.UNEVEN_TIMES,
                    where,
                    "times of two kinds cannot be put in order",
                    Echo.quoted(text),
                    timeKind.words() + " as in " + Echo.plain(timesFrom));
        }
        return shared(time.get().time());
    }

    /** Many readings share a time, and more share a day: one object serves all that follow each other. */
    private Optional<LocalDateTime> shared(LocalDateTime time) {
        if (lastTime.isPresent()) {
            LocalDateTime last = lastTime.get();
            if (last.equals(time)) {
                return lastTime;
            }
            if (last.toLocalDate().equals(time.toLocalDate())) {
                lastTime = Optional.of(LocalDateTime.of(last.toLocalDate(), time.toLocalTime()));
                return lastTime;
            }
        }
        lastTime = Optional.of(time);
        return lastTime;
    }

    private Optional<String> gauge(Row row) {
        Optional<String> gauge = optional(row, ReadingColumn.GAUGE);
        if (gauge.isEmpty() || plan.gauge(gauge.get()).isPresent()) {
            return gauge;
        }
        Where where = row.where(ReadingColumn.GAUGE);
        if (planListsGauges) {
            refuse(
                    FaultKind.UNKNOWN_GAUGE,
                    where,
                    Nearest.to(gauge.get(), gauges)
                            .map(near -> "the plan does not list this gauge; perhaps " + Echo.plain(near) + " is meant")
                            .orElse("the plan does not list this gauge"),
                    Echo.quoted(gauge.get()),
                    Words.oneOf(gauges));
        } else if (!unlistedGaugeNoticed && !leavesOthersAlone()) {
            unlistedGaugeNoticed = true;
            sink.notice(
                    where,
                    Remark.of(
                            "notice.no-gauges",
                            "the plan lists no gauges, so nothing is known of gauge {0} or any other that the file names",
                            Echo.plain(gauge.get())));
        }
        return gauge;
    }

    private Optional<Unit> unit(Row row) {
        String word = row.text(ReadingColumn.UNIT);
        if (word.isEmpty()) {
            return Optional.empty();
        }
        Optional<Unit> unit = Unit.parse(word);
        if (unit.isEmpty()) {
            refuse(
                    FaultKind.WRONG_UNIT,
                    row.where(ReadingColumn.UNIT),
                    "",
                    Echo.quoted(word),
                    "a unit such as mm, inch, µm or degree");
        }
        return unit;
    }

    /** The characteristic of that number; a fault if the plan has none. */
    Optional<ResolvedCharacteristic> characteristic(String number, Where where) {
        if (number.isEmpty()) {
            sink.refuse(Fault.of(FaultKind.BLANK, where, "", "nothing", "the number of a characteristic"));
            return Optional.empty();
        }
        Optional<ResolvedCharacteristic> found = plan.find(number);
        if (found.isEmpty() && leeway.isPresent()) {
            leeway.get().passes(number);
            return found;
        }
        if (found.isEmpty()) {
            Optional<String> near = nearest(number);
            sink.refuse(Fault.of(
                    FaultKind.UNKNOWN_CHARACTERISTIC,
                    where,
                    "the plan has no such characteristic"
                            + near.map(meant -> "; perhaps " + Echo.plain(meant) + " is meant")
                                    .orElse(""),
                    Echo.quoted(number),
                    Words.oneOf(numbers)));
        }
        return found;
    }

    /** Numbers are short, so that one letter is near; among several equally near none is named. */
    private Optional<String> nearest(String number) {
        String like =
                number.replace('O', '0').replace('o', '0').replace('l', '1').replace('I', '1');
        if (plan.find(like).isPresent()) {
            return Optional.of(like);
        }
        List<String> near = numbers.stream()
                .filter(known -> Nearest.isOneStep(known, number))
                .toList();
        return near.size() == 1 ? Optional.of(near.get(0)) : Optional.empty();
    }
}
