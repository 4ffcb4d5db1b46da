package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.Frame;
import org.bookholder.view.Plain;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.StandIn;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/** Counting takes in, in virtual time. */
final class CountInTest {
    private final StandIn session = new StandIn(SampleState.of(SampleState.lessonScript()));

    @Test
    void theFirstTakeIsHeldUntilAskedForAndThenCountedIn() {
        Scene scene = scene(3);
        assertThat(captions(pass(scene, 5))).contains("H begins");
        assertThat(session.told()).containsExactly(new TakeCommand.Hold());
        scene.act(Action.HOLD, session.state());
        assertThat(captions(pass(scene, 0.5))).contains("3");
        assertThat(captions(pass(scene, 1))).contains("2");
        assertThat(captions(pass(scene, 1))).contains("1");
        Frame begun = pass(scene, 1);
        assertThat(session.told()).containsExactly(new TakeCommand.Hold(), new TakeCommand.Resume());
        assertThat(captions(begun)).doesNotContain("1", "H begins", "held");
    }

    @Test
    void pressingAgainSkipsTheRestOfTheCount() {
        Scene scene = scene(5);
        pass(scene, 1);
        scene.act(Action.HOLD, session.state());
        pass(scene, 1);
        scene.act(Action.HOLD, session.state());
        pass(scene, 0.1);
        assertThat(session.told()).containsExactly(new TakeCommand.Hold(), new TakeCommand.Resume());
        pass(scene, 6);
        assertThat(session.told()).hasSize(2);
    }

    @Test
    void withoutACountNothingIsHeld() {
        Scene scene = scene(0);
        pass(scene, 5);
        assertThat(session.told()).isEmpty();
        scene.act(Action.HOLD, session.state());
        pass(scene, 0.1);
        assertThat(session.told()).containsExactly(new TakeCommand.Hold());
    }

    @Test
    void beforeTheFirstLineTitleLengthAndSoundAreThereAndFadeWhenReadingBegins() {
        Scene scene = scene(0);
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

    private Scene scene(int countIn) {
        return new Scene(
                session.state().script(),
                WindowSettings.defaults().withCountIn(countIn),
                new Plain(),
                new Scene.Screen(1920, 1080, 1080, 0),
                session.state().following().position());
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
