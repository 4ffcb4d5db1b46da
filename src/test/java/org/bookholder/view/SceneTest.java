package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.Action;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/** The reading window without a window. */
final class SceneTest {
    private final StandIn session = new StandIn(SampleState.lesson());
    private final Scene scene = session.scene();

    @Test
    void holdingAndGoingOn() {
        assertThat(act(Action.HOLD)).containsExactly(new TakeCommand.Hold());
        assertThat(act(Action.HOLD)).containsExactly(new TakeCommand.Resume());
    }

    @Test
    void theNextTakeBeginsAtTheLinesStart() {
        assertThat(act(Action.NEXT_TAKE)).containsExactly(new TakeCommand.NextTake(new ReadingPosition(5, 1)));
    }

    @Test
    void thePreviousTakeBeginsWhereItBegan() {
        scene.settle(session.state());
        session.becomes(session.sample().at(7, 3));
        assertThat(act(Action.PREVIOUS_TAKE)).containsExactly(new TakeCommand.NextTake(new ReadingPosition(5, 4)));
    }

    @Test
    void endingAsksAgainOnlyWhileATakeIsRolling() {
        assertThat(act(Action.QUIT)).isEmpty();
        assertThat(scene.closing()).isFalse();
        assertThat(act(Action.QUIT)).containsExactly(new TakeCommand.Quit());
        assertThat(scene.closing()).isTrue();
    }

    @Test
    void aConfirmationQuestionExpires() {
        act(Action.QUIT);
        pass(6);
        assertThat(act(Action.QUIT)).isEmpty();
        assertThat(scene.closing()).isFalse();
    }

    @Test
    void aNewSizeKeepsThePlaceAtTheEyeLine() {
        scene.settle(session.state());
        scene.resize(new Scene.Screen(1280, 720, 720, 0));
        Frame view = scene.settle(session.state());
        assertThat(view.geometry().height()).isEqualTo(720);
        assertThat(offEyeLine(view)).isLessThan(0.6 * view.geometry().pitch());
    }

    @Test
    void largerTypeKeepsThePlaceToo() {
        scene.settle(session.state());
        for (int i = 0; i < 4; i++) {
            act(Action.LARGER);
        }
        Frame view = scene.settle(session.state());
        assertThat(view.geometry().em())
                .isGreaterThan(Geometry.of(WindowSettings.defaults(), 0, 1080, 1920, 1080)
                        .em());
        assertThat(offEyeLine(view)).isLessThan(0.6 * view.geometry().pitch());
    }

    @Test
    void arrowsMoveAPageWhileOneIsShown() {
        act(Action.KEYS);
        pass(1);
        assertThat(act(Action.ROW_DOWN)).isEmpty();
        assertThat(act(Action.FORWARD_LINE)).isEmpty();
    }

    @Test
    void eachCueHasAKeyThatLeavesItOutAndBringsItBack() {
        Map<Action, Cue> keys = Map.of(
                Action.CUE_PACE, Cue.PACE,
                Action.CUE_PICKUPS, Cue.PICKUPS,
                Action.CUE_TIME, Cue.TIME,
                Action.CUE_BREAK, Cue.BREAK,
                Action.CUE_SOUND, Cue.SOUND,
                Action.CUE_FOOTLIGHTS, Cue.FOOTLIGHTS);
        assertThat(keys.values()).containsExactlyInAnyOrder(Cue.values());
        keys.forEach((key, cue) -> {
            act(key);
            assertThat(EnumSet.complementOf(EnumSet.copyOf(scene.settings().cues())))
                    .containsExactly(cue);
            act(key);
            assertThat(scene.settings().cues()).containsExactlyInAnyOrder(Cue.values());
        });
    }

    @Test
    void allCuesAreHiddenTogetherAndTheSameOnesReturn() {
        act(Action.CUE_TIME);
        act(Action.CUES);
        assertThat(scene.settings().cues()).containsExactly(Cue.FOOTLIGHTS);
        act(Action.CUES);
        assertThat(scene.settings().cues())
                .containsExactlyInAnyOrder(Cue.PACE, Cue.PICKUPS, Cue.BREAK, Cue.SOUND, Cue.FOOTLIGHTS);
    }

    @Test
    void theTextMovesByItselfAtASteadyPace() {
        act(Action.WAY);
        assertThat(scene.settings().way()).isEqualTo(Mover.STEADY);
        List<Command> commands = pass(20);
        assertThat(commands).isNotEmpty().allMatch(c -> c instanceof TakeCommand.GoTo);
    }

    @Test
    void wordsDimOneAfterTheOther() {
        scene.settle(session.state());
        session.becomes(session.sample().at(5, 6));
        Frame soon = scene.advance(session.state(), 0.05);
        int shown = soon.rows().stream()
                .flatMap(r -> r.stretches().stream())
                .mapToInt(Frame.Stretch::rgb)
                .filter(rgb -> rgb != Palette.COMING && rgb != Palette.SPOKEN && rgb != Palette.DIRECTION)
                .toArray()
                .length;
        assertThat(shown).isPositive();
    }

    @Test
    void aChangedTextKeepsThePlace() {
        scene.settle(session.state());
        List<String> lines = new ArrayList<>(List.of("A line that was put in front of all others."));
        session.state().script().lines().forEach(line -> lines.add(line.text()));
        session.becomes(SampleState.of(Scripts.of(lines.toArray(String[]::new))).at(6, 4));
        Frame view = scene.advance(session.state(), 0.05);
        assertThat(view.rows().stream()
                        .filter(r -> r.row().pieces().stream().anyMatch(p -> p.line() == 6 && p.word() == 4))
                        .mapToDouble(r -> Math.abs(r.middle() - view.geometry().eyeLine())))
                .allMatch(off -> off < 0.6 * view.geometry().pitch());
        assertThat(view.captions()).extracting(Frame.Caption::text).contains("the text was changed");
        assertThat(pass(0.1)).isEmpty();
    }

    @Test
    void commandsKeepTheOrderInWhichThePresenterGaveThem() {
        pass(0.1);
        scene.act(Action.MARK_PICKUP, session.state());
        scene.act(Action.FORWARD_LINE, session.state());
        scene.act(Action.HOLD, session.state());
        scene.act(Action.BACK_LINE, session.state());
        assertThat(pass(0.05))
                .extracting(told -> told.getClass().getSimpleName())
                .containsExactly("Add", "GoTo", "Hold", "GoTo");
    }

    @Test
    void thePresentersLastMarkIsUndone() {
        SessionState state = Session.apply(
                Session.begin(session.state().script(), FatigueLimits.defaults()),
                new SessionEvent.Remarked(
                        StreamTime.ZERO, new Remark.Signed(Remark.Signed.PRESENTER, new Remark.Noted(2, "", true))));
        scene.act(Action.UNDO, state);
        assertThat(pass(0.05))
                .containsExactly(
                        new NoteCommand.Add(new Remark.Signed(Remark.Signed.PRESENTER, new Remark.Retracted(1))));
    }

    /** Undo would take away what the other one wrote. */
    @Test
    void aMarkOnWhichSomeoneElseHasWrittenStays() {
        SessionState state = Session.begin(session.state().script(), FatigueLimits.defaults());
        Remark mark = new Remark.Signed(Remark.Signed.PRESENTER, new Remark.Noted(2, "", true));
        Remark text = new Remark.Signed("bert", new Remark.Edited(1, "too fast"));
        for (Remark remark : List.of(mark, text)) {
            state = Session.apply(state, new SessionEvent.Remarked(StreamTime.ZERO, remark));
        }
        scene.act(Action.UNDO, state);
        assertThat(pass(0.05)).isEmpty();
    }

    private List<Command> act(Action action) {
        scene.act(action, session.state());
        return pass(0.05);
    }

    private List<Command> pass(double seconds) {
        List<Command> commands = new ArrayList<>();
        for (double t = 0; t < seconds; t += 0.05) {
            scene.advance(session.state(), 0.05);
            List<Command> now = new ArrayList<>();
            scene.drainTo(now::add);
            now.forEach(session::tell);
            commands.addAll(now);
        }
        return commands;
    }

    private static double offEyeLine(Frame view) {
        return view.rows().stream()
                .filter(r -> r.row().pieces().stream().anyMatch(p -> p.line() == 5 && p.word() == 4))
                .mapToDouble(r -> Math.abs(r.middle() - view.geometry().eyeLine()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
