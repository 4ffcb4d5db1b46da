package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.*;
import static org.lwjgl.system.MemoryUtil.NULL;

import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.Scene.Screen;
import org.bookholder.view.gl.Monitors.Monitor;
import org.bookholder.view.settings.WindowPlace;
import org.lwjgl.glfw.Callbacks;
import org.lwjgl.opengl.GL;
import org.lwjgl.system.MemoryStack;

/** A window with an OpenGL 3.3 context. Main thread only. */
final class Window implements AutoCloseable {
    private final long handle;
    private final DisplayWatch display;
    private final WindowPlace place;
    private final ContentScale scale;
    private final int[] pictureWidth = new int[1];
    private final int[] pictureHeight = new int[1];
    private final int[] unitHeight = new int[1];
    private Screen screen = new Screen(0, 0, 0, 0);
    private boolean fullScreen;

    /** The monitor that the presenter wants, by name and number, because it may be unplugged and come back. */
    private String wantedName = "";

    private int wanted;
    private boolean monitorsChanged;
    private Optional<Monitor> current = Optional.empty();

    private Window(long handle, DisplayWatch display, WindowPlace place, ContentScale scale) {
        this.handle = handle;
        this.display = display;
        this.place = place;
        this.scale = scale;
        this.wanted = place.monitor();
    }

    void setTitle(String title) {
        glfwSetWindowTitle(handle, title);
    }

    /** Opens a window on the display that {@code display} watches. */
    static Window open(DisplayWatch display, String title, WindowPlace place) throws ProblemException {
        return open(display, title, place, ContentScale.ofSystem());
    }

    /** The same, with monitor scales that differ from those the system reports. */
    static Window open(DisplayWatch display, String title, WindowPlace place, ContentScale scale)
            throws ProblemException {
        glfwDefaultWindowHints();
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
        glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
        // So that the driver tells when it has lost the context; one that can't ignores this.
        glfwWindowHint(GLFW_CONTEXT_ROBUSTNESS, GLFW_LOSE_CONTEXT_ON_RESET);
        glfwWindowHint(GLFW_AUTO_ICONIFY, GLFW_FALSE);
        glfwWindowHint(GLFW_SCALE_TO_MONITOR, place.visible() ? GLFW_TRUE : GLFW_FALSE);
        glfwWindowHint(GLFW_VISIBLE, GLFW_FALSE);
        long handle = glfwCreateWindow(place.width(), place.height(), title, NULL, NULL);
        if (!display.answers()) {
            throw Glfw.gone();
        }
        if (handle == NULL) {
            throw Glfw.noWindow();
        }
        Window window = new Window(handle, display, place, scale);
        try {
            glfwMakeContextCurrent(handle);
            GL.createCapabilities();
        } catch (IllegalStateException | LinkageError e) {
            window.close();
            throw Glfw.noGl(e);
        }
        glfwSwapInterval(place.visible() ? 1 : 0);
        if (place.visible()) {
            Monitors.numbered(window.monitors(), place.monitor()).ifPresent(window::want);
            window.fullScreen = place.fullScreen();
            window.settle();
            glfwShowWindow(handle);
        }
        return window;
    }

    long handle() {
        return handle;
    }

    /** The watch over the display that the window is on. */
    DisplayWatch display() {
        return display;
    }

    /** The monitors. GLFW crashes if it asks for them on a connection that is lost. */
    private List<Monitor> monitors() {
        display.check();
        return Monitors.all();
    }

    /** Fills the monitor that the window is on, or goes back to a window. */
    void toggleFullScreen() {
        if (!fullScreen) {
            under().ifPresent(this::want);
        }
        fullScreen = !fullScreen;
        settle();
    }

    /** Moves to the next monitor; returns whether there is another one. */
    boolean toNextMonitor() {
        List<Monitor> all = monitors();
        if (all.size() < 2) {
            return false;
        }
        int on = under().map(Monitor::number).orElse(0);
        want(all.get(on % all.size()));
        settle();
        return true;
    }

    /** Call this when a monitor was plugged in or unplugged. */
    void monitorsChanged() {
        monitorsChanged = true;
    }

    /**
     * After its monitor is unplugged, a full-screen picture fills another one, and returns when the monitor does. A
     * window that is no longer on any monitor moves to one and stays there.
     */
    void followMonitors() {
        if (monitorsChanged) {
            monitorsChanged = false;
            if (fullScreen || !isOnAMonitor()) {
                settle();
            }
            current = Optional.empty();
        }
    }

    /** The window's place, so that it can be opened there again. */
    WindowPlace place() {
        return new WindowPlace(fullScreen, wanted, place.width(), place.height(), place.visible());
    }

    private void want(Monitor monitor) {
        wanted = monitor.number();
        wantedName = monitor.name();
    }

    /** The wanted monitor, or the best substitute. */
    private Optional<Monitor> chosen() {
        List<Monitor> all = monitors();
        return all.stream()
                .filter(m -> m.number() == wanted && m.name().equals(wantedName))
                .findFirst()
                .or(() -> all.stream().filter(m -> m.name().equals(wantedName)).findFirst())
                .or(() -> all.stream().findFirst());
    }

    /** Moves the window to its wanted place. */
    private void settle() {
        Optional<Monitor> monitor = chosen();
        current = Optional.empty();
        if (monitor.isEmpty()) {
            return;
        }
        Monitor m = monitor.get();
        if (fullScreen) {
            glfwSetWindowMonitor(handle, m.handle(), 0, 0, m.width(), m.height(), m.rate());
        } else {
            double larger = scale.of(m.handle());
            int width = Math.min((int) Math.round(place.width() * larger), m.width());
            int height = Math.min((int) Math.round(place.height() * larger), m.height());
            int left = m.x() + (m.width() - width) / 2;
            int top = m.y() + (m.height() - height) / 2;
            glfwSetWindowMonitor(handle, NULL, left, top, width, height, GLFW_DONT_CARE);
        }
        glfwSetInputMode(handle, GLFW_CURSOR, fullScreen ? GLFW_CURSOR_HIDDEN : GLFW_CURSOR_NORMAL);
        glfwSwapInterval(1);
    }

    /** The monitor on which the window's centre is. */
    private Optional<Monitor> under() {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            var x = stack.mallocInt(1);
            var y = stack.mallocInt(1);
            var width = stack.mallocInt(1);
            var height = stack.mallocInt(1);
            glfwGetWindowPos(handle, x, y);
            glfwGetWindowSize(handle, width, height);
            int middle = x.get(0) + width.get(0) / 2;
            int centre = y.get(0) + height.get(0) / 2;
            return monitors().stream().filter(m -> m.holds(middle, centre)).findFirst();
        }
    }

    /** Whether the window's centre is on any monitor. */
    boolean isOnAMonitor() {
        return under().isPresent();
    }

    /** The window's monitor. Called for each frame; looked up again only if the window has moved. */
    private Optional<Monitor> current() {
        if (current.isEmpty()) {
            current = under().or(this::chosen);
        }
        return current;
    }

    /** Call this when the window was moved. */
    void moved() {
        current = Optional.empty();
    }

    /** The current size of the picture; width and height are 0 while the window is minimised. */
    Screen screen() {
        glfwGetFramebufferSize(handle, pictureWidth, pictureHeight);
        glfwGetWindowSize(handle, null, unitHeight);
        int width = pictureWidth[0];
        int height = pictureHeight[0];
        Optional<Monitor> monitor = place.visible() ? current() : Optional.empty();
        int monitorUnits = monitor.isPresent() ? monitor.get().height() : unitHeight[0];
        int pixels = Screen.pixels(height, unitHeight[0], monitorUnits);
        double millimetres = monitor.isPresent() ? monitor.get().millimetres() : 0;
        boolean same = screen.width() == width
                && screen.height() == height
                && screen.monitorPixels() == pixels
                && screen.monitorHeight() == millimetres;
        screen = same ? screen : new Screen(width, height, pixels, millimetres);
        return screen;
    }

    /** The monitor's refresh rate, in frames per second. */
    int refreshRate() {
        Optional<Monitor> monitor = current();
        return monitor.isPresent() ? monitor.get().rate() : Monitors.USUAL_RATE;
    }

    @Override
    public void close() {
        Callbacks.glfwFreeCallbacks(handle);
        glfwDestroyWindow(handle);
    }
}
