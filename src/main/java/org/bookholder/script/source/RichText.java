package org.bookholder.script.source;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;

/**
 * Converts rich text (RTF 1.9.1) to CommonMark, by way of the elements of a web page. It keeps headings, lists with their marks, tables, stress
 * and line breaks. Notes, comments, headers and footers, hidden and struck text are left out.
 */
final class RichText {
    /** A control word with its number, a character in hexadecimal, a control symbol, a brace, or text. */
    private static final Pattern TOKEN = Pattern.compile(
            "\\\\([a-zA-Z]{1,32})(-?\\d{1,10})? ?|\\\\'([0-9a-fA-F]{2})|\\\\([^a-zA-Z'])|([{}])|([^\\\\{}\\r\\n]{1,4096})");

    /** Characters that no text file may hold: a script that is saved with them could not be read again. */
    private static final Pattern CONTROL = Pattern.compile("[\\p{Cc}&&[^\n]]");

    /** Groups that hold no text of the document. */
    private static final Set<String> SETTINGS = Set.of(
            "fonttbl",
            "colortbl",
            "stylesheet",
            "info",
            "pict",
            "object",
            "sp",
            "shprslt",
            "fldinst",
            "listtable",
            "listoverridetable",
            "generator",
            "themedata",
            "datastore",
            "xmlnstbl",
            "rsidtbl",
            "latentstyles",
            "bkmkstart",
            "bkmkend",
            "atnid",
            "atnauthor",
            "atnref",
            "atntime",
            "nonshppict",
            "pgdsctbl",
            "filetbl",
            "revtbl",
            "userprops");

    /** Stands for a group that may be skipped by those who don't know its name; its text is dropped, too. */
    private static final String UNKNOWN = "unknown";

    /** Groups that hold text which is not read, and why. */
    private static final Map<String, String> LEFT_OUT = Map.ofEntries(
            Map.entry("footnote", "notes are not read"),
            Map.entry("annotation", "comments are not part of the script"),
            Map.entry("header", "headers are not read"),
            Map.entry("headerl", "headers are not read"),
            Map.entry("headerr", "headers are not read"),
            Map.entry("headerf", "headers are not read"),
            Map.entry("footer", "footers are not read"),
            Map.entry("footerl", "footers are not read"),
            Map.entry("footerr", "footers are not read"),
            Map.entry("footerf", "footers are not read"),
            Map.entry("shptxt", "a text box is not read: put its text into a paragraph"));

    private static final Map<String, String> CHARACTERS = Map.ofEntries(
            Map.entry("emdash", "\u2014"),
            Map.entry("endash", "\u2013"),
            Map.entry("lquote", "\u2018"),
            Map.entry("rquote", "\u2019"),
            Map.entry("ldblquote", "\u201c"),
            Map.entry("rdblquote", "\u201d"),
            Map.entry("bullet", "\u2022"),
            Map.entry("tab", " "),
            Map.entry("emspace", " "),
            Map.entry("enspace", " "));

    /** In half points, where nothing else is said. */
    private static final int USUAL_SIZE = 24;

    /** What counts inside a group, and ends with it. */
    private record State(boolean bold, boolean italic, int size, String unseen, String part, int skip) {
        static final State START = new State(false, false, USUAL_SIZE, "", "", 1);

        State sized(int halfPoints) {
            return new State(bold, italic, halfPoints, unseen, part, skip);
        }

        /** Whether it looks like a heading. */
        boolean large() {
            return bold && size > USUAL_SIZE;
        }

        State bold(boolean on) {
            return new State(on, italic, size, unseen, part, skip);
        }

        State italic(boolean on) {
            return new State(bold, on, size, unseen, part, skip);
        }

        State unseen(String why) {
            return new State(bold, italic, size, why, part, skip);
        }

        State in(String name) {
            return new State(bold, italic, size, unseen, name, skip);
        }

        State skipping(int count) {
            return new State(bold, italic, size, unseen, part, count);
        }
    }

    private final RichTextBody body = new RichTextBody();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final Deque<State> groups = new ArrayDeque<>();
    private final StringBuilder aside = new StringBuilder();
    private final ByteArrayOutputStream coded = new ByteArrayOutputStream();
    private Charset charset = Charset.forName("windows-1252");
    private State now = State.START;
    private int ignored;
    private boolean destination;

    private RichText() {}

    /** The document's text, and what is not in it; which columns of its tables are read as for a DOCX document. */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> chosen)
            throws ProblemException {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        if (!text.startsWith("{\\rtf")) {
            throw new ProblemException(
                    "this is not rich text (RTF) that can be read", source, "save it anew as .docx or as plain text");
        }
        RichText reader = new RichText();
        reader.read(text);
        return WebDocument.convert(reader.body.element(), chosen, reader.leftOut);
    }

    private void read(String text) {
        Matcher token = TOKEN.matcher(text);
        while (token.find()) {
            if (token.group(3) != null) {
                code(Integer.parseInt(token.group(3), 16));
                continue;
            }
            decode();
            if (token.group(1) != null) {
                int number = token.group(2) == null ? 1 : number(token.group(2));
                word(token.group(1), number, token.group(2) != null);
            } else if (token.group(4) != null) {
                symbol(token.group(4).charAt(0));
            } else if (token.group(5) != null) {
                brace(token.group(5).charAt(0));
            } else {
                plain(token.group(6));
            }
        }
        decode();
        body.paragraph();
    }

    private static int number(String digits) {
        long value = Long.parseLong(digits);
        return (int) Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, value));
    }

    private void code(int value) {
        if (ignored > 0) {
            ignored--;
        } else {
            coded.write(value);
        }
    }

    private void decode() {
        if (coded.size() > 0) {
            String decoded = coded.toString(charset);
            coded.reset();
            add(decoded);
        }
    }

    private void plain(String text) {
        int skipped = Math.min(ignored, text.length());
        ignored -= skipped;
        // Most programs write other letters as codes; some write the bytes themselves.
        add(new String(text.substring(skipped).getBytes(StandardCharsets.ISO_8859_1), charset));
    }

    private void symbol(char c) {
        switch (c) {
            case '*' -> destination = true;
            case '~' -> add("\u00a0");
            case '_' -> add("-");
            case '\\', '{', '}' -> add(String.valueOf(c));
            case '\n', '\r' -> body.paragraph();
            default -> {
                // an optional hyphen and marks of an index are not seen
            }
        }
    }

    private void brace(char c) {
        ignored = 0;
        destination = false;
        if (c == '{') {
            groups.push(now);
        } else if (!groups.isEmpty()) {
            State before = groups.pop();
            if (LEFT_OUT.containsKey(now.part) && !before.part.equals(now.part)) {
                leave(aside.toString(), LEFT_OUT.getOrDefault(now.part, ""));
                aside.setLength(0);
            }
            if (isMark(now.part) && !isMark(before.part)) {
                body.mark(aside.toString());
                aside.setLength(0);
            }
            now = before;
        }
    }

    private static boolean isMark(String part) {
        return part.equals("listtext") || part.equals("pntext");
    }

    private void word(String name, int number, boolean given) {
        boolean on = !given || number != 0;
        if (SETTINGS.contains(name) || LEFT_OUT.containsKey(name) || isMark(name)) {
            now = now.part.isEmpty() ? now.in(name) : now;
        } else if (destination) {
            now = name.equals("shpinst") ? now : now.in(UNKNOWN);
        } else if (CHARACTERS.containsKey(name)) {
            add(CHARACTERS.getOrDefault(name, ""));
        } else {
            format(name, number, on);
        }
        destination = false;
    }

    private void format(String name, int number, boolean on) {
        switch (name) {
            case "u" -> {
                add(String.valueOf((char) (number & 0xffff)));
                ignored = now.skip;
            }
            case "uc" -> now = now.skipping(Math.max(0, Math.min(number, 16)));
            case "ansicpg" -> charset = charset("windows-" + number, charset);
            case "mac" -> charset = charset("x-MacRoman", charset);
            case "b" -> now = now.bold(on);
            case "i" -> now = now.italic(on);
            case "fs" -> now = now.sized(number);
            case "v" -> now = now.unseen(on ? "it is hidden" : "");
            case "strike", "striked", "deleted" -> now = now.unseen(on ? "it is struck through" : "");
            case "plain" -> now = new State(false, false, USUAL_SIZE, "", now.part, now.skip);
            case "par", "sect", "page" -> ended(body::paragraph);
            case "line" -> add("\n");
            case "cell" -> ended(body::cell);
            case "row" -> ended(body::row);
            default -> {
                if (now.part.isEmpty()) {
                    paragraph(name, number);
                }
            }
        }
    }

    private void paragraph(String name, int number) {
        switch (name) {
            case "pard" -> body.plain();
            case "ilvl" -> body.level(number);
            case "li" -> body.setIn(number);
            case "fi" -> body.hanging(number < 0);
            case "outlinelevel" -> body.heading(number);
            case "intbl" -> body.inTable();
            default -> {
                // how it looks
            }
        }
    }

    private void ended(Runnable part) {
        if (now.part.isEmpty()) {
            part.run();
        } else {
            aside.append(' ');
        }
    }

    private static Charset charset(String name, Charset otherwise) {
        return Charset.isSupported(name) ? Charset.forName(name) : otherwise;
    }

    private void add(String decoded) {
        String text = CONTROL.matcher(decoded).replaceAll(" ");
        if (isMark(now.part) || LEFT_OUT.containsKey(now.part)) {
            aside.append(text);
        } else if (now.part.isEmpty() && now.unseen.isEmpty()) {
            body.text(text, now.bold, now.italic, now.large());
        } else if (now.part.isEmpty()) {
            leave(text, now.unseen);
        }
    }

    private void leave(String what, String why) {
        WebDocument.leave(leftOut, what, why);
    }
}
