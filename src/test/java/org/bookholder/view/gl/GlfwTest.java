package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lwjgl.glfw.GLFW.GLFW_ANY_PLATFORM;
import static org.lwjgl.glfw.GLFW.GLFW_PLATFORM_X11;

import java.util.Map;
import org.junit.jupiter.api.Test;

final class GlfwTest {
    /** Where a Wayland server is looked for is said in the manual of wl_display_connect(3). */
    @Test
    void waylandIsUsedOnlyIfAvailable() {
        assertThat(platform(Map.of("XDG_RUNTIME_DIR", "/run/user/1000"))).isEqualTo(GLFW_ANY_PLATFORM);
        assertThat(platform(Map.of("WAYLAND_DISPLAY", "/run/wayland-0"))).isEqualTo(GLFW_ANY_PLATFORM);
        assertThat(platform(Map.of("WAYLAND_SOCKET", "5"))).isEqualTo(GLFW_ANY_PLATFORM);

        assertThat(platform(Map.of())).isEqualTo(GLFW_PLATFORM_X11);
        assertThat(platform(Map.of("WAYLAND_DISPLAY", "wayland-0"))).isEqualTo(GLFW_PLATFORM_X11);
        assertThat(platform(Map.of("XDG_RUNTIME_DIR", "run"))).isEqualTo(GLFW_PLATFORM_X11);
    }

    private static int platform(Map<String, String> environment) {
        return Glfw.platform(name -> environment.getOrDefault(name, ""));
    }
}
