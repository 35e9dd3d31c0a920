package io.github.firstoff.report.pdf;

import io.github.firstoff.report.model.DocumentInfo;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** What an archive wants in the file: metadata as XMP, and the meaning of its colours. Steps towards PDF/A-3b (ISO 19005-3). */
final class Archive {
    /** An archive wants to be told of names in its metadata that its own standard does not know (ISO 19005-3, 6.6.2.3). */
    private static final String ACCESSIBILITY_SCHEMA = """
            <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
              xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
            <pdfaProperty:name>part</pdfaProperty:name>
            <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
            <pdfaProperty:category>internal</pdfaProperty:category>
            <pdfaProperty:description>part of ISO 14289 that the file follows</pdfaProperty:description>
            </rdf:li></rdf:Seq></pdfaSchema:property>
            </rdf:li></rdf:Bag></pdfaExtension:schemas>
            </rdf:Description>
            """;

    private Archive() {}

    static byte[] metadata(DocumentInfo info, String program, String producer) {
        String date = DateTimeFormatter.ISO_LOCAL_DATE_TIME
                        .withLocale(Locale.ROOT)
                        .format(info.created().truncatedTo(ChronoUnit.SECONDS).atOffset(ZoneOffset.UTC))
                + "Z";
        StringBuilder xml = new StringBuilder();
        xml.append("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n")
                .append("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n")
                .append("<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n")
                .append("<rdf:Description rdf:about=\"\"")
                .append(" xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\"")
                .append(" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"")
                .append(" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\"")
                .append(" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n")
                .append("<pdfaid:part>3</pdfaid:part>\n<pdfaid:conformance>A</pdfaid:conformance>\n")
                .append("<dc:format>application/pdf</dc:format>\n")
                .append("<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">")
                .append(escaped(info.title()))
                .append("</rdf:li></rdf:Alt></dc:title>\n");
        if (!info.author().isEmpty()) {
            xml.append("<dc:creator><rdf:Seq><rdf:li>")
                    .append(escaped(info.author()))
                    .append("</rdf:li></rdf:Seq></dc:creator>\n");
        }
        if (!info.subject().isEmpty()) {
            xml.append("<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">")
                    .append(escaped(info.subject()))
                    .append("</rdf:li></rdf:Alt></dc:description>\n");
        }
        xml.append("<dc:language><rdf:Bag><rdf:li>")
                .append(escaped(info.language().toLanguageTag()))
                .append("</rdf:li></rdf:Bag></dc:language>\n")
                .append("<xmp:CreatorTool>")
                .append(escaped(program))
                .append("</xmp:CreatorTool>\n<xmp:CreateDate>")
                .append(date)
                .append("</xmp:CreateDate>\n<xmp:ModifyDate>")
                .append(date)
                .append("</xmp:ModifyDate>\n<pdf:Producer>")
                .append(escaped(producer))
                .append("</pdf:Producer>\n")
                .append("<pdfuaid:part xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">1</pdfuaid:part>\n")
                .append("</rdf:Description>\n")
                .append(ACCESSIBILITY_SCHEMA)
                .append("</rdf:RDF>\n</x:xmpmeta>\n")
                .append("<?xpacket end=\"w\"?>");
        return xml.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(Character.isISOControl(c) ? ' ' : c);
            }
        });
        return safe.toString();
    }

    /**
     * A profile of the colour space sRGB (IEC 61966-2-1), written here byte for byte so that it is the same on every machine:
     * ICC version 2, matrix and tone curves. The primaries are those of sRGB adapted to D50, as printed in the ICC's own
     * description of the space. It never passes through the runtime's own class for profiles, which puts the marks of its maker and of its
     * system into the head, so that sheets of two runtimes would differ.
     */
    static byte[] screenProfile() {
        byte[] description = description("sRGB IEC61966-2.1");
        byte[] copyright = text("Public domain");
        byte[] white = xyz(0.9642, 1.0, 0.8249);
        byte[] red = xyz(0.4360747, 0.2225045, 0.0139322);
        byte[] green = xyz(0.3850649, 0.7168786, 0.0971045);
        byte[] blue = xyz(0.1430804, 0.0606169, 0.7141733);
        byte[] curve = curve();
        String[] names = {"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"};
        byte[][] parts = {description, copyright, white, red, green, blue, curve};
        int table = 128 + 4 + 12 * names.length;
        int size = table;
        for (byte[] part : parts) {
            size += part.length;
        }
        ByteBuffer out = ByteBuffer.allocate(size);
        out.putInt(size).putInt(0).putInt(0x02100000);
        out.put(ascii("mntrRGB XYZ "));
        for (int part : new int[] {2026, 1, 1, 0, 0, 0}) {
            out.putShort((short) part);
        }
        out.put(ascii("acsp"))
                .putInt(0)
                .putInt(0)
                .putInt(0)
                .putInt(0)
                .putLong(0)
                .putInt(0);
        out.put(fixed(0.9642)).put(fixed(1.0)).put(fixed(0.8249)).putInt(0);
        out.position(128);
        out.putInt(names.length);
        int[] offsets = new int[parts.length];
        int offset = table;
        for (int i = 0; i < parts.length; i++) {
            offsets[i] = offset;
            offset += parts[i].length;
        }
        for (int i = 0; i < names.length; i++) {
            int part = Math.min(i, parts.length - 1);
            out.put(ascii(names[i])).putInt(offsets[part]).putInt(parts[part].length);
        }
        for (byte[] part : parts) {
            out.put(part);
        }
        return out.array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] fixed(double value) {
        return ByteBuffer.allocate(4).putInt((int) Math.round(value * 65536)).array();
    }

    private static byte[] xyz(double x, double y, double z) {
        return ByteBuffer.allocate(20)
                .put(ascii("XYZ "))
                .putInt(0)
                .put(fixed(x))
                .put(fixed(y))
                .put(fixed(z))
                .array();
    }

    private static byte[] text(String text) {
        return ByteBuffer.allocate(padded(8 + text.length() + 1))
                .put(ascii("text"))
                .putInt(0)
                .put(ascii(text))
                .array();
    }

    private static byte[] description(String text) {
        // ASCII name, then empty Unicode and script code names of fixed lengths.
        return ByteBuffer.allocate(padded(12 + text.length() + 1 + 8 + 3 + 67))
                .put(ascii("desc"))
                .putInt(0)
                .putInt(text.length() + 1)
                .put(ascii(text))
                .array();
    }

    private static byte[] curve() {
        int count = 1024;
        ByteBuffer out = ByteBuffer.allocate(padded(12 + 2 * count));
        out.put(ascii("curv")).putInt(0).putInt(count);
        for (int i = 0; i < count; i++) {
            double v = i / (count - 1.0);
            double linear = v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4);
            out.putShort((short) Math.round(linear * 65535));
        }
        return out.array();
    }

    private static int padded(int length) {
        return (length + 3) / 4 * 4;
    }
}
