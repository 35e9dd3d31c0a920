package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The decimal mark of the figures in a table of requirements. A comma that cannot part thousands is a decimal comma; one that could do
 * both is asked about, with both readings. What a spreadsheet holds as a number has no mark to be asked about.
 */
final class PlanMark {
    private static final List<PlanColumn> WITH_FIGURES = Stream.concat(
                    PlanColumn.OF_REQUIREMENTS.stream(), Stream.of(PlanColumn.TARGET))
            .toList();

    private static final Pattern DECIMAL_COMMA = Pattern.compile("(?<=\\d),(?=\\d)");
    private static final Pattern WITH_COMMA = Pattern.compile("\\d+(?:,\\d+)+");
    private static final Pattern WITH_POINT = Pattern.compile("\\d\\.\\d");
    private static final Pattern THOUSANDS = Pattern.compile("[1-9]\\d{0,2}(?:,\\d{3})+");
    private static final Pattern POINTED_THOUSANDS =
            Pattern.compile("(?<![\\d.,])[1-9]\\d{0,2}(?:\\.\\d{3})+(?![\\d.,])");

    private final PlanTable table;
    private final FaultCollector faults;
    private final List<PlanTable.Text> sure = new ArrayList<>();
    private final List<PlanTable.Text> open = new ArrayList<>();
    private final List<PlanTable.Text> points = new ArrayList<>();

    private PlanMark(PlanTable table, FaultCollector faults) {
        this.table = table;
        this.faults = faults;
    }

    /**
     * The table with points for decimal marks.
     *
     * @param stated the mark that the user says; empty to find it out
     */
    static PlanTable withPoints(PlanTable table, Optional<DecimalMark> stated, FaultCollector faults) {
        PlanMark mark = new PlanMark(table, faults);
        mark.look();
        if (stated.isPresent()) {
            return stated.get() == DecimalMark.COMMA ? mark.commasAsStated() : table;
        }
        return mark.found();
    }

    private void look() {
        for (PlanTable.Row row : table.rows()) {
            for (PlanColumn column : WITH_FIGURES) {
                row.text(column).filter(text -> !text.isNumber()).ifPresent(this::look);
            }
        }
    }

    private void look(PlanTable.Text text) {
        String figures = figures(text.text());
        Matcher matcher = WITH_COMMA.matcher(figures);
        boolean isSure = false;
        boolean isOpen = false;
        while (matcher.find()) {
            boolean thousands = THOUSANDS.matcher(matcher.group()).matches();
            isSure |= !thousands;
            isOpen |= thousands;
        }
        if (isSure) {
            sure.add(text);
        } else if (isOpen) {
            open.add(text);
        }
        if (WITH_POINT.matcher(figures).find()) {
            points.add(text);
        }
    }

    private PlanTable found() {
        if (sure.isEmpty() && open.isEmpty()) {
            return table;
        }
        if (!sure.isEmpty() && points.isEmpty()) {
            PlanTable.Text first = sure.get(0);
            faults.noticeOfDraft(
                    first.where(),
                    "the figures have decimal commas, as in " + Echo.quoted(first.text()) + ", read as "
                            + pointed(first.text()));
            return commas();
        }
        if (!sure.isEmpty()) {
            PlanTable.Text point = points.get(0);
            for (PlanTable.Text text : sure) {
                faults.refuse(Fault.of(
                        FaultKind.AMBIGUOUS_NUMBER,
                        text.where(),
                        "some figures have decimal commas and some have points (" + Echo.quoted(point.text()) + " in "
                                + point.where().spot() + ")",
                        Echo.quoted(text.text()),
                        pointed(text.text())
                                + " if the comma is a decimal mark; one mark in all, or --decimal-mark comma"));
            }
        }
        for (PlanTable.Text text : open) {
            faults.refuse(Fault.of(
                    FaultKind.AMBIGUOUS_NUMBER,
                    text.where(),
                    "the comma may be a decimal mark or part thousands: " + pointed(text.text()) + " or "
                            + Echo.plain(DECIMAL_COMMA.matcher(text.text()).replaceAll("")),
                    Echo.quoted(text.text()),
                    "--decimal-mark comma if it is a decimal mark, and otherwise figures without it"));
        }
        return table;
    }

    private PlanTable commasAsStated() {
        for (PlanTable.Text text : points) {
            Matcher thousands = POINTED_THOUSANDS.matcher(figures(text.text()));
            if (thousands.find()) {
                faults.refuse(Fault.of(
                        FaultKind.AMBIGUOUS_NUMBER,
                        text.where(),
                        "with decimal commas the point may part thousands: " + thousands.group() + " or "
                                + thousands.group().replace(".", ""),
                        Echo.quoted(text.text()),
                        "a decimal comma, or figures without a point"));
            }
        }
        return commas();
    }

    private PlanTable commas() {
        List<PlanTable.Row> rows = new ArrayList<>();
        for (PlanTable.Row row : table.rows()) {
            PlanTable.Row changed = row;
            for (PlanColumn column : WITH_FIGURES) {
                Optional<PlanTable.Text> text = row.text(column).filter(each -> !each.isNumber());
                if (text.isPresent()) {
                    changed = changed.with(
                            column, text.get().with(pointed(text.get().text())));
                }
            }
            rows.add(changed);
        }
        return table.with(rows);
    }

    /** Words behind a colon stay as they are. */
    private static String figures(String text) {
        int colon = text.indexOf(':');
        return colon < 0 ? text : text.substring(0, colon);
    }

    private static String pointed(String text) {
        String figures = figures(text);
        return DECIMAL_COMMA.matcher(figures).replaceAll(".") + text.substring(figures.length());
    }
}
