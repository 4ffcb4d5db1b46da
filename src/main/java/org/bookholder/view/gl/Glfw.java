package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.GLFW_ANY_PLATFORM;
import static org.lwjgl.glfw.GLFW.GLFW_API_UNAVAILABLE;
import static org.lwjgl.glfw.GLFW.GLFW_PLATFORM;
import static org.lwjgl.glfw.GLFW.GLFW_PLATFORM_X11;
import static org.lwjgl.glfw.GLFW.GLFW_VERSION_UNAVAILABLE;
import static org.lwjgl.glfw.GLFW.glfwGetError;
import static org.lwjgl.glfw.GLFW.glfwInit;
import static org.lwjgl.glfw.GLFW.glfwInitHint;
import static org.lwjgl.glfw.GLFW.glfwSetErrorCallback;

import java.util.Locale;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.bookholder.problem.ProblemException;
import org.lwjgl.PointerBuffer;
import org.lwjgl.glfw.GLFWErrorCallback;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.system.Platform;

/**
 * Starts the window library and turns its errors into messages. Main thread only.
 *
 * <p>Once started, the library runs until the program ends. Ending it earlier would close the connection to the
 * display, and a display server without any other client may restart at that moment and refuse the next window.
 */
final class Glfw {
    private static final String WHERE = "reading window";

    private Glfw() {}

    /**
     * Starts the library; if it is already running, only asks whether its display is still there.
     *
     * @param abandon called inside the call that loses the display; see {@link DisplayWatch#begin}
     * @return a watch over that display
     * @throws ProblemException if there is no display, or it is gone; nothing else of GLFW may be called then
     */
    static DisplayWatch start(Runnable abandon) throws ProblemException {
        try {
            GLFWErrorCallback earlier = glfwSetErrorCallback(null);
            if (earlier != null) {
                earlier.free();
            }
            if (Platform.get() == Platform.LINUX) {
                UnaryOperator<String> environment = name -> Objects.requireNonNullElse(System.getenv(name), "");
                glfwInitHint(GLFW_PLATFORM, platform(environment));
            }
            if (!glfwInit()) {
                throw new ProblemException(
                        "there is no display to open it on (" + lastError() + ")",
                        WHERE,
                        "start it in a desktop session, or go on without the window");
            }
            DisplayWatch display = DisplayWatch.begin(abandon);
            if (!display.answers()) {
                throw gone();
            }
            return display;
        } catch (LinkageError e) {
            throw new ProblemException(
                    "the window library cannot be loaded (" + e.getMessage() + ")",
                    WHERE,
                    "use a build with the libraries for this system, or go on without the window",
                    e);
        }
    }

    /** The same where a lost display is noticed between two calls only. */
    static DisplayWatch start() throws ProblemException {
        return start(() -> {});
    }

    /**
     * Which window system to use. Without a folder for sockets, Wayland can only be reached at an explicit address; if
     * asked anyway, its library prints a message to standard error.
     */
    static int platform(UnaryOperator<String> environment) {
        boolean wayland = environment.apply("XDG_RUNTIME_DIR").startsWith("/")
                || environment.apply("WAYLAND_DISPLAY").startsWith("/")
                || !environment.apply("WAYLAND_SOCKET").isEmpty();
        return wayland ? GLFW_ANY_PLATFORM : GLFW_PLATFORM_X11;
    }

    /** The problem to report if the display that the program is connected to is gone. */
    static ProblemException gone() {
        return new ProblemException(
                "the display is gone",
                WHERE,
                "go on without the window, and start the program again once there is a display");
    }

    /** The problem to report if no window could be created. */
    static ProblemException noWindow() {
        int code = glfwGetError(null);
        boolean noGl = code == GLFW_API_UNAVAILABLE || code == GLFW_VERSION_UNAVAILABLE;
        return new ProblemException(
                noGl
                        ? "the display has no OpenGL 3.3 (error 0x" + Integer.toHexString(code) + ")"
                        : "the window could not be made (error 0x" + Integer.toHexString(code) + ")",
                WHERE,
                "install or update the graphics driver, or go on without the window");
    }

    /** The problem to report if there is no OpenGL 3.3. */
    static ProblemException noGl(Throwable cause) {
        return new ProblemException(
                "the display has no OpenGL 3.3 (" + cause.getMessage() + ")",
                WHERE,
                "install or update the graphics driver, or go on without the window",
                cause);
    }

    private static String lastError() {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer description = stack.mallocPointer(1);
            int code = glfwGetError(description);
            String text = description.get(0) == 0 ? null : MemoryUtil.memUTF8Safe(description.get(0));
            return String.format(Locale.ROOT, "error 0x%x %s", code, Objects.requireNonNullElse(text, ""))
                    .trim();
        }
    }
}
