package org.bookholder.course.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.dropped;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.settled;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.RecordedSession;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Deviation;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.script.source.SpeakerChoice;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.junit.jupiter.api.Test;

/** A lesson of two people who read their lines in sessions of their own. */
final class SpeakersRecordingTest {
    private static final String TALK = "HOST: Where is the hub?\n\nGUEST: Right here. Thank you.\n\nHOST: Thank you.\n";

    private static Script script(String... speakers) throws ProblemException {
        return ScriptReader.parse(SpeakerChoice.in(TALK, List.of(speakers)), "talk.txt", Format.PLAIN_TEXT);
    }

    /** A session in which this speaker read all their lines clean, but for the last one if {@code slips}. */
    private static RecordedSession session(String speaker, boolean slips) throws ProblemException {
        Script script = script(speaker);
        List<SessionEvent> events = new ArrayList<>();
        events.add(rolled(1, 0));
        List<ScriptLine> lines = script.lines();
        for (ScriptLine line : lines) {
            int number = line.number();
            Deviation[] off =
                    slips && number == lines.size() ? new Deviation[] {dropped(1, "Thank")} : new Deviation[0];
            events.add(moved(number * 2, number + 1, 1, line.words().size()));
            events.add(settled(complete(1, number, number, line.words().size(), number * 2 - 1, number * 2, off)));
        }
        events.add(cut(1, 20));
        return new RecordedSession(
                Path.of("session-of-" + speaker),
                Session.apply(Session.begin(script, FatigueLimits.defaults()), events));
    }

    @Test
    void theSessionOfOneSaysNothingOfTheOthersLines() throws ProblemException {
        Recording host = Recording.of(script(), List.of(session("Host", false)));
        assertThat(host.unread()).containsExactly(2, 3);
        assertThat(host.pickups()).isEmpty();
    }

    @Test
    void twoSessionsMakeUpTheLesson() throws ProblemException {
        assertThat(Recording.of(script(), List.of(session("Host", false), session("Guest", false)))
                        .complete())
                .isTrue();
    }

    /** Both say "Thank you."; only the guest has to say it again. */
    @Test
    void aPickupOfOneIsNotTheOthers() throws ProblemException {
        Recording both = Recording.of(script(), List.of(session("Guest", true), session("Host", false)));
        assertThat(both.unread()).isEmpty();
        assertThat(both.pickups()).containsExactly(3);
    }

    /** The script's own setting says that the guest's lines are not this author's to record. */
    @Test
    void linesThatTheScriptLeavesToOthersAreNotMissing() throws ProblemException {
        Script own = ScriptReader.parse("---\nspeaker: Host\n---\n" + TALK, "talk.txt", Format.PLAIN_TEXT);
        assertThat(Recording.of(own, List.of(session("Host", false))).complete())
                .isTrue();
        assertThat(Recording.of(own, List.of(session("Guest", false))).begun()).isFalse();
    }
}
