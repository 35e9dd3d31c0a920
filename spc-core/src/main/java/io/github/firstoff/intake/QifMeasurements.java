package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.QifLibrary.Entry;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One walk through the measurements of a QIF document. */
final class QifMeasurements {
    /** Statuses of a characteristic that say that nothing was found out. */
    private static final Set<String> NOTHING_FOUND =
            Set.of("SYSERROR", "INDETERMINATE", "NOT_ANALYZED", "UNDEFINED", "BASIC_OR_TED");

    private static final Set<String> STATUSES =
            Set.of("PASS", "FAIL", "REWORK", "SYSERROR", "INDETERMINATE", "NOT_ANALYZED", "BASIC_OR_TED", "UNDEFINED");

    /** A difference of limits below this part of the tolerance is a matter of binary fractions, not of drawings. */
    private static final BigDecimal OF_NO_ACCOUNT = new BigDecimal("0.000001");

    private final QifDocument document;
    private final RowCheck check;
    private final QifLibrary library;
    private final Map<String, Matched> matched = new HashMap<>();
    private final Map<String, Integer> withoutValue = new LinkedHashMap<>();
    private final Set<String> told = new HashSet<>();
    private boolean outside;
    private boolean judged;

    QifMeasurements(QifDocument document, RowCheck check) {
        this.document = document;
        this.check = check;
        this.library = check.library();
    }

    /**
     * What a measurement is of.
     *
     * @param subject as the document says it
     * @param characteristic as the plan does; empty if the plan has none of its names
     * @param number the name by which the plan was asked
     */
    private record Matched(QifSubject subject, Optional<ResolvedCharacteristic> characteristic, String number) {}

    void read(QifXml xml) throws IOException {
        xml.root();
        int run = 0;
        while (xml.nextChild(1)) {
            int section = xml.depth();
            if (!xml.name().equals("Results")) {
                continue;
            }
            while (xml.nextChild(section)) {
                int set = xml.depth();
                if (!xml.name().equals("MeasurementResultsSet")) {
                    continue;
                }
                while (xml.nextChild(set)) {
                    readRun(xml, document.results().get(run));
                    run++;
                }
            }
        }
        xml.finish();
        if (!document.hasResults()) {
            noResults();
        }
        withoutValue.forEach((status, count) -> notice(
                Where.inFile(document.file()),
                Remark.of(
                        "notice.qif.no-value",
                        "{0} {0|measurement has|measurements have} no value and the status {1}, which counts as not measured",
                        count,
                        Echo.plain(status))));
    }

    private void noResults() {
        if (document.hasCharacteristics()) {
            check.expectReadingsElsewhere();
            notice(
                    Where.inFile(document.file()),
                    Remark.of(
                            "notice.qif.no-results",
                            "the document holds no results; it only says what was to be measured, for documents that refer to it"));
        } else {
            check.sink()
                    .refuse(Fault.of(
                            FaultKind.EMPTY,
                            Where.inFile(document.file()),
                            "",
                            "a QIF document without results",
                            "results, or the characteristics to which results in another file refer"));
        }
    }

    private void notice(Where where, Remark remark) {
        if (told.add(remark.english())) {
            check.sink().notice(where, remark);
        }
    }

    private void readRun(QifXml xml, QifNode run) throws IOException {
        outside = false;
        judged = false;
        int own = xml.depth();
        while (xml.nextChild(own)) {
            int section = xml.depth();
            if (!xml.name().equals("MeasuredCharacteristics")) {
                continue;
            }
            while (xml.nextChild(section)) {
                int list = xml.depth();
                if (!xml.name().equals("CharacteristicMeasurements")) {
                    continue;
                }
                while (xml.nextChild(list)) {
                    readMeasurement(xml.node(QifDocument.HEAVY), run);
                }
            }
        }
        compareRun(run);
    }

    /** The document's own verdict on the run, held against its values. */
    private void compareRun(QifNode run) {
        Optional<QifNode> status = run.at("InspectionStatus", "InspectionStatusEnum");
        if (status.isEmpty() || !judged) {
            return;
        }
        String word = status.get().text();
        if (word.equals("PASS") && outside) {
            notice(
                    status.get().where(),
                    Remark.of(
                            "notice.qif.passed",
                            "the file says PASS of a piece of which at least one value is outside the plan's limits; the values are"
                                    + " judged"));
        } else if (word.equals("FAIL") && !outside) {
            notice(
                    status.get().where(),
                    Remark.of(
                            "notice.qif.failed",
                            "the file says FAIL of a piece of which no value is outside the plan's limits; the values are judged"));
        }
    }

    private void readMeasurement(QifNode measurement, QifNode run) {
        QifRow row = new QifRow(measurement.where());
        check.sink().begin(row);
        try {
            fill(row, measurement, run);
        } catch (QifFault fault) {
            check.sink().refuse(fault.fault());
        } finally {
            check.sink().end();
        }
    }

    private void fill(QifRow row, QifNode measurement, QifNode run) throws QifFault {
        Optional<QifNode> status = measurement.at("Status", "CharacteristicStatusEnum");
        String statusWord = status.map(QifNode::text)
                .or(() -> measurement.textAt("Status", "OtherCharacteristicStatus"))
                .orElse("");
        row.status(statusWord);
        if (status.isPresent() && !STATUSES.contains(statusWord)) {
            throw new QifFault(Fault.of(
                    FaultKind.UNKNOWN_WORD,
                    status.get().where(),
                    "",
                    Echo.quoted(statusWord),
                    Words.oneOf(STATUSES.stream().sorted().toList())));
        }
        putPiece(row, measurement, run);
        putIdentity(row);
        Matched what = matched(measurement);
        Where where =
                measurement.child("CharacteristicItemId").orElse(measurement).where();
        row.put(ReadingColumn.CHARACTERISTIC, what.number(), where);
        Optional<QifNode> value = measurement
                .child("Value")
                .or(() -> measurement.child("RoughnessAverageValue"))
                .filter(node -> !node.text().isEmpty());
        value.ifPresent(node -> row.put(ReadingColumn.VALUE, node.text(), node.where()));
        Optional<ResolvedCharacteristic> characteristic = what.characteristic()
                .or(() -> check.characteristic(what.number(), row.where(ReadingColumn.CHARACTERISTIC)));
        if (characteristic.isEmpty()) {
            check.head(row);
            return;
        }
        if (characteristic.get().isAttribute()) {
            attribute(row, characteristic.get(), what.subject(), measurement, value, statusWord);
        } else {
            measured(row, characteristic.get(), what.subject(), measurement, value, statusWord);
        }
    }

    // What the measurement is of

    private Matched matched(QifNode measurement) throws QifFault {
        QifNode reference = measurement
                .child("CharacteristicItemId")
                .orElseThrow(() -> new QifFault(Fault.of(
                        FaultKind.MISSING,
                        measurement.where(),
                        "",
                        "no CharacteristicItemId",
                        "the id of the item that was measured")));
        String key = reference.text() + "/" + reference.attribute("xId").orElse("");
        Matched known = matched.get(key);
        if (known == null) {
            Entry item = library.follow(document, reference, QifDocument.Kind.ITEM);
            known = match(QifSubject.ofItem(library, item), reference);
            matched.put(key, known);
            compareLimits(known, reference);
        }
        return known;
    }

    private Matched match(QifSubject subject, QifNode reference) throws QifFault {
        List<String> names = subject.names();
        if (names.isEmpty()) {
            throw new QifFault(Fault.of(
                    FaultKind.MISSING,
                    subject.item().node().where(),
                    "nothing ties it to a number of the plan",
                    "neither a designator nor a name",
                    "a CharacteristicDesignator with the balloon number"));
        }
        Optional<ResolvedCharacteristic> found = Optional.empty();
        String by = "";
        for (String name : names) {
            Optional<ResolvedCharacteristic> candidate = inPlan(name);
            if (candidate.isEmpty()) {
                continue;
            }
            if (found.isEmpty()) {
                found = candidate;
                by = name;
            } else if (!found.get().number().equals(candidate.get().number())) {
                throw new QifFault(Fault.of(
                        FaultKind.CONTRADICTION,
                        reference.where(),
                        "the item is called " + Echo.quoted(by) + " and " + Echo.quoted(name)
                                + ", and the plan has a characteristic for each",
                        "",
                        "names that lead to one characteristic"));
            }
        }
        return new Matched(subject, found, found.isPresent() ? by : names.get(0));
    }

    private Optional<ResolvedCharacteristic> inPlan(String name) {
        Optional<ResolvedCharacteristic> exact = check.plan().find(name);
        if (exact.isPresent()) {
            return exact;
        }
        List<ResolvedCharacteristic> folded = check.plan().characteristics().stream()
                .filter(each -> each.number().equalsIgnoreCase(name))
                .toList();
        return folded.size() == 1 ? Optional.of(folded.get(0)) : Optional.empty();
    }

    /** The document's own limits, held against the plan's: the plan judges, but somebody should know that they differ. */
    private void compareLimits(Matched what, QifNode reference) {
        if (what.characteristic().isEmpty()) {
            return;
        }
        ResolvedCharacteristic characteristic = what.characteristic().get();
        Remark named = Remark.of("place.characteristic", "characteristic {0}", Echo.plain(characteristic.number()));
        try {
            Optional<QifRequirement.Bounds> stated =
                    QifRequirement.of(library, what.subject()).bounds();
            Limits limits = characteristic.limits();
            if (stated.isEmpty() || limits.isOpen() || !isComparable(stated.get(), limits)) {
                return;
            }
            boolean upper = agrees(stated.get().upper(), limits.upper(), limits);
            boolean lower = (limits.naturalLower() && stated.get().lower().isEmpty())
                    || agrees(stated.get().lower(), limits.lower(), limits);
            if (!upper || !lower) {
                notice(
                        reference.where(),
                        Remark.of(
                                "notice.qif.limits",
                                "{0}: the file states the limits {1}, and the plan {2} to {3} {4}; the plan's judge",
                                named,
                                words(stated.get()),
                                bound(limits.lower()),
                                bound(limits.upper()),
                                Remark.word("unit-word", limits.unit().word())));
            }
        } catch (QifFault unusable) {
            notice(
                    reference.where(),
                    Remark.of(
                            "notice.qif.limits-unusable",
                            "{0}: the limits that the file states could not be held against the plan's ({1})",
                            named,
                            unusable.fault().line()));
        }
    }

    private static boolean isComparable(QifRequirement.Bounds stated, Limits limits) {
        return stated.upper()
                .or(stated::lower)
                .filter(each -> each.unit().isComparableWith(limits.unit()))
                .isPresent();
    }

    private static boolean agrees(Optional<QifRequirement.Amount> stated, Optional<BigDecimal> planned, Limits limits) {
        if (stated.isEmpty() || planned.isEmpty()) {
            return stated.isEmpty() && planned.isEmpty();
        }
        BigDecimal slack = limits.width().orElse(planned.get().abs()).multiply(OF_NO_ACCOUNT);
        Unit unit = stated.get().unit();
        return Unit.compare(stated.get().value(), unit, planned.get().subtract(slack), limits.unit()) >= 0
                && Unit.compare(stated.get().value(), unit, planned.get().add(slack), limits.unit()) <= 0;
    }

    private static Remark bound(Optional<BigDecimal> limit) {
        return limit.map(value -> Remark.verbatim(value.toPlainString()))
                .orElseGet(() -> Remark.of("notice.qif.no-limit", "none"));
    }

    private static Remark words(QifRequirement.Bounds bounds) {
        return Remark.of(
                "notice.qif.bounds",
                "{0} to {1} {2}",
                bound(bounds.lower().map(each -> each.value())),
                bound(bounds.upper().map(each -> each.value())),
                bounds.upper()
                        .or(bounds::lower)
                        .map(each -> Remark.word("unit-word", each.unit().word()))
                        .orElseGet(Remark::none));
    }

    // The piece, and what is said of its measuring

    private void putPiece(QifRow row, QifNode measurement, QifNode run) throws QifFault {
        Optional<QifNode> reference = measurement.child("ActualComponentId");
        List<QifNode> ofRun =
                run.child("ActualComponentIds").map(QifNode::children).orElse(List.of());
        if (reference.isEmpty() && ofRun.size() > 1) {
            throw new QifFault(Fault.of(
                    FaultKind.CONTRADICTION,
                    row.where(ReadingColumn.PART),
                    "the results are of " + ofRun.size() + " pieces, and the measurement does not say of which",
                    "no ActualComponentId",
                    "the id of the piece"));
        }
        if (reference.isEmpty() && !ofRun.isEmpty()) {
            reference = Optional.of(ofRun.get(0));
        }
        Optional<QifNode> piece = Optional.empty();
        if (reference.isPresent()) {
            piece = Optional.of(library.follow(document, reference.get(), QifDocument.Kind.PIECE)
                    .node());
        }
        putName(row, piece, run);
        Optional<QifNode> start =
                measurement.child("TimeStamp").or(() -> run.at("InspectionTraceability", "InspectionStart"));
        if (start.isEmpty()) {
            start = piece.flatMap(node -> node.at("Traceability", "InspectionStart"));
        }
        start.ifPresent(node -> row.put(ReadingColumn.TIME, node.text(), node.where()));
        Optional<QifNode> inspector = run.at("InspectionTraceability", "InspectionOperator", "Name");
        if (inspector.isEmpty()) {
            inspector = piece.flatMap(node -> node.at("Traceability", "InspectionOperator", "Name"));
        }
        inspector.ifPresent(node -> row.put(ReadingColumn.OPERATOR, node.text(), node.where()));
        putGauge(row, measurement);
        Optional<QifNode> process = measurement.child("ManufacturingProcessId");
        if (process.isEmpty()) {
            process = piece.flatMap(node -> node.at("Traceability", "ManufacturingProcessId"));
        }
        if (process.isPresent()) {
            library.follow(document, process.get(), QifDocument.Kind.PROCESS)
                    .node()
                    .child("MachineIdentifier")
                    .filter(node -> !node.text().isEmpty())
                    .ifPresent(node -> row.put(ReadingColumn.MACHINE, node.text(), node.where()));
        }
    }

    private void putName(QifRow row, Optional<QifNode> piece, QifNode run) {
        Optional<QifNode> serial = piece.flatMap(node -> node.child("SerialNumber"))
                .or(() -> piece.flatMap(node -> node.at("Traceability", "SampleNumber")))
                .filter(node -> !node.text().isEmpty());
        if (serial.isPresent()) {
            row.put(ReadingColumn.PART, serial.get().text(), serial.get().where());
            return;
        }
        Optional<QifNode> instance =
                run.child("ThisResultsInstanceQPId").filter(node -> !node.text().isEmpty());
        String name = instance.map(QifNode::text)
                .orElse(document.file() + " results " + run.attribute("id").orElse("without id"));
        row.put(ReadingColumn.PART, name, instance.orElse(run).where());
        if (told.add("no serial number")) {
            check.sink()
                    .notice(
                            run.where(),
                            Remark.of(
                                    "notice.qif.no-serial",
                                    "the file states no serial number of the piece, which is called by the identification of its"
                                            + " results"));
        }
    }

    private void putGauge(QifRow row, QifNode measurement) throws QifFault {
        List<QifNode> devices =
                measurement.child("MeasurementDeviceIds").map(QifNode::children).orElse(List.of());
        if (devices.size() != 1) {
            return;
        }
        QifNode device = library.follow(document, devices.get(0), QifDocument.Kind.DEVICE)
                .node();
        Optional<QifNode> serial =
                device.child("SerialNumber").filter(node -> !node.text().isEmpty());
        Optional<QifNode> listed =
                serial.filter(node -> check.plan().gauge(node.text()).isPresent());
        Optional<QifNode> name =
                device.child("Name").filter(node -> !node.text().isEmpty());
        listed.or(() -> name)
                .or(() -> serial)
                .ifPresent(node -> row.put(ReadingColumn.GAUGE, node.text(), node.where()));
    }

    private void putIdentity(QifRow row) {
        document.part().ifPresent(part -> {
            part.child("ModelNumber")
                    .filter(node -> !node.text().isEmpty())
                    .ifPresent(node -> row.put(ReadingColumn.PART_NUMBER, node.text(), node.where()));
            part.child("Version")
                    .filter(node -> !node.text().isEmpty())
                    .ifPresent(node -> row.put(ReadingColumn.REVISION, node.text(), node.where()));
        });
    }

    // Pass or fail

    private void attribute(
            QifRow row,
            ResolvedCharacteristic characteristic,
            QifSubject subject,
            QifNode measurement,
            Optional<QifNode> value,
            String status) {
        Optional<RowCheck.Head> head = check.head(row);
        Optional<Boolean> byStatus = ofStatus(status);
        Where where = value.orElse(measurement).where();
        if (value.isPresent()) {
            Optional<Boolean> byValue = ofValue(value.get().text(), subject);
            if (byValue.isPresent() && byStatus.isPresent() && !byValue.equals(byStatus)) {
                check.sink()
                        .refuse(Fault.of(
                                FaultKind.CONTRADICTION,
                                where,
                                "the value says " + word(byValue.get()) + " and the status " + status,
                                Echo.quoted(value.get().text()),
                                "one and the same"));
                return;
            }
            String text = byValue.map(QifMeasurements::word).orElse(value.get().text());
            head.ifPresent(known -> check.values().value(known, characteristic, new Cell(text, Cell.Form.TEXT, where)));
            return;
        }
        if (byStatus.isPresent()) {
            head.ifPresent(known ->
                    check.values().value(known, characteristic, new Cell(word(byStatus.get()), Cell.Form.TEXT, where)));
            return;
        }
        withoutReading(row, status);
    }

    private static String word(boolean pass) {
        return pass ? "pass" : "fail";
    }

    /** REWORK is said of what does not conform as it is. */
    private static Optional<Boolean> ofStatus(String status) {
        return switch (status) {
            case "PASS" -> Optional.of(true);
            case "FAIL", "REWORK" -> Optional.of(false);
            default -> STATUSES.contains(status) ? Optional.empty() : PassOrFail.parse(status);
        };
    }

    private static Optional<Boolean> ofValue(String value, QifSubject subject) {
        if (lists(subject, "PassValues", value)) {
            return Optional.of(true);
        }
        return lists(subject, "FailValues", value) ? Optional.of(false) : PassOrFail.parse(value);
    }

    private static boolean lists(QifSubject subject, String list, String value) {
        return subject.nominal()
                .flatMap(found -> found.node().child(list))
                .filter(node ->
                        node.children().stream().anyMatch(each -> each.text().equals(value)))
                .isPresent();
    }

    /** A status alone: known ones that find nothing out are explained, anything else is refused. */
    private void withoutReading(QifRow row, String status) {
        if (NOTHING_FOUND.contains(status)) {
            withoutValue.merge(status, 1, Integer::sum);
            return;
        }
        check.sink()
                .refuse(Fault.of(
                        FaultKind.WRONG_READING,
                        row.where(ReadingColumn.VALUE),
                        "there is no value, and the status alone does not tell what was found",
                        status.isEmpty() ? "no status" : "the status " + Echo.quoted(status),
                        "a value"));
    }

    // Values

    private void measured(
            QifRow row,
            ResolvedCharacteristic characteristic,
            QifSubject subject,
            QifNode measurement,
            Optional<QifNode> value,
            String status)
            throws QifFault {
        if (value.isEmpty()) {
            check.head(row);
            boolean extremes = measurement.child("MaxValue").isPresent()
                    || measurement.child("MinValue").isPresent();
            if (extremes) {
                throw new QifFault(Fault.of(
                        FaultKind.WRONG_READING,
                        measurement.where(),
                        "characteristic " + Echo.plain(characteristic.number())
                                + " has a greatest or a least value and none that was found",
                        "MaxValue or MinValue alone",
                        "a Value"));
            }
            withoutReading(row, status);
            return;
        }
        QifNode node = value.get();
        Unit own = characteristic
                .characteristic()
                .requirement()
                .readingUnit(check.plan().plan().unit());
        QifUnits.Measure measure = measure(node, subject, own);
        row.put(ReadingColumn.UNIT, unitOf(measure, own).word(), node.where());
        Optional<RowCheck.Head> head = check.head(row);
        Cell cell = new Cell(text(node, measure, own), Cell.Form.TEXT, node.where());
        head.ifPresent(known -> check.values().value(known, characteristic, cell));
        compareStatus(characteristic, node, measure, status);
        noticeExtremes(characteristic, measurement, measure);
    }

    private QifUnits.Measure measure(QifNode node, QifSubject subject, Unit own) throws QifFault {
        Optional<String> angular = node.attribute("angularUnit");
        Optional<String> linear = node.attribute("linearUnit");
        boolean angle = angular.isPresent() || (linear.isEmpty() && isAngle(subject, own));
        Unit.Kind kind = angle ? Unit.Kind.ANGLE : Unit.Kind.LENGTH;
        if (angular.isEmpty() && linear.isEmpty() && !document.units().declares(kind)) {
            notice(
                    Where.inFile(document.file()),
                    angle
                            ? Remark.of(
                                    "notice.qif.no-unit-of-angles",
                                    "the file declares no unit of angles; by the letter of ISO 23952 that would be the radian, but degrees"
                                            + " were taken, as is usual")
                            : Remark.of(
                                    "notice.qif.no-unit-of-lengths",
                                    "the file declares no unit of lengths; by the letter of ISO 23952 that would be the metre, but"
                                            + " millimetres were taken, as is usual"));
        }
        if (node.attribute("combinedUncertainty").isPresent()) {
            notice(
                    node.where(),
                    Remark.of(
                            "notice.qif.uncertainty",
                            "the file states an uncertainty of its values, which was not used; the plan's gauge has its own"));
        }
        return document.units().of(kind, angular.or(() -> linear), node.where());
    }

    private static boolean isAngle(QifSubject subject, Unit own) {
        return subject.kind().isEmpty() ? own.kind() == Unit.Kind.ANGLE : QifRequirement.isAngle(subject.kind());
    }

    /** Roughness is stated in the unit of all lengths and read in its own; the conversion is exact or is not made. */
    private static Unit unitOf(QifUnits.Measure measure, Unit own) {
        boolean fine = (own == Unit.MICROMETRE && measure.unit() == Unit.MILLIMETRE)
                || (own == Unit.MICROINCH && measure.unit() == Unit.INCH);
        return fine ? own : measure.unit();
    }

    private static String text(QifNode node, QifUnits.Measure measure, Unit own) throws QifFault {
        Unit unit = unitOf(measure, own);
        if (measure.isPlain() && unit == measure.unit()) {
            return node.text();
        }
        try {
            BigDecimal value = measure.apply(ExactNumber.written(node.text()));
            return measure.unit().convert(value, unit).toPlainString();
        } catch (NumberRefused refused) {
            throw new QifFault(Fault.of(
                    refused.kind(), node.where(), refused.message(), Echo.quoted(node.text()), refused.expected()));
        }
    }

    private static Optional<Found> found(QifNode node, QifUnits.Measure measure) {
        try {
            return Optional.of(Found.of(measure.apply(ExactNumber.written(node.text())), measure.unit()));
        } catch (NumberRefused toldWithTheValue) {
            return Optional.empty();
        }
    }

    /** The document's own verdict, held against the plan's limits where these are the same for every piece. */
    private void compareStatus(
            ResolvedCharacteristic characteristic, QifNode value, QifUnits.Measure measure, String status) {
        Limits limits = characteristic.limits();
        Optional<Found> found = found(value, measure);
        boolean canBeJudged =
                characteristic.isJudged() && !limits.isOpen() && measure.unit().isComparableWith(limits.unit());
        if (!canBeJudged || found.isEmpty()) {
            return;
        }
        boolean within = limits.contains(found.get());
        if (within || characteristic.zone().isFixed()) {
            judged = true;
            outside |= !within;
        }
        if (status.equals("PASS") && !within && characteristic.zone().isFixed()) {
            notice(value.where(), contradiction(characteristic, value, "PASS", false));
        } else if ((status.equals("FAIL") || status.equals("REWORK")) && within) {
            notice(value.where(), contradiction(characteristic, value, status, true));
        }
    }

    private static Remark contradiction(
            ResolvedCharacteristic characteristic, QifNode value, String status, boolean within) {
        return Remark.of(
                "notice.qif.contradiction",
                "characteristic {0}: the file says {1} of {2}, which is {3|within|outside} the plan's limits; the value is judged by the"
                        + " plan",
                Echo.plain(characteristic.number()),
                status,
                Echo.plain(value.text()),
                within);
    }

    /** A size that varies over its feature may have conforming mean and nonconforming ends. */
    private void noticeExtremes(ResolvedCharacteristic characteristic, QifNode measurement, QifUnits.Measure measure) {
        Limits limits = characteristic.limits();
        if (limits.isOpen() || !measure.unit().isComparableWith(limits.unit())) {
            return;
        }
        for (String name : List.of("MaxValue", "MinValue")) {
            measurement.child(name).ifPresent(node -> {
                boolean beyond = found(node, measure)
                        .filter(end -> !limits.contains(end))
                        .isPresent();
                if (beyond) {
                    notice(
                            node.where(),
                            Remark.of(
                                    "notice.qif.extreme",
                                    "characteristic {0}: the file states {1} {2}, which is outside the limits; only {3} is judged",
                                    Echo.plain(characteristic.number()),
                                    name,
                                    Echo.plain(node.text()),
                                    "Value"));
                }
            });
        }
        boolean segments =
                measurement.children().stream().anyMatch(child -> child.name().startsWith("SecondCompositeSegment"));
        if (segments) {
            notice(
                    measurement.where(),
                    Remark.of(
                            "notice.qif.segments",
                            "characteristic {0}: the lower segments of a composite tolerance were not used",
                            Echo.plain(characteristic.number())));
        }
    }
}
