package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.bookholder.follow.model.Outcome;
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
import org.junit.jupiter.params.provider.CsvSource;

/** Draws the states that a presenter meets, for people to look at, under target/pictures. */
final class PicturesTest {
    private static final Path FOLDER = Path.of("target", "pictures");

    @BeforeEach
    void needsDisplay() {
        Needs.display();
    }

    @ParameterizedTest
    @CsvSource({"1920, 1080", "1280, 800", "1080, 1920"})
    void drawsEachStateAtEachSize(int width, int height) throws Exception {
        Files.createDirectories(FOLDER);
        for (Map.Entry<String, SampleState> state : SampleStates.all().entrySet()) {
            Path file = FOLDER.resolve(state.getKey() + "-" + height + ".png");
            try (ReadingWindow window = window(state.getValue(), WindowSettings.defaults(), width, height)) {
                window.snapshot(state.getValue().state()).write(file);
            }
            assertThat(file).isNotEmptyFile();
        }
    }

    @Test
    void drawsOddSizesAndOtherScripts() throws Exception {
        Files.createDirectories(FOLDER);
        SampleState lost = SampleStates.named("lost");
        WindowSettings usual = WindowSettings.defaults();
        draw("narrow", lost.sounding(-120, 0), usual, 700, 900);
        draw("high-eye-line", lost, usual.withEyeLine(0.15), 800, 600);
        draw("uhd", SampleStates.named("overdue"), usual, 3840, 2160);
        draw(
                "scripts",
                SampleState.of(Scripts.of(
                                "Wait ... and don't say \"naïve\" — say Zoë's café №5 ½ ✓ \u4e2d.",
                                "\u05d4\u05d2\u05dc\u05d2\u05dc \u05e0\u05e2 125 \u05de\u05d8\u05e8,"
                                        + " \u05d5\u05d0\u05d6 Lotte \u05e2\u05d5\u05e6\u05e8\u05ea.",
                                "\u062a\u062f\u0648\u0631 \u0627\u0644\u0639\u062c\u0644\u0629 36"
                                        + " \u0645\u0631\u0629 \u0641\u064a"
                                        + " \u0627\u0644\u062f\u0642\u064a\u0642\u0629."))
                        .at(2, 3),
                usual,
                1920,
                1080);
        assertThat(FOLDER.resolve("scripts-1080.png")).isNotEmptyFile();
    }

    private static void draw(String name, SampleState state, WindowSettings settings, int width, int height)
            throws Exception {
        try (ReadingWindow window = window(state, settings, width, height)) {
            window.snapshot(state.state()).write(FOLDER.resolve(name + "-" + height + ".png"));
        }
    }

    @Test
    void drawsMirroredAndTheKeys() throws Exception {
        Files.createDirectories(FOLDER);
        SampleState state = SampleState.lesson();
        try (ReadingWindow window = window(state, WindowSettings.defaults().withMirrored(true), 1920, 1080)) {
            window.snapshot(state.state()).write(FOLDER.resolve("mirrored-1080.png"));
        }
        try (ReadingWindow window = window(state, WindowSettings.defaults(), 1920, 1080)) {
            window.act(Action.KEYS);
            window.snapshot(state.state()).write(FOLDER.resolve("keys-1080.png"));
        }
        try (ReadingWindow window = window(state, WindowSettings.defaults().withSize(73), 1280, 720)) {
            window.act(Action.KEYS);
            window.snapshot(state.state()).write(FOLDER.resolve("keys-720.png"));
        }
        assertThat(FOLDER.resolve("keys-1080.png")).isNotEmptyFile();
    }

    @Test
    void drawsTheBeginningAndThePickupRound() throws Exception {
        Files.createDirectories(FOLDER);
        SampleState start = SampleState.of(SampleState.lessonScript()).live(Double.NaN);
        try (ReadingWindow window = window(start, WindowSettings.defaults(), 1920, 1080)) {
            window.snapshot(counting(start, 0)).write(FOLDER.resolve("count-waits-1080.png"));
            window.snapshot(counting(start, 3), 0.5).write(FOLDER.resolve("count-3-1080.png"));
        }
        SampleState sample = SampleState.lesson().outcome(3, Outcome.SKIPPED).at(11, 1);
        try (ReadingWindow window = window(sample, WindowSettings.defaults(), 1920, 1080)) {
            PickupRound round = PickupRound.NONE.at(3, 0);
            window.snapshot(sample.at(2, 1).state().with(round)).write(FOLDER.resolve("round-1080.png"));
            window.snapshot(sample.at(2, 9).state().with(round)).write(FOLDER.resolve("round-lead-in-1080.png"));
            SampleState clean = sample.at(4, 1).outcome(3, Outcome.CLEAN);
            window.snapshot(clean.state().with(round.ticking()), 0.9).write(FOLDER.resolve("round-ticked-1080.png"));
        }
        assertThat(FOLDER.resolve("round-ticked-1080.png")).isNotEmptyFile();
    }

    private static SessionState counting(SampleState start, int seconds) {
        return start.held(true).state().with(new CountIn(StreamTime.ZERO, seconds));
    }

    private static ReadingWindow window(SampleState state, WindowSettings settings, int width, int height)
            throws Exception {
        return ReadingWindow.open(settings, state.script(), WindowPlace.hidden(width, height));
    }
}
