package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.Frame;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.StandIn;
import org.bookholder.view.input.Action;
import org.junit.jupiter.api.Test;

/** What the window shows before a take, in virtual time. */
final class CountInTest {
    private final StandIn session = new StandIn(SampleState.of(SampleState.lessonScript()));

    @Test
    void aCountThatWaitsNamesTheKeyThatBeginsIt() {
        Scene scene = session.scene();
        session.becomes(session.sample().held(true));
        session.counts(Optional.of(0));
        assertThat(captions(pass(scene, 5))).contains("H begins");
        scene.act(Action.HOLD, session.state());
        pass(scene, 0.1);
        assertThat(session.told()).containsExactly(new TakeCommand.BeginCount());
    }

    @Test
    void theNumbersCountDown() {
        Scene scene = session.scene();
        session.becomes(session.sample().held(true));
        session.counts(Optional.of(3));
        assertThat(captions(pass(scene, 0.5))).contains("3");
        assertThat(captions(pass(scene, 1))).contains("2");
        assertThat(captions(pass(scene, 1))).contains("1");
        scene.act(Action.HOLD, session.state());
        pass(scene, 0.1);
        assertThat(session.told()).containsExactly(new TakeCommand.BeginCount());
        session.counts(Optional.empty());
        session.becomes(session.sample().held(false));
        assertThat(captions(pass(scene, 0.2))).doesNotContain("1", "H begins", "held");
    }

    @Test
    void withoutACountTheKeyHolds() {
        Scene scene = session.scene();
        scene.act(Action.HOLD, session.state());
        pass(scene, 0.1);
        assertThat(session.told()).containsExactly(new TakeCommand.Hold());
    }

    @Test
    void beforeTheFirstLineTitleLengthAndSoundAreThereAndFadeWhenReadingBegins() {
        Scene scene = session.scene();
        Opening opening = pass(scene, 3).opening();
        assertThat(opening.title()).isEqualTo("Your first loaf");
        // 111 spoken words at 100 words a minute, rounded to the second.
        int words = session.state().wordsTotal();
        assertThat(opening.length())
                .isEqualTo("10 lines  ·  " + Readouts.minutes(Math.round(words * 0.6)) + " at 100 words a minute");
        assertThat(opening.sound()).isEqualTo("sound good");
        assertThat(opening.light()).isEqualTo(1);
        session.becomes(session.sample().at(1, 5));
        assertThat(pass(scene, 2).opening().light()).isZero();
    }

    private Frame pass(Scene scene, double seconds) {
        Frame view = scene.advance(session.state(), 0);
        scene.drainTo(session::tell);
        for (int i = 0; i < seconds * 20; i++) {
            view = scene.advance(session.state(), 0.05);
            scene.drainTo(session::tell);
        }
        return view;
    }

    private static List<String> captions(Frame view) {
        return view.captions().stream().map(Frame.Caption::text).toList();
    }
}
