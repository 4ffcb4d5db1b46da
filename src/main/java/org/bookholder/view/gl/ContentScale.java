package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.*;

import org.lwjgl.system.MemoryStack;

/**
 * By how much lengths in screen units have to be multiplied on a monitor to look as they should. Where the system has units of
 * its own, which may be several pixels long (macOS, Wayland), that is 1; where units are pixels (Windows, X11) the system only
 * tells how much larger all is wanted. Main thread only.
 */
@FunctionalInterface
interface ContentScale {
    /** Of a monitor, by GLFW's handle. */
    double of(long monitor);

    /** What the system tells. */
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
