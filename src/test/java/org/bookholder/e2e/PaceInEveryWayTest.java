package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.Mover;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.view.Frame;
import org.bookholder.view.Scene;
import org.bookholder.view.input.Action;
import org.bookholder.view.layout.Row;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The pace is measured by ear and shown whatever moves the text, from what the ears hear to the picture, in virtual time. */
final class PaceInEveryWayTest {
    private static final double STEP = 0.06;
    private static final double LATEST = 28;

    /** Seven or eight words, 0.4 s each, and half a second between lines: see {@link Spoken}. */
    private static final double SPOKEN_PACE = 129;

    private static final String[] LINES = {
        "Every good wheel on the road begins here.",
        "Count the spokes twice before you go on.",
        "Then lace the first side of the hub.",
        "Turn the wheel over and lace the other.",
        "Leave every nipple loose for a while yet.",
        "Put a drop of oil on each thread.",
        "Now spin the rim slowly between two fingers.",
        "Listen to the sound that the brake makes.",
        "Mark the place where it rubs with chalk.",
        "Tomorrow we bring all of it to true."
    };

    private final Script script = Scripts.at((int) SPOKEN_PACE, LINES);

    @ParameterizedTest
    @EnumSource
    void thePaceIsMeasuredWhateverMovesTheText(Mover way) {
        Spoken voice = new Spoken(0.6);
        for (String line : LINES) {
            voice.says(line.toLowerCase(Locale.ROOT).replace(".", ""));
        }
        ReadingRig rig = new ReadingRig(script, new FakeEars(voice.hypotheses()), true);
        Reading reading =
                rig.begin(new PacedSource(new FakeAudioSource(ReadingRig.RATE).thenSilence(LATEST + 10), rig.clock));
        rig.pass(STEP);
        Scene scene = new Scene(
                script,
                WindowSettings.defaults().withWay(way),
                (text, face) -> 0.5 * text.length(),
                new Scene.Screen(1920, 1080, 1080, 0),
                ReadingPosition.START);
        List<Row> rows = scene.layout().rows();
        int row = 0;
        Frame view = scene.advance(reading.state().get(), STEP);
        for (double t = STEP; t < LATEST; t += STEP) {
            rig.pass(STEP);
            if (way == Mover.HAND
                    && row + 1 < rows.size()
                    && rows.get(row + 1)
                                    .first()
                                    .compareTo(reading.state().get().following().position())
                            <= 0) {
                scene.act(Action.ROW_DOWN, reading.state().get());
                row++;
            }
            view = scene.advance(reading.state().get(), STEP);
            scene.drainTo(reading::tell);
        }
        assertThat(rig.failures).isEmpty();
        assertThat(reading.state().get().measures().pace().live()).isCloseTo(SPOKEN_PACE, within(10.0));
        assertThat(view.reed().orElseThrow().figure()).isNotEmpty();
        assertThat(Double.parseDouble(view.reed().orElseThrow().figure())).isCloseTo(SPOKEN_PACE, within(13.0));
    }
}
