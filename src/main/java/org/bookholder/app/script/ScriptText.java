package org.bookholder.app.script;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.app.session.CourseHabits.Saying;
import org.bookholder.course.Text;
import org.bookholder.course.prepare.HardStretch;
import org.bookholder.pace.RunningTime;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.PreparedScript.UnknownWord;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.TakenBracket;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.session.AcceptedReading;

/** How a script is taken, as a text for a terminal of 80 columns. */
public final class ScriptText {
    private static final int WIDTH = 80;
    private static final int MOST_FORMS = 6;

    private ScriptText() {}

    /** The text, line by line. */
    public static List<String> of(ScriptInspection found) {
        Script script = found.script();
        int pace = script.settings().targetPace();
        List<String> out = new ArrayList<>();
        out.addAll(Text.wrap(String.format(
                Locale.ROOT,
                "%s: %s, %s, %s at %d words a minute",
                script.title(),
                Text.count(script.lines().size(), "line"),
                Text.count(script.spokenWords(), "word"),
                Text.clock(RunningTime.of(script.spokenWords(), pace).seconds()),
                pace)));
        if (!found.speakers().isEmpty()) {
            out.addAll(Text.wrap("Speakers: "
                    + found.speakers().stream()
                            .map(speaker -> speaker.name() + (speaker.read() ? "" : " (shown, not read)"))
                            .collect(Collectors.joining(", "))));
        }
        out.add("");
        for (ScriptElement element : script.elements()) {
            if (element instanceof ScriptLine line) {
                out.addAll(numbered(String.format(Locale.ROOT, "%4d  ", line.number()), line.text()));
            } else {
                out.addAll(numbered("   >  ", element.text()));
            }
        }
        leftOut(out, found.leftOut(), script);
        missingPictures(out, found.missingPictures(), script);
        brackets(out, found.brackets(), script);
        numbers(out, script);
        sayings(out, found.sayings());
        unknown(out, found);
        hard(out, found.hard());
        return out;
    }

    private static void numbers(List<String> out, Script script) {
        List<String> rows = script.lines().stream()
                .flatMap(line -> line.words().stream()
                        .filter(word -> word.written().matches(".*\\p{N}.*"))
                        .map(word -> "line " + line.number() + ": " + forms(word)))
                .toList();
        if (!rows.isEmpty()) {
            out.add("Numbers, and how they may be said:");
        }
        rows.forEach(row -> out.addAll(numbered("  ", row)));
    }

    private static void sayings(List<String> out, List<Saying> all) {
        if (!all.isEmpty()) {
            out.add("How you say it in this course:");
        }
        for (Saying saying : all) {
            String how = saying.chosen() ? "chosen" : "said " + Text.count(saying.times(), "time");
            out.addAll(numbered("  ", saying.written() + ": " + saying.said() + " (" + how + ")"));
        }
    }

    /** Which words are heard as something else when a presenter reads them. */
    public static List<String> heardAs(List<AcceptedReading> known) {
        List<String> out = new ArrayList<>();
        if (!known.isEmpty()) {
            out.add("Heard as something else, and not called misread:");
        }
        known.forEach(one ->
                out.addAll(numbered("  ", one.written() + ": is heard as \"" + one.said() + "\" when you read it")));
        return out;
    }

    private static String forms(ScriptWord word) {
        String forms = word.spoken().stream()
                .limit(MOST_FORMS)
                .map(form -> String.join(" ", form))
                .collect(Collectors.joining("; "));
        int more = word.spoken().size() - MOST_FORMS;
        return word.plain() + ": " + forms + (more > 0 ? "; and " + more + " more" : "");
    }

    private static void leftOut(List<String> out, List<LeftOut> all, Script script) {
        out.add("");
        out.add(all.isEmpty() ? "Nothing is left out." : "Left out:");
        for (LeftOut left : all) {
            String where = left.sourceLine() > 0 ? place(left.sourceLine(), script) + ": " : "";
            out.addAll(numbered("  ", where + left.what() + " (" + left.why() + ")"));
        }
    }

    private static void missingPictures(List<String> out, List<AuthorPicture.Missing> all, Script script) {
        if (!all.isEmpty()) {
            out.add("Pictures that cannot be shown in the film:");
        }
        for (AuthorPicture.Missing missing : all) {
            int line = missing.cover().sourceLine();
            String where = line > 0 ? place(line, script) + ": " : "";
            out.addAll(numbered(
                    "  ", where + missing.why().what() + "; " + missing.why().remedy()));
        }
    }

    /** Those that stand alone are directions, as everybody expects. */
    private static void brackets(List<String> out, List<TakenBracket> all, Script script) {
        List<TakenBracket> within =
                all.stream().filter(bracket -> !bracket.alone()).toList();
        if (!within.isEmpty()) {
            out.add("Brackets within sentences:");
        }
        for (TakenBracket bracket : within) {
            out.addAll(numbered(
                    "  ",
                    place(bracket.sourceLine(), script) + ": " + bracket.text() + " is "
                            + (bracket.read() ? "read" : "a direction") + " (" + bracket.why() + ")"));
        }
    }

    /** A document has no lines of its own that its author could count. */
    private static String place(int sourceLine, Script script) {
        if (!ScriptReader.isDocument(script.source())) {
            return "line " + sourceLine + " of the file";
        }
        long before = script.lines().stream()
                .filter(line -> line.sourceLine() <= sourceLine)
                .count();
        return before == 0 ? "before line 1" : "near line " + before;
    }

    private static void unknown(List<String> out, ScriptInspection found) {
        found.unheard().ifPresent(why -> out.addAll(Text.wrap("Not followed: " + why + ".")));
        if (!found.wordsChecked() && found.unheard().isEmpty()) {
            out.add("The recogniser could not be asked which words it knows.");
        } else if (!found.unknown().isEmpty()) {
            out.add("Words that the recogniser does not know:");
        }
        for (UnknownWord word : found.unknown()) {
            String heard = word.standIn().isEmpty()
                    ? "nothing like it is heard; give its sound: [" + word.spoken() + "](say:sounds like this)"
                    : "heard as \"" + String.join(" ", word.standIn()) + "\"";
            out.addAll(numbered("  ", "line " + word.line() + ": " + word.spoken() + ", " + heard));
        }
    }

    private static void hard(List<String> out, List<HardStretch> all) {
        if (!all.isEmpty()) {
            out.add("Hard to say:");
        }
        for (HardStretch stretch : all) {
            out.addAll(numbered(
                    "  ",
                    "line " + stretch.line() + ": " + stretch.count() + " "
                            + stretch.kind().what() + ": " + stretch.words()));
        }
    }

    /** Wraps a text behind a mark; further rows are set in as far. */
    private static List<String> numbered(String mark, String text) {
        List<String> rows = new ArrayList<>();
        for (String row : Text.wrap(text, WIDTH - mark.length())) {
            rows.add((rows.isEmpty() ? mark : " ".repeat(mark.length())) + row);
        }
        return rows;
    }
}
