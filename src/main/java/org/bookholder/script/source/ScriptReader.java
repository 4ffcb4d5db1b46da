package org.bookholder.script.source;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;

/**
 * Reads script files.
 *
 * <p>A script may begin with front matter ({@code title}, {@code pace}, {@code language}, {@code lines}, {@code
 * contractions}, {@code speaker}). Its text is CommonMark or plain text. A line break of the source always ends a line, and a source
 * line is split into sentences unless {@code lines: as-written}. The first heading of CommonMark text, or the first line of
 * plain text if it is written like a title, is the title if
 * the front matter has none and nothing is spoken before it. Other headings, block quotes, images, comments and code
 * blocks are directions, as are remarks in square brackets that are not read as text, lines in round brackets and speakers' names before their
 * lines. A text that is written in HTML is read as a web page whatever its file is called. {@code speaker} names those whose lines are read, with commas between, and makes directions of the lines of all others. {@code [written](say:spoken)} gives the only
 * spoken form; {@code [written](check:2027-03)} must be checked again from that month or day on.
 */
public final class ScriptReader {
    /** How a script's text is marked up. */
    public enum Format {
        /** CommonMark. */
        MARKDOWN,
        /** Paragraphs separated by blank lines; directions in brackets. */
        PLAIN_TEXT;

        /**
         * The format of the text that {@link ScriptReader#text} returns for a file of that name: CommonMark if the name
         * ends in .md or .markdown or is that of a document, otherwise plain text.
         */
        public static Format of(String source) {
            return Set.of("md", "markdown").contains(ending(source)) || isDocument(source) ? MARKDOWN : PLAIN_TEXT;
        }
    }

    /** How the names of documents end; {@link #convert(byte[], String, Map)} knows what converts each. */
    private static final Set<String> DOCUMENTS = Set.of("docx", "odt", "rtf", "pdf", "html", "htm");

    private ScriptReader() {}

    /**
     * Reads a script from a file: CommonMark if its name ends in .md or .markdown, a document if it ends in .docx, .odt, .rtf, .pdf, .html or .htm,
     * otherwise plain text, in UTF-8 or in the encoding that it is found to have.
     *
     * @throws ProblemException if there is no such file, it is not text, its front matter is malformed or out of range,
     *     it or a part of it is larger than {@link ScriptLimits} allows, or it contains nothing to speak
     */
    public static Script read(Path file) throws ProblemException {
        return parse(SourceText.bytes(file), file.toString());
    }

    /**
     * Makes a script from its text.
     *
     * @param source origin of the text, for messages and, if the text has no title, for the title
     * @throws ProblemException as {@link #read(Path)}
     */
    public static Script parse(String text, String source, Format format) throws ProblemException {
        return explain(text, source, format).script();
    }

    /** The script in a file's bytes, as {@link #read(Path)} reads it. */
    public static Script parse(byte[] bytes, String source) throws ProblemException {
        return parse(convert(bytes, source, Map.of()).text(), source, Format.of(source));
    }

    /** The same, together with what of the text is neither spoken nor shown. */
    public static ExplainedScript explain(String text, String source, Format format) throws ProblemException {
        ScriptLimits.check(text, source);
        FrontMatter front = FrontMatter.split(isDocument(source) ? text : TexBrackets.inDollars(text), source);
        ScriptBuilder draft = new ScriptBuilder(
                source, front.settings(), Speakers.in(front.body(), front.speakers()), NoteMarks.in(front.body()));
        if (WebText.isIn(front.body())) {
            WebText page = WebDocument.page(front.body());
            draft.leaveOut("HTML", "the text is written in HTML and read as a web page", front.bodyLine());
            page.document().leftOut().forEach(left -> draft.leaveOut(left.what(), left.why(), front.bodyLine()));
            MarkdownSource.read(
                    page.document().text(),
                    line -> page.line(line) + front.bodyLine() - 1,
                    front.title() == null,
                    draft);
        } else if (format == Format.MARKDOWN) {
            MarkdownSource.read(front.body(), line -> line + front.bodyLine(), front.title() == null, draft);
        } else {
            PlainTextSource.read(front.body(), front.bodyLine(), front.title() == null, draft);
        }
        List<ScriptElement> elements = draft.finish();
        String title = front.title() != null ? front.title() : draft.heading().orElse(nameOf(source));
        Script script = new Script(title, source, front.settings(), elements, draft.facts(), draft.covers());
        List<LeftOut> leftOut = new ArrayList<>(front.others());
        leftOut.addAll(draft.leftOut());
        leftOut.sort(Comparator.comparingInt(LeftOut::sourceLine));
        return new ExplainedScript(script, leftOut, draft.brackets(), draft.speakers());
    }

    /** A script file's text, decoded as {@link #read(Path)} does; that of a document as CommonMark. */
    public static String text(Path file) throws ProblemException {
        return isDocument(file.toString()) ? convert(file).text() : SourceText.read(file);
    }

    /** Whether a file has the name of a document, from which a script is read but which holds no plain text. */
    public static boolean isDocument(String source) {
        return DOCUMENTS.contains(ending(source));
    }

    /** What follows the last dot of a file's name, in lower case; empty if there is no dot. */
    private static String ending(String source) {
        int dot = source.lastIndexOf('.');
        return dot < 0 ? "" : source.substring(dot + 1).toLowerCase(Locale.ROOT);
    }

    /**
     * The text of a script that lies in memory, decoded as {@link #text(Path)} does, with what of a document is not in it.
     *
     * @param source the file's name, which says what it is
     * @param columns for tables of a document, by their numbers from 1, which columns are spoken, from 0
     * @throws ProblemException if it is no text and no document that can be read
     */
    public static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> columns)
            throws ProblemException {
        return switch (ending(source)) {
            case "docx" -> WordDocument.convert(bytes, source, columns);
            case "odt" -> OpenDocument.convert(bytes, source, columns);
            case "rtf" -> RichText.convert(bytes, source, columns);
            case "pdf" -> PdfDocument.convert(bytes, source, columns);
            case "html", "htm" -> WebDocument.convert(bytes, source, columns);
            default -> new ConvertedDocument(SourceText.decode(bytes, source), SourceText.notes(bytes), List.of());
        };
    }

    /** Whether a problem only says that a script has no words yet. */
    public static boolean isUnwritten(ProblemException problem) {
        return problem.what().equals(ScriptBuilder.EMPTY) || problem.what().equals(ScriptBuilder.ONLY_OUTLINE);
    }

    /** A script file's bytes; throws a problem if it is not a file, may not be read, or is too large for a script. */
    public static byte[] bytes(Path file) throws ProblemException {
        return SourceText.bytes(file);
    }

    /** The same of a file. */
    public static ConvertedDocument convert(Path file) throws ProblemException {
        return convert(SourceText.bytes(file), file.toString(), Map.of());
    }

    private static String nameOf(String source) {
        String name = source.substring(Math.max(source.lastIndexOf('/'), source.lastIndexOf('\\')) + 1);
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
