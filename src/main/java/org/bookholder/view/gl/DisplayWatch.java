package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.GLFW_PLATFORM_X11;
import static org.lwjgl.glfw.GLFW.glfwGetPlatform;
import static org.lwjgl.system.MemoryUtil.NULL;

import java.lang.invoke.MethodHandles;
import org.bookholder.view.DisplayLostException;
import org.lwjgl.glfw.GLFWNativeX11;
import org.lwjgl.system.APIUtil;
import org.lwjgl.system.Callback;
import org.lwjgl.system.CallbackI;
import org.lwjgl.system.JNI;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.SharedLibrary;
import org.lwjgl.system.libffi.LibFFI;
import org.lwjgl.system.linux.X11;

/**
 * Notices that the X server is gone. Left alone, Xlib then ends the process on the spot, and nothing of Java's runs any more.
 * Main thread only.
 *
 * <p>Two handlers keep it from that (XSetIOErrorHandler and XSetIOErrorExitHandler of libX11 1.7 and later). With an older
 * libX11, and where windows do not come from an X server, nothing is changed.
 */
final class DisplayWatch {
    private static final Callback.Descriptor FAILED = new Callback.Descriptor(
            Failed.class,
            MethodHandles.lookup(),
            APIUtil.apiCreateCIF(LibFFI.ffi_type_sint32, LibFFI.ffi_type_pointer));

    private static final Callback.Descriptor LEFT = new Callback.Descriptor(
            Left.class,
            MethodHandles.lookup(),
            APIUtil.apiCreateCIF(LibFFI.ffi_type_void, LibFFI.ffi_type_pointer, LibFFI.ffi_type_pointer));

    /** More bytes than Xlib's XWindowAttributes has. */
    private static final int ATTRIBUTES = 512;

    private final long display;
    private final Xlib xlib;

    /** The two callbacks, as C knows them. They live as long as the process: Xlib may call them until it ends. */
    private final long failed;

    private final long left;
    private boolean lost;

    private DisplayWatch(long display, Xlib xlib, Runnable abandon) {
        this.display = display;
        this.xlib = xlib;
        Failed noted = () -> lost = true;
        // Xlib has locked the display for this thread, and expects it to call exit(). The end of the program comes from
        // another thread, and would wait for that lock for ever.
        Left unlocked = () -> {
            JNI.invokePV(display, xlib.unlock());
            abandon.run();
        };
        failed = xlib.canWatch() ? noted.address() : NULL;
        left = xlib.canWatch() ? unlocked.address() : NULL;
    }

    /** Functions of libX11; 0 for those that it does not have. */
    private record Xlib(long setHandler, long setExit, long unlock, long attributes) {
        static final Xlib NONE = new Xlib(NULL, NULL, NULL, NULL);

        static Xlib of(SharedLibrary library) {
            return new Xlib(
                    library.getFunctionAddress("XSetIOErrorHandler"),
                    library.getFunctionAddress("XSetIOErrorExitHandler"),
                    library.getFunctionAddress("XUnlockDisplay"),
                    library.getFunctionAddress("XGetWindowAttributes"));
        }

        boolean canWatch() {
            return setHandler != NULL && setExit != NULL && unlock != NULL && attributes != NULL;
        }
    }

    /** {@code int handler(Display *)}, in place of the one that ends the process; its result does not matter. */
    private interface Failed extends CallbackI {
        @Override
        default Callback.Descriptor getDescriptor() {
            return FAILED;
        }

        @Override
        default void callback(long result, long arguments) {
            failed();
            APIUtil.apiClosureRet(result, 0);
        }

        void failed();
    }

    /** {@code void handler(Display *, void *)}, in place of exit(): Xlib's calls then return, and do nothing any more. */
    private interface Left extends CallbackI {
        @Override
        default Callback.Descriptor getDescriptor() {
            return LEFT;
        }

        @Override
        default void callback(long result, long arguments) {
            left();
        }

        void left();
    }

    /**
     * Watches the display that GLFW, which is running, is connected to.
     *
     * @param abandon called inside the call that has lost it. If it returns, so does that call, without the X server's answer; a driver
     *     that draws in software then uses whatever was in memory, and may crash.
     */
    static DisplayWatch begin(Runnable abandon) {
        boolean x11 = glfwGetPlatform() == GLFW_PLATFORM_X11;
        DisplayWatch watch = x11
                ? new DisplayWatch(GLFWNativeX11.glfwGetX11Display(), Xlib.of(X11.getLibrary()), abandon)
                : new DisplayWatch(NULL, Xlib.NONE, abandon);
        watch.resume();
        return watch;
    }

    /** Xlib tells one watch only, the last that began or resumed. */
    private void resume() {
        if (xlib.canWatch()) {
            JNI.invokePP(failed, xlib.setHandler());
            JNI.invokePPPV(display, left, NULL, xlib.setExit());
        }
    }

    /**
     * Whether the display is known to be gone, without asking it. GLFW and OpenGL must not be called any more then: on a
     * connection that is lost, some of their functions use what the X server has not answered, and the process crashes.
     */
    boolean lost() {
        return lost;
    }

    /**
     * Asks the X server, and waits for its answer; true if there is nothing to ask. A connection that another watch has
     * found lost gives no answer either.
     */
    boolean answers() {
        resume();
        if (!lost && xlib.canWatch()) {
            try (MemoryStack stack = MemoryStack.stackPush()) {
                long root = X11.XRootWindow(display, X11.XDefaultScreen(display));
                // Nothing but a lost connection makes this fail: every screen has a root window.
                long attributes = stack.nmalloc(8, ATTRIBUTES);
                lost = JNI.invokePNPI(display, root, attributes, xlib.attributes()) == 0 || lost;
            }
        }
        return !lost;
    }

    /**
     * Asks the X server before something that would crash without it.
     *
     * @throws DisplayLostException if it does not answer
     */
    void check() {
        if (!answers()) {
            throw new DisplayLostException();
        }
    }
}
