package io.github.firstoff.samples;

import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The port drum carrier and its first article as QIF 3.0 documents (ISO 23952): the characteristics in one document and the results in
 * another that refers to it, and both together in one. Own work; a test holds the documents against the schema of the standard.
 */
final class QifSamples {
    private static final String PLAN_ID = "8C1E4A70-31B0-4C51-9D0E-0310C0000001";
    private static final String RESULTS_ID = "8C1E4A70-31B0-4C51-9D0E-0310C0002201";
    private static final String TOGETHER_ID = "8C1E4A70-31B0-4C51-9D0E-0310C0003201";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss");
    private static final int DEFINITIONS = 100;
    private static final int NOMINALS = 200;
    private static final int ITEMS = 300;
    private static final int DEVICES = 400;

    private final StringBuilder out = new StringBuilder();
    private final List<Checked> characteristics;
    private final Map<String, Integer> devices = new LinkedHashMap<>();
    private int depth;

    private QifSamples(List<Checked> characteristics) {
        this.characteristics = characteristics;
        for (Checked each : characteristics) {
            each.gauge().ifPresent(gauge -> devices.putIfAbsent(gauge, DEVICES + devices.size() + 1));
        }
    }

    /** The characteristics alone. */
    static String plan(List<Checked> characteristics) {
        QifSamples document = new QifSamples(characteristics);
        document.open(PLAN_ID, 999);
        document.requirements();
        document.close();
        return document.out.toString();
    }

    /** The results alone, referring to the document with the characteristics. */
    static String results(List<Checked> characteristics, List<Piece> pieces, String machine) {
        QifSamples document = new QifSamples(characteristics);
        document.open(RESULTS_ID, 9999);
        document.start("ExternalQIFReferences", "n", "1");
        document.start("ExternalQIFDocument", "id", "1");
        document.text("QPId", PLAN_ID);
        document.text("URI", "hq-310-p.plan.qif");
        document.end("ExternalQIFDocument");
        document.end("ExternalQIFReferences");
        document.units();
        document.measured(pieces, machine, " xId=\"%d\">1<");
        document.close();
        return document.out.toString();
    }

    /** Characteristics and results in one document. */
    static String together(List<Checked> characteristics, List<Piece> pieces, String machine) {
        QifSamples document = new QifSamples(characteristics);
        document.open(TOGETHER_ID, 9999);
        document.requirements();
        document.measured(pieces, machine, ">%d<");
        document.close();
        return document.out.toString();
    }

    // The document

    private void open(String id, int idMax) {
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.append("<QIFDocument xmlns=\"http://qifstandards.org/xsd/qif3\" versionQIF=\"3.0.0\" idMax=\"")
                .append(idMax)
                .append("\">\n");
        depth = 1;
        text("QPId", id);
    }

    private void close() {
        out.append("</QIFDocument>\n");
    }

    private void start(String name, String... attributes) {
        line("<" + name + attributes(attributes) + ">");
        depth++;
    }

    private void end(String name) {
        depth--;
        line("</" + name + ">");
    }

    private void text(String name, String text, String... attributes) {
        line("<" + name + attributes(attributes) + ">" + text + "</" + name + ">");
    }

    private static String attributes(String... attributes) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < attributes.length; i += 2) {
            text.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(attributes[i + 1])
                    .append('"');
        }
        return text.toString();
    }

    private void line(String text) {
        out.append("  ".repeat(depth)).append(text).append('\n');
    }

    // What is required

    private void requirements() {
        start("StandardsDefinitions", "n", "1");
        start("Standard", "id", "1");
        line("<Organization><StandardsOrganizationEnum>ISO</StandardsOrganizationEnum></Organization>");
        text("Designator", "1101");
        end("Standard");
        end("StandardsDefinitions");
        units();
        datums();
        start("MeasurementResources");
        start("MeasurementDevices", "n", Integer.toString(devices.size()));
        devices.forEach((gauge, id) -> {
            start("MeasurementDevice", "id", id.toString());
            text("Name", gauge);
            end("MeasurementDevice");
        });
        end("MeasurementDevices");
        end("MeasurementResources");
        line("<ThreadSpecifications n=\"1\">");
        line("  <ThreadSpecification><TextThreadSpecification id=\"6\"><TextSpecification>M5x0.8-6H</TextSpecification>"
                + "</TextThreadSpecification></ThreadSpecification>");
        line("</ThreadSpecifications>");
        start("Product");
        start("PartSet", "n", "1");
        start("Part", "id", "7");
        line("<Header><Name>Winch drum carrier, port</Name></Header>");
        text("ModelNumber", "HQ-310-P");
        text("Version", "C");
        end("Part");
        end("PartSet");
        end("Product");
        start("Characteristics");
        text("FormalStandardId", "1");
        String count = Integer.toString(characteristics.size());
        start("CharacteristicDefinitions", "n", count);
        characteristics.forEach(this::definition);
        end("CharacteristicDefinitions");
        start("CharacteristicNominals", "n", count);
        characteristics.forEach(this::nominal);
        end("CharacteristicNominals");
        start("CharacteristicItems", "n", count);
        characteristics.forEach(this::item);
        end("CharacteristicItems");
        end("Characteristics");
    }

    private void units() {
        start("FileUnits");
        start("PrimaryUnits");
        line("<AngularUnit><SIUnitName>radian</SIUnitName><UnitName>degree</UnitName>"
                + "<UnitConversion><Factor>0.0174532925199433</Factor></UnitConversion></AngularUnit>");
        line("<LinearUnit><SIUnitName>meter</SIUnitName><UnitName>mm</UnitName>"
                + "<UnitConversion><Factor>0.001</Factor></UnitConversion></LinearUnit>");
        end("PrimaryUnits");
        end("FileUnits");
    }

    private void datums() {
        start("DatumDefinitions", "n", "2");
        line("<DatumDefinition id=\"2\"><DatumLabel>A</DatumLabel></DatumDefinition>");
        line("<DatumDefinition id=\"3\"><DatumLabel>B</DatumLabel></DatumDefinition>");
        end("DatumDefinitions");
        start("DatumReferenceFrames", "n", "2");
        start("DatumReferenceFrame", "id", "4");
        start("Datums", "n", "1");
        datum(2, "PRIMARY");
        end("Datums");
        end("DatumReferenceFrame");
        start("DatumReferenceFrame", "id", "5");
        start("Datums", "n", "2");
        datum(2, "PRIMARY");
        datum(3, "SECONDARY");
        end("Datums");
        end("DatumReferenceFrame");
        end("DatumReferenceFrames");
    }

    private void datum(int id, String rank) {
        line("<Datum><SimpleDatum><DatumDefinitionId>" + id + "</DatumDefinitionId><MaterialModifier>NONE"
                + "</MaterialModifier><ReferencedComponent>ACTUAL</ReferencedComponent></SimpleDatum><Precedence>"
                + "<PrecedenceEnum>" + rank + "</PrecedenceEnum></Precedence></Datum>");
    }

    /** The kind of the characteristic of that balloon, in the words of the standard. */
    private static String kind(String number) {
        return switch (number) {
            case "1", "4", "10", "12" -> "Diameter";
            case "2" -> "Depth";
            case "3" -> "SurfaceTexture";
            case "5", "9" -> "Thickness";
            case "6" -> "Flatness";
            case "7" -> "Perpendicularity";
            case "8", "13" -> "Height";
            case "11" -> "Position";
            case "14" -> "Radius";
            case "15" -> "UserDefinedLinear";
            case "16" -> "Length";
            case "17" -> "Angle";
            case "18" -> "Thread";
            default -> "UserDefinedAttribute";
        };
    }

    private void definition(Checked each) {
        String name = kind(each.number()) + "CharacteristicDefinition";
        start(name, "id", Integer.toString(DEFINITIONS + Integer.parseInt(each.number())));
        switch (each.number()) {
            case "1" -> fit("HOLE", "P", "7");
            case "2" -> tolerance("0.06", "0", false);
            case "3" -> text("RoughnessAverage", "0.0008");
            case "4" -> fit("SHAFT", "g", "6");
            case "5" -> tolerance("0.05", "-0.05", false);
            case "6" -> text("ToleranceValue", "0.02");
            case "7" -> {
                text("ToleranceValue", "0.03");
                text("DatumReferenceFrameId", "4");
                text("MaterialCondition", "REGARDLESS");
                line("<ZoneShape><DiametricalZone/></ZoneShape>");
            }
            case "8" -> tolerance("18.35", "18.20", true);
            case "9" -> line("<Tolerance><MinValue>5</MinValue><DefinedAsLimit>true</DefinedAsLimit></Tolerance>");
            case "10" -> fit("HOLE", "H", "13");
            case "11" -> {
                text("ToleranceValue", "0.2");
                text("DatumReferenceFrameId", "5");
                text("MaterialCondition", "MAXIMUM");
                text("SizeCharacteristicDefinitionId", Integer.toString(DEFINITIONS + 10));
                line("<ZoneShape><DiametricalZone/></ZoneShape>");
            }
            case "12" -> {
                text("DimensionType", "BASIC_OR_TED");
                text("NonTolerance", "SET");
            }
            case "13" -> {
                text("DimensionType", "REFERENCE_OR_AUXILIARY");
                text("NonTolerance", "MEASURED");
            }
            // The general tolerances of ISO 2768-m, which QIF can only state as figures.
            case "14" -> tolerance("0.2", "-0.2", false);
            case "15" -> {
                tolerance("0.2", "-0.2", false);
                text("WhatToMeasure", "leg of the chamfer");
            }
            case "16" -> tolerance("0.3", "-0.3", false);
            case "17" -> tolerance("0.5", "-0.5", false);
            case "18" -> text("ThreadSpecificationId", "6");
            default -> text("WhatToMeasure", each.requirement());
        }
        end(name);
    }

    private void fit(String side, String letter, String grade) {
        line("<LimitsAndFitsSpecification zoneVariance=\"" + side + "\"><FormVariance>" + letter
                + "</FormVariance><Grade>" + grade + "</Grade></LimitsAndFitsSpecification>");
    }

    private void tolerance(String most, String least, boolean limits) {
        line("<Tolerance><MaxValue>" + most + "</MaxValue><MinValue>" + least + "</MinValue><DefinedAsLimit>" + limits
                + "</DefinedAsLimit></Tolerance>");
    }

    private static String target(String number) {
        return switch (number) {
            case "1" -> "52";
            case "2" -> "15.1";
            case "4" -> "64";
            case "5" -> "12.5";
            case "10" -> "6.6";
            case "12" -> "88";
            case "13" -> "52.5";
            case "14" -> "3";
            case "15" -> "1";
            case "16" -> "40";
            case "17" -> "30";
            default -> "";
        };
    }

    private void nominal(Checked each) {
        String name = kind(each.number()) + "CharacteristicNominal";
        int number = Integer.parseInt(each.number());
        start(name, "id", Integer.toString(NOMINALS + number));
        text("CharacteristicDefinitionId", Integer.toString(DEFINITIONS + number));
        if (!target(each.number()).isEmpty()) {
            text("TargetValue", target(each.number()));
        }
        end(name);
    }

    private void item(Checked each) {
        String name = kind(each.number()) + "CharacteristicItem";
        int number = Integer.parseInt(each.number());
        start(name, "id", Integer.toString(ITEMS + number));
        text("Description", each.feature());
        start("CharacteristicDesignator");
        text("Designator", each.number());
        each.importance()
                .ifPresent(word -> line(
                        "<Criticality><LevelEnum>" + word.toUpperCase(Locale.ROOT) + "</LevelEnum></Criticality>"));
        end("CharacteristicDesignator");
        each.gauge()
                .ifPresent(gauge -> line(
                        "<MeasurementDeviceIds n=\"1\"><Id>" + devices.get(gauge) + "</Id></MeasurementDeviceIds>"));
        text("CharacteristicNominalId", Integer.toString(NOMINALS + number));
        end(name);
    }

    // What was measured

    private void measured(List<Piece> pieces, String machine, String reference) {
        int id = 1000;
        start("Results");
        start("MeasurementResultsSet", "n", Integer.toString(pieces.size()));
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            start("MeasurementResults", "id", Integer.toString(id++));
            start("InspectionTraceability");
            text("InspectionStart", TIME.format(piece.time()));
            line("<InspectionOperator><Name>" + piece.operator() + "</Name></InspectionOperator>");
            end("InspectionTraceability");
            start("MeasuredCharacteristics");
            start(
                    "CharacteristicMeasurements",
                    "n",
                    Integer.toString(piece.readings().size()));
            for (Map.Entry<String, String> reading : piece.readings().entrySet()) {
                measurement(id++, reading.getKey(), reading.getValue(), reference);
            }
            end("CharacteristicMeasurements");
            end("MeasuredCharacteristics");
            line("<InspectionStatus><InspectionStatusEnum>PASS</InspectionStatusEnum></InspectionStatus>");
            line("<ActualComponentIds n=\"1\"><Id>" + (501 + i) + "</Id></ActualComponentIds>");
            end("MeasurementResults");
        }
        end("MeasurementResultsSet");
        start("ActualComponentSets", "n", "1");
        start("ActualComponentSet", "n", Integer.toString(pieces.size()));
        for (int i = 0; i < pieces.size(); i++) {
            start("ActualComponent", "id", Integer.toString(501 + i));
            text("SerialNumber", pieces.get(i).serial());
            line("<Status><InspectionStatusEnum>PASS</InspectionStatusEnum></Status>");
            line("<Traceability><ManufacturingProcessId>500</ManufacturingProcessId></Traceability>");
            end("ActualComponent");
        }
        end("ActualComponentSet");
        end("ActualComponentSets");
        end("Results");
        start("ManufacturingProcessTraceabilities", "n", "1");
        start("ManufacturingProcessTraceability", "id", "500");
        text("MachineIdentifier", machine);
        end("ManufacturingProcessTraceability");
        end("ManufacturingProcessTraceabilities");
    }

    private void measurement(int id, String number, String value, String reference) {
        String kind = kind(number);
        String name = kind + "CharacteristicMeasurement";
        start(name, "id", Integer.toString(id));
        boolean judged = !number.equals("13");
        line("<Status><CharacteristicStatusEnum>" + (judged ? "PASS" : "NOT_ANALYZED")
                + "</CharacteristicStatusEnum></Status>");
        line("<CharacteristicItemId" + reference.formatted(ITEMS + Integer.parseInt(number))
                + "/CharacteristicItemId>");
        gauge(number)
                .ifPresent(device -> line("<MeasurementDeviceIds n=\"1\"><Id" + reference.formatted(device)
                        + "/Id></MeasurementDeviceIds>"));
        switch (kind) {
            case "SurfaceTexture" ->
                text(
                        "RoughnessAverageValue",
                        new BigDecimal(value).movePointLeft(3).toPlainString());
            case "Thread", "UserDefinedAttribute" -> {}
            default -> text("Value", value);
        }
        end(name);
    }

    private Optional<Integer> gauge(String number) {
        return characteristics.stream()
                .filter(each -> each.number().equals(number))
                .findFirst()
                .flatMap(Checked::gauge)
                .map(devices::get);
    }
}
