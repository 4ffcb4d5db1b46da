package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Trouble;
import org.bookholder.testing.Scripts;
import org.bookholder.view.Frame.Footlights;
import org.bookholder.view.Frame.Mark;
import org.bookholder.view.Frame.RowView;
import org.bookholder.view.Frame.Spot;
import org.bookholder.view.Frame.Stretch;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/** What a picture shows of a session, without a window. */
final class FrameBuilderTest {
    private final SampleState lesson = SampleState.lesson();

    @Test
    void wordsBeforeThePositionAreSpoken() {
        RowView row = rowOfLine(shown(lesson), 5);
        assertThat(row.stretches())
                .containsExactly(
                        new Stretch(0, 3, Palette.SPOKEN),
                        new Stretch(3, row.row().pieces().size(), Palette.COMING));
    }

    @Test
    void theVerdictOnTheSoundIsShownOnce() {
        assertThat(captions(shown(lesson.sounding(-120, 0)))).contains("no sound");
        Frame start = shown(SampleState.of(lesson.script()).sounding(-120, 0));
        assertThat(start.opening().sound()).isEqualTo("no sound");
        assertThat(captions(start)).doesNotContain("no sound");
    }

    @Test
    void aPauseIsSeenByItsColour() {
        SampleState pauses = SampleState.of(Scripts.of("Now wait... then go"));
        RowView row = rowOfLine(shown(pauses), 1);
        assertThat(row.stretches())
                .containsExactly(
                        new Stretch(0, 2, Palette.COMING),
                        new Stretch(2, 3, Palette.DIRECTION),
                        new Stretch(3, 5, Palette.COMING));
    }

    @Test
    void theStretchesOfARowCoverItsPieces() {
        for (RowView row : shown(lesson).rows()) {
            int next = 0;
            for (Stretch stretch : row.stretches()) {
                assertThat(stretch.from()).isEqualTo(next);
                next = stretch.to();
            }
            assertThat(next).isEqualTo(row.row().pieces().size());
        }
    }

    /** The opening stands above it. */
    @Test
    void aSpeakerIsShownBeforeTheFirstLine() {
        Frame view = shown(SampleState.of(Scripts.of("> HOST", "Welcome.")));
        assertThat(view.shownBefore()).isGreaterThan(view.geometry().small());
        assertThat(shown(SampleState.of(Scripts.of("Welcome."))).shownBefore()).isZero();
    }

    @Test
    void containsOnlyVisibleRows() {
        Frame view = shown(lesson);
        double pitch = view.geometry().pitch();
        assertThat(view.rows()).isNotEmpty();
        assertThat(view.rows())
                .allSatisfy(row -> assertThat(row.middle())
                        .isBetween(-pitch, view.geometry().height() + pitch));
    }

    @Test
    void theShapeOfTheMarksTellsFollowedHeldLostAndCut() {
        assertThat(shown(lesson).footlights()).isEqualTo(Footlights.BARS);
        assertThat(shown(lesson.held(true)).footlights()).isEqualTo(Footlights.OUTLINES);
        assertThat(shown(lesson.rolling(false)).footlights()).isEqualTo(Footlights.OUTLINES);
        assertThat(shown(lesson.follow(FollowState.LOST)).footlights()).isEqualTo(Footlights.DOTS);
        assertThat(captions(shown(lesson.held(true)))).contains("held; H:\u00a0go\u00a0on");
        assertThat(captions(shown(lesson.follow(FollowState.LOST)))).contains("listening for the place");
    }

    @Test
    void theKeysThatAreNeededAreNamedAtTheBeginningAndWhileHeld() {
        SampleState start = SampleState.of(SampleState.lessonScript());
        assertThat(captions(shown(start)))
                .contains("Listening to microphone  ·  H: hold  ·  P: mark a pickup  ·  K: all keys");
        assertThat(captions(shown(lesson.held(true)))).contains("Page Up: back a line  ·  N: new take  ·  K: all keys");
        assertThat(shows(shown(lesson), Spot.MESSAGE)).isFalse();
        KeyMap taught = KeyMap.usual().with("H", Action.CUT).with("X", Action.HOLD);
        assertThat(captions(shown(start, WindowSettings.defaults().withKeys(taught))))
                .contains("Listening to microphone  ·  F5: hold  ·  P: mark a pickup  ·  K: all keys");
    }

    @Test
    void aPickupHasItsCornerFoldedBesideItsFirstRowAndOnTheThread() {
        Frame view = shown(lesson.outcome(5, Outcome.SKIPPED));
        assertThat(rowOfLine(view, 5).mark()).isEqualTo(Mark.DOG_EAR);
        assertThat(rowOfLine(view, 4).mark()).isEqualTo(Mark.NONE);
        double wordsBefore = 11 + 13 + 12 + 11;
        double all = wordsBefore + 10 + 14 + 5 + 13 + 9 + 11;
        assertThat(view.thread().orElseThrow().pickups())
                .singleElement()
                .satisfies(at -> assertThat(at).isCloseTo(wordsBefore / all, within(0.02)));
        assertThat(view.captions())
                .anySatisfy(c -> assertThat(c.spot() + c.text()).isEqualTo(Spot.HEAD_RIGHT + "1"));
    }

    @Test
    void withoutCuesOnlyTheTextIsLeft() {
        WindowSettings none = WindowSettings.defaults().withCues(Set.of());
        Frame view = shown(
                lesson.outcome(5, Outcome.SKIPPED)
                        .urgency(Urgency.DUE)
                        .sounding(-120, 0)
                        .held(true),
                none);
        assertThat(view.footlights()).isEqualTo(Footlights.HIDDEN);
        assertThat(view.reed()).isEmpty();
        assertThat(view.thread()).isEmpty();
        assertThat(view.captions()).isEmpty();
        assertThat(view.rest()).isEqualTo(Urgency.NONE);
        assertThat(view.rows()).allMatch(row -> row.mark() == Mark.NONE);
    }

    /** Each by what it alone shows. */
    @Test
    void eachCueCanBeLeftOutByItself() {
        SampleState all =
                lesson.outcome(5, Outcome.SKIPPED).urgency(Urgency.DUE).sounding(-120, 0);
        assertThat(hides(Cue.PACE, all, view -> view.reed().isEmpty())).isTrue();
        assertThat(hides(Cue.PICKUPS, all, view -> view.thread().isEmpty() && !shows(view, Spot.HEAD_RIGHT)))
                .isTrue();
        assertThat(hides(Cue.TIME, all, view -> !shows(view, Spot.HEAD_LEFT) && !shows(view, Spot.FOOT_LEFT)))
                .isTrue();
        assertThat(hides(Cue.BREAK, all, view -> view.rest() == Urgency.NONE && !shows(view, Spot.FOOT_RIGHT)))
                .isTrue();
        assertThat(hides(
                        Cue.BREAK,
                        all.held(true),
                        view -> !captions(view).toString().contains("voice rest")))
                .isTrue();
        assertThat(hides(Cue.SOUND, all, view -> !shows(view, Spot.HEAD_MIDDLE)))
                .isTrue();
        assertThat(hides(
                        Cue.FOOTLIGHTS,
                        all.held(true),
                        view -> view.footlights() == Footlights.HIDDEN && !shows(view, Spot.BESIDE)))
                .isTrue();
    }

    @Test
    void adviceThatIsOverdueCannotBeHidden() {
        WindowSettings none = WindowSettings.defaults().withCues(Set.of());
        Frame view = shown(lesson.urgency(Urgency.OVERDUE), none);
        assertThat(view.rest()).isEqualTo(Urgency.OVERDUE);
        assertThat(shows(view, Spot.FOOT_RIGHT)).isTrue();
        assertThat(shows(shown(lesson.held(true).urgency(Urgency.OVERDUE), none), Spot.MESSAGE))
                .isTrue();
    }

    @Test
    void showsATroubleAndWhileNobodyReadsTheFullAdvice() {
        Trouble gone = new Trouble(Trouble.Kind.NO_SOUND, "the microphone is gone");
        assertThat(captions(shown(lesson.trouble(gone))))
                .contains("No sound comes in (the microphone is gone); move the text by hand.");
        assertThat(captions(shown(lesson.held(true).urgency(Urgency.DUE))))
                .anyMatch(text -> text.contains("voice rest was advised"));
        assertThat(captions(shown(lesson.urgency(Urgency.DUE)))).noneMatch(text -> text.contains("voice rest"));
    }

    /** Whether something is gone with a cue, and there without any of the others. */
    private static boolean hides(Cue cue, SampleState state, Predicate<Frame> gone) {
        WindowSettings usual = WindowSettings.defaults();
        EnumSet<Cue> others = EnumSet.complementOf(EnumSet.of(cue));
        return gone.test(shown(state, usual.withCues(others)))
                && !gone.test(shown(state, usual.withCues(EnumSet.of(cue))));
    }

    private static boolean shows(Frame view, Spot spot) {
        return view.caption(spot) != null;
    }

    private static Frame shown(SampleState state) {
        return shown(state, WindowSettings.defaults());
    }

    private static Frame shown(SampleState state, WindowSettings settings) {
        Scene scene = new Scene(
                state.script(), settings, new Plain(), new Scene.Screen(1920, 1080, 1080, 0), state.position());
        return scene.settle(state.state());
    }

    private static RowView rowOfLine(Frame view, int line) {
        return view.rows().stream()
                .filter(r -> r.row().isRead() && r.row().pieces().get(0).line() == line)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> captions(Frame view) {
        return view.captions().stream().map(Frame.Caption::text).toList();
    }
}
