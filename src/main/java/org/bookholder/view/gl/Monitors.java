package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.glfwGetMonitorName;
import static org.lwjgl.glfw.GLFW.glfwGetMonitorPhysicalSize;
import static org.lwjgl.glfw.GLFW.glfwGetMonitorPos;
import static org.lwjgl.glfw.GLFW.glfwGetMonitors;
import static org.lwjgl.glfw.GLFW.glfwGetVideoMode;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.lwjgl.PointerBuffer;
import org.lwjgl.glfw.GLFWVidMode;
import org.lwjgl.system.MemoryStack;

/** The monitors connected at this moment, in the order in which the system lists them. Main thread only. */
final class Monitors {
    /** Frames per second to assume if a monitor does not report its rate. */
    static final int USUAL_RATE = 60;

    private static final double LEAST_MILLIMETRES = 80;
    private static final double MOST_MILLIMETRES = 3000;

    private Monitors() {}

    /**
     * A monitor.
     *
     * @param handle GLFW's handle
     * @param number number, from 1
     * @param name name reported by the system; two monitors of the same model may share it
     * @param x left end of its picture in screen units
     * @param y top of its picture in screen units
     * @param width in screen units
     * @param height in screen units
     * @param rate frames per second
     * @param millimetres height of its picture, 0 if unknown
     */
    record Monitor(
            long handle, int number, String name, int x, int y, int width, int height, int rate, double millimetres) {
        /** Whether a point of the desktop is on this monitor. */
        boolean holds(int px, int py) {
            return px >= x && px < x + width && py >= y && py < y + height;
        }
    }

    /** All monitors; empty while none is connected. The display must still be there: see {@link DisplayWatch}. */
    static List<Monitor> all() {
        List<Monitor> monitors = new ArrayList<>();
        PointerBuffer handles = glfwGetMonitors();
        for (int i = 0; handles != null && i < handles.limit(); i++) {
            GLFWVidMode mode = glfwGetVideoMode(handles.get(i));
            if (mode != null) {
                monitors.add(monitor(handles.get(i), i + 1, mode));
            }
        }
        return monitors;
    }

    /** The monitor with this number, or the last one if there are fewer. */
    static Optional<Monitor> numbered(List<Monitor> all, int number) {
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(Math.min(number, all.size()) - 1));
    }

    private static Monitor monitor(long handle, int number, GLFWVidMode mode) {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var x = stack.mallocInt(1);
            var y = stack.mallocInt(1);
            var height = stack.mallocInt(1);
            glfwGetMonitorPos(handle, x, y);
            glfwGetMonitorPhysicalSize(handle, null, height);
            return new Monitor(
                    handle,
                    number,
                    Objects.requireNonNullElse(glfwGetMonitorName(handle), ""),
                    x.get(0),
                    y.get(0),
                    mode.width(),
                    mode.height(),
                    mode.refreshRate() > 0 ? mode.refreshRate() : USUAL_RATE,
                    believed(height.get(0)));
        }
    }

    /** Returns a plausible rate: some monitors report nothing, and projectors report nonsense. */
    private static double believed(int reported) {
        return reported >= LEAST_MILLIMETRES && reported <= MOST_MILLIMETRES ? reported : 0;
    }
}
