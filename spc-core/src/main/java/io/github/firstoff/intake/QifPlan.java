package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.QifLibrary.Entry;
import io.github.firstoff.quantity.Unit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A plan from the characteristics of a QIF document (ISO 23952): one row for each characteristic item, or for each nominal where the
 * document has no items.
 */
final class QifPlan implements PlanSource {
    /** What a program makes of a short decimal when it keeps numbers as binary fractions. */
    private static final Pattern BINARY_FRACTION = Pattern.compile(".*\\.\\d*(?:9{6,}\\d{0,3}|0{6,}\\d{1,3})");

    @Override
    public String word() {
        return "qif";
    }

    @Override
    public boolean isTable() {
        return false;
    }

    @Override
    public boolean recognises(Beginning beginning) {
        return beginning.firstCharacter() == '<';
    }

    @Override
    public PlanTable read(InputBytes bytes, QifLibrary library, Optional<String> sheet, FaultCollector faults)
            throws IOException {
        QifDocument document = QifDocument.read(bytes.input().name(), QifText.of(bytes));
        library.put(bytes.input(), document);
        return new Pass(document, library, faults).table();
    }

    private static final class Pass {
        private final QifDocument document;
        private final QifLibrary library;
        private final FaultCollector faults;
        private final Unit unit;
        private final Map<QifNode, String> numbers = new LinkedHashMap<>();
        private final Set<String> told = new HashSet<>();

        Pass(QifDocument document, QifLibrary library, FaultCollector faults) {
            this.document = document;
            this.library = library;
            this.faults = faults;
            this.unit = planUnit(document);
        }

        private static Unit planUnit(QifDocument document) {
            try {
                Unit unit = document.units()
                        .of(Unit.Kind.LENGTH, Optional.empty(), Where.inFile(document.file()))
                        .unit();
                return unit == Unit.INCH || unit == Unit.MICROINCH ? Unit.INCH : Unit.MILLIMETRE;
            } catch (QifFault toldWithTheFirstLength) {
                return Unit.MILLIMETRE;
            }
        }

        PlanTable table() {
            List<QifSubject> subjects = subjects();
            if (subjects.isEmpty()) {
                faults.refuse(Fault.of(
                        FaultKind.EMPTY,
                        Where.inFile(document.file()),
                        "",
                        "a QIF document without characteristics",
                        "CharacteristicItems, or at least CharacteristicNominals"));
            }
            for (QifSubject subject : subjects) {
                subject.definition()
                        .ifPresent(definition -> subject.label()
                                .ifPresent(label -> numbers.putIfAbsent(definition.node(), label.text())));
            }
            List<PlanTable.Row> rows = new ArrayList<>();
            for (QifSubject subject : subjects) {
                try {
                    rows.add(row(subject));
                } catch (QifFault fault) {
                    faults.refuse(fault.fault());
                }
            }
            return new PlanTable(facts(), rows);
        }

        private List<QifSubject> subjects() {
            Collection<QifNode> items = document.all(QifDocument.Kind.ITEM).values();
            if (!items.isEmpty()) {
                return items.stream()
                        .map(item -> QifSubject.ofItem(library, new Entry(document, item)))
                        .toList();
            }
            return document.all(QifDocument.Kind.NOMINAL).values().stream()
                    .map(nominal -> QifSubject.ofNominal(library, new Entry(document, nominal)))
                    .toList();
        }

        private Map<PlanFact, PlanTable.Text> facts() {
            Map<PlanFact, PlanTable.Text> facts = new EnumMap<>(PlanFact.class);
            facts.put(PlanFact.UNIT, new PlanTable.Text(unit.word(), Where.inFile(document.file())));
            document.part().ifPresent(part -> {
                put(facts, PlanFact.PART, part.child("ModelNumber"));
                put(facts, PlanFact.REVISION, part.child("Version"));
                put(facts, PlanFact.NAME, part.at("Header", "Name"));
            });
            if (!document.units().declares(Unit.Kind.LENGTH)) {
                faults.noticeOfDraft(
                        Where.inFile(document.file()),
                        "the file declares no unit of lengths; by the letter of ISO 23952 that would be the metre, but millimetres were taken, as is usual");
            }
            return facts;
        }

        private static void put(Map<PlanFact, PlanTable.Text> facts, PlanFact fact, Optional<QifNode> node) {
            node.filter(found -> !found.text().isEmpty())
                    .ifPresent(found -> facts.put(fact, new PlanTable.Text(found.text(), found.where())));
        }

        private PlanTable.Row row(QifSubject subject) throws QifFault {
            QifNode item = subject.item().node();
            QifNode label = subject.label()
                    .orElseThrow(() -> new QifFault(Fault.of(
                            FaultKind.MISSING,
                            item.where(),
                            "",
                            "neither a designator nor a name",
                            "a CharacteristicDesignator with the balloon number")));
            QifRequirement requirement = QifRequirement.of(library, subject);
            String printed = requirement.printed(unit);
            if (BINARY_FRACTION
                    .matcher(printed.split(" ", 2)[0].replaceAll("[°\\])].*$", ""))
                    .matches()) {
                faults.noticeOfDraft(
                        item.where(),
                        "characteristic " + Echo.plain(label.text()) + ": " + Echo.plain(printed)
                                + " looks like a short number that a program kept as a binary fraction; it was taken as it stands");
            }
            Map<PlanColumn, PlanTable.Text> texts = new EnumMap<>(PlanColumn.class);
            Where place = subject.definition().orElseThrow().node().where();
            texts.put(PlanColumn.NUMBER, new PlanTable.Text(label.text(), label.where()));
            texts.put(PlanColumn.REQUIREMENT, new PlanTable.Text(printed, place));
            texts.put(
                    PlanColumn.FEATURE, new PlanTable.Text(feature(subject, requirement, label.text()), item.where()));
            importance(subject, label.text()).ifPresent(found -> texts.put(PlanColumn.CLASS, found));
            gauge(item).ifPresent(found -> texts.put(PlanColumn.GAUGE, found));
            form(subject).ifPresent(found -> texts.put(PlanColumn.FORM, found));
            sizeFeature(subject).ifPresent(found -> texts.put(PlanColumn.SIZE_FEATURE, found));
            return new PlanTable.Row(item.where(), texts);
        }

        private String feature(QifSubject subject, QifRequirement requirement, String number) {
            Optional<String> named = subject.item().node().textAt("Description");
            if (named.isEmpty()) {
                named = featureName(subject);
            }
            if (named.isEmpty()) {
                named = subject.first("Name").map(QifNode::text).filter(name -> !name.equals(number));
            }
            Optional<String> kind = requirement.kindInWords();
            if (named.isEmpty()) {
                return kind.orElse(number);
            }
            String name = named.get().replaceAll("\\s+", " ");
            return requirement.isWithoutSymbol() ? name + ", " + kind.orElse("form") : name;
        }

        private Optional<String> featureName(QifSubject subject) {
            Optional<String> ofItem = followed(subject.item(), "FeatureItemIds", QifDocument.Kind.FEATURE_ITEM)
                    .flatMap(entry -> entry.node().textAt("FeatureName"));
            if (ofItem.isPresent()) {
                return ofItem;
            }
            return subject.nominal()
                    .flatMap(nominal -> followed(nominal, "FeatureNominalIds", QifDocument.Kind.FEATURE_NOMINAL))
                    .flatMap(entry -> entry.node().textAt("Name"));
        }

        /** What the first reference of a list leads to; nothing if it leads nowhere, because a name is not worth a refusal. */
        private Optional<Entry> followed(Entry from, String list, QifDocument.Kind kind) {
            Optional<QifNode> reference = from.node().at(list, "Id");
            if (reference.isEmpty()) {
                return Optional.empty();
            }
            try {
                return Optional.of(library.follow(from.document(), reference.get(), kind));
            } catch (QifFault nowhere) {
                return Optional.empty();
            }
        }

        private Optional<PlanTable.Text> importance(QifSubject subject, String number) {
            Optional<QifNode> level = subject.first("CharacteristicDesignator", "Criticality", "LevelEnum");
            if (level.isEmpty()) {
                return Optional.empty();
            }
            QifNode node = level.get();
            return switch (node.text()) {
                case "KEY" -> {
                    if (told.add("key")) {
                        faults.noticeOfDraft(
                                node.where(),
                                "characteristic " + Echo.plain(number)
                                        + " and any other of criticality KEY is taken as critical");
                    }
                    yield Optional.of(new PlanTable.Text("critical", node.where()));
                }
                case "UNDEFINED" -> Optional.empty();
                default ->
                    Optional.of(new PlanTable.Text(node.text().toLowerCase(java.util.Locale.ROOT), node.where()));
            };
        }

        private Optional<PlanTable.Text> gauge(QifNode item) throws QifFault {
            List<QifNode> devices =
                    item.child("MeasurementDeviceIds").map(QifNode::children).orElse(List.of());
            if (devices.size() != 1) {
                return Optional.empty();
            }
            QifNode device = library.follow(document, devices.get(0), QifDocument.Kind.DEVICE)
                    .node();
            return device.textAt("Name")
                    .map(name -> new PlanTable.Text(name, devices.get(0).where()));
        }

        private Optional<PlanTable.Text> form(QifSubject subject) {
            Entry definition = subject.definition().orElseThrow();
            Optional<String> variance =
                    definition.node().child("LimitsAndFitsSpecification").flatMap(fit -> fit.attribute("zoneVariance"));
            Optional<String> side = subject.nominal()
                    .flatMap(nominal -> followed(nominal, "FeatureNominalIds", QifDocument.Kind.FEATURE_NOMINAL))
                    .flatMap(this::sideOf);
            boolean ofSize = List.of("Diameter", "SphericalDiameter", "Width", "Thickness")
                    .contains(subject.kind());
            if (!ofSize) {
                return Optional.empty();
            }
            Optional<String> word = variance.or(() -> side).flatMap(found -> switch (found) {
                case "HOLE", "INTERNAL" -> Optional.of("hole");
                case "SHAFT", "EXTERNAL" -> Optional.of("shaft");
                default -> Optional.<String>empty();
            });
            return word.map(found -> new PlanTable.Text(found, definition.node().where()));
        }

        private Optional<String> sideOf(Entry feature) {
            Optional<QifNode> reference = feature.node().child("FeatureDefinitionId");
            if (reference.isEmpty()) {
                return Optional.empty();
            }
            try {
                return library.follow(feature.document(), reference.get(), QifDocument.Kind.FEATURE_DEFINITION)
                        .node()
                        .textAt("InternalExternal");
            } catch (QifFault nowhere) {
                return Optional.empty();
            }
        }

        private Optional<PlanTable.Text> sizeFeature(QifSubject subject) throws QifFault {
            Entry definition = subject.definition().orElseThrow();
            Optional<QifNode> reference = definition.node().child("SizeCharacteristicDefinitionId");
            if (reference.isEmpty()) {
                return Optional.empty();
            }
            Entry size = library.follow(definition.document(), reference.get(), QifDocument.Kind.DEFINITION);
            String number = numbers.get(size.node());
            if (number == null) {
                throw new QifFault(Fault.of(
                        FaultKind.UNKNOWN_REFERENCE,
                        reference.get().where(),
                        "the size that the bonus rests on is no characteristic to be measured",
                        Echo.quoted(reference.get().text()),
                        "a CharacteristicItem of that size"));
            }
            return Optional.of(new PlanTable.Text(number, reference.get().where()));
        }
    }
}
