package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.glfwPollEvents;
import static org.lwjgl.glfw.GLFW.glfwSwapBuffers;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.bookholder.follow.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.Script;
import org.bookholder.session.SessionState;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.ViewModel;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;

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
     * @param openMillis from the script to the first picture
     * @param median processor time of a picture in ms, before the swap
     * @param most the same at 99 %
     * @param bytes allocated for a picture, median
     */
    public record Figures(double openMillis, double median, double most, long bytes) {}

    /** Reads {@code script} from its start. */
    public Figures run(Script script) throws ProblemException {
        Glfw.start();
        Window window = Window.open("", WindowPlace.windowed(1920, 1080));
        Fonts fonts = new Fonts(SystemFonts.find());
        Shaper shaper = new Shaper(fonts);
        Texts texts = new Texts(shaper);
        Canvas canvas = new Canvas();
        Painter painter = new Painter(canvas, texts);
        try {
            SampleState sample = SampleState.of(script);
            SessionState state = sample.state();
            long began = System.nanoTime();
            Scene scene = new Scene(
                    script, WindowSettings.defaults(), shaper, new Scene.Screen(1920, 1080, 1080, 0), state.position());
            painter.paint(scene.advance(state, FRAME));
            double open = (System.nanoTime() - began) / 1e6;
            double[] cpu = new double[PICTURES];
            long[] bytes = new long[PICTURES];
            ReadingPosition place = ReadingPosition.START;
            double next = WORD_SECONDS;
            for (int i = -WARMING; i < PICTURES; i++) {
                if ((i + WARMING) * FRAME >= next) {
                    next += WORD_SECONDS;
                    place = after(place, script);
                    state = sample.at(place.line(), place.word()).state();
                }
                glfwPollEvents();
                long allocated = thread.getCurrentThreadAllocatedBytes();
                long before = thread.getCurrentThreadCpuTime();
                ViewModel view = scene.advance(state, FRAME);
                painter.paint(view);
                long after = thread.getCurrentThreadCpuTime();
                if (i >= 0) {
                    cpu[i] = (after - before) / 1e6;
                    bytes[i] = thread.getCurrentThreadAllocatedBytes() - allocated;
                }
                glfwSwapBuffers(window.handle());
            }
            Arrays.sort(cpu);
            Arrays.sort(bytes);
            return new Figures(open, cpu[PICTURES / 2], cpu[PICTURES * 99 / 100], bytes[PICTURES / 2]);
        } finally {
            texts.clear();
            canvas.close();
            fonts.close();
            window.close();
        }
    }

    private static ReadingPosition after(ReadingPosition place, Script script) {
        boolean last =
                place.word() == script.lines().get(place.line() - 1).words().size();
        return last ? new ReadingPosition(place.line() + 1, 1) : new ReadingPosition(place.line(), place.word() + 1);
    }
}
