package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
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
import org.apache.poi.xwpf.usermodel.XWPFDocument;
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
        Needs.display();
        Needs.program("xdotool", "apt-get install xdotool");
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
        homeAnswers(root);
        aDocumentIsOpened(root);
        aLessonIsReadInAWindow(root);
        assertThat(withoutNativeCode(root.resolve("opt/bookholder/lib/app/lib")))
                .as("libraries whose native code was left out")
                .isEmpty();

        done(in(root, "apt-get", "-q", "-y", "purge", "bookholder"));
        assertThat(List.of("opt/bookholder", "usr/bin/bookholder", "usr/share/applications/bookholder.desktop"))
                .allSatisfy(name -> assertThat(Files.exists(root.resolve(name), LinkOption.NOFOLLOW_LINKS))
                        .as(name)
                        .isFalse());
    }

    private void homeAnswers(Path root) throws IOException, InterruptedException {
        Process home = begun(root, folder.resolve("home.log"), "bookholder", "--no-browser");
        try (BufferedReader out = home.inputReader(StandardCharsets.UTF_8)) {
            String address = String.valueOf(out.readLine());
            assertThat(address).startsWith("Home: http://127.0.0.1:");
            HttpResponse<String> page = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(URI.create(address.substring("Home: ".length())))
                                    .build(),
                            HttpResponse.BodyHandlers.ofString());
            assertThat(page.statusCode()).isEqualTo(200);
            assertThat(page.body()).contains("<title>Bookholder</title>");
        } finally {
            home.descendants().forEach(ProcessHandle::destroy);
            home.destroy();
            home.waitFor();
        }
    }

    /** The menu's entry is given a file; without a display it says so, and a script shows how the document is taken. */
    private void aDocumentIsOpened(Path root) throws IOException, InterruptedException {
        try (XWPFDocument document = new XWPFDocument();
                OutputStream file = Files.newOutputStream(root.resolve("tmp/lesson.docx"))) {
            document.createParagraph().createRun().setText("Turn the wheel and look at the valve.");
            document.write(file);
        }
        assertThat(done(in(root, "bookholder", "script", "/tmp/lesson.docx")).out())
                .contains("1  Turn the wheel and look at the valve.");
    }

    /** The display is that of the machine around: its socket needs no file that both can see. */
    private void aLessonIsReadInAWindow(Path root) throws IOException, InterruptedException {
        String permission = System.getenv("XAUTHORITY");
        if (permission != null) {
            Files.copy(Path.of(permission), root.resolve("tmp/permission"));
        }
        Process reading = begun(
                root,
                folder.resolve("window.log"),
                "env",
                "DISPLAY=" + System.getenv("DISPLAY"),
                "XAUTHORITY=/tmp/permission",
                "bookholder",
                "demo",
                "--session",
                "/tmp/session-in-window");
        try {
            done(run(List.of("xdotool", "search", "--sync", "--onlyvisible", "--name", "Reading a bent wheel")));
            done(run(List.of("xdotool", "key", "Escape", "Escape")));
            assertThat(reading.waitFor()).isZero();
        } finally {
            reading.descendants().forEach(ProcessHandle::destroy);
            reading.destroy();
        }
        assertThat(done(in(root, "bookholder", "notes", "/tmp/session-in-window"))
                        .out())
                .contains("Reading a bent wheel");
    }

    private Process begun(Path root, Path err, String... command) throws IOException {
        List<String> all = new ArrayList<>(List.of("chroot", root.toString()));
        all.addAll(List.of(command));
        return new ProcessBuilder(all)
                .redirectInput(Path.of("/dev/null").toFile())
                .redirectError(err.toFile())
                .start();
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
