package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.Frame;
import org.bookholder.view.SampleState;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the producer says stands clear of the script above it and of the lesson's thread beneath it. */
final class ToldPicturesTest {
    private static final String LONG = "The lamp at the left is in your glasses: turn the chair a hand to the right, "
            + "then read the last two lines once more";

    @BeforeEach
    void needsDisplay() {
        Needs.display();
    }

    @ParameterizedTest
    @CsvSource({"1920, 1080, 1500", "1280, 800, 1500", "700, 900, 1500", "800, 600, 1500", "1920, 1080, 3000"})
    void overlapsNeitherTextNorProgressLine(int width, int height, double distance) throws ProblemException {
        // The time left stands between the words and the thread, and is measured elsewhere.
        WindowSettings settings = WindowSettings.defaults()
                .withDistance(distance)
                .withCues(EnumSet.complementOf(EnumSet.of(Cue.TIME, Cue.PACE)));
        try (Easel easel = Easel.of(width, height)) {
            for (String text : List.of("Chin up, and look past the lens", LONG)) {
                Frame view = settled(easel, SampleState.of(Scripts.of("Wait.")), settings, text);
                Geometry geometry = view.geometry();
                Snapshot alone = easel.draw(view);
                int thread = (int) (geometry.threadLine() - 0.1 * geometry.margin());
                int top = firstInked(alone, geometry, (int) (geometry.eyeLine() + geometry.pitch() / 2), thread);
                int bottom = lastInked(alone, geometry, top, thread);
                assertThat(bottom - top).as("height").isGreaterThan((int) (0.6 * geometry.said()));
                assertThat(thread - bottom).as("above the thread").isGreaterThan((int) (0.4 * geometry.said()));
                Snapshot picture = easel.draw(settled(easel, SampleState.lesson(), settings, text));
                int clear = top - (int) (0.4 * geometry.said());
                assertThat(firstInked(picture, geometry, clear, thread))
                        .as("the first row of ink")
                        .isEqualTo(top);
                assertThat(lastInked(picture, geometry, top, thread))
                        .as("the last row of ink")
                        .isEqualTo(bottom);
            }
        }
    }

    /** The same with the producer having just said something. */
    static SessionState told(SampleState state, String text) {
        Remark remark = new Remark.Told(text);
        return Session.apply(state.state(), List.of(new SessionEvent.Remarked(StreamTime.ofSeconds(254), remark)));
    }

    private static Frame settled(Easel easel, SampleState state, WindowSettings settings, String text) {
        return easel.scene(state.script(), settings).settle(told(state, text));
    }

    private static int firstInked(Snapshot picture, Geometry geometry, int from, int to) {
        int y = from;
        while (y < to && !inked(picture, geometry, y)) {
            y++;
        }
        return y;
    }

    private static int lastInked(Snapshot picture, Geometry geometry, int from, int to) {
        int y = to;
        while (y > from && !inked(picture, geometry, y)) {
            y--;
        }
        return y;
    }

    /** Whether there is ink in the middle of the picture, between the figures at the edges. */
    private static boolean inked(Snapshot picture, Geometry geometry, int y) {
        for (int x = geometry.width() / 5; x < geometry.width() * 4 / 5; x++) {
            if (picture.at(x, y) != 0) {
                return true;
            }
        }
        return false;
    }
}
