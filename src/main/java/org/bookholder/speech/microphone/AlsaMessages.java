package org.bookholder.speech.microphone;

import java.lang.invoke.MethodHandles;
import org.lwjgl.system.APIUtil;
import org.lwjgl.system.Callback;
import org.lwjgl.system.CallbackI;
import org.lwjgl.system.JNI;
import org.lwjgl.system.Platform;
import org.lwjgl.system.SharedLibrary;
import org.lwjgl.system.libffi.LibFFI;

/**
 * Keeps ALSA's own messages off standard error. If no sound server is running, OpenAL asks ALSA for devices, and ALSA
 * prints several lines for each missing one. {@link Microphone} reports the result once.
 */
final class AlsaMessages {
    private static final String LIBRARY = "libasound.so.2";
    private static final Handler HANDLER = new Handler();
    private static final boolean DROPPED = drop();

    private AlsaMessages() {}

    /**
     * Drops the messages from now on; returns false if there is no ALSA. May be called on any thread; a second call
     * changes nothing.
     */
    static boolean dropped() {
        return DROPPED;
    }

    private static boolean drop() {
        if (Platform.get() != Platform.LINUX) {
            return false;
        }
        try {
            // Never closed, because OpenAL uses the same library until the program ends.
            SharedLibrary alsa = APIUtil.apiCreateLibrary(LIBRARY);
            long setHandler = alsa.getFunctionAddress("snd_lib_error_set_handler");
            if (setHandler == 0) {
                return false;
            }
            JNI.invokePI(HANDLER.address(), setHandler);
            return true;
        } catch (UnsatisfiedLinkError e) {
            return false;
        }
    }

    /** The C type {@code snd_lib_error_handler_t}; the values for the format, which follow, are ignored. */
    @FunctionalInterface
    private interface HandlerI extends CallbackI {
        Callback.Descriptor DESCRIPTOR = new Callback.Descriptor(
                HandlerI.class,
                MethodHandles.lookup(),
                APIUtil.apiCreateCIF(
                        LibFFI.ffi_type_void,
                        LibFFI.ffi_type_pointer,
                        LibFFI.ffi_type_sint32,
                        LibFFI.ffi_type_pointer,
                        LibFFI.ffi_type_sint32,
                        LibFFI.ffi_type_pointer));

        @Override
        default Callback.Descriptor getDescriptor() {
            return DESCRIPTOR;
        }

        @Override
        default void callback(long ret, long args) {
            invoke(0, 0, 0, 0, 0);
        }

        void invoke(long file, int line, long function, int error, long format);
    }

    private static final class Handler extends Callback implements HandlerI {
        Handler() {
            super(HandlerI.DESCRIPTOR);
        }

        @Override
        public void invoke(long file, int line, long function, int error, long format) {
            // Dropped.
        }
    }
}
