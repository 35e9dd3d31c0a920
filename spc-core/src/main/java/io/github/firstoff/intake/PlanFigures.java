package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Requirements that a table states in parts, as nominal and deviations or as limits, put together as a drawing prints them (ISO 129-1).
 * All figures are exact decimals. A deviation without a sign, a deviation that may be a limit and a tolerance without sides are asked
 * about, never guessed. Whatever the parts come to is held against the limits of the finished plan.
 */
final class PlanFigures {
    private static final Pattern SIZE = Pattern.compile(
            "(?i)((?:\\d{1,4}\\s*[x×]\\s*)?(?:SØ|SR|Ø|⌀|∅|Φ|dia\\.?|R|C|□|sq\\.?)?)\\s*(-?(?:\\d+\\.?\\d*|\\.\\d+))\\s*(°|deg|[µμu]?in|[µμu]?m{1,2})?");
    private static final Pattern FIGURE =
            Pattern.compile("(\\+/-|\\+-|[±+\\-\u2212])?\\s*(\\d+\\.?\\d*|\\.\\d+)\\s*°?");
    /** A date that nobody writes for anything else. */
    private static final Pattern SURE_DATE = Pattern.compile(
            "(?iu)\\d{4}-\\d{1,2}-\\d{1,2}(?:[T ].*)?|\\d{1,2}[-. ]{1,2}(?:M)\\p{L}*\\.?(?:[- ]\\d{2,4})?|(?:M)\\p{L}*[-. ]{1,2}\\d{2,4}"
                    .replace("M", "jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz]"));

    private static final Pattern DATE = Pattern.compile("\\d{1,2}[./]\\d{1,2}[./]\\d{2,4}");
    private static final List<String> NOTHING = List.of("-", "\u2013", "\u2014");
    private static final int LONGEST = 40;
    private static final BigDecimal HALF = new BigDecimal("0.5");

    /**
     * What columns beside the requirement say of its limits.
     *
     * @param lower the lower limit, if any column says it
     * @param upper the upper limit, if any column says it
     * @param unit the unit of the row, if it says one
     * @param where where they stand
     */
    private record Stated(Optional<BigDecimal> lower, Optional<BigDecimal> upper, Optional<Unit> unit, Where where) {}

    /** A size alone, without any tolerance. */
    private record Size(String prefix, BigDecimal value, Optional<Unit> unit) {}

    /** A number with its sign as written. */
    private record Figure(String sign, BigDecimal magnitude) {
        BigDecimal value() {
            return sign.equals("-") ? magnitude.negate() : magnitude;
        }

        boolean isSymmetric() {
            return sign.equals("±");
        }
    }

    /** Upper and lower deviation. */
    private record Deviations(BigDecimal upper, BigDecimal lower) {}

    private final PlanTable table;
    private final Unit planUnit;
    private final FaultCollector faults;
    private final Map<String, Stated> stated = new HashMap<>();

    /**
     * The figures of a table.
     *
     * @param table the table, with points as decimal marks
     * @param unitByUser the unit that the user states, which goes first
     */
    PlanFigures(PlanTable table, Optional<String> unitByUser, FaultCollector faults) {
        this.faults = faults;
        this.table = withUnit(table, unitByUser.isPresent());
        this.planUnit = unitByUser
                .or(() -> Optional.ofNullable(this.table.facts().get(PlanFact.UNIT))
                        .map(PlanTable.Text::text))
                .flatMap(PlanColumn::unit)
                .orElse(Unit.MILLIMETRE);
    }

    /** Where nobody states a unit of the plan and all lengths of the column unit have one, that is it. */
    private PlanTable withUnit(PlanTable read, boolean byUser) {
        if (byUser || read.facts().containsKey(PlanFact.UNIT)) {
            return read;
        }
        Map<Unit, PlanTable.Text> found = new EnumMap<>(Unit.class);
        for (PlanTable.Row row : read.rows()) {
            row.text(PlanColumn.UNIT)
                    .ifPresent(text -> PlanColumn.unit(text.text())
                            .filter(unit -> unit == Unit.MILLIMETRE || unit == Unit.INCH)
                            .ifPresent(unit -> found.putIfAbsent(unit, text)));
        }
        if (found.size() != 1) {
            return read;
        }
        Map.Entry<Unit, PlanTable.Text> only = found.entrySet().iterator().next();
        String word = only.getKey() == Unit.INCH ? "inch" : "mm";
        faults.noticeOfDraft(
                only.getValue().where(),
                "all lengths with a unit are in " + word + ", which was taken as the unit of the plan");
        return read.with(PlanFact.UNIT, new PlanTable.Text(word, only.getValue().where()));
    }

    /** The table with a requirement in each row whose parts make one; a row whose parts do not is told of and left out. */
    PlanTable table() {
        List<PlanTable.Row> rows = new ArrayList<>();
        for (PlanTable.Row row : table.rows()) {
            requirement(row).ifPresent(rows::add);
        }
        return table.with(rows);
    }

    private Optional<PlanTable.Row> requirement(PlanTable.Row row) {
        long before = faults.count();
        for (PlanColumn column : List.of(PlanColumn.REQUIREMENT, PlanColumn.NOMINAL, PlanColumn.TOLERANCE)) {
            row.text(column).filter(text -> isDate(text.text())).ifPresent(this::refuseDate);
        }
        Optional<Unit> unit = unit(row);
        if (faults.count() > before) {
            return Optional.empty();
        }
        Optional<PlanTable.Text> written = row.text(PlanColumn.REQUIREMENT);
        Optional<PlanTable.Text> nominal = said(row, PlanColumn.NOMINAL);
        Optional<Size> size = nominal.or(() -> written).flatMap(text -> size(text.text()));
        if (written.isPresent() && nominal.isPresent() && isOther(written.get(), nominal.get())) {
            return Optional.empty();
        }
        boolean bare = written.isEmpty() || size(written.get().text()).isPresent();
        Optional<Size> from = size.or(() -> written.flatMap(text -> leading(text.text())));
        Parts parts = new Parts(row, size, from, unit);
        Optional<String> composed = parts.requirement();
        if (faults.count() > before) {
            return Optional.empty();
        }
        Where place = nominal.or(() -> written).map(PlanTable.Text::where).orElseGet(parts::where);
        row.text(PlanColumn.NUMBER)
                .ifPresent(number -> stated.put(number.text(), new Stated(parts.lower, parts.upper, unit, place)));
        if (bare && composed.isPresent()) {
            return Optional.of(row.with(PlanColumn.REQUIREMENT, new PlanTable.Text(composed.get(), place)));
        }
        if (written.isEmpty() && nominal.isPresent()) {
            return Optional.of(row.with(PlanColumn.REQUIREMENT, nominal.get()));
        }
        return Optional.of(row);
    }

    private boolean isOther(PlanTable.Text written, PlanTable.Text nominal) {
        Optional<Size> one = size(written.text());
        Optional<Size> other = size(nominal.text());
        boolean differ = one.isPresent()
                && other.isPresent()
                && one.get().value().compareTo(other.get().value()) != 0;
        if (differ) {
            faults.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    nominal.where(),
                    "the nominal is not the size of the requirement in "
                            + written.where().spot(),
                    Echo.quoted(nominal.text()),
                    Echo.quoted(written.text())));
        }
        return differ;
    }

    /** Whether a text is a date that nobody writes for the number of a balloon or a size, such as {@code 2026-10-12} or {@code 12-Oct}. */
    static boolean isDateOfASpreadsheet(String text) {
        return SURE_DATE.matcher(text).matches();
    }

    private static boolean isDate(String text) {
        return isDateOfASpreadsheet(text) || DATE.matcher(text).matches();
    }

    private void refuseDate(PlanTable.Text text) {
        faults.refuse(Fault.of(
                FaultKind.WRONG_TYPE,
                text.where(),
                "this is a date; a spreadsheet has perhaps made it of what was typed, such as 10-12",
                Echo.quoted(text.text()),
                "the requirement as the drawing prints it, in a cell that is formatted as text"));
    }

    private Optional<Unit> unit(PlanTable.Row row) {
        Optional<PlanTable.Text> text = said(row, PlanColumn.UNIT);
        Optional<Unit> unit = text.flatMap(said -> PlanColumn.unit(said.text()));
        if (text.isPresent() && unit.isEmpty()) {
            faults.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    text.get().where(),
                    "",
                    Echo.quoted(text.get().text()),
                    "mm, inch, µm, µin or °, or nothing"));
        }
        return unit;
    }

    /** What a cell says; a dash alone says nothing. */
    private static Optional<PlanTable.Text> said(PlanTable.Row row, PlanColumn column) {
        return row.text(column).filter(text -> !NOTHING.contains(text.text()));
    }

    private static Optional<Size> size(String text) {
        Matcher matcher = SIZE.matcher(text);
        if (text.length() > LONGEST || !matcher.matches()) {
            return Optional.empty();
        }
        Optional<Unit> unit = Optional.ofNullable(matcher.group(3)).flatMap(PlanColumn::unit);
        if (matcher.group(3) != null && unit.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Size(matcher.group(1), new BigDecimal(matcher.group(2)), unit));
    }

    /** The size with which a requirement begins, for the deviations that stand beside it once more. */
    private static Optional<Size> leading(String text) {
        Matcher matcher = SIZE.matcher(text.substring(0, Math.min(text.length(), LONGEST)));
        if (!matcher.lookingAt()) {
            return Optional.empty();
        }
        String size = matcher.group().stripTrailing();
        boolean apart = size.length() < text.length() && " ±+".indexOf(text.charAt(size.length())) >= 0;
        return apart ? size(size) : Optional.empty();
    }

    /** The parts of one row. */
    private final class Parts {
        private final PlanTable.Row row;
        private final Optional<Size> size;
        /** From which deviations go: the size, or that of a requirement that is whole already. */
        private final Optional<Size> from;

        private final Optional<Unit> unit;
        private Optional<BigDecimal> lower = Optional.empty();
        private Optional<BigDecimal> upper = Optional.empty();

        Parts(PlanTable.Row row, Optional<Size> size, Optional<Size> from, Optional<Unit> unit) {
            this.row = row;
            this.size = size;
            this.from = from;
            this.unit = unit.or(() -> size.flatMap(Size::unit));
        }

        Where where() {
            return said(row, PlanColumn.UPPER_LIMIT)
                    .or(() -> said(row, PlanColumn.LOWER_LIMIT))
                    .map(PlanTable.Text::where)
                    .orElse(row.where());
        }

        /** The requirement that the parts make; empty if there are none, or if faults were found. */
        Optional<String> requirement() {
            long before = faults.count();
            Optional<String> free = freeTolerance();
            Optional<Deviations> deviations = deviations();
            Optional<Figure> least = figure(PlanColumn.LOWER_LIMIT);
            Optional<Figure> greatest = figure(PlanColumn.UPPER_LIMIT);
            if (faults.count() > before) {
                return Optional.empty();
            }
            Optional<BigDecimal> low = least.map(Figure::value);
            Optional<BigDecimal> high = greatest.map(Figure::value);
            if (low.isPresent() && high.isPresent() && low.get().compareTo(high.get()) > 0) {
                refuse(PlanColumn.LOWER_LIMIT, "the lower limit lies above the upper one", "limits in their columns");
                return Optional.empty();
            }
            if (deviations.isPresent() && from.isPresent()) {
                BigDecimal nominal = from.get().value();
                lower = Optional.of(nominal.add(deviations.get().lower()));
                upper = Optional.of(nominal.add(deviations.get().upper()));
                return limitsAgree(low, PlanColumn.LOWER_LIMIT, lower.get())
                                && limitsAgree(high, PlanColumn.UPPER_LIMIT, upper.get())
                        ? Optional.of(deviated(from.get(), deviations.get()))
                        : Optional.empty();
            }
            lower = low;
            upper = high;
            if (free.isPresent()) {
                return free;
            }
            return low.isEmpty() && high.isEmpty() ? Optional.empty() : ofLimits(low, high);
        }

        private boolean limitsAgree(Optional<BigDecimal> said, PlanColumn column, BigDecimal found) {
            if (said.isEmpty() || said.get().compareTo(found) == 0) {
                return true;
            }
            refuse(
                    column,
                    "nominal and deviations come to " + found.toPlainString(),
                    "the same limit, or nothing here; the drawing tells which is wrong");
            return false;
        }

        private Optional<String> ofLimits(Optional<BigDecimal> low, Optional<BigDecimal> high) {
            if (size.isEmpty()) {
                String mark = mark();
                if (low.isPresent() && high.isPresent()) {
                    return Optional.of(
                            low.get().toPlainString() + mark + ".." + high.get().toPlainString() + mark + suffix());
                }
                return Optional.of(low.or(() -> high).orElseThrow().toPlainString()
                        + mark
                        + suffix()
                        + (low.isPresent() ? " min" : " max"));
            }
            BigDecimal nominal = size.get().value();
            if (low.isEmpty() || high.isEmpty()) {
                refuse(
                        low.isEmpty() ? PlanColumn.LOWER_LIMIT : PlanColumn.UPPER_LIMIT,
                        "there is a nominal and one limit alone",
                        "the other limit, or one limit without a nominal, as of 0.8 max");
                return Optional.empty();
            }
            BigDecimal half = nominal.abs().multiply(HALF);
            boolean beside = nominal.compareTo(low.get()) < 0 || nominal.compareTo(high.get()) > 0;
            if (beside
                    && low.get().abs().compareTo(half) < 0
                    && high.get().abs().compareTo(half) < 0) {
                refuse(
                        PlanColumn.UPPER_LIMIT,
                        "the limits lie far from the nominal " + nominal.toPlainString()
                                + "; they are perhaps deviations",
                        "limits, or the headings upper tolerance and lower tolerance over deviations");
                return Optional.empty();
            }
            return Optional.of(deviated(
                    size.get(),
                    new Deviations(high.get().subtract(nominal), low.get().subtract(nominal))));
        }

        /** A tolerance with both sides in one cell, or a class; whether it is a tolerance is asked of the whole requirement. */
        private Optional<String> freeTolerance() {
            for (PlanColumn column : List.of(PlanColumn.TOLERANCE, PlanColumn.PLUS_MINUS)) {
                Optional<PlanTable.Text> text = said(row, column);
                if (text.isPresent() && !FIGURE.matcher(text.get().text()).matches()) {
                    Optional<PlanTable.Text> nominal =
                            said(row, PlanColumn.NOMINAL).or(() -> row.text(PlanColumn.REQUIREMENT));
                    if (nominal.isEmpty()) {
                        refuse(column, "there is no size to which the tolerance belongs", "a nominal");
                        return Optional.empty();
                    }
                    return Optional.of(nominal.get().text() + " " + text.get().text() + suffix());
                }
            }
            return Optional.empty();
        }

        private Optional<Deviations> deviations() {
            List<PlanColumn> lowers = List.of(PlanColumn.LOWER_DEVIATION, PlanColumn.TAKEN_OFF);
            Optional<PlanTable.Text> symmetric = said(row, PlanColumn.TOLERANCE)
                    .or(() -> said(row, PlanColumn.PLUS_MINUS))
                    .filter(text -> FIGURE.matcher(text.text()).matches());
            boolean above = said(row, PlanColumn.UPPER_DEVIATION).isPresent();
            List<PlanColumn> below =
                    lowers.stream().filter(each -> said(row, each).isPresent()).toList();
            if (symmetric.isEmpty() && !above && below.isEmpty()) {
                return Optional.empty();
            }
            if (from.isEmpty()) {
                refuse(
                        symmetric.isPresent()
                                ? said(row, PlanColumn.TOLERANCE).isPresent()
                                        ? PlanColumn.TOLERANCE
                                        : PlanColumn.PLUS_MINUS
                                : above ? PlanColumn.UPPER_DEVIATION : below.get(0),
                        "there is no size from which the deviation goes",
                        "a nominal that is a number, with Ø or R before it if need be");
                return Optional.empty();
            }
            if (below.size() > 1 || (symmetric.isPresent() && (above || !below.isEmpty()))) {
                refuse(
                        below.isEmpty() ? PlanColumn.UPPER_DEVIATION : below.get(0),
                        "two columns state the tolerance",
                        "one way of stating it in each row");
                return Optional.empty();
            }
            return symmetric.isPresent() ? symmetric(symmetric.get()) : twoSides(above, below);
        }

        private Optional<Deviations> symmetric(PlanTable.Text text) {
            PlanColumn column =
                    said(row, PlanColumn.TOLERANCE).isPresent() ? PlanColumn.TOLERANCE : PlanColumn.PLUS_MINUS;
            Optional<Figure> figure = figure(column);
            if (figure.isEmpty()) {
                return Optional.empty();
            }
            BigDecimal by = figure.get().magnitude();
            boolean asSigned = figure.get().isSymmetric() || by.signum() == 0;
            if (asSigned
                    || (column == PlanColumn.PLUS_MINUS && figure.get().sign().isEmpty())) {
                return Optional.of(new Deviations(by, by.negate()));
            }
            String plain = by.toPlainString();
            faults.refuse(Fault.of(
                    FaultKind.AMBIGUOUS_NUMBER,
                    text.where(),
                    figure.get().sign().isEmpty()
                            ? "this may be ±" + plain + ", or " + plain + " from limit to limit"
                            : "the other side of the tolerance is not stated",
                    Echo.quoted(text.text()),
                    figure.get().sign().isEmpty()
                            ? "±" + plain + ", or the heading tolerance ±"
                            : "±" + plain + " or " + figure.get().sign() + plain + "/0"));
            return Optional.empty();
        }

        private Optional<Deviations> twoSides(boolean above, List<PlanColumn> below) {
            Optional<Figure> up = figure(PlanColumn.UPPER_DEVIATION);
            boolean both = up.isPresent() && up.get().isSymmetric();
            if (both && below.isEmpty()) {
                return Optional.of(new Deviations(
                        up.get().magnitude(), up.get().magnitude().negate()));
            }
            if (!above || below.isEmpty()) {
                PlanColumn missing = above
                        ? row.texts().containsKey(PlanColumn.TAKEN_OFF)
                                ? PlanColumn.TAKEN_OFF
                                : PlanColumn.LOWER_DEVIATION
                        : PlanColumn.UPPER_DEVIATION;
                faults.refuse(Fault.of(
                        FaultKind.BLANK,
                        row.where(missing),
                        table.merged().why(row.where(missing)).isEmpty()
                                ? "one deviation is stated and the other is not"
                                : table.merged().why(row.where(missing)),
                        "nothing",
                        "0 if it is zero"));
                return Optional.empty();
            }
            PlanColumn column = below.get(0);
            Optional<Figure> down = figure(column);
            if (up.isEmpty() || down.isEmpty()) {
                return Optional.empty();
            }
            if (both || down.get().isSymmetric()) {
                refuse(
                        both ? PlanColumn.UPPER_DEVIATION : column,
                        "± and another deviation are stated",
                        "± alone, or two deviations");
                return Optional.empty();
            }
            return signed(up.get(), down.get(), column);
        }

        private Optional<Deviations> signed(Figure up, Figure down, PlanColumn column) {
            BigDecimal low = down.value();
            boolean unsigned = down.sign().isEmpty() && down.magnitude().signum() != 0;
            String plain = down.magnitude().toPlainString();
            if (column == PlanColumn.TAKEN_OFF) {
                if (down.sign().equals("+")) {
                    refuse(
                            column,
                            "a plus under a heading with a minus",
                            "-" + plain + ", or the heading lower tolerance");
                    return Optional.empty();
                }
                low = down.magnitude().negate();
            } else if (unsigned
                    && down.magnitude()
                                    .compareTo(from.orElseThrow().value().abs().multiply(HALF))
                            <= 0) {
                faults.refuse(
                        Fault.of(
                                FaultKind.AMBIGUOUS_NUMBER,
                                row.where(column),
                                "without a sign this may be -" + plain + " or +" + plain,
                                Echo.quoted(row.text(column).orElseThrow().text()),
                                "-" + plain + " or +" + plain
                                        + " in a cell that is formatted as text, or the heading tolerance - if it is taken off in every row"));
                return Optional.empty();
            }
            BigDecimal half = from.orElseThrow().value().abs().multiply(HALF);
            if (half.signum() > 0 && up.value().compareTo(half) > 0 && low.compareTo(half) > 0) {
                refuse(
                        PlanColumn.UPPER_DEVIATION,
                        "this is no deviation from "
                                + from.orElseThrow().value().toPlainString() + "; it is perhaps a limit",
                        "deviations, or the headings upper limit and lower limit over limits");
                return Optional.empty();
            }
            if (up.value().compareTo(low) < 0) {
                refuse(
                        PlanColumn.UPPER_DEVIATION,
                        "the upper deviation lies below the lower one, " + low.toPlainString(),
                        "deviations in their columns, with their signs");
                return Optional.empty();
            }
            return Optional.of(new Deviations(up.value(), low));
        }

        private Optional<Figure> figure(PlanColumn column) {
            Optional<PlanTable.Text> text = said(row, column);
            if (text.isEmpty()) {
                return Optional.empty();
            }
            Matcher matcher = FIGURE.matcher(text.get().text());
            if (text.get().text().length() > LONGEST || !matcher.matches()) {
                faults.refuse(Fault.of(
                        FaultKind.NOT_A_NUMBER,
                        text.get().where(),
                        "",
                        Echo.quoted(text.get().text()),
                        "a decimal number such as 0.05"));
                return Optional.empty();
            }
            String sign = matcher.group(1) == null ? "" : matcher.group(1).replace('\u2212', '-');
            return Optional.of(new Figure(sign.length() > 1 ? "±" : sign, new BigDecimal(matcher.group(2))));
        }

        private String deviated(Size nominal, Deviations by) {
            String mark = mark();
            String start = nominal.prefix()
                    + (nominal.prefix().endsWith(".") || nominal.prefix().endsWith("a") ? " " : "")
                    + nominal.value().toPlainString() + mark + " ";
            if (by.upper().signum() > 0 && by.upper().compareTo(by.lower().negate()) == 0) {
                return start + "±" + by.upper().toPlainString() + mark + suffix();
            }
            return start + signed(by.upper(), mark) + "/" + signed(by.lower(), mark) + suffix();
        }

        private String signed(BigDecimal deviation, String mark) {
            if (deviation.signum() == 0) {
                return "0";
            }
            return (deviation.signum() > 0 ? "+" : "") + deviation.toPlainString() + mark;
        }

        private String mark() {
            return unit.filter(each -> each == Unit.DEGREE).isPresent() ? "°" : "";
        }

        private String suffix() {
            return unit.filter(each -> each != Unit.DEGREE && each != planUnit)
                    .map(each -> " " + each.word())
                    .orElse("");
        }

        private void refuse(PlanColumn column, String message, String expected) {
            faults.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    row.where(column),
                    message,
                    row.text(column).map(text -> Echo.quoted(text.text())).orElse("nothing"),
                    expected));
        }
    }

    /** Holds what the columns said against the limits of the plan that was made. */
    void compare(ResolvedPlan plan, FaultCollector differences) {
        for (ResolvedCharacteristic each : plan.characteristics()) {
            Stated said = stated.get(each.number());
            if (said != null && !each.limits().isOpen()) {
                compare(each, said, differences);
            }
        }
    }

    private void compare(ResolvedCharacteristic each, Stated said, FaultCollector differences) {
        Unit found = each.limits().unit();
        Unit unit = said.unit().orElse(planUnit);
        String words = each.limits()
                        .lower()
                        .map(lower -> lower.toPlainString() + " to ")
                        .orElse("at most ")
                + each.limits().upper().map(BigDecimal::toPlainString).orElse("no upper limit") + " " + found.word();
        if (said.unit().isPresent()
                && !(unit == found || (unit.kind() == Unit.Kind.ANGLE && found.kind() == unit.kind()))) {
            differences.refuse(Fault.of(
                    FaultKind.WRONG_UNIT,
                    said.where(),
                    "the column unit says " + unit.word() + " and the requirement comes to " + words,
                    Echo.quoted(each.characteristic().printed()),
                    "the unit of the requirement, or the requirement with its unit"));
            return;
        }
        boolean differ = differs(said.lower(), unit, each.limits().lower(), found)
                || differs(said.upper(), unit, each.limits().upper(), found);
        if (differ) {
            String stated = said.lower().map(BigDecimal::toPlainString).orElse("open") + " to "
                    + said.upper().map(BigDecimal::toPlainString).orElse("open");
            differences.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    said.where(),
                    "the requirement comes to " + words + " and the columns beside it say " + stated,
                    Echo.quoted(each.characteristic().printed()),
                    "the same in both; the drawing tells which is wrong"));
        }
    }

    private static boolean differs(Optional<BigDecimal> said, Unit unit, Optional<BigDecimal> found, Unit unitFound) {
        return said.isPresent()
                && (found.isEmpty()
                        || unit.kind() != unitFound.kind()
                        || Unit.compare(said.get(), unit, found.get(), unitFound) != 0);
    }
}
