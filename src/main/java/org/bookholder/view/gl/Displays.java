package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.glfwPollEvents;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.settings.Display;
import org.lwjgl.system.Platform;

/** The monitors on which a reading window can open. Main thread only. */
public final class Displays {
    private Displays() {}

    /** Whether any one thread may look at displays and show windows: on Linux. Elsewhere only the main thread may. For any thread. */
    public static boolean onAnyThread() {
        return Platform.get() == Platform.LINUX;
    }

    /** The problem to report if the display that the program is connected to is gone. For any thread. */
    public static ProblemException gone() {
        return Glfw.gone();
    }

    /**
     * The monitors that are connected now.
     *
     * @param abandon called inside a call that loses the display; see {@link ReadingWindow#open}
     * @throws ProblemException if there is no display
     */
    public static List<Display> all(Runnable abandon) throws ProblemException {
        Glfw.start(abandon);
        // Monitors that were plugged in or out are noticed while events are looked at.
        glfwPollEvents();
        return Monitors.all().stream()
                .map(monitor -> new Display(
                        monitor.number(),
                        monitor.name(),
                        monitor.x(),
                        monitor.y(),
                        monitor.width(),
                        monitor.height(),
                        monitor.millimetres()))
                .toList();
    }
}
