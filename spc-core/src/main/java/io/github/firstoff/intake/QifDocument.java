package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a QIF document (ISO 23952) says apart from its measurements: what was to be measured, in which units, on which pieces, with
 * what. Small beside the measurements, and needed before them, because a document names its pieces after what was measured on them.
 */
final class QifDocument {
    static final String NAMESPACE = "http://qifstandards.org/xsd/qif3";
    private static final String VERSION = "3.0.0";
    private static final int MOST_ENTRIES = 500_000;

    /** Parts of a characteristic, a feature or a measurement that may hold very much and say nothing that is needed here. */
    static final List<String> HEAVY = List.of(
            "Attributes",
            "PointDeviations",
            "ZoneDataSet",
            "PointList",
            "PointSet",
            "EntityInternalIds",
            "EntityExternalIds",
            "SubstituteFeatureAlgorithm");

    /** What of the results of one measuring run is only read row by row. */
    private static final List<String> MEASUREMENTS = List.of(
            "Attributes",
            "MeasuredFeatures",
            "MeasuredPointSets",
            "MeasuredCharacteristics",
            "ActualTransforms",
            "CoordinateSystemActualTransformAssociations",
            "ExternalFileReferences");

    /**
     * Another document to which this one refers.
     *
     * @param id its identification, in capitals
     * @param uri where its writer saw it; never fetched
     * @param where where it is referred to
     */
    record External(String id, String uri, Where where) {}

    /** The kinds of entries that others refer to. */
    enum Kind {
        /** What is required. */
        DEFINITION("CharacteristicDefinition"),
        /** What is required of which feature, with its nominal. */
        NOMINAL("CharacteristicNominal"),
        /** What is to be measured. */
        ITEM("CharacteristicItem"),
        /** What a feature is like. */
        FEATURE_DEFINITION("FeatureDefinition"),
        /** A feature as it should be. */
        FEATURE_NOMINAL("FeatureNominal"),
        /** A feature to measure. */
        FEATURE_ITEM("FeatureItem"),
        /** A tolerance that several definitions share. */
        TOLERANCE("tolerance definition"),
        /** A datum. */
        DATUM("DatumDefinition"),
        /** Datums in their order. */
        FRAME("DatumReferenceFrame"),
        /** A thread. */
        THREAD("thread specification"),
        /** A measuring device. */
        DEVICE("MeasurementDevice"),
        /** How a piece was made. */
        PROCESS("ManufacturingProcessTraceability"),
        /** A piece. */
        PIECE("ActualComponent");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** What messages call it. */
        String word() {
            return word;
        }
    }

    private final String file;
    private final Map<Kind, Map<String, QifNode>> entries = new HashMap<>();
    private final Map<String, External> externals = new LinkedHashMap<>();
    private final List<QifNode> results = new ArrayList<>();
    private String id = "";
    private QifUnits units = QifUnits.NOT_DECLARED;
    private Optional<QifNode> part = Optional.empty();
    private Optional<String> description = Optional.empty();
    private boolean hasResults;
    private boolean namesPlanParts;
    private long count;

    QifDocument(String file) {
        this.file = file;
    }

    /**
     * Reads a document and passes over its measurements.
     *
     * @throws IOException if it is no QIF document, or not well-formed
     */
    static QifDocument read(String file, Reader text) throws IOException {
        QifDocument document = new QifDocument(file);
        QifXml xml = new QifXml(file, text);
        document.open(xml);
        while (xml.nextChild(1)) {
            document.section(xml);
        }
        xml.finish();
        return document;
    }

    /** Steps into the root element and holds its name and version against what is understood. */
    void open(QifXml xml) throws IOException {
        xml.root();
        if (!xml.name().equals("QIFDocument")) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    xml.where(""),
                    "",
                    "XML whose root is <" + Echo.plain(xml.name()) + ">",
                    "<QIFDocument>, the results of ISO 23952 (QIF 3.0)"));
        }
        String version = xml.attribute("versionQIF").orElse("");
        if (!xml.namespace().equals(NAMESPACE) || !version.equals(VERSION)) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_SCHEMA,
                    xml.where("versionQIF"),
                    xml.namespace().equals(NAMESPACE) ? "" : "the namespace is " + Echo.quoted(xml.namespace()),
                    version.isEmpty() ? "no version" : "QIF " + Echo.quoted(version),
                    "QIF 3.0.0 in the namespace " + NAMESPACE));
        }
    }

    /** Reads the child of the root whose start tag was read last, apart from measurements. */
    void section(QifXml xml) throws IOException {
        int own = xml.depth();
        switch (xml.name()) {
            case "QPId" -> id = xml.node(List.of()).text().toUpperCase(Locale.ROOT);
            case "Header" -> description = xml.node(HEAVY).textAt("Description");
            case "ExternalQIFReferences" -> readExternals(xml, own);
            case "FileUnits" -> units = QifUnits.of(xml.node(HEAVY));
            case "DatumDefinitions" -> readAll(xml, own, Kind.DATUM);
            case "DatumReferenceFrames" -> readAll(xml, own, Kind.FRAME);
            case "ThreadSpecifications" -> readAll(xml, own, Kind.THREAD);
            case "MeasurementResources" -> readInside(xml, own, "MeasurementDevices", Kind.DEVICE);
            case "ManufacturingProcessTraceabilities" -> readAll(xml, own, Kind.PROCESS);
            case "Product" -> readProduct(xml, own);
            case "Features" -> {
                while (xml.nextChild(own)) {
                    int list = xml.depth();
                    switch (xml.name()) {
                        case "FeatureDefinitions" -> readAll(xml, list, Kind.FEATURE_DEFINITION);
                        case "FeatureNominals" -> readAll(xml, list, Kind.FEATURE_NOMINAL);
                        case "FeatureItems" -> readAll(xml, list, Kind.FEATURE_ITEM);
                        default -> xml.leave(list);
                    }
                }
            }
            case "Characteristics" -> readCharacteristics(xml, own);
            case "Results" -> {
                hasResults = true;
                while (xml.nextChild(own)) {
                    resultsSection(xml);
                }
            }
            default -> xml.leave(own);
        }
    }

    private void resultsSection(QifXml xml) throws IOException {
        int own = xml.depth();
        if (xml.name().equals("ActualComponentSets")) {
            while (xml.nextChild(own)) {
                readAll(xml, xml.depth(), Kind.PIECE);
            }
        } else if (xml.name().equals("MeasurementResultsSet")) {
            while (xml.nextChild(own)) {
                QifNode node = xml.node(MEASUREMENTS);
                countEntry(node);
                results.add(node);
            }
        } else {
            xml.leave(own);
        }
    }

    private void readExternals(QifXml xml, int own) throws IOException {
        while (xml.nextChild(own)) {
            QifNode node = xml.node(HEAVY);
            countEntry(node);
            String key = node.attribute("id").orElse("");
            externals.put(
                    key,
                    new External(
                            node.textAt("QPId").orElse("").toUpperCase(Locale.ROOT),
                            node.textAt("URI").orElse(""),
                            node.where()));
        }
    }

    private void readProduct(QifXml xml, int own) throws IOException {
        while (xml.nextChild(own)) {
            int set = xml.depth();
            if (xml.name().equals("PartSet")) {
                while (xml.nextChild(set)) {
                    QifNode node = xml.node(HEAVY);
                    // Of several, none is known to be the one: an assembly's parts say nothing of which was measured.
                    part = namesPlanParts ? Optional.empty() : Optional.of(node);
                    namesPlanParts = true;
                }
            }
        }
    }

    private void readCharacteristics(QifXml xml, int own) throws IOException {
        while (xml.nextChild(own)) {
            int list = xml.depth();
            switch (xml.name()) {
                case "CharacteristicDefinitions" -> readAll(xml, list, Kind.DEFINITION);
                case "DefaultToleranceDefinitions" -> readAll(xml, list, Kind.TOLERANCE);
                case "CharacteristicNominals" -> readAll(xml, list, Kind.NOMINAL);
                case "CharacteristicItems" -> readAll(xml, list, Kind.ITEM);
                default -> xml.leave(list);
            }
        }
    }

    private void readInside(QifXml xml, int own, String name, Kind kind) throws IOException {
        while (xml.nextChild(own)) {
            if (xml.name().equals(name)) {
                readAll(xml, xml.depth(), kind);
            }
        }
    }

    private void readAll(QifXml xml, int list, Kind kind) throws IOException {
        while (xml.nextChild(list)) {
            QifNode node = xml.node(HEAVY);
            countEntry(node);
            Optional<String> key = node.attribute("id");
            if (key.isEmpty() && !node.children().isEmpty()) {
                // A thread specification is wrapped once more; its id stands one step further in.
                key = node.children().get(0).attribute("id");
            }
            if (key.isEmpty()) {
                throw new TextRefused(Fault.of(
                        FaultKind.MISSING,
                        node.where(),
                        "nothing can refer to it",
                        "<" + Echo.plain(node.name()) + "> without an id",
                        "an attribute id"));
            }
            QifNode twin =
                    entries.computeIfAbsent(kind, any -> new LinkedHashMap<>()).putIfAbsent(key.get(), node);
            if (twin != null) {
                throw new TextRefused(Fault.of(
                        FaultKind.CONTRADICTION,
                        node.where(),
                        "two elements have the id " + Echo.plain(key.get()) + " (the first in line "
                                + twin.where().line() + "), so it is not known which of them others mean",
                        "",
                        "an id of its own for each"));
            }
        }
    }

    private void countEntry(QifNode node) throws TextRefused {
        if (++count > MOST_ENTRIES) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    node.where(),
                    "",
                    "more than " + MOST_ENTRIES + " characteristics, features, devices and pieces",
                    "at most that"));
        }
    }

    String file() {
        return file;
    }

    /** Its identification, in capitals; empty if it has none. */
    String id() {
        return id;
    }

    QifUnits units() {
        return units;
    }

    /** The part that the document is about, if it names exactly one. */
    Optional<QifNode> part() {
        return part;
    }

    /** What the header says of the document. */
    Optional<String> description() {
        return description;
    }

    /** The results of each measuring run without its measurements, in the order of the document. */
    List<QifNode> results() {
        return results;
    }

    boolean hasResults() {
        return hasResults;
    }

    boolean hasCharacteristics() {
        return !all(Kind.ITEM).isEmpty() || !all(Kind.NOMINAL).isEmpty();
    }

    /** All entries of a kind by their ids, in the order of the document. */
    Map<String, QifNode> all(Kind kind) {
        return entries.getOrDefault(kind, Map.of());
    }

    /** The entry of that kind and id. */
    Optional<QifNode> find(Kind kind, String key) {
        return Optional.ofNullable(all(kind).get(key));
    }

    /** The other documents to which this one refers, by the ids that it gives them. */
    Map<String, External> externals() {
        return externals;
    }
}
