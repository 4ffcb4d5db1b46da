package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.*;
import static org.lwjgl.system.MemoryUtil.NULL;

import java.util.Objects;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.Scene.Screen;
import org.bookholder.view.WindowPlace;
import org.lwjgl.PointerBuffer;
import org.lwjgl.glfw.Callbacks;
import org.lwjgl.glfw.GLFWVidMode;
import org.lwjgl.opengl.GL;
import org.lwjgl.system.MemoryStack;

/** A window with an OpenGL 3.3 context on some monitor. Main thread only. */
final class Window implements AutoCloseable {
    private static final double LEAST_MILLIMETRES = 80;
    private static final double MOST_MILLIMETRES = 3000;
    private static final int USUAL_RATE = 60;

    private final long handle;
    private final WindowPlace place;
    private boolean fullScreen;

    private Window(long handle, WindowPlace place) {
        this.handle = handle;
        this.place = place;
    }

    /** Opens a window; GLFW must run. */
    static Window open(String title, WindowPlace place) throws ProblemException {
        glfwDefaultWindowHints();
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
        glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
        glfwWindowHint(GLFW_AUTO_ICONIFY, GLFW_FALSE);
        glfwWindowHint(GLFW_SCALE_TO_MONITOR, place.visible() ? GLFW_TRUE : GLFW_FALSE);
        glfwWindowHint(GLFW_VISIBLE, GLFW_FALSE);
        long handle = glfwCreateWindow(place.width(), place.height(), title, NULL, NULL);
        if (handle == NULL) {
            throw Glfw.noWindow();
        }
        Window window = new Window(handle, place);
        try {
            glfwMakeContextCurrent(handle);
            GL.createCapabilities();
        } catch (IllegalStateException | LinkageError e) {
            window.close();
            throw Glfw.noGl(e);
        }
        glfwSwapInterval(place.visible() ? 1 : 0);
        if (place.fullScreen()) {
            window.toggleFullScreen();
        }
        if (place.visible()) {
            glfwShowWindow(handle);
        }
        return window;
    }

    long handle() {
        return handle;
    }

    /** Goes to the whole of the chosen monitor, or back to a window. */
    void toggleFullScreen() {
        long monitor = monitor();
        GLFWVidMode mode = monitor == NULL ? null : glfwGetVideoMode(monitor);
        if (mode == null) {
            return;
        }
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var x = stack.mallocInt(1);
            var y = stack.mallocInt(1);
            glfwGetMonitorPos(monitor, x, y);
            if (fullScreen) {
                int left = x.get(0) + Math.max(0, (mode.width() - place.width()) / 2);
                int top = y.get(0) + Math.max(0, (mode.height() - place.height()) / 2);
                glfwSetWindowMonitor(handle, NULL, left, top, place.width(), place.height(), GLFW_DONT_CARE);
            } else {
                int rate = mode.refreshRate() > 0 ? mode.refreshRate() : GLFW_DONT_CARE;
                glfwSetWindowMonitor(handle, monitor, 0, 0, mode.width(), mode.height(), rate);
            }
        }
        fullScreen = !fullScreen;
        glfwSetInputMode(handle, GLFW_CURSOR, fullScreen ? GLFW_CURSOR_HIDDEN : GLFW_CURSOR_NORMAL);
        glfwSwapInterval(1);
    }

    /** The picture's size now; width and height are 0 while the window is minimised. */
    Screen screen() {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var width = stack.mallocInt(1);
            var height = stack.mallocInt(1);
            var unit = stack.mallocInt(1);
            glfwGetFramebufferSize(handle, width, height);
            glfwGetWindowSize(handle, null, unit);
            long monitor = monitor();
            GLFWVidMode mode = monitor == NULL ? null : glfwGetVideoMode(monitor);
            double density = unit.get(0) > 0 ? (double) height.get(0) / unit.get(0) : 1;
            boolean known = place.visible() && mode != null;
            int pixels = known && mode != null ? (int) Math.round(mode.height() * density) : height.get(0);
            return new Screen(width.get(0), height.get(0), pixels, known ? millimetres(monitor) : 0);
        }
    }

    /** Pictures a second that the monitor shows. */
    int refreshRate() {
        long monitor = monitor();
        GLFWVidMode mode = monitor == NULL ? null : glfwGetVideoMode(monitor);
        return mode == null || mode.refreshRate() <= 0 ? USUAL_RATE : mode.refreshRate();
    }

    @Override
    public void close() {
        Callbacks.glfwFreeCallbacks(handle);
        glfwDestroyWindow(handle);
    }

    private long monitor() {
        PointerBuffer monitors = glfwGetMonitors();
        if (monitors == null || monitors.limit() == 0) {
            return NULL;
        }
        return monitors.get(Math.min(place.monitor(), monitors.limit()) - 1);
    }

    /** Some monitors report nothing, and projectors report nonsense. */
    private static double millimetres(long monitor) {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var height = stack.mallocInt(1);
            glfwGetMonitorPhysicalSize(monitor, null, Objects.requireNonNull(height));
            int reported = height.get(0);
            return reported >= LEAST_MILLIMETRES && reported <= MOST_MILLIMETRES ? reported : 0;
        }
    }
}
