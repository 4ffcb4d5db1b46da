package org.bookholder.view.gl;

import static java.util.Map.entry;
import static org.lwjgl.glfw.GLFW.*;

import java.util.Locale;
import java.util.Map;
import org.bookholder.view.input.Action;
import org.jspecify.annotations.Nullable;

/** The names of keys. A letter key is named by what is printed on it, wherever it is on the keyboard. */
final class Keys {
    private static final Map<Integer, String> NAMED = Map.ofEntries(
            entry(GLFW_KEY_PAGE_UP, "Page Up"),
            entry(GLFW_KEY_PAGE_DOWN, "Page Down"),
            entry(GLFW_KEY_HOME, "Home"),
            entry(GLFW_KEY_END, "End"),
            entry(GLFW_KEY_UP, "Up"),
            entry(GLFW_KEY_DOWN, "Down"),
            entry(GLFW_KEY_LEFT, "Left"),
            entry(GLFW_KEY_RIGHT, "Right"),
            entry(GLFW_KEY_ESCAPE, "Esc"),
            entry(GLFW_KEY_SPACE, "Space"),
            entry(GLFW_KEY_ENTER, "Enter"),
            entry(GLFW_KEY_TAB, "Tab"),
            entry(GLFW_KEY_BACKSPACE, "Backspace"),
            entry(GLFW_KEY_INSERT, "Insert"),
            entry(GLFW_KEY_DELETE, "Delete"),
            entry(GLFW_KEY_PAUSE, "Pause"),
            entry(GLFW_KEY_PRINT_SCREEN, "Print"),
            entry(GLFW_KEY_MENU, "Menu"),
            entry(GLFW_KEY_KP_ADD, "Keypad +"),
            entry(GLFW_KEY_KP_SUBTRACT, "Keypad -"),
            entry(GLFW_KEY_KP_MULTIPLY, "Keypad *"),
            entry(GLFW_KEY_KP_DIVIDE, "Keypad /"),
            entry(GLFW_KEY_KP_DECIMAL, "Keypad ."),
            entry(GLFW_KEY_KP_ENTER, "Keypad Enter"));

    private Keys() {}

    /**
     * The name of a key; empty for a modifier key.
     *
     * @param key GLFW's code of the key
     * @param code the system's number of the key
     * @param printed what is printed on it in this layout, if anything
     * @param shift whether Shift is down
     */
    static String name(int key, int code, @Nullable String printed, boolean shift) {
        boolean changesOthers = key >= GLFW_KEY_LEFT_SHIFT && key <= GLFW_KEY_RIGHT_SUPER;
        boolean locks = key >= GLFW_KEY_CAPS_LOCK && key <= GLFW_KEY_NUM_LOCK;
        if (changesOthers || locks) {
            return "";
        }
        return (shift ? "Shift " : "") + plain(key, code, printed);
    }

    private static String plain(int key, int code, @Nullable String printed) {
        String named = NAMED.get(key);
        if (named != null) {
            return named;
        }
        if (key >= GLFW_KEY_F1 && key <= GLFW_KEY_F25) {
            return "F" + (key - GLFW_KEY_F1 + 1);
        }
        if (key >= GLFW_KEY_KP_0 && key <= GLFW_KEY_KP_9) {
            return "Keypad " + (key - GLFW_KEY_KP_0);
        }
        return printed == null || printed.isBlank() ? "key " + code : printed.toUpperCase(Locale.ROOT);
    }

    /** Whether holding the key down repeats the action. */
    static boolean repeats(Action action) {
        return switch (action) {
            case ROW_UP, ROW_DOWN, LARGER, SMALLER -> true;
            default -> false;
        };
    }
}
