package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes small QIF documents for tests of readings against {@code resources/intake/plan.json}: one item for each characteristic of that
 * plan and one run of results for each piece.
 */
final class QifWriter {
    static final String PLAN_ID = "8C1E4A70-31B0-4C51-9D0E-0310C0000010";
    private static final String RESULTS_ID = "8C1E4A70-31B0-4C51-9D0E-0310C0000020";
    private static final Map<String, String> KINDS = new LinkedHashMap<>();

    static {
        KINDS.put("1", "Diameter");
        KINDS.put("2", "Thickness");
        KINDS.put("3", "Position");
        KINDS.put("4", "Diameter");
        KINDS.put("7", "SurfaceTexture");
        KINDS.put("9", "UserDefinedAttribute");
    }

    private QifWriter() {}

    /**
     * A measurement.
     *
     * @param part the piece
     * @param number the characteristic
     * @param inside what stands in the element apart from item and piece: status, value
     */
    record Measurement(String part, String number, String inside) {
        /** A value without any fault, or pass or fail of an attribute. */
        static Measurement of(String part, String number, String value) {
            boolean attribute = number.equals("9");
            String status = !attribute ? "NOT_ANALYZED" : value.equals("pass") ? "PASS" : "FAIL";
            String element = number.equals("7") ? "RoughnessAverageValue" : "Value";
            return new Measurement(
                    part,
                    number,
                    "<Status><CharacteristicStatusEnum>" + status + "</CharacteristicStatusEnum></Status>{item}"
                            + (attribute ? "" : "<" + element + ">" + value + "</" + element + ">"));
        }
    }

    static String head(String id) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<QIFDocument xmlns=\"http://qifstandards.org/xsd/qif3\""
                + " versionQIF=\"3.0.0\" idMax=\"999999\">\n<QPId>" + id + "</QPId>\n";
    }

    static String units(String length) {
        return "<FileUnits><PrimaryUnits><LinearUnit><UnitName>" + length
                + "</UnitName></LinearUnit></PrimaryUnits></FileUnits>\n";
    }

    /** The characteristics, each with its number as designator. */
    static String characteristics() {
        StringBuilder definitions = new StringBuilder();
        StringBuilder nominals = new StringBuilder();
        StringBuilder items = new StringBuilder();
        KINDS.forEach((number, kind) -> {
            definitions
                    .append("<")
                    .append(kind)
                    .append("CharacteristicDefinition id=\"10")
                    .append(number)
                    .append("\"/>\n");
            nominals.append("<")
                    .append(kind)
                    .append("CharacteristicNominal id=\"20")
                    .append(number)
                    .append("\"><CharacteristicDefinitionId>10")
                    .append(number)
                    .append("</CharacteristicDefinitionId></")
                    .append(kind)
                    .append("CharacteristicNominal>\n");
            items.append("<")
                    .append(kind)
                    .append("CharacteristicItem id=\"30")
                    .append(number)
                    .append("\"><CharacteristicDesignator><Designator>")
                    .append(number)
                    .append("</Designator></CharacteristicDesignator><CharacteristicNominalId>20")
                    .append(number)
                    .append("</CharacteristicNominalId></")
                    .append(kind)
                    .append("CharacteristicItem>\n");
        });
        return "<Characteristics><FormalStandardId>1</FormalStandardId><CharacteristicDefinitions n=\"6\">\n"
                + definitions + "</CharacteristicDefinitions><CharacteristicNominals n=\"6\">\n" + nominals
                + "</CharacteristicNominals><CharacteristicItems n=\"6\">\n" + items
                + "</CharacteristicItems></Characteristics>\n";
    }

    /** The results of pieces, one run for each stretch of measurements of one piece. */
    static String results(List<Measurement> measurements, boolean elsewhere) {
        StringBuilder out = new StringBuilder("<Results><MeasurementResultsSet n=\"1\">\n");
        Map<String, Integer> pieces = new LinkedHashMap<>();
        String current = "";
        int id = 1000;
        for (Measurement each : measurements) {
            pieces.putIfAbsent(each.part(), 500_000 + pieces.size());
            if (!each.part().equals(current)) {
                endRun(out, current, pieces);
                current = each.part();
                out.append("<MeasurementResults id=\"")
                        .append(id++)
                        .append("\"><MeasuredCharacteristics>" + "<CharacteristicMeasurements n=\"1\">\n");
            }
            String kind = KINDS.getOrDefault(each.number(), "Length");
            String item = elsewhere
                    ? "<CharacteristicItemId xId=\"30" + each.number() + "\">77</CharacteristicItemId>"
                    : "<CharacteristicItemId>30" + each.number() + "</CharacteristicItemId>";
            out.append("<")
                    .append(kind)
                    .append("CharacteristicMeasurement id=\"")
                    .append(id++)
                    .append("\">")
                    .append(each.inside().replace("{item}", item))
                    .append("</")
                    .append(kind)
                    .append("CharacteristicMeasurement>\n");
        }
        endRun(out, current, pieces);
        out.append("</MeasurementResultsSet><ActualComponentSets n=\"1\"><ActualComponentSet n=\"1\">\n");
        pieces.forEach((part, key) -> out.append("<ActualComponent id=\"")
                .append(key)
                .append("\"><SerialNumber>")
                .append(part)
                .append("</SerialNumber><Status><InspectionStatusEnum>UNKNOWN</InspectionStatusEnum></Status>"
                        + "</ActualComponent>\n"));
        return out.append("</ActualComponentSet></ActualComponentSets></Results>\n")
                .toString();
    }

    private static void endRun(StringBuilder out, String part, Map<String, Integer> pieces) {
        if (!part.isEmpty()) {
            out.append(
                            "</CharacteristicMeasurements></MeasuredCharacteristics><InspectionStatus><InspectionStatusEnum>"
                                    + "NOT_CALCULATED</InspectionStatusEnum></InspectionStatus><ActualComponentIds n=\"1\"><Id>")
                    .append(pieces.get(part))
                    .append("</Id></ActualComponentIds></MeasurementResults>\n");
        }
    }

    /** Characteristics and results in one document. */
    static String together(List<Measurement> measurements) {
        return head(RESULTS_ID) + units("mm") + characteristics() + results(measurements, false) + "</QIFDocument>\n";
    }

    /** The document with the characteristics, and one with the results that refers to it. */
    static List<String> split(List<Measurement> measurements) {
        List<String> documents = new ArrayList<>();
        documents.add(head(PLAN_ID) + units("mm") + characteristics() + "</QIFDocument>\n");
        documents.add(head(RESULTS_ID)
                + "<ExternalQIFReferences n=\"1\"><ExternalQIFDocument id=\"77\"><QPId>"
                + PLAN_ID.toLowerCase(java.util.Locale.ROOT)
                + "</QPId><URI>file:///nowhere/plan.qif</URI></ExternalQIFDocument></ExternalQIFReferences>\n"
                + units("mm") + results(measurements, true) + "</QIFDocument>\n");
        return documents;
    }
}
