package org.bookholder.app.script;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.Content;
import org.bookholder.files.Disk;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.Permissions;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;

/**
 * Reads and saves lessons' files, which belong to their author: each is replaced whole, in its own encoding, and never over a
 * change that was made elsewhere meanwhile. Stateless; two saves of one file must not happen at once.
 */
public final class LessonTexts {
    /** Longer texts are refused by the reader anyway. */
    private static final int MOST_CHARACTERS = 600_000;

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT);

    private final Environment here;
    private final AtomicFiles files;

    /** Saves on this machine's disk. */
    public LessonTexts(Environment here) {
        this(here, new AtomicFiles(Access.KEPT));
    }

    LessonTexts(Environment here, AtomicFiles files) {
        this.here = here;
        this.files = files;
    }

    /** Reads a lesson's file; it need not be a script that can be read aloud yet. */
    public LessonText read(Path file) throws ProblemException {
        return LessonText.of(file, ScriptReader.bytes(file));
    }

    /**
     * Saves a text, if the file still is what it was based on.
     *
     * @param revision that of the file on which the text is based; empty for a file that did not exist
     * @return what the file holds now; empty if it was changed elsewhere, and nothing was saved
     * @throws ProblemException if it can't be saved; the file is as it was then
     */
    public Optional<LessonText> save(Path file, String text, String revision) throws ProblemException {
        checked(file, text);
        boolean there = Files.exists(file);
        byte[] before = there ? ScriptReader.bytes(file) : new byte[0];
        boolean same = there ? LessonText.revision(before).equals(revision) : revision.isEmpty();
        if (!same) {
            return Optional.empty();
        }
        return Optional.of(write(file, text, form(file, before)));
    }

    /**
     * Saves a text in the place of another one that was written elsewhere. The other one is kept in a file beside it.
     *
     * @return the name of the file in which the other text was kept
     */
    public Path saveOver(Path file, String text) throws ProblemException {
        checked(file, text);
        byte[] other = ScriptReader.bytes(file);
        Path kept = beside(file);
        Map<Path, Content> both = new LinkedHashMap<>();
        both.put(kept, out -> out.write(other));
        both.put(file, out -> out.write(form(file, other).bytes(LessonText.even(text))));
        try {
            files.writeAll(both);
            allow(kept, file);
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
        return kept;
    }

    /**
     * Keeps a text in a file beside a script's, which stays as it is.
     *
     * @return the name of that file
     */
    public Path keep(Path file, String text) throws ProblemException {
        checked(file, text);
        Path kept = write(beside(file), text, LessonText.Form.USUAL).file();
        try {
            allow(kept, file);
        } catch (IOException e) {
            throw DiskProblems.writing(kept, e);
        }
        return kept;
    }

    /** Whoever may read and change the script may do so with what is kept beside it. */
    private static void allow(Path kept, Path script) throws IOException {
        Optional<Permissions> own = Permissions.of(script);
        if (own.isPresent()) {
            own.get().give(kept);
        }
    }

    /** Where a second text of a script is kept: not the name of a script, since two lessons of one title are not accepted. */
    private Path beside(Path file) {
        String moment =
                LocalDateTime.ofInstant(here.clock().instant(), here.zone()).format(MOMENT);
        return free(file.resolveSibling(file.getFileName() + ".kept-" + moment));
    }

    /**
     * Makes a text file of a document. The document is kept beside it, in a folder of its own for documents.
     *
     * @return the text file
     */
    public LessonText asText(Path document) throws ProblemException {
        LessonText read = read(document);
        String name = String.valueOf(document.getFileName());
        Path text = document.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".md");
        if (Files.exists(text)) {
            throw new ProblemException("this file is there already", text.toString(), "rename one of the two");
        }
        Path aside = document.resolveSibling("documents").resolve(name);
        try {
            Files.createDirectories(document.resolveSibling("documents"));
            Path kept = free(aside);
            Disk disk = new Disk();
            disk.move(document, kept);
            try {
                return rename(document, text, read.text());
            } catch (IOException | ProblemException | RuntimeException e) {
                disk.move(kept, document);
                throw e;
            }
        } catch (IOException e) {
            throw DiskProblems.writing(aside, e);
        }
    }

    /** Writes the text file, and its name in the place of the document's in a course that names it. */
    private LessonText rename(Path document, Path file, String text) throws ProblemException, IOException {
        byte[] bytes = LessonText.Form.USUAL.bytes(text);
        Map<Path, Content> changed = new LinkedHashMap<>();
        changed.put(file, out -> out.write(bytes));
        Path course = document.resolveSibling(Course.FILE);
        if (Files.isRegularFile(course)) {
            String before = Files.readString(course);
            String after = Pattern.compile(
                            "(?<![\\w./-])" + Pattern.quote(String.valueOf(document.getFileName())) + "(?![\\w.-])")
                    .matcher(before)
                    .replaceAll(Matcher.quoteReplacement(String.valueOf(file.getFileName())));
            if (!after.equals(before)) {
                changed.put(course, out -> out.write(after.getBytes(StandardCharsets.UTF_8)));
            }
        }
        files.writeAll(changed);
        return LessonText.of(file, bytes);
    }

    private LessonText write(Path file, String text, LessonText.Form form) throws ProblemException {
        byte[] bytes = form.bytes(LessonText.even(text));
        try {
            files.writeAll(Map.of(file, out -> out.write(bytes)));
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
        return LessonText.of(file, bytes);
    }

    private static LessonText.Form form(Path file, byte[] before) throws ProblemException {
        return before.length == 0
                ? LessonText.Form.USUAL
                : LessonText.of(file, before).form();
    }

    private static void checked(Path file, String text) throws ProblemException {
        if (ScriptReader.isDocument(file.toString())) {
            throw new ProblemException("a document can't be edited here", file.toString(), "make a text file of it");
        }
        if (text.length() > MOST_CHARACTERS) {
            throw new ProblemException(
                    "the script is too long (over 600,000 characters)", file.toString(), "split it into lessons");
        }
        int control = control(text);
        if (control > 0) {
            throw new ProblemException(
                    "a character that is no text is in it", file + ":" + control, "take it out, or write it anew");
        }
    }

    /** The line, from 1, of a character that no text file has; 0 if there is none. */
    private static int control(String text) {
        int line = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            line += c == '\n' ? 1 : 0;
            if ((c < ' ' && c != '\n' && c != '\r' && c != '\t') || (Character.isSurrogate(c) && alone(text, i))) {
                return line;
            }
        }
        return 0;
    }

    private static boolean alone(String text, int i) {
        return Character.isHighSurrogate(text.charAt(i))
                ? i + 1 == text.length() || !Character.isLowSurrogate(text.charAt(i + 1))
                : i == 0 || !Character.isHighSurrogate(text.charAt(i - 1));
    }

    private static Path free(Path wanted) {
        Path file = wanted;
        for (int i = 2; Files.exists(file); i++) {
            file = wanted.resolveSibling(wanted.getFileName() + "-" + i);
        }
        return file;
    }
}
