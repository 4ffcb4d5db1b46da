package org.bookholder.course.lists;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.course.Lesson;
import org.bookholder.course.lists.ListItem.Finding;
import org.bookholder.course.lists.ListMarks.Mark;
import org.bookholder.course.lists.ListMarks.Tick;

/**
 * A list as it stands: what was found in the course, with what people have written about it.
 *
 * @param kind which list
 * @param parts the kinds of things on it, where it has several
 * @param rows its items, also those that are left out, in the order of the lessons
 */
public record CourseList(ListKind kind, List<Part> parts, List<Row> rows) {
    /** Copies the lists. */
    public CourseList {
        parts = List.copyOf(parts);
        rows = List.copyOf(rows);
    }

    /**
     * A kind of thing on a list.
     *
     * @param name what it is called
     * @param wanted whether it is on the list; otherwise somebody has left all of it out
     */
    public record Part(String name, boolean wanted) {}

    /**
     * An item as it stands.
     *
     * @param item the item
     * @param own whether a person added it
     * @param done whether it is done: because somebody says so, or else because it was found
     * @param out whether it is left out of the list, alone or with its part
     * @param remark a person's remark; may be empty
     */
    public record Row(ListItem item, boolean own, boolean done, boolean out, String remark) {
        /** Whether it is on the list and not done. */
        public boolean open() {
            return !out && !done;
        }
    }

    /**
     * The list as it stands on a day.
     *
     * @param found what was found, in the order of the lessons
     * @param lessons the course's lessons, to one of which an item of a person's own may belong
     * @param today the day for which ticks of a list for the day hold
     */
    public static CourseList of(
            ListKind kind, List<ListItem> found, List<Lesson> lessons, ListMarks marks, LocalDate today, ZoneId zone) {
        List<Row> rows = new ArrayList<>();
        Set<String> parts = new LinkedHashSet<>();
        for (ListItem item : found) {
            if (!item.part().isEmpty()) {
                parts.add(item.part());
            }
            rows.add(row(kind, item, marks, today, zone));
        }
        // Those of a lesson find their place by its number, so that the others come after them.
        marks.own(kind).stream()
                .map(mark -> own(mark, lessons))
                .sorted(Comparator.comparing(item -> item.number() == 0))
                .forEach(item -> rows.add(place(rows, item), row(kind, item, marks, today, zone)));
        return new CourseList(
                kind,
                parts.stream()
                        .map(part -> new Part(part, !marks.isOut(kind, part)))
                        .toList(),
                rows);
    }

    private static ListItem own(Mark mark, List<Lesson> lessons) {
        int number = lessons.stream()
                .filter(lesson -> lesson.title().equals(mark.group()))
                .mapToInt(Lesson::number)
                .findFirst()
                .orElse(0);
        return new ListItem(mark.item(), number, mark.group(), "", mark.text(), "", Finding.UNKNOWN);
    }

    /** Behind the last row of its lesson or an earlier one; at the end if it belongs to none. */
    private static int place(List<Row> rows, ListItem own) {
        int place = rows.size();
        while (own.number() > 0 && place > 0 && rows.get(place - 1).item().number() > own.number()) {
            place--;
        }
        return place;
    }

    private static Row row(ListKind kind, ListItem item, ListMarks marks, LocalDate today, ZoneId zone) {
        Optional<Mark> mark = marks.last(kind, item.id());
        boolean own = mark.filter(known -> !known.text().isEmpty()).isPresent();
        Tick tick = mark.filter(known -> kind != ListKind.SET_UP
                        || LocalDate.ofInstant(Instant.parse(known.when()), zone)
                                .equals(today))
                .map(Mark::tick)
                .orElse(Tick.NONE);
        return new Row(
                item,
                own,
                tick == Tick.NONE ? item.found() == Finding.THERE : tick == Tick.DONE,
                mark.filter(Mark::out).isPresent() || marks.isOut(kind, item.part()),
                mark.map(Mark::remark).orElse(""));
    }

    /** The rows that are not left out. */
    public List<Row> shown() {
        return rows.stream().filter(row -> !row.out()).toList();
    }

    /** The rows that are left out. */
    public List<Row> leftOut() {
        return rows.stream().filter(Row::out).toList();
    }

    /** The rows that are not done. */
    public List<Row> open() {
        return rows.stream().filter(Row::open).toList();
    }

    /** The row of an item; empty if there is none. */
    public Optional<Row> row(String id) {
        return rows.stream().filter(row -> row.item().id().equals(id)).findFirst();
    }

    /** How far it is, for example "3 of 14 done". */
    public String standing() {
        int all = shown().size();
        return all == 0 ? "nothing on it" : all - open().size() + " of " + all + " done";
    }
}
