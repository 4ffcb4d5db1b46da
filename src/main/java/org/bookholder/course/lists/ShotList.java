package org.bookholder.course.lists;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonKind;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.Recording;
import org.bookholder.course.lists.ListItem.Finding;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;

/** Finds in the scripts of a course what is to be shown: directions in words, and pictures and clips with their files. */
public final class ShotList {
    /** Directions in words. */
    public static final String TO_SHOW = "To show";

    /** Pictures and clips that scripts name. */
    public static final String COVERS = "Pictures and clips";

    /** What a direction asks of the voice or face alone; nothing is to be set up for it (common practice in scripts). */
    private static final Pattern CUE = Pattern.compile("(?i)(?:(?:a |long |short |brief |slight |dramatic )*"
            + "(?:beat|pause|silence|breath)s?|(?:he |she |they |i )?(?:smil|laugh|chuckl|sigh|nod|wink|shrug|"
            + "whisper)(?:e|e?s|ing)?|(?:to|off) camera|aside|o\\.?s\\.?|v\\.?o\\.?|cont(?:'d|\\.|inued)?)[.!]?");

    private static final int QUOTED = 60;

    private final Lesson lesson;
    private final Recording recording;
    private final ItemIds ids;
    private final List<ListItem> items = new ArrayList<>();

    private ShotList(LessonState state, ItemIds ids) {
        this.lesson = state.lesson();
        this.recording = state.recording();
        this.ids = ids;
    }

    /**
     * What is to be shown in a course, in the order of its lessons.
     *
     * @param speakers the names of those who speak in a lesson: where one stands as a direction, nothing is to be shown
     */
    public static List<ListItem> of(Board board, Function<Lesson, Set<String>> speakers) {
        List<ListItem> items = new ArrayList<>();
        ItemIds ids = new ItemIds();
        for (LessonState state : board.lessons()) {
            items.addAll(new ShotList(state, ids).items(speakers.apply(state.lesson())));
        }
        return items;
    }

    private List<ListItem> items(Set<String> speakers) {
        Script script = lesson.script();
        List<Cover> covers = new ArrayList<>(script.covers());
        int line = 0;
        for (ScriptElement element : script.elements()) {
            if (element instanceof ScriptLine spoken) {
                covers(covers, spoken.number());
                line = spoken.number();
            } else if (element instanceof Direction direction && isToShow(direction, speakers)) {
                direction(direction, line + 1);
            }
        }
        covers(covers, Integer.MAX_VALUE);
        if (script.covers().isEmpty() && lesson.kind() != LessonKind.PRESENTER) {
            items.add(item(
                    "pictures of " + lesson.title(),
                    COVERS,
                    "Pictures or clips for this lesson",
                    "its script names none, and its kind is \u201c"
                            + lesson.kind().words() + "\u201d",
                    Finding.MISSING));
        }
        return items;
    }

    private boolean isToShow(Direction direction, Set<String> speakers) {
        boolean ofCover = lesson.script().covers().stream()
                .anyMatch(cover -> cover.sourceLine() == direction.sourceLine()
                        && cover.text().equals(direction.text()));
        return !direction.heading()
                && !ofCover
                && !speakers.contains(direction.text().toLowerCase(Locale.ROOT))
                && !CUE.matcher(direction.text()).matches();
    }

    private void direction(Direction direction, int before) {
        List<ScriptLine> lines = lesson.script().lines();
        boolean last = before > lines.size();
        String words = last ? "" : lines.get(before - 1).text();
        items.add(item(
                "show: " + direction.text() + " / " + words,
                TO_SHOW,
                direction.text(),
                last
                        ? "after the last line"
                        : "before line " + before + ", \u201c" + Text.cut(words, QUOTED) + "\u201d" + recorded(before),
                Finding.UNKNOWN));
    }

    /** Takes the covers up to a line. */
    private void covers(List<Cover> left, int upTo) {
        while (!left.isEmpty() && left.get(0).line() <= upTo) {
            Cover cover = left.remove(0);
            boolean there = CoverFiles.of(lesson.script(), cover).isPresent();
            String lines = Text.lines(lines(cover));
            items.add(item(
                    "cover: " + cover.file() + " / "
                            + lesson.script().lines().get(cover.line() - 1).text(),
                    COVERS,
                    cover.text(),
                    cover.file()
                            + (there ? " is there; over " : " is missing: put it beside the script; over ")
                            + lines,
                    there ? Finding.THERE : Finding.MISSING));
        }
    }

    private List<Integer> lines(Cover cover) {
        int last = cover.lastLine(lesson.script().elements());
        return last == cover.line() ? List.of(last) : List.of(cover.line(), last);
    }

    /** Whether the line with which something is shown is still to be recorded. */
    private String recorded(int line) {
        return recording.unread().contains(line) || recording.pickups().contains(line)
                ? "; to be recorded"
                : "; recorded";
    }

    private ListItem item(String words, String part, String text, String detail, Finding found) {
        return new ListItem(
                ids.of(words), lesson.number(), lesson.title(), part, text, detail, found, Optional.empty());
    }
}
