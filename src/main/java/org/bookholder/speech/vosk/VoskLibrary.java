package org.bookholder.speech.vosk;

import com.sun.jna.Function;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import java.nio.charset.StandardCharsets;
import org.vosk.LibVosk;
import org.vosk.Model;

/**
 * Direct access to the native library, for what the Java binding leaves out or gets wrong.
 *
 * <p>The library must be looked up through the class loader that Vosk itself used. Otherwise a second copy of it is
 * loaded, and the program crashes when it exits.
 */
final class VoskLibrary {
    private static final int ERRORS_ONLY = -1;
    private static final Function FIND_WORD = findWord();

    private VoskLibrary() {}

    private static Function findWord() {
        // Strings are passed in the machine's own encoding unless this is set before the first call.
        System.setProperty("jna.encoding", StandardCharsets.UTF_8.name());
        LibVosk.vosk_set_log_level(ERRORS_ONLY);
        String name = Platform.isWindows() ? "libvosk" : "vosk";
        return NativeLibrary.getInstance(name, LibVosk.class.getClassLoader()).getFunction("vosk_model_find_word");
    }

    /** Loads the library once; throws a {@link LinkageError} if it cannot be loaded. */
    static void load() {
        FIND_WORD.getName();
    }

    /** Whether the model knows a word, given in lower case. The model must be open. */
    static boolean knows(Model model, String word) {
        return FIND_WORD.invokeInt(new Object[] {model.getPointer(), word}) >= 0;
    }
}
