package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Needs;
import org.bookholder.view.Frame;
import org.bookholder.view.SampleState;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The window's own loop, in virtual time: how soon something is seen, and what a picture leaves to be collected. */
final class LoopTest {
    private static final long FRAME_NANOS = 1_000_000_000 / 60;
    private static final int MOST_PICTURES = 2;
    private static final int WARMING = 400;
    private static final int PICTURES = 900;
    private static final int PICTURES_PER_WORD = 36;
    private static final int WORDS = 9;
    private static final long MOST_BYTES = 20_000;

    private final SampleState lesson = SampleState.lesson();
    private final ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private SessionState state = lesson.state();
    private long time;
    private int pictures;

    @BeforeEach
    void needsDisplay() {
        Needs.display();
    }

    @Test
    void aCommandIsVisibleInTheSecondPictureAtTheLatest() throws ProblemException {
        try (ReadingWindow window = window()) {
            int needed = picturesUntil(
                    window,
                    () -> window.act(Action.GLASS),
                    () -> window.shown().get().mirrored());
            assertThat(needed).isBetween(1, MOST_PICTURES);
        }
    }

    @Test
    void aKeyIsSeenInTheSecondPictureAtTheLatest() throws ProblemException {
        Needs.program("xdotool", "Debian package xdotool");
        try (ReadingWindow window = window()) {
            run(window, n -> {
                if (n == 5) {
                    xdotool("search", "--sync", "--name", lesson.script().title(), "windowfocus", "--sync");
                }
            });
            // xdotool ends when the display server has taken the key.
            int needed = picturesUntil(
                    window,
                    () -> xdotool("key", "g"),
                    () -> window.shown().get().mirrored());
            assertThat(needed).isBetween(1, MOST_PICTURES);
        }
    }

    @Test
    void aRecognisedWordIsSeenInTheSecondPictureAtTheLatest() throws ProblemException {
        try (ReadingWindow window = window()) {
            SampleState next = lesson.at(5, 5);
            int needed = picturesUntil(
                    window,
                    () -> state = next.state(),
                    () -> changes(window.shown().get()));
            assertThat(needed).isBetween(1, MOST_PICTURES);
        }
    }

    /** A word that is recognised, a row that comes into sight and a new second cost something once; moving costs nothing. */
    @Test
    void aPictureOfMovingTextCreatesNoGarbage() throws ProblemException {
        List<Long> moving = new ArrayList<>();
        List<Long> others = new ArrayList<>();
        List<Object> shown = new ArrayList<>();
        long[] from = {0};
        int start = pictures;
        state = lesson.at(1, 1).state();
        try (ReadingWindow window = window()) {
            window.run(() -> state, command -> {}, this::tick, () -> {
                long left = thread.getCurrentThreadAllocatedBytes() - from[0];
                int picture = pictures - start;
                List<Object> now =
                        picture == 0 ? List.of() : whatIsShown(window.shown().orElseThrow());
                if (picture > WARMING) {
                    (now.equals(shown) && picture % PICTURES_PER_WORD != 1 ? moving : others).add(left);
                }
                shown.clear();
                shown.addAll(now);
                if (picture % PICTURES_PER_WORD == 0) {
                    int word = picture / PICTURES_PER_WORD;
                    state = lesson.at(1 + word / WORDS, 1 + word % WORDS).state();
                }
                pictures++;
                from[0] = thread.getCurrentThreadAllocatedBytes();
                return picture == WARMING + PICTURES;
            });
        }
        // Where the JVM gives up code that it has optimised, it may make objects that the code had done without.
        assertThat(moving).hasSizeGreaterThan(PICTURES * 9 / 10);
        assertThat(moving.stream().filter(bytes -> bytes > 0)).hasSizeLessThan(PICTURES / 100);
        assertThat(others).isNotEmpty().allMatch(bytes -> bytes < MOST_BYTES);
    }

    /** All that a picture holds but for its heights and colours. */
    private static List<Object> whatIsShown(Frame view) {
        List<Object> shown = new ArrayList<>(view.captions());
        view.rows().forEach(row -> shown.add(row.row()));
        return shown;
    }

    private ReadingWindow window() throws ProblemException {
        return ReadingWindow.open(WindowSettings.defaults(), lesson.script(), WindowPlace.windowed(960, 540));
    }

    /** Runs the loop for a while and calls {@code each} before each frame. */
    private void run(ReadingWindow window, Consumer<Integer> each) {
        int end = pictures + 60;
        window.run(() -> state, command -> {}, this::tick, () -> {
            each.accept(pictures);
            return ++pictures == end;
        });
    }

    /** How many pictures it takes from a cause, just before a picture, until {@code seen}. */
    private int picturesUntil(ReadingWindow window, Runnable cause, BooleanSupplier seen) {
        int[] caused = {0};
        int[] needed = {0};
        int at = pictures + 30;
        run(window, n -> {
            if (n == at) {
                assertThat(seen.getAsBoolean()).isFalse();
                cause.run();
                caused[0] = n;
            } else if (n > at && needed[0] == 0 && seen.getAsBoolean()) {
                needed[0] = n - caused[0];
            }
        });
        return needed[0];
    }

    /** Whether a word is on its way from bright to dark. */
    private static boolean changes(Frame view) {
        return view.rows().stream()
                .flatMap(row -> row.stretches().stream())
                .anyMatch(s -> !List.of(Palette.COMING, Palette.SPOKEN, Palette.DIRECTION)
                        .contains(s.rgb()));
    }

    /** The clock advances by one frame each time it is read, so the loop never waits. */
    private long tick() {
        time += FRAME_NANOS;
        return time;
    }

    private static void xdotool(String... arguments) {
        List<String> command = new ArrayList<>(List.of("xdotool"));
        command.addAll(List.of(arguments));
        try {
            Process process = new ProcessBuilder(command).inheritIO().start();
            assertThat(process.waitFor()).isZero();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
