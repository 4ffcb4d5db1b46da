package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Replies of a reading: each request is answered, whatever happens to the others. */
final class ReadingRepliesTest {
    private final ReadingRig rig =
            new ReadingRig(Scripts.of("Every wheel begins with its hub.", "Count the spokes twice."), List.of(), true);
    private final Reading reading = rig.begin(silence());
    private final List<String> answers = new ArrayList<>();

    @Test
    void aReplyThatThrowsCostsNobodyElse() {
        reading.ask(state -> List.of(new NoteCommand.Add(new Remark.Noted(1, "a door", true))), new Answer("a", true));
        reading.ask(state -> List.of(new NoteCommand.Add(new Remark.Noted(2, "a car", true))), new Answer("b", false));
        rig.pass(1);
        assertThat(answers).containsExactly("a done", "b done");
        assertThat(reading.fault()).isEmpty();
        assertThat(reading.progress().over()).isFalse();
        assertThat(rig.log()).contains("stage 'answer': failed, is done without", "nobody listens");
    }

    @Test
    void aRefusalThatThrowsDoesNotEndTheSession() {
        reading.ask(
                state -> {
                    throw new IllegalArgumentException("there is no line 9");
                },
                new Answer("a", true));
        rig.pass(1);
        assertThat(answers).containsExactly("a refused");
        assertThat(reading.fault()).isEmpty();
    }

    @Test
    void everybodyIsToldOfTheEndThoughTheFirstReplyThrows() {
        rig.pass(1);
        reading.ask(state -> List.of(new NoteCommand.Add(new Remark.Noted(1, "a door", true))), new Answer("a", true));
        reading.ask(state -> List.of(new NoteCommand.Add(new Remark.Noted(2, "a car", true))), new Answer("b", false));
        rig.runner().stop();
        assertThat(answers).containsExactly("a failed", "b failed");
        assertThat(reading.progress().over()).isTrue();
    }

    /** The capture has not answered yet when everything is stopped; the take's end is in the journal all the same. */
    @Test
    void aCutIsDoneAlsoIfTheSessionIsStoppedRightAfterIt() {
        rig.pass(1);
        reading.ask(state -> List.of(new TakeCommand.Cut()), new Answer("a", false));
        rig.runner().step();
        assertThat(answers).isEmpty();
        rig.runner().stop();
        assertThat(answers).containsExactly("a done");
    }

    private final class Answer implements Request.Reply {
        private final String who;
        private final boolean throwing;

        Answer(String who, boolean throwing) {
            this.who = who;
            this.throwing = throwing;
        }

        @Override
        public void done() {
            answer("done");
        }

        @Override
        public void refused(String why) {
            answer("refused");
        }

        @Override
        public void failed(String what) {
            answer("failed");
        }

        private void answer(String what) {
            answers.add(who + " " + what);
            if (throwing) {
                throw new IllegalStateException("nobody listens");
            }
        }
    }

    private static FakeAudioSource silence() {
        FakeAudioSource source = new FakeAudioSource(ReadingRig.RATE);
        for (int i = 0; i < 10_000; i++) {
            source.then(new AudioRead.NothingYet());
        }
        return source;
    }
}
