package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.InterruptedSession;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.Readings;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is expected is written in the README, below "What is kept". */
final class ReadingOnTest {
    private static final String TEXT =
            "---\ntitle: Four lines\n---\nThe river was cold today.\nBuy a dozen frames.\nTurn them to the sun.\nThen wait for spring.\n";

    private static final Instant NOON = Instant.parse("2027-09-07T12:00:00Z");

    @TempDir
    private Path folder;

    private Environment here;
    private Path lesson;

    @BeforeEach
    void writeTheLesson() throws Exception {
        here = StoredExamples.here(Files.createDirectories(folder.resolve("data")))
                .at(() -> NOON);
        lesson = Files.createDirectories(folder.resolve("course")).resolve("lesson-1.md");
        Files.writeString(lesson, TEXT);
    }

    /** A session in which two lines were read and the third was begun, or not. */
    private Path session(String name, Duration ago, TakeEnd end, boolean begun) throws Exception {
        return session(name, ago, end, begun, true);
    }

    /** The same, of which what was recorded may still have to be listened to. */
    private Path session(String name, Duration ago, TakeEnd end, boolean begun, boolean heard) throws Exception {
        Path session = here.sessions().resolve(name);
        Instant when = NOON.minus(ago);
        List<SessionEvent> events = new ArrayList<>(List.of(
                new SessionEvent.Opened(StreamTime.ZERO, when, "Four lines", lesson.toString(), TEXT),
                new SessionEvent.TakeStarted(StreamTime.ZERO, 1, when, "a microphone", ReadingPosition.START)));
        List<Attempt> attempts =
                new ArrayList<>(List.of(Readings.complete(1, 1, 1, 5, 1, 3), Readings.complete(1, 2, 2, 4, 4, 6)));
        events.add(new SessionEvent.PositionMoved(Readings.s(6), new ReadingPosition(3, 1), Mover.VOICE, 1));
        if (begun) {
            attempts.add(Readings.broken(1, 3, 3, 2, 7, 8));
        }
        events.add(new SessionEvent.TakeEnded(Readings.s(8), 1, when.plusSeconds(8), end));
        if (heard) {
            events.add(new SessionEvent.TakeSettled(Readings.s(8), 1, attempts, List.of()));
        }
        try (SessionFolder open = SessionFolder.create(session, here.locks())) {
            open.journal().append(events);
        }
        new DayService(here, DayService.SOLE_PRESENTER).opened(session);
        return session.toAbsolutePath();
    }

    private ReadingOn readOn() throws Exception {
        CourseOverview course = CourseOverview.read(folder.resolve("course"), here);
        return ReadingOn.of(course, course.status().board().lessons().get(0), here);
    }

    @Test
    void aLessonThatNobodyBeganIsReadFromItsFirstLine() throws Exception {
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.empty(), Optional.empty()));
    }

    @Test
    void aSessionThatWasBrokenOffAndListenedToGoesOnWhereItEnded() throws Exception {
        Path session = session("2026-01-01-0900-four-lines", Duration.ofMinutes(5), TakeEnd.BROKEN_OFF, true);
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.of(session), Optional.of(3)));
        ScriptFile script = ScriptFile.read(lesson, List.of());
        assertThat(InterruptedSession.of(session, script, here.locks()))
                .as("the same command goes on with it too")
                .isTrue();
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            open.journal()
                    .append(List.of(
                            new SessionEvent.TakeStarted(
                                    Readings.s(8), 2, NOON, "a microphone", new ReadingPosition(3, 1)),
                            new SessionEvent.TakeEnded(Readings.s(9), 2, NOON, TakeEnd.CUT)));
        }
        assertThat(InterruptedSession.of(session, script, here.locks()))
                .as("until a take was read in it to its end")
                .isFalse();
    }

    @Test
    void whereASessionGoesOnThatHasStillToBeListenedToIsNotKnown() throws Exception {
        Path session = session("2026-01-01-0900-four-lines", Duration.ofMinutes(5), TakeEnd.BROKEN_OFF, true, false);
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.of(session), Optional.empty()));
    }

    /** As one that {@code log} made of footage, the demo's, or that of another presenter. */
    @Test
    void aSessionInWhichSomebodyElseWasHeardDoesNotGoOn() throws Exception {
        Path session = session("another", Duration.ofMinutes(5), TakeEnd.CUT, true);
        Path list = here.data().resolve("presenters/" + DayService.SOLE_PRESENTER + ".json");
        Files.move(list, list.resolveSibling("anna.json"));
        assertThat(session).exists();
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.empty(), Optional.of(4)));
    }

    @Test
    void aSessionThatWasEndedInTheMiddleGoesOnToo() throws Exception {
        session("a-former", Duration.ofHours(2), TakeEnd.CUT, false);
        Path last = session("the-last", Duration.ofHours(1), TakeEnd.CUT, false);
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.of(last), Optional.of(3)));
        assertThat(InterruptedSession.of(last, ScriptFile.read(lesson, List.of()), here.locks()))
                .as("a command has to name it")
                .isFalse();
    }

    @Test
    void withoutDaysTheCoursesOrderHoldsButForWhatWasBegunToday() throws Exception {
        Path before = lesson.resolveSibling("lesson-0.md");
        Files.writeString(before, "Yes.\n");
        Files.writeString(
                lesson.resolveSibling("lesson-2.md"),
                "She sells seashells; the sixth sick sheikh's sixth sheep's sick.\n");
        assertThat(order()).containsExactly("lesson-0", "lesson-1", "lesson-2");
        session("today", Duration.ofSeconds(30), TakeEnd.BROKEN_OFF, true);
        assertThat(order()).containsExactly("lesson-1", "lesson-0", "lesson-2");
    }

    private List<String> order() throws Exception {
        return RunningOrder.of(folder.resolve("course"), DayService.SOLE_PRESENTER, false, here).stream()
                .map(turn -> String.valueOf(turn.script().getFileName()).replace(".md", ""))
                .toList();
    }

    @Test
    void whoeverHandsOffOneOfTwoSessionsIsTold() throws Exception {
        Path first = session("first", Duration.ofMinutes(9), TakeEnd.CUT, false);
        assertThat(LessonSessions.handedOffAlone(first, here)).isEmpty();
        session("second", Duration.ofMinutes(5), TakeEnd.CUT, false);
        assertThat(LessonSessions.handedOffAlone(first, here))
                .hasValueSatisfying(
                        said -> assertThat(said).contains("2 sessions", "one of them alone", "bookholder handoff "));
    }

    @Test
    void anotherDaysOrAnotherTextsSessionIsLeftAsItIs() throws Exception {
        session("yesterday", Duration.ofHours(20), TakeEnd.CUT, false);
        assertThat(readOn()).isEqualTo(new ReadingOn(Optional.empty(), Optional.of(3)));
        session("today", Duration.ofHours(1), TakeEnd.CUT, false);
        Files.writeString(
                lesson,
                TEXT.replace("Turn them", "A: One.\nB: Two.\nC: Three.\nD: Four.\nE: Five.\nTurn them")
                        .replace("Buy a dozen frames.", "Sell them.")
                        .replace("Then wait for spring.", "Rest.")
                        .replace("Turn them to the sun.", "Turn."));
        assertThat(readOn().session()).isEmpty();
    }
}
