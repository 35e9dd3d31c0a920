package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.Location;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Walks through the elements of an XML text, one start tag at a time, and keeps nothing but the names of those that are open.
 *
 * <p>Nothing that the text names is ever fetched: a document type declaration is refused, and with it every entity but the five that
 * XML itself has. How deep elements nest, how many attributes one has and how long a single tag, comment or text may be is bounded, so
 * that a text made to hurt ends in a fault and not in a full memory.
 */
final class QifXml {
    /** Deeper than any QIF document by far. */
    static final int DEEPEST = 100;

    private static final int MOST_ATTRIBUTES = 100;
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_TOKEN = 1 << 22;
    private static final int LONGEST_TEXT = 10_000;
    private static final int MOST_NODES = 5_000;

    private final String file;
    private final Meter meter;
    private final XMLStreamReader xml;
    private final Deque<String> open = new ArrayDeque<>();
    private String namespace = "";
    private int depth;

    /**
     * Begins at the first character of a text.
     *
     * @throws IOException if the text does not begin as XML; a {@link TextRefused} names the place
     */
    QifXml(String file, Reader text) throws IOException {
        this.file = file;
        this.meter = new Meter(file, text);
        try {
            this.xml = SealedXml.of(meter, MOST_ATTRIBUTES, LONGEST_NAME);
        } catch (XMLStreamException fault) {
            throw unreadable(fault);
        }
    }

    /** Steps into the root element. */
    void root() throws IOException {
        if (!advance()) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX, Where.inFile(file), "the text has no root element", "", "a QIF document"));
        }
        namespace = namespaceHere();
    }

    /** The namespace of the root element; elements of other namespaces have no name here. */
    String namespace() {
        return namespace;
    }

    /** The encoding that the XML declaration states, if it does. */
    Optional<String> declaredEncoding() {
        return Optional.ofNullable(xml.getCharacterEncodingScheme());
    }

    /** How many elements are open. */
    int depth() {
        return depth;
    }

    /** The name of the element whose start tag was read last; empty if it is of a foreign namespace. */
    String name() {
        return depth == 1 || namespaceHere().equals(namespace) ? xml.getLocalName() : "";
    }

    private String namespaceHere() {
        String uri = xml.getNamespaceURI();
        return uri == null ? "" : uri;
    }

    /** An attribute of the element whose start tag was read last. */
    Optional<String> attribute(String name) {
        return Optional.ofNullable(xml.getAttributeValue(null, name));
    }

    /**
     * Steps to the next child of the element at this depth; whatever was not read of an earlier one is passed over.
     *
     * @return false where the element has no further child; its end tag was read then
     */
    boolean nextChild(int parent) throws IOException {
        while (depth >= parent) {
            if (advance() && depth == parent + 1) {
                return true;
            }
        }
        return false;
    }

    /** Passes over the rest of the element at this depth, its end tag included. */
    void leave(int element) throws IOException {
        while (depth >= element) {
            advance();
        }
    }

    /** Reads on behind the root element, where nothing but comments may stand. */
    void finish() throws IOException {
        leave(1);
        while (next() != XMLStreamConstants.END_DOCUMENT) {
            meter.tokenRead();
        }
    }

    /** The place of what was read last: of a start tag, the first character behind it. */
    Where where(String field) {
        Location at = xml.getLocation();
        return new Where(file, Math.max(0, at.getLineNumber()), Math.max(0, at.getColumnNumber()), field);
    }

    /**
     * The element whose start tag was read last, with everything in it, apart from children of these names.
     *
     * @param passedOver names of elements that may hold very much and are not needed
     */
    QifNode node(List<String> passedOver) throws IOException {
        return node(passedOver, new int[] {MOST_NODES});
    }

    private QifNode node(List<String> passedOver, int[] left) throws IOException {
        String name = name();
        Where where = where(name);
        if (--left[0] < 0) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where,
                    "",
                    "more than " + MOST_NODES + " elements within one that should be short",
                    "a characteristic, a measurement or the like"));
        }
        Map<String, String> attributes = new LinkedHashMap<>();
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            attributes.put(xml.getAttributeLocalName(i), xml.getAttributeValue(i));
        }
        int own = depth;
        List<QifNode> children = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        while (depth >= own) {
            int event = next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                enter();
                String child = name();
                if (child.isEmpty() || passedOver.contains(child)) {
                    leave(depth);
                } else {
                    children.add(node(passedOver, left));
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                exit();
            } else if (isText(event)) {
                text.append(xml.getText());
                if (text.length() > LONGEST_TEXT) {
                    throw new TextRefused(Fault.of(
                            FaultKind.TOO_LARGE,
                            where,
                            "",
                            "a text of more than " + LONGEST_TEXT + " characters",
                            "at most that"));
                }
            }
            meter.tokenRead();
        }
        return new QifNode(name, attributes, text.toString().strip(), children, where);
    }

    private static boolean isText(int event) {
        return event == XMLStreamConstants.CHARACTERS
                || event == XMLStreamConstants.CDATA
                || event == XMLStreamConstants.SPACE;
    }

    /** Reads up to the next tag: true for a start tag, false for an end tag or the end of the text. */
    private boolean advance() throws IOException {
        while (true) {
            int event = next();
            meter.tokenRead();
            if (event == XMLStreamConstants.START_ELEMENT) {
                enter();
                return true;
            }
            if (event == XMLStreamConstants.END_ELEMENT) {
                exit();
                return false;
            }
            if (event == XMLStreamConstants.END_DOCUMENT) {
                return false;
            }
        }
    }

    private void enter() throws TextRefused {
        depth++;
        open.push(xml.getLocalName());
        if (depth > DEEPEST) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    where(""),
                    "elements nest more than " + DEEPEST + " deep",
                    "",
                    "a QIF document, which nests a dozen deep"));
        }
    }

    private void exit() {
        depth--;
        open.pop();
    }

    private int next() throws IOException {
        try {
            int event = xml.next();
            if (event == XMLStreamConstants.DTD) {
                throw new TextRefused(Fault.of(
                        FaultKind.SYNTAX,
                        where(""),
                        "a document type declaration can pull in other files and swell without bound, and is not read",
                        "<!DOCTYPE",
                        "a QIF document, which has none"));
            }
            if (event == XMLStreamConstants.ENTITY_REFERENCE) {
                throw new TextRefused(Fault.of(
                        FaultKind.SYNTAX,
                        where(""),
                        "nothing says what the entity stands for",
                        Echo.quoted("&" + xml.getLocalName() + ";"),
                        "the text itself"));
            }
            return event;
        } catch (XMLStreamException fault) {
            throw unreadable(fault);
        }
    }

    /** The parser's own words come in the language of the machine, so only the place is taken from it. */
    private IOException unreadable(XMLStreamException fault) {
        for (Throwable cause = fault; cause != null; cause = causeOf(cause)) {
            if (cause instanceof TextRefused refused) {
                return refused;
            }
        }
        Location at = fault.getLocation();
        boolean placed = at != null && at.getLineNumber() > 0;
        Where where = placed
                ? new Where(file, at.getLineNumber(), Math.max(0, at.getColumnNumber()), "")
                : Where.inFile(file);
        String inside = open.isEmpty() ? "" : ", inside <" + Echo.plain(open.peek()) + ">";
        if (fault.getMessage() != null && fault.getMessage().contains("JAXP0001")) {
            // The platform's own limits, which are named by number in every language.
            return new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where,
                    "",
                    "a tag of more than " + MOST_ATTRIBUTES + " attributes, or a name of more than " + LONGEST_NAME
                            + " characters",
                    "short tags"));
        }
        if (meter.isAtEnd()) {
            String rest = open.isEmpty() ? "" : ", and <" + Echo.plain(open.peek()) + "> is still open";
            return new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    where,
                    "the text ends too early" + rest,
                    "",
                    "the whole file; it was perhaps cut short"));
        }
        return new TextRefused(Fault.of(
                FaultKind.SYNTAX,
                where,
                "this is no well-formed XML" + inside + "; the rest of the file was not read",
                "",
                ""));
    }

    private static Throwable causeOf(Throwable fault) {
        if (fault instanceof XMLStreamException stream && stream.getNestedException() != null) {
            return stream.getNestedException();
        }
        return fault.getCause();
    }

    /** Stops the parser where one token alone would fill the memory. */
    private static final class Meter extends FilterReader {
        private final String file;
        private long sinceToken;
        private boolean atEnd;

        Meter(String file, Reader text) {
            super(text);
            this.file = file;
        }

        void tokenRead() {
            sinceToken = 0;
        }

        boolean isAtEnd() {
            return atEnd;
        }

        @Override
        public int read() throws IOException {
            char[] one = new char[1];
            return read(one, 0, 1) < 0 ? -1 : one[0];
        }

        @Override
        public int read(char[] buffer, int offset, int length) throws IOException {
            int count = super.read(buffer, offset, length);
            atEnd |= count < 0;
            sinceToken += Math.max(0, count);
            if (sinceToken > LONGEST_TOKEN) {
                throw new TextRefused(Fault.of(
                        FaultKind.TOO_LARGE,
                        Where.inFile(file),
                        "",
                        "a tag, comment or attribute of more than " + LONGEST_TOKEN / (1 << 20) + " million characters",
                        "short tags"));
            }
            return count;
        }
    }
}
