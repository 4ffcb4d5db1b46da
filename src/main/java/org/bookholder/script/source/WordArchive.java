package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.bookholder.problem.ProblemException;

/**
 * Checks a DOCX document, a ZIP archive of XML parts, before the library unpacks it into memory. A small file can be made to
 * unpack to gigabytes, and XML can be nested deeper than the library's stack.
 */
final class WordArchive {
    static final int MOST_PARTS = 5_000;

    /** All parts together, unpacked. Bytes. */
    static final long MOST_UNPACKED = 64L << 20;

    /** One part with text, unpacked. Bytes; a long script with its formatting has about 1 MB. */
    static final int LARGEST_TEXT = 6 << 20;

    /** A table in a table takes three more. */
    static final int DEEPEST = 200;

    private final String source;
    private long unpacked;

    private WordArchive(String source) {
        this.source = source;
    }

    /**
     * Refuses what is too large, unpacked, for a script.
     *
     * @throws IOException if it is no ZIP archive or its XML is damaged
     * @throws ProblemException if it is too large
     */
    static void check(byte[] bytes, String source) throws IOException, ProblemException {
        check(bytes, source, name -> name.endsWith(".xml") || name.endsWith(".rels"));
    }

    /** The same; {@code isRead} says of which parts, by their names in lower case, the XML is read: damage elsewhere costs nothing. */
    static void check(byte[] bytes, String source, Predicate<String> isRead) throws IOException, ProblemException {
        try {
            new WordArchive(source).check(bytes, isRead);
        } catch (IllegalArgumentException e) {
            // This is how the platform says that a part's name is no text.
            throw new IOException("damaged names", e);
        }
    }

    private void check(byte[] bytes, Predicate<String> isRead) throws IOException, ProblemException {
        int parts = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                if (++parts > MOST_PARTS) {
                    throw tooLarge("it has over 5,000 parts");
                }
                String name = part.getName().toLowerCase(Locale.ROOT);
                if (isRead.test(name)) {
                    checkText(zip, name);
                } else {
                    skip(zip);
                }
            }
        }
    }

    private void checkText(InputStream in, String name) throws IOException, ProblemException {
        byte[] text = in.readNBytes(LARGEST_TEXT + 1);
        if (text.length > LARGEST_TEXT) {
            throw tooLarge("its " + name + " has over 6 MB unpacked");
        }
        count(text.length);
        if (text.length > 0) {
            checkDepth(text);
        }
    }

    private void skip(InputStream in) throws IOException, ProblemException {
        byte[] piece = new byte[1 << 16];
        for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
            count(read);
        }
    }

    private void count(int bytes) throws ProblemException {
        unpacked += bytes;
        if (unpacked > MOST_UNPACKED) {
            throw tooLarge("it has over 64 MB unpacked");
        }
    }

    private void checkDepth(byte[] text) throws IOException, ProblemException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            XMLStreamReader reader = factory.createXMLStreamReader(new ByteArrayInputStream(text));
            int depth = 0;
            while (reader.hasNext()) {
                int event = reader.next();
                if (event == XMLStreamConstants.START_ELEMENT && ++depth > DEEPEST) {
                    throw tooLarge("its parts are nested over 200 deep");
                } else if (event == XMLStreamConstants.END_ELEMENT) {
                    depth--;
                }
            }
        } catch (XMLStreamException e) {
            throw new IOException("damaged XML", e);
        }
    }

    private ProblemException tooLarge(String why) {
        return new ProblemException(
                "this document is too large for a script (" + why + ")",
                source,
                "save its text alone as a new .docx, or as Markdown or plain text");
    }
}
