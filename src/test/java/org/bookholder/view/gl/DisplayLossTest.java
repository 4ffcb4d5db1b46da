package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.XServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** An X server that dies while the window is shown: no window is opened again on it, which would crash the program. */
@Timeout(120)
final class DisplayLossTest {
    @Test
    void noWindowIsOpenedOnADisplayThatIsGone() throws IOException, InterruptedException {
        try (XServer server = XServer.start();
                ChildJvm child = ChildJvm.startWith(
                        Map.of("DISPLAY", server.display(), "WAYLAND_DISPLAY", "", "XDG_RUNTIME_DIR", ""),
                        DyingDisplay.class,
                        Long.toString(server.process().pid()))) {
            List<String> lines = child.untilItEnds();
            assertThat(lines).containsExactly("exit status 0");
        }
    }
}
