package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Set;
import java.util.function.IntPredicate;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Scripts;
import org.bookholder.view.Frame;
import org.bookholder.view.Frame.RowView;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.cue.Contrast;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What can be seen in the pixels of a picture. */
final class PixelsTest {
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    private Easel easel;

    @BeforeEach
    void setUp() throws ProblemException {
        Needs.display();
        easel = Easel.of(WIDTH, HEIGHT);
    }

    @AfterEach
    void tearDown() {
        if (easel != null) {
            easel.close();
        }
    }

    @Test
    void spokenWordsAreDarkerThanThoseToCome() {
        Frame view = settled(SampleState.lesson().state(), plain());
        Snapshot picture = easel.draw(view);
        RowView row = rowBeingRead(view);
        int split = splitOf(view, row);
        double spoken = brightest(picture, view.geometry(), row, 0, split);
        double coming = brightest(
                picture, view.geometry(), row, split, (int) view.geometry().columnWidth());
        assertThat(spoken).isCloseTo(Contrast.luminance(Palette.SPOKEN), within(0.01));
        assertThat(coming).isCloseTo(Contrast.luminance(Palette.COMING), within(0.01));
    }

    @Test
    void theMirroredPictureIsTheMirrorImageToThePixel() {
        SessionState state = SampleState.lesson().state();
        Snapshot straight = easel.draw(settled(state, plain()));
        Snapshot mirrored = easel.draw(settled(state, plain().withMirrored(true)));
        int different = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                different += straight.at(x, y) == mirrored.at(WIDTH - 1 - x, y) ? 0 : 1;
            }
        }
        // A pixel that lies exactly on a triangle's edge belongs to the triangle's left; 10 of 921,600 may do so.
        assertThat(different).isLessThanOrEqualTo(10);
    }

    @Test
    void upsideDownIsTheImageTurnedTopToBottom() {
        SessionState state = SampleState.lesson().state();
        Snapshot upright = easel.draw(settled(state, plain()));
        Snapshot turned = easel.draw(settled(state, plain().withUpsideDown(true)));
        int different = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                different += upright.at(x, y) == turned.at(x, HEIGHT - 1 - y) ? 0 : 1;
            }
        }
        // Rows stand at fractions of a pixel; a renderer may round a row's last line of pixels the other way.
        assertThat(different).isLessThan(WIDTH * HEIGHT / 200);
    }

    @Test
    void theRowBeingReadStandsAtTheEyeLineWhereverThatIs() {
        for (double eyeLine : new double[] {0.2, 1.0 / 3, 0.5}) {
            SampleState state = SampleState.of(Scripts.of("One two three four."));
            Frame view = settled(state.at(1, 3).state(), plain().withEyeLine(eyeLine));
            Snapshot picture = easel.draw(view);
            double middle = middleOfInk(picture, view.geometry());
            assertThat(middle)
                    .isCloseTo(eyeLine * HEIGHT, within(0.35 * view.geometry().pitch()));
        }
    }

    @Test
    void theTypeIsAsLargeAsAskedFor() {
        for (double size : new double[] {40, 80}) {
            SampleState state = SampleState.of(Scripts.of("I I I HIH"));
            Frame view = settled(state.at(1, 4).state(), plain().withSize(size).withCues(Set.of()));
            Snapshot picture = easel.draw(view);
            int[] ink = inkedRows(picture, view.geometry(), Contrast.luminance(Palette.COMING) / 2);
            // Capitals of Inter are 2048/2816 of the type size high.
            assertThat(ink[1] - ink[0] + 1.0).isCloseTo(size * 2048 / 2816, within(1.5));
        }
    }

    @Test
    void noRowIsLongerThanTheColumn() {
        for (int words : new int[] {3, 6, 10}) {
            Frame view = settled(SampleState.lesson().state(), plain().withColumnWords(words));
            Geometry geometry = view.geometry();
            Snapshot picture = easel.draw(view);
            int right = (int) Math.ceil(geometry.columnRight()) + 1;
            int gap = (int) (0.2 * geometry.em());
            assertThat(inked(picture, right, right + gap, x -> x > 0)).isFalse();
            assertThat(inked(picture, (int) geometry.columnLeft(), right, x -> x > 0))
                    .isTrue();
        }
    }

    @Test
    void theBackgroundIsBlackSoThatTheGlassDoesNotGlow() {
        Snapshot picture = easel.draw(settled(SampleState.lesson().state(), plain()));
        int black = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                black += picture.at(x, y) == 0 ? 1 : 0;
            }
        }
        assertThat(black).isGreaterThan(WIDTH * HEIGHT * 3 / 4);
        assertThat(picture.at(WIDTH - 1, HEIGHT / 2)).isZero();
    }

    private static WindowSettings plain() {
        return WindowSettings.defaults();
    }

    private Frame settled(SessionState state, WindowSettings settings) {
        Scene scene = easel.scene(state.script(), settings);
        return scene.settle(state);
    }

    private static RowView rowBeingRead(Frame view) {
        return view.rows().stream()
                .filter(r -> r.stretches().size() == 2)
                .findFirst()
                .orElseThrow();
    }

    /** Pixels from the left edge of the column to the first word that is not read yet. */
    private static int splitOf(Frame view, RowView row) {
        double ems = 0;
        for (int i = 0; i < row.stretches().get(0).to(); i++) {
            ems += row.row().pieces().get(i).width() + 0.25;
        }
        return (int) (ems * view.geometry().em());
    }

    private static double brightest(Snapshot picture, Geometry geometry, RowView row, int from, int to) {
        double most = 0;
        int half = (int) (0.36 * geometry.em());
        for (int y = (int) row.middle() - half; y < row.middle() + half; y++) {
            for (int x = (int) geometry.columnLeft() + from; x < (int) geometry.columnLeft() + to; x++) {
                most = Math.max(most, Contrast.luminance(picture.at(x, y)));
            }
        }
        return most;
    }

    private static double middleOfInk(Snapshot picture, Geometry geometry) {
        int[] rows = inkedRows(picture, geometry, 0.1);
        return (rows[0] + rows[1]) / 2.0;
    }

    /** First and last row of pixels in the column, above the foot, that are brighter than {@code least}. */
    private static int[] inkedRows(Snapshot picture, Geometry geometry, double least) {
        int first = -1;
        int last = -1;
        for (int y = 0; y < geometry.footTop(); y++) {
            for (int x = (int) geometry.columnLeft(); x < geometry.columnRight(); x++) {
                if (Contrast.luminance(picture.at(x, y)) > least) {
                    first = first < 0 ? y : first;
                    last = y;
                }
            }
        }
        return new int[] {first, last};
    }

    private static boolean inked(Snapshot picture, int left, int right, IntPredicate bright) {
        for (int y = HEIGHT / 8; y < HEIGHT * 3 / 4; y++) {
            for (int x = left; x < right; x++) {
                if (bright.test(picture.at(x, y))) {
                    return true;
                }
            }
        }
        return false;
    }
}
