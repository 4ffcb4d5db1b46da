package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window on another monitor, and when monitors come and go: see {@link TwoMonitors}. */
final class MonitorsTest {
    private static final Path DRIVER = Path.of("/usr/lib/xorg/modules/drivers/dummy_drv.so");

    @TempDir
    Path folder;

    @Test
    void theWindowOpensOnItsMonitorAndReturnsToOneThatReturns() throws IOException, InterruptedException {
        Needs.program("Xorg", "Debian package xserver-xorg-core");
        Needs.program("xrandr", "Debian package x11-xserver-utils");
        Needs.file(DRIVER, "Debian package xserver-xorg-video-dummy");
        Process server = server();
        try (BufferedReader told = server.inputReader(StandardCharsets.UTF_8)) {
            String display = ":" + told.readLine();
            try (ChildJvm child = ChildJvm.startWith(Map.of("DISPLAY", display), TwoMonitors.class)) {
                assertThat(child.untilItEnds()).endsWith("exit status 0");
            }
        } finally {
            server.destroy();
            server.waitFor();
        }
    }

    /** An X server that has two monitors to be switched on; it prints the number of its display. */
    private Process server() throws IOException {
        Path settings = Files.writeString(folder.resolve("xorg.conf"), """
                Section "Device"
                  Identifier "card"
                  Driver "dummy"
                  VideoRam 256000
                EndSection
                Section "Monitor"
                  Identifier "monitor"
                  HorizSync 5-1000
                  VertRefresh 5-200
                EndSection
                Section "Screen"
                  Identifier "screen"
                  Device "card"
                  Monitor "monitor"
                  DefaultDepth 24
                  SubSection "Display"
                    Depth 24
                    Virtual 3840 2160
                    Modes "1920x1080" "1280x720"
                  EndSubSection
                EndSection
                """);
        return new ProcessBuilder(
                        "Xorg",
                        "-displayfd",
                        "1",
                        "-config",
                        settings.toString(),
                        "-noreset",
                        "-nolisten",
                        "tcp",
                        "-logfile",
                        folder.resolve("xorg.log").toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
