package org.bookholder.app.reading;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.day.DayForecast;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.InterruptedSession;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Shooting;
import org.bookholder.pace.RunningTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/** Reads lessons one after another, in one window, at one desk and with one microphone. Each is a session of its own. */
public final class LessonSequence {
    private final Environment here;
    private final List<Path> lessons;
    private final Guide guide;

    /** Who has asked for the lessons. Called on the thread that reads. */
    public interface Guide {
        /**
         * How a lesson is to be read; called when its turn comes.
         *
         * @param place the lesson's place in the order, from 0
         */
        ReadingRequest request(int place) throws ProblemException;

        /** The lesson at this place of the order begins; called before anything of it is done. */
        default void begins(int place) {}

        /** Those whose lines are read in all lessons; empty if the scripts' own settings count. */
        default List<String> speakers() {
            return List.of();
        }

        /** A session has ended. */
        void ended(ReadingResult result);
    }

    /** Reads these scripts; {@code guide} says how. */
    public LessonSequence(Environment here, List<Path> lessons, Guide guide) {
        this.here = here;
        this.lessons = List.copyOf(lessons);
        this.guide = guide;
    }

    /**
     * Reads until the last lesson has ended, or until someone ends the day or sound could not be saved. All scripts are looked at first, so that none turns
     * out to be unreadable in the middle of the day.
     *
     * @throws ProblemException if something prevents a reading; sessions before it are kept
     * @throws org.bookholder.app.environment.OperationInterrupted if it was interrupted before a reading began
     */
    public void read(ReadingListener listener, ReadingControl control) throws ProblemException {
        List<ScriptFile> scripts = new ArrayList<>();
        for (Path lesson : lessons) {
            scripts.add(ScriptFile.read(lesson, guide.speakers()));
        }
        try (SharedDevices shared = new SharedDevices()) {
            boolean more = true;
            for (int place = 0; more && place < lessons.size(); place++) {
                guide.begins(place);
                ReadingRequest request = guide.request(place);
                Optional<NextLessons> next = lessons.size() == 1
                        ? Optional.empty()
                        : Optional.of(next(scripts.subList(place + 1, scripts.size()), request));
                ReadingResult result = new ReadingService(here, request, listener, control).read(shared, next);
                guide.ended(result);
                // With sound unsaved, people have to make room first.
                more = result.nextLesson()
                        && result.unsaved().isEmpty()
                        && result.fault().isEmpty()
                        && !control.interrupted();
            }
        }
    }

    /**
     * The place of the lesson whose session was broken off, if that was the last session of today.
     *
     * @param speakers those whose lines are read; empty if the scripts' own settings count
     * @return its place in the order, from 0; 0 if none was broken off
     */
    public static int brokenOff(Environment here, List<Path> lessons, List<String> speakers) throws ProblemException {
        Optional<Path> last = SessionFolders.last(here.sessions(), here);
        for (int i = 0; last.isPresent() && i < lessons.size(); i++) {
            if (InterruptedSession.of(last.get(), ScriptFile.read(lessons.get(i), speakers), here.locks())) {
                return i;
            }
        }
        return 0;
    }

    private NextLessons next(List<ScriptFile> left, ReadingRequest request) throws ProblemException {
        String presenter = request.presenter().orElse(DayService.SOLE_PRESENTER);
        TargetPaces paces = new TargetPaces(here, presenter);
        DayService days = new DayService(here, presenter);
        double ratio = DayForecast.ratio(days.today(), Shooting.USUAL_RATIO);
        return new NextLessons(
                left.stream()
                        .map(lesson -> new NextLessons.Lesson(
                                lesson.script().title(),
                                length(paces.aimed(
                                        lesson.script(), Path.of(lesson.script().source())))))
                        .toList(),
                ratio,
                BreakLimits.of(here));
    }

    private static Duration length(Script script) {
        return RunningTime.of(script.spokenWords(), script.settings().targetPace())
                .toDuration();
    }
}
