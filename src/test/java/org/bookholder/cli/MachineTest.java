package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class MachineTest {
    private static final Path HOME = Path.of("/home/ann");

    /** XDG Base Directory Specification 0.8: default, and relative paths ignored. */
    @Test
    void followsTheBaseDirectorySpecificationOnLinux() {
        assertThat(data("Linux", Map.of())).isEqualTo(HOME.resolve(".local/share/bookholder"));
        assertThat(data("Linux", Map.of("XDG_DATA_HOME", "/data"))).isEqualTo(Path.of("/data/bookholder"));
        assertThat(data("Linux", Map.of("XDG_DATA_HOME", "data"))).isEqualTo(HOME.resolve(".local/share/bookholder"));
    }

    /** From memory: where macOS and Windows keep a program's data for a user. */
    @Test
    void usesThePlatformsPlaceElsewhere() {
        assertThat(data("Mac OS X", Map.of())).isEqualTo(HOME.resolve("Library/Application Support/Bookholder"));
        assertThat(data("Windows 11", Map.of("LOCALAPPDATA", "/local"))).isEqualTo(Path.of("/local/Bookholder"));
        assertThat(data("Windows 11", Map.of())).isEqualTo(HOME.resolve("AppData/Local/Bookholder"));
    }

    /** The same specification, and from memory. */
    @Test
    void keepsSettingsWhereThePlatformDoes() {
        assertThat(settings("Linux", Map.of())).isEqualTo(HOME.resolve(".config/bookholder"));
        assertThat(settings("Linux", Map.of("XDG_CONFIG_HOME", "/etc/ann"))).isEqualTo(Path.of("/etc/ann/bookholder"));
        assertThat(settings("Linux", Map.of("XDG_CONFIG_HOME", "etc"))).isEqualTo(HOME.resolve(".config/bookholder"));
        assertThat(settings("Mac OS X", Map.of())).isEqualTo(HOME.resolve("Library/Application Support/Bookholder"));
        assertThat(settings("Windows 11", Map.of("APPDATA", "/roaming"))).isEqualTo(Path.of("/roaming/Bookholder"));
        assertThat(settings("Windows 11", Map.of())).isEqualTo(HOME.resolve("AppData/Roaming/Bookholder"));
    }

    private static Path data(String system, Map<String, String> environment) {
        return Machine.dataFolder(system, HOME, name -> environment.getOrDefault(name, ""));
    }

    private static Path settings(String system, Map<String, String> environment) {
        return Machine.settingsFolder(system, HOME, name -> environment.getOrDefault(name, ""));
    }
}
