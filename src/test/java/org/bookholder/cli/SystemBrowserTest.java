package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;

final class SystemBrowserTest {
    @Test
    void eachSystemHasItsOwnCommand() {
        assertThat(SystemBrowser.of("Mac OS X", name -> "").command()).contains(List.of("open"));
        assertThat(SystemBrowser.of("Windows 11", name -> "").command())
                .contains(List.of("rundll32", "url.dll,FileProtocolHandler"));
        assertThat(SystemBrowser.of("Linux", name -> Map.of("DISPLAY", ":0").getOrDefault(name, ""))
                        .command())
                .contains(List.of("xdg-open"));
    }

    /** Otherwise a browser would take over the terminal. */
    @Test
    void withoutADisplayNothingIsStarted() {
        assertThat(SystemBrowser.of("Linux", name -> "").open("http://127.0.0.1/", millis -> false))
                .isFalse();
    }

    @Test
    void tellsWhetherTheCommandHasWorked() {
        assertThat(opens("true")).isTrue();
        assertThat(opens("false")).isFalse();
        assertThat(opens("no-such-command-anywhere")).isFalse();
    }

    private static boolean opens(String command) {
        return new SystemBrowser(Optional.of(List.of(command))).open("address", millis -> {
            LockSupport.parkNanos(millis * 1_000_000);
            return false;
        });
    }
}
