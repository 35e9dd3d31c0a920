package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * The XML of a part of a workbook, tag by tag. Nothing outside the part is ever read, entities and document types are refused, and no tag
 * and no depth is without bound. Names are those without their prefix.
 */
final class SheetXml implements AutoCloseable {
    private static final int DEEPEST = 100;
    private static final int MOST_ATTRIBUTES = 200;
    private static final int LONGEST_NAME = 1000;

    private final BoundedPart part;
    private final XMLStreamReader xml;
    private Where where;
    private int depth;

    /** What was read. */
    enum Event {
        /** A start tag. */
        START,
        /** An end tag. */
        END,
        /** Text, perhaps not all of it. */
        TEXT,
        /** The end of the part. */
        FINISH
    }

    /**
     * A part.
     *
     * @param where the workbook or the sheet, for messages
     * @param part its bytes
     */
    SheetXml(Where where, BoundedPart part) throws IOException {
        this.where = where;
        this.part = part;
        try {
            xml = SealedXml.of(text(part), MOST_ATTRIBUTES, LONGEST_NAME);
        } catch (XMLStreamException fault) {
            throw unreadable(fault);
        }
        String declared = xml.getCharacterEncodingScheme();
        if (declared != null && !declared.toUpperCase(Locale.ROOT).startsWith("UTF-")) {
            throw refused("the workbook is damaged: a part of it is text in " + Echo.quoted(declared));
        }
    }

    /** Parts are in UTF-8 or UTF-16 (ECMA-376-2:2012, 10.1.5; ISO/IEC 26300 as all known programs write it). */
    private static Reader text(BoundedPart part) throws IOException {
        PushbackInputStream bytes = new PushbackInputStream(part, 4);
        byte[] first = bytes.readNBytes(4);
        TextEncoding encoding = first.length > 1 && first[0] != 0 && first[1] != 0
                ? TextEncoding.of(Arrays.copyOf(first, Math.min(3, first.length)))
                : TextEncoding.of(first);
        int mark = encoding.markLength(first);
        bytes.unread(first, mark, first.length - mark);
        return new InputStreamReader(
                bytes,
                encoding.charset()
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    /** Says where the reader is, for messages. */
    void at(Where place) {
        where = place;
    }

    /** How many elements are open. */
    int depth() {
        return depth;
    }

    /** Steps on. */
    Event next() throws IOException {
        try {
            while (xml.hasNext()) {
                int event = xml.next();
                part.tokenRead();
                switch (event) {
                    case XMLStreamConstants.START_ELEMENT -> {
                        if (++depth > DEEPEST) {
                            throw refused("its elements nest more than " + DEEPEST + " deep");
                        }
                        return Event.START;
                    }
                    case XMLStreamConstants.END_ELEMENT -> {
                        depth--;
                        return Event.END;
                    }
                    case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
                        return Event.TEXT;
                    }
                    case XMLStreamConstants.DTD ->
                        throw refused(
                                "a document type declaration can pull in other files and swell without bound, and "
                                        + "is not read");
                    case XMLStreamConstants.ENTITY_REFERENCE ->
                        throw refused("nothing says what the entity " + Echo.quoted("&" + xml.getLocalName() + ";")
                                + " stands for");
                    default -> {
                        // comments and the like
                    }
                }
            }
            return Event.FINISH;
        } catch (XMLStreamException fault) {
            throw unreadable(fault);
        }
    }

    /** Whether a start tag was read last. */
    boolean isAtStart() {
        return xml.isStartElement();
    }

    /** The name of the element whose tag was read last. */
    String name() {
        return xml.getLocalName();
    }

    /** The text that was read last. */
    String text() {
        return xml.getText();
    }

    /** An attribute of the start tag that was read last, whatever its prefix; null if it has none of the name. */
    @Nullable
    String attribute(String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(name)) {
                return xml.getAttributeValue(i);
            }
        }
        return null;
    }

    /** An attribute without its prefix. */
    record Attribute(String name, String value) {}

    /** All attributes of the start tag that was read last. */
    List<Attribute> attributes() {
        List<Attribute> all = new ArrayList<>();
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            all.add(new Attribute(xml.getAttributeLocalName(i), xml.getAttributeValue(i)));
        }
        return all;
    }

    /** The same, if it is there. */
    Optional<String> maybe(String name) {
        return Optional.ofNullable(attribute(name));
    }

    /** Whether an attribute says yes, as {@code 1} or {@code true}. */
    boolean says(String name) {
        String value = attribute(name);
        return value != null && (value.equals("1") || value.equals("true") || value.equals("on"));
    }

    /** Passes over the rest of the element whose start tag was read last. */
    void skip() throws IOException {
        int inside = depth;
        while (depth >= inside && next() != Event.FINISH) {
            // only the tags count
        }
    }

    private TextRefused refused(String why) {
        return new TextRefused(Fault.of(FaultKind.SYNTAX, where, why, "", "a workbook that a spreadsheet saved"));
    }

    /** The parser's own words come in the language of the machine, so they are not repeated. */
    private IOException unreadable(XMLStreamException fault) {
        for (Throwable cause = fault; cause != null; cause = causeOf(cause)) {
            if (cause instanceof TextRefused refused) {
                return refused;
            }
            if (cause instanceof IOException && !(cause instanceof CharacterCodingException)) {
                // The library's own guard, which looks at how much comes of how little.
                return new TextRefused(Fault.of(
                        FaultKind.TOO_LARGE,
                        where,
                        "what is packed in the workbook unpacks to more than a hundred times its size",
                        "",
                        "a workbook of readings"));
            }
        }
        if (fault.getMessage() != null && fault.getMessage().contains("JAXP0001")) {
            // The platform's own limits, which are named by number in every language.
            return new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where,
                    "",
                    "a tag of more than " + MOST_ATTRIBUTES + " attributes, or a name of more than " + LONGEST_NAME
                            + " characters",
                    "a workbook that a spreadsheet saved"));
        }
        return refused("the workbook is damaged: this part of it is no well-formed XML; the rest was not read");
    }

    private static @Nullable Throwable causeOf(Throwable fault) {
        if (fault instanceof XMLStreamException stream && stream.getNestedException() != null) {
            return stream.getNestedException();
        }
        return fault.getCause();
    }

    @Override
    public void close() throws IOException {
        try {
            xml.close();
        } catch (XMLStreamException fault) {
            throw unreadable(fault);
        }
        part.close();
    }
}
