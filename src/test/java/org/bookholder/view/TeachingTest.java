package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyGuide;
import org.junit.jupiter.api.Test;

/** Buttons of a remote are taught what to do, by pressing them. */
final class TeachingTest {
    private final StandIn session = new StandIn(SampleState.lesson());
    private final Scene scene = session.scene();

    @Test
    void aButtonDoesWhatTheKeyPressedAfterItDoes() {
        teach("key 164", "H");
        assertThat(scene.press("key 164")).contains(Action.HOLD);
        assertThat(scene.press("H")).contains(Action.HOLD);
        assertThat(sheet()).contains("H  key 164");
    }

    @Test
    void aDefaultKeyCanGetAnotherAction() {
        teach("Page Up", "P");
        assertThat(scene.press("Page Up")).contains(Action.BACK_LINE);
        teach("Left", "Page Up");
        teach("Page Up", "P");
        assertThat(scene.press("Page Up")).contains(Action.MARK_PICKUP);
        assertThat(scene.press("Left")).contains(Action.BACK_LINE);
        assertThat(sheet()).contains("Left  Page Down", "P  Page Up");
    }

    @Test
    void theKeyThatQuitsCannotBeReassigned() {
        act(Action.TEACH);
        assertThat(scene.press("Esc")).isEmpty();
        assertThat(scene.teaching()).isFalse();
        assertThat(scene.press("Esc")).contains(Action.QUIT);
    }

    @Test
    void aKeyWithoutAnActionCannotBeCopied() {
        act(Action.TEACH);
        scene.press("F13");
        scene.press("F14");
        assertThat(scene.teaching()).isTrue();
        scene.press("N");
        assertThat(scene.press("F13")).contains(Action.NEXT_TAKE);
    }

    @Test
    void shiftMakesNoDifferenceUnlessItHasItsOwnAction() {
        assertThat(scene.press("Shift H")).contains(Action.HOLD);
        assertThat(scene.press("Shift W")).contains(Action.NARROWER);
        assertThat(scene.press("Shift F5")).contains(Action.HOLD);
        assertThat(scene.press("X")).isEmpty();
    }

    @Test
    void messagesNameTheAssignedKeys() {
        teach("Left", "F");
        act(Action.QUIT);
        act(Action.QUIT);
        Frame view = scene.advance(session.state(), 0.05);
        assertThat(view.captions()).extracting(Frame.Caption::text).anyMatch(t -> t.contains("Esc again"));
    }

    private void teach(String button, String like) {
        act(Action.TEACH);
        scene.press(button);
        scene.press(like);
    }

    private void act(Action action) {
        scene.act(action, session.state());
        scene.advance(session.state(), 0.05);
    }

    private List<String> sheet() {
        return KeyGuide.entries(scene.settings().keys()).stream()
                .map(KeyGuide::keys)
                .toList();
    }
}
