package io.github.firstoff.intake;

import io.github.firstoff.intake.QifLibrary.Entry;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is to be measured, through all three layers of a QIF document: the item, the nominal that it is of, and the definition behind
 * that.
 *
 * @param item the item, or the nominal where a document has no items
 * @param nominal the nominal
 * @param definition the definition
 * @param broken why nominal or definition could not be reached, if so
 */
record QifSubject(Entry item, Optional<Entry> nominal, Optional<Entry> definition, Optional<Fault> broken) {

    /** The subject that an item stands for. */
    static QifSubject ofItem(QifLibrary library, Entry item) {
        Optional<QifNode> reference = item.node().child("CharacteristicNominalId");
        if (reference.isEmpty()) {
            return new QifSubject(
                    item, Optional.empty(), Optional.empty(), Optional.of(missing(item, "CharacteristicNominalId")));
        }
        try {
            Entry nominal = library.follow(item.document(), reference.get(), QifDocument.Kind.NOMINAL);
            QifSubject rest = ofNominal(library, nominal);
            return new QifSubject(item, rest.nominal, rest.definition, rest.broken);
        } catch (QifFault fault) {
            return new QifSubject(item, Optional.empty(), Optional.empty(), Optional.of(fault.fault()));
        }
    }

    /** The subject that a nominal stands for by itself. */
    static QifSubject ofNominal(QifLibrary library, Entry nominal) {
        Optional<QifNode> reference = nominal.node().child("CharacteristicDefinitionId");
        if (reference.isEmpty()) {
            return new QifSubject(
                    nominal,
                    Optional.of(nominal),
                    Optional.empty(),
                    Optional.of(missing(nominal, "CharacteristicDefinitionId")));
        }
        try {
            Entry definition = library.follow(nominal.document(), reference.get(), QifDocument.Kind.DEFINITION);
            return new QifSubject(nominal, Optional.of(nominal), Optional.of(definition), Optional.empty());
        } catch (QifFault fault) {
            return new QifSubject(nominal, Optional.of(nominal), Optional.empty(), Optional.of(fault.fault()));
        }
    }

    private static Fault missing(Entry entry, String name) {
        return Fault.of(
                FaultKind.MISSING, entry.node().where(), "", "no <" + name + ">", "what it is that should be measured");
    }

    private List<Entry> layers() {
        List<Entry> layers = new ArrayList<>();
        layers.add(item);
        nominal.ifPresent(layers::add);
        definition.ifPresent(layers::add);
        return layers;
    }

    /**
     * The names by which a plan may know it, the surest first: the designator (the balloon), the identification of the characteristic,
     * the name; of each, the item's before the nominal's before the definition's.
     */
    List<String> names() {
        Set<String> names = new LinkedHashSet<>();
        layers().forEach(each ->
                each.node().textAt("CharacteristicDesignator", "Designator").ifPresent(names::add));
        layers().forEach(each ->
                each.node().textAt("CharacteristicDesignator", "UUID").ifPresent(names::add));
        layers().forEach(each -> each.node().textAt("Name").ifPresent(names::add));
        return List.copyOf(names);
    }

    /** The balloon, or the name where there is none. */
    Optional<QifNode> label() {
        Optional<QifNode> designator = first("CharacteristicDesignator", "Designator");
        return designator.isPresent() ? designator : first("Name");
    }

    /** What a path leads to in the item, failing that in the nominal, failing that in the definition. */
    Optional<QifNode> first(String... path) {
        return layers().stream()
                .map(each -> each.node().at(path))
                .flatMap(Optional::stream)
                .filter(node -> !node.text().isEmpty())
                .findFirst();
    }

    /** The kind of characteristic, for example {@code Diameter}; empty if the definition could not be reached. */
    String kind() {
        return definition
                .map(found -> found.node().name())
                .filter(name -> name.endsWith("CharacteristicDefinition"))
                .map(name -> name.substring(0, name.length() - "CharacteristicDefinition".length()))
                .orElse("");
    }
}
