package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.Deviation;
import org.bookholder.follow.FollowState;
import org.bookholder.follow.Outcome;
import org.bookholder.testing.Needs;
import org.bookholder.view.Action;
import org.bookholder.view.SampleState;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;
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
    @CsvSource({"1920, 1080", "1280, 720"})
    void drawsEachStateAtEachSize(int width, int height) throws Exception {
        Files.createDirectories(FOLDER);
        try (ReadingWindow window = window(SampleState.lesson(), WindowSettings.defaults(), width, height)) {
            for (Map.Entry<String, SampleState> state : states().entrySet()) {
                Path file = FOLDER.resolve(state.getKey() + "-" + height + ".png");
                window.snapshot(state.getValue().state()).write(file);
                assertThat(file).isNotEmptyFile();
            }
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
        assertThat(FOLDER.resolve("keys-1080.png")).isNotEmptyFile();
    }

    @Test
    void drawsTheBeginningAndThePickupRound() throws Exception {
        Files.createDirectories(FOLDER);
        SampleState start = SampleState.of(SampleState.lessonScript()).live(Double.NaN);
        WindowSettings counted = WindowSettings.defaults().withCountIn(3);
        try (ReadingWindow window = window(start, counted, 1920, 1080)) {
            window.snapshot(start.held(true).state()).write(FOLDER.resolve("count-waits-1080.png"));
            window.act(Action.HOLD);
            window.snapshot(start.held(true).state(), 0.5).write(FOLDER.resolve("count-3-1080.png"));
        }
        SampleState sample = SampleState.lesson().outcome(3, Outcome.SKIPPED).at(11, 1);
        try (ReadingWindow window = window(sample, WindowSettings.defaults(), 1920, 1080)) {
            window.act(Action.ROUND);
            window.snapshot(sample.at(2, 1).state()).write(FOLDER.resolve("round-1080.png"));
            window.snapshot(sample.at(2, 9).state()).write(FOLDER.resolve("round-lead-in-1080.png"));
            SampleState clean = sample.at(4, 1).outcome(3, Outcome.CLEAN);
            window.snapshot(clean.state(), 0.9).write(FOLDER.resolve("round-ticked-1080.png"));
        }
        assertThat(FOLDER.resolve("round-ticked-1080.png")).isNotEmptyFile();
    }

    private static ReadingWindow window(SampleState state, WindowSettings settings, int width, int height)
            throws Exception {
        return ReadingWindow.open(settings, state.script(), WindowPlace.hidden(width, height));
    }

    private static Map<String, SampleState> states() {
        SampleState mid = SampleState.lesson();
        SampleState pickups = mid.outcome(
                        2, Outcome.MISREAD, new Deviation(4, "first", "last", Deviation.Kind.SWAPPED, 1))
                .outcome(4, Outcome.SKIPPED);
        Map<String, SampleState> states = new LinkedHashMap<>();
        states.put("start", SampleState.of(SampleState.lessonScript()).live(Double.NaN));
        states.put("mid", mid);
        states.put("direction", pickups.at(6, 2).urgency(Urgency.COMING));
        states.put("fast", mid.live(124));
        states.put("slow", mid.live(78));
        states.put("held", mid.held(true).urgency(Urgency.DUE));
        states.put("lost", pickups.follow(FollowState.LOST));
        states.put("sound-gone", mid.sounding(-120, 0));
        states.put("overdue", pickups.at(4, 3).urgency(Urgency.OVERDUE).live(108));
        states.put("trouble", mid.trouble("The microphone is gone; the take goes on by hand"));
        states.put("end", pickups.at(11, 1).rolling(false));
        states.put("clean-end", mid.at(11, 1).rolling(false));
        return states;
    }
}
