package org.bookholder.speech.vosk;

import com.sun.jna.Function;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import java.nio.charset.StandardCharsets;
import org.vosk.LibVosk;
import org.vosk.Model;

/**
 * The native library as a whole: what the Java binding leaves out or gets wrong.
 *
 * <p>It must be looked up through the class loader that Vosk itself used. Without it a second copy of the library is
 * loaded, and the program crashes when it ends.
 */
final class VoskLibrary {
    private static final int ERRORS_ONLY = -1;
    private static final Function FIND_WORD = findWord();

    private VoskLibrary() {}

    private static Function findWord() {
        // Texts cross the border in the machine's own encoding unless told otherwise, before the first call.
        System.setProperty("jna.encoding", StandardCharsets.UTF_8.name());
        LibVosk.vosk_set_log_level(ERRORS_ONLY);
        String name = Platform.isWindows() ? "libvosk" : "vosk";
        return NativeLibrary.getInstance(name, LibVosk.class.getClassLoader()).getFunction("vosk_model_find_word");
    }

    /** Loads the library, once; what then stands in the way is a {@link LinkageError}. */
    static void load() {
        FIND_WORD.getName();
    }

    /** Whether the model, which must be open, knows a word in lower case. */
    static boolean knows(Model model, String word) {
        return FIND_WORD.invokeInt(new Object[] {model.getPointer(), word}) >= 0;
    }
}
