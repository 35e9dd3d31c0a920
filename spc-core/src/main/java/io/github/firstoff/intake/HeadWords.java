package io.github.firstoff.intake;

import java.util.Set;

/** Words by which exports of machines call what they say beside values, folded as names of columns are. Common practice. */
final class HeadWords {
    /** The piece. */
    static final Set<String> PART = Set.of(
            "piece",
            "pieceno",
            "serial",
            "serialno",
            "serialnumber",
            "sn",
            "workpiece",
            "sample",
            "part",
            "partno",
            "partid",
            "teil",
            "werkstück",
            "werkstücknr",
            "stück",
            "stücknr",
            "seriennr",
            "seriennummer");

    /** Who measured. */
    static final Set<String> OPERATOR =
            Set.of("operator", "inspector", "by", "measuredby", "checkedby", "prüfer", "bediener", "gemessenvon");

    /** When. */
    static final Set<String> TIME =
            Set.of("time", "date", "datetime", "timestamp", "measured", "measuredat", "zeit", "zeitpunkt", "datum");

    private HeadWords() {}
}
