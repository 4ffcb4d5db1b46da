package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.GLFW_PLATFORM_X11;
import static org.lwjgl.glfw.GLFW.glfwGetPlatform;
import static org.lwjgl.system.MemoryUtil.NULL;

import java.lang.invoke.MethodHandles;
import org.lwjgl.glfw.GLFWNativeX11;
import org.lwjgl.system.APIUtil;
import org.lwjgl.system.Callback;
import org.lwjgl.system.CallbackI;
import org.lwjgl.system.JNI;
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

    private boolean lost;

    private DisplayWatch() {}

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

    /** Watches the display that GLFW, which is running, is connected to. The watch lasts until another one begins. */
    static DisplayWatch begin() {
        DisplayWatch watch = new DisplayWatch();
        if (glfwGetPlatform() == GLFW_PLATFORM_X11) {
            watch.handle(GLFWNativeX11.glfwGetX11Display(), X11.getLibrary());
        }
        return watch;
    }

    private void handle(long display, SharedLibrary xlib) {
        long setHandler = xlib.getFunctionAddress("XSetIOErrorHandler");
        long setExit = xlib.getFunctionAddress("XSetIOErrorExitHandler");
        long unlock = xlib.getFunctionAddress("XUnlockDisplay");
        if (setHandler != NULL && setExit != NULL && unlock != NULL) {
            Failed failed = () -> lost = true;
            // Xlib has locked the display for this thread, and expects it to call exit(). The end of the program comes
            // from
            // another thread, and would wait for that lock for ever.
            Left left = () -> JNI.invokePV(display, unlock);
            // The callbacks live as long as the process: Xlib may call them until it ends.
            JNI.invokePP(failed.address(), setHandler);
            JNI.invokePPPV(display, left.address(), NULL, setExit);
        }
    }

    /** Whether the display is gone. GLFW and OpenGL must not be called any more then. */
    boolean lost() {
        return lost;
    }
}
