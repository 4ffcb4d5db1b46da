package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_A;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_F5;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_PAGE_DOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_UNKNOWN;
import static org.lwjgl.glfw.GLFW.GLFW_KEY_W;

import org.bookholder.view.Action;
import org.junit.jupiter.api.Test;

final class KeysTest {
    @Test
    void goByWhatIsPrintedOnTheKey() {
        // On a French keyboard the key in the place of A carries a Q, and that of Z a W.
        assertThat(Keys.action(GLFW_KEY_A, "h", false)).contains(Action.HOLD);
        assertThat(Keys.action(GLFW_KEY_W, "z", false)).isEmpty();
    }

    @Test
    void capitalsAreTheSameKey() {
        assertThat(Keys.action(GLFW_KEY_A, "H", false)).contains(Action.HOLD);
    }

    @Test
    void shiftTurnsWiderIntoNarrower() {
        assertThat(Keys.action(GLFW_KEY_W, "w", false)).contains(Action.WIDER);
        assertThat(Keys.action(GLFW_KEY_W, "w", true)).contains(Action.NARROWER);
    }

    @Test
    void keysWithoutAPrintedNameGoByTheirCode() {
        assertThat(Keys.action(GLFW_KEY_PAGE_DOWN, null, false)).contains(Action.FORWARD_LINE);
        assertThat(Keys.action(GLFW_KEY_F5, null, true)).contains(Action.HOLD);
        assertThat(Keys.action(GLFW_KEY_UNKNOWN, null, false)).isEmpty();
    }

    @Test
    void onlyMovesAndSizesRepeatWhileAKeyIsHeldDown() {
        assertThat(Keys.repeats(Action.ROW_DOWN)).isTrue();
        assertThat(Keys.repeats(Action.LARGER)).isTrue();
        assertThat(Keys.repeats(Action.HOLD)).isFalse();
        assertThat(Keys.repeats(Action.QUIT)).isFalse();
    }
}
