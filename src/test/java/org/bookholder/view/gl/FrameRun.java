package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.glfwPollEvents;
import static org.lwjgl.glfw.GLFW.glfwSwapBuffers;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionState;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/** An even reading in a real window of 1920 by 1080, measured picture by picture on the thread that draws. */
public final class FrameRun {
    private static final double FRAME = 1.0 / 60;
    private static final double WORD_SECONDS = 0.6;
    private static final int WARMING = 600;
    private static final int PICTURES = 1800;

    private final ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /**
     * What was measured.
     *
     * @param openMillis from nothing to the first picture
     * @param windowMillis of it, for libraries, window and context
     * @param fontsMillis of it, for fonts and shaders
     * @param rowsMillis of it, for breaking the script into rows
     * @param median processor time of a picture in ms, before the swap
     * @param most the same at 99 %
     * @param bytes allocated for a picture, median
     * @param mostBytes the same at 99 %
     * @param allBytes allocated for all pictures together
     */
    public record Figures(
            double openMillis,
            double windowMillis,
            double fontsMillis,
            double rowsMillis,
            double median,
            double most,
            long bytes,
            long mostBytes,
            long allBytes) {}

    /** Reads {@code script} from its start. */
    public Figures run(Script script) throws ProblemException {
        SampleState sample = SampleState.of(script);
        SessionState state = sample.state();
        long began = System.nanoTime();
        Window window = Window.open(Glfw.start(), "", WindowPlace.windowed(1920, 1080));
        double opened = millisSince(began);
        Fonts fonts = new Fonts(SystemFonts::find);
        Shaper shaper = new Shaper(fonts);
        Texts texts = new Texts(shaper);
        Canvas canvas = new Canvas();
        Painter painter = new Painter(canvas, texts);
        double ready = millisSince(began);
        try {
            Scene scene = new Scene(
                    script,
                    WindowSettings.defaults(),
                    shaper,
                    new Scene.Screen(1920, 1080, 1080, 0),
                    state.following().position());
            double set = millisSince(began);
            painter.paint(scene.advance(state, FRAME));
            glfwSwapBuffers(window.handle());
            double open = millisSince(began);
            return read(sample, scene, painter, window, new double[] {open, opened, ready - opened, set - ready});
        } finally {
            texts.close();
            canvas.close();
            fonts.close();
            window.close();
        }
    }

    private Figures read(SampleState sample, Scene scene, Painter painter, Window window, double[] opening) {
        double[] cpu = new double[PICTURES];
        long[] bytes = new long[PICTURES];
        ReadingPosition place = ReadingPosition.START;
        SessionState state = sample.state();
        double next = WORD_SECONDS;
        for (int i = -WARMING; i < PICTURES; i++) {
            if ((i + WARMING) * FRAME >= next) {
                next += WORD_SECONDS;
                place = after(place, sample.script());
                state = sample.at(place.line(), place.word()).state();
            }
            glfwPollEvents();
            long allocated = thread.getCurrentThreadAllocatedBytes();
            long before = thread.getCurrentThreadCpuTime();
            painter.paint(scene.advance(state, FRAME));
            long after = thread.getCurrentThreadCpuTime();
            if (i >= 0) {
                cpu[i] = (after - before) / 1e6;
                bytes[i] = thread.getCurrentThreadAllocatedBytes() - allocated;
            }
            glfwSwapBuffers(window.handle());
        }
        Arrays.sort(cpu);
        Arrays.sort(bytes);
        return new Figures(
                opening[0],
                opening[1],
                opening[2],
                opening[3],
                cpu[PICTURES / 2],
                cpu[PICTURES * 99 / 100],
                bytes[PICTURES / 2],
                bytes[PICTURES * 99 / 100],
                Arrays.stream(bytes).sum());
    }

    private static double millisSince(long nanoTime) {
        return (System.nanoTime() - nanoTime) / 1e6;
    }

    private static ReadingPosition after(ReadingPosition place, Script script) {
        boolean last =
                place.word() == script.lines().get(place.line() - 1).words().size();
        return last ? new ReadingPosition(place.line() + 1, 1) : new ReadingPosition(place.line(), place.word() + 1);
    }
}
