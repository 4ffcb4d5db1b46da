package org.bookholder.course.versions;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Text;
import org.bookholder.session.LineChanges;
import org.bookholder.session.LineNotes;

/**
 * What became of a lesson, from its first text on, in order of time. Nothing is kept for it: texts and recordings are those of its
 * sessions, films are files.
 *
 * @param title the lesson's title
 * @param entries what happened, the first first
 */
public record LessonHistory(String title, List<Entry> entries) {
    /** Copies the list. */
    public LessonHistory {
        entries = List.copyOf(entries);
    }

    /** What can happen to a lesson. At one moment they come in this order. */
    public enum Kind {
        /** Its text is a new version. */
        TEXT("text"),
        /** Some of it was recorded. */
        RECORDING("recording"),
        /** Its edit was marked as done, or that was taken back. */
        EDIT("edit"),
        /** A film of it was made. */
        FILM("film"),
        /** A film was checked. */
        CHECK("check"),
        /** A fact in it was looked at, or that was taken back. */
        FACT("fact");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** The word that people see. */
        public String label() {
            return label;
        }
    }

    /**
     * Something that happened.
     *
     * @param when the moment
     * @param kind what kind of thing
     * @param version the version of the text to which it belongs, from 1; 0 if nobody knows
     * @param what what happened, a sentence without its full stop
     * @param changes what changed in the text; none unless it is a new version
     */
    public record Entry(Instant when, Kind kind, int version, String what, List<LineChanges.Change> changes) {
        /** Copies the list. */
        public Entry {
            changes = List.copyOf(changes);
        }
    }

    /**
     * A moment that is told by a mark or a file.
     *
     * @param when the moment
     * @param kind what kind of thing
     * @param what what happened
     */
    public record Moment(Instant when, Kind kind, String what) {}

    /**
     * The history of a lesson.
     *
     * @param lesson the lesson, with the text that its file has now
     * @param changed when that file was changed last
     * @param read the texts that were read in its sessions
     * @param sessions its sessions
     * @param moments what marks and files tell
     */
    public static LessonHistory of(
            Lesson lesson, Instant changed, List<ReadText> read, List<RecordedSession> sessions, List<Moment> moments) {
        List<Entry> entries = new ArrayList<>(versions(lesson, changed, read));
        List<Entry> texts = List.copyOf(entries);
        for (RecordedSession session : sessions) {
            entries.add(new Entry(
                    session.began(), Kind.RECORDING, version(texts, session.ended()), recorded(session), List.of()));
        }
        for (Moment moment : moments) {
            String since = moment.kind() == Kind.FILM ? since(moment, texts, sessions) : "";
            entries.add(new Entry(
                    moment.when(), moment.kind(), version(texts, moment.when()), moment.what() + since, List.of()));
        }
        entries.sort(Comparator.comparing(Entry::when).thenComparing(Entry::kind));
        return new LessonHistory(lesson.title(), entries);
    }

    /** Each text that differs in its lines from the one before; the file's own comes last. */
    private static List<Entry> versions(Lesson lesson, Instant changed, List<ReadText> read) {
        List<ReadText> all = new ArrayList<>(read);
        all.sort(Comparator.comparing(ReadText::when));
        Instant last = all.isEmpty() ? changed : all.get(all.size() - 1).when();
        all.add(new ReadText(changed.isAfter(last) ? changed : last, lesson.script()));
        List<Entry> versions = new ArrayList<>();
        Optional<ReadText> before = Optional.empty();
        for (ReadText text : all) {
            List<LineChanges.Change> changes = before.map(old -> LineChanges.between(old.script(), text.script()))
                    .orElse(List.of());
            if (before.isEmpty() || !changes.isEmpty()) {
                int number = versions.size() + 1;
                String size = Text.count(text.script().lines().size(), "line") + ", "
                        + Text.count(text.script().spokenWords(), "word");
                String what = "Version " + number + " of the text: " + size
                        + (changes.isEmpty() ? "" : "; " + Text.count(changes.size(), "line") + " changed");
                versions.add(new Entry(text.when(), Kind.TEXT, number, what, changes));
            }
            before = Optional.of(text);
        }
        return versions;
    }

    /** The version that was the newest at a moment; 0 if that was before the first. */
    private static int version(List<Entry> texts, Instant at) {
        return (int) texts.stream().filter(text -> !text.when().isAfter(at)).count();
    }

    private static String recorded(RecordedSession session) {
        List<LineNotes> lines = session.state().lines().all();
        List<Integer> read = lines.stream()
                .filter(notes -> !notes.attempts().isEmpty())
                .map(LineNotes::line)
                .toList();
        List<Integer> pickups =
                lines.stream().filter(LineNotes::pickup).map(LineNotes::line).toList();
        return Text.count(session.state().takes().all().size(), "take") + ", "
                + (read.isEmpty() ? "no line read" : named(read) + " read")
                + (pickups.isEmpty() ? "" : "; to pick up: " + named(pickups));
    }

    private static String named(List<Integer> lines) {
        return (lines.size() == 1 ? "line " : "lines ") + String.join(", ", Text.ranges(lines));
    }

    /** What a film does not have yet that came after it. */
    private static String since(Moment film, List<Entry> texts, List<RecordedSession> sessions) {
        int version = version(texts, film.when());
        long later = sessions.stream()
                .filter(session -> session.began().isAfter(film.when()))
                .count();
        List<String> missing = new ArrayList<>();
        if (version < texts.size()) {
            missing.add("the text is version " + texts.size() + " now");
        }
        if (later > 0) {
            missing.add(Text.count(later, "session") + " came after it");
        }
        return missing.isEmpty() ? "" : "; " + String.join(", ", missing);
    }
}
