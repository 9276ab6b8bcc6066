package earthing.report.markup;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes well-formed markup into a text; every text and attribute is escaped. */
public final class Markup {

    private static final int REPLACEMENT = 0xFFFD;

    private final StringWriter text = new StringWriter(16384);
    private final XMLStreamWriter xml;

    /** An empty text. */
    public Markup() {
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Opens an element.
     *
     * @param name its name
     * @param attributes names and values in turn
     * @return this
     */
    public Markup open(String name, String... attributes) {
        try {
            xml.writeStartElement(name);
            attributes(attributes);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return this;
    }

    /**
     * An element without content.
     *
     * @param name its name
     * @param attributes names and values in turn
     * @return this
     */
    public Markup empty(String name, String... attributes) {
        try {
            xml.writeEmptyElement(name);
            attributes(attributes);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return this;
    }

    /**
     * An element with a text.
     *
     * @param name its name
     * @param content the text
     * @param attributes names and values in turn
     * @return this
     */
    public Markup leaf(String name, String content, String... attributes) {
        return open(name, attributes).text(content).close();
    }

    /**
     * Text.
     *
     * @param content the text
     * @return this
     */
    public Markup text(String content) {
        try {
            xml.writeCharacters(printable(content));
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return this;
    }

    /**
     * Closes the innermost element.
     *
     * @return this
     */
    public Markup close() {
        try {
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return this;
    }

    /**
     * Markup that is well-formed already.
     *
     * @param markup an element
     * @return this
     */
    public Markup raw(String markup) {
        try {
            // ends a start tag that may still be open
            xml.writeCharacters("");
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        text.write(markup);
        return this;
    }

    /**
     * What was written.
     *
     * @return the text
     */
    public String end() {
        try {
            xml.writeEndDocument();
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text.toString();
    }

    private void attributes(String... attributes) throws XMLStreamException {
        for (int i = 0; i < attributes.length; i += 2) {
            xml.writeAttribute(attributes[i], printable(attributes[i + 1]));
        }
    }

    /** Characters that XML 1.0 cannot carry become the replacement character. */
    private static String printable(String content) {
        if (content.chars().allMatch(c -> c >= 0x20 && c < 0xD800)) {
            return content;
        }
        StringBuilder clean = new StringBuilder(content.length());
        content.codePoints().map(c -> carried(c) ? c : REPLACEMENT).forEach(clean::appendCodePoint);
        return clean.toString();
    }

    private static boolean carried(int c) {
        if (c < 0x20) {
            return c == '\n' || c == '\t';
        }
        boolean surrogate = c >= 0xD800 && c <= 0xDFFF;
        return !surrogate && c != 0xFFFE && c != 0xFFFF;
    }
}
