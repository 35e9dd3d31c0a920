package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.tolerance.RequirementFault;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Where the characteristics of a plan stand in its file. */
final class PlanPlaces {
    private static final String STUDY = "study.";

    private final SourceText source;
    private final Map<String, Fields> byNumber = new HashMap<>();
    private final Fields document;

    PlanPlaces(SourceText source, Fields document) {
        this.source = source;
        this.document = document;
    }

    void put(String number, Fields characteristic) {
        byNumber.putIfAbsent(number, characteristic);
    }

    Optional<Fields> find(String number) {
        return Optional.ofNullable(byNumber.get(number));
    }

    /** The fault of a plan at its place in the file. */
    Fault locate(PlanFault fault) {
        Optional<Fields> characteristic = fault.characteristic().flatMap(this::find);
        Fields fields = characteristic.orElse(document);
        if (fault.field().startsWith(STUDY)) {
            return ofStudy(fields, fault);
        }
        // A rule that holds for the whole plan stands at its top; the characteristic is then named in words.
        boolean inherited = !fields.has(fault.field()) && document.has(fault.field());
        Where stated = inherited ? document.where(fault.field()) : fields.where(fault.field());
        Where where = new Where(stated.file(), stated.line(), stated.column(), fields.labelOf(fault.field()));
        FaultKind kind = fault.field().equals("requirement") ? FaultKind.REQUIREMENT : FaultKind.CONTRADICTION;
        Fault located = Fault.of(kind, where, fault.message(), "", fault.expected());
        return kind == FaultKind.REQUIREMENT ? underlined(located, fields, fault.position()) : located;
    }

    /** A fault of one key of a study: {@code study.tests}. */
    private static Fault ofStudy(Fields characteristic, PlanFault fault) {
        String key = fault.field().substring(STUDY.length());
        Where where = characteristic
                .object("study")
                .filter(study -> study.has(key))
                .map(study -> study.where(key))
                .orElseGet(() -> characteristic.where("study"));
        return Fault.of(FaultKind.CONTRADICTION, where, fault.message(), "", fault.expected());
    }

    /** The fault of a requirement that cannot be read. */
    Fault locate(Fields fields, RequirementFault fault) {
        Where where = fields.where("requirement");
        String message = fault.getMessage() == null ? "" : fault.getMessage();
        Fault located = Fault.of(FaultKind.REQUIREMENT, where, message, Echo.quoted(fault.text()), fault.expected());
        return underlined(located, fields, fault.position());
    }

    private Fault underlined(Fault fault, Fields fields, Optional<Integer> position) {
        Optional<JsonValue> value = fields.value("requirement");
        if (value.isEmpty() || !(value.get() instanceof JsonValue.Text text)) {
            return fault;
        }
        Place literal = text.at();
        // The requirement was stripped before it was parsed.
        int stripped = text.text().length() - text.text().stripLeading().length();
        int column = Excerpts.columnWithin(source.line(literal.line()), literal, stripped + position.orElse(0));
        Where where = new Where(
                fault.where().file(), literal.line(), column, fault.where().field());
        return Fault.of(fault.kind(), where, fault.message(), fault.found(), fault.expected())
                .with(Excerpts.of(source, where));
    }
}
