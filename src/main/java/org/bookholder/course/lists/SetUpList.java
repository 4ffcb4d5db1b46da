package org.bookholder.course.lists;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.lists.ListItem.Finding;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;

/**
 * What to look at before the first take of a day: usual things of a set-up before a camera (common practice), and for each lesson that is
 * gone on with, how it looked in its last session.
 */
public final class SetUpList {
    private static final String PLACE = "Before the first take";
    private static final String AS_BEFORE = "As in the last session";

    /** From so many bytes on they are counted in gigabytes. */
    private static final double LEAST = 1e9;

    private final Board board;
    private final Map<Lesson, List<RecordedSession>> sessions;
    private final ZoneId zone;
    private final List<ListItem> items = new ArrayList<>();

    private SetUpList(Board board, Map<Lesson, List<RecordedSession>> sessions, ZoneId zone) {
        this.board = board;
        this.sessions = sessions;
        this.zone = zone;
    }

    /**
     * The list.
     *
     * @param day the session that is next by the plan; empty if nothing is left to record
     * @param sessions the sessions of each lesson
     * @throws ProblemException if notes about a session's footage cannot be read
     */
    public static List<ListItem> of(
            Board board, Optional<PlannedSession> day, Map<Lesson, List<RecordedSession>> sessions, ZoneId zone)
            throws ProblemException {
        SetUpList list = new SetUpList(board, sessions, zone);
        Optional<Duration> length = day.map(PlannedSession::reading);
        list.usual(length);
        list.asBefore(day.map(PlannedSession::works).orElse(List.of()));
        return list.items;
    }

    private void usual(Optional<Duration> length) throws ProblemException {
        String camera = length.map(time -> "; " + Text.hours(time) + " before the camera are planned")
                .orElse("");
        add("Light", "lamps where they were, daylight kept out or steady, no shine on glasses or forehead");
        add("Framing", "camera at eye height, a little room above the head, a tidy background, the lens clean");
        add("Focus, exposure and white balance", "set on your face, then fixed");
        add("Battery", "charged, and a second one or mains power at hand" + camera);
        add("Card", "room on it, and the last day's files copied twice" + room(length));
        add("Sound", "microphone where it was; phone, fan and fridge off");
        add("Clothes", "as in the other lessons; no fine pattern, nothing that rattles");
        add("Things to show", "in reach, in the order of the scripts: see Shots and covers");
        add("Water and the script's last words", "a glass in reach; the first line said aloud once");
    }

    private void add(String text, String detail) {
        items.add(new ListItem(text, 0, PLACE, "", text, detail, Finding.UNKNOWN));
    }

    /** How much a day's recording takes on the card, by what the camera wrote last. */
    private String room(Optional<Duration> length) throws ProblemException {
        Optional<Footage> last = lastFilmed();
        if (last.isEmpty() || length.isEmpty()) {
            return "";
        }
        double perSecond =
                last.get().file().toFile().length() / last.get().length().seconds();
        double bytes = perSecond * length.get().toSeconds();
        String room = bytes < LEAST
                ? String.format(Locale.ROOT, "%.0f MB", bytes / 1e6)
                : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
        return "; about " + room + " for that, by " + last.get().name();
    }

    private Optional<Footage> lastFilmed() throws ProblemException {
        List<RecordedSession> newestFirst = sessions.values().stream()
                .flatMap(List::stream)
                .sorted(Comparator.comparing(RecordedSession::began).reversed())
                .toList();
        for (RecordedSession session : newestFirst) {
            Optional<Footage> film = filmed(session.folder()).map(PlacedFootage::footage);
            if (film.isPresent()) {
                return film;
            }
        }
        return Optional.empty();
    }

    /**
     * The last camera's file of those that were matched with a session and are still there.
     *
     * @throws ProblemException if the notes about its footage cannot be read
     */
    public static Optional<PlacedFootage> filmed(Path session) throws ProblemException {
        return FootageNotes.read(session).stream()
                .filter(placed -> placed.footage().picture().isPresent()
                        && placed.footage().length().seconds() > 0
                        && !placed.placements().isEmpty()
                        && Files.isRegularFile(placed.footage().file()))
                .reduce((earlier, later) -> later);
    }

    /** Lessons that are gone on with must look as they did. */
    private void asBefore(List<RecordingTask> works) {
        for (RecordingTask work : works) {
            board.lessons().stream()
                    .filter(state -> state.lesson().number() == work.lesson())
                    .filter(state -> state.recording().begun())
                    .findFirst()
                    .flatMap(this::asBefore)
                    .filter(item -> items.stream().noneMatch(other -> other.id().equals(item.id())))
                    .ifPresent(items::add);
        }
    }

    private Optional<ListItem> asBefore(LessonState state) {
        return sessions.getOrDefault(state.lesson(), List.of()).stream()
                .max(Comparator.comparing(RecordedSession::began))
                .map(session -> new ListItem(
                        "as before: " + state.lesson().title(),
                        0,
                        AS_BEFORE,
                        "",
                        state.lesson().number() + " \u00b7 " + state.lesson().title()
                                + ": clothes, hair, light and framing",
                        "as on " + LocalDate.ofInstant(session.began(), zone) + "; to do: " + state.next(),
                        Finding.UNKNOWN,
                        Optional.of(session.folder())));
    }
}
