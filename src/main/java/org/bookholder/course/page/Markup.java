package org.bookholder.course.page;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes HTML and SVG. It always escapes every text and every attribute's value. */
final class Markup {
    private final StringWriter out = new StringWriter();
    private final XMLStreamWriter xml;

    Markup() {
        try {
            xml = XMLOutputFactory.newFactory().createXMLStreamWriter(out);
        } catch (XMLStreamException e) {
            throw new IllegalStateException("the platform must have a writer of XML", e);
        }
    }

    /** Opens an element; {@code attributes} are names, each followed by its value. */
    Markup open(String name, String... attributes) {
        return write(() -> {
            xml.writeStartElement(name);
            attributes(attributes);
        });
    }

    /** Closes the element that was opened last, and begins a new line. */
    Markup close() {
        return write(() -> {
            xml.writeEndElement();
            xml.writeCharacters("\n");
        });
    }

    /** An element that never has content, such as {@code meta} or {@code path}. */
    Markup empty(String name, String... attributes) {
        return write(() -> {
            xml.writeEmptyElement(name);
            attributes(attributes);
            xml.writeCharacters("\n");
        });
    }

    /** Text within the open element. Characters that no document may contain are left out. */
    Markup text(Object text) {
        return write(() -> xml.writeCharacters(allowed(text.toString())));
    }

    /** An element with nothing but text in it. */
    Markup element(String name, Object text, String... attributes) {
        return open(name, attributes).text(text).write(xml::writeEndElement);
    }

    /** Everything written so far. */
    @Override
    public String toString() {
        write(xml::flush);
        return out.toString();
    }

    private void attributes(String... attributes) throws XMLStreamException {
        for (int i = 0; i < attributes.length; i += 2) {
            xml.writeAttribute(attributes[i], allowed(attributes[i + 1]));
        }
    }

    /** Removes control characters, which neither HTML nor XML may contain. */
    private static String allowed(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\\t\\n\\r]]", "");
    }

    private Markup write(Step step) {
        try {
            step.run();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("elements must be closed as they were opened", e);
        }
        return this;
    }

    private interface Step {
        void run() throws XMLStreamException;
    }
}
