package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_A;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_F13;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_KP_ADD;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_LEFT_SHIFT;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_PAGE_DOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_UNKNOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_W;

import org.bookholder.view.input.Action;
import org.junit.jupiter.api.Test;

final class KeysTest {
    @Test
    void keysAreNamedByTheirLabels() {
        // On a French keyboard the key in the place of A carries a Q, and that of Z a W.
        assertThat(Keys.name(GLFW_KEY_A, 38, "q", false)).isEqualTo("Q");
        assertThat(Keys.name(GLFW_KEY_W, 25, "z", true)).isEqualTo("Shift Z");
    }

    @Test
    void keysWithoutALabelAreNamedByTheirUse() {
        assertThat(Keys.name(GLFW_KEY_PAGE_DOWN, 117, null, false)).isEqualTo("Page Down");
        assertThat(Keys.name(GLFW_KEY_F13, 191, null, false)).isEqualTo("F13");
        assertThat(Keys.name(GLFW_KEY_KP_ADD, 86, "+", false)).isEqualTo("Keypad +");
    }

    @Test
    void anUnknownButtonIsNamedByItsNumber() {
        assertThat(Keys.name(GLFW_KEY_UNKNOWN, 164, null, false)).isEqualTo("key 164");
    }

    @Test
    void modifierKeysHaveNoName() {
        assertThat(Keys.name(GLFW_KEY_LEFT_SHIFT, 50, null, true)).isEmpty();
    }

    @Test
    void onlyMovesAndSizesRepeatWhileAKeyIsHeldDown() {
        assertThat(Keys.repeats(Action.ROW_DOWN)).isTrue();
        assertThat(Keys.repeats(Action.LARGER)).isTrue();
        assertThat(Keys.repeats(Action.HOLD)).isFalse();
        assertThat(Keys.repeats(Action.QUIT)).isFalse();
    }
}
