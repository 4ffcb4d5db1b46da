package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.util.Map;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.CountIn;
import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.SampleState;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The main states look as they did when somebody last looked at them. */
final class GoldenPicturesTest {
    private static final WindowSettings USUAL = WindowSettings.defaults();

    @BeforeEach
    void needsDisplay() {
        Needs.display();
    }

    @Test
    void eachStateOfASessionLooksAsExpected() throws ProblemException, IOException {
        for (Map.Entry<String, SampleState> state : SampleStates.all().entrySet()) {
            try (ReadingWindow window = window(state.getValue(), USUAL, 1920, 1080)) {
                GoldenPicture.check(
                        state.getKey(), window.snapshot(state.getValue().state()));
            }
        }
    }

    @Test
    void whatTheProducerSays() throws ProblemException, IOException {
        try (ReadingWindow window = window(SampleState.lesson(), USUAL, 1920, 1080)) {
            GoldenPicture.check(
                    "told",
                    window.snapshot(ToldPicturesTest.told(SampleState.lesson(), "Chin up, and look past the lens")));
        }
    }

    @Test
    void theKeys() throws ProblemException, IOException {
        try (ReadingWindow window = window(SampleState.lesson(), USUAL, 1920, 1080)) {
            window.act(Action.KEYS);
            GoldenPicture.check("keys", window.snapshot(SampleState.lesson().state()));
        }
    }

    @Test
    void theOpeningStandsAboveTheFirstSpeaker() throws ProblemException, IOException {
        SampleState start = SampleState.of(Scripts.of("> HOST", "Welcome to the bakery."));
        try (ReadingWindow window = window(start, USUAL, 1920, 1080)) {
            GoldenPicture.check("speaker-first", window.snapshot(start.state()));
        }
    }

    @Test
    void mirroredAndUpsideDown() throws ProblemException, IOException {
        SampleState fast = SampleState.lesson().live(124);
        try (ReadingWindow window = window(fast, USUAL.withMirrored(true), 1920, 1080)) {
            GoldenPicture.check("mirrored", window.snapshot(fast.state()));
        }
        try (ReadingWindow window = window(fast, USUAL.withUpsideDown(true), 1920, 1080)) {
            GoldenPicture.check("upside-down", window.snapshot(fast.state()));
        }
    }

    @Test
    void theCountBeforeATake() throws ProblemException, IOException {
        SampleState start = SampleState.of(SampleState.lessonScript()).live(Double.NaN);
        try (ReadingWindow window = window(start, USUAL, 1920, 1080)) {
            GoldenPicture.check("waiting", window.snapshot(counting(start, 0)));
            GoldenPicture.check("count-in", window.snapshot(counting(start, 3), 0.5));
        }
    }

    @Test
    void thePickupRound() throws ProblemException, IOException {
        SampleState sample = SampleState.lesson().outcome(3, Outcome.SKIPPED).at(11, 1);
        try (ReadingWindow window = window(sample, USUAL, 1920, 1080)) {
            PickupRound round = PickupRound.NONE.at(3, 0);
            GoldenPicture.check("round", window.snapshot(sample.at(2, 9).state().with(round)));
            SampleState clean = sample.at(4, 1).outcome(3, Outcome.CLEAN);
            GoldenPicture.check("round-ticked", window.snapshot(clean.state().with(round.ticking()), 0.9));
        }
    }

    /** A screen of more pixels shows the same picture, only finer. */
    @ParameterizedTest
    @ValueSource(doubles = {1.5, 2})
    void atAnyDensityThePictureIsTheSame(double density) throws ProblemException, IOException {
        assumeFalse(Boolean.getBoolean("golden.update"), "the pictures are being renewed");
        SampleState sample = SampleStates.named("overdue");
        int width = (int) (1920 * density);
        try (ReadingWindow window = window(sample, USUAL, width, (int) (1080 * density))) {
            Snapshot picture = window.snapshot(sample.state());
            assertThat(picture.width()).isEqualTo(width);
            assertThat(GoldenPicture.difference("overdue", picture)).isLessThan(3 * GoldenPicture.TOLERANCE);
        }
    }

    @Test
    void theMeasureSeesSmallDifferences() throws ProblemException, IOException {
        assumeFalse(Boolean.getBoolean("golden.update"), "the pictures are being renewed");
        try (ReadingWindow window = window(SampleState.lesson(), USUAL, 1920, 1080)) {
            Snapshot mid = window.snapshot(SampleState.lesson().state());
            assertThat(GoldenPicture.difference("mid", mid)).isLessThan(GoldenPicture.TOLERANCE);
            for (String other : new String[] {"fast", "slow", "held", "lost", "sound-gone", "trouble"}) {
                assertThat(GoldenPicture.difference(other, mid)).as(other).isGreaterThan(GoldenPicture.TOLERANCE);
            }
        }
    }

    private static SessionState counting(SampleState start, int seconds) {
        return start.held(true).state().with(new CountIn(StreamTime.ZERO, seconds));
    }

    private static ReadingWindow window(SampleState state, WindowSettings settings, int width, int height)
            throws ProblemException {
        return ReadingWindow.open(settings, state.script(), WindowPlace.hidden(width, height));
    }
}
