package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.GLFW_KEY_DOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_ESCAPE;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_F1;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_F5;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_HOME;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_KP_ADD;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_KP_SUBTRACT;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_PAGE_DOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_PAGE_UP;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_UP;

import java.util.Locale;
import java.util.Optional;
import org.bookholder.view.Action;
import org.jspecify.annotations.Nullable;

/** Which key does what. Letters go by what is printed on the key, wherever it stands on the keyboard. */
final class Keys {
    private Keys() {}

    /**
     * What a key does.
     *
     * @param key GLFW's code of the key
     * @param name what is printed on it in this layout, if anything is
     * @param shift whether Shift is down
     */
    static Optional<Action> action(int key, @Nullable String name, boolean shift) {
        Optional<Action> special = special(key);
        if (special.isPresent() || name == null) {
            return special;
        }
        return named(name.toLowerCase(Locale.ROOT), shift);
    }

    /** Whether holding the key down repeats what it does. */
    static boolean repeats(Action action) {
        return switch (action) {
            case ROW_UP, ROW_DOWN, LARGER, SMALLER -> true;
            default -> false;
        };
    }

    private static Optional<Action> special(int key) {
        return Optional.ofNullable(
                switch (key) {
                    case GLFW_KEY_PAGE_UP -> Action.BACK_LINE;
                    case GLFW_KEY_PAGE_DOWN -> Action.FORWARD_LINE;
                    case GLFW_KEY_HOME -> Action.BACK_PARAGRAPH;
                    case GLFW_KEY_UP -> Action.ROW_UP;
                    case GLFW_KEY_DOWN -> Action.ROW_DOWN;
                    case GLFW_KEY_F5 -> Action.HOLD;
                    case GLFW_KEY_F1 -> Action.KEYS;
                    case GLFW_KEY_ESCAPE -> Action.QUIT;
                    case GLFW_KEY_KP_ADD -> Action.LARGER;
                    case GLFW_KEY_KP_SUBTRACT -> Action.SMALLER;
                    default -> null;
                });
    }

    /** Clickers send a full stop or a B for their blank-screen button. */
    private static Optional<Action> named(String name, boolean shift) {
        return Optional.ofNullable(
                switch (name) {
                    case "h" -> Action.HOLD;
                    case "p", "b", "." -> Action.MARK_PICKUP;
                    case "n" -> Action.NEXT_TAKE;
                    case "c" -> Action.CUT;
                    case "l" -> Action.PICKUPS;
                    case "r" -> Action.ROUND;
                    case "m" -> Action.WAY;
                    case "+", "=" -> Action.LARGER;
                    case "-" -> Action.SMALLER;
                    case "w" -> shift ? Action.NARROWER : Action.WIDER;
                    case "g" -> Action.GLASS;
                    case "u" -> Action.UPSIDE_DOWN;
                    case "e" -> Action.CUES;
                    case "f" -> Action.FULL_SCREEN;
                    case "k" -> Action.KEYS;
                    default -> null;
                });
    }
}
