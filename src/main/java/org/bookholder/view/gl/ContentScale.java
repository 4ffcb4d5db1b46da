package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.*;

import org.lwjgl.system.MemoryStack;

/**
 * The factor by which to multiply lengths in screen units on a monitor so that they look as large as intended. If the
 * system has its own units, which may be several pixels long (macOS, Wayland), the factor is 1. If units are pixels
 * (Windows, X11), the system only says how much larger everything should be. Main thread only.
 */
@FunctionalInterface
interface ContentScale {
    /** The factor for a monitor, given by GLFW's handle. */
    double of(long monitor);

    /** Uses the factors that the system reports. */
    static ContentScale ofSystem() {
        int platform = glfwGetPlatform();
        boolean unitsArePixels = platform == GLFW_PLATFORM_WIN32 || platform == GLFW_PLATFORM_X11;
        return unitsArePixels ? ContentScale::told : monitor -> 1;
    }

    private static double told(long monitor) {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var across = stack.mallocFloat(1);
            var down = stack.mallocFloat(1);
            glfwGetMonitorContentScale(monitor, across, down);
            return down.get(0) > 0 ? down.get(0) : 1;
        }
    }
}
