package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Installs the Debian package into an empty system that has no Java, uses it there and removes it. Run by {@code mvn verify
 * -Papplication} as root, with debootstrap; takes some minutes.
 */
final class ApplicationIT {
    private static final long MOST_BYTES = 140_000_000;

    @TempDir
    private Path folder;

    private record Ended(int exit, String out, String err) {}

    @Test
    void thePackageWorksWhereThereIsNoJava() throws IOException, InterruptedException {
        Needs.program("debootstrap", "apt-get install debootstrap");
        Path root = system();
        Path deb = deb();
        assertThat(deb).satisfies(file -> assertThat(Files.size(file)).isLessThan(MOST_BYTES));

        Files.copy(deb, root.resolve("tmp/bookholder.deb"));
        done(run(List.of("mount", "-t", "proc", "proc", root.resolve("proc").toString())));
        try {
            useAndRemove(root);
        } finally {
            done(run(List.of("umount", root.resolve("proc").toString())));
        }
    }

    private void useAndRemove(Path root) throws IOException, InterruptedException {
        done(in(root, "apt-get", "-q", "-y", "install", "--no-install-recommends", "/tmp/bookholder.deb"));
        assertThat(in(root, "sh", "-c", "command -v java").exit()).isNotZero();
        assertThat(root.resolve("usr/share/applications/bookholder.desktop"))
                .content()
                .contains("Exec=/opt/bookholder/");

        Ended demo = done(in(root, "bookholder", "demo", "--no-window", "--unpaced", "--session", "/tmp/session"));
        assertThat(demo.err()).isEmpty();
        JsonNode notes = new ObjectMapper()
                .readTree(done(in(root, "bookholder", "notes", "/tmp/session", "--json"))
                        .out());
        Map<Integer, String> pickups = new TreeMap<>();
        notes.get("lines")
                .forEach(line -> pickups.put(
                        line.get("line").asInt(), line.get("outcome").asText()));
        pickups.values().removeIf("clean"::equals);
        assertThat(pickups).isEqualTo(Map.of(8, "skipped", 13, "misread", 17, "incomplete"));

        // Each of these loads native code of its own: the recogniser is behind them, then FFmpeg's program and the
        // sound.
        Ended film = done(in(root, "bookholder", "film", "--draft", "/tmp/session"));
        assertThat(film.out()).contains("-draft.mp4: ", " LUFS");
        assertThat(done(in(root, "bookholder", "read", "--list-microphones")).err())
                .isEmpty();
        assertThat(withoutNativeCode(root.resolve("opt/bookholder/lib/app/lib")))
                .as("libraries whose native code was left out")
                .isEmpty();

        done(in(root, "apt-get", "-q", "-y", "purge", "bookholder"));
        assertThat(List.of("opt/bookholder", "usr/bin/bookholder", "usr/share/applications/bookholder.desktop"))
                .allSatisfy(name -> assertThat(Files.exists(root.resolve(name), LinkOption.NOFOLLOW_LINKS))
                        .as(name)
                        .isFalse());
    }

    /** The jars that should bring native code for Linux and hold none. */
    private static List<String> withoutNativeCode(Path folder) throws IOException {
        List<String> empty = new ArrayList<>();
        try (DirectoryStream<Path> jars = Files.newDirectoryStream(folder, "*-{natives-linux,linux-x86_64}*.jar")) {
            for (Path jar : jars) {
                try (ZipFile zip = new ZipFile(jar.toFile())) {
                    if (zip.stream().noneMatch(entry -> entry.getName().matches(".*\\.so(\\.\\d+)*"))) {
                        empty.add(String.valueOf(jar.getFileName()));
                    }
                }
            }
        }
        return empty;
    }

    private static Path deb() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("bookholder.application")))) {
            return files.filter(file -> file.toString().endsWith(".deb"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** A new system of the release that this machine has, from where it takes its own packages. */
    private Path system() throws IOException, InterruptedException {
        String site = done(run(
                        List.of("apt-get", "indextargets", "--format", "$(SITE) $(RELEASE)", "Created-By: Packages")))
                .out()
                .lines()
                .filter(line -> !line.contains("security") && !line.contains("updates"))
                .findFirst()
                .orElseThrow();
        String[] part = site.split(" ", 2);
        Path root = folder.resolve("root");
        done(run(List.of("debootstrap", "--variant=minbase", part[1], root.toString(), part[0])));
        return root;
    }

    private Ended in(Path root, String... command) throws IOException, InterruptedException {
        List<String> all = new ArrayList<>(List.of("chroot", root.toString(), "env", "DEBIAN_FRONTEND=noninteractive"));
        all.addAll(List.of(command));
        return run(all);
    }

    private static Ended done(Ended ended) {
        assertThat(ended.exit()).as("%s%n%s", ended.out(), ended.err()).isZero();
        return ended;
    }

    private Ended run(List<String> command) throws IOException, InterruptedException {
        Path out = Files.createTempFile(folder, "out", "");
        Path err = Files.createTempFile(folder, "err", "");
        Process process = new ProcessBuilder(command)
                .redirectInput(Path.of("/dev/null").toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        int exit = process.waitFor();
        return new Ended(
                exit, Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
    }
}
