package org.bookholder.handoff.sound;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.bookholder.timing.Timecode;

/**
 * The iXML chunk of a take; its fields are named as in the object details of the iXML specification
 * (gallery.co.uk/ixml).
 *
 * @param project the lesson's folder or course
 * @param scene the lesson
 * @param take take number
 * @param circled whether any of it is used
 * @param note note for people
 * @param timecode how frames are counted
 * @param samplesSinceMidnight the time reference
 * @param rate samples a second
 */
record Ixml(
        String project,
        String scene,
        int take,
        boolean circled,
        String note,
        Timecode timecode,
        long samplesSinceMidnight,
        int rate) {
    byte[] bytes() {
        StringWriter out = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(out);
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeStartElement("BWFXML");
            element(xml, "IXML_VERSION", "1.61");
            element(xml, "PROJECT", project);
            element(xml, "SCENE", scene);
            element(xml, "TAKE", Integer.toString(take));
            element(xml, "CIRCLED", circled ? "TRUE" : "FALSE");
            element(xml, "NOTE", note);
            xml.writeStartElement("SPEED");
            speed(xml);
            xml.writeEndElement();
            xml.writeEndDocument();
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("elements must be closed as they were opened", e);
        }
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void speed(XMLStreamWriter xml) throws XMLStreamException {
        String frames = timecode.rate().fraction();
        element(xml, "MASTER_SPEED", frames);
        element(xml, "CURRENT_SPEED", frames);
        element(xml, "TIMECODE_RATE", frames);
        element(xml, "TIMECODE_FLAG", timecode.drop() ? "DF" : "NDF");
        element(xml, "FILE_SAMPLE_RATE", Integer.toString(rate));
        element(xml, "AUDIO_BIT_DEPTH", "16");
        element(xml, "DIGITIZER_SAMPLE_RATE", Integer.toString(rate));
        element(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI", Long.toString(samplesSinceMidnight >>> 32));
        element(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO", Long.toString(samplesSinceMidnight & 0xFFFF_FFFFL));
        element(xml, "TIMESTAMP_SAMPLE_RATE", Integer.toString(rate));
    }

    /** The writer escapes the text; characters that XML 1.0 does not allow are left out (section 2.2). */
    private static void element(XMLStreamWriter xml, String name, String text) throws XMLStreamException {
        xml.writeStartElement(name);
        xml.writeCharacters(text.replaceAll("[^\\t\\n\\r\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", ""));
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }
}
