package org.bookholder.course.lists;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.bookholder.course.MarkList;
import org.bookholder.problem.ProblemException;

/**
 * What people have written into the lists of a course, kept in {@code lists.json} in its folder: ticks, remarks, items of their own, and
 * what they leave out. One mark for each item. Immutable.
 */
public final class ListMarks {
    /** The longest text and the longest remark, in characters. */
    public static final int LONGEST = 500;

    private static final String FILE = "lists.json";
    private static final String OWN = "own ";
    private static final String PART = "all: ";

    private final List<Mark> marks;

    private ListMarks(List<Mark> marks) {
        this.marks = List.copyOf(marks);
    }

    /** Whether somebody has said that an item is done. */
    public enum Tick {
        /** Nobody has said anything. */
        NONE,
        /** It is done. */
        DONE,
        /** It is not done. */
        OPEN
    }

    /**
     * What is written about an item.
     *
     * @param list the list's label
     * @param item the item's id
     * @param group where an item of one's own belongs; otherwise empty
     * @param text the words of an item of one's own; otherwise empty
     * @param tick whether it is done
     * @param when when it was added or ticked, ISO 8601 in UTC
     * @param out whether it is left out of the list
     * @param remark a remark; may be empty
     */
    public record Mark(
            String list, String item, String group, String text, Tick tick, String when, boolean out, String remark) {
        Mark ticked(boolean done, Instant now) {
            return new Mark(list, item, group, text, done ? Tick.DONE : Tick.OPEN, now.toString(), out, remark);
        }

        Mark leftOut(boolean other) {
            return new Mark(list, item, group, text, tick, when, other, remark);
        }

        Mark remarked(String other) {
            return new Mark(list, item, group, text, tick, when, out, other);
        }
    }

    /** Reads the marks kept in a course's folder; throws a problem if they cannot be read. */
    public static ListMarks read(Path folder) throws ProblemException {
        return new ListMarks(MarkList.read(folder.resolve(FILE), Mark[].class, mark -> Instant.parse(mark.when())));
    }

    /** Saves the marks in a course's folder; throws a problem if they cannot be written. */
    public void write(Path folder) throws ProblemException {
        MarkList.write(folder.resolve(FILE), marks);
    }

    /** The same with an item ticked, or not ticked any more. */
    public ListMarks ticked(ListKind list, String item, boolean done, Instant now) {
        return changed(list, item, now, mark -> mark.ticked(done, now));
    }

    /** The same with an item left out of the list, or put back. */
    public ListMarks leftOut(ListKind list, String item, boolean out, Instant now) {
        return changed(list, item, now, mark -> mark.leftOut(out));
    }

    /** The same with all items of a part left out of the list, or put back. */
    public ListMarks partLeftOut(ListKind list, String part, boolean out, Instant now) {
        return leftOut(list, PART + part, out, now);
    }

    /** The same with a remark about an item; an empty one takes it away. */
    public ListMarks remarked(ListKind list, String item, String remark, Instant now) throws ProblemException {
        String text = even(remark);
        return changed(list, item, now, mark -> mark.remarked(text));
    }

    /**
     * The same with an item of one's own.
     *
     * @param group the title of its lesson, or empty
     * @throws ProblemException if the text is empty or too long
     */
    public ListMarks added(ListKind list, String group, String text, Instant now) throws ProblemException {
        String own = even(text);
        if (own.isEmpty()) {
            throw new ProblemException("nothing is written for the list", list.title(), "write what to add");
        }
        long number = 1;
        while (last(list, OWN + number).isPresent()) {
            number++;
        }
        List<Mark> more = new ArrayList<>(marks);
        more.add(new Mark(list.label(), OWN + number, group, own, Tick.NONE, now.toString(), false, ""));
        return new ListMarks(more);
    }

    private static String even(String text) throws ProblemException {
        String plain = text.strip().replaceAll("\\s+", " ");
        if (plain.length() > LONGEST) {
            throw new ProblemException(
                    "this is too long for a list (over " + LONGEST + " characters)",
                    plain.substring(0, 40) + "\u2026",
                    "say it in fewer words");
        }
        return plain;
    }

    private ListMarks changed(ListKind list, String item, Instant now, UnaryOperator<Mark> change) {
        List<Mark> all = new ArrayList<>(marks);
        for (int i = 0; i < all.size(); i++) {
            if (is(all.get(i), list, item)) {
                all.set(i, change.apply(all.get(i)));
                return new ListMarks(all);
            }
        }
        all.add(change.apply(new Mark(list.label(), item, "", "", Tick.NONE, now.toString(), false, "")));
        return new ListMarks(all);
    }

    /** What is written about an item. */
    Optional<Mark> last(ListKind list, String item) {
        return marks.stream().filter(mark -> is(mark, list, item)).findFirst();
    }

    /** Whether a part of a list is left out. */
    boolean isOut(ListKind list, String part) {
        return last(list, PART + part).filter(Mark::out).isPresent();
    }

    /** The items that people have added to a list, in the order in which they did. */
    List<Mark> own(ListKind list) {
        return marks.stream()
                .filter(mark -> mark.list().equals(list.label()) && mark.item().startsWith(OWN))
                .toList();
    }

    private static boolean is(Mark mark, ListKind list, String item) {
        return mark.list().equals(list.label()) && mark.item().equals(item);
    }
}
