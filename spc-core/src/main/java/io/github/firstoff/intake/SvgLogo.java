package io.github.firstoff.intake;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Holds an SVG picture (W3C SVG 1.1) to what a sheet can print: shapes in plain colours. The picture is written anew from the elements and
 * attributes that are understood; nothing else of the file goes on, so that nothing in it can run, be fetched or unfold.
 */
final class SvgLogo {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final int MOST_ELEMENTS = 2000;
    private static final int DEEPEST = 40;
    private static final int LONGEST_VALUE = 200_000;

    private static final Set<String> GROUPS = Set.of("svg", "g");
    private static final Set<String> SHAPES =
            Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon");

    /** What says something about the picture and draws nothing. */
    private static final Set<String> SILENT = Set.of("title", "desc", "metadata");

    private static final Set<String> GEOMETRY = Set.of(
            "d",
            "x",
            "y",
            "width",
            "height",
            "rx",
            "ry",
            "cx",
            "cy",
            "r",
            "x1",
            "y1",
            "x2",
            "y2",
            "points",
            "transform",
            "viewBox");

    private static final Set<String> PAINT = Set.of(
            "fill",
            "stroke",
            "stroke-width",
            "fill-rule",
            "stroke-linecap",
            "stroke-linejoin",
            "stroke-miterlimit",
            "stroke-dasharray",
            "stroke-dashoffset");

    /** What would change the picture and is not drawn; only where it says "nothing of the kind" it may stay out. */
    private static final Set<String> REFUSED =
            Set.of("opacity", "fill-opacity", "stroke-opacity", "filter", "mask", "clip-path", "display", "visibility");

    private static final Set<String> HARMLESS = Set.of("1", "1.0", "100%", "none", "inline", "visible");

    /** Numbers, names of colours, commands of paths and transforms: no quotes, no braces, no addresses. */
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9#.,+%()\\s-]*");

    private final String name;
    private final StringBuilder out = new StringBuilder();
    private int elements;

    private SvgLogo(String name) {
        this.name = name;
    }

    /**
     * The picture alone.
     *
     * @throws InputRefused if it is no SVG picture, or holds what a sheet does not print
     */
    static byte[] kept(String name, byte[] bytes) {
        SvgLogo logo = new SvgLogo(name);
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        try {
            XMLStreamReader in = factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
            try {
                logo.document(in);
            } finally {
                in.close();
            }
        } catch (XMLStreamException fault) {
            int line = fault.getLocation() == null
                    ? 0
                    : Math.max(0, fault.getLocation().getLineNumber());
            throw InputRefused.because(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    new Fault.Where(name, line, 0, ""),
                    "",
                    "something that is neither PNG nor well-formed XML",
                    "a PNG or SVG picture"));
        }
        return logo.out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void document(XMLStreamReader in) throws XMLStreamException {
        int depth = 0;
        while (in.hasNext()) {
            switch (in.next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    if (depth == 0) {
                        root(in);
                    }
                    if (isSilent(in)) {
                        skip(in);
                    } else {
                        depth++;
                        element(in, depth);
                    }
                }
                case XMLStreamConstants.END_ELEMENT -> {
                    depth--;
                    out.append("</").append(in.getLocalName()).append('>');
                }
                case XMLStreamConstants.ENTITY_REFERENCE, XMLStreamConstants.DTD -> {
                    if (in.getEventType() == XMLStreamConstants.ENTITY_REFERENCE) {
                        throw refused(in, "a reference to an entity", "plain shapes");
                    }
                }
                default -> {
                    // text between shapes draws nothing
                }
            }
        }
    }

    private void root(XMLStreamReader in) {
        if (!SVG.equals(in.getNamespaceURI()) || !in.getLocalName().equals("svg")) {
            throw refused(in, "the element " + Echo.quoted(in.getLocalName()), "an SVG picture");
        }
        boolean sized = in.getAttributeValue(null, "width") != null && in.getAttributeValue(null, "height") != null;
        if (in.getAttributeValue(null, "viewBox") == null && !sized) {
            throw refused(in, "no size", "the attribute viewBox, or width and height");
        }
    }

    private static boolean isSilent(XMLStreamReader in) {
        return !SVG.equals(in.getNamespaceURI())
                || SILENT.contains(in.getLocalName())
                || in.getLocalName().equals("defs");
    }

    /** Passes over an element that draws nothing; definitions that something refers to are refused where they are referred to. */
    private void skip(XMLStreamReader in) throws XMLStreamException {
        int open = 1;
        while (open > 0 && in.hasNext()) {
            int event = in.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                count(in);
                if (in.getLocalName().toLowerCase(Locale.ROOT).endsWith("script")) {
                    throw refused(in, "a script", "plain shapes");
                }
                open++;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                open--;
            }
        }
    }

    private void count(XMLStreamReader in) {
        elements++;
        if (elements > MOST_ELEMENTS) {
            throw refused(in, "more than " + MOST_ELEMENTS + " elements", "a simpler picture");
        }
    }

    private void element(XMLStreamReader in, int depth) {
        String element = in.getLocalName();
        count(in);
        if (depth > DEEPEST) {
            throw refused(in, "elements nested more than " + DEEPEST + " deep", "a simpler picture");
        }
        if (!GROUPS.contains(element) && !SHAPES.contains(element)) {
            throw refused(
                    in,
                    "the element " + Echo.quoted(element),
                    "only groups and the shapes path, rect, circle, ellipse, line, polyline and polygon, in plain colours;"
                            + " turn text into paths and leave out scripts, pictures, links and effects");
        }
        out.append('<').append(element);
        if (depth == 1) {
            out.append(" xmlns=\"").append(SVG).append('"');
        }
        attributes(in)
                .forEach((key, value) ->
                        out.append(' ').append(key).append("=\"").append(value).append('"'));
        out.append('>');
    }

    private Map<String, String> attributes(XMLStreamReader in) {
        Map<String, String> kept = new LinkedHashMap<>();
        for (int i = 0; i < in.getAttributeCount(); i++) {
            String key = in.getAttributeLocalName(i);
            String value = in.getAttributeValue(i);
            boolean foreign = in.getAttributeNamespace(i) != null
                    && !in.getAttributeNamespace(i).isEmpty();
            if (key.equals("href")) {
                throw refused(in, "a reference to " + Echo.quoted(value), "no references");
            }
            if (foreign) {
                continue;
            }
            if (key.toLowerCase(Locale.ROOT).startsWith("on")) {
                throw refused(in, "the script " + Echo.quoted(key), "plain shapes");
            }
            if (key.equals("style")) {
                style(in, value, kept);
            } else {
                attribute(in, key, value, kept);
            }
        }
        return kept;
    }

    private void style(XMLStreamReader in, String style, Map<String, String> kept) {
        for (String declaration : style.split(";", -1)) {
            int colon = declaration.indexOf(':');
            if (colon > 0) {
                attribute(
                        in,
                        declaration.substring(0, colon).strip(),
                        declaration.substring(colon + 1).strip(),
                        kept);
            }
        }
    }

    private void attribute(XMLStreamReader in, String key, String value, Map<String, String> kept) {
        if (REFUSED.contains(key) && !HARMLESS.contains(value.strip())) {
            throw refused(in, key + " " + Echo.quoted(value), "opaque shapes without effects");
        }
        if (!GEOMETRY.contains(key) && !PAINT.contains(key)) {
            return;
        }
        if (value.length() > LONGEST_VALUE
                || !PLAIN.matcher(value).matches()
                || value.toLowerCase(Locale.ROOT).contains("url")) {
            throw refused(in, key + " " + Echo.quoted(value), "numbers and plain colours");
        }
        kept.put(key, value);
    }

    private InputRefused refused(XMLStreamReader in, String found, String expected) {
        return InputRefused.because(Fault.of(
                FaultKind.WRONG_FORMAT,
                new Fault.Where(name, Math.max(0, in.getLocation().getLineNumber()), 0, ""),
                "the logo cannot be printed",
                found,
                expected));
    }
}
