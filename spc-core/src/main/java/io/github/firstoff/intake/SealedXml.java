package io.github.firstoff.intake;

import java.io.Reader;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads XML of which nothing is trusted: document types, entities and everything outside the text are refused, tags have a bound. */
final class SealedXml {
    private SealedXml() {}

    /**
     * A reader at the first character of a text.
     *
     * @param text decoded already: the platform's own decoder prints what it does not like on standard error
     * @param mostAttributes how many one tag may have
     * @param longestName how many characters a name may have
     * @throws XMLStreamException if the text does not begin as XML
     */
    static XMLStreamReader of(Reader text, int mostAttributes, int longestName) throws XMLStreamException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        factory.setProperty("jdk.xml.elementAttributeLimit", Integer.toString(mostAttributes));
        factory.setProperty("jdk.xml.maxXMLNameLimit", Integer.toString(longestName));
        factory.setXMLResolver((publicId, systemId, base, name) -> {
            throw new XMLStreamException("nothing outside the text is read");
        });
        return factory.createXMLStreamReader(text);
    }
}
